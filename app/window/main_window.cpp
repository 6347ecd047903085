#include "app/window/main_window.hpp"

#include <QCloseEvent>
#include <QCoreApplication>
#include <QFileInfo>
#include <QScreen>
#include <QSettings>
#include <QSplitter>
#include <QStatusBar>
#include <QToolButton>
#include <QVBoxLayout>
#include <map>

#include "app/clock/clock_screen.hpp"
#include "app/formview/form_view.hpp"
#include "app/look/icons.hpp"
#include "app/panels/findings_list.hpp"
#include "app/panels/question_line.hpp"
#include "app/window/clock_band.hpp"
#include "app/window/panel_stack.hpp"
#include "app/window/pieces_list.hpp"

namespace fayline::app {

MainWindow::MainWindow(const QString& recoveryFolder, QWidget* parent, const WindowTimes& times,
                       const QString& shedFile)
    : QMainWindow(parent),
      shed_(shedFile),
      document_(shed_.shed()),
      planning_(document_, times.planning),
      recovery_(recoveryFolder),
      daysFolder_(recoveryFolder + "/days"),
      dayClocks_(times.clocks) {
    keepCopy_.setInterval(times.copyAfter_ms);
    setObjectName("mainWindow");
    setWindowIcon(programIcon());
    makeActions();
    makeViewActions();
    layOut();
    makeMenus();
    makeToolBar();
    connectAll();
    connectShed();
    readSettings();
    showAll();
    showTitle();
}

MainWindow::~MainWindow() {
    // The undo stack tells of its own end, when half of the window is gone.
    document_.undoStack().disconnect(this);
}

void MainWindow::layOut() {
    using enum Act;
    pieces_ = new PiecesList(of({addPiece, duplicatePiece, removePiece, pieceUp, pieceDown}));
    band_ = new ClockBand;
    formView_ = new FormView;
    questions_ = new QuestionLine;
    findings_ = new FindingsList;
    panels_ = new PanelStack;

    auto* drawing = new QWidget;
    auto* drawingColumn = new QVBoxLayout(drawing);
    drawingColumn->setContentsMargins(0, 0, 0, 0);
    drawingColumn->setSpacing(0);
    drawingColumn->addWidget(band_);
    noCopy_ = new QLabel;
    noCopy_->setObjectName("noCopy");
    noCopy_->setTextFormat(Qt::PlainText);
    noCopy_->setWordWrap(true);
    noCopy_->setMargin(gridStep);
    noCopy_->hide();
    drawingColumn->addWidget(noCopy_);
    drawingColumn->addWidget(formView_, 1);
    drawingColumn->addWidget(questions_);

    down_ = new QSplitter(Qt::Vertical);
    down_->setObjectName("down");
    down_->addWidget(drawing);
    down_->addWidget(findings_);
    down_->setStretchFactor(0, 1);
    down_->setCollapsible(0, false);

    across_ = new QSplitter(Qt::Horizontal);
    across_->setObjectName("across");
    across_->addWidget(pieces_);
    across_->addWidget(down_);
    across_->addWidget(panels_);
    across_->setStretchFactor(1, 1);
    across_->setCollapsible(1, false);
    setCentralWidget(across_);

    // At the end of the status bar, and no higher than its words.
    underWay_ = new QLabel;
    underWay_->setObjectName("underWay");
    stop_ = new QToolButton;
    stop_->setObjectName("stopCalculating");
    stop_->setText(tr("Stop"));
    stop_->setAccessibleName(tr("Stop calculating"));
    stop_->setMaximumHeight(statusBar()->fontMetrics().height() + gridStep / 2);
    statusBar()->addPermanentWidget(underWay_);
    statusBar()->addPermanentWidget(stop_);
    statusBar()->setSizeGripEnabled(false);
    showUnderWay({});
}

void MainWindow::connectAll() {
    followDocument();
    followViews();
    connect(&planning_, &Planning::shownChanged, this, &MainWindow::showAll);
    connect(&planning_, &Planning::marksChanged, this, &MainWindow::showPieces);
    connect(&planning_, &Planning::underWayChanged, this, &MainWindow::showUnderWay);
    connect(&planning_, &Planning::failed, this, [this](const QString& why) {
        statusBar()->showMessage(tr("Part of this plan could not be calculated: %1").arg(why));
    });
    connect(stop_, &QToolButton::clicked, &planning_, &Planning::stop);
    connect(panels_, &PanelStack::calculateAsked, &planning_, &Planning::calculate);
    keepCopy_.setSingleShot(true);
    connect(&keepCopy_, &QTimer::timeout, this, [this] { recovery_.keep(document_.boat(), document_.fileName()); });
    connect(&recovery_, &Recovery::failed, this, [this](const QString& why) {
        if (!document_.hasUnsavedChanges()) return;
        noCopy_->setText(tr("Unsaved work has no copy: %1. Save the boat.").arg(why));
        noCopy_->show();
        keepCopy_.start();  // until it can
    });
    connect(&recovery_, &Recovery::kept, noCopy_, &QWidget::hide);
}

void MainWindow::followDocument() {
    const auto dropCopy = [this] {
        keepCopy_.stop();
        noCopy_->hide();
        recovery_.drop();
    };
    connect(&document_, &Document::boatReplaced, this, dropCopy);
    connect(&document_, &Document::boatChanged, this, &MainWindow::showTitle);
    connect(&document_, &Document::fileNameChanged, this, &MainWindow::showTitle);
    connect(&document_, &Document::hoveredPlaceChanged, this, [this](std::optional<double> at_m) {
        if (planning_.isAwaited()) return;  // lit together with the plan that is about to come
        formView_->lightPlace(at_m);
        panels_->lightPlace(at_m);
    });
    connect(&document_, &Document::selectedPlaceChanged, this, [this](std::optional<double> at_m) {
        formView_->selectPlace(at_m);
        panels_->selectPlace(at_m);
    });
    connect(&document_.undoStack(), &QUndoStack::indexChanged, this, [this, dropCopy] {
        if (!document_.hasUnsavedChanges()) {
            dropCopy();
        } else if (!keepCopy_.isActive()) {
            keepCopy_.start();
        }
        updateActions();
    });
    connect(&document_.undoStack(), &QUndoStack::cleanChanged, this, [this, dropCopy](bool clean) {
        showTitle();
        if (clean) dropCopy();
    });
}

void MainWindow::followViews() {
    const auto change = [this](const Change& asked) { document_.changePiece(document_.currentPiece(), asked); };
    connect(formView_, &FormView::changeAsked, this, change);
    connect(formView_, &FormView::dragEnded, &document_, &Document::endStep);
    connect(formView_, &FormView::placeHovered, &document_, &Document::setHoveredPlace);
    connect(formView_, &FormView::placeSelected, &document_, &Document::setSelectedPlace);
    connect(formView_, &FormView::selectionSaid, this,
            [this](const QString& words) { statusBar()->showMessage(words); });
    connect(formView_, &FormView::pointSelected, panels_, &PanelStack::selectPoint);
    connect(formView_, &FormView::stripSelected, panels_, &PanelStack::selectStrip);
    connect(panels_, &PanelStack::stripSelected, formView_, &FormView::selectStrip);
    connect(panels_, &PanelStack::changeAsked, this, change);
    connect(panels_, &PanelStack::pointSelected, formView_, &FormView::selectPoint);
    connect(panels_, &PanelStack::momentPointed, formView_, &FormView::showMoment);
    connect(panels_, &PanelStack::ownGluesAsked, this, &MainWindow::editOwnGlues);
    connect(panels_, &PanelStack::placeHovered, &document_, &Document::setHoveredPlace);
    connect(panels_, &PanelStack::placeSelected, &document_, &Document::setSelectedPlace);
    connect(panels_, &PanelStack::wholePieceWanted, formView_, &FormView::fitToNextPlan);
    connect(panels_, &PanelStack::actionAsked, this, [this](const QString& name) {
        if (auto* asked = findChild<QAction*>(name, Qt::FindDirectChildrenOnly)) asked->trigger();
    });
    connect(band_, &ClockBand::backAsked, this, [this] { openClock(false); });
    connect(findings_, &FindingsList::changeAsked, this, change);
    connect(findings_, &FindingsList::placeHovered, &document_, &Document::setHoveredPlace);
    connect(findings_, &FindingsList::findingChosen, this, &MainWindow::openFinding);
    connect(questions_, &QuestionLine::questionChosen, this, &MainWindow::openQuestion);
    connect(questions_, &QuestionLine::clockAsked, this, [this] { openClock(false); });
    connect(pieces_, &PiecesList::pieceChosen, &document_, &Document::setCurrentPiece);
    connect(pieces_, &PiecesList::renameAsked, this, &MainWindow::renamePiece);
    connect(pieces_, &PiecesList::moveAsked, &document_, &Document::movePiece);
}

void MainWindow::openFinding(plan::About about, std::optional<double> at_m, int point) {
    static const std::map<plan::About, plan::Question> panelOf{
        {plan::About::line, plan::Question::line},  {plan::About::stack, plan::Question::strips},
        {plan::About::form, plan::Question::form},  {plan::About::holding, plan::Question::holding},
        {plan::About::glue, plan::Question::glue},  {plan::About::schedule, plan::Question::time},
        {plan::About::stock, plan::Question::stock}};
    panels_->openPanel(panelOf.at(about));
    if (point >= 0) {
        formView_->selectPoint(point);
        panels_->goToPoint(point);
    }
    document_.setSelectedPlace(at_m);
}

void MainWindow::openQuestion(plan::Question question) {
    if (!panels_->openPanel(question)) statusBar()->showMessage(tr("This question is not answered yet."), 5000);
}

void MainWindow::showAll() {
    const Shown& shown = planning_.shown();
    showPieces();
    formView_->lightPlace(document_.hoveredPlace());
    panels_->lightPlace(document_.hoveredPlace());
    formView_->show(shown);
    questions_->show(shown);
    findings_->show(shown);
    panels_->show(shown);

    updateActions();
    // Settled before anything is painted: the plots' scenes ask for painting ahead of the events of layouts.
    QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
}

void MainWindow::showPieces() {
    pieces_->show(document_.boat(), document_.currentPiece(), planning_.marks());
}

void MainWindow::showUnderWay(const QString& what) {
    underWay_->setText(what);
    underWay_->setVisible(!what.isEmpty());
    stop_->setVisible(!what.isEmpty());
}

void MainWindow::showTitle() {
    const QString boat = QString::fromStdString(document_.boat().name);
    const QString file =
        document_.fileName().isEmpty() ? tr("not saved yet") : QFileInfo(document_.fileName()).fileName();
    setWindowTitle(tr("%1 (%2[*]) - Fayline").arg(boat.isEmpty() ? tr("Boat without a name") : boat, file));
    setWindowModified(document_.hasUnsavedChanges());
    setWindowFilePath(document_.fileName());
}

QString MainWindow::wordOf(Ground ground) {
    static const std::map<Ground, QString> words{
        {Ground::paper, "paper"}, {Ground::slate, "slate"}, {Ground::desktop, "desktop"}};
    return words.at(ground);
}

void MainWindow::chooseGround(Ground ground) {
    applyGround(ground);
    QSettings().setValue("ground", wordOf(ground));
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (!mayLeave()) {
        event->ignore();
        return;
    }
    if (clock_) clock_->hide();  // it would keep the program alive
    writeSettings();
    keepCopy_.stop();
    recovery_.drop();
    recovery_.waitForWriting();
    event->accept();
}

void MainWindow::readSettings() {
    const QSettings settings;
    // At first as large as is good to read, with some of the desktop around it where there is room.
    if (!restoreGeometry(settings.value("window/geometry").toByteArray()))
        resize((screen()->availableSize() * 0.9).expandedTo({1280, 800}).boundedTo({1680, 1050}));
    // Within the screen, which may be another or drawn larger than when the size was kept.
    const QRect room = screen()->availableGeometry();
    if (!isMaximized() && !isFullScreen()) {
        resize(size().boundedTo(room.size()));
        if (!room.contains(geometry())) move(room.topLeft());
    }
    if (!across_->restoreState(settings.value("window/across").toByteArray())) across_->setSizes({168, 672, 440});
    if (!down_->restoreState(settings.value("window/down").toByteArray())) down_->setSizes({520, 144});
    std::vector<int> open;
    const QStringList remembered = settings.value("window/panels", "0,1").toString().split(',', Qt::SkipEmptyParts);
    for (const QString& question : remembered) open.push_back(question.toInt());
    panels_->setOpenQuestions(open);
    for (const Switch& one : switches_) {
        const bool on = settings.value("window/" + one.action->objectName(), one.byDefault).toBool();
        one.action->setChecked(on);
        one.set(on);
    }
}

void MainWindow::writeSettings() const {
    QSettings settings;
    settings.setValue("window/geometry", saveGeometry());
    settings.setValue("window/across", across_->saveState());
    settings.setValue("window/down", down_->saveState());
    QStringList open;
    for (const int question : panels_->openQuestions()) open << QString::number(question);
    settings.setValue("window/panels", open.join(','));
    for (const Switch& one : switches_) {
        settings.setValue("window/" + one.action->objectName(), one.action->isChecked());
    }
}

}  // namespace fayline::app

#include "moc_main_window.cpp"
