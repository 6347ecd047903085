// Papers: to a printer, to the screen before it, into PDF files.
#include <QApplication>
#include <QDir>
#include <QFileDialog>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QSettings>
#include <QStatusBar>

#include "app/window/main_window.hpp"

namespace fayline::app {

namespace {

// While papers are drawn the pointer says so.
class Waiting {
public:
    Waiting() { QApplication::setOverrideCursor(Qt::WaitCursor); }
    ~Waiting() { QApplication::restoreOverrideCursor(); }
};

}  // namespace

// A paper is only made of a plan of the piece as it stands; an outdated one would be cut into wood.
bool MainWindow::planToPrint() {
    if (shown_.plan && answered_ && shown_.reason.isEmpty()) return true;
    tell(tr("There is no plan of this piece as it stands, so nothing is put on paper."),
         shown_.reason.isEmpty() ? tr("The plan is being made.") : shown_.reason);
    return false;
}

// The plan with what takes longer to work out, which the closing order on paper needs; worked out now if the hand has
// not rested yet.
std::shared_ptr<const plan::Plan> MainWindow::planForPaper() const {
    if (shown_.plan->holdingStudy) return shown_.plan;
    const std::atomic<bool> stop = false;
    std::optional<plan::Plan> deep = plan::deepen(shown_.piece, shop_, *shown_.plan, stop);
    return deep ? std::make_shared<const plan::Plan>(std::move(*deep)) : shown_.plan;
}

// Onto `printer`; whatever goes wrong there is told, never thrown through the dialog.
void MainWindow::putOnto(QPrinter& printer, Paper paper) {
    try {
        const Waiting waiting;
        printPaper(paper, document_.boat(), shown_.piece, *planForPaper(), printer);
    } catch (const std::exception& error) {
        tell(tr("%1 was not printed.").arg(paperName(paper)), QString::fromUtf8(error.what()));
    }
}

void MainWindow::print(Paper paper) {
    if (!planToPrint()) return;
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageLayout(defaultPageLayout());
    printer.setDocName(QString("%1, %2").arg(QString::fromStdString(shown_.piece.name), paperName(paper)));
    QPrintDialog dialog(&printer, this);
    if (dialog.exec() == QDialog::Accepted) putOnto(printer, paper);
}

void MainWindow::preview(Paper paper) {
    if (!planToPrint()) return;
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageLayout(defaultPageLayout());
    QPrintPreviewDialog dialog(&printer, this);
    dialog.setWindowTitle(paperName(paper));
    connect(&dialog, &QPrintPreviewDialog::paintRequested, this,
            [this, paper](QPrinter* onto) { putOnto(*onto, paper); });
    dialog.resize(1000, 720);
    dialog.exec();
}

void MainWindow::askAndSavePapers() {
    const QString folder = QFileDialog::getExistingDirectory(this, tr("Folder for the papers of all pieces"),
                                                             QSettings().value("folder").toString());
    if (!folder.isEmpty()) savePapers(folder);
}

bool MainWindow::savePapers(const QString& folder) {
    try {
        const Waiting waiting;
        const QStringList files = writePapers(document_.boat(), folder, defaultPageLayout());
        statusBar()->showMessage(
            tr("%n papers saved in %1", nullptr, int(files.size())).arg(QDir::toNativeSeparators(folder)), 8000);
        return true;
    } catch (const std::exception& error) {
        tell(tr("The papers were not saved."), QString::fromUtf8(error.what()));
        return false;
    }
}

}  // namespace fayline::app
