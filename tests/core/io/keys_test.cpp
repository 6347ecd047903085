// Every key of the project file: it is read into the right member in the right unit, comes back, and has its default.
//
// every_key.fayline is written by hand, not by the program: every key once, none at its default.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <numbers>
#include <set>
#include <sstream>

#include "core/io/file.hpp"
#include "core/model/value.hpp"

namespace fayline::io {

using namespace model;
namespace keys_test {

std::string everyKey() {
    std::ifstream file(std::string(FAYLINE_SAMPLES) + "/../tests/core/io/every_key.fayline");
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

void gatherPaths(const Value& value, const std::string& path, std::vector<std::string>& paths) {
    for (const Member& member : value.members) {
        const std::string inner = path.empty() ? member.key : path + "." + member.key;
        if (std::ranges::find(paths, inner) == paths.end()) paths.push_back(inner);
        gatherPaths(member.value, inner, paths);
    }
    for (const Value& item : value.items) gatherPaths(item, path + "[]", paths);
}

TEST(Keys, TheListHasEveryKeyOnceInTheOrderOfTheFile) {
    std::vector<std::string> inFile;
    gatherPaths(parseText(everyKey()), "", inFile);
    std::vector<std::string> listed;
    for (const Key& key : fileKeys()) listed.push_back(key.path);
    EXPECT_EQ(listed, inFile);
    EXPECT_EQ(std::set<std::string>(listed.begin(), listed.end()).size(), listed.size());
    EXPECT_GT(listed.size(), 180u);
}

TEST(Keys, AFileWithEveryKeyComesBackAsItWas) {
    EXPECT_EQ(writeBoat(readBoat(everyKey())), everyKey());
}

TEST(Keys, AKeyThatWasNotGivenIsWrittenWhenItsValueIsNotTheDefault) {
    // Built without a file behind it, so that nothing counts as given.
    Boat boat = readBoat(everyKey());
    boat.kept = boat.boatKept = boat.displayKept = Kept{};
    boat.pieces[0].kept = boat.pieces[0].line.kept = boat.pieces[0].stack.kept = boat.pieces[0].form.kept = Kept{};
    boat.pieces[0].holding.kept = boat.pieces[0].glue.kept = boat.pieces[0].glue.tent.kept = Kept{};
    boat.pieces[0].holding.stations[0].kept = boat.pieces[0].holding.hull.kept = Kept{};
    boat.pieces[0].holding.cauls.kept = boat.pieces[0].holding.floor.kept = Kept{};
    boat.pieces[0].holding.backbone.kept = boat.pieces[0].crew.kept = Kept{};
    Mishaps& mishaps = boat.pieces[0].crew.mishaps;
    mishaps.kept = mishaps.stripBreaks.kept = mishaps.clampSlips.kept = mishaps.cupSpills.kept = Kept{};
    boat.pieces[0].crew.rates.kept = boat.pieces[0].crew.rates.station.kept = boat.pieces[0].stock.kept = Kept{};
    boat.pieces[0].stock.boards[0].kept = boat.pieces[0].record[0].kept = Kept{};
    boat.species[0].kept = boat.adhesives[0].kept = Kept{};
    for (Point& point : boat.pieces[0].line.points) point.kept = Kept{};
    boat.pieces[0].stack.strips[0].kept = boat.pieces[0].stack.strips[0].bentBefore->kept = Kept{};
    EXPECT_EQ(writeBoat(boat), everyKey());
}

TEST(Keys, EveryMemberHasItsSiValue) {
    const Boat boat = readBoat(everyKey());
    EXPECT_EQ(boat.name, "Wheatear");
    EXPECT_EQ(boat.notes, "every key, none at its default");
    EXPECT_EQ(boat.boards.at(0).name, "Shared");
    EXPECT_EQ(boat.boards.at(0).length_m, 2.9);
    EXPECT_EQ(boat.display.lengths, units::LengthNotation::inches);
    EXPECT_EQ(boat.display.temperatures, units::TemperatureUnit::fahrenheit);
    EXPECT_EQ(boat.display.forces, units::ForceUnit::poundForce);
    EXPECT_EQ(boat.display.weights, units::WeightUnit::ounce);
    EXPECT_EQ(boat.display.volumes, units::VolumeUnit::fluidOunce);

    const OwnSpecies& wood = boat.species.at(0);
    EXPECT_EQ(wood.id + "/" + wood.name + "/" + wood.source,
              "plum/Plum from the garden/bent and weighed by the builder");
    EXPECT_EQ(wood.sg, 0.71);
    EXPECT_EQ(wood.mor_Pa, 96.5e6);
    EXPECT_EQ(wood.moe_Pa, 10.1e9);
    EXPECT_EQ(wood.compressionAlong_Pa, 51e6);
    EXPECT_EQ(wood.compressionAcross_Pa, 7.5e6);
    EXPECT_EQ(wood.shear_Pa, 12.5e6);
    EXPECT_EQ(wood.shrinkRadial, 0.051);
    EXPECT_EQ(wood.shrinkTangential, 0.092);
    EXPECT_FALSE(wood.hardwood);

    const OwnAdhesive& adhesive = boat.adhesives.at(0);
    EXPECT_EQ(adhesive.id + "/" + adhesive.name + "/" + adhesive.source, "mixed/Mixed in the shed/its tin");
    EXPECT_EQ(adhesive.partsByVolume, (std::array<double, 2>{3, 2}));
    EXPECT_EQ(adhesive.partsByWeight, (std::array<double, 2>{100, 61}));
    EXPECT_EQ(adhesive.density_kg_m3, (std::array<double, 2>{1150, 1010}));
    EXPECT_EQ(adhesive.potLife_s, 1350);
    EXPECT_EQ(adhesive.potLifeAt_C, 21);
    EXPECT_EQ(adhesive.potLifeMass_kg, 0.15);
    EXPECT_EQ(adhesive.openTime_s, 4500);
    EXPECT_EQ(adhesive.openTimeAt_C, 20);
    EXPECT_EQ(adhesive.least_C, 8);
    EXPECT_EQ(adhesive.handling_s, 34200);
    EXPECT_EQ(adhesive.fullCure_s, 604800);
    EXPECT_EQ(adhesive.cureAt_C, 22);
    EXPECT_EQ(adhesive.kind, AdhesiveKind::urea);
    EXPECT_EQ(adhesive.spread_kg_m2, 0.225);
}

TEST(Keys, EveryMemberOfAPieceHasItsSiValue) {
    const Piece piece = readBoat(everyKey()).pieces.at(0);
    EXPECT_EQ(piece.name, "Knee");
    const LineInput& line = piece.line;
    EXPECT_EQ(line.points.at(0).label, "A");
    EXPECT_EQ(line.points.at(0).x_m, 0.0127);
    EXPECT_EQ(line.points.at(0).y_m, -0.003175);
    EXPECT_EQ(line.points.at(1).written, (std::array<std::string, 2>{"20", "2 1/2"}));
    EXPECT_TRUE(line.points.at(2).mustPass);
    EXPECT_EQ(line.readTo_m, 0.0005);
    EXPECT_EQ(line.fairWithin_m, 0.00075);
    EXPECT_NEAR(line.startHeading_rad.value(), 12.5 * std::numbers::pi / 180, 1e-16);
    EXPECT_NEAR(line.endHeading_rad.value(), -7 * std::numbers::pi / 180, 1e-16);
    EXPECT_EQ(line.takeOff_m, 0.022);
    EXPECT_EQ(line.describes, Describes::outerFace);
    EXPECT_EQ(line.stripsOn, Side::right);

    const Stack& stack = piece.stack;
    const Strips& strips = stack.strips.at(0);
    EXPECT_EQ(strips.count, 3);
    EXPECT_EQ(strips.thickness_m, 0.0055);
    EXPECT_EQ(strips.species, "plum");
    EXPECT_TRUE(strips.sacrificial);
    EXPECT_EQ(strips.moe_Pa, 9.8e9);
    EXPECT_EQ(strips.tapersTo_m, 0.0035);
    EXPECT_EQ(strips.bentBefore.value().how, Softened::steamed);
    EXPECT_EQ(strips.bentBefore.value().set, 0.85);
    EXPECT_TRUE(strips.dryFace);
    EXPECT_EQ(stack.gluings, (std::vector<int>{2, 4}));
    EXPECT_EQ(stack.ripAllowance_m, 0.0025);
    EXPECT_EQ(stack.widths.at(1).at_m, 0.9);
    EXPECT_EQ(stack.widths.at(1).width_m, 0.0385);
    EXPECT_EQ(stack.glueLine_m, 0.0001);
    EXPECT_EQ(stack.moisture, 0.09);
    EXPECT_EQ(stack.serviceMoisture, 0.145);
    EXPECT_EQ(stack.grainSlope, 0.05);
    EXPECT_EQ(stack.runsPastStart_m, 0.08);
    EXPECT_EQ(stack.runsPastEnd_m, 0.09);
    EXPECT_EQ(stack.pins.at(0).at_m, -0.04);
    EXPECT_EQ(stack.scarfedStart.value().slope, 8);
    EXPECT_EQ(stack.scarfedEnd.value().slope, 12);

    const Form& form = piece.form;
    EXPECT_EQ(form.kind, FormKind::inPlace);
    EXPECT_FALSE(form.letGo);
    EXPECT_EQ(form.posts.at(0).at_m, 0.12);
    EXPECT_EQ(form.posts.at(0).width_m, 0.045);
    EXPECT_EQ(form.posts.at(0).holds_N, 3500);
    EXPECT_EQ(form.carriesOnStart_m, 0.06);
    EXPECT_EQ(form.carriesOnEnd_m, 0.07);
    EXPECT_EQ(form.springbackFactor, 1.2);
}

TEST(Keys, EveryMemberOfTheHoldingHasItsSiValue) {
    const Holding holding = readBoat(everyKey()).pieces.at(0).holding;
    EXPECT_EQ(holding.gapLimit_m, 0.0003);
    EXPECT_EQ(holding.pads, Pads::slide);
    EXPECT_EQ(holding.from, From::middle);
    const Tool& tool = holding.tools.at(0);
    EXPECT_EQ(tool.name, "Jack");
    EXPECT_EQ(tool.kind, HoldKind::jack);
    EXPECT_EQ(tool.most_N, 9000);
    EXPECT_EQ(tool.pad_m, 0.06);
    EXPECT_EQ(tool.count, 3);
    EXPECT_EQ(tool.opening_m, 0.4);
    EXPECT_EQ(tool.throat_m, 0.09);
    EXPECT_EQ(tool.pitch_m, 0.004);
    const Station& station = holding.stations.at(0);
    EXPECT_EQ(station.kind, HoldKind::screw);
    EXPECT_EQ(station.at_m, 0.24);
    EXPECT_EQ(station.most_N, 1800);
    EXPECT_EQ(station.pad_m, 0.025);
    EXPECT_TRUE(station.fixed);
    EXPECT_EQ(station.pull_N, 800);
    EXPECT_EQ(station.strut.footX_m, 0.005);
    EXPECT_EQ(station.strut.footY_m, -0.6);
    EXPECT_EQ(station.strut.section_m, (std::array<double, 2>{0.089, 0.038}));
    EXPECT_EQ(station.strut.stop, Stop::both);
    EXPECT_EQ(station.strut.to, PropTo::overhead);
    EXPECT_EQ(station.screw.diameter_m, 0.005);
    EXPECT_EQ(station.screw.intoBackbone_m, 0.038);
    EXPECT_EQ(station.screw.washer_m, 0.025);
    EXPECT_TRUE(station.side);
    EXPECT_EQ(station.strap.to_m, 0.9);
    EXPECT_EQ(station.strap.pullsFrom, PullsFrom::both);
    EXPECT_EQ(station.strap.friction, 0.25);
    EXPECT_EQ(holding.cauls.thickness_m, 0.018);
    EXPECT_EQ(holding.floor.friction, 0.4);
    EXPECT_EQ(holding.backbone.species, "larch_eu");
    EXPECT_EQ(holding.hull.weight_kg, 420);
    EXPECT_EQ(holding.hull.centreX_m, 2.5);
    EXPECT_EQ(holding.hull.centreY_m, 0.35);
    EXPECT_EQ(holding.hull.friction, 0.35);
    EXPECT_EQ(holding.hull.blocks.at(0).x_m, 0.8);
    EXPECT_EQ(holding.hull.blocks.at(0).y_m, -0.02);
}

TEST(Keys, EveryMemberOfTheDayHasItsSiValue) {
    const Piece piece = readBoat(everyKey()).pieces.at(0);
    const Glue& glue = piece.glue;
    EXPECT_EQ(glue.adhesive, "mixed");
    EXPECT_EQ(glue.pasteYield_Pa, 150);
    EXPECT_EQ(glue.air_C, 16);
    EXPECT_EQ(glue.humidity, 0.7);
    EXPECT_EQ(glue.airOverNight_C, 6);
    EXPECT_EQ(glue.tent.from_s, 7200);
    EXPECT_EQ(glue.tent.lasts_s, 36000);
    EXPECT_EQ(glue.tent.air_C, 32);
    EXPECT_EQ(glue.faces, Faces::sawn);
    EXPECT_EQ(glue.wetOut_kg_m2, 0.095);
    EXPECT_EQ(glue.spread_kg_m2, 0.275);
    EXPECT_TRUE(glue.bothFaces);
    EXPECT_EQ(glue.thinner, 0.03);
    EXPECT_EQ(glue.filler, 0.075);
    EXPECT_EQ(glue.waste, 0.12);
    EXPECT_EQ(glue.cup_m3, 350e-6);
    EXPECT_EQ(glue.vessel, Vessel::tray);
    EXPECT_EQ(glue.scaleReads_kg, 0.0001);

    const Crew& crew = piece.crew;
    EXPECT_EQ(crew.hands, 3);
    EXPECT_EQ(crew.startAt_s, 33300);
    EXPECT_EQ(crew.rates.mix_s, 300);
    EXPECT_DOUBLE_EQ(crew.rates.wetOut_m2_s, 0.0025);
    EXPECT_DOUBLE_EQ(crew.rates.spread_m2_s, 0.08 / 60);
    EXPECT_EQ(crew.rates.stackStrip_s, 45);
    EXPECT_EQ(crew.rates.carry_s, 150);
    EXPECT_EQ(crew.rates.station.clamp_s, 75);
    EXPECT_EQ(crew.rates.station.prop_s, 180);
    EXPECT_EQ(crew.rates.station.jack_s, 120);
    EXPECT_EQ(crew.rates.station.screw_s, 30);
    EXPECT_DOUBLE_EQ(crew.rates.scrape_m_s, 0.4 / 60);
    EXPECT_EQ(crew.uncertain, 0.3);
    EXPECT_EQ(crew.pace, 0.25);
    EXPECT_EQ(crew.glueUncertain, 0.1);
    EXPECT_EQ(crew.mishaps.stripBreaks.chance, 0.05);
    EXPECT_EQ(crew.mishaps.stripBreaks.lasts_s, 12 * 60);
    EXPECT_EQ(crew.mishaps.clampSlips.chance, 0);
    EXPECT_EQ(crew.mishaps.clampSlips.lasts_s, 2 * 60);
    EXPECT_EQ(crew.mishaps.cupSpills.chance, 0.01);
    EXPECT_EQ(crew.mishaps.cupSpills.lasts_s, 4 * 60);

    const Board& board = piece.stock.boards.at(0);
    EXPECT_EQ(board.name, "A");
    EXPECT_EQ(board.length_m, 3.1);
    EXPECT_EQ(board.width_m, 0.175);
    EXPECT_EQ(board.thickness_m, 0.052);
    EXPECT_EQ(board.count, 2);
    EXPECT_EQ(board.species, "plum");
    EXPECT_EQ(board.bad.at(0).from_m, 0.7);
    EXPECT_EQ(board.bad.at(0).to_m, 0.82);
    EXPECT_EQ(board.bad.at(0).acrossFrom_m, 0.01);
    EXPECT_EQ(board.bad.at(0).acrossTo_m, 0.055);
    EXPECT_EQ(board.price, 84.5);
    EXPECT_EQ(board.pricePer, PricePer::boardFoot);
    EXPECT_EQ(board.moisture, 0.115);
    EXPECT_EQ(piece.stock.buy.at(0).name, "Long");
    EXPECT_EQ(piece.stock.buy.at(0).count, 20);
    EXPECT_EQ(piece.stock.buy.at(0).pricePer, PricePer::cubicMetre);
    EXPECT_EQ(piece.stock.kerf_m, 0.0032);
    EXPECT_EQ(piece.stock.planing_m, 0.0008);
    EXPECT_EQ(piece.stock.planerLeast_m, 0.0045);
    EXPECT_EQ(piece.stock.snipe_m, 0.055);
    EXPECT_EQ(piece.stock.saw, Saw::face);
    EXPECT_EQ(piece.stock.aim, StockAim::price);
    EXPECT_EQ(piece.stock.scarfSlope, 10);
    EXPECT_EQ(piece.stock.extraScarfs, 2);
    EXPECT_EQ(piece.stock.stagger_m, 0.18);
    EXPECT_EQ(piece.stock.spares, 2);
    const StripPin& pin = piece.stock.pins.at(0);
    EXPECT_EQ(pin.place, 3);
    EXPECT_EQ(pin.board, "A");
    EXPECT_EQ(pin.number, 2);
    const StripCut& cut = piece.stock.cut.at(0);
    EXPECT_EQ(cut.place, 4);
    EXPECT_EQ(cut.board, "A");
    EXPECT_EQ(cut.number, 2);
    EXPECT_EQ(cut.from_m, 0.015);
    EXPECT_EQ(cut.length_m, 2.4);
    EXPECT_EQ(cut.acrossFrom_m, 0.006);
    EXPECT_EQ(cut.acrossTo_m, 0.0155);
    EXPECT_EQ(cut.deepFrom_m, 0.003);
    EXPECT_EQ(cut.deepTo_m, 0.049);
    EXPECT_TRUE(cut.lost);

    const Record& record = piece.record.at(0);
    EXPECT_EQ(record.when, "2026-05-02T08:30");
    EXPECT_TRUE(record.dryFit);
    EXPECT_EQ(record.air_C, 17.5);
    EXPECT_EQ(record.marks.at(0).task, "mix");
    EXPECT_EQ(record.marks.at(0).at_s, 270);
    EXPECT_EQ(record.letGo.at(0).after_s, 72000);
    EXPECT_EQ(record.letGo.at(0).chordForm_m, 1);
    EXPECT_EQ(record.letGo.at(0).chordPiece_m, 1.0045);
    EXPECT_EQ(record.letGo.at(0).risePiece_m, 0.061);
    EXPECT_EQ(record.notes, "went well");
}

TEST(Keys, TheDefaultsAreThoseOfTheFormat) {
    std::map<std::string, std::string> listed;
    for (const Key& key : fileKeys()) listed[key.path] = key.defaultValue;
    const std::string piece = "pieces[].";
    const std::pair<const char*, const char*> expected[] = {
        {"line.read_to_mm", "1.5875"},
        {"line.fair_within_mm", "1.5875"},
        {"line.take_off_mm", "0"},
        {"line.start_heading_deg", "null"},
        {"stack.strips", R"([{"count": 8, "thickness_mm": 6.35, "species": "oak_white"}])"},
        {"stack.strips[].thickness_mm", "6.35"},
        {"stack.gluings", "[]"},
        {"stack.rip_allowance_mm", "3"},
        {"stack.widths", R"([{"at_mm": 0, "width_mm": 51}])"},
        {"stack.glue_line_mm", "0.3"},
        {"stack.moisture_pct", "10"},
        {"stack.service_moisture_pct", "12"},
        {"stack.grain_slope", "0.03"},
        {"stack.runs_past_start_mm", "100"},
        {"stack.runs_past_end_mm", "150"},
        {"stack.scarfed_start", "null"},
        {"stack.planed_after", "[]"},
        {"form.let_go", "true"},
        {"form.posts[].width_mm", "38"},
        {"form.posts[].holds_N", "3000"},
        {"form.carries_on_start_mm", "null"},
        {"form.springback_factor", "1"},
        {"form.allows_for_springback", "true"},
        {"form.fixed_at_mm", "null"},
        {"holding.gap_limit_mm", "0.5"},
        {"holding.glue_line_varies_mm", "null"},
        {"holding.stations[].most_N", "2500"},
        {"holding.stations[].pad_mm", "40"},
        {"holding.stations[].pull_N", "null"},
        {"holding.cauls.thickness_mm", "0"},
        {"holding.floor.friction", "0.3"},
        {"holding.backbone.species", "\"\""},
        {"holding.hull.weight_kg", "0"},
        {"glue.adhesive", "\"epoxy_2_1_medium\""},
        {"glue.paste_yield_Pa", "100"},
        {"glue.air_C", "18"},
        {"glue.humidity_pct", "60"},
        {"glue.air_over_night_C", "10"},
        {"glue.tent.from_h", "1"},
        {"glue.tent.hours", "0"},
        {"glue.tent.air_C", "30"},
        {"glue.wet_out_g_m2", "80"},
        {"glue.spread_g_m2", "250"},
        {"glue.both_faces", "false"},
        {"glue.filler_g_per_100g", "6"},
        {"glue.waste_pct", "15"},
        {"glue.cup_ml", "500"},
        {"glue.scale_reads_g", "1"},
        {"crew.hands", "2"},
        {"crew.start_at", "\"08:30\""},
        {"crew.rates.mix_min", "4"},
        {"crew.rates.wet_out_m2_min", "0.06"},
        {"crew.rates.spread_m2_min", "0.06"},
        {"crew.rates.stack_strip_min", "0.5"},
        {"crew.rates.carry_min", "3"},
        {"crew.rates.station_min.jack", "1.5"},
        {"crew.rates.scrape_m_min", "0.5"},
        {"crew.uncertain_pct", "20"},
        {"crew.pace_pct", "20"},
        {"crew.glue_uncertain_pct", "15"},
        {"crew.mishaps.strip_breaks.chance_pct", "3"},
        {"crew.mishaps.strip_breaks.min", "10"},
        {"crew.mishaps.clamp_slips.chance_pct", "10"},
        {"crew.mishaps.cup_spills.min", "6"},
        {"stock.kerf_mm", "2.4"},
        {"stock.planing_mm", "0.5"},
        {"stock.scarf_slope", "12"},
        {"stock.planer_least_mm", "0"},
        {"stock.snipe_mm", "0"},
        {"stock.saw", "\"auto\""},
        {"stock.least", "\"wood\""},
        {"stock.extra_scarfs", "0"},
        {"stock.stagger_mm", "\"auto\""},
        {"stock.spares", "\"auto\""},
        {"stock.boards[].price_per", "\"board\""},
        {"stock.boards[].moisture_pct", "null"},
        {"stock.buy", "[]"},
        {"stock.pins", "[]"},
        {"stock.cut", "[]"},
        {"record", "[]"},
    };
    for (const auto& [path, value] : expected) {
        ASSERT_TRUE(listed.contains(piece + path)) << path;
        EXPECT_EQ(listed[piece + path], value) << path;
    }
    for (const char* required : {"fayline", "pieces[].name", "pieces[].line.points"}) EXPECT_EQ(listed[required], "");
}

}  // namespace keys_test
}  // namespace fayline::io
