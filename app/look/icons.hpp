// Icons drawn for this program in one line weight, in the colours of the ground in force and sharp at every scale.
#pragma once

#include <QIcon>
#include <QPainterPath>
#include <QRectF>
#include <QString>

#include "core/model/boat.hpp"
#include "core/plan/findings/finding.hpp"

namespace fayline::app {

// The icon resources/icons/NAME.svg in ink. It follows a change of ground by itself. An icon that is not there is a
// defect of the caller and comes out empty.
QIcon icon(const QString& name);

// The shape and colour of a severity: octagon for stop, triangle for caution, circle for note.
QIcon findingIcon(plan::Severity severity);
QColor findingColor(plan::Severity severity);

// The outline of that shape within `box`, for views that draw it themselves.
QPainterPath findingShape(plan::Severity severity, const QRectF& box);

// The icon of a way of holding.
QIcon holdIcon(model::HoldKind kind);

// The program's own icon.
QIcon programIcon();

}  // namespace fayline::app
