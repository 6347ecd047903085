#include "app/formview/placed.hpp"

#include "app/formview/sheet.hpp"

namespace fayline::app {

std::vector<Placed> placedOf(const Sheet& sheet, const Drawing& drawing, const Transform& transform) {
    std::vector<Placed> placed;
    const auto add = [&](Placed::Kind kind, const QRectF& area, const QString& words) {
        if (area.isNull()) return;
        placed.push_back(
            {kind, words, QPolygonF({area.topLeft(), area.topRight(), area.bottomRight(), area.bottomLeft()})});
    };
    const auto addLine = [&](Placed::Kind kind, const QLineF& line, const QString& words) {
        if (!line.isNull()) placed.push_back({kind, words, QPolygonF({line.p1(), line.p2()})});
    };
    for (const Text& text : sheet.texts) {
        add(text.ringed ? Placed::Kind::number : Placed::Kind::words, text.place, text.words);
        addLine(Placed::Kind::leader, text.leader, text.words);
    }
    for (const QRectF& legend : sheet::legendsOf(sheet)) {
        if (legend != sheet.band) add(Placed::Kind::legend, legend, QStringLiteral("legend"));  // it carries words
    }
    for (const FarMark& mark : sheet.far) add(Placed::Kind::mark, mark.place(), mark.words);
    for (const FindingMark& mark : sheet.findings) {
        add(Placed::Kind::mark, QRectF(mark.at.x() - 7.5, mark.at.y() - 7.5, 15, 15), mark.words);
    }
    for (size_t j = 0; j + 1 < drawing.places.size(); ++j) {
        const DrawnPlace& a = drawing.places[j];
        const DrawnPlace& b = drawing.places[j + 1];
        placed.push_back({Placed::Kind::stack,
                          {},
                          QPolygonF({transform.toScreen(a.onForm), transform.toScreen(b.onForm),
                                     transform.toScreen(b.onOutside), transform.toScreen(a.onOutside)})});
    }
    return placed;
}

}  // namespace fayline::app
