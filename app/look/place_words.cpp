#include "app/look/place_words.hpp"

#include <QHash>
#include <QObject>
#include <QRegularExpression>
#include <QStringList>
#include <algorithm>

#include "app/look/names.hpp"
#include "app/look/text.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

namespace {

QString stripsWords(const model::Stack& stack, int group) {
    int before = 0;
    for (int i = 0; i < group && i < math::countOf(stack.strips); ++i) before += stack.strips[i].count;
    const int count = group < math::countOf(stack.strips) ? stack.strips[group].count : 1;
    return count > 1 ? QObject::tr("strips %1 to %2").arg(before + 1).arg(before + count)
                     : QObject::tr("strip %1").arg(before + 1);
}

// Tools of a kind are known by their names, stations by their numbers along the line, all else by its place in a list.
QString itemWords(const QString& list, int index, const model::Piece& piece) {
    const auto& tools = piece.holding.tools;
    const auto& stations = piece.holding.stations;
    if (list == "line.points") {
        const QString name = pointName(piece, index);
        return name.startsWith("point ") ? name : QObject::tr("point %1").arg(name);
    }
    if (list == "stack.strips") return stripsWords(piece.stack, index);
    if (list == "holding.stations" && index < math::countOf(stations)) {
        const double at_m = stations[index].at_m;
        const auto before = std::ranges::count_if(stations, [&](const auto& one) { return one.at_m < at_m; });
        return QObject::tr("station %1").arg(before + 1);
    }
    if (list == "holding.tools" && index < math::countOf(tools) && !tools[index].name.empty())
        return QObject::tr("tool %1").arg(text(tools[index].name));
    static const QHash<QString, const char*> items{
        {"stack.widths", QT_TR_NOOP("width %1")},        {"stack.pins", QT_TR_NOOP("pin %1")},
        {"stack.gluings", QT_TR_NOOP("glue-up %1")},     {"stack.planed_after", QT_TR_NOOP("planed place %1")},
        {"holding.tools", QT_TR_NOOP("tool %1")},        {"form.posts", QT_TR_NOOP("post %1")},
        {"holding.hull.blocks", QT_TR_NOOP("block %1")}, {"stock.boards", QT_TR_NOOP("board %1")},
        {"holding.stations", QT_TR_NOOP("station %1")},  {"record", QT_TR_NOOP("record %1")}};
    const auto found = items.find(list);
    return found == items.end() ? QString() : QObject::tr(found.value()).arg(index + 1);
}

// A key in words: without its unit, "runs_past_start_mm" is "runs past start".
QString keyWords(QString key) {
    static const QRegularExpression unit("_(mm|deg|pct|g|g_m2|ml|C|N|kg|MPa|Pa|h|min|m2_min|m_min|g_per_100g)$");
    return key.remove(unit).replace('_', ' ');
}

}  // namespace

QString placeWords(const QString& path, const model::Piece& piece) {
    static const QRegularExpression step("([A-Za-z_0-9]+)(?:\\[(\\d+)\\])?\\.?");
    QStringList words;
    QString list;
    for (auto each = step.globalMatch(path); each.hasNext();) {
        const QRegularExpressionMatch one = each.next();
        list += (list.isEmpty() ? "" : ".") + one.captured(1);
        const bool item = !one.captured(2).isEmpty();
        const QString named = item ? itemWords(list, one.captured(2).toInt(), piece) : QString();
        if (!named.isEmpty()) {
            words = {named};  // it is known by that alone
        } else {
            words << keyWords(one.captured(1));
        }
    }
    return words.join(", ");
}

QString refusalWords(const units::InputError& error, const model::Piece& piece) {
    QString said = text(error.wrong()) + QStringLiteral("; ") + text(error.accepted());
    static const QRegularExpression named("(line\\.points|stack\\.strips|holding\\.stations)\\[(\\d+)\\]");
    for (QRegularExpressionMatch one = named.match(said); one.hasMatch(); one = named.match(said))
        said.replace(one.capturedStart(), one.capturedLength(),
                     itemWords(one.captured(1), one.captured(2).toInt(), piece));
    QStringList place;
    if (!piece.name.empty()) place << text(piece.name);
    const QString within = placeWords(text(error.path()), piece);
    if (!within.isEmpty()) place << within;
    return place.isEmpty() ? said : QStringLiteral("%1: %2").arg(place.join(", "), said);
}

}  // namespace fayline::app
