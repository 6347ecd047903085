#include "app/window/main_window.hpp"

#include <QCloseEvent>
#include <QCoreApplication>
#include <QFileInfo>
#include <QScreen>
#include <QSettings>
#include <QSplitter>
#include <QStatusBar>
#include <QVBoxLayout>
#include <array>
#include <map>

#include "app/clock/clock_screen.hpp"
#include "app/formview/form_view.hpp"
#include "app/look/icons.hpp"
#include "app/panels/findings_list.hpp"
#include "app/panels/question_line.hpp"
#include "app/window/panel_stack.hpp"
#include "app/window/pieces_list.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

namespace {

constexpr int planPatience_ms = 33;  // two frames: a plan that comes by then is drawn together with its piece
constexpr std::array holdingLayers{"forces", "gaps", "pressure"};  // switches of the drawing, remembered

}  // namespace

MainWindow::MainWindow(const QString& recoveryFolder, QWidget* parent, const WindowTimes& times)
    : QMainWindow(parent),
      planner_(nullptr, times.studiesAfter_ms),
      marks_(nullptr, times.marksAfter_ms),
      recovery_(recoveryFolder),
      daysFolder_(recoveryFolder + "/days"),
      dayClocks_(times.clocks) {
    keepCopy_.setInterval(times.copyAfter_ms);
    setObjectName("mainWindow");
    setWindowIcon(programIcon());
    makeActions();
    layOut();
    makeMenus();
    makeToolBar();
    connectAll();
    readSettings();
    replan();
    showAll();
    showTitle();
}

MainWindow::~MainWindow() {
    // The undo stack tells of its own end, when half of the window is gone.
    document_.undoStack().disconnect(this);
}

void MainWindow::layOut() {
    pieces_ = new PiecesList(
        {named("addPiece"), named("duplicatePiece"), named("removePiece"), named("pieceUp"), named("pieceDown")});
    formView_ = new FormView;
    questions_ = new QuestionLine;
    findings_ = new FindingsList;
    panels_ = new PanelStack;

    auto* drawing = new QWidget;
    auto* drawingColumn = new QVBoxLayout(drawing);
    drawingColumn->setContentsMargins(0, 0, 0, 0);
    drawingColumn->setSpacing(0);
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
    statusBar()->setSizeGripEnabled(false);
}

void MainWindow::connectAll() {
    connect(&document_, &Document::boatReplaced, this, [this] {
        shown_ = {};
        recovery_.drop();
        keepCopy_.stop();
        replan();
    });
    connect(&document_, &Document::boatChanged, this, [this] {
        showTitle();
        replan();
    });
    connect(&document_, &Document::pieceChanged, this, &MainWindow::replan);
    connect(&document_, &Document::currentPieceChanged, this, [this] {
        if (const auto mark = markOfShown()) marks_.know(shown_.piece, *mark);
        firstOfPiece_ = lastAsked_ + 1;
        shown_.plan.reset();
        shown_.reason.clear();
        shown_.failure.clear();
        fitWhenPlanned_ = true;
        replan();
        showAll();
    });
    connect(&document_, &Document::fileNameChanged, this, &MainWindow::showTitle);
    connect(&document_, &Document::hoveredPlaceChanged, this, [this](std::optional<double> at_m) {
        if (late_.isActive()) return;  // lit together with the plan that is about to come
        formView_->lightPlace(at_m);
        panels_->lightPlace(at_m);
    });
    connect(&document_, &Document::selectedPlaceChanged, this, [this](std::optional<double> at_m) {
        formView_->selectPlace(at_m);
        panels_->selectPlace(at_m);
    });
    connect(&document_.undoStack(), &QUndoStack::cleanChanged, this, [this] { showTitle(); });
    connect(&document_.undoStack(), &QUndoStack::indexChanged, this, [this] {
        if (document_.hasUnsavedChanges()) {
            if (!keepCopy_.isActive()) keepCopy_.start();
        } else {
            keepCopy_.stop();
            recovery_.drop();
        }
        updateActions();
    });
    connect(&document_.undoStack(), &QUndoStack::cleanChanged, this, [this](bool clean) {
        if (!clean) return;
        keepCopy_.stop();
        recovery_.drop();
    });

    connect(&planner_, &Planner::planned, this, &MainWindow::takePlan);
    connect(&planner_, &Planner::studied, this, &MainWindow::takeDeepened);
    connect(&planner_, &Planner::deepened, this, &MainWindow::takeDeepened);
    connect(&planner_, &Planner::failed, this, &MainWindow::takeFailure);
    connect(&planner_, &Planner::refused, this, &MainWindow::takeRefusal);
    connect(&marks_, &PieceMarks::marksChanged, this, &MainWindow::showPieces);
    late_.setSingleShot(true);
    late_.setInterval(planPatience_ms);
    connect(&late_, &QTimer::timeout, this, &MainWindow::showAll);
    keepCopy_.setSingleShot(true);
    connect(&keepCopy_, &QTimer::timeout, this, [this] { recovery_.keep(document_.boat(), document_.fileName()); });
    connect(&recovery_, &Recovery::failed, this, [this](const QString& why) {
        statusBar()->showMessage(tr("Cannot keep a copy of the unsaved work: %1").arg(why), 10000);
    });

    const auto change = [this](const Change& asked) { document_.changePiece(document_.currentPiece(), asked); };
    const auto hover = [this](std::optional<double> at_m) { document_.setHoveredPlace(at_m); };
    const auto select = [this](std::optional<double> at_m) { document_.setSelectedPlace(at_m); };
    connect(formView_, &FormView::changeAsked, this, change);
    connect(formView_, &FormView::dragEnded, &document_, &Document::endStep);
    connect(formView_, &FormView::placeHovered, this, hover);
    connect(formView_, &FormView::placeSelected, this, select);
    connect(formView_, &FormView::selectionSaid, this,
            [this](const QString& words) { statusBar()->showMessage(words); });
    connect(formView_, &FormView::pointSelected, panels_, &PanelStack::selectPoint);
    connect(panels_, &PanelStack::changeAsked, this, change);
    connect(panels_, &PanelStack::pointSelected, formView_, &FormView::selectPoint);
    connect(panels_, &PanelStack::momentPointed, formView_, &FormView::showMoment);
    connect(panels_, &PanelStack::ownGluesAsked, this, &MainWindow::editOwnGlues);
    connect(panels_, &PanelStack::placeHovered, this, hover);
    connect(panels_, &PanelStack::placeSelected, this, select);
    connect(findings_, &FindingsList::changeAsked, this, change);
    connect(findings_, &FindingsList::placeHovered, this, hover);
    connect(findings_, &FindingsList::findingChosen, this,
            [this](plan::About about, std::optional<double> at_m, int point) {
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
            });
    connect(questions_, &QuestionLine::questionChosen, this, [this](plan::Question question) {
        if (question == plan::Question::paper) {
            askAndSavePapers();
        } else if (question == plan::Question::record) {
            openClock(false);  // which writes it
        } else if (!panels_->openPanel(question)) {
            statusBar()->showMessage(tr("This question is not answered yet."), 5000);
        }
    });
    connect(questions_, &QuestionLine::clockAsked, this, [this] { openClock(false); });
    connect(pieces_, &PiecesList::pieceChosen, &document_, &Document::setCurrentPiece);
    connect(pieces_, &PiecesList::renameAsked, this, &MainWindow::renamePiece);
    connect(pieces_, &PiecesList::moveAsked, &document_, &Document::movePiece);
}

// The newest state of the piece goes to the planner. What is drawn waits two frames at most for its answer, so that
// piece and plan mostly appear together.
void MainWindow::replan() {
    updateActions();
    const int index = document_.currentPiece();
    marks_.follow(document_.boat(), index);
    shop_ = plan::shopOf(document_.boat());
    if (index < 0) {
        firstOfPiece_ = lastAsked_ + 1;
        answered_ = true;
        shown_.plan.reset();
        showAll();
        return;
    }
    answered_ = false;
    lastAsked_ = planner_.ask(document_.boat().pieces[index], shop_);
    if (!late_.isActive()) late_.start();
}

void MainWindow::takePlan(quint64 request, const std::shared_ptr<const plan::Plan>& plan) {
    if (request < firstOfPiece_) return;
    shown_.plan = plan;
    shown_.outOfDate = false;
    shown_.reason.clear();
    shown_.reasonPath.clear();
    shown_.failure.clear();
    answered_ = request == lastAsked_;
    showAnswer();
}

// What took longer, or as much of it as is there. A hand that has moved on since will get its own.
void MainWindow::takeDeepened(quint64 request, const std::shared_ptr<const plan::Plan>& plan) {
    if (request < firstOfPiece_ || request != lastAsked_) return;
    shown_.plan = plan;
    showAll();
}

// The plan that followed the hand stays, with the studies that came.
void MainWindow::takeFailure(quint64 request, const QString& why) {
    if (request < firstOfPiece_ || request != lastAsked_) return;
    shown_.failure = why;
    statusBar()->showMessage(tr("Part of this plan could not be calculated: %1").arg(why));
    showAll();
}

void MainWindow::takeRefusal(quint64 request, const QString& path, const QString& why) {
    if (request < firstOfPiece_) return;
    shown_.outOfDate = true;
    shown_.reason = why;
    shown_.reasonPath = path;
    answered_ = request == lastAsked_;
    showAnswer();
}

void MainWindow::showAnswer() {
    late_.stop();
    showAll();
    if (fitWhenPlanned_) formView_->fitToWindow();
    fitWhenPlanned_ = false;
}

void MainWindow::showAll() {
    const int index = document_.currentPiece();
    shown_.pieceIndex = index;
    shown_.boatNumber = document_.boatNumber();
    shown_.piece = index < 0 ? model::Piece{} : document_.boat().pieces[index];
    shown_.display = shop_.display;
    shown_.species = shop_.species;
    shown_.adhesives = std::make_shared<const std::vector<glue::Adhesive>>(shop_.adhesives);
    if (index < 0) {
        shown_.outOfDate = false;
        shown_.reason.clear();
        shown_.reasonPath.clear();
    }
    showPieces();
    formView_->lightPlace(document_.hoveredPlace());
    panels_->lightPlace(document_.hoveredPlace());
    formView_->show(shown_);
    questions_->show(shown_);
    findings_->show(shown_);
    panels_->show(shown_);

    updateActions();
    // Settled before anything is painted: the plots' scenes ask for painting ahead of the events of layouts.
    QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
}

std::optional<PieceMark> MainWindow::markOfShown() const {
    if (shown_.pieceIndex < 0 || !answered_) return std::nullopt;
    if (!shown_.reason.isEmpty()) return markOfRefusal(shown_.reason);
    if (!shown_.plan || shown_.outOfDate || !plan::isStudied(*shown_.plan)) return std::nullopt;
    return markOf(*shown_.plan);
}

void MainWindow::showPieces() {
    const int current = document_.currentPiece();
    std::vector<PieceMark> marks;
    for (int i = 0; i < math::countOf(document_.boat().pieces); ++i) {
        const model::Piece& piece = document_.boat().pieces[i];
        if (i != current) {
            marks.push_back(marks_.of(piece));
        } else if (!shown_.reason.isEmpty()) {
            marks.push_back(markOfRefusal(shown_.reason));
        } else {
            // While a plan is under way the last one's mark stays, which is calmer than one that comes and goes.
            marks.push_back(shown_.plan ? markOf(*shown_.plan) : marks_.of(piece));
        }
    }
    pieces_->show(document_.boat(), current, marks);
}

void MainWindow::showTitle() {
    const QString boat = QString::fromStdString(document_.boat().name);
    const QString file =
        document_.fileName().isEmpty() ? tr("not saved yet") : QFileInfo(document_.fileName()).fileName();
    setWindowTitle(tr("%1 (%2[*]) - Fayline").arg(boat.isEmpty() ? tr("Boat without a name") : boat, file));
    setWindowModified(document_.hasUnsavedChanges());
    setWindowFilePath(document_.fileName());
}

void MainWindow::chooseGround(Ground ground) {
    applyGround(ground);
    static const std::map<Ground, QString> words{
        {Ground::paper, "paper"}, {Ground::slate, "slate"}, {Ground::desktop, "desktop"}};
    QSettings().setValue("ground", words.at(ground));
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
    if (!restoreGeometry(settings.value("window/geometry").toByteArray())) resize(1280, 800);
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
    named("comb")->setChecked(settings.value("window/comb", false).toBool());
    named("misfit")->setChecked(settings.value("window/misfit", true).toBool());
    formView_->setCombShown(named("comb")->isChecked());
    formView_->setMisfitMagnified(named("misfit")->isChecked());
    for (const char* layer : holdingLayers) {
        named(layer)->setChecked(settings.value(QString("window/%1").arg(layer), true).toBool());
    }
    formView_->setForcesShown(named("forces")->isChecked());
    formView_->setGapsMagnified(named("gaps")->isChecked());
    formView_->setPressureShown(named("pressure")->isChecked());
    named("onePanel")->setChecked(settings.value("window/onePanel", false).toBool());
    panels_->setOneAtATime(named("onePanel")->isChecked());
}

void MainWindow::writeSettings() const {
    QSettings settings;
    settings.setValue("window/geometry", saveGeometry());
    settings.setValue("window/across", across_->saveState());
    settings.setValue("window/down", down_->saveState());
    QStringList open;
    for (const int question : panels_->openQuestions()) open << QString::number(question);
    settings.setValue("window/panels", open.join(','));
    settings.setValue("window/comb", named("comb")->isChecked());
    settings.setValue("window/misfit", named("misfit")->isChecked());
    for (const char* layer : holdingLayers) {
        settings.setValue(QString("window/%1").arg(layer), named(layer)->isChecked());
    }
    settings.setValue("window/onePanel", panels_->oneAtATime());
}

}  // namespace fayline::app

#include "moc_main_window.cpp"
