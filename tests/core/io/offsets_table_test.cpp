// Offsets as text: pasted from spreadsheets and read from files of separated values.
#include "core/io/offsets_table.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

#include "core/units/units.hpp"

namespace fayline::io {
namespace offsets_table_test {

using units::LengthNotation;
constexpr double inch = units::inch_m;
constexpr LengthNotation eighths = LengthNotation::feetInchesEighths;
constexpr LengthNotation millimetres = LengthNotation::millimetres;

// As it is proposed, in the likeliest unit.
OffsetsRead read(const std::string& text, LengthNotation notation) {
    const OffsetsTable table = readTable(text);
    const std::vector<UnitReading> readings = unitReadings(table, table.uses, notation);
    return readPoints(table, table.uses, readings.empty() ? TableUnit::asWritten : readings.front().unit, notation);
}

void expectPoint(const model::Point& point, const char* label, double x_m, double y_m) {
    EXPECT_EQ(point.label, label);
    EXPECT_NEAR(point.x_m, x_m, 1e-9);
    EXPECT_NEAR(point.y_m, y_m, 1e-9);
}

TEST(OffsetsTable, TwoColumnsAreAlongAndUp) {
    const OffsetsRead got = read("0-3-4\t2-3-4+\n1-0-0\t2-0-0\n", eighths);
    ASSERT_EQ(got.points.size(), 2u);
    expectPoint(got.points[0], "", 3.5 * inch, (27.5 + 1.0 / 16) * inch);
    EXPECT_EQ(got.points[0].written[1], "2-3-4+");
    EXPECT_TRUE(got.unread.empty());
}

TEST(OffsetsTable, ThreeColumnsAreNameAlongAndUpUnderAnyHeader) {
    const OffsetsRead got = read("Mark,Aft,Rise\nWL 2,300,52\nWL 4,600,118", millimetres);
    ASSERT_EQ(got.points.size(), 2u);
    expectPoint(got.points[1], "WL 4", 0.6, 0.118);
}

TEST(OffsetsTable, ADecimalCommaSurvivesBetweenAnyOtherSeparators) {
    for (const std::string separator : {"\t", ";", "   "}) {
        const OffsetsRead got = read("12,5" + separator + "-30,25\n112,5" + separator + "-40,25", millimetres);
        ASSERT_EQ(got.points.size(), 2u) << separator;
        expectPoint(got.points[0], "", 0.0125, -0.03025);
    }
}

TEST(OffsetsTable, OfManyColumnsOfLengthsNoneIsGuessedAt) {
    for (const char* text : {"12,5,30,2", "1\t2\t3\t4\n5\t6\t7\t8"}) {
        const OffsetsTable table = readTable(text);
        EXPECT_EQ(table.uses, std::vector<ColumnUse>(4, ColumnUse::leftOut)) << text;
        EXPECT_TRUE(readPoints(table, table.uses, TableUnit::millimetres, millimetres).points.empty());
    }
    EXPECT_EQ(read("\"12,5\",\"30,2\"", millimetres).points.size(), 1u);
    // The user says which two of three.
    const OffsetsTable table = readTable("1\t300\t52\n2\t600\t118");
    const OffsetsRead got =
        readPoints(table, {ColumnUse::along, ColumnUse::leftOut, ColumnUse::up}, TableUnit::millimetres, millimetres);
    ASSERT_EQ(got.points.size(), 2u);
    expectPoint(got.points[1], "", 0.002, 0.118);
    // Of four, the two that hold lengths.
    const OffsetsRead two = read("a\t300\tlow\t52\nb\t600\thigh\t118", millimetres);
    ASSERT_EQ(two.points.size(), 2u);
    expectPoint(two.points[1], "b", 0.6, 0.118);
}

TEST(OffsetsTable, ByteOrderMarkCommentsEmptyLinesAndEveryLineEndingAreUnderstood) {
    const OffsetsTable table = readTable("\xEF\xBB\xBF# from the loft floor\r\nlabel,x,y\r\n\r\nA,1,2\rB,3,4\n,,\n");
    ASSERT_EQ(table.rows.size(), 2u);
    EXPECT_EQ(table.header, (std::vector<std::string>{"label", "x", "y"}));
    EXPECT_EQ(table.rows[0].line, 4);
    EXPECT_EQ(table.rows[1].line, 5);
    EXPECT_EQ(table.rows[1].cells, (std::vector<std::string>{"B", "3", "4"}));
}

TEST(OffsetsTable, ATitleAboveTheHeaderIsPassedOver) {
    const OffsetsTable table = readTable("Stem of 2026\t\t\nPoint\tx (cm)\ty (cm)\nA\t100\t200\n");
    ASSERT_EQ(table.rows.size(), 1u);
    EXPECT_EQ(table.header[1], "x (cm)");
    EXPECT_EQ(table.headerUnits, (std::vector<std::string>{"", "cm", "cm"}));
    expectPoint(read("Stem of 2026\t\t\nPoint\tx (cm)\ty (cm)\nA\t100\t200\n", eighths).points.at(0), "A", 1, 2);
}

TEST(OffsetsTable, AnInchMarkIsNoQuoteAndAQuotedOneIsRead) {
    const OffsetsRead got = read("2'-3 1/2\"\t\"2'-3 1/2\"\"\"", eighths);
    ASSERT_EQ(got.points.size(), 1u);
    expectPoint(got.points[0], "", 27.5 * inch, 27.5 * inch);
}

TEST(OffsetsTable, ASeparatorWithinQuotesStaysInTheName) {
    expectPoint(read("\"Head, port\",1,2", millimetres).points.at(0), "Head, port", 0.001, 0.002);
}

TEST(OffsetsTable, AHeaderNamesItsColumnsInAnyOrderAndTheirUnit) {
    const OffsetsRead got = read("y_mm;note;X (in);Label\n698,5;low;27.5;WL 24", eighths);
    ASSERT_EQ(got.points.size(), 1u);
    expectPoint(got.points[0], "WL 24", 27.5 * inch, 0.6985);
    // What was written must say the same when it is read without the header.
    EXPECT_NEAR(units::readLength(got.points[0].written[1], eighths), 0.6985, 1e-12);
    // A bare column is taken before one with a unit.
    const OffsetsRead bare = read("label,x_mm,x,y_mm,y\nA,9,1-0-0,9,2-0-0", eighths);
    ASSERT_EQ(bare.points.size(), 1u);
    expectPoint(bare.points[0], "A", 12 * inch, 24 * inch);
}

TEST(OffsetsTable, CellsThatAreNotUnderstoodAreNamedWithWhy) {
    const std::string text = "# loft\nWL 1,1-0-0,2-0-0\nWL 2,2-13-4,x\nWL 3,,2-0-0\nWL 4,1-6-0,2-6-0";
    const OffsetsTable table = readTable(text);
    const OffsetsRead got = read(text, eighths);
    EXPECT_EQ(got.points.size(), 2u);
    ASSERT_EQ(got.unread.size(), 3u);
    EXPECT_EQ(table.rows[got.unread[0].row].line, 3);
    EXPECT_EQ(got.unread[0].column, 1);
    EXPECT_NE(got.unread[0].wrong.find("13"), std::string::npos);
    EXPECT_EQ(got.unread[1].column, 2);
    EXPECT_EQ(table.rows[got.unread[2].row].line, 4);
    EXPECT_NE(got.unread[2].wrong.find("empty"), std::string::npos);
}

TEST(OffsetsTable, SingleBlanksWithinALengthMakeNoColumns) {
    EXPECT_EQ(readTable("27 1/2").header.size(), 1u);
    EXPECT_TRUE(read("27 1/2", LengthNotation::inches).points.empty());
    expectPoint(read("WL 2 0-3-4 2-3-4+", eighths).points.at(0), "WL 2", 3.5 * inch, (27.5 + 1.0 / 16) * inch);
}

TEST(OffsetsTable, NonsenseGivesNoPointAndKeepsItsCells) {
    for (const char* text : {"", "\n\n# only a remark\n", "  \t \n"}) EXPECT_TRUE(readTable(text).rows.empty()) << text;
    for (const char* text : {"hello", "a\tb\tc\nd\te\tf", "{\"fayline\": 1}", "Dear friend,\nthe stem is curved.\n",
                             "\x89PNG\r\n\x1a\n\1\2\xff"}) {
        const OffsetsTable table = readTable(text);
        EXPECT_FALSE(table.rows.empty()) << text;
        EXPECT_TRUE(read(text, millimetres).points.empty()) << text;
    }
    EXPECT_EQ(read("a\tb\tc\nd\te\tf", millimetres).unread.size(), 4u);
    // A cell as long as a book does no harm.
    EXPECT_TRUE(read(std::string(500'000, '1') + "\t" + std::string(500'000, 'x'), millimetres).points.empty());
    // A book is none.
    EXPECT_THROW(readTable(std::string(2'000'000, 'x')), units::InputError);
}

TEST(OffsetsTable, WhateverIsPastedHasOneShape) {
    std::mt19937_64 random(7);
    const std::string signs = "0123456789 -+/.,;\t\n\r\"'#xyabm\xC2\xBD\xE2";
    for (int round = 0; round < 3000; ++round) {
        std::string text;
        const int length = static_cast<int>(random() % 60);
        for (int i = 0; i < length; ++i) text += signs[random() % signs.size()];
        const OffsetsTable table = readTable(text);
        EXPECT_EQ(table.uses.size(), table.header.size()) << text;
        EXPECT_EQ(table.headerUnits.size(), table.header.size()) << text;
        for (const OffsetsRow& row : table.rows) EXPECT_EQ(row.cells.size(), table.header.size()) << text;
        for (const UnitReading& reading : unitReadings(table, table.uses, eighths)) {
            const OffsetsRead got = readPoints(table, table.uses, reading.unit, eighths);
            EXPECT_LE(got.points.size(), table.rows.size()) << text;
            for (const model::Point& point : got.points)  // what is kept as written says what was read
                EXPECT_NEAR(units::readLength(point.written[0], eighths), point.x_m, 1e-12) << text;
        }
    }
}

TEST(OffsetsTable, ThreeWholeNumbersAreFeetInchesAndEighths) {
    for (const char* text : {"A\t2 3 4\t0 3 4+", "A\t2.3.4\t0.3.4+", "A\t2:3:4\t0:3:4+"}) {
        const OffsetsTable table = readTable(text);
        EXPECT_EQ(unitReadings(table, table.uses, eighths).front().unit, TableUnit::feetInchesEighths);
        const OffsetsRead got = read(text, eighths);
        ASSERT_EQ(got.points.size(), 1u) << text;
        expectPoint(got.points[0], "A", 27.5 * inch, (3.5 + 1.0 / 16) * inch);
        EXPECT_EQ(got.points[0].written[0], "2-3-4");
    }
}

TEST(OffsetsTable, TheLikeliestUnitGivesALengthThatIsBuilt) {
    struct Case {
        const char* text;
        LengthNotation notation;
        TableUnit likeliest;
        double length_m;
    };
    for (const Case& one :
         {Case{"0\t0\n4877\t0", eighths, TableUnit::millimetres, 4.877},
          Case{"0\t0\n4.877\t0", millimetres, TableUnit::metres, 4.877},
          Case{"0\t0\n4.877\t0", eighths, TableUnit::inches, 4.877 * inch},
          Case{"0\t0\n2.5\t0", eighths, TableUnit::feet, 2.5 * 12 * inch},
          Case{"0\t0\n487.7\t0", millimetres, TableUnit::millimetres, 0.4877},
          Case{"0\t0\n16-0-0\t0", millimetres, TableUnit::asWritten, 16 * 12 * inch},
          Case{"0 mm\t0 mm\n4877 mm\t0 mm", eighths, TableUnit::asWritten, 4.877},
          Case{"x_mm\ty_mm\n0\t0\n4877\t0", eighths, TableUnit::asWritten, 4.877},
          Case{"0\t0\n16-0-0\t0-3-0", eighths, TableUnit::asWritten, std::hypot(192 * inch, 3 * inch)}}) {
        const OffsetsTable table = readTable(one.text);
        const std::vector<UnitReading> readings = unitReadings(table, table.uses, one.notation);
        ASSERT_FALSE(readings.empty()) << one.text;
        EXPECT_EQ(readings.front().unit, one.likeliest) << one.text;
        EXPECT_NEAR(readings.front().length_m, one.length_m, 1e-9) << one.text;
    }
    // Both readings are told of: 16 ft, and 406 ft.
    const OffsetsTable table = readTable("0\t0\n4877\t0");
    const std::vector<UnitReading> both = unitReadings(table, table.uses, eighths);
    ASSERT_EQ(both.size(), 3u);  // 4877 ft and m are beyond any length
    EXPECT_EQ(both[1].unit, TableUnit::inches);
    EXPECT_NEAR(both[1].length_m, 4877 * inch, 1e-9);
    // 40,000 in are beyond any length.
    const OffsetsTable far = readTable("0\t0\n20000\t0\n40000\t0");
    for (const UnitReading& reading : unitReadings(far, far.uses, eighths))
        EXPECT_TRUE(reading.unit == TableUnit::millimetres || reading.unit == TableUnit::centimetres);
    // What was taken as another unit is written with that.
    EXPECT_EQ(readPoints(table, table.uses, TableUnit::millimetres, eighths).points[1].written[0], "4877 mm");
    EXPECT_EQ(readPoints(table, table.uses, TableUnit::inches, eighths).points[1].written[0], "4877");
}

// The demo boat's lines (invented): label, x, y as written on the board, and beside them x_mm and y_mm, so that the two
// ways of writing check each other. Tolerance: the four decimals of a millimetre in the file.
TEST(OffsetsTable, EveryLineOfTheDemoBoatIsReadAsItsMillimetresSay) {
    int files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(FAYLINE_PUBLISHED)) {
        if (!entry.path().filename().string().starts_with("marram_")) continue;
        std::ifstream file(entry.path());
        const std::string text{std::istreambuf_iterator<char>(file), {}};
        const LengthNotation notation = text.find("\nSta ") != std::string::npos ? millimetres : eighths;
        const OffsetsTable table = readTable(text);
        ASSERT_GE(table.header.size(), 5u) << entry.path();
        const OffsetsRead got = read(text, notation);
        EXPECT_TRUE(got.unread.empty()) << entry.path();
        ASSERT_EQ(got.points.size(), table.rows.size());
        for (std::size_t i = 0; i < got.points.size(); ++i) {
            EXPECT_NEAR(got.points[i].x_m * 1000, std::stod(table.rows[i].cells[3]), 1e-4) << entry.path();
            EXPECT_NEAR(got.points[i].y_m * 1000, std::stod(table.rows[i].cells[4]), 1e-4) << entry.path();
        }
        ++files;
    }
    EXPECT_GE(files, 4);
}

}  // namespace offsets_table_test
}  // namespace fayline::io
