// The day's clock: opened for the piece that is shown, gone on with after a crash, its record taken into the boat.
#include <QDir>
#include <QFileInfo>
#include <QMessageBox>
#include <QPushButton>
#include <algorithm>

#include "app/clock/clock_screen.hpp"
#include "app/window/clock_band.hpp"
#include "app/window/main_window.hpp"

namespace fayline::app {

namespace {

// A day with a damaged log: what can be read of it is shown, and the file stays unless it is thrown away.
void tellOfLostDay(const LeftDay& left, QWidget* parent) {
    QMessageBox box(
        QMessageBox::Warning, MainWindow::tr("Fayline"),
        MainWindow::tr("A glue-up was running when the program stopped, on %1. It cannot go on.").arg(left.begun),
        QMessageBox::NoButton, parent);
    box.setObjectName("lostDay");
    box.setTextFormat(Qt::PlainText);
    box.setInformativeText(MainWindow::tr("%1 Below is what can be read of that day. Its log is %2.")
                               .arg(left.lost, QDir::toNativeSeparators(left.path)));
    box.setDetailedText(left.entries.isEmpty() ? MainWindow::tr("Nothing can be read.") : left.entries);
    QPushButton* throwAway = box.addButton(MainWindow::tr("&Discard"), QMessageBox::DestructiveRole);
    QPushButton* keep = box.addButton(MainWindow::tr("&Keep the file"), QMessageBox::RejectRole);
    box.setDefaultButton(keep);
    box.setEscapeButton(keep);
    box.exec();
    if (box.clickedButton() == throwAway) RunningDay::forget(left);
}

}  // namespace

ClockScreen* MainWindow::clockScreen() {
    if (clock_) return clock_.get();
    clock_ = std::make_unique<ClockScreen>(daysFolder_, dayClocks_);
    band_->follow(clock_.get());
    connect(clock_.get(), &ClockScreen::ended, this, &MainWindow::keepRecord);
    connect(&document_, &Document::fileNameChanged, clock_.get(), [this] {
        if (dayBoat_ == document_.boatNumber()) dayFile_ = document_.fileName();
    });
    connect(clock_.get(), &ClockScreen::ratesTaken, this, [this](const model::Rates& rates) {
        if (!dayIsOfThisBoat()) return tell(tr("The times were not taken."), tr("Another boat is open."));
        const int index = pieceOfDay();
        model::Piece piece = document_.boat().pieces[index];
        piece.crew.rates = rates;
        document_.endStep();
        document_.changePiece(index, {tr("Use the measured times"), {}, piece});
    });
    connect(clock_.get(), &ClockScreen::closed, this, [this] {
        updateActions();
        activateWindow();
    });
    return clock_.get();
}

void MainWindow::openClock(bool dryFit) {
    const int index = document_.currentPiece();
    if (index < 0 && !(clock_ && clock_->isRunning())) return;
    try {
        const bool running = clockScreen()->isRunning();
        clock_->prepare(document_.boat(), index, document_.fileName(), dryFit);
        if (!running) dayIsOfThisBoatFromNowOn();
    } catch (const std::exception& error) {
        return tell(tr("The clock cannot start for this piece."), QString::fromUtf8(error.what()));
    }
    clock_->showFullScreen();
    clock_->raise();
    clock_->activateWindow();
}

void MainWindow::dayIsOfThisBoatFromNowOn() {
    dayBoat_ = document_.boatNumber();
    dayFile_ = document_.fileName();
}

// The boat that has been on the table since, or the file of that name. A boat that was never saved is known by its
// piece: the ids of pieces made in the window are nowhere else.
bool MainWindow::dayIsOfThisBoat() const {
    if (dayBoat_ == document_.boatNumber()) return true;
    if (!dayFile_.isEmpty()) return dayFile_ == document_.fileName();
    return document_.pieceWithId(clock_->piece().id) >= 0;
}

bool MainWindow::bringBoatOfDay(bool dryFit) {
    if (dayIsOfThisBoat()) return true;
    const QString piece = QString::fromStdString(clock_->piece().name);
    // Above the clock, which fills the screen.
    QWidget* above = clock_->isVisible() ? static_cast<QWidget*>(clock_.get()) : this;
    QMessageBox box(QMessageBox::Question, tr("Fayline"),
                    dryFit ? tr("The dry fit of %1 is not of your open boat.").arg(piece)
                           : tr("The glue-up of %1 is not of your open boat.").arg(piece),
                    QMessageBox::NoButton, above);
    box.setObjectName("dayOfAnotherBoat");
    box.setTextFormat(Qt::PlainText);
    box.setInformativeText((dayFile_.isEmpty() ? tr("You never saved its boat.")
                                               : tr("Its boat is %1.").arg(QDir::toNativeSeparators(dayFile_))) +
                           ' ' + tr("Keep it for later, and Fayline asks again when it starts."));
    QPushButton* open =
        QFileInfo::exists(dayFile_) ? box.addButton(tr("&Open that boat"), QMessageBox::AcceptRole) : nullptr;
    QPushButton* add = box.addButton(tr("&Add the piece to this boat"), QMessageBox::ActionRole);
    QPushButton* later = box.addButton(tr("&Keep for later"), QMessageBox::RejectRole);
    box.setDefaultButton(open ? open : later);
    box.setEscapeButton(later);
    box.exec();
    if (open && box.clickedButton() == open) {
        const QString file = dayFile_;
        if (!mayLeave() || !openFile(file)) return false;
    } else if (box.clickedButton() != add) {
        return false;
    }
    dayIsOfThisBoatFromNowOn();
    return true;
}

bool MainWindow::mayLeaveDay() {
    if (!clock_ || !clock_->isRunning()) return true;
    QMessageBox box(QMessageBox::Question, tr("Fayline"),
                    tr("The clock of %1 is running.").arg(QString::fromStdString(clock_->piece().name)),
                    QMessageBox::NoButton, this);
    box.setObjectName("dayRuns");
    box.setTextFormat(Qt::PlainText);
    box.setInformativeText(
        tr("The glue's time runs on. The record goes into this boat only. If you close Fayline, it asks again when it "
           "starts."));
    QPushButton* stay = box.addButton(tr("&Stay"), QMessageBox::RejectRole);
    QPushButton* leave = box.addButton(tr("&Leave it running"), QMessageBox::AcceptRole);
    box.setDefaultButton(stay);
    box.setEscapeButton(stay);
    box.exec();
    return box.clickedButton() == leave;
}

// The piece that the day is of, by its id; where it is gone from the boat, the piece as it was then is added.
int MainWindow::pieceOfDay() {
    const int index = document_.pieceWithId(clock_->piece().id);
    if (index >= 0) return index;
    document_.addPiece(clock_->piece());
    return document_.currentPiece();
}

// What happened is of the boat from now on: one step that can be undone, and in the copy of unsaved work before the
// day's log goes.
void MainWindow::keepRecord(const model::Record& record) {
    if (!bringBoatOfDay(record.dryFit)) return;  // the log stays
    const int index = pieceOfDay();
    model::Piece piece = document_.boat().pieces[index];
    // After a crash in between it may be there already.
    if (std::ranges::find(piece.record, record) == piece.record.end()) {
        piece.record.push_back(record);
        document_.endStep();
        document_.changePiece(index, {record.dryFit ? tr("Record the dry fit") : tr("Record the glue-up"), {}, piece});
    }
    if (document_.hasUnsavedChanges() && !recovery_.keepNow(document_.boat(), document_.fileName())) return;
    clock_->recordIsKept();
}

// A day that was running when the program ended. The boat it is of is opened first, where it is not on the table.
void MainWindow::offerLeftDay() {
    for (const LeftDay& left : RunningDay::leftBehind(daysFolder_)) {
        if (!left.lost.isEmpty()) {
            tellOfLostDay(left, this);
            continue;
        }
        QMessageBox box(QMessageBox::Question, tr("Fayline"),
                        left.dryFit ? tr("A dry fit of %1 was running when Fayline stopped.").arg(left.piece)
                                    : tr("The glue-up of %1 was running when Fayline stopped.").arg(left.piece),
                        QMessageBox::NoButton, this);
        box.setObjectName("leftDay");
        box.setTextFormat(Qt::PlainText);
        box.setInformativeText(tr("It began on %1. Nothing is lost, and the glue's time has run on.").arg(left.begun));
        QPushButton* on = box.addButton(tr("&Go on with the day"), QMessageBox::AcceptRole);
        QPushButton* throwAway = box.addButton(tr("&Discard"), QMessageBox::DestructiveRole);
        QPushButton* later = box.addButton(tr("Ask &again next time"), QMessageBox::RejectRole);
        box.setDefaultButton(on);
        box.setEscapeButton(later);
        box.exec();
        if (box.clickedButton() == throwAway) RunningDay::forget(left);
        if (box.clickedButton() != on) continue;
        if (!left.fileName.isEmpty() && left.fileName != document_.fileName() && QFileInfo::exists(left.fileName) &&
            !document_.hasUnsavedChanges()) {
            openFile(left.fileName);
        }
        try {
            dayBoat_ = 0;
            dayFile_ = left.fileName;
            clockScreen()->goOn(left);
            if (dayIsOfThisBoat()) dayIsOfThisBoatFromNowOn();
        } catch (const std::exception& error) {
            tell(tr("The day cannot go on."), QString::fromUtf8(error.what()));
            continue;
        }
        clock_->showFullScreen();
        return;  // one day in one window
    }
}

}  // namespace fayline::app
