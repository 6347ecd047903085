// The papers about holding: pulls, closing order, props, jacks, screws and the boat on its blocks. Plans are filled in
// by hand with invented figures, so that every one of them can be sought in the printed text.
#include <QApplication>
#include <QPrinter>
#include <QTemporaryDir>
#include <QTest>
#include <limits>

#include "app/paper/papers.hpp"
#include "core/glue/library_errors.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/shop.hpp"
#include "tests/app/paper_boats.hpp"
#include "tests/app/paper_holding_plans.hpp"
#include "tests/app/pdf_printer.hpp"
#include "tests/app/rendered_pages.hpp"

namespace fayline::test {

units::Display inchesAndPounds() {
    units::Display display;
    display.lengths = units::LengthNotation::feetInchesEighths;
    display.forces = units::ForceUnit::poundForce;
    display.weights = units::WeightUnit::ounce;
    return display;
}

// The stem with so many clamps, and a tool of a long name for each.
model::Piece manyStations(int count) {
    model::Piece piece = stem();
    piece.holding.stations.clear();
    addStations(piece, -0.05, 1.85, count);
    piece.holding.tools = {{.name = "The long clamp with the " + std::string(40, 'W') + " that was lent", .count = 99}};
    return piece;
}

class PaperHoldingTest : public QObject, private PdfPrinter {
    Q_OBJECT

private:
    static plan::Shop shop(const units::Display& display = {}) {
        model::Boat boat = boatOf({});
        boat.display = display;
        return plan::shopOf(boat);
    }

    static void hasAll(const QString& text, const QStringList& wanted) {
        for (const QString& one : wanted) QVERIFY2(text.contains(one), qPrintable("'" + one + "' not in\n" + text));
    }

private slots:
    void EveryFigureOfAStationStandsInTheTable() {
        const model::Piece piece = proppedStem();
        const plan::Plan plan = inventedPlan(piece, shop());
        const QString text = wholeText(print(app::Paper::stationTable, piece, plan));
        for (const holding::StationPlace& place : plan.holding.stations) {
            hasAll(text,
                   {QString::number(place.alongOutside_m * 1000, 'f', 1),
                    QString("%1 N").arg(1000 + 100 * place.number), QString("%1 N").arg(9000 - 100 * place.number)});
        }
        // 1000 + 100 = 1100 N weighs 112.17 kg, shown to half a kilogram; 0.11 mm of gap at station 1.
        hasAll(text, {"112 kg", "0.11 mm", "as needed", "max force", "whole thrust",
                      "NONE AT HAND: none opens far enough", "Heavy bar clamp from the", "990 N", "1800 N", "2100 N",
                      "2300 N", "43.2 mm", "0.91 mm", "0.23 mm", "0.47 mm", "87.3 mm past the start"});
        QVERIFY(text.contains(QRegularExpression("no extra length up to a metre closes the end")));
    }

    // No figure for a pull that no hand feels, and no gap for a strap, which has no pad.
    void ALightPullIsToldAsThat() {
        const model::Piece piece = proppedStem();
        plan::Plan plan = inventedPlan(piece, shop());
        plan.holding.held.stations[0].pull_N = 137;
        hasAll(wholeText(print(app::Paper::stationTable, piece, plan)), {"light", "under 200 N"});
        plan = inventedPlan(piece, shop(inchesAndPounds()));
        plan.holding.held.stations[0].pull_N = 137;
        holding::ClosingStep& step = plan.holdingStudy->closing.front();
        step.pull_N = 137;
        step.closed = {plan.holding.held.stations[0]};
        const QString table = wholeText(print(app::Paper::stationTable, piece, plan));
        hasAll(table, {"light", "under 45 lbf"});
        hasAll(wholeText(print(app::Paper::closing, piece, plan)), {"light", "under 45 lbf"});
        for (const holding::HeldStation& held : plan.holding.held.stations) {
            const bool strap =
                piece.holding.stations[static_cast<std::size_t>(held.index)].kind == model::HoldKind::strap;
            const QString gap = QString::fromStdString(plan::smallText(held.gap_m, plan.display));
            QCOMPARE(table.contains(gap), !strap);
        }
    }

    void FiguresStandInTheUnitsOfTheBoat() {
        const model::Piece piece = proppedStem();
        const plan::Plan plan = inventedPlan(piece, shop(inchesAndPounds()));
        // 1100 N are 247.3 lbf, which weigh as many pounds; 0.11 mm is 0.004 in.
        hasAll(wholeText(print(app::Paper::stationTable, piece, plan)), {"250 lbf", "247 lb", "0.004 in"});
        // 400 N at the first step are 89.9 lbf; its tip is at 1.2245 m, 4 ft and 3/16 in: 4-0-1+.
        hasAll(wholeText(print(app::Paper::closing, piece, plan)), {"90 lbf", "90 lb", "4-0-1+", "1224.5"});
        // Clearance hole 6.5 mm: 0.256 in; the first prop's thrust 1334 N: 299.9 lbf.
        hasAll(wholeText(print(app::Paper::props, piece, plan)), {"0.256 in", "300 lbf", "1858 lb", "drawn 1 : "});
    }

    void TheClosingSheetHasEveryStepInItsOrder() {
        const model::Piece piece = manyStations(40);
        const plan::Plan plan = inventedPlan(piece, shop());
        const QString file = print(app::Paper::closing, piece, plan);
        QVERIFY(pageCount(file) > 2);
        const QString text = wholeText(file);
        qsizetype from = 0;
        for (const holding::ClosingStep& step : plan.holdingStudy->closing) {
            const QString pull = QString("%1 N").arg(step.pull_N);
            const qsizetype at = text.indexOf(pull, from);
            QVERIFY2(at >= from, qPrintable(pull + " out of order in\n" + text));
            from = at;
            hasAll(text, {QString::number(step.tailOff_m * 1000, 'f', 1), QString::number(step.tip.x_m * 1000, 'f', 1),
                          QString::number(step.tip.y_m * 1000, 'f', 1)});
        }
        hasAll(text, {"3 points", "1113 mm", "14.5 kg", "46.1 mm", "0.12 %", "Bent strips can throw 10 kg",
                      "Local rules", "floor in the way", "may jump over", "leaves 2.71 mm"});
        QCOMPARE(text.count("Done"), pageCount(file));  // each sheet has a head of its own
    }

    void EveryStepHasABoxToTick() {
        const model::Piece piece = proppedStem();
        const plan::Plan plan = inventedPlan(piece, shop());
        const QString file = print(app::Paper::closing, piece, plan);
        const std::vector<Word> words = wordsOf(file).front();
        const Picture picture = pictureOf(file, 1, 150);
        int boxes = 0;
        const auto done =
            std::find_if(words.begin(), words.end(), [](const Word& word) { return word.text == "Done"; });
        QVERIFY(done != words.end());
        // Upper and lower sides of the boxes: lines that go right across their middle third.
        const double left = done->box.left();
        const auto sides = picture.linesIn(QRectF(left + 2.5, done->box.bottom() + 1, 2.5, 140), false, 0.6);
        for (std::size_t i = 0; i + 1 < sides.size(); ++i) {
            if (std::abs(sides[i + 1] - sides[i] - 7.5) < 0.2) ++boxes;
        }
        QCOMPARE(boxes, math::countOf(plan.holdingStudy->closing));
    }

    void WithoutTheStudyTheClosingSheetSaysSo() {
        const model::Piece piece = proppedStem();
        const QString text = wholeText(print(app::Paper::closing, piece, inventedPlan(piece, shop(), false)));
        QVERIFY2(text.contains("is still being calculated"), qPrintable(text));
        QVERIFY(!text.contains("Free end"));
    }

    void WithoutPullsTheTableSaysSoAndStillNamesEveryStation() {
        const model::Piece piece = proppedStem();
        plan::Plan plan = inventedPlan(piece, shop(), false);
        plan.holding.held = {};
        plan.holding.props.clear();
        const QString text = wholeText(print(app::Paper::stationTable, piece, plan));
        hasAll(text, {"forces of this plan are still being calculated", "jack", "strap", "2500 N"});
        hasAll(wholeText(print(app::Paper::props, piece, plan)), {"Props, screws and blocks are still"});
    }

    void PropsJacksAndScrewsStandWithAllTheirFigures() {
        const model::Piece piece = proppedStem();
        const plan::Plan plan = inventedPlan(piece, shop());
        const QString file = print(app::Paper::props, piece, plan);
        const QString text = wholeText(file);
        for (const holding::PropPlan& prop : plan.holding.props) {
            for (const double length_m : {prop.foot.x_m, prop.foot.y_m, prop.head.x_m, prop.head.y_m, prop.length_m}) {
                hasAll(text, {QString::number(length_m * 1000, 'f', 1)});
            }
        }
        hasAll(text, {"1300 N", "1400 N", "1700 N", "3500 N", "rated load", "NEEDS A STOP at the head and the foot",
                      "stop fitted at the head and the foot", "x 442.1 mm", "head 0, foot 0.31", "21000 N", "69000 N",
                      "overhead"});
        hasAll(text,
               {"6.5 mm", "3.7 mm", "98.5 mm", "30 mm", "assumed", "6.4 mm", "550 N", "560 N", "3000 N", "2100 N",
                "4200 N", "1260 kPa", "3710 kPa", "41 mm", "Douglas-fir", "25.5 mm", "412 mm", "60 mm", "two marks"});
        hasAll(text, {"843 kg", "2800 N", "2900 N", "3700 N", "LIFTS", "Stop: under these pushes the boat tips",
                      "at 1.4 times", "4300 N", "5400 N", "Station 2 pushes hardest", "it is 2.2", "650 N", "2500 N"});
    }

    // Sources and cautions beside the numbers, each with its mark.
    void CautionsAndSourcesStandBesideTheNumbers() {
        const model::Piece piece = proppedStem();
        const QString text = wholeText(print(app::Paper::props, piece, inventedPlan(piece, shop())));
        hasAll(text, {"29 CFR 1926.305 (P)", "WAC 296-307-22509 (P)", "lift the roof", "Local rules", "NDS 3.7 (M)",
                      "Wood Handbook ch. 4 (M)", "(C)", "plane equilibrium of a rigid hull (D)", "P read in"});
    }

    void APieceHasOnlyThePapersItNeeds() {
        model::Piece piece = stem();
        QCOMPARE(app::papersOf(piece).size(), std::size_t{8});  // it has screws
        for (model::Station& station : piece.holding.stations) station.kind = model::HoldKind::clamp;
        QCOMPARE(app::papersOf(piece).size(), std::size_t{7});
        piece.holding.stations.clear();
        QCOMPARE(app::papersOf(piece).size(), std::size_t{6});
        const plan::Plan plan = plan::makePlan(piece, shop());
        hasAll(wholeText(print(app::Paper::closing, piece, plan)), {"This piece has no stations to close."});
        hasAll(wholeText(print(app::Paper::props, piece, plan)), {"This piece has no props, jacks or screws."});
    }

    void WordsStandClearOfEachOtherAndWithinTheSheet() {
        for (const auto& display : {units::Display(), inchesAndPounds()}) {
            for (const auto size : {QPageSize::A4, QPageSize::Letter}) {
                for (const model::Piece& piece : {proppedStem(), manyStations(40)}) {
                    const plan::Plan plan = inventedPlan(piece, shop(display));
                    for (const app::Paper paper : {app::Paper::stationTable, app::Paper::closing, app::Paper::props}) {
                        const QString file = print(paper, piece, plan, layoutOf(QPageSize(size)));
                        const QRectF sheet(QPointF(0, 0), QPageSize(size).size(QPageSize::Millimeter));
                        for (const std::vector<Word>& words : wordsOf(file)) {
                            const QStringList overlaps = overlapsOf(words);
                            QVERIFY2(overlaps.isEmpty(), qPrintable(app::paperName(paper) + overlaps.join("; ")));
                            const QStringList outside = wordsOutside(words, sheet.adjusted(12.7, 12.7, -12.7, -12.7));
                            QVERIFY2(outside.isEmpty(), qPrintable(app::paperName(paper) + outside.join(", ")));
                        }
                    }
                }
            }
        }
    }

    // On the smallest paper that is taken, 155 x 200 mm to draw on, and with the longest of names.
    void NothingIsCutOnTheSmallestPaper() {
        model::Piece piece = proppedStem();
        piece.holding.tools.front().name = std::string(300, 'M');
        const plan::Plan plan = inventedPlan(piece, shop(inchesAndPounds()));
        const QPageLayout small(QPageSize(QSizeF(165, 210), QPageSize::Millimeter), QPageLayout::Portrait,
                                QMarginsF(5, 5, 5, 5), QPageLayout::Millimeter);
        for (const app::Paper paper : {app::Paper::stationTable, app::Paper::closing, app::Paper::props}) {
            const QString file = print(paper, piece, plan, small);
            for (const std::vector<Word>& words : wordsOf(file)) {
                const QStringList overlaps = overlapsOf(words);
                QVERIFY2(overlaps.isEmpty(), qPrintable(app::paperName(paper) + overlaps.join("; ")));
                const QStringList outside = wordsOutside(words, QRectF(5, 5, 155, 200));
                QVERIFY2(outside.isEmpty(), qPrintable(app::paperName(paper) + ": " + outside.join(", ")));
            }
        }
    }

    void WhatIsNoNumberIsADash() {
        const model::Piece piece = proppedStem();
        plan::Plan plan = inventedPlan(piece, shop());
        const double none = std::numeric_limits<double>::quiet_NaN();
        const double endless = std::numeric_limits<double>::infinity();
        for (holding::HeldStation& held : plan.holding.held.stations) held.pull_N = held.gap_m = none;
        for (holding::PropPlan& prop : plan.holding.props) {
            prop.thrust_N = prop.slant_rad = none;
            prop.head.x_m = none;
            prop.allowable_N = endless;
        }
        for (holding::ClosingStep& step : plan.holdingStudy->closing) step.tailOff_m = endless;
        plan.holding.hull->margin = plan.holding.hull->mostPush_N = endless;
        const QRegularExpression noNumber("\\b(nan|inf)\\b", QRegularExpression::CaseInsensitiveOption);
        for (const app::Paper paper : {app::Paper::stationTable, app::Paper::closing, app::Paper::props}) {
            const QString text = wholeText(print(paper, piece, plan));
            QVERIFY2(!text.contains(noNumber), qPrintable(text));
        }
        hasAll(wholeText(print(app::Paper::props, piece, plan)), {"The boat stays down"});
    }

    void TheSideViewIsDrawnToTheScaleItNames() {
        model::Piece piece = proppedStem();
        piece.holding.hull.weight_kg = 0;
        plan::Plan plan = inventedPlan(piece, shop());
        const QString file = print(app::Paper::props, piece, plan);
        const QString text = wholeText(file);
        const auto scale = QRegularExpression("(\\d+) mm drawn 1 : (\\d+)").match(text);
        QVERIFY2(scale.hasMatch(), qPrintable(text));
        const double bar_mm = scale.captured(1).toDouble() / scale.captured(2).toDouble();
        const std::vector<Word> words = wordsOf(file).front();
        const auto drawn =
            std::find_if(words.begin(), words.end(), [](const Word& word) { return word.text == "drawn"; });
        // The bar's two ends are the upright strokes left of its words, seen above the bar itself.
        const Picture picture = pictureOf(file, 1, 300);
        const auto ends = picture.linesIn(QRectF(13, drawn->box.center().y() - 1.0, bar_mm + 3, 0.6), true, 0.5);
        QCOMPARE(ends.size(), std::size_t{2});
        QVERIFY2(std::abs(ends[1] - ends[0] - bar_mm) < 0.1, qPrintable(QString::number(ends[1] - ends[0])));
        // From the foot of the prop off the roof, 2.9 m up, down to the floor at -0.8 m.
        const auto levels = picture.linesIn(QRectF(14, 13, 40, drawn->box.top() - 15), false, 0.8);
        QCOMPARE(levels.size(), std::size_t{2});
        const double high_mm = 3700 / scale.captured(2).toDouble();
        QVERIFY2(std::abs(levels[1] - levels[0] - high_mm) < 0.1, qPrintable(QString::number(levels[1] - levels[0])));
    }
};

}  // namespace fayline::test

int main(int argc, char** argv) {
    fayline::glue::letLibraryReturnErrors();
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    fayline::test::PaperHoldingTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "paper_holding_test.moc"
