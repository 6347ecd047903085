// Every action of the window with its words, icon and key; menus and tool bar made of them.
#include <QApplication>
#include <QKeyEvent>
#include <QMenuBar>
#include <QMessageBox>
#include <QSettings>
#include <QToolBar>

#include "app/formview/form_view.hpp"
#include "app/look/icons.hpp"
#include "app/panels/findings_list.hpp"
#include "app/panels/question_line.hpp"
#include "app/window/main_window.hpp"
#include "app/window/panel_stack.hpp"
#include "app/window/pieces_list.hpp"
#include "app/window/sources_dialog.hpp"
#include "app/window/trials_dialog.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

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
    action("new", "new", tr("&New boat"), QKeySequence::New, [this] { startNew(); });
    action("open", "open", tr("&Open..."), QKeySequence::Open, [this] { askAndOpen(); });
    action("save", "save", tr("&Save"), QKeySequence::Save, [this] { save(); });
    action("saveAs", "save_as", tr("Save &as..."), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S),
           [this] { saveAs(); });
    action("import", "import", tr("&Import offsets as a new piece..."), QKeySequence(Qt::CTRL | Qt::Key_I),
           [this] { askAndImport(); });
    action("savePapers", "pages", tr("Save all papers as PDF..."), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_P),
           [this] { askAndSavePapers(); });
    action("quit", "", tr("&Quit"), QKeySequence(Qt::CTRL | Qt::Key_Q), [this] { close(); });

    QAction* undo = document_.undoStack().createUndoAction(this, tr("&Undo"));
    undo->setObjectName("undo");
    undo->setIcon(icon("undo"));
    undo->setShortcut(QKeySequence::Undo);
    QAction* redo = document_.undoStack().createRedoAction(this, tr("&Redo"));
    redo->setObjectName("redo");
    redo->setIcon(icon("redo"));
    redo->setShortcuts({QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), QKeySequence(Qt::CTRL | Qt::Key_Y)});
    addActions({undo, redo});

    // The keys of these belong to whatever has the keyboard; the menu says them and passes them on.
    const auto toFocused = [this](const char* name, const char* iconName, const QString& text,
                                  QKeySequence::StandardKey key) {
        QAction* made = action(name, iconName, text, key, [this, name, key] { toFocus(name, key); });
        made->setShortcutContext(Qt::WidgetShortcut);
    };
    toFocused("cut", "cut", tr("Cu&t"), QKeySequence::Cut);
    toFocused("copy", "copy", tr("&Copy"), QKeySequence::Copy);
    toFocused("paste", "paste", tr("&Paste"), QKeySequence::Paste);

    action("ownGlues", "cup", tr("Your own &glues..."), {}, [this] { editOwnGlues(); });
    action("nameBoat", "rename", tr("&Name and notes..."), {}, [this] { nameBoat(); });
    action("trials", "", tr("&Measure your own wood..."), {}, [this] { TrialsDialog(document_, this).exec(); });
    action("addPiece", "add", tr("&Add a piece"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_N),
           [this] { addPiece(); });
    action("duplicatePiece", "duplicate", tr("&Duplicate the piece"), QKeySequence(Qt::CTRL | Qt::Key_D),
           [this] { duplicatePiece(); });
    action("renamePiece", "rename", tr("&Rename the piece"), QKeySequence(Qt::CTRL | Qt::Key_R),
           [this] { pieces_->editName(document_.currentPiece()); });
    action("removePiece", "remove", tr("Re&move the piece"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Backspace),
           [this] { document_.removePiece(document_.currentPiece()); });
    action("pieceUp", "up", tr("Move the piece &up"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Up),
           [this] { document_.movePiece(document_.currentPiece(), document_.currentPiece() - 1); });
    action("pieceDown", "down", tr("Move the piece d&own"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Down),
           [this] { document_.movePiece(document_.currentPiece(), document_.currentPiece() + 1); });
    action("nextPiece", "", tr("Ne&xt piece"), QKeySequence(Qt::CTRL | Qt::Key_PageDown),
           [this] { document_.setCurrentPiece(document_.currentPiece() + 1); });
    action("previousPiece", "", tr("Pre&vious piece"), QKeySequence(Qt::CTRL | Qt::Key_PageUp),
           [this] { document_.setCurrentPiece(std::max(0, document_.currentPiece() - 1)); });

    action("clock", "clock", tr("Glue-up &clock..."), QKeySequence(Qt::CTRL | Qt::Key_T), [this] { openClock(false); });
    action("dryFit", "", tr("Timed dry &fit..."), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_T),
           [this] { openClock(true); });

    constexpr double zoomStep = 1.25;
    action("zoomIn", "zoom_in", tr("Zoom &in"), QKeySequence(Qt::CTRL | Qt::Key_Plus), [this] {
        formView_->zoomBy(zoomStep);
    })->setShortcuts({QKeySequence(Qt::CTRL | Qt::Key_Plus), QKeySequence(Qt::CTRL | Qt::Key_Equal)});
    action("zoomOut", "zoom_out", tr("Zoom &out"), QKeySequence(Qt::CTRL | Qt::Key_Minus),
           [this] { formView_->zoomBy(1 / zoomStep); });
    action("zoomFit", "zoom_fit", tr("&Whole piece"), QKeySequence(Qt::CTRL | Qt::Key_0),
           [this] { formView_->fitToWindow(); });
    QAction* comb = action("comb", "comb", tr("Show the &bend"), QKeySequence(Qt::CTRL | Qt::Key_K), [] {});
    comb->setCheckable(true);
    connect(comb, &QAction::toggled, this, [this](bool on) { formView_->setCombShown(on); });
    QAction* misfit = action("misfit", "misfit", tr("&Misfit magnified"), QKeySequence(Qt::CTRL | Qt::Key_M), [] {});
    misfit->setCheckable(true);
    connect(misfit, &QAction::toggled, this, [this](bool on) { formView_->setMisfitMagnified(on); });
    const auto layer = [this](const char* name, const QString& words, void (FormView::*setShown)(bool)) {
        QAction* shown = action(name, name, words, {}, [] {});
        shown->setCheckable(true);
        connect(shown, &QAction::toggled, this, [this, setShown](bool on) { (formView_->*setShown)(on); });
    };
    layer("forces", tr("&Forces"), &FormView::setForcesShown);
    layer("gaps", tr("&Gaps magnified"), &FormView::setGapsMagnified);
    layer("pressure", tr("P&ressure on the form"), &FormView::setPressureShown);
    QAction* one = action("onePanel", "", tr("One &panel at a time"), {}, [] {});
    one->setCheckable(true);
    connect(one, &QAction::toggled, this, [this](bool on) { panels_->setOneAtATime(on); });
    action("nextArea", "", tr("Ne&xt part of the window"), QKeySequence(Qt::Key_F6), [this] { nextArea(1); });
    action("previousArea", "", tr("Pre&vious part of the window"), QKeySequence(Qt::SHIFT | Qt::Key_F6),
           [this] { nextArea(-1); });

    grounds_ = new QActionGroup(this);
    const QString remembered = QSettings().value("ground", "desktop").toString();
    const auto ground = [&](const char* name, const QString& text, Ground value) {
        QAction* made = action(name, "", text, {}, [this, value] { chooseGround(value); });
        made->setCheckable(true);
        made->setChecked(remembered == QString(name).remove("ground").toLower());
        grounds_->addAction(made);
    };
    ground("groundPaper", tr("&Paper, for the day"), Ground::paper);
    ground("groundSlate", tr("&Slate, for the shed at night"), Ground::slate);
    ground("groundDesktop", tr("As the &desktop"), Ground::desktop);
    action("otherGround", "ground", tr("Day or ni&ght"), QKeySequence(Qt::CTRL | Qt::Key_G), [this] {
        const bool toPaper = theme().dark;
        named(toPaper ? "groundPaper" : "groundSlate")->setChecked(true);
        chooseGround(toPaper ? Ground::paper : Ground::slate);
    });

    action("sources", "source", tr("&Where the numbers come from"), QKeySequence::HelpContents,
           [this] { showSources(this, shown_); });
    action("about", "help", tr("&About Fayline, and cautions"), {}, [this] { showAbout(this); });
}

void MainWindow::makeMenus() {
    QMenu* file = menuBar()->addMenu(tr("&File"));
    file->addActions({named("new"), named("open")});
    recent_ = file->addMenu(tr("Open &recent"));
    recent_->setObjectName("recent");
    connect(recent_, &QMenu::aboutToShow, this, &MainWindow::fillRecent);
    file->addSeparator();
    file->addActions({named("save"), named("saveAs")});
    file->addSeparator();
    file->addAction(named("import"));
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
    file->addAction(named("savePapers"));
    file->addSeparator();
    file->addAction(named("quit"));

    QMenu* edit = menuBar()->addMenu(tr("&Edit"));
    edit->addActions({named("undo"), named("redo")});
    edit->addSeparator();
    edit->addActions({named("cut"), named("copy"), named("paste")});

    QMenu* boat = menuBar()->addMenu(tr("&Boat"));
    boat->addActions({named("nameBoat"), named("ownGlues"), named("trials")});
    QMenu* units = boat->addMenu(icon("units"), tr("&Units"));
    const auto unit = [&](QMenu* menu, QActionGroup* group, const QString& text, auto member, auto value) {
        QAction* made = action({}, "", text, {}, [this, member, value] {
            changeUnits([member, value](units::Display& display) { display.*member = value; });
        });
        made->setObjectName("unit" + text);
        made->setCheckable(true);
        group->addAction(made);
        menu->addAction(made);
        units_.push_back({made, [member, value](const units::Display& display) { return display.*member == value; }});
    };
    const auto section = [&](const QString& title) {
        units->addSection(title);
        return new QActionGroup(this);
    };
    using units::Display;
    const auto shop = [&](const QString& text, const Display& all) {
        QAction* made =
            action({}, "", text, {}, [this, all] { changeUnits([all](Display& display) { display = all; }); });
        made->setObjectName("unit" + text);
        made->setCheckable(true);
        units->addAction(made);
        units_.push_back({made, [all](const Display& display) { return display == all; }});
    };
    shop(tr("Inch shop"), units::inchShop);
    shop(tr("Metric shop"), units::metricShop);
    QActionGroup* lengths = section(tr("Lengths"));
    unit(units, lengths, tr("feet-inches-eighths"), &Display::lengths, units::LengthNotation::feetInchesEighths);
    unit(units, lengths, tr("inches"), &Display::lengths, units::LengthNotation::inches);
    unit(units, lengths, tr("millimetres"), &Display::lengths, units::LengthNotation::millimetres);
    QActionGroup* forces = section(tr("Forces"));
    unit(units, forces, tr("newtons"), &Display::forces, units::ForceUnit::newton);
    unit(units, forces, tr("pounds-force"), &Display::forces, units::ForceUnit::poundForce);
    unit(units, forces, tr("kilograms-force"), &Display::forces, units::ForceUnit::kilogramForce);
    QActionGroup* temperatures = section(tr("Temperatures"));
    unit(units, temperatures, tr("degrees Celsius"), &Display::temperatures, units::TemperatureUnit::celsius);
    unit(units, temperatures, tr("degrees Fahrenheit"), &Display::temperatures, units::TemperatureUnit::fahrenheit);
    QActionGroup* weights = section(tr("Weights"));
    unit(units, weights, tr("grams"), &Display::weights, units::WeightUnit::gram);
    unit(units, weights, tr("ounces"), &Display::weights, units::WeightUnit::ounce);
    QActionGroup* volumes = section(tr("Volumes"));
    unit(units, volumes, tr("millilitres"), &Display::volumes, units::VolumeUnit::millilitre);
    unit(units, volumes, tr("fluid ounces"), &Display::volumes, units::VolumeUnit::fluidOunce);

    QMenu* piece = menuBar()->addMenu(tr("&Piece"));
    piece->addActions({named("addPiece"), named("duplicatePiece"), named("renamePiece"), named("removePiece")});
    piece->addSeparator();
    piece->addActions({named("pieceUp"), named("pieceDown")});
    piece->addSeparator();
    piece->addActions({named("nextPiece"), named("previousPiece")});
    piece->addSeparator();
    piece->addActions({named("clock"), named("dryFit")});

    QMenu* view = menuBar()->addMenu(tr("&View"));
    view->addActions({named("zoomIn"), named("zoomOut"), named("zoomFit")});
    view->addSeparator();
    view->addActions({named("comb"), named("misfit"), named("forces"), named("gaps"), named("pressure")});
    view->addSeparator();
    QMenu* open = view->addMenu(tr("Open the panel &of"));
    const QStringList words{tr("Line"), tr("Strips"), tr("Form"),  tr("Holding"), tr("Glue"),
                            tr("Time"), tr("Stock"),  tr("Paper"), tr("Record")};
    for (int i = 0; i < words.size(); ++i) {
        open->addAction(action("openPanel" + QString::number(i), "", words[i],
                               QKeySequence(Qt::CTRL | Qt::Key(Qt::Key_1 + i)),
                               [this, i] { emit questions_->questionChosen(plan::Question(i)); }));
    }
    view->addAction(named("onePanel"));
    view->addActions({named("nextArea"), named("previousArea")});
    view->addSeparator();
    QMenu* ground = view->addMenu(icon("ground"), tr("&Colours"));
    ground->addActions(grounds_->actions());
    ground->addSeparator();
    ground->addAction(named("otherGround"));

    QMenu* help = menuBar()->addMenu(tr("&Help"));
    help->addActions({named("sources"), named("about")});
}

void MainWindow::makeToolBar() {
    QToolBar* bar = addToolBar(tr("Tools"));
    bar->setObjectName("tools");
    bar->setMovable(false);
    bar->setIconSize({20, 20});
    const auto gap = [&] {
        auto* space = new QWidget(bar);
        space->setFixedWidth(2 * gridStep);
        bar->addWidget(space);
    };
    bar->addActions({named("new"), named("open"), named("save")});
    gap();
    bar->addActions({named("undo"), named("redo")});
    gap();
    bar->addActions({named("zoomOut"), named("zoomFit"), named("zoomIn"), named("comb"), named("misfit"),
                     named("forces"), named("gaps"), named("pressure")});
    gap();
    bar->addActions({named("savePapers"), named("otherGround"), named("sources")});
    bar->toggleViewAction()->setVisible(false);
}

void MainWindow::updateActions() {
    const int index = document_.currentPiece();
    const int count = math::countOf(document_.boat().pieces);
    const bool any = index >= 0;
    for (const char* name :
         {"duplicatePiece", "renamePiece", "removePiece", "zoomIn", "zoomOut", "zoomFit", "clock", "dryFit"}) {
        named(name)->setEnabled(any);
    }
    named("pieceUp")->setEnabled(index > 0);
    named("pieceDown")->setEnabled(any && index + 1 < count);
    named("nextPiece")->setEnabled(any && index + 1 < count);
    named("previousPiece")->setEnabled(index > 0);
    named("savePapers")->setEnabled(count > 0);
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
    const std::vector<QWidget*> areas{pieces_, formView_, questions_, findings_, panels_};
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
