#include "app/window/shed_store.hpp"

#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QStandardPaths>
#include <algorithm>

#include "app/look/text.hpp"
#include "core/glue/adhesive.hpp"
#include "core/io/shed_file.hpp"
#include "core/wood/species.hpp"

namespace fayline::app {

namespace {

// Gives the damaged file a name of its own beside where it lay, and says which; empty: it could not be renamed.
QString setAside(const QString& fileName) {
    const QFileInfo info(fileName);
    const QString day = QDate::currentDate().toString(Qt::ISODate);
    for (int number = 1; number < 1000; ++number) {
        const QString tail = number == 1 ? QString() : QString("-%1").arg(number);
        const QString wanted =
            info.dir().filePath(QString("%1.damaged-%2%3.%4").arg(info.completeBaseName(), day, tail, info.suffix()));
        if (QFile::exists(wanted)) continue;
        return QFile::rename(fileName, wanted) ? wanted : QString();
    }
    return {};
}

std::string shedFileWords() {
    return "a shed file";
}

}  // namespace

ShedStore::ShedStore(const QString& fileName, QObject* parent) : QObject(parent), fileName_(fileName) {
    try {
        if (const std::optional<model::Shed> found = read()) shed_ = std::make_shared<const model::Shed>(*found);
    } catch (const units::InputError& error) {
        problem_ = {tr("My shed could not be read: %1.").arg(QDir::toNativeSeparators(fileName_)), text(error.what())};
    }
}

QString ShedStore::standardFile() {
    return QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) + "/my_shed.fayline-shed";
}

std::optional<ShedStore::Problem> ShedStore::takeProblem() {
    return std::exchange(problem_, std::nullopt);
}

// What the file holds; nothing: there is none, or it was damaged and is set aside.
std::optional<model::Shed> ShedStore::read() {
    const std::optional<std::string> found = io::loadText(pathOf(fileName_), shedFileWords());
    if (!found) return std::nullopt;
    try {
        return io::readShed(*found);
    } catch (const io::NewerFormat&) {
        throw;
    } catch (const units::InputError& error) {
        const QString aside = setAside(fileName_);
        if (aside.isEmpty()) throw;
        problem_ = {tr("My shed was damaged. The file now lies aside as %1.").arg(QDir::toNativeSeparators(aside)),
                    text(error.what())};
        return std::nullopt;
    }
}

void ShedStore::write(const model::Shed& shed) {
    QDir().mkpath(QFileInfo(fileName_).absolutePath());
    io::saveShed(shed, pathOf(fileName_));
    shed_ = std::make_shared<const model::Shed>(shed);
    emit changed();
}

void ShedStore::refresh() {
    const std::optional<model::Shed> found = read();
    if (!found || (shed_ && *shed_ == *found)) return;
    shed_ = std::make_shared<const model::Shed>(*found);
    emit changed();
}

void ShedStore::change(const std::function<void(model::Shed&)>& how) {
    const model::Shed before = read().value_or(shed_ ? *shed_ : model::Shed());
    model::Shed after = before;
    how(after);
    if (after == before && shed_ && *shed_ == before) return;
    write(after);
    steps_.push_back({before, after});
}

void ShedStore::undo() {
    if (steps_.empty()) return;
    const Step& step = steps_.back();
    model::Shed shed = read().value_or(*shed_);
    for (const model::ShedPart part : model::allShedParts()) {
        if (!model::same(step.before, step.after, part)) model::put(shed, part, step.before);
    }
    write(shed);
    steps_.pop_back();
}

void ShedStore::importFrom(const QString& fileName) {
    const std::optional<std::string> found = io::loadText(pathOf(fileName), shedFileWords());
    if (!found)
        throw units::InputError("", text(QDir::toNativeSeparators(fileName)) + " is not there", "give a shed file");
    const model::Shed other = io::readShed(*found);
    change([&](model::Shed& shed) {
        for (const model::ShedPart part : model::allShedParts()) model::keep(shed, part, other);
    });
}

void ShedStore::exportTo(const QString& fileName) const {
    io::saveShed(shed_ ? *shed_ : model::Shed(), pathOf(fileName));
}

void offerFromShed(Shown& shown) {
    if (!shown.shed) return;
    const auto isOwn = [](const auto& all, const std::string& id) {
        return std::ranges::any_of(all, [&](const auto& one) { return one.own && one.id == id; });
    };
    std::vector<wood::Species> woods;
    for (const model::OwnSpecies& own : shown.shed->species) {
        if (!isOwn(shown.species, own.id)) woods.push_back(wood::ownSpecies(own));
    }
    shown.species.insert(shown.species.begin(), woods.begin(), woods.end());
    if (!shown.adhesives || shown.shed->adhesives.empty()) return;
    std::vector<glue::Adhesive> glues;
    for (const model::OwnAdhesive& own : shown.shed->adhesives) {
        if (!isOwn(*shown.adhesives, own.id)) glues.push_back(glue::ownAdhesive(own));
    }
    glues.insert(glues.end(), shown.adhesives->begin(), shown.adhesives->end());
    shown.adhesives = std::make_shared<const std::vector<glue::Adhesive>>(std::move(glues));
}

}  // namespace fayline::app

#include "moc_shed_store.cpp"
