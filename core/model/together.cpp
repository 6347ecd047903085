#include "core/model/together.hpp"

#include <map>
#include <numeric>
#include <set>

#include "core/units/input_error.hpp"
#include "core/units/length.hpp"

namespace fayline::model {

using units::InputError;

std::optional<double> coordinateAsWritten(const Point& point, int axis, units::LengthNotation notation) {
    try {
        return units::readLength(point.written[axis], notation);
    } catch (const InputError&) {
        return std::nullopt;
    }
}

namespace {

std::string item(const std::string& list, std::size_t i) {
    return list + "[" + std::to_string(i) + "]";
}

void complete(Point& point, const std::string& path, units::LengthNotation notation) {
    for (int axis = 0; axis < 2; ++axis) {
        const std::string key = axis == 0 ? "x_mm" : "y_mm";
        if (point.kept.given.contains(key)) continue;
        if (!point.kept.given.contains("written"))
            throw InputError(path + "." + key, "this place is missing",
                             "give a number, or the length under \"written\"");
        try {
            (axis == 0 ? point.x_m : point.y_m) = units::readLength(point.written[axis], notation);
        } catch (const InputError& error) {
            throw error.within(item(path + ".written", axis));
        }
    }
}

void check(const Stack& stack, const std::string& path) {
    for (std::size_t i = 0; i < stack.widths.size(); ++i)
        for (std::size_t k = 0; k < i; ++k)
            if (stack.widths[i].at_m == stack.widths[k].at_m)
                throw InputError(item(path + "widths", i) + ".at_mm", "a width is given twice for this place",
                                 "give one width for each place");

    for (std::size_t i = 0; i < stack.planedAfter.size(); ++i)
        for (std::size_t k = 0; k < i; ++k)
            if (stack.planedAfter[i].at_m == stack.planedAfter[k].at_m)
                throw InputError(item(path + "planed_after", i) + ".at_mm",
                                 "what is planed is given twice for this place", "give each place once");

    const int strips = std::accumulate(stack.strips.begin(), stack.strips.end(), 0,
                                       [](int sum, const Strips& alike) { return sum + alike.count; });
    for (std::size_t i = 0; i < stack.gluings.size(); ++i) {
        const std::string told = std::to_string(stack.gluings[i]);
        if (stack.gluings[i] > strips)
            throw InputError(item(path + "gluings", i), told + " lies beyond the last strip",
                             "give a strip's place, 1 to " + std::to_string(strips));
        if (i > 0 && stack.gluings[i] <= stack.gluings[i - 1])
            throw InputError(item(path + "gluings", i),
                             told + " does not follow " + std::to_string(stack.gluings[i - 1]),
                             "give the places in rising order, each once");
    }
}

void check(const std::vector<Board>& boards, const std::string& path) {
    for (std::size_t i = 0; i < boards.size(); ++i)
        for (std::size_t k = 0; k < boards[i].bad.size(); ++k) {
            const BadStretch& bad = boards[i].bad[k];
            const std::string at = item(item(path, i) + ".bad", k);
            if (bad.to_m < bad.from_m)
                throw InputError(at + ".to_mm", "the bad stretch ends before it begins", "give a place beyond from_mm");
            if (bad.acrossTo_m && *bad.acrossTo_m < bad.acrossFrom_m.value_or(0))
                throw InputError(at + ".across_to_mm", "the bad stretch ends before it begins",
                                 "give a place beyond across_from_mm");
        }
}

void check(const Stock& stock, const std::string& path) {
    check(stock.boards, path + "boards");
    check(stock.buy, path + "buy");
    for (std::size_t i = 0; i < stock.pins.size(); ++i)
        for (std::size_t k = 0; k < i; ++k)
            if (stock.pins[i].place == stock.pins[k].place)
                throw InputError(item(path + "pins", i) + ".place", "this strip is pinned twice",
                                 "give each strip one board");
    for (std::size_t i = 0; i < stock.cut.size(); ++i) {
        const StripCut& cut = stock.cut[i];
        const auto refuseEnd = [&](const char* key, const char* first) {
            throw InputError(item(path + "cut", i) + key, "what was cut ends before it begins",
                             std::string("give a place beyond ") + first);
        };
        if (cut.acrossTo_m < cut.acrossFrom_m) refuseEnd(".across_to_mm", "across_from_mm");
        if (cut.deepTo_m < cut.deepFrom_m) refuseEnd(".deep_to_mm", "deep_from_mm");
    }
}

void check(const OwnAdhesive& adhesive, const std::string& path) {
    const auto none = [](const std::array<double, 2>& parts) { return parts[0] <= 0; };
    if (none(adhesive.partsByVolume))
        throw InputError(path + ".parts_by_volume[0]", "0 is not a part of a mix", "give a number above 0");
    if (none(adhesive.partsByWeight))
        throw InputError(path + ".parts_by_weight[0]", "0 is not a part of a mix", "give a number above 0");
}

constexpr std::size_t longestId = 64;

void checkIds(const Boat& boat) {
    std::map<std::string_view, std::size_t> first;
    for (std::size_t i = 0; i < boat.pieces.size(); ++i) {
        const std::string& id = boat.pieces[i].id;
        if (id.size() > longestId)
            throw InputError(item("pieces", i) + ".id",
                             "this id is longer than " + std::to_string(longestId) + " bytes",
                             "give a short text that no other piece has");
        const auto [at, isNew] = first.emplace(id, i);
        if (!isNew)
            throw InputError(item("pieces", i) + ".id",
                             "\"" + id + "\" is the id of " + item("pieces", at->second) + " too",
                             "give each piece an id of its own, or leave one out");
    }
}

}  // namespace

void giveMissingIds(Boat& boat) {
    std::set<std::string> taken;
    for (const Piece& piece : boat.pieces) taken.insert(piece.id);
    for (std::size_t i = 0; i < boat.pieces.size(); ++i) {
        if (!boat.pieces[i].id.empty()) continue;
        std::size_t number = i + 1;
        while (!taken.insert("p" + std::to_string(number)).second) ++number;
        boat.pieces[i].id = "p" + std::to_string(number);
    }
}

void checkTogether(const Piece& piece, const std::string& path) {
    check(piece.stack, path + "stack.");
    check(piece.stock, path + "stock.");
}

void checkTogether(const Shed& shed) {
    if (shed.stock) check(*shed.stock, "stock.");
    for (std::size_t i = 0; i < shed.adhesives.size(); ++i) check(shed.adhesives[i], item("adhesives", i));
    const auto checkOnce = [](const auto& all, const std::string& list) {
        std::map<std::string_view, std::size_t> first;
        for (std::size_t i = 0; i < all.size(); ++i) {
            const auto [at, isNew] = first.emplace(all[i].id, i);
            if (!isNew)
                throw InputError(item(list, i) + ".id",
                                 "\"" + all[i].id + "\" is the id of " + item(list, at->second) + " too",
                                 "give each an id of its own");
        }
    };
    checkOnce(shed.adhesives, "adhesives");
    checkOnce(shed.species, "species");
}

void completeAndCheck(Boat& boat) {
    check(boat.boards, "boards");
    for (std::size_t i = 0; i < boat.adhesives.size(); ++i) check(boat.adhesives[i], item("adhesives", i));
    for (std::size_t i = 0; i < boat.pieces.size(); ++i) {
        Piece& piece = boat.pieces[i];
        const std::string path = item("pieces", i) + ".";
        for (std::size_t k = 0; k < piece.line.points.size(); ++k)
            complete(piece.line.points[k], item(path + "line.points", k), boat.display.lengths);
        for (std::size_t k = 0; k < piece.record.size(); ++k) {
            if (!piece.record[k].on) continue;
            const std::string on = item(path + "record", k) + ".on.";
            std::vector<Point>& points = piece.record[k].on->line.points;
            for (std::size_t j = 0; j < points.size(); ++j)
                complete(points[j], item(on + "line.points", j), boat.display.lengths);
        }
        checkTogether(piece, path);
    }
    giveMissingIds(boat);
    checkIds(boat);
}

}  // namespace fayline::model
