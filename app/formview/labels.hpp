// Words and figures on the drawing: where they go so that none covers another, a legend, a mark or the stack, none
// leaves the view, and what lies under them stays readable. What finds no room is left out, the less important first;
// but the number of a station never.
#pragma once

#include <QLineF>
#include <QPolygonF>
#include <QRectF>
#include <QSizeF>
#include <QString>
#include <vector>

namespace fayline::app {

enum class TextRole { ink, faint, accent, caution, stop };
enum class TextFont { small, body, title };

struct Text {
    QString words;
    QRectF place;  // pixels
    TextRole role = TextRole::ink;
    TextFont font = TextFont::small;
    bool ringed = false;  // a number in a ring
    bool worked = false;  // says what the plan has worked out
    bool fixed = false;   // stands where it does whatever is drawn there, so on a ground of its own
    QLineF leader;        // from the thing named to the words; null: none
    int tag = -1;         // of the wish it came from
    int station = -1;     // whose number it is, by its index in the piece
};

// A wish for words beside something.
struct Wish {
    QString words;
    QSizeF size;
    QPointF anchor;        // what is named
    QPointF towards;       // the direction in which the words would best stand, any length but 0
    double away = 8;       // pixels from the anchor to the words' nearest edge, at the least
    double farthest = 84;  // ... at the most
    int importance = 0;    // greater ones choose first
    TextRole role = TextRole::ink;
    bool ringed = false;
    bool worked = false;
    int tag = -1;
    int station = -1;  // whose number it is: one that is never left out
};

// Which parts of the view are drawn on already, in squares of a few pixels. On some of them nothing may be written.
class Occupied {
public:
    explicit Occupied(const QSizeF& view);
    void fill(const QRectF& area);
    void fillAlong(const QLineF& stroke, double width);
    void addStroke(const QLineF& stroke);      // a line that words should not be written across
    void bar(const QRectF& area);              // nothing may be written here
    void barFigure(const QPolygonF& figure);   // ... nor on a convex figure
    void barAlong(const QLineF& stroke);       // ... nor across a line
    void addLegend(const QRectF& area);        // ... nor here, and no leader may cross it: a mark or a legend
    double shareOf(const QRectF& area) const;  // 0..1 of its squares
    double shareOf(const QLineF& line) const;  // 0..1 of its length
    int crossings(const QRectF& area) const;   // of strokes with it
    bool barred(const QRectF& area) const;
    bool crossesLegend(const QLineF& line) const;

    // For many questions in a row: after `count`, until the next change.
    void count();
    int counted(const QRectF& area) const;        // squares that are drawn on
    int countedBarred(const QRectF& area) const;  // ... or may not be written on

private:
    struct Range {
        int left, right, top, bottom;
    };
    Range squaresOf(const QRectF& area) const;
    void mark(const QRectF& area, char with);
    int sum(const std::vector<int>& sums, const QRectF& area) const;

    int columns_ = 0;
    int rows_ = 0;
    std::vector<char> filled_;
    std::vector<QLineF> strokes_;
    std::vector<QRectF> legends_;
    std::vector<int> drawnSums_;  // of the squares above and to the left
    std::vector<int> barredSums_;
};

// Places for the wishes that find one, within `view`. `texts` holds what stands already and is added to; nothing new
// covers any of it. Words prefer their direction, a short way, and ground that nothing is drawn on.
//   (1) no two places overlap, and none lies on barred ground
//   (2) every new place lies within `view`
//   (3) a station's number stands, at the end of a leader if nowhere nearer, as long as there is a free place in the
//   view
void placeTexts(std::vector<Text>& texts, std::vector<Wish> wishes, const QRectF& view, const Occupied& occupied);

// Adds words at a fixed place unless they would leave the view or cover what stands. Says whether they were added.
bool addText(std::vector<Text>& texts, const Text& text, const QRectF& view);

}  // namespace fayline::app
