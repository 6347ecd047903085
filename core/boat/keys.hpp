// The one table of the project file's keys: for each struct its keys in the order of the file, the member each one
// fills, its unit, and what is accepted. The defaults are the member initialisers of boat.hpp.
//
// A table is walked by a visitor: the reader, the writer, or the list for the user guide. It is called for every key as
//     visit(key, member, rule, when)
// where `member` is a pointer to a member or a function that reaches it, and as
//     visit.inner(key, kept, walk)
// for a group in the file whose members are reached from the same struct, so that their defaults are that struct's;
// `kept` is a pointer to a member or a function like `member`.
#pragma once

#include "core/boat/boat.hpp"
#include "core/boat/rules.hpp"

namespace fayline::boat {

enum class When {
    said,      // written if it stood in the file, or is not the default
    plainly,   // also in an item made by the program, so that a person sees what it is about
    place,     // must be given unless it follows from `written`, and is written unless it does: see together.hpp
    required,  // must be given, and is always written
};

namespace unit {
inline constexpr auto none = measure::asItIs;
inline constexpr auto N = measure::asItIs;
inline constexpr auto Pa = measure::asItIs;
inline constexpr auto C = measure::asItIs;
inline constexpr auto kg = measure::asItIs;
inline constexpr auto kg_m3 = measure::asItIs;
inline constexpr auto mm = measure::inMillimetres;
inline constexpr auto pct = measure::inPercent;
inline constexpr auto g = measure::inGrams;
inline constexpr auto g_m2 = measure::inGrams;
inline constexpr auto g_per_100g = measure::inPercent;
inline constexpr auto ml = measure::inMillilitres;
inline constexpr auto MPa = measure::inMegapascals;
inline constexpr auto min = measure::inMinutes;
inline constexpr auto h = measure::inHours;
inline constexpr auto m2_min = measure::perMinute;
inline constexpr auto m_min = measure::perMinute;
inline constexpr auto deg = measure::inDegrees;
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
inline constexpr auto holdKind = words<HoldKind>({{HoldKind::clamp, "clamp"},
                                                  {HoldKind::prop, "prop"},
                                                  {HoldKind::jack, "jack"},
                                                  {HoldKind::screw, "screw"},
                                                  {HoldKind::strap, "strap"},
                                                  {HoldKind::wedge, "wedge"}});

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

template <class Visit>
void keysOf(Visit& visit, const Station*) {
    visit("kind", &Station::kind, holdKind, When::plainly);
    visit("at_mm", &Station::at_m, place_mm, When::plainly);
    visit("most_N", &Station::most_N, above0(unit::N, "a force"));
    visit("pad_mm", &Station::pad_m, length_mm);
    visit("fixed", &Station::fixed, Truth{});
    visit("side", &Station::side, Truth{});
    visit("pull_N", &Station::pull_N, OrNull{from0(unit::N, "a pull")});
    visit("foot_x_mm", &Station::footX_m, OrNull{place_mm});
    visit("foot_y_mm", &Station::footY_m, OrNull{place_mm});
    visit("section_mm", &Station::section_m, OrNull<Pair<Number>>{{size_mm}});
    visit("stop", &Station::stop,
          words<Stop>({{Stop::none, "none"}, {Stop::head, "head"}, {Stop::foot, "foot"}, {Stop::both, "both"}}));
    visit("to", &Station::to, words<PropTo>({{PropTo::floor, "floor"}, {PropTo::overhead, "overhead"}}));
    visit("diameter_mm", &Station::diameter_m, OrNull{size_mm});
    visit("into_backbone_mm", &Station::intoBackbone_m, OrNull{length_mm});
    visit("washer_mm", &Station::washer_m, OrNull{size_mm});
    visit("to_mm", &Station::to_m, OrNull{place_mm});
    visit("pulls_from", &Station::pullsFrom,
          words<PullsFrom>({{PullsFrom::start, "start"}, {PullsFrom::end, "end"}, {PullsFrom::both, "both"}}));
    visit("friction", &Station::friction, friction);
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

template <class Visit>
void keysOf(Visit& visit, const Tent*) {
    visit("from_h", &Tent::from_s, from0(unit::h, "a time"));
    visit("hours", &Tent::lasts_s, from0(unit::h, "a time"));
    visit("air_C", &Tent::air_C, air_C);
}

template <class Visit>
void keysOf(Visit& visit, const Glue*) {
    visit("adhesive", &Glue::adhesive, Text{});
    visit("paste_yield_Pa", &Glue::pasteYield_Pa, from0(unit::Pa, "a yield stress"));
    visit("air_C", &Glue::air_C, air_C);
    visit("humidity_pct", &Glue::humidity, within(0, 100, unit::pct, "a relative humidity"));
    visit("air_over_night_C", &Glue::airOverNight_C, air_C);
    visit("tent", &Glue::tent, Group{});
    visit("faces", &Glue::faces,
          words<Faces>({{Faces::planed, "planed"}, {Faces::sanded, "sanded"}, {Faces::sawn, "sawn"}}));
    visit("wet_out_g_m2", &Glue::wetOut_kg_m2, mass_g_m2);
    visit("spread_g_m2", &Glue::spread_kg_m2, mass_g_m2);
    visit("both_faces", &Glue::bothFaces, Truth{});
    visit("thinner_pct", &Glue::thinner, share_pct);
    visit("filler_g_per_100g", &Glue::filler, from0(unit::g_per_100g, "an amount of filler"));
    visit("waste_pct", &Glue::waste, from0(unit::pct, "a share"));
    visit("cup_ml", &Glue::cup_m3, above0(unit::ml, "a volume"));
    visit("vessel", &Glue::vessel, words<Vessel>({{Vessel::cup, "cup"}, {Vessel::tray, "tray"}}));
    visit("scale_reads_g", &Glue::scaleReads_kg, above0(unit::g, "a step of a scale"));
    visit("measured_by", &Glue::measuredBy,
          words<MeasuredBy>({{MeasuredBy::scale, "scale"}, {MeasuredBy::cup, "cup"}}));
    visit("cup_reads_ml", &Glue::cupReads_m3, above0(unit::ml, "a step between marks"));
    visit("surface_work", &Glue::surfaceWork,
          words<SurfaceWork>({{SurfaceWork::nothing, "nothing"},
                              {SurfaceWork::wiped, "wiped"},
                              {SurfaceWork::sandedAndWiped, "sanded and wiped"}}));
}

template <class Visit>
void keysOf(Visit& visit, const StationTimes*) {
    visit("clamp", &StationTimes::clamp_s, time_min);
    visit("prop", &StationTimes::prop_s, time_min);
    visit("jack", &StationTimes::jack_s, time_min);
    visit("screw", &StationTimes::screw_s, time_min);
}

template <class Visit>
void keysOf(Visit& visit, const Rates*) {
    visit("mix_min", &Rates::mix_s, time_min);
    visit("wet_out_m2_min", &Rates::wetOut_m2_s, above0(unit::m2_min, "a rate"));
    visit("spread_m2_min", &Rates::spread_m2_s, above0(unit::m2_min, "a rate"));
    visit("stack_strip_min", &Rates::stackStrip_s, time_min);
    visit("carry_min", &Rates::carry_s, time_min);
    visit("station_min", &Rates::station, Group{});
    visit("scrape_m_min", &Rates::scrape_m_s, above0(unit::m_min, "a rate"));
    visit("wipe_m2_min", &Rates::wipe_m2_s, above0(unit::m2_min, "a rate"));
    visit("sand_m2_min", &Rates::sand_m2_s, above0(unit::m2_min, "a rate"));
    visit("soak_min", &Rates::soak_s, time_min);
}

template <class Visit>
void mishapOf(Visit& visit, std::string_view key, Mishap Mishaps::*which) {
    visit.inner(
        key, [which](auto& mishaps) -> auto& { return (mishaps.*which).kept; },
        [which](auto& group) {
            group("chance_pct", [which](auto& mishaps) -> auto& { return (mishaps.*which).chance; }, share_pct);
            group("min", [which](auto& mishaps) -> auto& { return (mishaps.*which).lasts_s; }, time_min);
        });
}

template <class Visit>
void keysOf(Visit& visit, const Mishaps*) {
    mishapOf(visit, "strip_breaks", &Mishaps::stripBreaks);
    mishapOf(visit, "clamp_slips", &Mishaps::clampSlips);
    mishapOf(visit, "cup_spills", &Mishaps::cupSpills);
}

template <class Visit>
void keysOf(Visit& visit, const Crew*) {
    visit("hands", &Crew::hands, Whole{1, 1000, "a number of hands"});
    visit("start_at", &Crew::startAt_s, Clock{});
    visit("rates", &Crew::rates, Group{});
    visit("uncertain_pct", &Crew::uncertain, share_pct);
    visit("pace_pct", &Crew::pace, share_pct);
    visit("glue_uncertain_pct", &Crew::glueUncertain, share_pct);
    visit("mishaps", &Crew::mishaps, Group{});
}

template <class Visit>
void keysOf(Visit& visit, const BadStretch*) {
    visit("from_mm", &BadStretch::from_m, place_mm, When::plainly);
    visit("to_mm", &BadStretch::to_m, place_mm, When::plainly);
}

template <class Visit>
void keysOf(Visit& visit, const Board*) {
    visit("name", &Board::name, Text{}, When::plainly);
    visit("length_mm", &Board::length_m, above0(unit::mm, "a length"), When::plainly);
    visit("width_mm", &Board::width_m, width_mm, When::plainly);
    visit("thickness_mm", &Board::thickness_m, thickness_mm, When::plainly);
    visit("count", &Board::count, Whole{0, 100'000, "a number of boards"}, When::plainly);
    visit("species", &Board::species, Text{}, When::plainly);
    visit("bad", &Board::bad, ListOf<Group>{{}, 0, 1000, "bad stretches"});
    visit("price", &Board::price, from0(unit::none, "a price"));
}

template <class Visit>
void keysOf(Visit& visit, const Stock*) {
    visit("boards", &Stock::boards, ListOf<Group>{{}, 0, 1000, "boards"});
    visit("kerf_mm", &Stock::kerf_m, from0(unit::mm, "a saw cut"));
    visit("planing_mm", &Stock::planing_m, from0(unit::mm, "an allowance"));
    visit("scarf_slope", &Stock::scarfSlope, slope);
    visit("spares", &Stock::spares, OrWord<Whole>{{0, 1000, "a number of strips"}, "auto"});
}

template <class Visit>
void keysOf(Visit& visit, const TimeMark*) {
    visit("task", &TimeMark::task, Text{}, When::plainly);
    visit("at_min", &TimeMark::at_s, any(unit::min, "a time"), When::plainly);
}

template <class Visit>
void keysOf(Visit& visit, const AirMark*) {
    visit("at_min", &AirMark::at_s, any(unit::min, "a time"), When::plainly);
    visit("air_C", &AirMark::air_C, air_C, When::plainly);
}

template <class Visit>
void keysOf(Visit& visit, const LetGo*) {
    visit("after_h", &LetGo::after_s, from0(unit::h, "a time"), When::plainly);
    visit("chord_form_mm", &LetGo::chordForm_m, length_mm);
    visit("chord_piece_mm", &LetGo::chordPiece_m, length_mm);
    visit("rise_piece_mm", &LetGo::risePiece_m, place_mm);
}

template <class Visit>
void keysOf(Visit& visit, const MeasuredOn*) {
    visit("line", &MeasuredOn::line, Group{}, When::required);
    visit("stack", &MeasuredOn::stack, Group{});
    visit("form", &MeasuredOn::form, Group{});
}

template <class Visit>
void keysOf(Visit& visit, const Record*) {
    visit("when", &Record::when, DateTime{}, When::plainly);
    visit("dry_fit", &Record::dryFit, Truth{});
    visit("air_C", &Record::air_C, OrNull{air_C});
    visit("marks", &Record::marks, ListOf<Group>{{}, 0, 10'000, "marks"});
    visit("airs", &Record::airs, ListOf<Group>{{}, 0, 10'000, "temperatures"});
    visit("let_go", &Record::letGo, ListOf<Group>{{}, 0, 10'000, "readings"});
    visit("on", &Record::on, OrNull<Group>{});
    visit("notes", &Record::notes, Text{});
}

template <class Visit>
void keysOf(Visit& visit, const Piece*) {
    visit("id", &Piece::id, Text{});
    visit("name", &Piece::name, Text{}, When::required);
    visit("line", &Piece::line, Group{}, When::required);
    visit("stack", &Piece::stack, Group{});
    visit("form", &Piece::form, Group{});
    visit("holding", &Piece::holding, Group{});
    visit("glue", &Piece::glue, Group{});
    visit("crew", &Piece::crew, Group{});
    visit("stock", &Piece::stock, Group{});
    visit("record", &Piece::record, ListOf<Group>{{}, 0, 10'000, "glue-ups and dry fits"});
}

template <class Visit>
void keysOf(Visit& visit, const OwnSpecies*) {
    visit("id", &OwnSpecies::id, Text{}, When::plainly);
    visit("name", &OwnSpecies::name, Text{}, When::plainly);
    visit("sg", &OwnSpecies::sg, above0(unit::none, "a specific gravity"), When::plainly);
    visit("mor_MPa", &OwnSpecies::mor_Pa, above0(unit::MPa, "a strength"), When::plainly);
    visit("moe_MPa", &OwnSpecies::moe_Pa, above0(unit::MPa, "a stiffness"), When::plainly);
    visit("compression_along_MPa", &OwnSpecies::compressionAlong_Pa, OrNull{stress_MPa});
    visit("compression_across_MPa", &OwnSpecies::compressionAcross_Pa, OrNull{stress_MPa});
    visit("shear_MPa", &OwnSpecies::shear_Pa, OrNull{stress_MPa});
    visit("shrink_radial_pct", &OwnSpecies::shrinkRadial, OrNull{share_pct});
    visit("shrink_tangential_pct", &OwnSpecies::shrinkTangential, OrNull{share_pct});
    visit("hardwood", &OwnSpecies::hardwood, Truth{}, When::plainly);
    visit("source", &OwnSpecies::source, Text{});
}

template <class Visit>
void keysOf(Visit& visit, const Trial*) {
    visit("when", &Trial::when, DateTime{}, When::plainly);
    visit("species", &Trial::species, Text{}, When::plainly);
    visit("span_mm", &Trial::span_m, above0(unit::mm, "a span"), When::plainly);
    visit("width_mm", &Trial::width_m, width_mm, When::plainly);
    visit("thickness_mm", &Trial::thickness_m, thickness_mm, When::plainly);
    visit("weight_kg", &Trial::weight_kg, above0(unit::kg, "a weight"), When::plainly);
    visit("sag_mm", &Trial::sag_m, above0(unit::mm, "a sag"), When::plainly);
    visit("read_to_mm", &Trial::readTo_m, from0(unit::mm, "a step of reading"));
    visit("moisture_pct", &Trial::moisture, within(0, 200, unit::pct, "a moisture"));
    visit("broke", &Trial::broke, Truth{});
    visit("notes", &Trial::notes, Text{});
}

template <class Visit>
void keysOf(Visit& visit, const PotLife*) {
    visit("min", &PotLife::lasts_s, above0(unit::min, "a time"), When::plainly);
    visit("at_C", &PotLife::at_C, air_C, When::plainly);
    visit("mass_g", &PotLife::mass_kg, above0(unit::g, "a mass"), When::plainly);
}

template <class Visit>
void keysOf(Visit& visit, const OwnAdhesive*) {
    constexpr auto parts = Pair<Number>{from0(unit::none, "a number of parts")};
    constexpr auto hours = from0(unit::h, "a time");
    visit("id", &OwnAdhesive::id, Text{}, When::plainly);
    visit("name", &OwnAdhesive::name, Text{}, When::plainly);
    visit("parts_by_volume", &OwnAdhesive::partsByVolume, parts);
    visit("parts_by_weight", &OwnAdhesive::partsByWeight, parts);
    visit("density_kg_m3", &OwnAdhesive::density_kg_m3, Pair<Number>{above0(unit::kg_m3, "a density")});
    visit("pot_life_min", &OwnAdhesive::potLife_s, above0(unit::min, "a time"));
    visit("pot_life_at_C", &OwnAdhesive::potLifeAt_C, air_C);
    visit("pot_life_mass_g", &OwnAdhesive::potLifeMass_kg, above0(unit::g, "a mass"));
    visit("more_pot_lives", &OwnAdhesive::morePotLives, ListOf<Group>{{}, 0, 100, "points"});
    visit("open_time_min", &OwnAdhesive::openTime_s, above0(unit::min, "a time"));
    visit("open_time_at_C", &OwnAdhesive::openTimeAt_C, air_C);
    visit("least_C", &OwnAdhesive::least_C, air_C);
    visit("handling_h", &OwnAdhesive::handling_s, hours);
    visit("full_cure_h", &OwnAdhesive::fullCure_s, hours);
    visit("cure_at_C", &OwnAdhesive::cureAt_C, air_C);
    visit("kind", &OwnAdhesive::kind,
          words<AdhesiveKind>({{AdhesiveKind::epoxy, "epoxy"},
                               {AdhesiveKind::resorcinol, "resorcinol"},
                               {AdhesiveKind::urea, "urea"},
                               {AdhesiveKind::polyurethane, "polyurethane"}}));
    visit("spread_g_m2", &OwnAdhesive::spread_kg_m2, mass_g_m2);
    visit("source", &OwnAdhesive::source, Text{});
}

template <class Visit>
void displayKeysOf(Visit& visit) {
    using measure::Display;
    using Lengths = measure::LengthNotation;
    using measure::ForceUnit, measure::TemperatureUnit, measure::VolumeUnit, measure::WeightUnit;
    const auto of = [](auto member) {
        return [member](auto& boat) -> auto& {
            return boat.display.*member;
        };
    };
    visit("lengths", of(&Display::lengths),
          words<Lengths>({{Lengths::feetInchesEighths, "feet-inches-eighths"},
                          {Lengths::inches, "inches"},
                          {Lengths::millimetres, "millimetres"}}));
    visit("temperatures", of(&Display::temperatures),
          words<TemperatureUnit>({{TemperatureUnit::celsius, "C"}, {TemperatureUnit::fahrenheit, "F"}}));
    visit("forces", of(&Display::forces), words<ForceUnit>({{ForceUnit::newton, "N"}, {ForceUnit::poundForce, "lbf"}}));
    visit("weights", of(&Display::weights), words<WeightUnit>({{WeightUnit::gram, "g"}, {WeightUnit::ounce, "oz"}}));
    visit("volumes", of(&Display::volumes),
          words<VolumeUnit>({{VolumeUnit::millilitre, "ml"}, {VolumeUnit::fluidOunce, "fl_oz"}}));
}

template <class Visit>
void keysOf(Visit& visit, const Boat*) {
    visit.inner("boat", &Boat::boatKept, [](auto& group) {
        group("name", &Boat::name, Text{});
        group("notes", &Boat::notes, Text{});
    });
    visit.inner("display", &Boat::displayKept, [](auto& group) { displayKeysOf(group); });
    visit("species", &Boat::species, ListOf<Group>{{}, 0, 1000, "woods"});
    visit("adhesives", &Boat::adhesives, ListOf<Group>{{}, 0, 1000, "glues"});
    visit("trials", &Boat::trials, ListOf<Group>{{}, 0, 10'000, "trials"});
    visit("pieces", &Boat::pieces, ListOf<Group>{{}, 0, 1000, "pieces"});
}

}  // namespace fayline::boat
