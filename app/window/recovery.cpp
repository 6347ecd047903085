#include "app/window/recovery.hpp"

#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QLocale>
#include <QSaveFile>
#include <QStandardPaths>
#include <QUuid>

#include "app/look/text.hpp"
#include "core/io/file.hpp"

namespace fayline::app {

namespace {

// The lock of a program that was killed stays; Qt sees by the number of its process that it is dead.
bool stillRuns(const QString& lockPath) {
    if (!QFile::exists(lockPath)) return false;
    QLockFile lock(lockPath);
    return !lock.tryLock(0);
}

}  // namespace

Recovery::Recovery(const QString& folder, QObject* parent)
    : QObject(parent), folder_(folder), id_(QUuid::createUuid().toString(QUuid::WithoutBraces)) {
    writing_.setMaxThreadCount(1);
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

void Recovery::keep(const model::Boat& boat, const QString& fileName) {
    if (!mine_) {
        QDir().mkpath(folder_);
        mine_ = std::make_unique<QLockFile>(path(id_, ".lock"));
        mine_->tryLock(0);
    }
    writing_.start([this, boat, fileName] {
        try {
            QSaveFile of(path(id_, ".of"));
            if (!of.open(QIODevice::WriteOnly) || of.write(fileName.toUtf8()) < 0 || !of.commit()) {
                emit failed(of.errorString());
                return;
            }
            io::saveBoat(boat, pathOf(path(id_, ".fayline")));
        } catch (const std::exception& error) {
            emit failed(QString::fromUtf8(error.what()));
        }
    });
}

void Recovery::drop() {
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
        if (id == id_ || stillRuns(path(id, ".lock"))) continue;
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
