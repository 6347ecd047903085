#include "core/model/shed.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <set>
#include <string>

namespace fayline::model {

namespace {

constexpr std::array shedParts{ShedPart::tools, ShedPart::glue,  ShedPart::air,   ShedPart::crew,
                               ShedPart::stock, ShedPart::units, ShedPart::glues, ShedPart::woods};

// The air of one and all else of the other.
Glue together(const Glue& air, const Glue& glue) {
    Glue both = glue;
    both.air_C = air.air_C;
    both.humidity = air.humidity;
    both.airOverNight_C = air.airOverNight_C;
    both.tent = air.tent;
    return both;
}

// What stands in a shed of a piece's glue says nothing of what it is not about.
Glue glueOnly(const Glue& glue) {
    Glue only = together(Glue{}, glue);
    only.kept = {};
    return only;
}

Glue airOnly(const Glue& glue) {
    Glue only = together(glue, Glue{});
    only.kept = {};
    return only;
}

Glue withGlue(const Glue& of, const UsualGlue& usual) {
    Glue result = together(of, usual.glue);
    result.kept = of.kept;
    return result;
}

Glue withAir(const Glue& of, const UsualAir& usual) {
    return together(usual.glue, of);
}

// Which strips were wanted from which board, and which were cut, is of one piece.
Stock stockOnly(const Stock& stock) {
    Stock only = stock;
    only.pins.clear();
    only.cut.clear();
    return only;
}

Stock withStock(const Stock& of, const Stock& usual) {
    Stock result = usual;
    result.pins = of.pins;
    result.cut = of.cut;
    return result;
}

template <class Own>
bool holds(const std::vector<Own>& all, const std::string& id) {
    return std::ranges::any_of(all, [&](const Own& one) { return one.id == id; });
}

template <class Own>
std::vector<Own> those(const std::vector<Own>& all, const auto& wanted) {
    std::vector<Own> some;
    std::ranges::copy_if(all, std::back_inserter(some), [&](const Own& one) { return wanted(one.id); });
    return some;
}

// Of those with one id the later one stays, in the earlier one's place.
template <class Own>
void add(std::vector<Own>& all, const std::vector<Own>& more) {
    for (const Own& one : more) {
        const auto found = std::ranges::find(all, one.id, &Own::id);
        if (found == all.end()) {
            all.push_back(one);
        } else {
            *found = one;
        }
    }
}

void add(std::vector<Trial>& all, const std::vector<Trial>& more) {
    std::set<std::string> woods;
    for (const Trial& trial : more) woods.insert(trial.species);
    std::erase_if(all, [&](const Trial& trial) { return woods.contains(trial.species); });
    all.insert(all.end(), more.begin(), more.end());
}

std::set<std::string> woodsOf(const Piece& piece) {
    std::set<std::string> woods;
    for (const Strips& strips : piece.stack.strips) woods.insert(strips.species);
    woods.insert(piece.holding.backbone.species);
    woods.erase(std::string());  // that of the strip next to it
    return woods;
}

// Those of `from` that `wanted` names and `boat` lacks.
Brought lackingOf(const Boat& boat, const Shed& from, const auto& wantedGlue, const auto& wantedWood) {
    Brought brought;
    for (const OwnAdhesive& one : from.adhesives) {
        if (wantedGlue(one.id) && !holds(boat.adhesives, one.id)) brought.adhesives.push_back(one);
    }
    for (const OwnSpecies& one : from.species) {
        if (wantedWood(one.id) && !holds(boat.species, one.id)) brought.species.push_back(one);
    }
    for (const Trial& one : from.trials) {
        const auto ofIt = [&](const Trial& trial) { return trial.species == one.species; };
        if (wantedWood(one.species) && std::ranges::none_of(boat.trials, ofIt)) brought.trials.push_back(one);
    }
    return brought;
}

// What `call` gives of the members of Shed that are this part.
auto withMembers(ShedPart part, const auto& call) {
    switch (part) {
        case ShedPart::tools:
            return call(&Shed::tools);
        case ShedPart::glue:
            return call(&Shed::glue);
        case ShedPart::air:
            return call(&Shed::air);
        case ShedPart::crew:
            return call(&Shed::crew);
        case ShedPart::stock:
            return call(&Shed::stock);
        case ShedPart::units:
            return call(&Shed::display);
        case ShedPart::glues:
            return call(&Shed::adhesives);
        case ShedPart::woods:
            break;
    }
    return call(&Shed::species, &Shed::trials);
}

template <class Part>
bool isGiven(const std::optional<Part>& part) {
    return part.has_value();
}
template <class Own>
bool isGiven(const std::vector<Own>& all) {
    return !all.empty();
}

constexpr auto noId = [](const std::string&) { return false; };
constexpr auto anyId = [](const std::string&) { return true; };

}  // namespace

std::span<const ShedPart> allShedParts() {
    return shedParts;
}

bool isOfPiece(ShedPart part) {
    return part != ShedPart::units && part != ShedPart::glues && part != ShedPart::woods;
}

bool has(const Shed& shed, ShedPart part) {
    return withMembers(part, [&](auto... members) { return (isGiven(shed.*members) || ...); });
}

void put(Shed& shed, ShedPart part, const Shed& other) {
    withMembers(part, [&](auto... members) { ((shed.*members = other.*members), ...); });
}

bool same(const Shed& one, const Shed& other, ShedPart part) {
    Shed changed = one;
    put(changed, part, other);
    return changed == one;
}

void drop(Shed& shed, ShedPart part) {
    const bool isOwn = shed.glue && holds(shed.adhesives, shed.glue->glue.adhesive);
    if (part == ShedPart::glues && isOwn) shed.glue->glue.adhesive = Glue{}.adhesive;
    put(shed, part, Shed{});
}

void keep(Shed& shed, ShedPart part, const Boat& boat, const Piece& piece) {
    Shed other;
    other.display = UsualUnits{boat.display, shed.display.value_or(UsualUnits{}).kept};
    other.tools = piece.holding.tools;
    other.glue = UsualGlue{glueOnly(piece.glue), shed.glue.value_or(UsualGlue{}).kept};
    other.air = UsualAir{airOnly(piece.glue), shed.air.value_or(UsualAir{}).kept};
    other.crew = piece.crew;
    other.stock = stockOnly(piece.stock);
    if (other.stock->boards.empty()) other.stock->boards = boat.boards;
    other.adhesives = boat.adhesives;
    other.species = boat.species;
    other.trials = boat.trials;
    keep(shed, part, other);
    if (part == ShedPart::glue)
        add(shed.adhesives, those(boat.adhesives, [&](const auto& id) { return id == piece.glue.adhesive; }));
    if (part == ShedPart::stock) {
        add(shed.species, those(boat.species, [&](const auto& id) {
                return std::ranges::any_of(shed.stock->boards, [&](const Board& one) { return one.species == id; });
            }));
    }
}

void keep(Shed& shed, ShedPart part, const Shed& other) {
    if (!has(other, part)) return;
    if (part == ShedPart::glues) return add(shed.adhesives, other.adhesives);
    if (part != ShedPart::woods) return put(shed, part, other);
    add(shed.species, other.species);
    add(shed.trials, other.trials);
}

void use(const Shed& shed, ShedPart part, Piece& piece) {
    if (!isOfPiece(part) || !has(shed, part)) return;
    if (part == ShedPart::tools) piece.holding.tools = *shed.tools;
    if (part == ShedPart::glue) piece.glue = withGlue(piece.glue, *shed.glue);
    if (part == ShedPart::air) piece.glue = withAir(piece.glue, *shed.air);
    if (part == ShedPart::crew) piece.crew = *shed.crew;
    if (part == ShedPart::stock) piece.stock = withStock(piece.stock, *shed.stock);
}

bool isUsed(const Shed& shed, ShedPart part, const Piece& piece) {
    if (!isOfPiece(part) || !has(shed, part)) return true;
    switch (part) {
        case ShedPart::tools:
            return piece.holding.tools == *shed.tools;
        case ShedPart::glue:
            return piece.glue == withGlue(piece.glue, *shed.glue);
        case ShedPart::air:
            return piece.glue == withAir(piece.glue, *shed.air);
        case ShedPart::crew:
            return piece.crew == *shed.crew;
        case ShedPart::stock:
            return piece.stock == withStock(piece.stock, *shed.stock);
        default:
            return true;
    }
}

Piece withShed(Piece piece, const Shed& shed) {
    for (const ShedPart part : shedParts) use(shed, part, piece);
    return piece;
}

Brought lackingFor(const Boat& boat, const Piece* before, const Piece& after, const Shed& shed) {
    const std::set<std::string> known = before ? woodsOf(*before) : std::set<std::string>();
    const std::set<std::string> woods = woodsOf(after);
    const bool sameGlue = before && before->glue.adhesive == after.glue.adhesive;
    return lackingOf(
        boat, shed, [&](const std::string& id) { return !sameGlue && id == after.glue.adhesive; },
        [&](const std::string& id) { return woods.contains(id) && !known.contains(id); });
}

Brought lacking(const Boat& boat, ShedPart part, const Shed& shed) {
    if (part == ShedPart::glues) return lackingOf(boat, shed, anyId, noId);
    if (part == ShedPart::woods) return lackingOf(boat, shed, noId, anyId);
    return {};
}

void bring(Boat& boat, const Brought& brought) {
    boat.adhesives.insert(boat.adhesives.end(), brought.adhesives.begin(), brought.adhesives.end());
    boat.species.insert(boat.species.end(), brought.species.begin(), brought.species.end());
    boat.trials.insert(boat.trials.end(), brought.trials.begin(), brought.trials.end());
}

}  // namespace fayline::model
