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
#include "app/window/new_piece_dialog.hpp"
#include "app/window/panel_stack.hpp"
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
    askForPiece(name);
}

NewPieceDialog* MainWindow::askForPiece(const QString& name) {
    auto* dialog = new NewPieceDialog(document_.boat(), name, false, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, [this, dialog] {
        // A copy keeps the tools, glue and crew of what it is of.
        const bool isCopy = dialog->kind() == NewPieceDialog::copy;
        document_.addPiece(isCopy ? dialog->piece() : document_.withShed(dialog->piece()));
        if (dialog->isToBeTyped()) panels_->goToPoint(-1);
    });
    dialog->open();
    return dialog;
}

void MainWindow::duplicatePiece() {
    if (document_.currentPiece() < 0) return;
    model::Piece copy = model::copyOf(document_.boat().pieces[document_.currentPiece()], {});
    copy.name = freshName(QString::fromStdString(copy.name)).toStdString();
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
    const QString fileName = QFileDialog::getOpenFileName(this, tr("Import offsets"), folder, offsetsFilter());
    if (!fileName.isEmpty()) importOffsets(fileName);
}

bool MainWindow::importOffsets(const QString& fileName) {
    const QFileInfo file(fileName);
    QString written;
    try {
        written = readOffsetsFile(fileName);
    } catch (const units::InputError& error) {
        tell(tr("No offsets were taken."), QString::fromUtf8(error.what()));
        return false;
    }
    NewPieceDialog* dialog = askForPiece(freshName(file.completeBaseName()));
    if (dialog->takeOffsets(file.fileName(), written)) return true;
    dialog->reject();
    tell(tr("There are no offsets in %1.").arg(QDir::toNativeSeparators(fileName)),
         tr("Choose a file with columns of x and y."));
    return false;
}

}  // namespace fayline::app
