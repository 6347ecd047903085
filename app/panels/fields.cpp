#include "app/panels/fields.hpp"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>

#include "app/look/theme.hpp"
#include "app/panels/reading.hpp"

namespace fayline::app {

Fields::Fields(QWidget* parent) : QWidget(parent), grid_(new QGridLayout(this)) {
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(gridStep);
    grid_->setVerticalSpacing(gridStep / 2);
    grid_->setColumnStretch(0, 1);
    grid_->setColumnStretch(1, 1);
}

Fields::Field& Fields::add(const About& about, QWidget* control, bool wide) {
    const int row = grid_->rowCount();
    auto field = std::make_unique<Field>();
    field->about = about;
    control->setObjectName(about.object);
    control->setAccessibleName(about.name);
    control->setAccessibleDescription(about.hint);
    control->setToolTip(about.hint);
    control->installEventFilter(this);
    if (wide) {
        grid_->addWidget(control, row, 0, 1, 2);
    } else {
        auto* name = new QLabel(about.name, this);
        name->setWordWrap(true);
        name->setBuddy(control);
        name->setToolTip(about.hint);
        grid_->addWidget(name, row, 0);
        grid_->addWidget(control, row, 1);
    }
    field->reason = new QLabel(this);
    field->reason->setObjectName(about.object + QStringLiteral("Reason"));
    field->reason->setWordWrap(true);
    field->reason->setTextFormat(Qt::PlainText);
    field->reason->setForegroundRole(QPalette::BrightText);  // the theme's colour of stop
    field->reason->hide();
    grid_->addWidget(field->reason, row + 1, 0, 1, 2);
    fields_.push_back(std::move(field));
    return *fields_.back();
}

QLineEdit* Fields::addText(const About& about, Write write, Read read) {
    auto* edit = new QLineEdit(this);
    edit->setFont(tabularFont(edit->font()));
    edit->setPlaceholderText(about.whenEmpty);
    edit->setMinimumWidth(gridStep * 12);
    Field& field = add(about, edit, false);
    field.edit = edit;
    field.write = std::move(write);
    field.read = std::move(read);
    connect(edit, &QLineEdit::editingFinished, this, [this, &field] { readText(field); });
    return edit;
}

QComboBox* Fields::addChoice(const About& about, const QStringList& choices, Which which, Choose choose) {
    auto* choice = new QComboBox(this);
    choice->addItems(choices);
    choice->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    choice->setMinimumContentsLength(8);
    choice->setFocusPolicy(Qt::StrongFocus);
    Field& field = add(about, choice, false);
    field.choice = choice;
    field.which = std::move(which);
    field.choose = std::move(choose);
    connect(choice, &QComboBox::activated, this, [this, &field](int index) {
        ask(field, [&](model::Piece& piece) { return field.choose(piece, index, *shown_); });
    });
    return choice;
}

QCheckBox* Fields::addTick(const About& about, IsTicked isTicked, Tick ticked) {
    auto* tick = new QCheckBox(about.name, this);
    Field& field = add(about, tick, true);
    field.tick = tick;
    field.isTicked = std::move(isTicked);
    field.ticked = std::move(ticked);
    connect(tick, &QCheckBox::clicked, this, [this, &field](bool on) {
        ask(field, [&](model::Piece& piece) { return field.ticked(piece, on, *shown_); });
    });
    return tick;
}

void Fields::show(std::shared_ptr<const Shown> shown) {
    const bool another = !shown_ || !shown_->samePieceAs(*shown);
    shown_ = std::move(shown);
    setEnabled(shown_->pieceIndex >= 0);
    for (const auto& field : fields_) showField(*field, another);
}

void Fields::startAnew() {
    if (!shown_) return;
    for (const auto& field : fields_) showField(*field, true);
}

void Fields::showField(Field& field, bool anew) {
    if (anew) field.unread = false;
    const bool any = shown_->pieceIndex >= 0;
    if (field.edit) {
        if (!anew && (field.unread || (field.edit->hasFocus() && field.edit->isModified()))) return;
        const QString text = any ? field.write(*shown_) : QString();
        if (field.edit->text() != text) {
            field.edit->setText(text);
            field.edit->setCursorPosition(0);
        }
        field.edit->setModified(false);
    }
    if (field.choice) {
        const int index = any ? field.which(*shown_) : -1;
        if (field.choice->currentIndex() != index) field.choice->setCurrentIndex(index);
    }
    if (field.tick) {
        const bool on = any && field.isTicked(*shown_);
        if (field.tick->isChecked() != on) field.tick->setChecked(on);
    }
    if (field.unread) return;
    const bool atFault =
        !shown_->reasonPath.isEmpty() && !field.about.path.isEmpty() && shown_->reasonPath.startsWith(field.about.path);
    say(field, atFault ? shown_->reason : QString());
}

void Fields::say(Field& field, const QString& reason) {
    if (field.reason->text() == reason) return;
    field.reason->setText(reason);
    field.reason->setVisible(!reason.isEmpty());
}

void Fields::readText(Field& field) {
    if (!shown_ || shown_->pieceIndex < 0 || !field.edit->isModified()) return;
    if (field.edit->text() == field.write(*shown_)) {
        field.edit->setModified(false);
        field.unread = false;
        say(field, {});
        return;
    }
    const QString written = field.edit->text();
    ask(field, [&](model::Piece& piece) { return field.read(piece, written, *shown_); });
}

void Fields::ask(Field& field, const std::function<QString(model::Piece&)>& put) {
    if (!shown_ || shown_->pieceIndex < 0) return;
    Change change{{}, {}, shown_->piece};
    try {
        change.name = put(change.after);
        if (change.after != shown_->piece) refuseImpossible(shown_->piece, change.after);
    } catch (const units::InputError& error) {
        field.unread = field.edit != nullptr;
        say(field, why(error));
        if (!field.edit) showField(field, false);
        return;
    }
    field.unread = false;
    say(field, {});
    if (field.edit) field.edit->setModified(false);
    if (change.after == shown_->piece) return showField(field, true);
    emit changeAsked(change);
}

bool Fields::eventFilter(QObject* object, QEvent* event) {
    if (event->type() != QEvent::KeyPress || static_cast<QKeyEvent*>(event)->key() != Qt::Key_Escape)
        return QWidget::eventFilter(object, event);
    for (const auto& field : fields_) {
        if (field->edit != object || !shown_ || (!field->unread && !field->edit->isModified())) continue;
        showField(*field, true);
        field->edit->selectAll();
        return true;
    }
    return QWidget::eventFilter(object, event);
}

}  // namespace fayline::app
