#include "app/panels/searched_choice.hpp"

#include <QAbstractItemView>
#include <QCompleter>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QStandardItemModel>
#include <QStringListModel>

#include "app/look/theme.hpp"

namespace fayline::app {

SearchedChoice::SearchedChoice(QWidget* parent) : QComboBox(parent), searched_(new QStringListModel(this)) {
    setEditable(true);
    setInsertPolicy(QComboBox::NoInsert);
    setMaxVisibleItems(20);
    lineEdit()->setPlaceholderText(tr("type a part of its name"));
    auto* completer = new QCompleter(searched_, this);
    completer->setFilterMode(Qt::MatchContains);
    completer->setCaseSensitivity(Qt::CaseInsensitive);
    completer->setCompletionMode(QCompleter::PopupCompletion);
    setCompleter(completer);
}

// What has dropped down closes while all around is still whole: closing it gives the focus back.
SearchedChoice::~SearchedChoice() {
    completer()->popup()->hide();
}

void SearchedChoice::setGroups(const QList<ChoiceGroup>& groups) {
    const QSignalBlocker blocker(this);
    const QString before = itemText(currentIndex());
    clear();
    QFont bold = textFont(TextSize::small);
    bold.setWeight(QFont::DemiBold);
    QStringList all;
    for (const ChoiceGroup& group : groups) {
        if (group.choices.isEmpty()) continue;
        addItem(group.name);
        QStandardItem* head = static_cast<QStandardItemModel*>(model())->item(count() - 1);
        head->setEnabled(false);
        head->setFont(bold);
        addItems(group.choices);
        all += group.choices;
    }
    searched_->setStringList(all);
    setCurrentIndex(before.isEmpty() ? -1 : findText(before));
    setEditText(itemText(currentIndex()));
}

QString SearchedChoice::wanted() const {
    const QString typed = currentText().trimmed();
    const QStringList all = searched_->stringList();
    const QStringList having = typed.isEmpty() ? QStringList() : all.filter(typed, Qt::CaseInsensitive);
    for (const QString& one : having)
        if (one.compare(typed, Qt::CaseInsensitive) == 0) return one;
    return having.size() == 1 ? having.front() : typed;
}

// What cannot be meant by what was typed is not left standing as if it were chosen.
void SearchedChoice::focusOutEvent(QFocusEvent* event) {
    QComboBox::focusOutEvent(event);
    const int index = findText(wanted());
    if (index >= 0 && index != currentIndex()) {
        setCurrentIndex(index);
        emit activated(index);
    }
    setEditText(itemText(currentIndex()));
}

}  // namespace fayline::app
