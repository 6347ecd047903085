#include <QStringList>
#include <cmath>

#include "app/panels/reading.hpp"
#include "app/panels/strips_panel.hpp"

namespace fayline::app {

namespace {

QString line(const QString& name, const QString& value, const units::Source& source) {
    return QStringLiteral("<p style=\"margin: 0 0 4px 0\">%1: <b>%2</b><br><small>%3</small></p>")
        .arg(name.toHtmlEscaped(), value.toHtmlEscaped(), sourceText(source).toHtmlEscaped());
}

QString number(double value, int figures) {
    return std::isfinite(value) ? text(units::writeNumber(value, figures)) : QObject::tr("none");
}

}  // namespace

QString woodText(const wood::Species& species, const units::Display& display) {
    QStringList lines;
    const auto plain = [&](const QString& words) {
        lines << QStringLiteral("<p style=\"margin: 0 0 4px 0\">%1</p>").arg(words.toHtmlEscaped());
    };
    if (!species.warning.empty()) plain(text(species.warning));
    plain(QObject::tr("%1, at 12 % moisture").arg(text(species.name)));
    const auto stress = [&](const QString& name, const units::Cited& cited) {
        lines << line(name, text(units::writeStress(cited.value, display)), cited.source);
    };
    const auto share = [&](const QString& name, const units::Cited& cited) {
        lines << line(name, text(units::writeShare(cited.value)), cited.source);
    };
    lines << line(QObject::tr("Specific gravity"), number(species.sg.value, 3), species.sg.source);
    stress(QObject::tr("Modulus of rupture"), species.mor_Pa);
    stress(QObject::tr("Modulus of elasticity as tabulated"), species.moe_Pa);
    if (species.compressionAlong_Pa) stress(QObject::tr("Compression along the grain"), *species.compressionAlong_Pa);
    if (species.compressionAcross_Pa)
        stress(QObject::tr("Compression across the grain"), *species.compressionAcross_Pa);
    if (species.shear_Pa) stress(QObject::tr("Shear along the grain"), *species.shear_Pa);
    if (species.shrinkRadial) share(QObject::tr("Shrinkage, radial"), *species.shrinkRadial);
    if (species.shrinkTangential) share(QObject::tr("Shrinkage, tangential"), *species.shrinkTangential);
    return lines.join(QLatin1Char('\n'));
}

namespace {

QString limitName(laminate::LimitKind kind) {
    switch (kind) {
        case laminate::LimitKind::breaks:
            return QObject::tr("Bend against the breaking of an average strip");
        case laminate::LimitKind::breaksHot:
            return QObject::tr("Bend that tears an average strip while hot, without a strap");
        case laminate::LimitKind::chance:
            return QObject::tr("Chance that a strip breaks");
        case laminate::LimitKind::ratioHardwood:
            return QObject::tr("Radius over thickness, hardwood and southern pine");
        case laminate::LimitKind::ratioSoftwood:
            return QObject::tr("Radius over thickness, softwood");
        case laminate::LimitKind::laminationThickness:
            return QObject::tr("Thickness for this radius");
        case laminate::LimitKind::curvatureFactor:
            return QObject::tr("Strength left by the curve, for pieces that carry load");
        case laminate::LimitKind::noRoom:
            return QObject::tr("Room for the strip on the inside of the bend");
        case laminate::LimitKind::crossesItself:
            return QObject::tr("Line and stack clear of each other");
        case laminate::LimitKind::pins:
            return QObject::tr("Sliding that the pins allow");
    }
    return {};
}

QString limitValue(laminate::LimitKind kind, double value, const units::Display& display) {
    switch (kind) {
        case laminate::LimitKind::breaks:
        case laminate::LimitKind::breaksHot:
        case laminate::LimitKind::chance:
            return text(units::writeShare(value));
        case laminate::LimitKind::laminationThickness:
            return text(units::writeThickness(value, display));
        case laminate::LimitKind::pins:
            return text(units::writeSmall(value, display));
        case laminate::LimitKind::noRoom:
        case laminate::LimitKind::crossesItself:
            return text(units::writeLength(value, display));
        case laminate::LimitKind::ratioHardwood:
        case laminate::LimitKind::ratioSoftwood:
        case laminate::LimitKind::curvatureFactor:
            break;
    }
    return number(value, 3);
}

}  // namespace

QString limitsText(const laminate::StackPlan& stack, const units::Display& display) {
    QStringList lines;
    for (const laminate::LimitMet& limit : stack.limits) {
        const QString who = limit.place > 0 ? QObject::tr("strip %1").arg(limit.place) : QObject::tr("the stack");
        const bool finite = std::isfinite(limit.value) && std::isfinite(limit.limit);
        const QString values = finite ? QObject::tr("%1, limit %2")
                                            .arg(limitValue(limit.kind, limit.value, display),
                                                 limitValue(limit.kind, limit.limit, display))
                                      : QObject::tr("straight");
        lines << line(QObject::tr("%1, %2").arg(limitName(limit.kind), who),
                      values + (limit.met ? QObject::tr(" (OK)") : QObject::tr(" (over)")), limit.source);
    }
    return lines.isEmpty() ? QObject::tr("Nothing was checked.") : lines.join(QLatin1Char('\n'));
}

}  // namespace fayline::app
