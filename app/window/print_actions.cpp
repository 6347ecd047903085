// Papers: to a printer, to the screen before it, into PDF files.
#include <QDir>
#include <QFileDialog>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QSettings>
#include <QStatusBar>

#include "app/window/at_work.hpp"
#include "app/window/main_window.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

// A paper is only made of a plan of the piece as it stands; an outdated one would be cut into wood.
bool MainWindow::planToPrint() {
    const QString& reason = shown().reason;
    if (shown().plan && planning_.isAnswered() && reason.isEmpty()) return true;
    tell(tr("This piece has no plan yet, so nothing prints."), reason.isEmpty() ? tr("Calculating") : reason);
    return false;
}

// The plan with every study, on the worker if the hand has not rested yet; null: stopped.
std::shared_ptr<const plan::Plan> MainWindow::planForPaper(Paper paper) {
    if (plan::isStudied(*shown().plan)) return shown().plan;
    std::optional<plan::Plan> whole;
    const std::shared_ptr<const plan::Plan> plan = shown().plan;
    const model::Piece piece = shown().piece;
    const plan::Shop shop = planning_.shop();
    try {
        runAtWork(this, tr("Calculating the paper"),
                  [&](const AtWork& at) { whole = plan::deepen(piece, shop, *plan, at.stop); });
    } catch (const std::exception& error) {
        tell(tr("%1 was not printed.").arg(paperName(paper)), QString::fromUtf8(error.what()));
    }
    return whole ? std::make_shared<const plan::Plan>(std::move(*whole)) : nullptr;
}

// Laid out and painted on the worker: a painter on a printer may be in any thread, and a form at full size is many
// sheets. Whatever goes wrong there is told.
void MainWindow::print(Paper paper) {
    if (!planToPrint()) return;
    const model::Boat boat = document_.boat();
    const model::Piece piece = shown().piece;
    const std::shared_ptr<const plan::Plan> plan = planForPaper(paper);
    if (!plan) return;
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageLayout(defaultPageLayout());
    printer.setDocName(QString("%1, %2").arg(QString::fromStdString(piece.name), paperName(paper)));
    QPrintDialog dialog(&printer, this);
    if (dialog.exec() != QDialog::Accepted) return;
    try {
        runAtWork(this, tr("Printing: %1").arg(paperName(paper)), [&](const AtWork& at) {
            const PaperWatch watch{at.stop, at.onStep};
            printPaper(paper, boat, piece, *plan, printer, &watch);
        });
    } catch (const std::exception& error) {
        tell(tr("%1 was not printed.").arg(paperName(paper)), QString::fromUtf8(error.what()));
    }
}

// The preview asks for its pages in the middle of its own work and cannot wait for another thread without letting the
// user into that; so they are painted here, of a plan that is worked out before.
void MainWindow::preview(Paper paper) {
    if (!planToPrint()) return;
    const model::Boat boat = document_.boat();
    const model::Piece piece = shown().piece;
    const std::shared_ptr<const plan::Plan> plan = planForPaper(paper);
    if (!plan) return;
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageLayout(defaultPageLayout());
    QPrintPreviewDialog dialog(&printer, this);
    dialog.setWindowTitle(paperName(paper));
    connect(&dialog, &QPrintPreviewDialog::paintRequested, this, [&](QPrinter* onto) {
        try {
            printPaper(paper, boat, piece, *plan, *onto);
        } catch (const std::exception& error) {
            tell(tr("%1 was not printed.").arg(paperName(paper)), QString::fromUtf8(error.what()));
        }
    });
    dialog.resize(1000, 720);
    dialog.exec();
}

// For all papers from now on. What a dialog of printing has is for that one printing: a printer chosen there brings a
// size of its own.
void MainWindow::usePaperSize(QPageSize::PageSizeId size) {
    if (setPaperSize(size)) showAll();
}

void MainWindow::askAndSavePapers() {
    const QString folder = QFileDialog::getExistingDirectory(this, tr("Folder for the papers of all pieces"),
                                                             QSettings().value("folder").toString());
    if (!folder.isEmpty()) savePapers(folder);
}

bool MainWindow::savePapers(const QString& folder) {
    try {
        const model::Boat boat = document_.boat();
        std::optional<QStringList> files;
        runAtWork(this, tr("Making the papers of all pieces"), [&](const AtWork& at) {
            files = writePapers(boat, folder, defaultPageLayout(), {at.stop, at.onStep});
        });
        if (!files) {
            statusBar()->showMessage(tr("The papers were not saved: stopped."), 8000);
            return false;
        }
        statusBar()->showMessage(
            tr("%n papers saved in %1", nullptr, math::countOf(*files)).arg(QDir::toNativeSeparators(folder)), 8000);
        return true;
    } catch (const std::exception& error) {
        tell(tr("The papers were not saved."), QString::fromUtf8(error.what()));
        return false;
    }
}

}  // namespace fayline::app
