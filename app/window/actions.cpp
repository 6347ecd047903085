// Every action of the window with its words, icon and key; menus and tool bar made of them.
#include <QApplication>
#include <QKeyEvent>
#include <QMenuBar>
#include <QMetaEnum>
#include <QSettings>
#include <QToolBar>

#include "app/formview/form_view.hpp"
#include "app/look/icons.hpp"
#include "app/panels/findings_list.hpp"
#include "app/panels/question_line.hpp"
#include "app/window/clock_band.hpp"
#include "app/window/compare_dialog.hpp"
#include "app/window/guide_dialog.hpp"
#include "app/window/main_window.hpp"
#include "app/window/panel_stack.hpp"
#include "app/window/paper_panel.hpp"
#include "app/window/pieces_list.hpp"
#include "app/window/sources_dialog.hpp"
#include "app/window/trials_dialog.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

QList<QAction*> MainWindow::of(std::initializer_list<Act> acts) const {
    QList<QAction*> all;
    for (const Act act : acts) all << of(act);
    return all;
}

QAction* MainWindow::action(Act act, const QString& iconName, const QString& text, const QKeySequence& key,
                            std::function<void()> run) {
    const QString name = QMetaEnum::fromType<Act>().valueToKey(int(act));
    return acts_[act] = action(name, iconName, text, key, std::move(run));
}

QAction* MainWindow::action(const QString& name, const QString& iconName, const QString& text, const QKeySequence& key,
                            std::function<void()> run) {
    auto* made = new QAction(text, this);
    made->setObjectName(name);
    if (!iconName.isEmpty()) made->setIcon(icon(iconName));
    made->setShortcut(key);
    if (!key.isEmpty()) {
        QString plain = text;
        plain.remove('&').remove("...");
        made->setToolTip(QString("%1 (%2)").arg(plain, key.toString(QKeySequence::NativeText)));
    }
    connect(made, &QAction::triggered, this, std::move(run));
    addAction(made);
    return made;
}

void MainWindow::makeActions() {
    action(Act::newBoat, "new", tr("&New boat..."), QKeySequence::New, [this] { startNew(); });
    action(Act::open, "open", tr("&Open..."), QKeySequence::Open, [this] { askAndOpen(); });
    action(Act::save, "save", tr("&Save"), QKeySequence::Save, [this] { save(); });
    action(Act::saveAs, "save_as", tr("Save &as..."), Qt::CTRL | Qt::SHIFT | Qt::Key_S, [this] { saveAs(); });
    action(Act::importOffsets, "import", tr("&Import offsets as a new piece..."), Qt::CTRL | Qt::Key_I,
           [this] { askAndImport(); });
    action(Act::savePapers, "pages", tr("Save all papers as PDF..."), Qt::CTRL | Qt::SHIFT | Qt::Key_P,
           [this] { askAndSavePapers(); });
    paperSizes_ = new QActionGroup(this);
    for (const auto& [act, size] :
         {std::pair(Act::paperA4, QPageSize::A4), std::pair(Act::paperLetter, QPageSize::Letter)}) {
        QAction* made = action(act, "", paperSizeName(size), {}, [this, size = size] { usePaperSize(size); });
        made->setCheckable(true);
        paperSizes_->addAction(made);
    }
    action(Act::quit, "", tr("&Quit"), Qt::CTRL | Qt::Key_Q, [this] { close(); });

    const auto ofHistory = [this](Act act, QAction* made, const char* name, const QList<QKeySequence>& keys) {
        made->setObjectName(name);
        made->setIcon(icon(name));
        made->setShortcuts(keys);
        addAction(made);
        acts_[act] = made;
    };
    ofHistory(Act::undo, document_.undoStack().createUndoAction(this, tr("&Undo")), "undo", {QKeySequence::Undo});
    ofHistory(Act::redo, document_.undoStack().createRedoAction(this, tr("&Redo")), "redo",
              {Qt::CTRL | Qt::SHIFT | Qt::Key_Z, Qt::CTRL | Qt::Key_Y});

    // The keys of these belong to whatever has the keyboard; the menu says them and passes them on.
    const auto toFocused = [this](Act act, const char* slot, const QString& text, QKeySequence::StandardKey key) {
        action(act, slot, text, key, [this, slot, key] { toFocus(slot, key); })->setShortcutContext(Qt::WidgetShortcut);
    };
    toFocused(Act::cut, "cut", tr("Cu&t"), QKeySequence::Cut);
    toFocused(Act::copy, "copy", tr("&Copy"), QKeySequence::Copy);
    toFocused(Act::paste, "paste", tr("&Paste"), QKeySequence::Paste);

    action(Act::ownGlues, "cup", tr("Your own &glues..."), {}, [this] { editOwnGlues(); });
    action(Act::nameBoat, "rename", tr("&Name and notes..."), {}, [this] { nameBoat(); });
    action(Act::shed, "", tr("My &shed..."), {}, [this] { openShed(); });
    action(Act::trials, "", tr("&Measure your own wood..."), {}, [this] { TrialsDialog(document_, this).exec(); });
    action(Act::addPiece, "add", tr("&Add a piece..."), Qt::CTRL | Qt::SHIFT | Qt::Key_N, [this] { addPiece(); });
    action(Act::duplicatePiece, "duplicate", tr("&Duplicate the piece"), Qt::CTRL | Qt::Key_D,
           [this] { duplicatePiece(); });
    action(Act::renamePiece, "rename", tr("&Rename the piece"), Qt::CTRL | Qt::Key_R,
           [this] { pieces_->editName(document_.currentPiece()); });
    action(Act::removePiece, "remove", tr("Re&move the piece"), Qt::CTRL | Qt::SHIFT | Qt::Key_Backspace,
           [this] { document_.removePiece(document_.currentPiece()); });
    action(Act::pieceUp, "up", tr("Move the piece &up"), Qt::CTRL | Qt::SHIFT | Qt::Key_Up,
           [this] { document_.movePiece(document_.currentPiece(), document_.currentPiece() - 1); });
    action(Act::pieceDown, "down", tr("Move the piece d&own"), Qt::CTRL | Qt::SHIFT | Qt::Key_Down,
           [this] { document_.movePiece(document_.currentPiece(), document_.currentPiece() + 1); });
    action(Act::nextPiece, "", tr("Ne&xt piece"), Qt::CTRL | Qt::Key_PageDown,
           [this] { document_.setCurrentPiece(document_.currentPiece() + 1); });
    action(Act::previousPiece, "", tr("Pre&vious piece"), Qt::CTRL | Qt::Key_PageUp,
           [this] { document_.setCurrentPiece(std::max(0, document_.currentPiece() - 1)); });

    action(Act::compare, "", tr("Com&pare..."), {}, [this] { CompareDialog(document_, shown(), this).exec(); });
    action(Act::clock, "clock", tr("Glue-up &clock..."), Qt::CTRL | Qt::Key_T, [this] { openClock(false); });
    action(Act::dryFit, "", tr("Timed dry &fit..."), Qt::CTRL | Qt::SHIFT | Qt::Key_T, [this] { openClock(true); });

    action(Act::guide, "help", tr("&How to ..."), QKeySequence::HelpContents, [this] { showGuide(); });
    action(Act::sources, "source", tr("&Where the numbers come from"), Qt::SHIFT | Qt::Key_F1,
           [this] { showSources(this, shown()); });
    action(Act::about, "", tr("&About Fayline, and cautions"), {}, [this] { showAbout(this); });
}

void MainWindow::makeViewActions() {
    constexpr double zoomStep = 1.25;
    action(Act::zoomIn, "zoom_in", tr("Zoom &in"), Qt::CTRL | Qt::Key_Plus, [this] {
        formView_->zoomBy(zoomStep);
    })->setShortcuts({Qt::CTRL | Qt::Key_Plus, Qt::CTRL | Qt::Key_Equal});
    action(Act::zoomOut, "zoom_out", tr("Zoom &out"), Qt::CTRL | Qt::Key_Minus,
           [this] { formView_->zoomBy(1 / zoomStep); });
    action(Act::zoomFit, "zoom_fit", tr("&Whole piece"), Qt::CTRL | Qt::Key_0, [this] { formView_->fitToWindow(); });
    const auto layer = [this](Act act, const QString& text, const QKeySequence& key, bool byDefault, auto setShown) {
        const QString iconName = QMetaEnum::fromType<Act>().valueToKey(int(act));
        makeSwitch(action(act, iconName, text, key, [] {}), byDefault,
                   [this, setShown](bool on) { (formView_->*setShown)(on); });
    };
    layer(Act::bend, tr("Show the &bend"), Qt::CTRL | Qt::Key_K, false, &FormView::setBendShown);
    layer(Act::misfit, tr("&Misfit magnified"), Qt::CTRL | Qt::Key_M, true, &FormView::setMisfitMagnified);
    layer(Act::forces, tr("&Forces"), {}, true, &FormView::setForcesShown);
    layer(Act::gaps, tr("&Gaps magnified"), {}, true, &FormView::setGapsMagnified);
    layer(Act::pressure, tr("P&ressure on the form"), {}, true, &FormView::setPressureShown);
    makeSwitch(action(Act::onePanel, "", tr("One &panel at a time"), {}, [] {}), false,
               [this](bool on) { panels_->setOneAtATime(on); });
    action(Act::nextArea, "", tr("Ne&xt part of the window"), QKeySequence(Qt::Key_F6), [this] { nextArea(1); });
    action(Act::previousArea, "", tr("Pre&vious part of the window"), Qt::SHIFT | Qt::Key_F6, [this] { nextArea(-1); });

    grounds_ = new QActionGroup(this);
    const QString remembered = QSettings().value("ground", "desktop").toString();
    const auto ground = [&](Act act, const QString& text, Ground value) {
        QAction* made = action(act, "", text, {}, [this, value] { chooseGround(value); });
        made->setCheckable(true);
        made->setChecked(remembered == wordOf(value));
        grounds_->addAction(made);
    };
    ground(Act::groundPaper, tr("&Paper, for the day"), Ground::paper);
    ground(Act::groundSlate, tr("&Slate, for the shed at night"), Ground::slate);
    ground(Act::groundDesktop, tr("As the &desktop"), Ground::desktop);
    action(Act::otherGround, "ground", tr("Day or ni&ght"), Qt::CTRL | Qt::Key_G, [this] {
        const bool toPaper = theme().dark;
        of(toPaper ? Act::groundPaper : Act::groundSlate)->setChecked(true);
        chooseGround(toPaper ? Ground::paper : Ground::slate);
    });
}

void MainWindow::makeSwitch(QAction* made, bool byDefault, const std::function<void(bool)>& set) {
    made->setCheckable(true);
    connect(made, &QAction::toggled, this, set);
    switches_.push_back({made, byDefault, set});
}

void MainWindow::makeMenus() {
    using enum Act;
    QMenu* file = menuBar()->addMenu(tr("&File"));
    file->addActions(of({newBoat, open}));
    recent_ = file->addMenu(tr("Open &recent"));
    recent_->setObjectName("recent");
    connect(recent_, &QMenu::aboutToShow, this, &MainWindow::fillRecent);
    file->addSeparator();
    file->addActions(of({save, saveAs}));
    file->addSeparator();
    file->addAction(of(importOffsets));
    file->addSeparator();
    QMenu* printed = file->addMenu(icon("print"), tr("&Print"));
    QMenu* looked = file->addMenu(tr("Print pre&view"));
    for (const Paper paper : allPapers()) {
        const QString number = QString::number(int(paper));
        QAction* print =
            action("print" + number, "", paperName(paper) + "...", {}, [this, paper] { this->print(paper); });
        QAction* look = action("preview" + number, "", paperName(paper) + "...", {}, [this, paper] { preview(paper); });
        printed->addAction(print);
        looked->addAction(look);
        if (paper == Paper::storyStick) print->setShortcut(QKeySequence::Print);
    }
    file->addAction(of(savePapers));
    file->addMenu(tr("Pap&er size"))->addActions(of({paperA4, paperLetter}));
    file->addSeparator();
    file->addAction(of(quit));

    QMenu* edit = menuBar()->addMenu(tr("&Edit"));
    edit->addActions(of({undo, redo}));
    edit->addSeparator();
    edit->addActions(of({cut, copy, paste}));

    QMenu* boat = menuBar()->addMenu(tr("&Boat"));
    boat->addActions(of({nameBoat, ownGlues, trials, shed}));
    makeUnits(boat->addMenu(icon("units"), tr("&Units")));

    QMenu* piece = menuBar()->addMenu(tr("&Piece"));
    piece->addActions(of({addPiece, duplicatePiece, renamePiece, removePiece}));
    piece->addSeparator();
    piece->addActions(of({pieceUp, pieceDown}));
    piece->addSeparator();
    piece->addActions(of({nextPiece, previousPiece}));
    piece->addSeparator();
    piece->addAction(of(compare));
    piece->addSeparator();
    piece->addActions(of({clock, dryFit}));

    QMenu* view = menuBar()->addMenu(tr("&View"));
    view->addActions(of({zoomIn, zoomOut, zoomFit}));
    view->addSeparator();
    view->addActions(of({bend, misfit, forces, gaps, pressure}));
    view->addSeparator();
    QMenu* panels = view->addMenu(tr("Open the panel &of"));
    const QStringList words{tr("Line"), tr("Strips"), tr("Form"),  tr("Holding"), tr("Glue"),
                            tr("Time"), tr("Stock"),  tr("Paper"), tr("Record")};
    for (int i = 0; i < words.size(); ++i) {
        panels->addAction(action("openPanel" + QString::number(i), "", words[i],
                                 QKeySequence(Qt::CTRL | Qt::Key(Qt::Key_1 + i)),
                                 [this, i] { emit questions_->questionChosen(plan::Question(i)); }));
    }
    view->addAction(of(onePanel));
    view->addActions(of({nextArea, previousArea}));
    view->addSeparator();
    QMenu* ground = view->addMenu(icon("ground"), tr("&Colours"));
    ground->addActions(grounds_->actions());
    ground->addSeparator();
    ground->addAction(of(otherGround));

    QMenu* help = menuBar()->addMenu(tr("&Help"));
    help->addAction(of(guide));
    QMenu* tried = help->addMenu(tr("&Samples"));
    for (const Sample& sample : samples()) {
        tried->addAction(action("sample_" + QString(sample.file).remove(".fayline"), "", sample.title, {},
                                [this, file = sample.file] { openSample(file); }));
    }
    help->addSeparator();
    help->addActions(of({sources, about}));
}

void MainWindow::makeUnits(QMenu* menu) {
    // A unit's name is English, whatever its words are.
    const auto add = [&](const char* word, const std::function<void(units::Display&)>& choose, auto isChosen) {
        QAction* made = action(QString("unit") + word, "", tr(word), {}, [this, choose] { changeUnits(choose); });
        made->setCheckable(true);
        menu->addAction(made);
        units_.push_back({made, isChosen});
        return made;
    };
    using units::Display;
    const auto shop = [&](const char* word, const Display& all) {
        add(
            word, [all](Display& display) { display = all; }, [all](const Display& display) { return display == all; });
    };
    QActionGroup* group = nullptr;
    const auto section = [&](const QString& title) {
        menu->addSection(title);
        group = new QActionGroup(this);
    };
    const auto unit = [&](const char* word, auto member, auto value) {
        group->addAction(add(
            word, [member, value](Display& display) { display.*member = value; },
            [member, value](const Display& display) { return display.*member == value; }));
    };
    shop(QT_TR_NOOP("Inch shop"), units::inchShop);
    shop(QT_TR_NOOP("Metric shop"), units::metricShop);
    section(tr("Lengths"));
    unit(QT_TR_NOOP("feet-inches-eighths"), &Display::lengths, units::LengthNotation::feetInchesEighths);
    unit(QT_TR_NOOP("inches"), &Display::lengths, units::LengthNotation::inches);
    unit(QT_TR_NOOP("millimetres"), &Display::lengths, units::LengthNotation::millimetres);
    section(tr("Forces"));
    unit(QT_TR_NOOP("newtons"), &Display::forces, units::ForceUnit::newton);
    unit(QT_TR_NOOP("pounds-force"), &Display::forces, units::ForceUnit::poundForce);
    unit(QT_TR_NOOP("kilograms-force"), &Display::forces, units::ForceUnit::kilogramForce);
    section(tr("Temperatures"));
    unit(QT_TR_NOOP("degrees Celsius"), &Display::temperatures, units::TemperatureUnit::celsius);
    unit(QT_TR_NOOP("degrees Fahrenheit"), &Display::temperatures, units::TemperatureUnit::fahrenheit);
    section(tr("Weights"));
    unit(QT_TR_NOOP("grams"), &Display::weights, units::WeightUnit::gram);
    unit(QT_TR_NOOP("ounces"), &Display::weights, units::WeightUnit::ounce);
    section(tr("Volumes"));
    unit(QT_TR_NOOP("millilitres"), &Display::volumes, units::VolumeUnit::millilitre);
    unit(QT_TR_NOOP("fluid ounces"), &Display::volumes, units::VolumeUnit::fluidOunce);
}

void MainWindow::makeToolBar() {
    using enum Act;
    QToolBar* bar = addToolBar(tr("Tools"));
    bar->setObjectName("tools");
    bar->setMovable(false);
    bar->setIconSize({20, 20});
    const auto gap = [&] {
        auto* space = new QWidget(bar);
        space->setFixedWidth(2 * gridStep);
        bar->addWidget(space);
    };
    bar->addActions(of({newBoat, open, save}));
    gap();
    bar->addActions(of({undo, redo}));
    gap();
    bar->addActions(of({zoomOut, zoomFit, zoomIn, bend, misfit, forces, gaps, pressure}));
    gap();
    bar->addActions(of({savePapers, otherGround, sources}));
    bar->toggleViewAction()->setVisible(false);
}

void MainWindow::updateActions() {
    const int index = document_.currentPiece();
    const int count = math::countOf(document_.boat().pieces);
    const bool any = index >= 0;
    using enum Act;
    for (QAction* made :
         of({duplicatePiece, renamePiece, removePiece, zoomIn, zoomOut, zoomFit, compare, clock, dryFit})) {
        made->setEnabled(any);
    }
    of(pieceUp)->setEnabled(index > 0);
    of(pieceDown)->setEnabled(any && index + 1 < count);
    of(nextPiece)->setEnabled(any && index + 1 < count);
    of(previousPiece)->setEnabled(index > 0);
    of(savePapers)->setEnabled(count > 0);
    of(paperSize() == QPageSize::Letter ? paperLetter : paperA4)->setChecked(true);
    for (const auto& [made, isChosen] : units_) made->setChecked(isChosen(document_.boat().display));
}

// Fields have cut, copy and paste themselves; tables that take them listen to the keys.
void MainWindow::toFocus(const char* slot, const QKeySequence& key) {
    QWidget* focused = QApplication::focusWidget();
    if (!focused) return;
    if (focused->metaObject()->indexOfSlot(QByteArray(slot) + "()") >= 0) {
        QMetaObject::invokeMethod(focused, slot);
        return;
    }
    const QKeyCombination pressed = key[0];
    QKeyEvent press(QEvent::KeyPress, pressed.key(), pressed.keyboardModifiers());
    QApplication::sendEvent(focused, &press);
}

void MainWindow::nextArea(int step) {
    const std::vector<QWidget*> areas{pieces_, band_, formView_, questions_, findings_, panels_};
    const QWidget* focused = QApplication::focusWidget();
    int at = -1;
    for (int i = 0; i < math::countOf(areas); ++i) {
        if (focused && (areas[i] == focused || areas[i]->isAncestorOf(focused))) at = i;
    }
    const int count = math::countOf(areas);
    for (int tried = 0; tried < count; ++tried) {
        at = ((at < 0 && step < 0 ? 0 : at) + step + count) % count;
        QWidget* area = areas[at];
        QWidget* to = area->focusPolicy() & Qt::TabFocus ? area : nullptr;
        for (QWidget* child : area->findChildren<QWidget*>()) {
            if (!to && child->isVisible() && child->isEnabled() && child->focusPolicy() & Qt::TabFocus) to = child;
        }
        if (!to || !to->isVisible()) continue;
        to->setFocus(Qt::TabFocusReason);
        return;
    }
}

}  // namespace fayline::app
