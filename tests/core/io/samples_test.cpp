// The sample files: as a save leaves them, and the lines they were made from.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "core/io/file.hpp"
#include "core/units/length.hpp"
#include "tests/published/csv_rows.hpp"

namespace fayline::io {

using namespace model;
namespace samples_test {

std::string textOf(const std::string& path) {
    std::ifstream file(path);
    EXPECT_TRUE(file) << path;
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

struct Row {
    std::string label;
    double x_m = 0;
    double y_m = 0;
};

// The measured offsets of a published line: label, x and y in millimetres in columns 1, 4 and 5.
std::vector<Row> measured(const std::string& name) {
    std::vector<Row> rows;
    for (const std::vector<std::string>& cells : published::linesOf(name)) {
        if (cells[0] == "label") continue;
        rows.push_back({cells[0], std::stod(cells.at(3)) / 1000, std::stod(cells.at(4)) / 1000});
    }
    return rows;
}

void expectLine(const Piece& piece, const std::string& name, units::LengthNotation notation) {
    const auto rows = measured(name);
    ASSERT_EQ(piece.line.points.size(), rows.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const Point& point = piece.line.points[i];
        EXPECT_EQ(point.label, rows[i].label);
        EXPECT_NEAR(point.x_m, rows[i].x_m, 1e-12);
        EXPECT_NEAR(point.y_m, rows[i].y_m, 1e-12);
        EXPECT_NEAR(units::readLength(point.written[0], notation), point.x_m, 1e-12) << point.written[0];
        EXPECT_NEAR(units::readLength(point.written[1], notation), point.y_m, 1e-12) << point.written[1];
    }
}

TEST(Samples, ComeBackByteForByte) {
    for (const char* name : {"marram", "marram_in_place", "marram_misread", "minimal"}) {
        const std::string text = textOf(std::string(FAYLINE_SAMPLES) + "/" + name + ".fayline");
        EXPECT_EQ(writeBoat(readBoat(text)), text) << name;
    }
}

TEST(Samples, HoldTheMeasuredLinesAsTheyWereWritten) {
    const Boat marram = loadBoat(std::string(FAYLINE_SAMPLES) + "/marram.fayline");
    ASSERT_EQ(marram.pieces.size(), 4u);
    const char* names[] = {"Stem", "Deck beam", "Rail", "Tiller"};
    const char* lines[] = {"marram_stem.csv", "marram_deck_beam.csv", "marram_rail.csv", "marram_tiller.csv"};
    for (int i = 0; i < 4; ++i) {
        EXPECT_EQ(marram.pieces[i].name, names[i]);
        expectLine(marram.pieces[i], lines[i], marram.display.lengths);
    }
    const Boat misread = loadBoat(std::string(FAYLINE_SAMPLES) + "/marram_misread.fayline");
    expectLine(misread.pieces.at(0), "marram_stem_misread.csv", misread.display.lengths);
}

TEST(Samples, TheLineHeldInPlaceIsAsItWasWritten) {
    const Boat inPlace = loadBoat(std::string(FAYLINE_SAMPLES) + "/marram_in_place.fayline");
    ASSERT_EQ(inPlace.pieces.size(), 1u);
    for (const Point& point : inPlace.pieces[0].line.points) {
        EXPECT_NEAR(units::readLength(point.written[0], inPlace.display.lengths), point.x_m, 1e-12) << point.label;
        EXPECT_NEAR(units::readLength(point.written[1], inPlace.display.lengths), point.y_m, 1e-12) << point.label;
    }
}

TEST(Samples, TheMisreadStemDiffersInOneOffsetByAnInch) {
    const auto right = loadBoat(std::string(FAYLINE_SAMPLES) + "/marram.fayline").pieces[0].line.points;
    const auto misread = loadBoat(std::string(FAYLINE_SAMPLES) + "/marram_misread.fayline").pieces[0].line.points;
    int different = 0;
    for (std::size_t i = 0; i < right.size(); ++i) {
        if (right[i].x_m == misread[i].x_m && right[i].y_m == misread[i].y_m) continue;
        ++different;
        EXPECT_EQ(right[i].label, "WL 24");
        EXPECT_NEAR(misread[i].x_m - right[i].x_m, 0.0254, 1e-12);
    }
    EXPECT_EQ(different, 1);
}

}  // namespace samples_test
}  // namespace fayline::io
