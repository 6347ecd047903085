// One window, one boat: pieces on the left, the drawing with its questions in the middle, the panels on the right.
//
// The window makes every undo step and hands one and the same Shown to all views; Planning makes it.
#pragma once

#include <QActionGroup>
#include <QMainWindow>
#include <QTimer>
#include <functional>
#include <map>
#include <memory>

#include "app/clock/running_day.hpp"
#include "app/look/shown.hpp"
#include "app/look/theme.hpp"
#include "app/paper/papers.hpp"
#include "app/window/document.hpp"
#include "app/window/planning.hpp"
#include "app/window/recovery.hpp"
#include "app/window/shed_store.hpp"

class QLabel;
class QSplitter;
class QToolButton;

namespace fayline::app {

class ClockBand;
class ClockScreen;
class FindingsList;
class FormView;
class NewPieceDialog;
class PanelStack;
class PiecesList;
class QuestionLine;

// How long a window lets the hand rest before it does what can wait, and the clocks of its days.
struct WindowTimes {
    PlanningTimes planning;
    int copyAfter_ms = 2000;  // unsaved work is never older than this in its copy
    RunningDay::ReadClocks clocks = schedule::readClocks;
};

class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    // Copies of unsaved work are kept in `recoveryFolder`, logs of days that run in its folder "days", the user's shed
    // in `shedFile`.
    explicit MainWindow(const QString& recoveryFolder = Recovery::standardFolder(), QWidget* parent = nullptr,
                        const WindowTimes& times = {}, const QString& shedFile = ShedStore::standardFile());
    ~MainWindow() override;

    Document& document() { return document_; }
    const Shown& shown() const { return planning_.shown(); }

    // Opens `fileName`; a file that cannot be opened leaves everything as it is and is told in words. False then.
    bool openFile(const QString& fileName);
    // Asks what of the offsets in `fileName` to take for a new piece. False, and told why, when it holds nothing.
    bool importOffsets(const QString& fileName);
    // Writes the papers of all pieces into `folder`. What goes wrong is told, and false.
    bool savePapers(const QString& folder);
    void offerLeftBehind();  // unsaved work of a program that ended before its time
    void offerLeftDay();     // a gluing that was under way
    void tellOfShed();       // what was wrong with its file, if anything was

    // Its actions; the object of each is named as its enumerator.
    // clang-format off
    enum class Act {
        newBoat, open, save, saveAs, importOffsets, savePapers, quit,
        undo, redo, cut, copy, paste,
        nameBoat, ownGlues, trials, shed,
        addPiece, duplicatePiece, renamePiece, removePiece, pieceUp, pieceDown, nextPiece, previousPiece, compare,
        clock, dryFit, paperA4, paperLetter,
        zoomIn, zoomOut, zoomFit, bend, misfit, forces, gaps, pressure, onePanel, nextArea, previousArea,
        groundPaper, groundSlate, groundDesktop, otherGround, guide, sources, about
    };
    // clang-format on
    Q_ENUM(Act)

protected:
    void closeEvent(QCloseEvent* event) override;

private:
    // actions.cpp
    void makeActions();
    void makeViewActions();
    void makeSwitch(QAction* made, bool byDefault, const std::function<void(bool)>& set);
    void makeMenus();
    void makeUnits(QMenu* menu);
    void makeToolBar();
    QAction* action(const QString& name, const QString& iconName, const QString& text, const QKeySequence& key,
                    std::function<void()> run);
    QAction* action(Act act, const QString& iconName, const QString& text, const QKeySequence& key,
                    std::function<void()> run);
    QAction* of(Act act) const { return acts_.at(act); }
    QList<QAction*> of(std::initializer_list<Act> acts) const;
    void updateActions();
    void toFocus(const char* slot, const QKeySequence& key);
    void nextArea(int step);

    // boat_actions.cpp
    NewPieceDialog* askForPiece(const QString& name);
    void addPiece();
    void duplicatePiece();
    void renamePiece(int index, const QString& name);
    void nameBoat();
    void editOwnGlues();
    void askAndImport();
    void changeUnits(const std::function<void(units::Display&)>& change);
    QString freshName(const QString& wanted) const;

    // file_actions.cpp
    void startNew();
    void askAndOpen();
    void openSample(const QString& file);  // as a boat that was never saved
    void showGuide();
    bool save();
    bool saveAs();
    bool saveTo(const QString& fileName);
    bool mayLeave();  // no day runs and nothing is unsaved, or the user has decided
    void remember(const QString& fileName);
    void forget(const QString& fileName);
    QString lastGoodCopy(const QString& fileName) const;  // in words
    void fillRecent();
    void tell(const QString& what, const QString& why);

    // clock_actions.cpp
    ClockScreen* clockScreen();
    void openClock(bool dryFit);
    void dayIsOfThisBoatFromNowOn();
    bool dayIsOfThisBoat() const;
    bool bringBoatOfDay(bool dryFit);  // onto the table, or take the day into the one that lies there; false: later
    bool mayLeaveDay();                // none runs, or the user leaves it running
    int pieceOfDay();
    void keepRecord(const model::Record& record);

    // shed_actions.cpp
    void connectShed();
    void keepInShed(model::ShedPart part);
    void openShed();

    // print_actions.cpp
    bool planToPrint();
    std::shared_ptr<const plan::Plan> planForPaper(Paper paper);
    void print(Paper paper);
    void preview(Paper paper);
    void askAndSavePapers();
    void usePaperSize(QPageSize::PageSizeId size);

    // main_window.cpp
    void layOut();
    void connectAll();
    void followDocument();
    void followViews();
    void openFinding(plan::About about, std::optional<double> at_m, int point);
    void openQuestion(plan::Question question);
    void showPieces();
    void showUnderWay(const QString& what);
    void showAll();
    void showTitle();
    static QString wordOf(Ground ground);  // in the settings
    void chooseGround(Ground ground);
    void readSettings();
    void writeSettings() const;

    ShedStore shed_;
    Document document_;
    Planning planning_;
    Recovery recovery_;
    QTimer keepCopy_;

    std::map<Act, QAction*> acts_;
    // What the view shows or not, remembered from one start to the next under the action's name.
    struct Switch {
        QAction* action;
        bool byDefault;
        std::function<void(bool)> set;
    };
    std::vector<Switch> switches_;
    PiecesList* pieces_ = nullptr;
    ClockBand* band_ = nullptr;
    QLabel* noCopy_ = nullptr;  // a band as long as the unsaved work has no copy
    FormView* formView_ = nullptr;
    QuestionLine* questions_ = nullptr;
    FindingsList* findings_ = nullptr;
    PanelStack* panels_ = nullptr;
    QSplitter* across_ = nullptr;
    QSplitter* down_ = nullptr;
    QLabel* underWay_ = nullptr;
    QToolButton* stop_ = nullptr;
    QMenu* recent_ = nullptr;
    QActionGroup* grounds_ = nullptr;
    QActionGroup* paperSizes_ = nullptr;
    std::vector<std::pair<QAction*, std::function<bool(const units::Display&)>>> units_;
    QString daysFolder_;
    RunningDay::ReadClocks dayClocks_;
    std::unique_ptr<ClockScreen> clock_;  // made when it is first wanted; a window of its own
    quint64 dayBoat_ = 0;                 // Document::boatNumber of the boat that the day is of; 0: not known
    QString dayFile_;                     // where that boat is saved; empty: nowhere yet
};

}  // namespace fayline::app
