// A sheet of paper as plain drawing commands in millimetres of the real sheet, apart from any printer or file.
//
// Places are counted from the sheet's upper left corner, x to the right, y downwards.
#pragma once

#include <QLineF>
#include <QPageLayout>
#include <QPolygonF>
#include <QRectF>
#include <QString>
#include <QStringList>
#include <vector>

class QPainter;

namespace fayline::app::paper {

// The paper's size and the part of it that the printer reaches.
struct Page {
    double width_mm = 0;
    double height_mm = 0;
    QRectF area;

    bool operator==(const Page&) const = default;
};

Page pageOf(const QPageLayout& layout);
Page turned(const Page& page);  // the same paper a quarter turn on, its left edge now at the bottom

enum class Dash { solid, dotted, dashed, chain };

struct Stroke {
    QPolygonF points;
    double width_mm = 0.2;
    Dash dash = Dash::solid;
    bool filled = false;  // a closed black shape
};

enum class Lean { left, centre, right };  // which part of the words stands at their place

inline constexpr double lineSpacing = 1.35;  // of the letter's body
inline constexpr double capitals = 0.76;     // height of capitals, the same
inline constexpr double descent = 0.22;

struct Words {
    QString text;
    QPointF at;          // on the base line
    double size_mm = 3;  // of the letter's body; capitals are about three quarters as high
    Lean lean = Lean::left;
    bool bold = false;
};

struct Sheet {
    Page page;
    QString name;    // its place among the others: "row 1, column 2"
    QString remark;  // what is amiss on it, in a few words; empty: nothing
    QRectF title;    // where nameSheets writes what the sheet belongs to
    std::vector<Stroke> strokes;
    std::vector<Words> words;
};

// Width of `text` on paper, millimetres.
double widthOf(const QString& text, double size_mm, bool bold = false);

// The box that words fill.
QRectF extent(const Words& words);

// `text`, shortened in its middle with an ellipsis where it is wider than `width_mm`.
QString fitted(const QString& text, double size_mm, double width_mm, bool bold = false);

void addLine(Sheet& sheet, const QPointF& from, const QPointF& to, double width_mm, Dash dash = Dash::solid);
void addBox(Sheet& sheet, const QRectF& box, double width_mm);
void addWords(Sheet& sheet, const QString& text, const QPointF& at, double size_mm, Lean lean = Lean::left,
              bool bold = false);

// Writes `text` in lines no wider than `box`, from its top on, and returns where the next line would begin. What does
// not go into the box any more is left out, the last line ending in an ellipsis.
double addParagraph(Sheet& sheet, const QRectF& box, const QString& text, double size_mm, bool bold = false);

// `text` in lines no wider than `width_mm`, broken between words and within a word that is wider than that. Hard spaces
// hold figures and their unit together; they come out as plain ones.
QStringList wrapped(const QString& text, double width_mm, double size_mm, bool bold = false);

// Draws on a painter whose unit is a millimetre and whose origin is the sheet's upper left corner.
void paint(const Sheet& sheet, QPainter& painter);

}  // namespace fayline::app::paper
