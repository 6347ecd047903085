// A box to choose from a long list: in groups under their names, and found by typing any part of a name.
#pragma once

#include <QComboBox>
#include <QList>
#include <QMetaType>
#include <QString>
#include <QStringList>

class QStringListModel;

namespace fayline::app {

struct ChoiceGroup {
    QString name;
    QStringList choices;
    bool operator==(const ChoiceGroup&) const = default;
};

class SearchedChoice : public QComboBox {
    Q_OBJECT
public:
    explicit SearchedChoice(QWidget* parent = nullptr);
    ~SearchedChoice() override;

    // Chosen stays what was, where it is still there; else nothing.
    void setGroups(const QList<ChoiceGroup>& groups);
    // What is typed: a choice by its name, else the only one that has it in its name, else as it stands.
    QString wanted() const;

protected:
    void focusOutEvent(QFocusEvent* event) override;

private:
    QStringListModel* searched_;  // the choices without the names of groups
};

}  // namespace fayline::app

Q_DECLARE_METATYPE(QList<fayline::app::ChoiceGroup>)
