// How a piece is held, as the user said it: the tools at hand, the stations, and what they stand on and push against.
// Part of the document, see boat.hpp.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/model/kept.hpp"

namespace fayline::model {

enum class HoldKind { clamp, prop, jack, screw, strap, wedge };
enum class Pads { hold, slide };
enum class From { start, middle, end };
enum class Stop { none, head, foot, both };
enum class PropTo { floor, overhead };
enum class PullsFrom { start, end, both };

struct Tool {
    std::string name;
    HoldKind kind = HoldKind::clamp;
    double most_N = 2500;
    double pad_m = 0.04;
    int count = 1;
    std::optional<double> opening_m;
    std::optional<double> throat_m;
    std::optional<double> pitch_m;
    Kept kept;

    bool operator==(const Tool&) const = default;
};

struct Strut {  // a prop, a jack
    std::optional<double> footX_m;
    std::optional<double> footY_m;
    std::optional<std::array<double, 2>> section_m;
    Stop stop = Stop::none;
    PropTo to = PropTo::floor;

    bool stoppedAt(Stop end) const { return stop == end || stop == Stop::both; }
    bool operator==(const Strut&) const = default;
};

struct Screw {
    std::optional<double> diameter_m;
    std::optional<double> intoBackbone_m;
    std::optional<double> washer_m;

    bool operator==(const Screw&) const = default;
};

struct Strap {  // round the outside from the station's place to to_m
    std::optional<double> to_m;
    PullsFrom pullsFrom = PullsFrom::end;
    double friction = 0.3;

    bool operator==(const Strap&) const = default;
};

struct Station {
    HoldKind kind = HoldKind::clamp;
    double at_m = 0;
    double most_N = 2500;
    double pad_m = 0.04;
    bool fixed = false;
    bool side = false;  // only keeps the pile in line: pulls across the strips' width, presses nothing on the form
    std::optional<double> pull_N;  // pulls exactly this; absent: closes its gap with no more than most_N
    // What was said of it as one of these. Only that of its kind has an effect: see as() in hold_traits.hpp. The rest
    // is kept: the file says it again, and a kind that is changed back finds it.
    Strut strut;
    Screw screw;
    Strap strap;
    Kept kept;

    bool operator==(const Station&) const = default;
};

struct Cauls {
    double thickness_m = 0;
    Kept kept;

    bool operator==(const Cauls&) const = default;
};

struct Floor {
    double friction = 0.3;
    Kept kept;

    bool operator==(const Floor&) const = default;
};

struct Backbone {         // what screws pull on
    std::string species;  // empty: that of the strip next to it
    Kept kept;

    bool operator==(const Backbone&) const = default;
};

struct Block {
    double x_m = 0;
    double y_m = 0;
    Kept kept;

    bool operator==(const Block&) const = default;
};

struct Hull {
    double weight_kg = 0;
    double centreX_m = 0;
    double centreY_m = 0;
    double friction = 0.3;
    std::vector<Block> blocks;
    Kept kept;

    bool operator==(const Hull&) const = default;
};

struct Holding {
    Holding();
    Holding(const Holding& other);
    Holding(Holding&& other) noexcept;
    Holding& operator=(const Holding& other);
    Holding& operator=(Holding&& other) noexcept;
    ~Holding();
    bool operator==(const Holding& other) const;

    double gapLimit_m = 0.0005;
    std::optional<double>
        glueLineVaries_m;  // by how much the glue line may vary between pads; absent: by its own thickness
    Pads pads = Pads::hold;
    From from = From::start;
    std::vector<Tool> tools;
    std::vector<Station> stations;
    Cauls cauls;
    Floor floor;
    Backbone backbone;
    Hull hull;
    Kept kept;
};

}  // namespace fayline::model
