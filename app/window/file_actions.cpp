// Opening, saving, recent files, and what is asked before unsaved changes would be lost.
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QMenu>
#include <QMessageBox>
#include <QPushButton>
#include <QSettings>
#include <QStatusBar>

#include "app/window/guide_dialog.hpp"
#include "app/window/main_window.hpp"
#include "app/window/new_piece_dialog.hpp"
#include "app/window/panel_stack.hpp"
#include "core/io/file.hpp"
#include "core/math/count.hpp"
#include "core/model/cut_short.hpp"

namespace fayline::app {

namespace {

constexpr int mostRecent = 8;
constexpr int mostLines = 10;  // of a reason that is told; the rest is behind a button

}  // namespace

void MainWindow::tell(const QString& what, const QString& why) {
    QMessageBox box(QMessageBox::Warning, tr("Fayline"), what, QMessageBox::Ok, this);
    box.setTextFormat(Qt::PlainText);
    const QStringList lines = why.split('\n');
    box.setInformativeText(lines.size() <= mostLines
                               ? why
                               : QStringList(lines.mid(0, mostLines)).join('\n') +
                                     tr("\nand %n more", nullptr, math::countOf(lines) - mostLines));
    if (lines.size() > mostLines) box.setDetailedText(why);
    box.exec();
}

void MainWindow::startNew() {
    if (!mayLeave()) return;
    model::Boat fresh = document_.newBoat();
    const QString name = QString::fromStdString(fresh.pieces.front().name);
    fresh.pieces.clear();
    auto* dialog = new NewPieceDialog(fresh, name, true, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, [this, dialog, fresh]() mutable {
        fresh.name = dialog->boatName().toStdString();
        fresh.pieces = {document_.withShed(dialog->piece())};
        document_.startNew(fresh);
        if (dialog->isToBeTyped()) panels_->goToPoint(-1);
    });
    dialog->open();
}

void MainWindow::askAndOpen() {
    const QString folder = QSettings().value("folder").toString();
    const QString fileName =
        QFileDialog::getOpenFileName(this, tr("Open a boat"), folder, tr("Boats (*.fayline);;All files (*)"));
    if (!fileName.isEmpty() && mayLeave()) openFile(fileName);
}

void MainWindow::openSample(const QString& file) {
    if (!mayLeave()) return;
    const QByteArray written = builtIn("samples", file);
    document_.startNew(io::readBoat({written.constData(), size_t(written.size())}));
}

void MainWindow::showGuide() {
    auto* guide = findChild<GuideDialog*>();
    if (!guide) guide = new GuideDialog(this);
    guide->open({});
}

QString MainWindow::lastGoodCopy(const QString& fileName) const {
    const std::optional<LeftBehind> copy = recovery_.lastGoodCopyOf(QFileInfo(fileName).absoluteFilePath());
    if (!copy) return tr("Fayline has no copy of it; look for one among your backups.");
    return tr("The last good copy is of %1: %2").arg(copy->when, QDir::toNativeSeparators(recovery_.copyPath(*copy)));
}

bool MainWindow::openFile(const QString& fileName) {
    try {
        document_.open(fileName);
    } catch (const model::CutShort& error) {
        tell(tr("The file %1 is cut short. Your open boat is unchanged.").arg(QDir::toNativeSeparators(fileName)),
             lastGoodCopy(fileName) + QStringLiteral("\n") + QString::fromUtf8(error.what()));
        return false;
    } catch (const std::exception& error) {
        if (!QFileInfo::exists(fileName)) forget(fileName);
        tell(tr("Cannot open %1. Your open boat is unchanged.").arg(QDir::toNativeSeparators(fileName)),
             QString::fromUtf8(error.what()));
        return false;
    }
    remember(document_.fileName());
    return true;
}

bool MainWindow::save() {
    if (document_.fileName().isEmpty()) return saveAs();
    if (!document_.changedOnDisk()) return saveTo(document_.fileName());
    QMessageBox box(QMessageBox::Warning, tr("Fayline"),
                    tr("Someone else has changed %1 since you opened or saved it.")
                        .arg(QDir::toNativeSeparators(document_.fileName())),
                    QMessageBox::Cancel, this);
    box.setObjectName("changedOnDisk");
    box.setTextFormat(Qt::PlainText);
    box.setInformativeText(tr("Your boat then replaces what they wrote."));
    QPushButton* anyway = box.addButton(tr("Save &over theirs"), QMessageBox::DestructiveRole);
    QPushButton* elsewhere = box.addButton(tr("Save &as..."), QMessageBox::AcceptRole);
    box.setDefaultButton(elsewhere);
    box.setEscapeButton(QMessageBox::Cancel);
    box.exec();
    if (box.clickedButton() == anyway) return saveTo(document_.fileName());
    return box.clickedButton() == elsewhere && saveAs();
}

bool MainWindow::saveAs() {
    QString wanted = document_.fileName();
    if (wanted.isEmpty()) {
        QString name =
            QString::fromStdString(document_.boat().name).toLower().simplified().replace(' ', '_').remove('/');
        if (name.isEmpty()) name = tr("boat");
        wanted = QDir(QSettings().value("folder", QDir::homePath()).toString()).filePath(name + ".fayline");
    }
    QFileDialog dialog(this, tr("Save the boat"), wanted, tr("Boats (*.fayline);;All files (*)"));
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix("fayline");
    dialog.selectFile(wanted);
    return dialog.exec() == QDialog::Accepted && saveTo(dialog.selectedFiles().constFirst());
}

bool MainWindow::saveTo(const QString& fileName) {
    try {
        document_.save(fileName);
    } catch (const std::exception& error) {
        tell(tr("%1 was not saved.").arg(QDir::toNativeSeparators(fileName)), QString::fromUtf8(error.what()));
        return false;
    }
    remember(document_.fileName());
    statusBar()->showMessage(tr("Saved as %1").arg(QDir::toNativeSeparators(document_.fileName())), 5000);
    return true;
}

bool MainWindow::mayLeave() {
    if (!mayLeaveDay()) return false;
    if (!document_.hasUnsavedChanges()) return true;
    const QString name = QString::fromStdString(document_.boat().name);
    QMessageBox box(QMessageBox::Question, tr("Fayline"),
                    name.isEmpty() ? tr("The boat has changes that are not saved.")
                                   : tr("%1 has changes that are not saved.").arg(name),
                    QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, this);
    box.setObjectName("unsavedChanges");
    box.setTextFormat(Qt::PlainText);
    box.setDefaultButton(QMessageBox::Save);
    box.setEscapeButton(QMessageBox::Cancel);
    switch (box.exec()) {
        case QMessageBox::Save:
            return save();
        case QMessageBox::Discard:
            return true;
        default:
            return false;
    }
}

void MainWindow::remember(const QString& fileName) {
    QSettings settings;
    QStringList files = settings.value("recent").toStringList();
    files.removeAll(fileName);
    files.prepend(fileName);
    settings.setValue("recent", QStringList(files.mid(0, mostRecent)));
    settings.setValue("folder", QFileInfo(fileName).absolutePath());
}

void MainWindow::forget(const QString& fileName) {
    QSettings settings;
    QStringList files = settings.value("recent").toStringList();
    files.removeAll(QFileInfo(fileName).absoluteFilePath());
    settings.setValue("recent", files);
}

void MainWindow::fillRecent() {
    recent_->clear();
    const QStringList files = QSettings().value("recent").toStringList();
    for (const QString& file : files) {
        QAction* entry = recent_->addAction(QString("&%1  %2")
                                                .arg(recent_->actions().size() + 1)
                                                .arg(QDir::toNativeSeparators(file).replace("&", "&&")));
        connect(entry, &QAction::triggered, this, [this, file] {
            if (mayLeave()) openFile(file);
        });
    }
    if (files.isEmpty()) recent_->addAction(tr("No recent boats"))->setEnabled(false);
}

void MainWindow::offerLeftBehind() {
    for (const LeftBehind& copy : recovery_.leftBehind()) {
        QMessageBox box(QMessageBox::Question, tr("Fayline"),
                        tr("Fayline stopped unexpectedly and left unsaved work on %1.")
                            .arg(copy.boatName.isEmpty() ? tr("a boat without a name") : copy.boatName),
                        QMessageBox::NoButton, this);
        box.setObjectName("leftBehind");
        box.setTextFormat(Qt::PlainText);
        box.setInformativeText(copy.fileName.isEmpty()
                                   ? tr("Copy of %1. You never saved the boat.").arg(copy.when)
                                   : tr("Copy of %1 of %2. The file itself is as you last saved it.")
                                         .arg(copy.when, QDir::toNativeSeparators(copy.fileName)));
        QPushButton* open = box.addButton(tr("&Open the copy"), QMessageBox::AcceptRole);
        QPushButton* throwAway = box.addButton(tr("&Discard"), QMessageBox::DestructiveRole);
        QPushButton* later = box.addButton(tr("Ask &again next time"), QMessageBox::RejectRole);
        box.setDefaultButton(open);
        box.setEscapeButton(later);
        box.exec();
        if (box.clickedButton() == throwAway) recovery_.forget(copy);
        if (box.clickedButton() != open) continue;
        try {
            document_.recover(recovery_.read(copy), copy.fileName);
        } catch (const std::exception& error) {
            tell(tr("Cannot open the copy."), QString::fromUtf8(error.what()));
            continue;
        }
        recovery_.takeOver(copy, document_.boat());
        return;  // one boat in one window; the others are offered next time
    }
}

}  // namespace fayline::app
