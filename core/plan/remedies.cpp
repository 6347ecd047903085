#include "core/plan/remedies.hpp"

#include <algorithm>
#include <string>

#include "core/measure/input_error.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/wording.hpp"

namespace fayline::plan {

namespace {

constexpr int daysEach = 2000;
constexpr double coolerBy_K = 5;

// The same piece another way.
struct Try {
    std::string what;
    boat::Piece piece;
    int breakAfterStrip = 0;
};

int stripsOf(const boat::Stack& stack) {
    int count = 0;
    for (const boat::Strips& strips : stack.strips) count += strips.count;
    return count;
}

class Trials {
public:
    Trials(const boat::Piece& piece, const Shop& shop, const line::Line& line, const std::atomic<bool>& stop)
        : piece_(piece), shop_(shop), line_(line), stop_(stop) {}

    // The day of a try; nothing where no plan can be made of it.
    std::optional<DayPlan> dayOf(const boat::Piece& piece) const {
        try {
            const stack::StackPlan stack =
                stack::planStack(piece.stack, piece.line.describes, piece.line.stripsOn, line_, shop_.species);
            if (stack.spares < 0) return std::nullopt;
            return planDay(piece, shop_, line_, stack);
        } catch (const measure::InputError&) {
            return std::nullopt;
        }
    }

    std::optional<Remedy> remedy(const Try& one) const {
        const std::optional<DayPlan> day = dayOf(one.piece);
        if (!day) return std::nullopt;
        const GluingDay& worst = day->gluings[static_cast<std::size_t>(day->worstGluing)];
        const auto days = schedule::simulateDays(worst.job, one.piece.crew.uncertain, daysEach, daysSeed, stop_);
        if (!days) return std::nullopt;
        return Remedy{one.what, day->margin_s, day->cupMargin_s, days->chanceInTime, one.breakAfterStrip};
    }

    std::vector<Try> all() const {
        std::vector<Try> tries;
        boat::Piece hands = piece_;
        ++hands.crew.hands;
        tries.push_back({"one more pair of hands", hands, 0});
        addSlowerGlues(tries);
        addCooler(tries);
        if (piece_.glue.vessel == boat::Vessel::cup) {
            boat::Piece tray = piece_;
            tray.glue.vessel = boat::Vessel::tray;
            tries.push_back({"the mix in shallow trays", tray, 0});
        }
        addBreak(tries);
        addThicker(tries);
        return tries;
    }

private:
    void addSlowerGlues(std::vector<Try>& tries) const {
        const glue::Adhesive* now = glue::findAdhesive(shop_.adhesives, piece_.glue.adhesive);
        if (!now) return;
        for (const glue::Adhesive& other : shop_.adhesives) {
            const bool slower = other.kind == now->kind && other.openTime_s > now->openTime_s;
            if (!slower || other.least_C > piece_.glue.air_C) continue;
            boat::Piece piece = piece_;
            piece.glue.adhesive = other.id;
            tries.push_back({"the slower " + other.name, piece, 0});
        }
    }

    void addCooler(std::vector<Try>& tries) const {
        const glue::Adhesive* now = glue::findAdhesive(shop_.adhesives, piece_.glue.adhesive);
        if (!now || piece_.glue.air_C - coolerBy_K < now->least_C) return;
        boat::Piece piece = piece_;
        piece.glue.air_C -= coolerBy_K;
        tries.push_back(
            {"the cool of the morning, " + measure::writeTemperature(piece.glue.air_C, shop_.display), piece, 0});
    }

    // The break that leaves the most time in the worse of both gluings.
    void addBreak(std::vector<Try>& tries) const {
        if (!piece_.stack.gluings.empty()) return;
        std::optional<Try> best;
        double margin_s = 0;
        for (int after = 1; after < stripsOf(piece_.stack) && !stop_; ++after) {
            Try one{"a planned break: glue " + numberWord(after) + (after == 1 ? " strip" : " strips") +
                        ", let them cure on the form, wash and sand, then the rest",
                    piece_, after};
            one.piece.stack.gluings = {after};
            const std::optional<DayPlan> day = dayOf(one.piece);
            if (day && (!best || day->margin_s > margin_s)) {
                margin_s = day->margin_s;
                best = one;
            }
        }
        if (best) tries.push_back(*best);
    }

    void addThicker(std::vector<Try>& tries) const {
        boat::Piece piece = piece_;
        auto most = std::max_element(
            piece.stack.strips.begin(), piece.stack.strips.end(),
            [](const auto& a, const auto& b) { return (a.sacrificial ? 0 : a.count) < (b.sacrificial ? 0 : b.count); });
        if (most == piece.stack.strips.end() || most->sacrificial || most->count < 3) return;
        const double thicker = static_cast<double>(most->count) / (most->count - 1);
        --most->count;
        most->thickness_m *= thicker;
        if (most->tapersTo_m) *most->tapersTo_m *= thicker;
        tries.push_back(
            {"one strip fewer, " + measure::writeThickness(most->thickness_m, shop_.display) + " thick", piece, 0});
    }

    const boat::Piece& piece_;
    const Shop& shop_;
    const line::Line& line_;
    const std::atomic<bool>& stop_;
};

}  // namespace

std::optional<std::vector<Remedy>> remediesFor(const boat::Piece& piece, const Shop& shop, const line::Line& line,
                                               const DayPlan& day, const std::atomic<bool>& stop) {
    const Trials trials(piece, shop, line, stop);
    std::vector<Remedy> remedies;
    for (const Try& one : trials.all()) {
        const std::optional<Remedy> remedy = trials.remedy(one);
        if (stop) return std::nullopt;
        if (remedy && (remedy->margin_s > day.margin_s || remedy->cupMargin_s > day.cupMargin_s))
            remedies.push_back(*remedy);
    }
    std::stable_sort(remedies.begin(), remedies.end(),
                     [](const Remedy& a, const Remedy& b) { return a.margin_s > b.margin_s; });
    return remedies;
}

std::optional<DayStudy> studyDay(const boat::Piece& piece, const Shop& shop, const line::Line& line, const DayPlan& day,
                                 const std::atomic<bool>& stop) {
    const GluingDay& worst = day.gluings[static_cast<std::size_t>(day.worstGluing)];
    const auto days = schedule::simulateDays(worst.job, piece.crew.uncertain, daysSimulated, daysSeed, stop);
    if (!days) return std::nullopt;
    DayStudy study{*days, {}};
    const bool isShort = day.margin_s < shortMargin * worst.job.openTime_s || day.cupMargin_s < 0;
    if (isShort || days->chanceInTime < shortChance || days->chanceCups < shortChance) {
        std::optional<std::vector<Remedy>> remedies = remediesFor(piece, shop, line, day, stop);
        if (!remedies) return std::nullopt;
        study.remedies = std::move(*remedies);
    }
    return study;
}

}  // namespace fayline::plan
