// Writing a project file: what stands in it, and that everything comes back.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "core/model/keys_boat.hpp"
#include "core/model/new_piece.hpp"
#include "core/units/length.hpp"
#include "tests/core/io/error_of.hpp"
#include "tests/refusal.hpp"

namespace fayline::io {

using namespace model;
namespace writing_test {

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

TEST(Writing, ANewPieceStandsThereWithItsPointsAndWhatIsNoDefault) {
    Boat boat;
    boat.pieces.push_back(newPiece("Knee"));
    boat.pieces[0].id = "knee";
    EXPECT_EQ(writeBoat(boat),
              "{\n"
              "  \"fayline\": 1,\n"
              "  \"pieces\": [\n"
              "    {\n"
              "      \"id\": \"knee\",\n"
              "      \"name\": \"Knee\",\n"
              "      \"line\": {\n"
              "        \"points\": [\n"
              "          {\"label\": \"Start\", \"x_mm\": 0, \"y_mm\": 0},\n"
              "          {\"label\": \"Middle\", \"x_mm\": 600, \"y_mm\": 90},\n"
              "          {\"label\": \"End\", \"x_mm\": 1200, \"y_mm\": 0}\n"
              "        ],\n"
              "        \"read_to_mm\": 1,\n"
              "        \"fair_within_mm\": 1.5\n"
              "      },\n"
              "      \"stack\": {\n"
              "        \"strips\": [\n"
              "          {\"count\": 8, \"thickness_mm\": 6, \"species\": \"oak_white\"}\n"
              "        ],\n"
              "        \"widths\": [\n"
              "          {\"at_mm\": 0, \"width_mm\": 50}\n"
              "        ]\n"
              "      }\n"
              "    }\n"
              "  ]\n"
              "}\n");
    EXPECT_EQ(readBoat(writeBoat(boat)), boat);
    EXPECT_EQ(readBoat(writeBoat(Boat{})), Boat{});
}

TEST(Writing, ADefaultIsWrittenOnlyIfItStoodInTheFile) {
    const std::string text = writeBoat(readBoat(stackWith("\"moisture_pct\": 10, \"pins\": []")));
    EXPECT_TRUE(has(text, "\"stack\": {\"moisture_pct\": 10, \"pins\": []}"));
    EXPECT_FALSE(has(text, "grain_slope"));
    EXPECT_TRUE(has(writeBoat(readBoat(pieceWith("\"glue\": {\"tent\": {}}"))), "\"tent\": {}"));
}

TEST(Writing, AChangedValueIsWrittenThoughItWasNotGiven) {
    Boat boat = readBoat(stackWith("\"moisture_pct\": 10"));
    boat.pieces[0].stack.grainSlope = 0.04;
    boat.pieces[0].glue.tent.lasts_s = 7200;
    boat.display.lengths = units::LengthNotation::inches;
    const std::string text = writeBoat(boat);
    EXPECT_TRUE(has(text, "\"grain_slope\": 0.04"));
    EXPECT_TRUE(has(text, "\"glue\": {\n        \"tent\": {\"hours\": 2}\n      }"));
    EXPECT_TRUE(has(text, "\"display\": {\"lengths\": \"inches\"}"));
    EXPECT_EQ(readBoat(text), boat);
}

TEST(Writing, AnItemMadeByTheProgramSaysWhatItIs) {
    Boat boat = readBoat(pieceWith("\"holding\": {}"));
    boat.pieces[0].holding.stations.push_back(Station{});
    boat.pieces[0].stack.pins.push_back(Pin{});
    boat.pieces[0].stack.scarfedEnd = Scarf{};
    const std::string text = writeBoat(boat);
    EXPECT_TRUE(has(text, "{\"kind\": \"clamp\", \"at_mm\": 0}"));
    EXPECT_TRUE(has(text, "{\"at_mm\": 0}"));
    EXPECT_TRUE(has(text, "\"scarfed_end\": {\"slope\": 10}"));
    EXPECT_EQ(readBoat(text), boat);
}

TEST(Writing, APlaceThatFollowsFromWhatWasWrittenIsLeftOut) {
    const std::string feet = R"("display": {"lengths": "feet-inches-eighths"}, )";
    Boat boat = readBoat(pointsAre(R"({"label": "WL 2", "written": ["27 1/2", "12"]})", feet));
    EXPECT_TRUE(has(writeBoat(boat), "{\"label\": \"WL 2\", \"written\": [\"27 1/2\", \"12\"]}"));

    Boat moved = boat;
    moved.pieces[0].line.points[0].x_m += 0.001;
    EXPECT_TRUE(has(writeBoat(moved), "\"x_mm\": 699.5")) << writeBoat(moved);
    EXPECT_EQ(readBoat(writeBoat(moved)), moved);

    // In another notation a bare 12 is another length.
    boat.display.lengths = units::LengthNotation::millimetres;
    EXPECT_TRUE(has(writeBoat(boat), "\"y_mm\": 304.8"));
    EXPECT_EQ(readBoat(writeBoat(boat)), boat);
}

TEST(Writing, WhatIsUnknownSurvivesAtEveryLevelInItsOrder) {
    const std::string text = R"({
  "fayline": 1,
  "boat": {
    "name": "Marram",
    "home_port": "none",
    "also": [
      1,
      {"a": null}
    ]
  },
  "display": {"lengths": "inches", "areas": "sq_ft"},
  "pieces": [
    {
      "id": "stem",
      "name": "Stem",
      "line": {
        "points": [
          {"x_mm": 0, "y_mm": 0, "seen_by": "two", "again": 1.10}
        ],
        "z": 1,
        "a": 2
      },
      "stack": {
        "strips": [
          {"count": 2, "bent_before": {"how": "soaked", "hours": 12.0}, "colour": "pale"}
        ],
        "widths": [
          {"at_mm": 0, "width_mm": 50, "measured": true}
        ],
        "scarfed_start": {"slope": 8, "lip_mm": 2}
      },
      "form": {
        "posts": [
          {"at_mm": 10, "foot": "bolted"}
        ]
      },
      "holding": {
        "tools": [
          {"name": "C", "make": 1e3}
        ],
        "stations": [
          {"kind": "prop", "at_mm": 5, "note": "lean it aft"}
        ],
        "hull": {
          "blocks": [
            {"x_mm": 1, "y_mm": 2, "height_mm": 300}
          ],
          "cradle": {}
        }
      },
      "glue": {
        "tent": {"hours": 3, "heater_kW": 2}
      },
      "crew": {
        "rates": {
          "station_min": {"clamp": 2, "strap": 3},
          "rest_min": 5
        },
        "names": ["A", "B"]
      },
      "stock": {
        "boards": [
          {"name": "A", "bad": [{"from_mm": 1, "to_mm": 2, "knot": true}], "rack": 4}
        ]
      },
      "record": [
        {"when": "2026-05-02", "marks": [{"task": "mix", "at_min": 1, "by": "A"}], "let_go": [{"after_h": 1, "dry": false}], "photo": "1.jpg"}
      ],
      "rig": {"deep": [[[]]]}
    }
  ],
  "zz": 123456789012345678901234567890,
  "aa": "last \"quoted\" \\ ö"
}
)";
    EXPECT_EQ(writeBoat(readBoat(text)), text);
}

TEST(Writing, ALengthOfTwelveFiguresComesBackDigitForDigit) {
    for (const char* figures :
         {"123456.789012", "0.000123456789", "6.35", "51", "-1144.5875", "999999.999999", "1000000"}) {
        const std::string text =
            writeBoat(readBoat(pointsAre(std::string("{\"x_mm\": ") + figures + ", \"y_mm\": 0}")));
        EXPECT_TRUE(has(text, std::string("\"x_mm\": ") + figures + ",")) << text;
    }
}

TEST(Writing, WhatTheFileCannotHoldIsAnErrorWithItsPlace) {
    Boat boat;
    boat.pieces.push_back(newPiece("Stem"));
    boat.pieces[0].line.points[1].x_m = std::numeric_limits<double>::quiet_NaN();
    EXPECT_STREQ(made::refusal([&] { writeBoat(boat); }).what(),
                 "pieces[0].line.points[1].x_mm: this is not a finite number; give a number");
    boat.pieces[0] = newPiece("St\xFFm");
    EXPECT_EQ(made::refusal([&] { writeBoat(boat); }).path(), "pieces[0].name");
}

// ---- Boats made at random

// Gives every member a value at random that the file accepts, with all the figures a double has.
class Shuffler {
public:
    explicit Shuffler(unsigned seed) : random_(seed) {}

    template <class T>
    void fill(T& target) {
        Walk<T> walk{*this, target, target.kept};
        keysOf(walk, static_cast<const T*>(nullptr));
        keep(target.kept, {});
    }

private:
    template <class T>
    struct Walk {
        Shuffler& shuffler;
        T& target;
        Kept& kept;

        template <class Member, class Rule>
        void operator()(std::string_view key, Member member, const Rule& rule, When when = When::said) {
            if (when != When::required && shuffler.chance(0.4)) return;
            shuffler.set(std::invoke(member, target), rule);
            if (shuffler.chance(0.5)) kept.given.emplace(key);
        }
        template <class KeptOf, class Inner>
        void inner(std::string_view, KeptOf innerKept, Inner inner) {
            Walk walk{shuffler, target, std::invoke(innerKept, target)};
            inner(walk);
            shuffler.keep(std::invoke(innerKept, target), "inner");
        }
    };

    bool chance(double share) { return std::uniform_real_distribution<double>(0, 1)(random_) < share; }
    int upTo(int most) { return std::uniform_int_distribution<int>(0, most)(random_); }

    void keep(Kept& kept, const std::string& name) {
        if (chance(0.2)) kept.unknown.push_back({"zz_" + name, parseText(R"({"a": [1.50, null], "b": "\u00e9"})")});
    }

    void set(double& target, const Number& rule) {
        const double least = std::max(rule.least, -1e5);
        const double most = std::min(rule.most, 1e5);
        const double share = std::uniform_real_distribution<double>(0.001, 0.999)(random_);
        const double inFile = least + share * (most - least);
        const double scale = chance(0.5) && least >= 0 ? 1e-3 : 1;
        target = double(inFile * scale * rule.unit.times * std::pow(10.0L, rule.unit.tens));
    }
    void set(int& target, const Whole& rule) { target = rule.least + upTo(std::min(rule.most, 40) - rule.least); }
    void set(std::string& target, const Text&) {
        static const char* texts[] = {"", "Stem", "\"quoted\" \\", "oak_white", "line\nbreak\x01", "Dörte 🛶"};
        target = texts[upTo(5)];
    }
    void set(std::string& target, const DateTime&) { target = chance(0.5) ? "2026-05-02T08:30" : "2024-02-29"; }
    void set(double& target, const Clock&) { target = upTo(86399); }
    void set(bool& target, const Truth&) { target = chance(0.5); }
    template <class Enum, std::size_t count>
    void set(Enum& target, const Words<Enum, count>& rule) {
        target = rule.words[upTo(count - 1)].value;
    }
    template <class T, class Rule>
    void set(std::optional<T>& target, const OrNull<Rule>& rule) {
        if (chance(0.8)) set(target.emplace(), rule.rule);
    }
    template <class T, class Rule>
    void set(std::optional<T>& target, const OrWord<Rule>& rule) {
        if (chance(0.8)) set(target.emplace(), rule.rule);
    }
    template <class T, class Rule>
    void set(std::array<T, 2>& target, const Pair<Rule>& rule) {
        for (T& item : target) set(item, rule.rule);
    }
    template <class T>
    void set(T& target, const Group&) {
        fill(target);
    }
    template <class T, class Rule>
    void set(std::vector<T>& target, const ListOf<Rule>& rule) {
        target.resize(rule.least + upTo(3));
        for (T& item : target) set(item, rule.rule);
    }

    std::mt19937 random_;
};

void putRight(std::vector<Board>& boards) {
    for (Board& board : boards) {
        for (BadStretch& bad : board.bad) {
            bad.to_m = bad.from_m + 0.1;
            if (bad.acrossTo_m) bad.acrossTo_m = bad.acrossFrom_m.value_or(0) + 0.1;
        }
    }
}

// What the file does not accept beside each other is put right.
void putRight(Boat& boat) {
    for (OwnAdhesive& adhesive : boat.adhesives) adhesive.partsByVolume[0] = adhesive.partsByWeight[0] = 100;
    for (Piece& piece : boat.pieces) {
        piece.id = "p" + std::to_string(&piece - boat.pieces.data());
        piece.stack.gluings.clear();
        if (piece.stack.strips.front().count > 2) piece.stack.gluings = {1, 2};
        for (std::size_t i = 0; i < piece.stack.widths.size(); ++i) piece.stack.widths[i].at_m += 1000.0 * double(i);
        for (std::size_t i = 0; i < piece.stack.planedAfter.size(); ++i)
            piece.stack.planedAfter[i].at_m += 1000.0 * double(i);
        putRight(piece.stock.boards);
        putRight(piece.stock.buy);
        for (std::size_t i = 0; i < piece.stock.pins.size(); ++i) piece.stock.pins[i].place = 1 + int(i);
        for (StripCut& cut : piece.stock.cut) {
            cut.acrossTo_m = cut.acrossFrom_m + 0.1;
            cut.deepTo_m = cut.deepFrom_m + 0.1;
        }
    }
    putRight(boat.boards);
}

TEST(Writing, AThousandRandomBoatsComeBackToTheBit) {
    std::size_t bytes = 0;
    for (unsigned seed = 0; seed < 1000; ++seed) {
        Boat boat;
        Shuffler(seed).fill(boat);
        putRight(boat);
        const std::string text = writeBoat(boat);
        const Boat back = readBoat(text);
        ASSERT_TRUE(back == boat) << text;
        ASSERT_EQ(writeBoat(back), text);
        bytes += text.size();
    }
    EXPECT_GT(bytes, 2'000'000u) << "the boats hold something";
}

}  // namespace writing_test
}  // namespace fayline::io
