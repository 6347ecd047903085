// The two grounds: what can be read, what can be told apart, and that every icon is there.
#include <QDir>
#include <QLabel>
#include <QMessageBox>
#include <QTest>
#include <QToolTip>
#include <cmath>

#include "app/look/icons.hpp"
#include "app/look/perception.hpp"
#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"
#include "core/model/hold_traits.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

double apart(const Lab& a, const Lab& b) {
    return std::hypot(a.lightness - b.lightness, a.a - b.a, a.b - b.b);
}

// What a person without one kind of cones sees. Source: Viénot, Brettel and Mollon 1999, "Digital video colourmaps for
// checking the legibility of displays by dichromats" (M): on linear light, red and green fall together.
QColor withoutRed(const QColor& c) {
    const auto light = [](double v) { return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); };
    const auto stored = [](double v) {
        v = std::clamp(v, 0.0, 1.0);
        return float(v <= 0.0031308 ? v * 12.92 : 1.055 * std::pow(v, 1 / 2.4) - 0.055);
    };
    const double r = light(c.redF());
    const double g = light(c.greenF());
    const double b = light(c.blueF());
    const double y = 0.11238 * r + 0.88762 * g;
    return QColor::fromRgbF(stored(y), stored(y), stored(0.00401 * r - 0.00401 * g + b));
}
QColor withoutGreen(const QColor& c) {
    const auto light = [](double v) { return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); };
    const auto stored = [](double v) {
        v = std::clamp(v, 0.0, 1.0);
        return float(v <= 0.0031308 ? v * 12.92 : 1.055 * std::pow(v, 1 / 2.4) - 0.055);
    };
    const double r = light(c.redF());
    const double g = light(c.greenF());
    const double b = light(c.blueF());
    const double y = 0.29275 * r + 0.70725 * g;
    return QColor::fromRgbF(stored(y), stored(y), stored(-0.02234 * r + 0.02234 * g + b));
}

}  // namespace

class LookTest : public QObject {
    Q_OBJECT

private slots:
    void wordsOfOneShapeTakeTheSameRoom() {
        const QFont font = textFont(TextSize::body);
        const QFontMetrics metrics(font);
        const auto high = [&](const QString& words, int width) {
            return metrics.boundingRect(QRect(0, 0, width, 10000), Qt::TextWordWrap, words).height();
        };
        const QString words = "Pulled with 1171 N at 4-7-13+, 28.9 % of 4050 N (7.1\u00B0), it lifts by 1/16 in.";
        const QString shape = textShape(words, font);
        QCOMPARE(shape.size(), words.size());
        QCOMPARE(metrics.horizontalAdvance(shape), metrics.horizontalAdvance(words));
        for (int width = 60; width < 600; ++width) QCOMPARE(high(shape, width), high(words, width));
        QCOMPARE(textShape("No figure, no change.", font), QString("No figure, no change."));
        QVERIFY(textShape("12 N", font) != textShape("123 N", font));
    }

    void contrastMatchesItsDefinition() {
        // Source: WCAG 2.1 contrast ratio (M): black on white 21, #777777 on white 4.48.
        QVERIFY(std::abs(contrast(Qt::black, Qt::white) - 21) < 1e-6);
        QVERIFY(std::abs(contrast(QColor(0x77, 0x77, 0x77), Qt::white) - 4.48) < 0.005);
        QCOMPARE(contrast(Qt::white, Qt::blue), contrast(Qt::blue, Qt::white));
    }

    void labMatchesKnownColours() {
        // Source: L*a*b* of sRGB red under D65 as commonly printed, 53.24 80.09 67.20 (M).
        const Lab red = toLab(QColor(255, 0, 0));
        QVERIFY(apart(red, {53.24, 80.09, 67.20}) < 0.05);
        QVERIFY(apart(toLab(Qt::white), {100, 0, 0}) < 0.05);
        for (int i = 0; i < 4096; ++i) {
            const QColor c((i * 7) % 256, (i * 29) % 256, (i * 53) % 256);
            QCOMPARE(fromLab(toLab(c)).rgb(), c.rgb());
        }
    }

    void everyTextColourReadsOnBothGrounds() {
        for (const Theme& t : {paperTheme(), slateTheme()}) {
            for (const QColor& behind : {t.ground, t.raised}) {
                for (const QColor& text : {t.ink, t.faint, t.accent, t.stop, t.caution, t.note}) {
                    QVERIFY2(contrast(text, behind) >= 4.5, qPrintable(text.name() + " on " + behind.name() + ": " +
                                                                       QString::number(contrast(text, behind))));
                }
            }
            QVERIFY(contrast(t.ink, t.rule) >= 4.5);  // text of what is pressed down or pointed at
        }
    }

    void everyPairOfThePaletteReads() {
        using P = QPalette;
        const std::vector<std::pair<P::ColorRole, P::ColorRole>> pairs{
            {P::WindowText, P::Window},         {P::Text, P::Base},
            {P::Text, P::AlternateBase},        {P::ButtonText, P::Button},
            {P::HighlightedText, P::Highlight}, {P::ToolTipText, P::ToolTipBase},
            {P::PlaceholderText, P::Base},      {P::Link, P::Window},
            {P::BrightText, P::Window}};
        for (const Theme& t : {paperTheme(), slateTheme()}) {
            const QPalette palette = paletteOf(t);
            for (const auto group : {P::Active, P::Inactive, P::Disabled}) {
                for (const auto& [text, behind] : pairs) {
                    const double ratio = contrast(palette.color(group, text), palette.color(group, behind));
                    QVERIFY2(
                        ratio >= 4.5,
                        qPrintable(QString("group %1, role %2 on %3: %4").arg(group).arg(text).arg(behind).arg(ratio)));
                }
            }
        }
    }

    void strainRampIsEvenAndEverLighterOrDarker() {
        for (const Theme& t : {paperTheme(), slateTheme()}) {
            // Each end is a colour that a screen shows, so that the way between is straight.
            const double whole = apart(toLab(t.strainLow), toLab(t.strainHigh));
            double last = toLab(t.strain(0)).lightness;
            const double way = toLab(t.strainHigh).lightness > last ? 1 : -1;
            for (int i = 1; i <= 20; ++i) {
                const Lab here = toLab(t.strain(i / 20.0));
                QVERIFY2(way * (here.lightness - last) > 2, "lightness does not run one way");
                // Rounding to 256 steps a channel moves a colour by less than 1 in this space.
                QVERIFY2(std::abs(apart(here, toLab(t.strain((i - 1) / 20.0))) - whole / 20) < 1.0,
                         qPrintable(QString("step %1").arg(i)));
                last = here.lightness;
            }
            QCOMPARE(t.strain(1.7), t.strain(1.0));
            QCOMPARE(t.strain(-1), t.strain(0));
            QCOMPARE(t.strain(std::nan("")), t.strain(0));
        }
    }

    void strainRampRunsAwayFromTheGround() {
        for (const Theme& t : {paperTheme(), slateTheme()}) {
            QVERIFY(contrast(t.strainHigh, t.ground) > contrast(t.strainLow, t.ground) * 3);
        }
    }

    void strainRampAndFindingsAreToldApartWithoutRedOrGreenCones() {
        for (const Theme& t : {paperTheme(), slateTheme()}) {
            for (const auto& seen : {withoutRed, withoutGreen}) {
                double last = toLab(seen(t.strain(0))).lightness;
                const double way = toLab(seen(t.strain(1))).lightness > last ? 1 : -1;
                for (int i = 1; i <= 10; ++i) {
                    const double here = toLab(seen(t.strain(i / 10.0))).lightness;
                    QVERIFY(way * (here - last) > 3);
                    last = here;
                }
                QVERIFY(apart(toLab(seen(t.stop)), toLab(seen(t.note))) > 20);
                QVERIFY(apart(toLab(seen(t.caution)), toLab(seen(t.note))) > 20);
                QVERIFY(apart(toLab(seen(t.accent)), toLab(seen(t.stop))) > 20);
            }
        }
    }

    void figureOnAPatchOfTheRampReads() {
        for (const Ground ground : {Ground::paper, Ground::slate}) {
            applyGround(ground);
            for (int i = 0; i <= 50; ++i) {
                const QColor patch = theme().strain(i / 50.0);
                QVERIFY2(contrast(inkOn(patch), patch) >= 4.5,
                         qPrintable(QString("%1 %2: %3").arg(int(ground)).arg(i).arg(contrast(inkOn(patch), patch))));
            }
        }
    }

    void groundNearTheDesktopsIsChosen() {
        QPalette dark;
        dark.setColor(QPalette::Window, QColor(30, 30, 30));
        dark.setColor(QPalette::WindowText, QColor(230, 230, 230));
        QVERIFY(themeNear(dark).dark);
        QPalette light;
        light.setColor(QPalette::Window, QColor(240, 240, 240));
        light.setColor(QPalette::WindowText, Qt::black);
        QVERIFY(!themeNear(light).dark);
    }

    void groundCanBeChangedBackAndForth() {
        applyGround(Ground::slate);
        QVERIFY(theme().dark);
        QCOMPARE(qApp->palette().color(QPalette::Window), slateTheme().ground);
        applyGround(Ground::paper);
        QVERIFY(!theme().dark);
        QCOMPARE(qApp->palette().color(QPalette::Window), paperTheme().ground);
        applyGround(Ground::desktop);
        QCOMPARE(qApp->palette().color(QPalette::Window), theme().ground);
    }

    void everyIconDrawsSomethingAndFollowsTheGround() {
        icon("new");  // makes the resources ready
        const QStringList files = QDir(":/icons").entryList({"*.svg"});
        QVERIFY(files.size() > 40);
        for (const QString& file : files) {
            const QIcon drawn = icon(QString(file).remove(".svg"));
            applyGround(Ground::paper);
            const QImage onPaper = drawn.pixmap(QSize(24, 24), 2.0).toImage();
            QCOMPARE(onPaper.size(), QSize(48, 48));
            int marked = 0;
            for (int y = 0; y < onPaper.height(); ++y) {
                for (int x = 0; x < onPaper.width(); ++x) marked += qAlpha(onPaper.pixel(x, y)) > 100;
            }
            QVERIFY2(marked > 50, qPrintable(file));
            applyGround(Ground::slate);
            if (file != "fayline.svg")
                QVERIFY2(drawn.pixmap(QSize(24, 24), 2.0).toImage() != onPaper, qPrintable(file));
        }
        for (const model::HoldTraits& traits : model::holdTraits) QVERIFY(!holdIcon(traits.kind).isNull());
        QVERIFY(icon("there is no such icon").isNull());
        applyGround(Ground::paper);
    }

    void severitiesDifferInShapeAndNotInColourAlone() {
        const QRectF box(0, 0, 20, 20);
        // Each shape fills another share of its box: an octagon 0.83, a circle 0.79, a triangle 0.5.
        const auto filled = [&](plan::Severity s) {
            int inside = 0;
            for (int i = 0; i < 10000; ++i) {
                inside += findingShape(s, box).contains(QPointF((i % 100) * 0.2 + 0.1, (i / 100) * 0.2 + 0.1));
            }
            return inside / 10000.0;
        };
        QVERIFY(std::abs(filled(plan::Severity::stop) - 0.828) < 0.01);
        QVERIFY(std::abs(filled(plan::Severity::note) - 0.785) < 0.01);
        QVERIFY(std::abs(filled(plan::Severity::caution) - 0.5) < 0.01);
    }

    void labelsAndToolTipsShowMarksOfRichTextAsWritten() {
        applyGround(Ground::paper);
        const QString marked = QStringLiteral("<b>Stem</b><img src=\"/etc/hostname\">");
        QLabel label(marked);
        label.show();
        QCOMPARE(label.textFormat(), Qt::PlainText);
        QToolTip::showText({}, marked, &label);
        QLabel* tip = nullptr;
        for (QWidget* widget : QApplication::topLevelWidgets()) {
            if (widget->inherits("QTipLabel")) tip = qobject_cast<QLabel*>(widget);
        }
        QVERIFY(tip);
        QCOMPARE(tip->text(), marked);
        QCOMPARE(tip->textFormat(), Qt::PlainText);
        QToolTip::hideText();
        QMessageBox box(QMessageBox::Warning, {}, marked);
        box.setInformativeText(marked);
        box.show();
        int labels = 0;
        for (const QLabel* one : box.findChildren<QLabel*>()) {
            if (one->text() != marked) continue;
            ++labels;
            QCOMPARE(one->textFormat(), Qt::PlainText);
        }
        QCOMPARE(labels, 2);
    }

    void longWordsOfAToolTipAreBrokenIntoLines() {
        QCOMPARE(wrapped("a bb ccc", 4), QString("a bb\nccc"));
        QCOMPARE(wrapped("a\nbb ccccccc", 4), QString("a\nbb\nccccccc"));
        QCOMPARE(wrapped("", 4), QString());
        QCOMPARE(wrapped("within", 70), QString("within"));
    }

    void figuresAreOfOneWidth() {
        const QFontMetricsF metrics(tabularFont(textFont(TextSize::body)));
        for (const QChar c : QString("123456789")) {
            QCOMPARE(metrics.horizontalAdvance(c), metrics.horizontalAdvance(u'0'));
        }
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, LookTest>(argc, argv);
}
#include "look_test.moc"
