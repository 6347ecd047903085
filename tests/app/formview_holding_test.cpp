// What holds the piece, as it is drawn: arrows by their force, gaps by their factor, props from foot to head, the
// boat's blocks. The figures are put into the plan by hand, so that each mark has a known place.
#include <QtTest>

#include "tests/app/formview_held.hpp"

using namespace fayline;
using namespace fayline::app;
using namespace fayline::app::held;

class FormviewHolding : public QObject {
    Q_OBJECT

private slots:
    void AnArrowIsAsLongAsItsForce() {
        const Held held;
        const auto picture = held.picture();
        const ForceScale& scale = picture.sheet.forceScale;
        QVERIFY(scale.unit_N > 0);
        for (const auto& station : held.plan.holding.held.stations) {
            const ForceArrow* arrow = arrowOf(picture.sheet, station.index);
            QVERIFY(arrow);
            QVERIFY(std::abs(arrow->shaft.length() - station.pull_N / scale.unit_N * ForceScale::unit_px) < 1e-6);
        }
        QCOMPARE(picture.sheet.forceBar.length(), ForceScale::unit_px);
        QVERIFY(says(picture.sheet.texts, scale.words));
    }

    void AnArrowOnThePictureIsAsLongAsItsForce() {
        Held held;
        for (auto& station : held.plan.holding.held.stations) station.pull_N = station.number == 4 ? 1000 : 0;
        held.show();
        FormView view;
        view.resize(900, 600);
        view.show(held.shown);
        const auto picture = held.picture();
        const int index = held.plan.holding.stations.at(3).index;
        const ForceArrow* arrow = arrowOf(picture.sheet, index);
        QVERIFY(arrow);
        const QImage with = view.grab().toImage();
        // From the tail to the tip there is ink without a break, and beyond the tail there is none of the shaft.
        const double reach = reachOf(with, arrow->shaft.p1(), arrow->way, theme().ink, arrow->shaft.length() + 2);
        QVERIFY2(std::abs(reach - arrow->shaft.length()) <= 2.5, qPrintable(QString::number(reach)));
    }

    void TheScaleIsARoundNumberInTheUnitOfTheReader() {
        units::Display display;
        for (double greatest_N = 0.02; greatest_N < 1e6; greatest_N *= 1.37) {
            const ForceScale scale = forceScaleFor({greatest_N, greatest_N / 3}, display);
            const double longest = scale.toPixels(greatest_N);
            QVERIFY2(longest >= 24 - 1e-6 && longest <= 60 + 1e-6, qPrintable(QString::number(greatest_N)));
        }
        QCOMPARE(forceScaleFor({1400}, display).words, QStringLiteral("1000 N"));
        display.forces = units::ForceUnit::poundForce;
        const ForceScale pounds = forceScaleFor({1400}, display);
        QCOMPARE(pounds.words, QStringLiteral("500 lbf"));
        QVERIFY(std::abs(pounds.unit_N - 500 * units::poundForce_N) < 1e-9);
        QCOMPARE(forceScaleFor({0, none, endless}, display).unit_N, 0.0);
    }

    void SlackAndFullAreToldByShapeAndWord() {
        Held held;
        auto& stations = held.plan.holding.held.stations;
        stations[1].state = holding::HoldState::slack;
        stations[1].pull_N = 0;
        stations[5].state = holding::HoldState::full;
        stations[5].pull_N = 2500;
        held.show();
        const auto picture = held.picture();
        QCOMPARE(arrowOf(picture.sheet, stations[1].index)->state, ForceState::slack);
        QCOMPARE(arrowOf(picture.sheet, stations[5].index)->state, ForceState::full);
        QVERIFY(says(picture.sheet.texts, QStringLiteral("snug")));
        QVERIFY(says(picture.sheet.texts, QStringLiteral("2500 N, full")));
        QVERIFY(holdingWords(held.shown, stations[5].index).contains(QStringLiteral("max force")));
    }

    void AGapIsDrawnByItsFactorAndTheScaleOfTheDrawing() {
        Held held;
        constexpr double largest_m = 0.0004;
        held.gaps([&](double at_m) {
            return at_m < 0 || at_m > held.length_m() ? 0 : largest_m * std::sin(at_m / held.length_m() * M_PI);
        });
        held.show();
        const auto picture = held.picture();
        const FormEdge& edge = picture.sheet.edge;
        QVERIFY(edge.gaps);
        QVERIFY(says(picture.sheet.texts, QStringLiteral("Gaps drawn %1 times").arg(edge.gapTimes)));
        double longest = 0;
        for (const auto& sample : held.plan.holding.held.samples) {
            const EdgePlace place = edgeAt(edge, sample.at_m);
            const double expected = sample.gap_m * edge.gapTimes * picture.transform.pixelsPerMetre;
            QVERIFY(std::abs(place.gap_px - expected) < 1e-9);
            QVERIFY(std::abs(QLineF(place.face, place.onEdge()).length() - expected) < 1e-6);
            longest = std::max(longest, place.gap_px);
        }
        QVERIFY2(longest > 9 && longest <= 24, qPrintable(QString::number(longest)));
    }

    void AGapOnThePictureIsAsWideAsItsFactorSays() {
        Held held;
        held.gaps([&](double at_m) { return at_m > 0.3 && at_m < 1.5 ? 0.0004 : 0.0; });
        held.plan.form.corrected = false;  // else the line of the form to cut lies in the gap
        held.show();
        FormView view;
        view.resize(900, 600);
        view.show(held.shown);
        const QImage image = view.grab().toImage();
        const auto picture = held.picture();
        const EdgePlace place = edgeAt(picture.sheet.edge, 1.205);
        // Away from the stack: the gap's own ground, then the edge of the form in ink.
        int at = 3;
        const auto inkAt = [&](double off) {
            const QColor seen = image.pixelColor((place.face + place.in * off).toPoint());
            return std::abs(seen.lightness() - theme().ink.lightness()) < 90;
        };
        while (at < 60 && !inkAt(at)) ++at;
        QVERIFY2(std::abs(at - place.gap_px) <= 2, qPrintable(QString("%1 %2").arg(at).arg(place.gap_px)));
    }

    void AGapOverTheLimitIsBarredAndOneWithinIsNot() {
        Held held;
        const double limit_m = held.shown.piece.holding.gapLimit_m;
        held.gaps([&](double at_m) { return at_m > 0.4 && at_m < 0.6 ? 0.9 * limit_m : 0.0; });
        held.show();
        QVERIFY(held.picture().sheet.edge.gapsOver.isEmpty());
        QVERIFY(!held.picture().sheet.edge.gapsWithin.isEmpty());
        held.gaps([&](double at_m) { return at_m > 0.4 && at_m < 0.6 ? 1.1 * limit_m : 0.0; });
        held.show();
        QVERIFY(!held.picture().sheet.edge.barsOver.isEmpty());
        // Beyond the trim lines there is no limit: what stands off there is sawn away.
        held.gaps([&](double at_m) { return at_m > held.length_m() + 0.02 ? 10 * limit_m : 0.0; });
        held.show();
        QVERIFY(held.picture().sheet.edge.gapsOver.isEmpty());
        QVERIFY(held.picture().sheet.edge.gapsWithin.isEmpty());
        QVERIFY(held.picture().sheet.edge.gaps);
    }

    void AStackThatLiesWellIsNotMadeToLookBad() {
        Held held;
        held.gaps([](double) { return 1e-7; });
        held.show();
        const auto picture = held.picture();
        QVERIFY(!picture.sheet.edge.gaps);
        QVERIFY(!says(picture.sheet.texts, QStringLiteral("Gaps drawn")));
    }

    void PressureIsDrawnAlongTheEdgeInProportionAndNowhereElse() {
        Held held;
        for (auto& sample : held.plan.holding.held.samples) {
            if (sample.at_m > 0.5 && sample.at_m < 0.9) sample.pressure_Pa = 1e5 * (sample.at_m - 0.4);
        }
        held.show();
        const auto picture = held.picture();
        const FormEdge& edge = picture.sheet.edge;
        QVERIFY(edge.greatestPressure_Pa > 0);
        for (const auto& sample : held.plan.holding.held.samples) {
            const double expected = sample.pressure_Pa / edge.greatestPressure_Pa * greatestPressure_px;
            QVERIFY(std::abs(edgeAt(edge, sample.at_m).pressure_px - expected) < 1e-9);
        }
        QVERIFY(says(picture.sheet.texts, QStringLiteral("Pressure on the form up to")));
        const QPointF pressed = edgeAt(edge, 0.8).face + edgeAt(edge, 0.8).in * 2;
        const QPointF free = edgeAt(edge, 1.2).face + edgeAt(edge, 1.2).in * 2;
        QVERIFY(edge.pressure.contains(pressed));
        QVERIFY(!edge.pressure.contains(free));
    }

    void EachLayerCanBeSwitchedOff() {
        Held held;
        held.gaps([](double at_m) { return at_m > 0.4 && at_m < 0.8 ? 0.0004 : 0.0; });
        for (auto& sample : held.plan.holding.held.samples) sample.pressure_Pa = sample.at_m > 1 ? 1e5 : 0;
        held.show();
        FormView view;
        view.resize(900, 600);
        view.show(held.shown);
        const QImage all = view.grab().toImage();
        view.setForcesShown(false);
        QVERIFY(!says(view.texts(), QStringLiteral("250 N")));
        QVERIFY(view.grab().toImage() != all);
        view.setForcesShown(true);
        QVERIFY(view.grab().toImage() == all);
        view.setGapsMagnified(false);
        QVERIFY(!says(view.texts(), QStringLiteral("Gaps drawn")));
        view.setGapsMagnified(true);
        view.setPressureShown(false);
        QVERIFY(!says(view.texts(), QStringLiteral("Pressure")));
        view.setPressureShown(true);
        QVERIFY(view.grab().toImage() == all);
    }

    void ResultsThatAreMissingOrNoNumbersAreLeftOut() {
        Held held;
        int i = 0;
        for (auto& sample : held.plan.holding.held.samples) {
            if (++i % 7 == 0) sample.gap_m = i % 2 ? none : endless;
            if (i % 11 == 0) sample.pressure_Pa = i % 2 ? none : endless;
            if (i % 13 == 0) sample.moment_N_m = none;
        }
        held.plan.holding.held.samples[20].gap_m = 1e300;
        held.plan.holding.held.stations[0].pull_N = none;
        held.plan.holding.held.stations[1].pull_N = endless;
        held.plan.holding.held.stations[2].gap_m = none;
        held.plan.holding.held.stations.own().pop_back();
        held.plan.holding.held.largest.gap_m = none;
        holding::PropPlan prop;
        prop.index = 3;
        prop.foot = {none, endless};
        prop.allowable_N = endless;
        held.plan.holding.props.push_back(prop);
        held.plan.holding.hull = holding::HullPlan{};
        held.plan.holding.hull->blocks.push_back({});
        held.shown.piece.holding.hull.blocks.resize(2);
        held.plan.holding.hull->blocks.back().push_N = endless;
        held.show();
        const auto picture = held.picture();
        QVERIFY(finite(picture.sheet.edge.edge) && finite(picture.sheet.edge.pressure) &&
                finite(picture.sheet.edge.gapsWithin) && finite(picture.sheet.edge.gapsOver));
        for (const ForceArrow& arrow : picture.sheet.forces) QVERIFY(std::isfinite(arrow.shaft.length()));
        for (const Text& text : picture.sheet.texts) {
            QVERIFY2(!text.words.contains(QStringLiteral("nan")) && !text.words.contains(QStringLiteral("inf")),
                     qPrintable(text.words));
        }
        FormView view;
        view.resize(900, 600);
        view.show(held.shown);
        view.grab();
        for (double at_m = -0.1; at_m < 2; at_m += 0.05) {
            view.lightPlace(at_m);
            view.grab();
        }
        QCOMPARE(overlapOf(view), std::string());

        Held empty;
        empty.plan.holding.held = {};
        empty.show();
        view.show(empty.shown);
        view.grab();
        QVERIFY(!says(view.texts(), QStringLiteral("Gaps drawn")) && !says(view.texts(), QStringLiteral(" N")));
    }

    void WordsAboutHoldingNeitherCoverOthersNorLeaveTheView() {
        Held held;
        held.gaps([](double at_m) { return std::abs(std::sin(at_m * 12)) * 0.0007; });
        for (auto& sample : held.plan.holding.held.samples)
            sample.pressure_Pa = 1e5 * std::abs(std::cos(sample.at_m * 9));
        held.show();
        for (const QSize size : {QSize(900, 600), QSize(1280, 800), QSize(480, 360), QSize(240, 160)}) {
            FormView view;
            view.resize(size);
            view.show(held.shown);
            QCOMPARE(overlapOf(view), std::string());
            view.zoomBy(10);
            QCOMPARE(overlapOf(view), std::string());
        }
    }

    void AtAnOrdinarySizeEveryPullHasItsFigure() {
        const Held held;
        const auto picture = held.picture({}, {760, 560});
        for (const auto& station : held.plan.holding.held.stations) {
            QVERIFY2(says(picture.sheet.texts,
                          QString::fromStdString(units::writeForce(station.pull_N, held.shown.display))),
                     qPrintable(QString::number(station.pull_N)));
        }
    }

    // Fitted, each arrow with the words beside or beyond it lies in the view.
    void AFittedPieceHasRoomForItsArrowsAndTheirFigures() {
        for (const QSize size : {QSize(660, 520), QSize(900, 600), QSize(480, 700)}) {
            Bench bench("marram_in_place", 0, size);
            bench.view.fitToWindow();
            const Drawing drawing = drawingOf(*bench.shown.plan, bench.shown.piece.line.stripsOn);
            const Fonts fonts = fontsFrom(tabularFont(bench.view.font()));
            const Sheet sheet =
                sheetOf(bench.shown, drawing, bench.view.transform(), bench.view.size(), ViewChoice{}, fonts, false);
            QVERIFY(sheet.forces.size() >= 8);
            const QRectF view(QPointF(0, 0), QSizeF(size));
            const QFontMetricsF figures(fonts.small);
            for (const ForceArrow& arrow : sheet.forces) {
                QVERIFY2(view.contains(arrow.shaft.p1()) && view.contains(arrow.shaft.p2()), qPrintable(arrow.figure));
                const double beyond = arrow.shaft.p1().x() - arrow.way.x() * figures.horizontalAdvance(arrow.figure);
                QVERIFY2(beyond >= 0 && beyond <= size.width(), qPrintable(arrow.figure));
            }
        }
    }

    // Blocks far off do not make the piece small: an arrow at the edge says where they are and how far.
    void WhatLiesFarOffIsToldAtTheEdgeOfTheView() {
        Propped bench;
        const double near = bench.view.transform().pixelsPerMetre;
        const auto drawnSheet = [&] {
            return sheetOf(bench.shown, drawingOf(*bench.shown.plan, bench.shown.piece.line.stripsOn),
                           bench.view.transform(), bench.view.size(), ViewChoice{},
                           fontsFrom(tabularFont(bench.view.font())), false);
        };
        QVERIFY(drawnSheet().far.empty());
        auto& blocks = bench.shown.piece.holding.hull.blocks;
        blocks.push_back({.x_m = 9, .y_m = -0.3});
        blocks.push_back({.x_m = -7, .y_m = -0.3});
        bench.view.show(bench.shown);
        bench.view.fitToWindow();
        QCOMPARE(bench.view.transform().pixelsPerMetre, near);
        const Sheet sheet = drawnSheet();
        QCOMPARE(sheet.far.size(), size_t{2});
        for (const FarMark& mark : sheet.far) {
            QVERIFY(QRectF(bench.view.rect()).contains(mark.place()));
            const bool right = mark.words.contains("block 4");
            QVERIFY(right ? mark.way.x() > 0.9 : mark.way.x() < -0.9);
            const auto& block = blocks[right ? 3 : 4];
            const double away_m = std::abs(bench.shown.plan->line.fair.line.nearest(block.x_m, block.y_m).distance_m);
            QVERIFY(mark.words.contains(QString::fromStdString(units::writeLength(away_m, bench.shown.display))));
            QVERIFY(says(sheet.texts, mark.words));
        }
    }

    void APropStandsFromItsFootToItsHead() {
        Propped bench;
        const auto& station = bench.shown.piece.holding.stations[bench.prop];
        const Drawing drawing = drawingOf(*bench.shown.plan, bench.shown.piece.line.stripsOn);
        const Sheet sheet = sheetOf(bench.shown, drawing, bench.view.transform(), bench.view.size(), ViewChoice{},
                                    fontsFrom(tabularFont(bench.view.font())), false);
        const QPointF foot = bench.view.transform().toScreen({*station.strut.footX_m, *station.strut.footY_m});
        const QPointF head = bench.view.transform().toScreen(placeAt(drawing, station.at_m).onOutside);
        for (const StationMark& mark : sheet.stations) {
            if (mark.index != bench.prop) continue;
            QVERIFY(mark.shape.body.contains(foot + (head - foot) * 0.02));
            QVERIFY(mark.shape.body.contains(foot + (head - foot) * 0.5));
            QVERIFY(mark.shape.body.contains(head + (foot - head) * 0.05));
        }
        // Both feet stand on one floor.
        QCOMPARE(sheet.ground.size(), size_t{1});
        QVERIFY(std::abs(sheet.ground[0].line.y1() - foot.y()) < 1e-6);
        QVERIFY(sheet.ground[0].line.x1() < foot.x() && sheet.ground[0].line.x2() > foot.x());
    }

    void ASlippingPropIsMarkedAtItsEndUnlessAStopHoldsIt() {
        Propped bench;
        plan::Plan plan = *bench.shown.plan;
        holding::PropPlan prop;
        const auto& station = bench.shown.piece.holding.stations[bench.prop];
        prop.index = bench.prop;
        prop.head = plan.holding.stations[2].onOutside;
        prop.foot = {*station.strut.footX_m, *station.strut.footY_m};
        prop.slips = holding::Slips::foot;
        plan.holding.props = {prop};
        bench.shown.plan = std::make_shared<plan::Plan>(plan);
        const auto troubles = propTroubles(bench.shown, bench.view.transform());
        QCOMPARE(troubles.size(), size_t{1});
        QVERIFY(QLineF(troubles[0].at, bench.view.transform().toScreen(prop.foot)).length() <
                QLineF(troubles[0].at, bench.view.transform().toScreen(prop.head)).length());
        bench.shown.piece.holding.stations[bench.prop].strut.stop = model::Stop::foot;
        QVERIFY(propTroubles(bench.shown, bench.view.transform()).empty());
    }

    void TheHullsForcesHaveTheirOwnStatedScaleWhereOneWouldHideTheOthers() {
        Propped bench;
        plan::Plan plan = *bench.shown.plan;
        plan.holding.held.stations = {{.index = 0, .number = 1, .pull_N = 800, .most_N = 2500}};
        plan.holding.hull = holding::HullPlan{};
        for (int i = 0; i < 3; ++i) {
            holding::BlockPush push;
            push.index = i;
            push.push_N = 2000.0 * (i + 1);
            push.lifts = false;
            plan.holding.hull->blocks.push_back(push);
        }
        bench.shown.plan = std::make_shared<plan::Plan>(plan);
        bench.view.show(bench.shown);
        const ForceScale scale = forceScaleOf(plan, bench.shown.display);
        const HullMark hull = hullOf(bench.shown, bench.view.transform(), scale, true);
        QVERIFY(hull.times > 1);
        for (const BlockMark& block : hull.blocks) {
            QVERIFY(block.push);
            const double expected = scale.toPixels(2000.0 * (block.index + 1)) / hull.times;
            QVERIFY(std::abs(block.push->shaft.length() - expected) < 1e-6);
        }
        QVERIFY(says(bench.view.texts(), QStringLiteral("(blocks ")));
    }

    void TheReadingTellsGapPressureAndMomentOfThePlace() {
        Held held;
        held.gaps([](double) { return 0.00012; });
        for (auto& sample : held.plan.holding.held.samples) {
            sample.pressure_Pa = 31000;
            sample.moment_N_m = 35;
        }
        held.show();
        const auto sample = sampleAt(held.plan.holding.held, 0.755);
        QVERIFY(sample);
        QVERIFY(std::abs(sample->gap_m - 0.00012) < 1e-12 && std::abs(sample->moment_N_m - 35) < 1e-9);
        QVERIFY(!sampleAt(held.plan.holding.held, 50));
        FormView view;
        view.resize(900, 600);
        view.show(held.shown);
        view.lightPlace(0.755);
        view.grab();
        const double withGap = view.reading().height();
        held.plan.holding.held = {};
        held.show();
        view.show(held.shown);
        view.grab();
        QVERIFY(withGap > view.reading().height() * 1.8);  // three lines more than three
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, FormviewHolding>(argc, argv);
}
#include "formview_holding_test.moc"
