// Offsets to take: what is shown and asked before they change anything.
#include "app/panels/offsets_dialog.hpp"

#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QRadioButton>
#include <QTest>

#include "app/look/theme.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/piece_table.hpp"
#include "core/model/new_piece.hpp"
#include "core/units/units.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

const std::vector<model::Point> two{{.label = "A"}, {.label = "B", .x_m = 1}};

struct Asked {
    OffsetsDialog dialog;

    explicit Asked(const char* text, const TakenInto& into = {two, units::inchShop})
        : dialog("a test", io::readTable(text), into) {
        dialog.show();
    }
    template <class Widget>
    Widget* find(const char* object) {
        return dialog.findChild<Widget*>(object);
    }
    void choose(const char* object, int row) {
        auto* combo = find<QComboBox>(object);
        combo->setCurrentIndex(row);
        emit combo->activated(row);
    }
    QString words(const char* label) { return find<QLabel>(label)->text(); }
    bool mayTake() { return find<QPushButton>("take")->isEnabled(); }
};

}  // namespace

class OffsetsDialogTest : public QObject {
    Q_OBJECT
private slots:
    void initTestCase() { applyGround(Ground::paper); }

    void MillimetresInABoatOfInchesAreSeenAsSuch() {
        Asked asked("A\t0\t0\nB\t2400\t300\nC\t4800\t0");
        auto* unit = asked.find<QComboBox>("unit");
        QCOMPARE(unit->currentText(), QString("millimetres: 15 ft 10 in long"));
        QVERIFY2(asked.words("outcome").contains("In inches they would be 403 ft"), qPrintable(asked.words("outcome")));
        QVERIFY(!asked.find<QLabel>("unusualLength")->isVisible());
        QCOMPARE(asked.dialog.points()[2].x_m, 4.8);
        QCOMPARE(asked.dialog.points()[2].written[0], std::string("4800 mm"));
        asked.choose("unit", 1);
        QCOMPARE(unit->currentText(), QString("inches: 403 ft long"));
        QVERIFY(asked.find<QLabel>("unusualLength")->isVisible());
        QVERIFY2(asked.words("unusualLength").startsWith("Caution: 403 ft"), qPrintable(asked.words("unusualLength")));
        QVERIFY(asked.mayTake());  // a caution, no more
    }

    void CellsThatAreNotUnderstoodAreMarkedAndNothingIsTaken() {
        Asked asked("# loft\nWL 1\t0-0-0\t0-0-0\nWL 2\t2-13-4\t0-1-0\nWL 3\t1-0-0\t\nWL 4\t2-0-0\t0-1-0");
        QVERIFY(!asked.mayTake());
        const QString words = asked.words("notUnderstood");
        QVERIFY2(words.startsWith("2 cells are not understood:"), qPrintable(words));
        QVERIFY2(
            words.contains("Line 3, column 2 \"2-13-4\": 13") && words.contains("Line 4, column 3: the cell is empty"),
            qPrintable(words));
        const QAbstractItemModel* rows = asked.find<NotebookTable>("asRead")->model();
        QVERIFY(rows->index(1, 2).data(faultRole).toString().contains("13"));
        QVERIFY(!rows->index(1, 3).data(faultRole).isValid());
        QVERIFY(rows->index(2, 3).data(faultRole).isValid());
        // The user may do without those lines.
        auto* leaveOut = asked.find<QCheckBox>("leaveOut");
        QVERIFY(leaveOut->isVisible());
        leaveOut->click();
        QVERIFY(asked.mayTake());
        QCOMPARE(asked.dialog.taken(), 2);
        QCOMPARE(asked.dialog.points().back().label, std::string("WL 4"));
    }

    void NonsenseIsShownAndNotTaken_data() {
        QTest::addColumn<QByteArray>("text");
        QTest::newRow("a letter") << QByteArray("Dear friend,\nthe stem is curved.\n");
        QTest::newRow("letters in columns") << QByteArray("a\tb\tc\nd\te\tf");
        QTest::newRow("no text") << QByteArray("\x89PNG\r\n\x1a\n\1\2");
        QTest::newRow("hundreds of bad lines") << QByteArray("A,2-13-0,x\n").repeated(400);
        QTest::newRow("many columns") << QByteArray("1\t2\t3\t4\t5\t6\t7\t8\t9\t10\t11\t12\n");
    }
    void NonsenseIsShownAndNotTaken() {
        QFETCH(QByteArray, text);
        Asked asked(text.constData());
        QVERIFY(!asked.mayTake());
        QVERIFY(asked.dialog.points().empty());
        QVERIFY(asked.words("notUnderstood").count('\n') <= 6);
        QVERIFY(!asked.words("outcome").isEmpty());
        QVERIFY(asked.dialog.width() <= 1000);
    }

    void EachColumnIsWhatTheUserSays() {
        Asked asked("1\t300\t52\t7\n2\t600\t118\t7", {two, units::metricShop});
        QVERIFY(!asked.mayTake());
        QVERIFY(asked.words("outcome").contains("Choose"));
        asked.choose("use1", int(io::ColumnUse::along));
        asked.choose("use2", int(io::ColumnUse::up));
        asked.choose("use0", int(io::ColumnUse::name));
        QVERIFY(asked.mayTake());
        QCOMPARE(asked.dialog.points()[1].label, std::string("2"));
        QCOMPARE(asked.dialog.points()[1].x_m, 0.6);
        QCOMPARE(asked.dialog.points()[1].y_m, 0.118);
        // A use goes from one column to another.
        asked.choose("use3", int(io::ColumnUse::up));
        QCOMPARE(asked.find<QComboBox>("use2")->currentIndex(), int(io::ColumnUse::leftOut));
        QCOMPARE(asked.dialog.points()[1].y_m, 0.007);
        asked.choose("use1", int(io::ColumnUse::leftOut));
        QVERIFY(!asked.mayTake());
        // What is said of it has room.
        Asked named("low\t300\t52\nhigh\t600\t118", {two, units::metricShop});
        named.choose("use0", int(io::ColumnUse::along));
        const auto* label = named.find<QLabel>("notUnderstood");
        QVERIFY(label->isVisible());
        QVERIFY(label->height() >= label->heightForWidth(label->width()));
    }

    void TheGridAndHalfBreadthsAreTakenAsTicked() {
        Asked asked("0\t100\n500\t75\n1000\t0", {model::newPiece("").line.points, units::metricShop});
        asked.choose("grid", 1);
        for (const model::Point& point : asked.dialog.points()) QCOMPARE(point.read, model::Read::x);
        asked.choose("grid", 2);
        for (const model::Point& point : asked.dialog.points()) QCOMPARE(point.read, model::Read::y);
        auto* half = asked.find<QCheckBox>("otherHalf");
        half->click();
        QCOMPARE(asked.find<QComboBox>("centreLine")->currentText(), QString("about x = 0"));
        QCOMPARE(asked.dialog.points().size(), 5u);
        QCOMPARE(asked.dialog.points().front().x_m, -1.0);
        QVERIFY(asked.words("outcome").startsWith("5 points, 2.01 m long."));
        half->click();
        QCOMPARE(asked.dialog.points().size(), 3u);
    }

    void TheyReplaceWhatIsThereOrComeAfterIt() {
        const TakenInto into{two, units::metricShop, true};
        Asked asked("2000\t0\n3000\t0", into);
        auto* add = asked.find<QRadioButton>("addPoints");
        QVERIFY(add->isVisible() && add->isChecked());
        QCOMPARE(asked.dialog.points().size(), 4u);
        QCOMPARE(asked.dialog.taken(), 2);
        QCOMPARE(asked.dialog.points()[3].x_m, 3.0);
        asked.find<QRadioButton>("replacePoints")->click();
        QCOMPARE(asked.dialog.points().size(), 2u);
        // An untouched sample is replaced, and nothing asked.
        for (const units::Display& display : {units::metricShop, units::inchShop}) {
            Asked fresh("2000\t0\n3000\t0", {model::newPiece("Stem", display).line.points, units::metricShop, true});
            QVERIFY(!fresh.find<QRadioButton>("addPoints")->isVisible());
            QCOMPARE(fresh.dialog.points().size(), 2u);
        }
    }

    void EnterTakesAndEscLeaves() {
        for (const Qt::Key key : {Qt::Key_Return, Qt::Key_Escape}) {
            Asked asked("0\t0\n3000\t0", {two, units::metricShop});
            QTest::keyClick(&asked.dialog, key);
            QCOMPARE(asked.dialog.result(), int(key == Qt::Key_Return ? QDialog::Accepted : QDialog::Rejected));
            QVERIFY(!asked.dialog.isVisible());
        }
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, OffsetsDialogTest>(argc, argv);
}
#include "offsets_dialog_test.moc"
