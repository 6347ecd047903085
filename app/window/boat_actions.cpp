// What changes the boat and its list of pieces.
#include <QDialog>
#include <QDialogButtonBox>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QPlainTextEdit>
#include <QSettings>
#include <QStatusBar>

#include "app/panels/offsets_text.hpp"
#include "app/window/glues_dialog.hpp"
#include "app/window/main_window.hpp"
#include "app/window/pieces_list.hpp"
#include "core/io/file.hpp"
#include "core/math/count.hpp"
#include "core/model/new_piece.hpp"

namespace fayline::app {

// `wanted`, or with the first number behind it that makes it differ from every name in the boat.
QString MainWindow::freshName(const QString& wanted) const {
    const auto taken = [this](const QString& name) {
        return std::ranges::any_of(document_.boat().pieces, [&](const model::Piece& piece) {
            return QString::fromStdString(piece.name) == name;
        });
    };
    if (!taken(wanted)) return wanted;
    for (int number = 2;; ++number) {
        const QString name = QString("%1 %2").arg(wanted).arg(number);
        if (!taken(name)) return name;
    }
}

void MainWindow::addPiece() {
    QString name;
    for (int number = math::countOf(document_.boat().pieces) + 1; name.isEmpty(); ++number) {
        const QString wanted = tr("Piece %1").arg(number);
        if (freshName(wanted) == wanted) name = wanted;
    }
    document_.addPiece(document_.withShed(model::newPiece(name.toStdString(), document_.boat().display)));
}

void MainWindow::duplicatePiece() {
    if (document_.currentPiece() < 0) return;
    model::Piece copy = document_.boat().pieces[document_.currentPiece()];
    copy.name = freshName(QString::fromStdString(copy.name)).toStdString();
    copy.id.clear();      // the copy gets its own
    copy.record.clear();  // what happened at the glue-up of one piece did not happen to its copy
    document_.addPiece(copy);
}

void MainWindow::renamePiece(int index, const QString& name) {
    if (index < 0 || index >= math::countOf(document_.boat().pieces)) return;
    model::Piece after = document_.boat().pieces[index];
    if (name.isEmpty()) {
        statusBar()->showMessage(tr("A piece needs a name; it keeps the one it had."), 5000);
        showPieces();
        return;
    }
    const QString before = QString::fromStdString(after.name);
    after.name = name.toStdString();
    document_.changePiece(index, {tr("Rename %1 to %2").arg(before, name), {}, after});
}

void MainWindow::nameBoat() {
    QDialog dialog(this);
    dialog.setObjectName("nameBoatDialog");
    dialog.setWindowTitle(tr("Name and notes"));
    auto* name = new QLineEdit(QString::fromStdString(document_.boat().name));
    name->setObjectName("boatName");
    auto* notes = new QPlainTextEdit(QString::fromStdString(document_.boat().notes));
    notes->setObjectName("boatNotes");
    notes->setTabChangesFocus(true);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
    connect(buttons, &QDialogButtonBox::accepted, &dialog, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    auto* form = new QFormLayout(&dialog);
    form->setContentsMargins(2 * gridStep, 2 * gridStep, 2 * gridStep, 2 * gridStep);
    form->addRow(tr("&Name of the boat"), name);
    form->addRow(tr("N&otes"), notes);
    form->addRow(buttons);
    dialog.resize(480, 320);
    if (dialog.exec() != QDialog::Accepted) return;
    model::Boat after = document_.boat();
    after.name = name->text().trimmed().toStdString();
    after.notes = notes->toPlainText().toStdString();
    document_.changeBoat(tr("Change name and notes"), {}, after);
}

void MainWindow::editOwnGlues() {
    GluesDialog dialog(document_.boat(), this);
    if (dialog.exec() != QDialog::Accepted) return;
    model::Boat after = document_.boat();
    after.adhesives = dialog.glues();
    document_.changeBoat(tr("Change own glues"), {}, after);
}

void MainWindow::changeUnits(const std::function<void(units::Display&)>& change) {
    model::Boat after = document_.boat();
    change(after.display);
    document_.changeBoat(tr("Change units"), {}, after);
    updateActions();  // the unit that is chosen again stays checked
}

void MainWindow::askAndImport() {
    const QString folder = QSettings().value("folder").toString();
    const QString fileName = QFileDialog::getOpenFileName(this, tr("Import offsets"), folder,
                                                          tr("Offsets in columns (*.csv *.tsv *.txt);;All files (*)"));
    if (!fileName.isEmpty()) importOffsets(fileName);
}

bool MainWindow::importOffsets(const QString& fileName) {
    QString problems;
    const std::vector<model::Point> points = readOffsetsFile(fileName, document_.boat().display.lengths, &problems);
    if (points.empty()) {
        tell(tr("There are no offsets in %1.").arg(QDir::toNativeSeparators(fileName)), problems);
        return false;
    }
    model::Piece piece =
        model::newPiece(freshName(QFileInfo(fileName).completeBaseName()).toStdString(), document_.boat().display);
    piece.line.points = points;
    document_.addPiece(document_.withShed(piece));
    if (!problems.isEmpty())
        tell(tr("Some lines of %1 were skipped.").arg(QDir::toNativeSeparators(fileName)), problems);
    return true;
}

}  // namespace fayline::app
