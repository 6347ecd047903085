// The rest of the table of keys.hpp, which says how it is walked: glue, crew, stock, records, the piece; the shop's own
// woods and glues, trials; the boat.
#pragma once

#include "core/model/keys.hpp"

namespace fayline::model {

template <class Visit>
void keysOf(Visit& visit, const Tent*) {
    visit("from_h", &Tent::from_s, from0(unit::h, "a time"));
    visit("hours", &Tent::lasts_s, from0(unit::h, "a time"));
    visit("air_C", &Tent::air_C, air_C);
}

// The keys of a glue in three parts, so that a shed may have some of them. `of` makes of a member of Glue what reaches
// it from the struct that is visited.
template <class Visit, class Of>
void mixKeysOf(Visit& visit, Of of) {
    visit("adhesive", of(&Glue::adhesive), Text{});
    visit("paste_yield_Pa", of(&Glue::pasteYield_Pa), from0(unit::Pa, "a yield stress"));
}

template <class Visit, class Of>
void airKeysOf(Visit& visit, Of of) {
    visit("air_C", of(&Glue::air_C), air_C);
    visit("humidity_pct", of(&Glue::humidity), within(0, 100, unit::pct, "a relative humidity"));
    visit("air_over_night_C", of(&Glue::airOverNight_C), air_C);
    visit("tent", of(&Glue::tent), Group{});
}

template <class Visit, class Of>
void coatKeysOf(Visit& visit, Of of) {
    visit("faces", of(&Glue::faces),
          words<Faces>({{Faces::planed, "planed"}, {Faces::sanded, "sanded"}, {Faces::sawn, "sawn"}}));
    visit("wet_out_g_m2", of(&Glue::wetOut_kg_m2), mass_g_m2);
    visit("spread_g_m2", of(&Glue::spread_kg_m2), mass_g_m2);
    visit("both_faces", of(&Glue::bothFaces), Truth{});
    visit("thinner_pct", of(&Glue::thinner), share_pct);
    visit("filler_g_per_100g", of(&Glue::filler), from0(unit::g_per_100g, "an amount of filler"));
    visit("waste_pct", of(&Glue::waste), from0(unit::pct, "a share"));
    visit("cup_ml", of(&Glue::cup_m3), above0(unit::ml, "a volume"));
    visit("vessel", of(&Glue::vessel), words<Vessel>({{Vessel::cup, "cup"}, {Vessel::tray, "tray"}}));
    visit("scale_reads_g", of(&Glue::scaleReads_kg), above0(unit::g, "a step of a scale"));
    visit("measured_by", of(&Glue::measuredBy),
          words<MeasuredBy>({{MeasuredBy::scale, "scale"}, {MeasuredBy::cup, "cup"}}));
    visit("cup_reads_ml", of(&Glue::cupReads_m3), above0(unit::ml, "a step between marks"));
    visit("surface_work", of(&Glue::surfaceWork),
          words<SurfaceWork>({{SurfaceWork::nothing, "nothing"},
                              {SurfaceWork::wiped, "wiped"},
                              {SurfaceWork::sandedAndWiped, "sanded and wiped"}}));
}

template <class Visit>
void keysOf(Visit& visit, const Glue*) {
    const auto itself = [](auto member) { return member; };
    mixKeysOf(visit, itself);
    airKeysOf(visit, itself);
    coatKeysOf(visit, itself);
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
            group(
                "chance_pct", [which](auto& mishaps) -> auto& { return (mishaps.*which).chance; }, share_pct);
            group(
                "min", [which](auto& mishaps) -> auto& { return (mishaps.*which).lasts_s; }, time_min);
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
    visit("across_from_mm", &BadStretch::acrossFrom_m, OrNull{length_mm});
    visit("across_to_mm", &BadStretch::acrossTo_m, OrNull{length_mm});
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
    visit(
        "price_per", &Board::pricePer,
        words<PricePer>(
            {{PricePer::board, "board"}, {PricePer::boardFoot, "board foot"}, {PricePer::cubicMetre, "cubic metre"}}));
    visit("moisture_pct", &Board::moisture, OrNull{within(0, 200, unit::pct, "a moisture")});
}

inline constexpr auto strip_place = Whole{1, 100'000, "a strip's place"};
inline constexpr auto board_number = Whole{1, 100'000, "a board's number"};

template <class Visit>
void keysOf(Visit& visit, const StripPin*) {
    visit("place", &StripPin::place, strip_place, When::plainly);
    visit("board", &StripPin::board, Text{}, When::plainly);
    visit("number", &StripPin::number, board_number);
}

template <class Visit>
void keysOf(Visit& visit, const StripCut*) {
    visit("place", &StripCut::place, strip_place, When::plainly);
    visit("board", &StripCut::board, Text{}, When::plainly);
    visit("number", &StripCut::number, board_number);
    visit("from_mm", &StripCut::from_m, length_mm, When::plainly);
    visit("length_mm", &StripCut::length_m, length_mm, When::plainly);
    visit("across_from_mm", &StripCut::acrossFrom_m, length_mm, When::plainly);
    visit("across_to_mm", &StripCut::acrossTo_m, length_mm, When::plainly);
    visit("deep_from_mm", &StripCut::deepFrom_m, length_mm, When::plainly);
    visit("deep_to_mm", &StripCut::deepTo_m, length_mm, When::plainly);
    visit("lost", &StripCut::lost, Truth{});
}

template <class Visit>
void keysOf(Visit& visit, const Stock*) {
    visit("boards", &Stock::boards, ListOf<Group>{{}, 0, 1000, "boards"});
    visit("buy", &Stock::buy, ListOf<Group>{{}, 0, 1000, "boards"});
    visit("kerf_mm", &Stock::kerf_m, from0(unit::mm, "a saw cut"));
    visit("planing_mm", &Stock::planing_m, from0(unit::mm, "an allowance"));
    visit("planer_least_mm", &Stock::planerLeast_m, from0(unit::mm, "a thickness"));
    visit("snipe_mm", &Stock::snipe_m, length_mm);
    visit("saw", &Stock::saw, words<Saw>({{Saw::either, "auto"}, {Saw::edge, "edge"}, {Saw::face, "face"}}));
    visit("least", &Stock::aim, words<StockAim>({{StockAim::wood, "wood"}, {StockAim::price, "price"}}));
    visit("scarf_slope", &Stock::scarfSlope, slope);
    visit("extra_scarfs", &Stock::extraScarfs, Whole{0, 20, "a number of scarfs"});
    visit("stagger_mm", &Stock::stagger_m, OrWord<Number>{from0(unit::mm, "a distance"), "auto"});
    visit("spares", &Stock::spares, OrWord<Whole>{{0, 1000, "a number of strips"}, "auto"});
    visit("pins", &Stock::pins, ListOf<Group>{{}, 0, 1000, "strips"});
    visit("cut", &Stock::cut, ListOf<Group>{{}, 0, 10'000, "strips"});
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
    using units::Display;
    using Lengths = units::LengthNotation;
    using units::ForceUnit, units::TemperatureUnit, units::VolumeUnit, units::WeightUnit;
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
    visit("forces", of(&Display::forces),
          words<ForceUnit>(
              {{ForceUnit::newton, "N"}, {ForceUnit::poundForce, "lbf"}, {ForceUnit::kilogramForce, "kgf"}}));
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
    visit("boards", &Boat::boards, ListOf<Group>{{}, 0, 1000, "boards"});
    visit("pieces", &Boat::pieces, ListOf<Group>{{}, 0, 1000, "pieces"});
}

}  // namespace fayline::model
