// One window, one boat: pieces on the left, the drawing with its questions in the middle, the panels on the right.
//
// The window makes every undo step, asks the planner, and hands one and the same Shown to all views.
#pragma once

#include <QActionGroup>
#include <QMainWindow>
#include <QTimer>
#include <functional>
#include <memory>

#include "app/clock/running_day.hpp"
#include "app/look/shown.hpp"
#include "app/look/theme.hpp"
#include "app/paper/papers.hpp"
#include "app/window/document.hpp"
#include "app/window/piece_marks.hpp"
#include "app/window/planner.hpp"
#include "app/window/recovery.hpp"

class QSplitter;

namespace fayline::app {

class ClockScreen;
class FindingsList;
class FormView;
class PanelStack;
class PiecesList;
class QuestionLine;

// How long a window lets the hand rest before it does what can wait, and the clocks of its days.
struct WindowTimes {
    int studiesAfter_ms = 200;  // of the piece on the table
    int marksAfter_ms = 333;    // of the other pieces
    int copyAfter_ms = 2000;    // unsaved work is never older than this in its copy
    RunningDay::ReadClocks clocks = schedule::readClocks;
};

class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    // Copies of unsaved work are kept in `recoveryFolder`, logs of days that run in its folder "days".
    explicit MainWindow(const QString& recoveryFolder = Recovery::standardFolder(), QWidget* parent = nullptr,
                        const WindowTimes& times = {});
    ~MainWindow() override;

    Document& document() { return document_; }
    const Shown& shown() const { return shown_; }

    // Opens `fileName`; a file that cannot be opened leaves everything as it is and is told in words. False then.
    bool openFile(const QString& fileName);
    // Adds a piece with the offsets in `fileName`, as one step; the lines that could not be read are told with their
    // numbers. False, told why, and nothing changed when there are none at all.
    bool importOffsets(const QString& fileName);
    // Writes the papers of all pieces into `folder`. What goes wrong is told, and false.
    bool savePapers(const QString& folder);
    void offerLeftBehind();  // unsaved work of a program that ended before its time
    void offerLeftDay();     // a gluing that was under way

protected:
    void closeEvent(QCloseEvent* event) override;

private:
    // actions.cpp
    void makeActions();
    void makeMenus();
    void makeToolBar();
    QAction* action(const QString& name, const QString& iconName, const QString& text, const QKeySequence& key,
                    std::function<void()> run);
    QAction* named(const char* name) const { return findChild<QAction*>(name); }
    void updateActions();
    void toFocus(const char* slot, const QKeySequence& key);
    void nextArea(int step);

    // boat_actions.cpp
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
    bool save();
    bool saveAs();
    bool saveTo(const QString& fileName);
    bool mayLeave();  // no day runs and nothing is unsaved, or the user has decided
    void remember(const QString& fileName);
    void forget(const QString& fileName);
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

    // print_actions.cpp
    bool planToPrint();
    std::shared_ptr<const plan::Plan> planForPaper(Paper paper);
    void print(Paper paper);
    void preview(Paper paper);
    void askAndSavePapers();

    // main_window.cpp
    void layOut();
    void connectAll();
    void replan();
    void takePlan(quint64 request, const std::shared_ptr<const plan::Plan>& plan);
    void takeDeepened(quint64 request, const std::shared_ptr<const plan::Plan>& plan);
    void takeFailure(quint64 request, const QString& why);
    void takeRefusal(quint64 request, const QString& path, const QString& why);
    void showAnswer();
    void showPieces();
    std::optional<PieceMark> markOfShown() const;  // none: not answered yet, or of another state of the piece
    void showAll();
    void showTitle();
    void chooseGround(Ground ground);
    void readSettings();
    void writeSettings() const;

    Document document_;
    Planner planner_;
    PieceMarks marks_;
    Recovery recovery_;
    plan::Shop shop_;  // of the boat as it was last planned
    Shown shown_;
    quint64 firstOfPiece_ = 0;  // the first request for the piece that is shown; older answers are of another
    quint64 lastAsked_ = 0;
    bool fitWhenPlanned_ = true;
    bool answered_ = true;  // the last request has its answer
    QTimer late_;           // when the planner takes longer than a frame, the piece is shown without it
    QTimer keepCopy_;

    PiecesList* pieces_ = nullptr;
    FormView* formView_ = nullptr;
    QuestionLine* questions_ = nullptr;
    FindingsList* findings_ = nullptr;
    PanelStack* panels_ = nullptr;
    QSplitter* across_ = nullptr;
    QSplitter* down_ = nullptr;
    QMenu* recent_ = nullptr;
    QActionGroup* grounds_ = nullptr;
    std::vector<std::pair<QAction*, std::function<bool(const units::Display&)>>> units_;
    QString daysFolder_;
    RunningDay::ReadClocks dayClocks_;
    std::unique_ptr<ClockScreen> clock_;  // made when it is first wanted; a window of its own
    quint64 dayBoat_ = 0;                 // Document::boatNumber of the boat that the day is of; 0: not known
    QString dayFile_;                     // where that boat is saved; empty: nowhere yet
};

}  // namespace fayline::app
