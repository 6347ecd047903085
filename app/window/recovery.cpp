#include "app/window/recovery.hpp"

#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QLocale>
#include <QSaveFile>
#include <QStandardPaths>
#include <QUuid>

#include "app/look/lock.hpp"
#include "app/look/text.hpp"
#include "core/io/file.hpp"

namespace fayline::app {

Recovery::Recovery(const QString& folder, QObject* parent)
    : QObject(parent), folder_(folder), id_(QUuid::createUuid().toString(QUuid::WithoutBraces)) {
    writing_.setMaxThreadCount(1);
    connect(this, &Recovery::kept, this, &Recovery::forgetTakenOver);
}

Recovery::~Recovery() {
    writing_.waitForDone();
}

QString Recovery::standardFolder() {
    return QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) + "/unsaved";
}

QString Recovery::path(const QString& id, const QString& ending) const {
    return folder_ + "/" + id + ending;
}

void Recovery::lock() {
    if (mine_) return;
    QDir().mkpath(folder_);
    auto lock = std::make_unique<QLockFile>(path(id_, ".lock"));
    if (lock->tryLock(0))
        mine_ = std::move(lock);  // else the copy cannot be written either, which is told, or next time
}

void Recovery::keep(const model::Boat& boat, const QString& fileName) {
    lock();
    writing_.start([this, boat, fileName] { write(boat, fileName); });
}

bool Recovery::keepNow(const model::Boat& boat, const QString& fileName) {
    lock();
    waitForWriting();
    return write(boat, fileName);
}

bool Recovery::write(const model::Boat& boat, const QString& fileName) {
    try {
        QSaveFile of(path(id_, ".of"));
        if (!of.open(QIODevice::WriteOnly) || of.write(fileName.toUtf8()) < 0 || !of.commit()) {
            emit failed(of.errorString());
            return false;
        }
        const std::filesystem::path copy = pathOf(path(id_, ".fayline"));
        io::saveBoat(boat, copy);
        if (!(io::loadBoat(copy).pieces == boat.pieces)) {
            emit failed(tr("what was written does not read back the same"));
            return false;
        }
    } catch (const std::exception& error) {
        emit failed(QString::fromUtf8(error.what()));
        return false;
    }
    emit kept();
    return true;
}

void Recovery::takeOver(const LeftBehind& copy, const model::Boat& boat) {
    takenOver_ = copy;
    keepNow(boat, copy.fileName);
}

void Recovery::forgetTakenOver() {
    if (takenOver_) forget(*takenOver_);
    takenOver_.reset();
}

void Recovery::drop() {
    forgetTakenOver();
    writing_.start([copy = path(id_, ".fayline"), of = path(id_, ".of")] {
        QFile::remove(copy);
        QFile::remove(of);
    });
}

void Recovery::waitForWriting() {
    writing_.waitForDone();
}

std::vector<LeftBehind> Recovery::leftBehind() const {
    std::vector<LeftBehind> found;
    for (const QFileInfo& info : QDir(folder_).entryInfoList({"*.fayline"}, QDir::Files, QDir::Time)) {
        const QString id = info.completeBaseName();
        if (id == id_ || isHeld(path(id, ".lock"))) continue;
        LeftBehind copy;
        copy.id = id;
        copy.when = QLocale().toString(info.lastModified(), QLocale::ShortFormat);
        QFile of(path(id, ".of"));
        if (of.open(QIODevice::ReadOnly)) copy.fileName = QString::fromUtf8(of.readAll());
        try {
            copy.boatName = QString::fromStdString(io::loadBoat(pathOf(info.filePath())).name);
        } catch (const std::exception&) {
            // It is offered all the same; opening it says what is wrong.
        }
        found.push_back(copy);
    }
    return found;
}

model::Boat Recovery::read(const LeftBehind& copy) const {
    return io::loadBoat(pathOf(path(copy.id, ".fayline")));
}

std::optional<LeftBehind> Recovery::lastGoodCopyOf(const QString& fileName) const {
    for (const LeftBehind& copy : leftBehind()) {
        if (copy.fileName != fileName) continue;
        try {
            read(copy);
            return copy;
        } catch (const std::exception&) {
            // An older one may be whole.
        }
    }
    return std::nullopt;
}

void Recovery::forget(const LeftBehind& copy) {
    for (const auto* ending : {".fayline", ".of", ".lock"}) QFile::remove(path(copy.id, ending));
}

}  // namespace fayline::app

#include "moc_recovery.cpp"
