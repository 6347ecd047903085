// The form panel: what it says of springback, and what is typed into it.
#include "app/panels/form_panel.hpp"

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include "app/look/theme.hpp"
#include "core/plan/study/springing.hpp"
#include "tests/app/shown_panel.hpp"
#include "tests/app/shown_piece.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

QString said(const FormPanel& panel, const char* name) {
    const auto* label = panel.findChild<QLabel*>(name);
    return label ? label->text() : QStringLiteral("no such label");
}

}  // namespace

class FormPanelTest : public QObject {
    Q_OBJECT
private slots:
    void initTestCase() { applyGround(Ground::paper); }

    void TheRuleStandsThereInBothItsMeaningsAndHowFarToTrustIt() {
        FormPanel panel;
        const Shown shown = shownSample();
        panel.show(shown);
        open(&panel);
        unfold(panel);
        QVERIFY(said(panel, "ruleWords").contains("y = x / n^2"));
        QVERIFY(said(panel, "ruleWords").contains("y = x / (n^2 - 1)"));
        QVERIFY(said(panel, "spreadWords").contains("standard deviation"));
        QVERIFY(said(panel, "fewerWords").contains("shallower"));
    }

    void HowFarItIsOffIsTypedAndAnsweredAndNonsenseIsSaid() {
        FormPanel panel;
        const Shown shown = shownSample();
        panel.show(shown);
        open(&panel);
        unfold(panel);
        auto* off = panel.findChild<QLineEdit*>("homeOff");
        const QString foretold = said(panel, "homeWords");
        off->setFocus();
        QTest::keyClicks(off, "9 mm");
        const auto home = plan::springHome(shown.piece, *shown.plan, 0.009);
        QVERIFY(home.has_value());
        QCOMPARE(said(panel, "homeWords"),
                 QString::fromStdString(plan::writeTexts(plan::springingTexts(home, *shown.plan), shown.display)));
        QVERIFY(said(panel, "homeWords") != foretold);
        off->selectAll();
        QTest::keyClicks(off, "far");
        QVERIFY(panel.findChild<QLabel*>("homeOffReason")->isVisible());
        off->selectAll();
        QTest::keyClicks(off, "300 m");
        QVERIFY(said(panel, "homeOffReason").contains("between"));
        off->clear();
        QVERIFY(!panel.findChild<QLabel*>("homeOffReason")->isVisible());
        QCOMPARE(said(panel, "homeWords"), foretold);
    }

    void WhatWasTypedOfOnePieceIsNotTakenForAnother() {
        FormPanel panel;
        panel.show(shownSample());
        open(&panel);
        unfold(panel);
        auto* off = panel.findChild<QLineEdit*>("homeOff");
        QTest::keyClicks(off, "9 mm");
        Shown again = shownSample();
        panel.show(again);
        QCOMPARE(off->text(), QStringLiteral("9 mm"));
        panel.show(shownSample("marram.fayline", 1));
        QCOMPARE(off->text(), QString());
    }

    void NothingIsWorkedOutOfAPlanThatIsNotOfThisPiece() {
        FormPanel panel;
        Shown shown = shownSample();
        panel.show(shown);
        open(&panel);
        unfold(panel);
        const QString before = said(panel, "fewerWords");
        shown.piece.stack.strips.resize(1);
        shown.piece.stack.strips[0].count = 1;
        shown.outOfDate = true;
        panel.show(shown);
        QCOMPARE(said(panel, "fewerWords"), before);
    }

    void WhatItIsClampedToStandsBesideWhetherItComesOff() {
        FormPanel panel;
        Taken taken{shownSample(), {}};
        followWith(taken, &panel);
        open(&panel);
        auto* kind = panel.findChild<QComboBox*>("formKind");
        auto* off = panel.findChild<QCheckBox*>("letGo");
        QVERIFY(kind->isVisible() && off->isVisible());
        QCOMPARE(kind->parentWidget(), off->parentWidget());
        off->click();
        QVERIFY(!taken.shown.piece.form.letGo);
        panel.findChild<QToolButton*>("supportHead")->click();
        auto* posts = panel.findChild<NotebookTable*>("posts");
        QVERIFY(!posts->isVisible());
        kind->setCurrentIndex(1);
        emit kind->activated(1);
        QCOMPARE(taken.shown.piece.form.kind, model::FormKind::posts);
        QVERIFY(posts->isVisible());
        panel.findChild<QToolButton*>("addPost")->click();
        QCOMPARE(taken.shown.piece.form.posts.size(), 1u);
    }

    void NothingIsCutOffWithEverythingOpen_data() {
        QTest::addColumn<int>("piece");
        QTest::addColumn<int>("lengths");
        const auto pieces = io::loadBoat(std::string(FAYLINE_SAMPLES "/marram.fayline")).pieces.size();
        for (int piece = 0; piece < static_cast<int>(pieces); ++piece)
            for (int lengths = 0; lengths < 3; ++lengths)
                QTest::addRow("piece %d, notation %d", piece, lengths) << piece << lengths;
    }
    void NothingIsCutOffWithEverythingOpen() {
        QFETCH(int, piece);
        QFETCH(int, lengths);
        Shown shown = shownSample("marram.fayline", piece);
        shown.display.lengths = static_cast<units::LengthNotation>(lengths);
        model::Record record;
        record.when = "2026-05-02T08:30";
        record.letGo = {{0, 3.912, 3.914, 0.4125, {}}, {240 * 3600.0, 3.912, 3.916, 0.41, {}}};
        shown.piece.record = {record};
        shown.piece.stack.planedAfter = {{0.7431, 0.0015, 0.003, {}}};
        planAnew(shown);
        for (const int width : {narrowest, widest}) {
            FormPanel panel;
            panel.show(shown);
            unfold(panel);
            checkFits(&panel, width);
        }
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, FormPanelTest>(argc, argv);
}
#include "form_panel_test.moc"
