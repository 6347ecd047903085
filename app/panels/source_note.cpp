#include "app/panels/source_note.hpp"

#include <QFrame>
#include <QLabel>
#include <QScreen>
#include <QVBoxLayout>

#include "app/look/theme.hpp"

namespace fayline::app {

void openSourceNote(QWidget* beside, const QPoint& globalPlace, const QString& text) {
    auto* note = new QFrame(beside, Qt::Popup);
    note->setObjectName(QStringLiteral("sourceNote"));
    note->setAttribute(Qt::WA_DeleteOnClose);
    note->setFrameShape(QFrame::Box);
    auto* layout = new QVBoxLayout(note);
    layout->setContentsMargins(gridStep, gridStep, gridStep, gridStep);
    auto* label = new QLabel(text, note);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    label->setAccessibleName(QObject::tr("Source"));
    label->setFixedWidth(gridStep * 36);
    layout->addWidget(label);
    note->adjustSize();
    QPoint place = globalPlace;
    if (const QScreen* screen = beside->screen()) {
        const QRect room = screen->availableGeometry();
        place.setX(std::clamp(place.x(), room.left(), std::max(room.left(), room.right() - note->width())));
        place.setY(std::clamp(place.y(), room.top(), std::max(room.top(), room.bottom() - note->height())));
    }
    note->move(place);
    note->show();
    label->setFocus();
}

}  // namespace fayline::app
