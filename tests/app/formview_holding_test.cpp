// What holds the piece, as it is drawn and moved: arrows by their force, gaps by their factor, props from foot to head,
// blocks, trim lines. The figures are put into the plan by hand, so that each mark has a known place.
#include <QtTest>
#include <cmath>
#include <limits>

#include "app/formview/edits.hpp"
#include "app/formview/force_marks.hpp"
#include "app/formview/form_edge.hpp"
#include "app/formview/sheet.hpp"
#include "app/look/theme.hpp"
#include "core/measure/units.hpp"
#include "tests/app/formview_samples.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();
constexpr double endless = std::numeric_limits<double>::infinity();

// The stem with a held stack written by hand: pulls of 250, 500, ... N, gaps between trim lines of half a sine.
struct Held {
    boat::Boat boat = sampleBoat("marram");
    Shown shown = shownOf(boat, 0);
    plan::Plan plan = *shown.plan;

    Held() { fill(); }

    double length_m() const { return plan.line.fair.line.length(); }

    void fill() {
        auto& holding = plan.holding;
        holding.held = {};
        holding.props.clear();
        holding.straps.clear();
        holding.posts.clear();
        holding.hull.reset();
        for (const auto& place : holding.stations) {
            holding::HeldStation station;
            station.index = place.index;
            station.number = place.number;
            station.at_m = place.at_m;
            station.pull_N = 250.0 * place.number;
            station.most_N = 2500;
            station.state = holding::HoldState::closes;
            holding.held.stations.push_back(station);
        }
        gaps([](double) { return 0.0; });
        show();
    }
    template <class Gap>
    void gaps(const Gap& gap) {
        auto& samples = plan.holding.held.samples;
        samples.clear();
        for (double at_m = -0.1; at_m < length_m() + 0.15; at_m += 0.01) samples.push_back({at_m, gap(at_m), 0, 0});
    }
    void show() { shown.plan = std::make_shared<plan::Plan>(plan); }

    struct Picture {
        Drawing drawing;
        Transform transform;
        Sheet sheet;
    };
    Picture picture(const Choice& choice = {}, QSizeF view = {900, 600}) const {
        Picture made;
        made.drawing = drawingOf(*shown.plan, shown.piece.line.stripsOn);
        const Fonts fonts = fontsFrom(tabularFont(QApplication::font()));
        made.transform = fitted(boundsOf(shown, made.drawing), roomWithMarks(shown, made.drawing, view, fonts, choice));
        made.sheet = sheetOf(shown, made.drawing, made.transform, view, choice, fonts, false);
        return made;
    }
};

const ForceArrow* arrowOf(const Sheet& sheet, int station) {
    for (const ForceArrow& arrow : sheet.forces) {
        if (arrow.station == station) return &arrow;
    }
    return nullptr;
}

bool says(const std::vector<Text>& texts, const QString& words) {
    return std::any_of(texts.begin(), texts.end(), [&](const Text& text) { return text.words.contains(words); });
}

std::string overlapOf(const FormView& view) {
    const auto& texts = view.texts();
    for (size_t i = 0; i < texts.size(); ++i) {
        if (!QRectF(view.rect()).contains(texts[i].place)) return "leaves the view: " + texts[i].words.toStdString();
        for (size_t j = 0; j < i; ++j) {
            if (!texts[i].place.intersects(texts[j].place)) continue;
            return texts[i].words.toStdString() + " covers " + texts[j].words.toStdString();
        }
    }
    return {};
}

bool finite(const QPainterPath& path) {
    for (int i = 0; i < path.elementCount(); ++i) {
        if (!std::isfinite(path.elementAt(i).x) || !std::isfinite(path.elementAt(i).y)) return false;
    }
    return true;
}

// How far from `from` along `way` pixels of about this colour reach without a break of more than two, within `most`.
double reachOf(const QImage& image, QPointF from, QPointF way, const QColor& colour, double most) {
    double reach = 0;
    for (double at = 0; at <= most && at - reach <= 2; at += 0.25) {
        const QPointF place = from + way * at;
        const QPoint pixel(static_cast<int>(std::floor(place.x())), static_cast<int>(std::floor(place.y())));
        if (!image.rect().contains(pixel)) break;
        const QColor seen = image.pixelColor(pixel);
        const int off = std::abs(seen.red() - colour.red()) + std::abs(seen.green() - colour.green()) +
                        std::abs(seen.blue() - colour.blue());
        if (off < 90) reach = at;
    }
    return reach;
}

// The stem glued in place under a boat: two props from the floor and a hull on three blocks.
struct Propped : Bench {
    int prop = -1;

    Propped() : Bench("marram", 0) {
        auto& holding = shown.piece.holding;
        for (int i = 0; i < 2; ++i) {
            auto& station = holding.stations[2 + i];
            station.kind = boat::HoldKind::prop;
            station.footX_m = 0.9 - 0.3 * i;
            station.footY_m = -0.5;
        }
        prop = 2;
        holding.hull.weight_kg = 800;
        holding.hull.centreX_m = 0.6;
        holding.hull.centreY_m = 0.9;
        holding.hull.blocks = {{.x_m = 0.2, .y_m = -0.3}, {.x_m = 0.7, .y_m = -0.3}, {.x_m = 1.3, .y_m = -0.3}};
        shown.plan = std::make_shared<plan::Plan>(plan::makePlan(shown.piece, plan::shopOf(boat)));
        view.show(shown);
        view.fitToWindow();
    }
    QPoint at(double x_m, double y_m) const { return view.transform().toScreen({x_m, y_m}).toPoint(); }
    void drag(QPoint from, QPoint to, Qt::KeyboardModifiers held = Qt::NoModifier) {
        QTest::mousePress(&view, Qt::LeftButton, held, from);
        for (const double share : {0.3, 0.7, 1.0}) {
            const QPointF now = QPointF(from) + QPointF(to - from) * share;
            QMouseEvent move(QEvent::MouseMove, now, view.mapToGlobal(now), Qt::NoButton, Qt::LeftButton, held);
            QCoreApplication::sendEvent(&view, &move);
        }
    }
    void release(QPoint at) { QTest::mouseRelease(&view, Qt::LeftButton, {}, at); }
    bool oneStep(const QString& name) const {
        if (changes.empty() || ended != 1) return false;
        return std::all_of(changes.begin(), changes.end(), [&](const Change& change) {
            return change.name == name && !change.merges.isEmpty() && change.merges == changes.front().merges;
        });
    }
    // The grip of a trim line: on the form's side of it.
    QPoint gripOf(int trim) {
        const Drawing drawing = drawingOf(*shown.plan, shown.piece.line.stripsOn);
        const Sheet sheet = sheetOf(shown, drawing, view.transform(), view.size(), Choice{},
                                    fontsFrom(tabularFont(view.font())), false);
        return sheet.grips.at(trim).toPoint();
    }
    line::Xy placeOf(double at_m) const {
        const line::Place place = shown.plan->line.fair.line.at(at_m);
        return {place.x_m, place.y_m};
    }
};

double apart(const line::Xy& a, const line::Xy& b) {
    return std::hypot(a.x_m - b.x_m, a.y_m - b.y_m);
}

}  // namespace

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
        measure::Display display;
        for (double greatest_N = 0.02; greatest_N < 1e6; greatest_N *= 1.37) {
            const ForceScale scale = forceScaleFor({greatest_N, greatest_N / 3}, display);
            const double longest = scale.toPixels(greatest_N);
            QVERIFY2(longest >= 24 - 1e-6 && longest <= 60 + 1e-6, qPrintable(QString::number(greatest_N)));
        }
        QCOMPARE(forceScaleFor({1400}, display).words, QStringLiteral("1000 N"));
        display.forces = measure::ForceUnit::poundForce;
        const ForceScale pounds = forceScaleFor({1400}, display);
        QCOMPARE(pounds.words, QStringLiteral("500 lbf"));
        QVERIFY(std::abs(pounds.unit_N - 500 * measure::poundForce_N) < 1e-9);
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
        QVERIFY(says(picture.sheet.texts, QStringLiteral("slack")));
        QVERIFY(says(picture.sheet.texts, QStringLiteral("2500 N, full")));
        QVERIFY(holdingWords(held.shown, stations[5].index).contains(QStringLiteral("all it has")));
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
        held.plan.holding.held.stations.pop_back();
        held.plan.holding.held.largest.gap_m = none;
        holding::PropPlan prop;
        prop.index = 3;
        prop.foot = {none, endless};
        prop.bucklesAt_N = endless;
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
                          QString::fromStdString(measure::writeForce(station.pull_N, held.shown.display))),
                     qPrintable(QString::number(station.pull_N)));
        }
    }

    void APropStandsFromItsFootToItsHead() {
        Propped bench;
        const auto& station = bench.shown.piece.holding.stations[bench.prop];
        const Drawing drawing = drawingOf(*bench.shown.plan, bench.shown.piece.line.stripsOn);
        const Sheet sheet = sheetOf(bench.shown, drawing, bench.view.transform(), bench.view.size(), Choice{},
                                    fontsFrom(tabularFont(bench.view.font())), false);
        const QPointF foot = bench.view.transform().toScreen({*station.footX_m, *station.footY_m});
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
        prop.foot = {*station.footX_m, *station.footY_m};
        prop.slips = holding::Slips::foot;
        plan.holding.props = {prop};
        bench.shown.plan = std::make_shared<plan::Plan>(plan);
        const auto troubles = propTroubles(bench.shown, bench.view.transform());
        QCOMPARE(troubles.size(), size_t{1});
        QVERIFY(QLineF(troubles[0].at, bench.view.transform().toScreen(prop.foot)).length() <
                QLineF(troubles[0].at, bench.view.transform().toScreen(prop.head)).length());
        bench.shown.piece.holding.stations[bench.prop].stop = boat::Stop::foot;
        QVERIFY(propTroubles(bench.shown, bench.view.transform()).empty());
    }

    void AFootIsDraggedInOneStep() {
        Propped bench;
        const auto before = bench.shown.piece;
        const QPoint from = bench.at(*before.holding.stations[bench.prop].footX_m, -0.5);
        bench.drag(from, from + QPoint(-40, 10));
        bench.release(from + QPoint(-40, 10));
        QVERIFY2(bench.oneStep(QStringLiteral("Move foot of prop 3")),
                 qPrintable(bench.changes.empty() ? QString("nothing") : bench.changes.back().name));
        const auto& moved = bench.shown.piece.holding.stations[bench.prop];
        const double scale = bench.view.transform().pixelsPerMetre;
        QVERIFY(std::abs(*moved.footX_m - *before.holding.stations[bench.prop].footX_m + 40 / scale) < 0.001);
        QVERIFY(std::abs(*moved.footY_m + 0.5 + 10 / scale) < 0.001);
        auto rest = bench.shown.piece;
        rest.holding.stations[bench.prop] = before.holding.stations[bench.prop];
        QVERIFY(rest == before);
    }

    void EscapePutsFootBlockAndTrimLineBack() {
        const auto begin = [](Propped& bench, int what) {
            if (what == 0) return bench.at(*bench.shown.piece.holding.stations[bench.prop].footX_m, -0.5);
            if (what == 1) return bench.at(0.7, -0.3) + QPoint(0, 8);
            return bench.gripOf(1);
        };
        for (const int what : {0, 1, 2}) {
            Propped bench;
            const auto before = bench.shown.piece;
            const QPoint from = begin(bench, what);
            bench.drag(from, from + QPoint(14, 25));
            QVERIFY2(!(bench.shown.piece == before), qPrintable(QString::number(what)));
            QTest::keyClick(&bench.view, Qt::Key_Escape);
            QVERIFY(bench.shown.piece == before);
            QCOMPARE(bench.ended, 1);
            for (const Change& change : bench.changes) QCOMPARE(change.merges, bench.changes.front().merges);
        }
    }

    void ABlockIsDraggedLevel() {
        Propped bench;
        const auto before = bench.shown.piece;
        const QPoint from = bench.at(0.7, -0.3) + QPoint(0, 8);
        bench.drag(from, from + QPoint(30, 20));
        bench.release(from + QPoint(30, 20));
        QVERIFY(bench.oneStep(QStringLiteral("Move block 2")));
        const double scale = bench.view.transform().pixelsPerMetre;
        QVERIFY(std::abs(bench.shown.piece.holding.hull.blocks[1].x_m - 0.7 - 30 / scale) < 0.001);
        QCOMPARE(bench.shown.piece.holding.hull.blocks[1].y_m, -0.3);
    }

    void TheTrimLineAtTheEndSlidesOnTheLineAndTheStripsEndWhereTheyDid() {
        Propped bench;
        const auto before = bench.shown.piece;
        const line::Line was = bench.shown.plan->line.fair.line;
        const line::Xy stripsEnd = bench.placeOf(was.length() + before.stack.runsPastEnd_m);
        const QPoint from = bench.gripOf(1);
        const QPointF way = bench.view.transform().toScreen(bench.placeOf(was.length() - 0.06)) -
                            bench.view.transform().toScreen(bench.placeOf(was.length()));
        bench.drag(from, from + way.toPoint());
        bench.release(from + way.toPoint());
        QVERIFY(bench.oneStep(QStringLiteral("Move trim line at the end")));
        const auto& after = bench.shown.piece;
        const double length_m = bench.shown.plan->line.fair.line.length();
        QVERIFY2(std::abs(was.length() - length_m - 0.06) < 0.008,
                 qPrintable(QString::number(was.length() - length_m)));
        QVERIFY(std::abs(after.stack.runsPastEnd_m - before.stack.runsPastEnd_m - (was.length() - length_m)) < 0.002);
        const auto& point = after.line.points.back();
        QVERIFY(std::abs(was.nearest(point.x_m, point.y_m).distance_m) < after.line.readTo_m);
        QVERIFY(apart(stripsEnd, bench.placeOf(length_m + after.stack.runsPastEnd_m)) < 0.005);
        QVERIFY(after.holding.stations == before.holding.stations);
        QVERIFY(after.line.points.front() == before.line.points.front());
        QCOMPARE(after.stack.runsPastStart_m, before.stack.runsPastStart_m);
    }

    void TheTrimLineAtTheStartLeavesEverythingAtItsPlaceOnTheWood() {
        for (const double by_m : {0.04, -0.03}) {
            Bench bench;
            auto& piece = bench.shown.piece;
            piece.form.carriesOnStart_m = 0.08;
            piece.holding.stations[1].kind = boat::HoldKind::strap;
            piece.holding.stations[1].to_m = 0.5;
            bench.shown.plan = std::make_shared<plan::Plan>(plan::makePlan(piece, plan::shopOf(bench.boat)));
            const auto before = bench.shown;
            const Change change = edits::moveTrim(before, edits::TrimLine::start, by_m, QStringLiteral("m"));
            const auto after = plan::makePlan(change.after, plan::shopOf(bench.boat));
            const line::Line& was = before.plan->line.fair.line;
            const line::Line& now = after.line.fair.line;
            const auto same = [&](double was_m, double now_m) {
                const line::Place a = was.at(was_m);
                const line::Place b = now.at(now_m);
                return std::hypot(a.x_m - b.x_m, a.y_m - b.y_m) < 0.004;
            };
            for (size_t i = 0; i < piece.holding.stations.size(); ++i) {
                QVERIFY(same(before.piece.holding.stations[i].at_m, change.after.holding.stations[i].at_m));
            }
            QVERIFY(same(*before.piece.holding.stations[1].to_m, *change.after.holding.stations[1].to_m));
            QVERIFY(same(before.piece.stack.pins[0].at_m, change.after.stack.pins[0].at_m));
            QVERIFY(same(before.piece.stack.widths[1].at_m, change.after.stack.widths[1].at_m));
            QVERIFY(same(-before.piece.stack.runsPastStart_m, -change.after.stack.runsPastStart_m));
            QVERIFY(same(-*before.piece.form.carriesOnStart_m, -*change.after.form.carriesOnStart_m));
            QVERIFY(
                same(was.length() + before.piece.stack.runsPastEnd_m, now.length() + change.after.stack.runsPastEnd_m));
        }
    }

    void ATrimLineStaysClearOfTheNeighbouringPoint() {
        Bench bench;
        const auto& feet = bench.shown.plan->line.fair.points;
        const Change end = edits::moveTrim(bench.shown, edits::TrimLine::end, 0, {});
        const auto& last = end.after.line.points.back();
        const line::Line& line = bench.shown.plan->line.fair.line;
        QVERIFY(line.nearest(last.x_m, last.y_m).at_m > feet[feet.size() - 2].at_m + 0.005);
        const Change start = edits::moveTrim(bench.shown, edits::TrimLine::start, line.length(), {});
        const auto& first = start.after.line.points.front();
        QVERIFY(line.nearest(first.x_m, first.y_m).at_m < feet[1].at_m - 0.005);
        // As far out as it is pulled, a plan can be made of it, and the strips still reach it.
        for (const auto which : {edits::TrimLine::start, edits::TrimLine::end}) {
            const Change far = edits::moveTrim(bench.shown, which, which == edits::TrimLine::start ? -50 : 50, {});
            QVERIFY(far.after.stack.runsPastStart_m >= 0 && far.after.stack.runsPastEnd_m >= 0);
            (void)plan::makePlan(far.after, plan::shopOf(bench.boat));
        }
        // Where it stands, nothing changes.
        QVERIFY(edits::moveTrim(bench.shown, edits::TrimLine::end, line.length(), {}).after == bench.shown.piece);
    }

    void KeysWalkToFeetBlocksAndTrimLinesAndNudgeThem() {
        Propped bench;
        QWidget window;
        bench.view.setParent(&window);
        window.show();
        QVERIFY(QTest::qWaitForWindowExposed(&window));
        bench.view.setFocus();
        QTRY_VERIFY(bench.view.hasFocus());
        QString said;
        QObject::connect(&bench.view, &FormView::selectionSaid, &bench, [&](const QString& words) { said = words; });
        std::set<QString> nudged;
        for (int i = 0; i < 60; ++i) {
            QTest::keyClick(&bench.view, Qt::Key_Tab);
            if (!bench.view.hasFocus() || said.isEmpty()) break;
            const bool ours = said.startsWith(QStringLiteral("foot of")) || said.startsWith(QStringLiteral("block")) ||
                              said.startsWith(QStringLiteral("trim line"));
            if (!ours) continue;
            const auto before = bench.shown.piece;
            bench.changes.clear();
            QTest::keyClick(&bench.view, Qt::Key_Right);
            QTest::keyClick(&bench.view, Qt::Key_Right);
            QCOMPARE(bench.changes.size(), size_t{2});
            QCOMPARE(bench.changes[0].merges, bench.changes[1].merges);
            QVERIFY(!(bench.shown.piece == before));
            QVERIFY(bench.view.accessibleDescription().contains(QStringLiteral("Selected: ")));
            nudged.insert(bench.changes[1].name);
        }
        for (const char* name : {"Move foot of prop 3", "Move foot of prop 4", "Move block 1", "Move block 3",
                                 "Move trim line at the start", "Move trim line at the end"}) {
            QVERIFY2(nudged.contains(QString(name)), name);
        }
        bench.view.setParent(nullptr);
    }

    void TwoNudgesOfATrimLineAddUpThoughNoPlanCameBetween() {
        Bench bench;
        const Shown before = bench.shown;
        const double length_m = before.plan->line.fair.line.length();
        const double step_m = edits::stationStep(before.display.lengths);
        QVERIFY(length_m > 0);
        FormView view;
        view.resize(900, 600);
        view.show(before);
        Shown now = before;
        QObject::connect(&view, &FormView::changeAsked, &bench, [&](const Change& change) {
            now.piece = change.after;
            now.outOfDate = true;
            view.show(now);
        });
        QTest::mouseClick(&view, Qt::LeftButton, {}, [&] {
            const Drawing drawing = drawingOf(*before.plan, before.piece.line.stripsOn);
            return sheetOf(before, drawing, view.transform(), view.size(), Choice{},
                           fontsFrom(tabularFont(view.font())), false)
                .grips[1]
                .toPoint();
        }());
        for (int i = 0; i < 4; ++i) QTest::keyClick(&view, Qt::Key_Left);
        QVERIFY(std::abs(now.piece.stack.runsPastEnd_m - before.piece.stack.runsPastEnd_m - 4 * step_m) < 1e-9);
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

QTEST_MAIN(FormviewHolding)
#include "formview_holding_test.moc"
