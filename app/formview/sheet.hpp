// Everything that stands on the drawing at one scale, in pixels: marks, words, grid, scale bar, ramp of strain.
//
// Made from what is shown, the plan's drawing and a transform; painted by paint.hpp, hit by hits.hpp.
#pragma once

#include <QFont>
#include <QString>
#include <optional>
#include <vector>

#include "app/formview/drawing.hpp"
#include "app/formview/force_marks.hpp"
#include "app/formview/form_edge.hpp"
#include "app/formview/form_line.hpp"
#include "app/formview/ground_marks.hpp"
#include "app/formview/labels.hpp"
#include "app/formview/station_shape.hpp"
#include "app/formview/transform.hpp"
#include "app/look/names.hpp"
#include "app/look/shown.hpp"

namespace fayline::app {

// What a view may switch, and what is chosen in it.
struct ViewChoice {
    bool bend = false;  // a band along the form's side, as wide as the line is bent
    bool misfitMagnified = true;
    bool forces = true;  // arrows of pulls, thrusts and pushes
    bool gapsMagnified = true;
    bool pressure = true;  // along the edge of the form
    int point = -1;        // chosen point, or
    int station = -1;      // chosen station, by its index in the piece,
    bool foot = false;     // ... of which the foot is chosen, or
    int block = -1;        // chosen block under the hull, or
    int trim = -1;         // chosen trim line: 0 at the start, 1 at the end
    std::optional<double> place_m;
    int strip = 0;  // chosen strip, from the form outwards; 0: none

    bool operator==(const ViewChoice&) const = default;
    bool nothing() const { return point < 0 && station < 0 && block < 0 && trim < 0; }
};

struct PointMark {
    int index = 0;
    QPointF at;
    bool mustPass = false;
    bool suspect = false;
    QLineF misfit;    // from the line to the magnified miss; null: too small to see or not known
    QLineF takeOff;   // from the point square to the line under it; null: nothing to take off
    double at_m = 0;  // its foot along the line, if `onLine`
    bool onLine = false;
};

struct StationMark {
    int index = 0;
    int number = 0;  // as on paper; 0: not known yet
    model::HoldKind kind = model::HoldKind::clamp;
    double at_m = 0;
    StationFrame frame;
    StationShape shape;
    StrapMark strap;  // round the outside; empty for all but straps
};

struct FindingMark {
    plan::Severity severity = plan::Severity::note;
    QPointF at;
    QLineF tick;  // to the line
    double at_m = 0;
    QString words;
};

struct GridLine {
    QLineF line;
    bool axis = false;  // through the origin
};

struct ScaleBar {
    QRectF place;
    int parts = 0;
};

// How sharply the line bends, as a band along it.
struct BendMark {
    QPolygonF band;              // between the face on the form and as far off as the curvature is
    QPolygonF edge;              // its far side
    std::vector<QLineF> across;  // from side to side
    double perCurvature_px = 0;  // pixels for a curvature of one per metre; 0: nothing to draw
    QLineF key;                  // as wide as the band is at the radius that the words beside it say; null: none
};

struct Sheet {
    std::vector<PointMark> points;
    std::vector<StationMark> stations;
    std::vector<FindingMark> findings;
    std::vector<QLineF> trims;   // from the form's side outwards
    std::vector<QPointF> grips;  // of the trim lines, by which they are dragged
    std::vector<QLineF> pins;
    std::vector<QPolygonF> posts;  // of a form of posts: down one side, over the top, up the other
    QPainterPath formSide;         // short strokes on the form's side of the stack
    QPolygonF boatSide;            // of a piece glued in place: a second line beside the edge
    FormEdge edge;
    FormLineMark form;
    QLineF formKey;  // a piece of its line beside the words that explain it; null: none
    std::vector<ForceArrow> forces;
    ForceScale forceScale;
    QLineF forceBar;  // of the unit of the scale; null: nothing to read by it
    std::vector<GroundMark> ground;
    std::vector<PropTrouble> troubles;
    HullMark hull;
    std::vector<FarMark> far;  // blocks and feet outside of the view
    BendMark bend;
    QLineF radius;  // from the tightest place towards its centre; null: straight or no plan
    std::vector<GridLine> grid;
    ScaleBar scaleBar;
    QRectF ramp;           // of strain; null: no plan
    double rampShare = 0;  // where the plan's greatest strain stands on it
    double misfitTimes = 1;
    QRectF band;               // across the top, when out of date
    QRectF title;              // the piece's name and the keys to what is drawn
    bool titleCovers = false;  // there is no corner in which it covers nothing
    std::vector<Text> texts;
    QString emptyTitle;  // what to do when there is nothing to draw
    QString emptyWords;
};

struct Fonts {
    QFont title;
    QFont body;
    QFont small;
};
Fonts fontsFrom(const QFont& base);

// `waiting`: the plan has been out of date for longer than an eye overlooks, so the sheet says so although the reason
// is only that the new one is being made.
Sheet sheetOf(const Shown& shown, const Drawing& drawing, const Transform& transform, const QSizeF& view,
              const ViewChoice& choice, const Fonts& fonts, bool waiting);

// The part of a view that a fitted drawing fills: without the title above and the scale bar and ramp below.
QRectF roomForDrawing(const QSizeF& view, const Fonts& fonts);

// The same with room for the arrows, which stand out by pixels whatever the scale.
QRectF roomWithMarks(const Shown& shown, const Drawing& drawing, const QSizeF& view, const Fonts& fonts,
                     const ViewChoice& choice);

// Bounds of the piece with what stands near it: stack, line, points, feet of props and the hull's blocks. What is
// farther off does not make the piece small: an arrow at the edge of the view says where it is.
Bounds boundsOf(const Shown& shown, const Drawing& drawing);

// Where the point was measured and what it is called.
QString stationName(const Shown& shown, int index);  // "clamp 4"

namespace sheet {  // the stages of sheetOf

// Title, keys, scales, grid and what lies outside of the view; adds them to what is `occupied`.
void addFurniture(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform,
                  const QSizeF& view, const Fonts& fonts, bool waiting, Occupied& occupied);
void addStack(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform, const QSizeF& view,
              const ViewChoice& choice);
void addPoints(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform,
               const ViewChoice& choice);
void addStations(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform);
void addHolding(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform,
                const ViewChoice& choice);
void addFindings(Sheet& sheet, const Shown& shown, const Drawing& drawing);
void addWords(Sheet& sheet, const Shown& shown, const Drawing& drawing, const Transform& transform, const QSizeF& view,
              const ViewChoice& choice, const Fonts& fonts, const Occupied& occupied);

// What is drawn on before there are legends and words. On the stack, points and marks nothing may be written.
Occupied occupiedBy(const Sheet& sheet, const Drawing& drawing, const Transform& transform, const QSizeF& view);

// The same with legends and words, counted: where a reading may stand.
Occupied roomForReading(const Sheet& sheet, const Drawing& drawing, const Transform& transform, const QSizeF& view);

std::vector<QRectF> legendsOf(const Sheet& sheet);

}  // namespace sheet

}  // namespace fayline::app
