#include "app/panels/shed_line.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/look/theme.hpp"
#include "app/panels/parts.hpp"

namespace fayline::app {

QString shedPartName(model::ShedPart part) {
    switch (part) {
        case model::ShedPart::tools:
            return QObject::tr("Tools at hand");
        case model::ShedPart::glue:
            return QObject::tr("Glue and coats");
        case model::ShedPart::air:
            return QObject::tr("Air and night");
        case model::ShedPart::crew:
            return QObject::tr("Crew and rates");
        case model::ShedPart::stock:
            return QObject::tr("Boards on hand");
        case model::ShedPart::units:
            return QObject::tr("Units");
        case model::ShedPart::glues:
            return QObject::tr("Your own glues");
        case model::ShedPart::woods:
            return QObject::tr("Your woods and trials");
    }
    return {};
}

QString shedPartWord(model::ShedPart part) {
    static const char* const words[] = {"Tools", "Glue", "Air", "Crew", "Stock", "Units", "Glues", "Woods"};
    return QLatin1String(words[int(part)]);
}

ShedLine::ShedLine(model::ShedPart part, QWidget* parent) : QWidget(parent), part_(part), words_(new QLabel(this)) {
    const QString object = QStringLiteral("shed") + shedPartWord(part);
    setObjectName(object);
    words_->setObjectName(object + QStringLiteral("Words"));
    words_->setFont(textFont(TextSize::small));
    words_->setTextFormat(Qt::PlainText);
    use_ = wordButton(object + QStringLiteral("Use"), tr("Use my shed's"), this);
    use_->setToolTip(tr("This piece then has what your shed has. One step to undo."));
    keep_ = wordButton(object + QStringLiteral("Keep"), tr("Keep in my shed"), this);
    keep_->setToolTip(tr("New pieces of every boat then begin with it. See Boat, My shed."));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(gridStep / 2);
    column->addWidget(words_);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(gridStep / 2);
    buttons->addWidget(use_);
    buttons->addWidget(keep_);
    buttons->addStretch();
    column->addLayout(buttons);
    hide();
    connect(keep_, &QPushButton::clicked, this, [this] { emit keepAsked(part_); });
    connect(use_, &QPushButton::clicked, this, [this] {
        Change change{tr("Use my shed's: %1").arg(shedPartName(part_)), {}, shown_->piece};
        model::use(*shown_->shed, part_, change.after);
        emit changeAsked(change);
    });
}

void ShedLine::show(const std::shared_ptr<const Shown>& shown) {
    shown_ = shown;
    showIf(this, shown->pieceIndex >= 0);
    const bool there = shown->shed && model::has(*shown->shed, part_);
    const bool differs = there && !model::isUsed(*shown->shed, part_, shown->piece);
    const QString words = (differs ? tr("%1: differs from my shed") : tr("%1: as in my shed")).arg(shedPartName(part_));
    if (words_->text() != words) words_->setText(words);
    showIf(words_, there);
    showIf(use_, differs);
    showIf(keep_, differs || !there);
}

}  // namespace fayline::app

#include "moc_shed_line.cpp"
