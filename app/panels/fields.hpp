// What can be changed, one under the other: a name, a field, and under it in words why its text cannot be read.
//
// Shows a piece and asks for changes. A text that is being typed, or that cannot be read, stays when a new plan comes.
#pragma once

#include <QString>
#include <QStringList>
#include <QWidget>
#include <functional>
#include <memory>
#include <vector>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"

class QCheckBox;
class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;

namespace fayline::app {

class Fields : public QWidget {
    Q_OBJECT
public:
    explicit Fields(QWidget* parent = nullptr);

    struct About {
        QString object;          // objectName
        QString name;            // what stands before it
        QString path;            // in the project file, for what is wrong with the piece: "line.fair_within_mm"
        QString hint;            // tool tip and accessible description
        QString whenEmpty = {};  // stands in a text that is left empty
    };
    // The text of a field; and what puts it into a piece and gives the change's name, throwing InputError.
    using Write = std::function<QString(const Shown&)>;
    using Read = std::function<QString(model::Piece&, const QString&, const Shown&)>;
    QLineEdit* addText(const About& about, Write write, Read read);

    using Which = std::function<int(const Shown&)>;
    using Choose = std::function<QString(model::Piece&, int, const Shown&)>;
    QComboBox* addChoice(const About& about, const QStringList& choices, Which which, Choose choose);

    using IsTicked = std::function<bool(const Shown&)>;
    using Tick = std::function<QString(model::Piece&, bool, const Shown&)>;
    QCheckBox* addTick(const About& about, IsTicked isTicked, Tick tick);

    void show(std::shared_ptr<const Shown> shown);
    // Forgets what is being typed: the fields are to show another thing now.
    void startAnew();

signals:
    void changeAsked(const Change& change);

protected:
    bool eventFilter(QObject* object, QEvent* event) override;

private:
    struct Field {
        About about;
        QLineEdit* edit = nullptr;
        QComboBox* choice = nullptr;
        QCheckBox* tick = nullptr;
        QLabel* reason = nullptr;
        Write write;
        Read read;
        Which which;
        Choose choose;
        IsTicked isTicked;
        Tick ticked;
        bool unread = false;  // its text could not be read
    };
    Field& add(const About& about, QWidget* control, bool wide);
    void showField(Field& field, bool anew);
    void readText(Field& field);
    void ask(Field& field, const std::function<QString(model::Piece&)>& put);
    static void say(Field& field, const QString& reason);

    QGridLayout* grid_;
    std::vector<std::unique_ptr<Field>> fields_;
    std::shared_ptr<const Shown> shown_;
};

}  // namespace fayline::app
