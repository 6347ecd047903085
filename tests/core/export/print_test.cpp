#include "core/export/print.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>

#include "core/io/file.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/random_pieces.hpp"
#include "tests/core/plan/studied.hpp"
#include "tests/refusal.hpp"

namespace fayline::plan {
namespace print_test {

using Json = nlohmann::ordered_json;

using made::boatOf;

std::vector<model::Boat> samples() {
    std::vector<model::Boat> boats;
    for (const auto& entry : std::filesystem::directory_iterator(FAYLINE_SAMPLES)) {
        if (entry.path().extension() == ".fayline") boats.push_back(io::loadBoat(entry.path()));
    }
    return boats;
}

Json schemaOfPlans() {
    return Json::parse(printedPlanSchema());
}

std::string typeOf(const Json& value) {
    if (value.is_number_integer()) return "integer";
    if (value.is_string() || value.is_object() || value.is_array()) return value.type_name();
    return value.is_number() ? "number" : value.is_boolean() ? "boolean" : "null";
}

// Of JSON Schema what the printed plan's uses: type, const, enum, items and how many, required and properties. A key
// that the schema does not name is an error here.
void expectConforms(const Json& value, const Json& schema, const std::string& path) {
    if (schema.contains("const")) {
        EXPECT_EQ(value, schema["const"]) << path;
        return;
    }
    const Json types = schema["type"].is_array() ? schema["type"] : Json::array({schema["type"]});
    EXPECT_NE(std::ranges::find(types, Json(typeOf(value))), types.end()) << path << " is " << value;
    if (schema.contains("enum")) {
        EXPECT_NE(std::ranges::find(schema["enum"], value), schema["enum"].end()) << path << " is " << value;
    }
    if (value.is_array()) {
        EXPECT_GE(value.size(), schema.value("minItems", std::size_t{0})) << path;
        EXPECT_LE(value.size(), schema.value("maxItems", value.size())) << path;
        for (const Json& item : value) expectConforms(item, schema["items"], path + "[]");
    }
    if (!value.is_object()) return;
    for (const Json& key : schema["required"]) EXPECT_TRUE(value.contains(key)) << path << " lacks " << key;
    for (const auto& [key, inner] : value.items()) {
        const std::string here = path + "." + key;
        if (schema["properties"].contains(key)) {
            expectConforms(inner, schema["properties"][key], here);
        } else {
            ADD_FAILURE() << here << " is not in the schema";
        }
    }
}

Json printed(const std::vector<model::Piece>& pieces) {
    const Json json = Json::parse(made::printed(boatOf(pieces)));
    expectConforms(json, schemaOfPlans(), "");
    return json;
}

TEST(PrintPlans, EverySampleFollowsTheSchemaAndHasItsNumbers) {
    const std::vector<model::Boat> boats = samples();
    ASSERT_GE(boats.size(), 3u);
    for (const model::Boat& boat : boats) {
        const Json json = Json::parse(made::printed(boat));
        expectConforms(json, schemaOfPlans(), "");
        EXPECT_EQ(json["fayline_plan"], 1);
        EXPECT_EQ(json["boat"], boat.name);
        ASSERT_EQ(json["pieces"].size(), boat.pieces.size());
        for (std::size_t i = 0; i < boat.pieces.size(); ++i) {
            const Json& piece = json["pieces"][i];
            EXPECT_EQ(piece["name"], boat.pieces[i].name);
            EXPECT_GT(piece["line"]["length_mm"].get<double>(), 0);
            EXPECT_EQ(piece["line"]["points"].size(), boat.pieces[i].line.points.size());
            EXPECT_EQ(piece["holding"]["stations"].size(), boat.pieces[i].holding.stations.size());
            EXPECT_GT(piece["form"]["points"].size(), 10u);
            EXPECT_EQ(piece["stack"]["count"], piece["stack"]["strips"].size());
            EXPECT_GE(piece["stock"]["strips_needed"].get<int>(), piece["stack"]["count"].get<int>());
            EXPECT_EQ(piece["stock"]["short_by"].is_null(), boat.pieces[i].stock.boards.empty());
            for (const Json& finding : piece["findings"]) EXPECT_FALSE(finding["source"].get<std::string>().empty());
        }
    }
}

TEST(PrintPlans, RandomPiecesFollowTheSchema) {
    made::Dice dice(20261128);
    int planned = 0;
    while (planned < 12) {
        const model::Piece piece = made::randomPiece(dice);
        try {
            printed({piece});
            ++planned;
        } catch (const units::InputError& error) {
            EXPECT_FALSE(error.path().empty()) << error.what();
        }
        if (HasFailure()) return;
    }
}

TEST(PrintPlans, HasTheKeysThatScriptsRelyOn) {
    model::Piece piece = made::stem();
    piece.holding.stations = {model::Station{.at_m = 0.5}};
    const Json json = printed({piece})["pieces"][0];
    for (const char* key : {"length_mm", "tightest", "points", "samples"}) EXPECT_TRUE(json["line"].contains(key));
    for (const char* key : {"at_mm", "x_mm", "y_mm", "heading_deg", "curvature_per_m", "curvature_sd_per_m"}) {
        EXPECT_TRUE(json["line"]["samples"][0].contains(key)) << key;
    }
    for (const char* key : {"label", "at_mm", "misfit_mm", "suspect"}) {
        EXPECT_TRUE(json["line"]["points"][0].contains(key)) << key;
    }
    for (const char* key : {"count", "depth_mm", "stiffness_wet_N_m2", "stiffness_cured_N_m2", "strips", "spares"}) {
        EXPECT_TRUE(json["stack"].contains(key)) << key;
    }
    for (const char* key : {"place", "thickness_mm", "species", "least_radius_mm", "strain_pct", "finished_length_mm",
                            "length_mm", "chance_of_breaking_pct"}) {
        EXPECT_TRUE(json["stack"]["strips"][0].contains(key)) << key;
    }
    for (const char* key : {"start_mm", "end_mm"}) EXPECT_TRUE(json["stack"]["stagger"].contains(key)) << key;
    for (const char* key : {"number", "kind", "at_mm", "along_outside_mm", "x_mm", "y_mm"}) {
        EXPECT_TRUE(json["holding"]["stations"][0].contains(key)) << key;
    }
    for (const char* key :
         {"severity", "level", "about", "code", "text", "at_mm", "value", "limit", "unit", "source", "mark"}) {
        EXPECT_TRUE(json["findings"][0].contains(key)) << key;
    }
}

TEST(PrintPlans, AHeatedStripHasItsOwnLimitAndAPieceInPlaceItsStressLeft) {
    model::Piece piece = made::stem();
    const auto plan = [&] { return printed({piece})["pieces"][0]; };
    EXPECT_FALSE(plan()["stack"]["strips"][0].contains("first_bend_strain_pct"));
    EXPECT_TRUE(plan()["form"]["stress_left"].is_null());
    piece.stack.strips[0].bentBefore = model::BentBefore{model::Softened::steamed, 0.5};
    piece.form.kind = model::FormKind::inPlace;
    const Json json = plan();
    const Json& strip = json["stack"]["strips"][0];
    EXPECT_NEAR(strip["first_bend_strain_pct"].get<double>(), 2 * strip["strain_pct"].get<double>(), 1e-5);
    EXPECT_LT(strip["first_bend_strain_pct"].get<double>(), strip["first_bend_breaks_at_pct"].get<double>());
    const Json& left = json["form"]["stress_left"];
    for (const char* key : {"end_moment_N_m", "peel_MPa", "at", "ends", "surface_MPa"}) {
        EXPECT_TRUE(left.contains(key)) << key;
    }
    EXPECT_TRUE(left["at"] == "start" || left["at"] == "end");
    EXPECT_EQ(left["ends"].size(), 2U);
    EXPECT_GE(left["peel_MPa"].get<double>(), left["ends"][0]["peel_MPa"].get<double>());
}

// What is not known is null: a strap has no pad under which a gap could be told, nor is it given where its ends are
// made fast; of a jack only the rated load is known; a state that did not settle has no gaps.
TEST(PrintPlans, WhatIsNotKnownOfTheHoldingIsNull) {
    model::Piece piece = made::stem();
    model::Station strap;
    strap.kind = model::HoldKind::strap;
    strap.at_m = 0.1;
    strap.strap.to_m = 0.9;
    model::Station jack;
    jack.kind = model::HoldKind::jack;
    jack.at_m = 0.5;
    model::Station prop = jack;
    prop.kind = model::HoldKind::prop;
    prop.at_m = 0.7;
    piece.holding.stations = {strap, model::Station{.at_m = 0.3}, jack, prop};
    const Json stations = printed({piece})["pieces"][0]["holding"]["stations"];
    EXPECT_TRUE(stations[0]["gap_mm"].is_null());
    EXPECT_TRUE(stations[0]["closing"]["gap_mm"].is_null());
    EXPECT_TRUE(stations[0]["strap"]["ends_press_N"].is_null());
    EXPECT_GT(stations[0]["strap"]["end_pull_N"].get<double>(), 0);
    EXPECT_TRUE(stations[1]["gap_mm"].is_number());
    EXPECT_TRUE(stations[2]["prop"]["buckles_at_N"].is_null());
    EXPECT_GT(stations[2]["prop"]["allowable_N"].get<double>(), 0);
    EXPECT_GT(stations[3]["prop"]["buckles_at_N"].get<double>(), stations[3]["prop"]["allowable_N"].get<double>());

    model::Piece onNothing = made::stem();
    onNothing.form.kind = model::FormKind::posts;  // and none is given
    onNothing.holding.stations = {model::Station{.at_m = 0.5}};
    const Json holding = printed({onNothing})["pieces"][0]["holding"];
    ASSERT_EQ(holding["outcome"], "not pressed");
    EXPECT_TRUE(holding["largest_gap"]["gap_mm"].is_null());
    EXPECT_TRUE(holding["gap_at_end_mm"].is_null());
    EXPECT_TRUE(holding["stations"][0]["pull_N"].is_null());
}

TEST(PrintPlans, TheSameBoatGivesTheSameText) {
    const model::Boat boat = boatOf({made::stem(), made::bend(0.6, 1.2)});
    EXPECT_EQ(printPlans(boat), made::printed(boat));
}

TEST(PrintPlans, WhatDoesNotExistIsNull) {
    const Json straight = printed({made::pieceOn(made::straight(2.0), 6)})["pieces"][0];
    EXPECT_TRUE(straight["line"]["tightest"]["radius_mm"].is_null());
    EXPECT_TRUE(straight["stack"]["strips"][0]["least_radius_mm"].is_null());
    model::Piece thick = made::bend(0.3, 1.5, {.count = 8, .thickness_m = 0.015});
    EXPECT_TRUE(printed({thick})["pieces"][0]["stack"]["spares"].is_null());
}

// Pot lives and peaks are ranges, peaks to ten degrees; of no waste there is none.
TEST(PrintPlans, CupsHaveRangesAndWhereTheGlueGoesAddsUp) {
    model::Boat boat;
    boat.pieces = {made::stem()};
    const auto glueOf = [&boat] { return nlohmann::json::parse(made::printed(boat))["pieces"][0]["glue"]; };
    const nlohmann::json glue = glueOf();
    ASSERT_FALSE(glue["batches"].empty());
    for (const auto& batch : glue["batches"]) {
        EXPECT_LT(batch["pot_life_from_min"].get<double>(), batch["pot_life_min"].get<double>());
        EXPECT_GT(batch["pot_life_to_min"].get<double>(), batch["pot_life_min"].get<double>());
        EXPECT_NEAR(batch["use_within_min"].get<double>(), 0.7 * batch["pot_life_from_min"].get<double>(), 2e-3);
        for (const char* key : {"peak_C", "peak_from_C", "peak_to_C", "peak_if_left_standing_C"}) {
            EXPECT_DOUBLE_EQ(std::fmod(batch[key].get<double>(), 10), 0) << key;
        }
        EXPECT_LE(batch["peak_from_C"].get<double>(), batch["peak_to_C"].get<double>());
    }
    double sum_g = 0;
    for (const char* key : {"line_g", "soak_in_g", "squeeze_out_g", "waste_g"}) sum_g += glue[key].get<double>();
    EXPECT_NEAR(sum_g, glue["mixed_g"].get<double>(), 0.01);
    EXPECT_DOUBLE_EQ(glue["per_joint_g_m2"].get<double>(), 410);
    boat.pieces[0].glue.waste = 0;
    const nlohmann::json nothingLeft = glueOf();
    for (const auto& batch : nothingLeft["batches"]) EXPECT_TRUE(batch["peak_C"].is_null());
}

TEST(PrintPlans, AnErrorNamesThePiece) {
    model::Piece wrong = made::stem();
    wrong.stack.strips[0].thickness_m = -1;
    EXPECT_EQ(made::refusal([&] {
                  printPlans(boatOf({made::stem(), wrong}));
              }).path(),
              "pieces[1].stack.strips[0].thickness_mm");
}

TEST(PrintPlans, ABoatWithoutPiecesIsAPlanWithoutPieces) {
    const Json json = printed({});
    EXPECT_TRUE(json["pieces"].is_array());
    EXPECT_TRUE(json["pieces"].empty());
}

TEST(PrintPlans, TextThatIsNoTextDoesNotLoseThePlan) {
    model::Piece piece = made::stem();
    piece.name = "Stem \xff";
    EXPECT_TRUE(Json::accept(printPlans(boatOf({piece}))));
}

TEST(SummarizePlans, SaysTheVerdictEachAnswerAndEachCause) {
    const model::Boat boat = boatOf({made::stem()});
    const std::string text = summarizePlans(boat);
    const std::string all = summarizePlans(boat, true);
    const Plan& plan = made::studied(boat);
    EXPECT_NE(text.find(writeText(verdictOf(plan).text, plan.display)), std::string::npos);
    for (const Answer& answer : plan.answers) EXPECT_NE(text.find(answerText(answer, plan.display)), std::string::npos);
    for (const Finding& finding : plan.findings) {
        const std::string line = textOf(finding, plan.display);
        const bool isCause = levelOf(finding) != Level::fact && finding.root < 0;
        EXPECT_EQ(text.find(line) != std::string::npos, isCause) << line;
        EXPECT_NE(all.find(line), std::string::npos) << line;
        EXPECT_NE(all.find(detailsOf(finding, plan.display)), std::string::npos) << line;
    }
}

}  // namespace print_test
}  // namespace fayline::plan
