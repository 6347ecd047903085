// My shed: what one builder has and does, given once for all boats. New boats and pieces begin with it; a piece keeps
// its own copy of all that it uses, so that planning never reads the shed and a boat opens alike elsewhere.
//
// Plain data in SI as in boat.hpp; keys_shed.hpp names each key of its file, io/shed_file.hpp reads and writes it.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/model/boat.hpp"

namespace fayline::model {

struct UsualUnits {
    units::Display display;
    Kept kept;

    bool operator==(const UsualUnits&) const = default;
};

struct UsualGlue {
    Glue glue;  // but for its air, which says nothing here
    Kept kept;

    bool operator==(const UsualGlue&) const = default;
};

struct UsualAir {
    Glue glue;  // of which only air, humidity, air over night and tent say anything
    Kept kept;

    bool operator==(const UsualAir&) const = default;
};

struct Shed {  // a part that is absent was never given
    std::optional<UsualUnits> display;
    std::optional<std::vector<Tool>> tools;
    std::optional<UsualGlue> glue;
    std::optional<UsualAir> air;
    std::optional<Crew> crew;
    std::optional<Stock> stock;
    std::vector<OwnAdhesive> adhesives;
    std::vector<OwnSpecies> species;
    std::vector<Trial> trials;
    Kept kept;  // of the whole file

    bool operator==(const Shed&) const = default;
};

// What is kept, used and compared as a whole. `woods` are the user's own woods and the trials of any wood.
enum class ShedPart { tools, glue, air, crew, stock, units, glues, woods };
std::span<const ShedPart> allShedParts();
bool isOfPiece(ShedPart part);  // else of the boat: units, glues, woods

bool has(const Shed& shed, ShedPart part);
bool same(const Shed& one, const Shed& other, ShedPart part);
void put(Shed& shed, ShedPart part, const Shed& other);  // exactly as the other shed has it, or has it not
void drop(Shed& shed, ShedPart part);  // without its own glues the usual glue is the program's usual one again

// Copies the part of the boat, or of `piece` where isOfPiece, into the shed. Glues and woods are added to those that
// are there; one with the same id is replaced, and so are all trials of a wood that the boat has trials of. With the
// usual glue comes that glue, with boards come their woods, where they are the boat's own.
void keep(Shed& shed, ShedPart part, const Boat& boat, const Piece& piece);
// The same with the part of another shed: nothing where that has none.
void keep(Shed& shed, ShedPart part, const Shed& other);

// Gives the piece the shed's part; nothing where the shed has none, or where the part is not of a piece.
void use(const Shed& shed, ShedPart part, Piece& piece);
bool isUsed(const Shed& shed, ShedPart part, const Piece& piece);  // using it would change nothing

// The piece with all that the shed has for it.
Piece withShed(Piece piece, const Shed& shed);

// What a boat lacks of the glues and woods in the shed.
struct Brought {
    std::vector<OwnAdhesive> adhesives;
    std::vector<OwnSpecies> species;
    std::vector<Trial> trials;  // of woods of which the boat has none

    bool any() const { return !adhesives.empty() || !species.empty() || !trials.empty(); }
};
// Of the glue and the woods that `after` names and `before` does not; null: of all that `after` names.
Brought lackingFor(const Boat& boat, const Piece* before, const Piece& after, const Shed& shed);
// Of all glues, or all woods, of the shed.
Brought lacking(const Boat& boat, ShedPart part, const Shed& shed);
void bring(Boat& boat, const Brought& brought);

}  // namespace fayline::model
