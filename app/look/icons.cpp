#include "app/look/icons.hpp"

#include <QFile>
#include <QGuiApplication>
#include <QIconEngine>
#include <QPainter>
#include <QPixmap>
#include <QSvgRenderer>
#include <functional>
#include <numbers>

#include "app/look/judged.hpp"
#include "app/look/text.hpp"
#include "app/look/theme.hpp"
#include "core/model/hold_traits.hpp"

// The icons sit in a static library, whose resources must be asked for by name outside any namespace.
static void readyIcons() {
    Q_INIT_RESOURCE(look);
}

namespace fayline::app {

namespace {

QByteArray drawing(const QString& name) {
    readyIcons();
    QFile file(":/icons/" + name + ".svg");
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

// Draws its SVG anew in the theme's colour each time, so a change of ground needs nobody to replace icons.
class DrawnIcon : public QIconEngine {
public:
    // `warm`: of the theme in force, another colour than its ink.
    explicit DrawnIcon(QByteArray svg, std::function<QColor()> warm = nullptr)
        : svg_(std::move(svg)), warm_(std::move(warm)) {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override {
        QByteArray svg = svg_;
        svg.replace("currentColor", color(mode).name().toLatin1());
        QSvgRenderer renderer(svg);
        const int side = std::min(rect.width(), rect.height());
        QRect box(0, 0, side, side);
        box.moveCenter(rect.center());
        renderer.render(painter, box);
    }

    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
        QPixmap pixmap(size);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        painter.setRenderHint(QPainter::Antialiasing);
        paint(&painter, QRect(QPoint(0, 0), size), mode, state);
        return pixmap;
    }

    QIconEngine* clone() const override { return new DrawnIcon(svg_, warm_); }
    bool isNull() override { return svg_.isEmpty(); }

private:
    QColor color(QIcon::Mode mode) const {
        // On a selected row the warm colours would not stand out; there the shape alone says it.
        if (warm_ && mode != QIcon::Selected) return warm_();
        if (mode == QIcon::Disabled) return theme().rule;
        return mode == QIcon::Selected ? theme().ground : theme().ink;
    }

    QByteArray svg_;
    std::function<QColor()> warm_;
};

}  // namespace

QIcon icon(const QString& name) {
    const QByteArray svg = drawing(name);
    return svg.isEmpty() ? QIcon() : QIcon(new DrawnIcon(svg));
}

QIcon findingIcon(plan::Severity severity) {
    const char* name = severity == plan::Severity::stop      ? "finding_stop"
                       : severity == plan::Severity::caution ? "finding_caution"
                                                             : "finding_note";
    return QIcon(new DrawnIcon(drawing(name), [severity] { return findingColor(severity); }));
}

QIcon judgedIcon(plan::Judged judged) {
    switch (judged) {
        case plan::Judged::better:
            return QIcon(new DrawnIcon(drawing("better"), [] { return theme().note; }));
        case plan::Judged::worse:
            return QIcon(new DrawnIcon(drawing("worse"), [] { return theme().caution; }));
        case plan::Judged::both:
            return icon("both");
        case plan::Judged::differs:
            return icon("differs");
        case plan::Judged::alike:
            break;
    }
    return icon("alike");
}

QString judgedText(plan::Judged judged) {
    return tr(plan::judgedWord(judged));
}

QColor findingColor(plan::Severity severity) {
    switch (severity) {
        case plan::Severity::stop:
            return theme().stop;
        case plan::Severity::caution:
            return theme().caution;
        case plan::Severity::note:
            break;
    }
    return theme().note;
}

QPainterPath findingShape(plan::Severity severity, const QRectF& box) {
    QPainterPath path;
    if (severity == plan::Severity::note) {
        path.addEllipse(box);
        return path;
    }
    if (severity == plan::Severity::caution) {
        path.moveTo(box.center().x(), box.top());
        path.lineTo(box.bottomRight());
        path.lineTo(box.bottomLeft());
        path.closeSubpath();
        return path;
    }
    const double cut = 1 / (2 + std::numbers::sqrt2);  // corner cut off so that all eight sides are equal
    const double dx = box.width() * cut;
    const double dy = box.height() * cut;
    path.addPolygon(QPolygonF({QPointF(box.left() + dx, box.top()), QPointF(box.right() - dx, box.top()),
                               QPointF(box.right(), box.top() + dy), QPointF(box.right(), box.bottom() - dy),
                               QPointF(box.right() - dx, box.bottom()), QPointF(box.left() + dx, box.bottom()),
                               QPointF(box.left(), box.bottom() - dy), QPointF(box.left(), box.top() + dy)}));
    path.closeSubpath();
    return path;
}

QIcon holdIcon(model::HoldKind kind) {
    const std::string_view name = model::holdWord(kind);
    return icon(QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())));
}

QIcon programIcon() {
    return icon("fayline");
}

}  // namespace fayline::app
