#include "core/stock/job.hpp"

#include <cmath>
#include <string>

#include "core/units/input_error.hpp"

namespace fayline::stock {

namespace {

using units::InputError;

constexpr double farTooMuch = 1e6;  // metres, and money: far above what there is

std::string at(const char* list, std::size_t i) {
    return std::string(list) + "[" + std::to_string(i) + "].";
}

std::string written(double value) {
    std::string text = std::to_string(value);
    if (text.find('.') != std::string::npos) {
        while (text.back() == '0') text.pop_back();
        if (text.back() == '.') text.pop_back();
    }
    return text;
}

void above0(double metres, const std::string& path, const char* what) {
    if (!(metres >= 1e-6 && metres < farTooMuch))
        throw InputError(path, written(metres * 1e3) + " is not " + what, "give a number of millimetres above 0");
}

void from0(double value, double shown, const std::string& path, const char* what) {
    if (!(value >= 0 && value < farTooMuch))
        throw InputError(path, written(shown) + " is not " + what, "give 0 or more");
}

void checkStretch(const Stretch& stretch, const std::string& path, const char* what) {
    if (!(std::abs(stretch.from_m) < farTooMuch && std::abs(stretch.to_m) < farTooMuch &&
          stretch.from_m <= stretch.to_m))
        throw InputError(path + "to_mm", written(stretch.to_m * 1e3) + " is not where " + what + " ends",
                         "give a place from from_mm (" + written(stretch.from_m * 1e3) + ") on");
}

void checkRules(const Rules& rules) {
    from0(rules.kerf_m, rules.kerf_m * 1e3, "rules.kerf_mm", "a saw cut");
    from0(rules.planing_m, rules.planing_m * 1e3, "rules.planing_mm", "an allowance");
    from0(rules.widthAllowance_m, rules.widthAllowance_m * 1e3, "rules.width_allowance_mm", "an allowance");
    from0(rules.planerLeast_m, rules.planerLeast_m * 1e3, "rules.planer_least_mm", "a thickness");
    from0(rules.snipe_m, rules.snipe_m * 1e3, "rules.snipe_mm", "a length");
    from0(rules.scarfSlope, rules.scarfSlope, "rules.scarf_slope", "a slope");
    from0(rules.staggerThicknesses, rules.staggerThicknesses, "rules.stagger_thicknesses", "a distance");
    from0(rules.leastPart_m, rules.leastPart_m * 1e3, "rules.least_part_mm", "a length");
    above0(rules.scarfStep_m, "rules.scarf_step_mm", "a step");
    if (rules.extraScarfs < 0 || rules.extraScarfs > 10)
        throw InputError("rules.extra_scarfs", std::to_string(rules.extraScarfs) + " is not a number of scarfs",
                         "give 0 to 10");
}

}  // namespace

void check(const Job& job) {
    checkRules(job.rules);
    for (std::size_t i = 0; i < job.strips.size(); ++i) {
        const Strip& strip = job.strips[i];
        above0(strip.length_m, at("strips", i) + "length_mm", "a length");
        above0(strip.width_m, at("strips", i) + "width_mm", "a width");
        above0(strip.thickness_m, at("strips", i) + "thickness_mm", "a thickness");
        for (std::size_t k = 0; k < strip.takenOff.size(); ++k)
            checkStretch(strip.takenOff[k], at("strips", i) + at("taken_off", k), "what is taken off");
        if (strip.tightest) checkStretch(*strip.tightest, at("strips", i) + "tightest.", "the tightest third");
    }
    for (std::size_t i = 0; i < job.boards.size(); ++i) {
        const Board& board = job.boards[i];
        above0(board.length_m, at("boards", i) + "length_mm", "a length");
        above0(board.width_m, at("boards", i) + "width_mm", "a width");
        above0(board.thickness_m, at("boards", i) + "thickness_mm", "a thickness");
        from0(board.price, board.price, at("boards", i) + "price", "a price");
        from0(board.density_kg_m3, board.density_kg_m3, at("boards", i) + "density", "a density");
        if (board.count < 0)
            throw InputError(at("boards", i) + "count", std::to_string(board.count) + " is not a number of boards",
                             "give 0 or more");
        for (std::size_t k = 0; k < board.bad.size(); ++k) {
            checkStretch(board.bad[k].along, at("boards", i) + at("bad", k), "a bad stretch");
            if (board.bad[k].across)
                checkStretch(*board.bad[k].across, at("boards", i) + at("bad", k) + "across.", "a bad stretch");
        }
    }
    for (std::size_t i = 0; i < job.rules.pins.size(); ++i) {
        const Pin& pin = job.rules.pins[i];
        if (pin.strip < 0 || pin.strip >= static_cast<int>(job.strips.size()))
            throw InputError(at("rules.pins", i) + "strip", std::to_string(pin.strip) + " is no strip of this list",
                             "give its index");
        if (pin.board < 0 || pin.board >= static_cast<int>(job.boards.size()))
            throw InputError(at("rules.pins", i) + "board", std::to_string(pin.board) + " is no board of this list",
                             "give its index");
        if (pin.copy && (*pin.copy < 0 || *pin.copy >= job.boards[pin.board].count))
            throw InputError(at("rules.pins", i) + "copy", std::to_string(*pin.copy) + " is none of these boards",
                             "give 0 to less than its count (" + std::to_string(job.boards[pin.board].count) + ")");
    }
}

}  // namespace fayline::stock
