// The one holder of the user's shed and its file.
#pragma once

#include <QObject>
#include <QString>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "app/look/shown.hpp"
#include "core/model/shed.hpp"

namespace fayline::app {

class ShedStore : public QObject {
    Q_OBJECT
public:
    // Reads `fileName`, which need not be there. One that is damaged is given another name, so that nothing of it is
    // lost; one that cannot be read, or that a newer program wrote, stays and is never written over. See problem().
    explicit ShedStore(const QString& fileName, QObject* parent = nullptr);

    static QString standardFile();  // in the folder of the user's data
    const QString& fileName() const { return fileName_; }
    std::shared_ptr<const model::Shed> shed() const { return shed_; }  // null: there is none

    struct Problem {
        QString what;
        QString why;
    };
    // What was wrong with the file when it was last read, to be told once.
    std::optional<Problem> takeProblem();

    void refresh();  // to what another program may have written since; throws units::InputError as it is at the start
    // Reads the file again, changes what it has and writes it: another program's changes to other parts stay. Throws
    // units::InputError, and the shed is as it was, when it cannot be written.
    void change(const std::function<void(model::Shed&)>& how);
    bool canUndo() const { return !steps_.empty(); }
    void undo();  // the last change made here, in the parts that it changed; throws as change()

    // Part by part, what `fileName` has takes the place of what is here. Throws units::InputError.
    void importFrom(const QString& fileName);
    void exportTo(const QString& fileName) const;

signals:
    void changed();

private:
    std::optional<model::Shed> read();
    void write(const model::Shed& shed);

    QString fileName_;
    std::shared_ptr<const model::Shed> shed_;
    struct Step {
        model::Shed before;
        model::Shed after;
    };
    std::vector<Step> steps_;  // the last one last
    std::optional<Problem> problem_;
};

// Adds the shed's own glues and woods to those that may be chosen, where the boat has none of that id.
void offerFromShed(Shown& shown);

}  // namespace fayline::app
