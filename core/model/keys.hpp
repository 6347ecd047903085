// The one table of the project file's keys: for each struct its keys in the order of the file, the member each one
// fills, its unit, and what is accepted. The defaults are the member initialisers of boat.hpp. Here are line, stack,
// form and holding; keys_boat.hpp has the rest, up to the boat.
//
// A table is walked by a visitor: the reader, the writer, or the list for the user guide. It is called for every key as
//     visit(key, member, rule, when)
// where `member` is a pointer to a member or a function that reaches it, and as
//     visit.inner(key, kept, walk)
// for a group in the file whose members are reached from the same struct, so that their defaults are that struct's;
// `kept` is a pointer to a member or a function like `member`.
#pragma once

#include "core/model/boat.hpp"
#include "core/model/hold_traits.hpp"
#include "core/model/rules.hpp"

namespace fayline::model {

enum class When {
    said,      // written if it stood in the file, or is not the default
    plainly,   // also in an item made by the program, so that a person sees what it is about
    place,     // the user must give it, and a file has it, unless together.cpp derives it from `written`
    required,  // must be given, and is always written
};

namespace unit {
inline constexpr auto none = units::asItIs;
inline constexpr auto N = units::asItIs;
inline constexpr auto Pa = units::asItIs;
inline constexpr auto C = units::asItIs;
inline constexpr auto kg = units::asItIs;
inline constexpr auto kg_m3 = units::asItIs;
inline constexpr auto mm = units::inMillimetres;
inline constexpr auto pct = units::inPercent;
inline constexpr auto g = units::inGrams;
inline constexpr auto g_m2 = units::inGrams;
inline constexpr auto g_per_100g = units::inPercent;
inline constexpr auto ml = units::inMillilitres;
inline constexpr auto MPa = units::inMegapascals;
inline constexpr auto min = units::inMinutes;
inline constexpr auto h = units::inHours;
inline constexpr auto m2_min = units::perMinute;
inline constexpr auto m_min = units::perMinute;
inline constexpr auto deg = units::inDegrees;
}  // namespace unit

inline constexpr auto place_mm = any(unit::mm, "a place");
inline constexpr auto length_mm = from0(unit::mm, "a length");
inline constexpr auto size_mm = above0(unit::mm, "a size");
inline constexpr auto width_mm = above0(unit::mm, "a width");
inline constexpr auto thickness_mm = above0(unit::mm, "a thickness");
inline constexpr auto friction = within(0, 10, unit::none, "a coefficient of friction");
inline constexpr auto air_C = within(-60, 150, unit::C, "a temperature");
inline constexpr auto slope = above0(unit::none, "a slope, 1 in so much");
inline constexpr auto mass_g_m2 = from0(unit::g_m2, "a mass of glue");
inline constexpr auto share_pct = within(0, 100, unit::pct, "a share");
inline constexpr auto stress_MPa = above0(unit::MPa, "a stress");
inline constexpr auto time_min = from0(unit::min, "a time");
inline constexpr auto holdKind = [] {
    Words<HoldKind, holdTraits.size()> rule{};
    for (std::size_t i = 0; i < holdTraits.size(); ++i) rule.words[i] = {holdTraits[i].kind, holdTraits[i].word};
    return rule;
}();

template <class Visit>
void keysOf(Visit& visit, const Point*) {
    visit("label", &Point::label, Text{});
    visit("x_mm", &Point::x_m, place_mm, When::place);
    visit("y_mm", &Point::y_m, place_mm, When::place);
    visit("written", &Point::written, Pair<Text>{});
    visit("read", &Point::read, words<Read>({{Read::both, "both"}, {Read::x, "x"}, {Read::y, "y"}}));
    visit("must_pass", &Point::mustPass, Truth{});
}

template <class Visit>
void keysOf(Visit& visit, const LineInput*) {
    constexpr auto heading_deg = OrNull{within(-360, 360, unit::deg, "a heading")};
    visit("points", &LineInput::points, ListOf<Group>{{}, 0, 5000, "points"}, When::required);
    visit("read_to_mm", &LineInput::readTo_m, from0(unit::mm, "a step of reading"));
    visit("fair_within_mm", &LineInput::fairWithin_m, from0(unit::mm, "a distance"));
    visit("start_heading_deg", &LineInput::startHeading_rad, heading_deg);
    visit("end_heading_deg", &LineInput::endHeading_rad, heading_deg);
    visit("take_off_mm", &LineInput::takeOff_m, from0(unit::mm, "a thickness to take off"));
    visit("describes", &LineInput::describes,
          words<Describes>({{Describes::innerFace, "inner face"},
                            {Describes::middle, "middle"},
                            {Describes::outerFace, "outer face"}}));
    visit("strips_on", &LineInput::stripsOn, words<Side>({{Side::left, "left"}, {Side::right, "right"}}));
}

template <class Visit>
void keysOf(Visit& visit, const BentBefore*) {
    visit("how", &BentBefore::how,
          words<Softened>({{Softened::no, "no"},
                           {Softened::soaked, "soaked"},
                           {Softened::steamed, "steamed"},
                           {Softened::boiled, "boiled"}}),
          When::plainly);
    visit("set_pct", &BentBefore::set, within(0, 100, unit::pct, "a share of the curve"), When::plainly);
}

template <class Visit>
void keysOf(Visit& visit, const Strips*) {
    visit("count", &Strips::count, Whole{1, 1000, "a number of strips"}, When::plainly);
    visit("thickness_mm", &Strips::thickness_m, thickness_mm, When::plainly);
    visit("species", &Strips::species, Text{}, When::plainly);
    visit("sacrificial", &Strips::sacrificial, Truth{});
    visit("moe_MPa", &Strips::moe_Pa, OrNull{above0(unit::MPa, "a stiffness")});
    visit("breaks_at_pct", &Strips::breaksAt, OrNull{above0(unit::pct, "a strain")});
    visit("tapers_to_mm", &Strips::tapersTo_m, OrNull{thickness_mm});
    visit("bent_before", &Strips::bentBefore, OrNull<Group>{});
    visit("dry_face", &Strips::dryFace, Truth{});
}

template <class Visit>
void keysOf(Visit& visit, const Width*) {
    visit("at_mm", &Width::at_m, place_mm, When::plainly);
    visit("width_mm", &Width::width_m, width_mm, When::plainly);
}

template <class Visit>
void keysOf(Visit& visit, const Pin*) {
    visit("at_mm", &Pin::at_m, place_mm, When::plainly);
}

template <class Visit>
void keysOf(Visit& visit, const Planed*) {
    visit("at_mm", &Planed::at_m, place_mm, When::plainly);
    visit("inside_mm", &Planed::inside_m, length_mm);
    visit("outside_mm", &Planed::outside_m, length_mm, When::plainly);
}

template <class Visit>
void keysOf(Visit& visit, const Scarf*) {
    visit("slope", &Scarf::slope, slope, When::plainly);
}

template <class Visit>
void keysOf(Visit& visit, const Stack*) {
    constexpr auto moisture_pct = within(0, 200, unit::pct, "a moisture");
    visit("strips", &Stack::strips, ListOf<Group>{{}, 1, 1000, "strips"});
    visit("gluings", &Stack::gluings, ListOf<Whole>{{1, 1'000'000, "a strip's place"}, 0, 1000, "places of strips"});
    visit("rip_allowance_mm", &Stack::ripAllowance_m, from0(unit::mm, "an allowance"));
    visit("widths", &Stack::widths, ListOf<Group>{{}, 1, 1000, "widths"});
    visit("glue_line_mm", &Stack::glueLine_m, from0(unit::mm, "a thickness"));
    visit("moisture_pct", &Stack::moisture, moisture_pct);
    visit("service_moisture_pct", &Stack::serviceMoisture, moisture_pct);
    visit("grain_slope", &Stack::grainSlope, within(0, 1, unit::none, "a slope of grain"));
    visit("runs_past_start_mm", &Stack::runsPastStart_m, length_mm);
    visit("runs_past_end_mm", &Stack::runsPastEnd_m, length_mm);
    visit("pins", &Stack::pins, ListOf<Group>{{}, 0, 1000, "pins"});
    visit("scarfed_start", &Stack::scarfedStart, OrNull<Group>{});
    visit("scarfed_end", &Stack::scarfedEnd, OrNull<Group>{});
    visit("planed_after", &Stack::planedAfter, ListOf<Group>{{}, 0, 1000, "places"});
}

template <class Visit>
void keysOf(Visit& visit, const Post*) {
    visit("at_mm", &Post::at_m, place_mm, When::plainly);
    visit("width_mm", &Post::width_m, width_mm);
    visit("holds_N", &Post::holds_N, from0(unit::N, "a force"));
}

template <class Visit>
void keysOf(Visit& visit, const Form*) {
    visit("kind", &Form::kind,
          words<FormKind>({{FormKind::solid, "solid"}, {FormKind::posts, "posts"}, {FormKind::inPlace, "in place"}}));
    visit("let_go", &Form::letGo, Truth{});
    visit("posts", &Form::posts, ListOf<Group>{{}, 0, 1000, "posts"});
    visit("carries_on_start_mm", &Form::carriesOnStart_m, OrNull{length_mm});
    visit("carries_on_end_mm", &Form::carriesOnEnd_m, OrNull{length_mm});
    visit("springback_factor", &Form::springbackFactor, within(0, 100, unit::none, "a factor"));
    visit("allows_for_springback", &Form::allowsForSpringback, Truth{});
    visit("fixed_at_mm", &Form::fixedAt_m, OrNull{place_mm});
}

template <class Visit>
void keysOf(Visit& visit, const Tool*) {
    visit("name", &Tool::name, Text{}, When::plainly);
    visit("kind", &Tool::kind, holdKind, When::plainly);
    visit("most_N", &Tool::most_N, above0(unit::N, "a force"), When::plainly);
    visit("pad_mm", &Tool::pad_m, length_mm);
    visit("count", &Tool::count, Whole{0, 100'000, "a number of tools"}, When::plainly);
    visit("opening_mm", &Tool::opening_m, OrNull{size_mm});
    visit("throat_mm", &Tool::throat_m, OrNull{size_mm});
    visit("pitch_mm", &Tool::pitch_m, OrNull{size_mm});
}

// A member of what was said of a station as one of these.
template <class Of, class Member>
constexpr auto partOf(Of Station::*part, Member Of::*member) {
    return [ part, member ](auto& station) -> auto& {
        return station.*part.*member;
    };
}

template <class Visit>
void keysOf(Visit& visit, const Station*) {
    visit("kind", &Station::kind, holdKind, When::plainly);
    visit("at_mm", &Station::at_m, place_mm, When::plainly);
    visit("most_N", &Station::most_N, above0(unit::N, "a force"));
    visit("pad_mm", &Station::pad_m, length_mm);
    visit("fixed", &Station::fixed, Truth{});
    visit("side", &Station::side, Truth{});
    visit("pull_N", &Station::pull_N, OrNull{from0(unit::N, "a pull")});
    visit("foot_x_mm", partOf(&Station::strut, &Strut::footX_m), OrNull{place_mm});
    visit("foot_y_mm", partOf(&Station::strut, &Strut::footY_m), OrNull{place_mm});
    visit("section_mm", partOf(&Station::strut, &Strut::section_m), OrNull<Pair<Number>>{{size_mm}});
    visit("stop", partOf(&Station::strut, &Strut::stop),
          words<Stop>({{Stop::none, "none"}, {Stop::head, "head"}, {Stop::foot, "foot"}, {Stop::both, "both"}}));
    visit("to", partOf(&Station::strut, &Strut::to),
          words<PropTo>({{PropTo::floor, "floor"}, {PropTo::overhead, "overhead"}}));
    visit("diameter_mm", partOf(&Station::screw, &Screw::diameter_m), OrNull{size_mm});
    visit("into_backbone_mm", partOf(&Station::screw, &Screw::intoBackbone_m), OrNull{length_mm});
    visit("washer_mm", partOf(&Station::screw, &Screw::washer_m), OrNull{size_mm});
    visit("to_mm", partOf(&Station::strap, &Strap::to_m), OrNull{place_mm});
    visit("pulls_from", partOf(&Station::strap, &Strap::pullsFrom),
          words<PullsFrom>({{PullsFrom::start, "start"}, {PullsFrom::end, "end"}, {PullsFrom::both, "both"}}));
    visit("friction", partOf(&Station::strap, &Strap::friction), friction);
}

template <class Visit>
void keysOf(Visit& visit, const Cauls*) {
    visit("thickness_mm", &Cauls::thickness_m, from0(unit::mm, "a thickness"));
}

template <class Visit>
void keysOf(Visit& visit, const Floor*) {
    visit("friction", &Floor::friction, friction);
}

template <class Visit>
void keysOf(Visit& visit, const Backbone*) {
    visit("species", &Backbone::species, Text{});
}

template <class Visit>
void keysOf(Visit& visit, const Block*) {
    visit("x_mm", &Block::x_m, place_mm, When::plainly);
    visit("y_mm", &Block::y_m, place_mm, When::plainly);
}

template <class Visit>
void keysOf(Visit& visit, const Hull*) {
    visit("weight_kg", &Hull::weight_kg, from0(unit::kg, "a weight"));
    visit("centre_x_mm", &Hull::centreX_m, place_mm);
    visit("centre_y_mm", &Hull::centreY_m, place_mm);
    visit("friction", &Hull::friction, friction);
    visit("blocks", &Hull::blocks, ListOf<Group>{{}, 0, 1000, "blocks"});
}

template <class Visit>
void keysOf(Visit& visit, const Holding*) {
    visit("gap_limit_mm", &Holding::gapLimit_m, from0(unit::mm, "a gap"));
    visit("glue_line_varies_mm", &Holding::glueLineVaries_m, OrNull{from0(unit::mm, "a thickness")});
    visit("pads", &Holding::pads, words<Pads>({{Pads::hold, "hold"}, {Pads::slide, "slide"}}));
    visit("from", &Holding::from, words<From>({{From::start, "start"}, {From::middle, "middle"}, {From::end, "end"}}));
    visit("tools", &Holding::tools, ListOf<Group>{{}, 0, 1000, "tools"});
    visit("stations", &Holding::stations, ListOf<Group>{{}, 0, 1000, "stations"});
    visit("cauls", &Holding::cauls, Group{});
    visit("floor", &Holding::floor, Group{});
    visit("backbone", &Holding::backbone, Group{});
    visit("hull", &Holding::hull, Group{});
}

}  // namespace fayline::model
