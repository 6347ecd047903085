// The drawing as it is seen: on both grounds, at several sizes, with nothing to draw, out of date.
#include <QtTest>
#include <set>

#include "app/formview/form_line.hpp"
#include "app/formview/sheet.hpp"
#include "app/look/theme.hpp"
#include "core/math/count.hpp"
#include "core/plan/study/deepen.hpp"
#include "tests/app/formview_samples.hpp"
#include "tests/app/patience.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

// How many pixels of the picture are not the ground.
double drawnShare(const QImage& image, const QColor& ground) {
    int drawn = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) drawn += image.pixelColor(x, y).rgb() != ground.rgb();
    }
    return drawn / static_cast<double>(image.width() * image.height());
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

bool says(const FormView& view, const QString& words) {
    const auto& texts = view.texts();
    return std::any_of(texts.begin(), texts.end(), [&](const Text& text) { return text.words.contains(words); });
}

}  // namespace

class FormviewPicture : public QObject {
    Q_OBJECT

private slots:
    void EverySampleIsDrawnOnBothGrounds() {
        for (const Ground ground : {Ground::paper, Ground::slate}) {
            applyGround(ground);
            for (const Shown& shown : allShown()) {
                FormView view;
                view.resize(900, 600);
                view.show(shown);
                const QImage image = view.grab().toImage();
                QVERIFY(drawnShare(image, theme().ground) > 0.02);
                // The strain of the strips is on it: the colour at the place of the greatest strain.
                std::set<QRgb> colours;
                for (int y = 0; y < image.height(); ++y) {
                    for (int x = 0; x < image.width(); ++x) colours.insert(image.pixelColor(x, y).rgb());
                }
                double greatest = 0;
                for (size_t i = 0; i < shown.plan->stack.strips.size(); ++i) {
                    const auto& strip = shown.plan->stack.strips[i];
                    for (const double strain : shown.plan->stack.strains[i]) {
                        greatest = std::max(greatest, strain / strip.breakingStrain);
                    }
                }
                bool found = false;
                for (double share = greatest - 0.06; share <= greatest + 0.06; share += 0.0005) {
                    found = found || colours.contains(theme().strain(std::clamp(share, 0.0, 1.0)).rgb());
                }
                QVERIFY(found);
            }
        }
        applyGround(Ground::paper);
    }

    void WordsNeitherCoverEachOtherNorLeaveTheView() {
        for (const QSize size : {QSize(900, 600), QSize(1280, 800), QSize(480, 360), QSize(240, 160)}) {
            for (const Shown& shown : allShown()) {
                FormView view;
                view.resize(size);
                view.show(shown);
                QCOMPARE(overlapOf(view), std::string());
                for (const double zoom : {0.2, 10.0, 30.0}) {
                    view.zoomBy(zoom);
                    QCOMPARE(overlapOf(view), std::string());
                }
            }
        }
    }

    void MostPointsAndAllStationsOfTheStemAreNamedAtAnOrdinarySize() {
        const Bench bench;
        size_t points = 0;
        size_t numbers = 0;
        for (const Text& text : bench.view.texts()) {
            points += text.tag >= 0;
            numbers += text.ringed;
        }
        QVERIFY(points * 4 >= bench.shown.piece.line.points.size() * 3);
        QCOMPARE(numbers, bench.shown.piece.holding.stations.size());
    }

    void AMisreadPointSaysWhatToTry() {
        Bench bench("marram_misread");
        const std::atomic<bool> stop{false};
        bench.shown.plan = std::make_shared<plan::Plan>(
            plan::deepen(bench.shown.piece, plan::shopOf(bench.boat), *bench.shown.plan, stop).value());
        bench.view.show(bench.shown);
        QVERIFY(!bench.shown.plan->line.misread.suspects.empty());
        const auto& suspect = bench.shown.plan->line.misread.suspects.front();
        const int axis = suspect.axis == 'x' ? 0 : 1;
        QVERIFY(says(bench.view, QStringLiteral("try ")));
        QVERIFY(says(bench.view, QString::fromStdString(suspect.tryWritten[axis])));
    }

    void AWindowWithoutAPieceSaysWhatToDo() {
        FormView view;
        view.resize(600, 400);
        view.show(Shown{});
        QVERIFY(drawnShare(view.grab().toImage(), theme().ground) > 0.005);
        QVERIFY(view.accessibleDescription().contains(QStringLiteral("No piece")));
        // Keys and mouse have nothing to act on and do no harm.
        QTest::keyClick(&view, Qt::Key_Right);
        QTest::keyClick(&view, Qt::Key_Delete);
        QTest::mouseClick(&view, Qt::LeftButton, {}, QPoint(300, 200));
        QMouseEvent move(QEvent::MouseMove, QPointF(200, 200), QPointF(200, 200), Qt::NoButton, Qt::NoButton,
                         Qt::NoModifier);
        QCoreApplication::sendEvent(&view, &move);
        view.lightPlace(0.3);
        view.grab();
    }

    void APieceWithoutAPlanShowsItsPoints() {
        Bench bench;
        Shown bare = bench.shown;
        bare.plan = nullptr;
        bare.outOfDate = true;
        FormView view;
        view.resize(900, 600);
        view.show(bare);
        view.grab();
        QVERIFY(says(view, QStringLiteral("Head")));
        bare.reason = QStringLiteral("two neighbours are the same point");
        view.show(bare);
        view.grab();
        QVERIFY(says(view, bare.reason));
        QCOMPARE(overlapOf(view), std::string());
    }

    void APieceOutOfSightSaysHowToGetItBack() {
        Bench bench;
        QVERIFY(!says(bench.view, QStringLiteral("outside the view")));
        bench.view.zoomBy(20);  // about the middle, where there is nothing
        QVERIFY(says(bench.view, QStringLiteral("outside the view")));
        bench.view.fitToWindow();
        QVERIFY(!says(bench.view, QStringLiteral("outside the view")));
    }

    void AnOldPlanIsMarkedWithTheReason() {
        Bench bench;
        const QImage fresh = bench.view.grab().toImage();
        Shown old = bench.shown;
        old.outOfDate = true;
        bench.view.show(old);
        QVERIFY(says(bench.view, QStringLiteral("Old result. Calculating the new one.")));
        old.reason = QStringLiteral("-6 is not a thickness; give a number above 0");
        bench.view.show(old);
        QVERIFY(says(bench.view, QStringLiteral("Old result. Fix first: -6 is not")));
        const QImage faint = bench.view.grab().toImage();
        QCOMPARE(overlapOf(bench.view), std::string());
        // What is worked out is half as strong, the clamps' pulls among it.
        const Drawing drawing = drawingOf(*bench.shown.plan, bench.shown.piece.line.stripsOn);
        const Sheet sheet = sheetOf(bench.shown, drawing, bench.view.transform(), bench.view.size(), ViewChoice{},
                                    fontsFrom(tabularFont(QApplication::font())), false);
        const auto strength = [&](const QImage& image, const QPointF& at) {
            int least = 255;  // of a shaft that lies between pixels
            for (int x = -1; x <= 1; ++x)
                for (int y = -1; y <= 1; ++y) least = std::min(least, qGray(image.pixel(at.toPoint() + QPoint(x, y))));
            return qGray(theme().ground.rgb()) - least;
        };
        int arrows = 0;
        for (const ForceArrow& arrow : sheet.forces) {
            if (arrow.shaft.length() < 12) continue;
            const QPointF at = arrow.shaft.pointAt(0.3);
            QVERIFY(strength(fresh, at) > 120);
            QVERIFY2(strength(faint, at) < 0.7 * strength(fresh, at), qPrintable(arrow.figure));
            ++arrows;
        }
        QVERIFY(arrows > 0);
        bench.view.show(bench.shown);
        QVERIFY(!says(bench.view, QStringLiteral("Old result")));
        QVERIFY(bench.view.grab().toImage() == fresh);
    }

    void APlanThatKeepsOneWaitingIsMarked() {
        Bench bench;
        Shown first = bench.shown;
        first.plan.reset();
        bench.view.show(first);
        SOON_VERIFY(says(bench.view, QStringLiteral("Fairing the line")));
    }

    void PointsOfAnotherNumberThanThePlanKnowsAreDrawn() {
        Bench bench;
        Shown ahead = bench.shown;
        ahead.outOfDate = true;
        ahead.piece.line.points.erase(ahead.piece.line.points.begin() + 2, ahead.piece.line.points.begin() + 5);
        ahead.piece.holding.stations.clear();
        bench.view.selectPoint(11);
        bench.view.show(ahead);
        bench.view.grab();
        QVERIFY(bench.view.selectedPoint() < math::countOf(ahead.piece.line.points));
    }

    void TheBendAndTheMisfitsAreDrawnOnDemand() {
        Bench bench;
        const QImage plain = bench.view.grab().toImage();
        bench.view.setBendShown(true);
        QVERIFY(bench.view.grab().toImage() != plain);
        QVERIFY(says(bench.view, QStringLiteral("Bend: a band this wide is a radius of")));
        bench.view.setBendShown(false);
        QVERIFY(bench.view.grab().toImage() == plain);
        QVERIFY(says(bench.view, QStringLiteral("Misfits drawn")));
        bench.view.setMisfitMagnified(false);
        QVERIFY(!says(bench.view, QStringLiteral("Misfits drawn")));
    }

    void TheBandOfTheBendIsAsWideAsTheLineIsBent() {
        for (const Shown& shown : allShown()) {
            const Drawing drawing = drawingOf(*shown.plan, shown.piece.line.stripsOn);
            ViewChoice choice;
            choice.bend = true;
            const QSizeF view(900, 600);
            const Fonts fonts = fontsFrom(tabularFont(QApplication::font()));
            const Transform transform =
                fitted(boundsOf(shown, drawing), roomWithMarks(shown, drawing, view, fonts, choice));
            const BendMark bend = sheetOf(shown, drawing, transform, view, choice, fonts, false).bend;
            size_t at = 0;
            for (const DrawnPlace& place : drawing.places) {
                if (place.at_m < -1e-9 || place.at_m > drawing.length_m + 1e-9) continue;
                const double width = bend.across.at(at++).length();
                QVERIFY(std::abs(width - std::abs(place.curvature_per_m) * bend.perCurvature_px) < 1e-6);
                QVERIFY(width <= 72 + 1e-6);
            }
            QCOMPARE(bend.band.size(), static_cast<qsizetype>(2 * at));
            QVERIFY(bend.key.length() >= 10 && bend.key.length() <= 72);
        }
    }

    void EveryKindOfHoldAndFormIsDrawn() {
        Bench bench;
        const QImage plain = bench.view.grab().toImage();
        Shown shown = bench.shown;
        for (const auto kind : {model::HoldKind::prop, model::HoldKind::jack, model::HoldKind::screw,
                                model::HoldKind::strap, model::HoldKind::wedge}) {
            for (auto& station : shown.piece.holding.stations) {
                station.kind = kind;
                station.strap.to_m = station.at_m + 0.2;
            }
            bench.view.show(shown);
            QVERIFY(bench.view.grab().toImage() != plain);
        }
        shown.piece.holding.stations.front().kind = model::HoldKind::prop;
        shown.piece.holding.stations.front().strut.footX_m = 1.0;
        shown.piece.holding.stations.front().strut.footY_m = -0.6;
        shown.piece.form.kind = model::FormKind::posts;
        shown.piece.form.posts = {model::Post{.at_m = 0.4}, model::Post{.at_m = 0.9}};
        bench.view.show(shown);
        QVERIFY(bench.view.grab().toImage() != plain);
    }

    void TheFormToCutIsExplainedWhereItIsNotTheWantedLine() {
        Bench bench;
        QVERIFY(bench.shown.plan->form.corrected);
        QVERIFY(says(bench.view, "Form to cut, overbent"));
        Shown shown = bench.shown;
        shown.piece.form.allowsForSpringback = false;
        shown.plan = std::make_shared<plan::Plan>(plan::makePlan(shown.piece, plan::shopOf(bench.boat)));
        bench.view.show(shown);
        QVERIFY(!says(bench.view, "Form to cut"));
    }

    void TheFormsLineIsMagnifiedByWhatItSays() {
        const Shown shown = shownOf(sampleBoat("marram"), 0);
        const Drawing drawing = drawingOf(*shown.plan, shown.piece.line.stripsOn);
        Transform transform;
        transform.pixelsPerMetre = 60;  // so that a springback of an inch is too close to be seen
        const FormLineMark mark = formLineMark(drawing, transform, true);
        const FormLineMark plain = formLineMark(drawing, transform, false);
        QVERIFY(mark.times > 1 && plain.times == 1);
        double most = 0;
        qsizetype drawn = 0;
        for (size_t i = 0; i < drawing.form.size(); ++i) {
            if (!drawing.form[i].wanted) continue;
            const QPointF wanted = transform.toScreen(*drawing.form[i].wanted);
            const QPointF off = mark.line[drawn++] - wanted;
            const QPointF own = plain.line[static_cast<qsizetype>(i)] - wanted;
            QVERIFY(QLineF(off, own * mark.times).length() < 1e-6);
            if (drawing.form[i].at_m >= 0 && drawing.form[i].at_m <= drawing.length_m)
                most = std::max(most, std::hypot(off.x(), off.y()));
        }
        QCOMPARE(drawn, mark.line.size());
        QVERIFY(most <= 24 && most > 24 / 2.6);
    }

    void OnAFineScreenThePictureHasItsPixels() {
        Bench bench;
        QImage fine(1800, 1200, QImage::Format_ARGB32_Premultiplied);
        fine.setDevicePixelRatio(2);
        bench.view.render(&fine);
        QVERIFY(drawnShare(fine, theme().ground) > 0.02);
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, FormviewPicture>(argc, argv);
}
#include "formview_picture_test.moc"
