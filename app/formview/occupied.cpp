// What the sheet draws beside words, so that words keep off it.
#include <algorithm>

#include "app/formview/sheet.hpp"

namespace fayline::app {

Occupied sheet::occupiedBy(const Sheet& sheet, const Drawing& drawing, const Transform& transform, const QSizeF& view) {
    Occupied occupied(view);
    for (size_t j = 0; j + 1 < drawing.places.size(); ++j) {
        const QPointF form = transform.toScreen(drawing.places[j].onForm);
        const QPointF outside = transform.toScreen(drawing.places[j].onOutside);
        const QPointF next = transform.toScreen(drawing.places[j + 1].onForm);
        const double step = std::clamp(QLineF(form, next).length(), 4.0, 24.0);
        occupied.fillAlong(QLineF(form, outside), std::min(step, 8.0) + 6);
        occupied.barFigure(QPolygonF({form, next, transform.toScreen(drawing.places[j + 1].onOutside), outside}));
    }
    for (const QLineF& across : sheet.bend.across) occupied.fillAlong(across, 6);
    for (const StationMark& mark : sheet.stations) {
        occupied.fillAlong(QLineF(mark.frame.base, mark.frame.base + mark.frame.outwards * mark.shape.reach), 12);
    }
    const auto& edge = sheet.edge.places;
    for (size_t j = 0; j < edge.size(); j += 2) {
        if (edge[j].depth_px() < 1) continue;
        occupied.fillAlong(QLineF(edge[j].face, edge[j].face + edge[j].in * edge[j].depth_px()), 8);
    }
    for (const StationMark& mark : sheet.stations) {
        if (mark.frame.foot) occupied.addStroke(QLineF(mark.frame.base, *mark.frame.foot));
    }
    for (const ForceArrow& arrow : sheet.forces) {
        occupied.addStroke(arrow.shaft);
        occupied.fillAlong(arrow.shaft, 8);
    }
    for (const GroundMark& mark : sheet.ground) {
        occupied.addStroke(mark.line);
        occupied.fill(
            QRectF(mark.line.p1(), mark.line.p2()).adjusted(0, mark.overhead ? -7 : 0, 0, mark.overhead ? 0 : 7));
    }
    for (const PropTrouble& trouble : sheet.troubles) {
        occupied.bar(QRectF(trouble.at.x() - 9, trouble.at.y() - 9, 18, 18));
    }
    for (const BlockMark& block : sheet.hull.blocks) {
        occupied.bar(block.body);
        if (block.push) occupied.addStroke(block.push->shaft);
    }
    if (sheet.hull.centre) {
        occupied.fill(QRectF(sheet.hull.centre->x() - 8, sheet.hull.centre->y() - 8, 16, 16));
    }
    for (const QPointF& grip : sheet.grips) occupied.bar(QRectF(grip.x() - 5, grip.y() - 5, 10, 10));
    for (const PointMark& mark : sheet.points) {
        occupied.bar(QRectF(mark.at.x() - 5, mark.at.y() - 5, 10, 10));
        if (!mark.misfit.isNull()) occupied.addStroke(mark.misfit);
    }
    for (const FindingMark& mark : sheet.findings) {
        occupied.addLegend(QRectF(mark.at.x() - 9, mark.at.y() - 9, 18, 18));
        occupied.addStroke(mark.tick);
    }
    for (const QLineF& line : sheet.trims) occupied.addStroke(line);
    for (const QLineF& line : sheet.pins) occupied.addStroke(line);
    for (const QPolygonF& post : sheet.posts) {
        for (int i = 0; i + 1 < post.size(); ++i) occupied.addStroke(QLineF(post[i], post[i + 1]));
    }
    if (!sheet.radius.isNull()) occupied.addStroke(sheet.radius);
    return occupied;
}

Occupied sheet::roomForReading(const Sheet& sheet, const Drawing& drawing, const Transform& transform,
                               const QSizeF& view) {
    Occupied occupied = occupiedBy(sheet, drawing, transform, view);
    for (const QRectF& legend : legendsOf(sheet)) occupied.addLegend(legend);
    for (const FarMark& mark : sheet.far) occupied.bar(mark.place());
    for (const Text& text : sheet.texts) {
        occupied.bar(text.place);
        if (!text.leader.isNull()) occupied.barAlong(text.leader);
    }
    occupied.count();
    return occupied;
}

std::vector<QRectF> sheet::legendsOf(const Sheet& sheet) {
    std::vector<QRectF> legends;
    const auto add = [&](const QRectF& place) {
        if (!place.isNull()) legends.push_back(place);
    };
    add(sheet.band);
    add(sheet.scaleBar.place);
    add(sheet.ramp.isNull() ? QRectF() : sheet.ramp.adjusted(0, -3, 0, 2));  // with its pointer
    for (const QLineF* key : {&sheet.forceBar, &sheet.formKey, &sheet.bend.key}) {
        if (!key->isNull()) add(QRectF(key->p1(), key->p2()).normalized().adjusted(-2, -5, 2, 5));
    }
    return legends;
}

}  // namespace fayline::app
