// Papers measured as a builder would: every file is turned into pictures, lengths are taken in the pictures, sheets are
// joined by the crosses found in them, and the sum over the whole run is held against the plan.
//
// Wanted: within 0.2 mm over the whole run. A picture of 200 dots per inch has pixels of 0.127 mm; the centre of a
// line's darkness is found to a small part of that.
#include <QApplication>
#include <QTemporaryDir>
#include <QTest>
#include <deque>
#include <map>

#include "app/paper/papers.hpp"
#include "core/glue/library_errors.hpp"
#include "core/holding/places.hpp"
#include "core/laminate/stack.hpp"
#include "core/line/line.hpp"
#include "core/math/count.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "tests/app/paper_boats.hpp"
#include "tests/app/rendered_pages.hpp"

namespace fayline::test {

constexpr int dotsPerInch = 200;
constexpr double wanted_mm = 0.2;

struct SheetSeen {
    int page = 1;
    Picture picture;
    std::vector<Word> words;
    std::map<QString, QPointF> crosses;  // by name
    QPointF offset;                      // adds to a place on the sheet to give one in the joined whole
    bool joined = false;
};

std::vector<SheetSeen> seeSheets(const QString& pdf, int dots) {
    static const QRegularExpression crossName("^[A-HJ-NP-Z]{1,2}[12]$");
    const std::vector<Picture> pictures = picturesOf(pdf, dots);
    const std::vector<std::vector<Word>> words = wordsOf(pdf);
    std::vector<SheetSeen> sheets;
    for (std::size_t i = 0; i < pictures.size(); ++i) {
        SheetSeen sheet{static_cast<int>(i) + 1, pictures[i], words.at(i), {}, {}, false};
        for (const Word& word : sheet.words) {
            if (!crossName.match(word.text).hasMatch()) continue;
            if (const auto at = sheet.picture.crossNear(word.box.bottomLeft(), 7)) sheet.crosses[word.text] = *at;
        }
        sheets.push_back(std::move(sheet));
    }
    return sheets;
}

// Lays the sheets over each other by their crosses, from sheet `first` on; returns the greatest disagreement between
// the two crosses of a seam, millimetres.
double joinSheets(std::vector<SheetSeen>& sheets, std::size_t first) {
    double worst = 0;
    std::deque<std::size_t> open{first};
    sheets[first].joined = true;
    while (!open.empty()) {
        SheetSeen& from = sheets[open.front()];
        open.pop_front();
        for (std::size_t i = 0; i < sheets.size(); ++i) {
            SheetSeen& to = sheets[i];
            std::vector<QPointF> steps;
            for (const auto& [name, at] : from.crosses) {
                if (const auto other = to.crosses.find(name); &to != &from && other != to.crosses.end()) {
                    steps.push_back(at - other->second);
                }
            }
            if (steps.size() != 2) continue;
            worst = std::max(worst, QLineF(steps[0], steps[1]).length());
            if (to.joined) continue;
            to.offset = from.offset + (steps[0] + steps[1]) / 2;
            to.joined = true;
            open.push_back(i);
        }
    }
    return worst;
}

// Ticks that begin at an edge of the story stick, in the joined whole.
struct Edges {
    std::vector<double> outside_mm;
    std::vector<double> along_mm;
    double apart_mm = 0;  // greatest difference of one mark seen on two sheets
};

void addTicks(std::vector<double>& places, double& apart, const std::vector<double>& ticks, double offset) {
    for (const double tick : ticks) {
        const auto same = std::find_if(places.begin(), places.end(),
                                       [&](double place) { return std::abs(place - tick - offset) < 0.5; });
        if (same != places.end()) {
            apart = std::max(apart, std::abs(*same - tick - offset));
            continue;
        }
        places.push_back(tick + offset);
    }
}

Edges readStick(const std::vector<SheetSeen>& sheets) {
    Edges edges;
    for (const SheetSeen& sheet : sheets) {
        const Picture& picture = sheet.picture;
        // Edges are the first two of all lines over nearly the whole width that have another such line far away.
        const double middle = picture.width_mm() / 2;
        const auto rows = picture.linesIn(QRectF(middle - 100, 5, 200, picture.height_mm() / 2), false, 0.6);
        if (rows.size() < 2) continue;
        const double top = rows.front();
        const double bottom = rows.back();
        // The sheet's own border runs on where no tick reaches.
        const double height = bottom - top;
        const auto whole =
            picture.linesIn(QRectF(5, top + 0.3 * height, picture.width_mm() - 10, 0.12 * height), true, 0.3);
        const auto ticksAt = [&](double from, double to) {
            auto ticks = picture.linesIn(QRectF(5, from, picture.width_mm() - 10, to - from), true, 0.5);
            std::erase_if(ticks, [&](double tick) {
                return std::any_of(whole.begin(), whole.end(),
                                   [&](double line) { return std::abs(line - tick) < 0.3; });
            });
            return ticks;
        };
        addTicks(edges.outside_mm, edges.apart_mm, ticksAt(top + 1.5, top + 5.5), sheet.offset.x());
        addTicks(edges.along_mm, edges.apart_mm, ticksAt(bottom - 5.5, bottom - 1.5), sheet.offset.x());
    }
    std::sort(edges.outside_mm.begin(), edges.outside_mm.end());
    std::sort(edges.along_mm.begin(), edges.along_mm.end());
    return edges;
}

// Sorted, in millimetres, marks at one place once.
std::vector<double> once(std::vector<double> places_m) {
    std::sort(places_m.begin(), places_m.end());
    std::vector<double> places;
    for (const double place : places_m) {
        if (places.empty() || place * 1000 - places.back() > 0.3) places.push_back(place * 1000);
    }
    return places;
}

// Greatest difference between the marks and the wanted places, both counted from their first.
double worstOf(const std::vector<double>& marks, const std::vector<double>& wanted) {
    double worst = 0;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        worst = std::max(worst, std::abs((marks[i] - marks[0]) - (wanted[i] - wanted[0])));
    }
    return worst;
}

// Of words that stand close behind each other on one line: where the first of them stand.
std::vector<QRectF> phrases(const std::vector<Word>& words, const QStringList& phrase) {
    std::vector<QRectF> found;
    for (std::size_t i = 0; i + phrase.size() <= words.size(); ++i) {
        QRectF box = words[i].box;
        bool same = true;
        for (int k = 0; k < phrase.size(); ++k) {
            const Word& word = words[i + static_cast<std::size_t>(k)];
            same = same && word.text == phrase[k] && std::abs(word.box.bottom() - box.bottom()) < 1;
            box = box.united(word.box);
        }
        if (same) found.push_back(box);
    }
    return found;
}

// A boat's papers in a folder of their own, with the plan that they should agree with.
struct Papers {
    QTemporaryDir folder;
    model::Boat boat;
    plan::Plan plan;

    Papers(const model::Piece& piece, const QPageLayout& layout) : boat(boatOf({piece})) {
        app::writePapers(boat, folder.path(), layout);
        plan = plan::makePlan(piece, plan::shopOf(boat));
    }
    const model::Piece& piece() const { return boat.pieces.front(); }
    QString file(const QString& paper) const {
        return folder.filePath(QString::fromStdString(piece().name) + "-" + paper + ".pdf");
    }
};

class PaperMeasureTest : public QObject {
    Q_OBJECT

private:
    std::map<std::pair<std::string, QPageSize::PageSizeId>, Papers> printed_;

    // Made once for all tests.
    const Papers& papersOf(const model::Piece& piece, QPageSize::PageSizeId size) {
        return printed_.try_emplace({piece.name, size}, piece, layoutOf(size)).first->second;
    }

    // The station's number and kind stand right beside a tick, on both edges.
    static bool isNamed(const std::vector<SheetSeen>& sheets, int number) {
        int edges = 0;
        for (const bool upper : {true, false}) {
            const bool found = std::any_of(sheets.begin(), sheets.end(), [&](const SheetSeen& sheet) {
                std::vector<QRectF> names = phrases(sheet.words, {QString::number(number), "clamp"});
                const std::vector<QRectF> screws = phrases(sheet.words, {QString::number(number), "screw"});
                names.insert(names.end(), screws.begin(), screws.end());
                return std::any_of(names.begin(), names.end(), [&](const QRectF& name) {
                    // From the words towards the edge: the leader and the tick, left of them, or right of the length
                    // that follows them.
                    const double from = upper ? name.top() - 3 : name.bottom() + 0.5;
                    const QRectF left(name.left() - 2.5, from, 2.3, 2.5);
                    const QRectF right(name.right(), from, 30, 2.5);
                    return !sheet.picture.linesIn(left, true, 0.4).empty() ||
                           !sheet.picture.linesIn(right, true, 0.4).empty();
                });
            });
            edges += found ? 1 : 0;
        }
        return edges == 2;
    }

    void measureStick(const Papers& papers) {
        std::vector<SheetSeen> sheets = seeSheets(papers.file("story-stick"), dotsPerInch);
        const double seamsApart = joinSheets(sheets, 0);
        for (const SheetSeen& sheet : sheets) QVERIFY2(sheet.joined, qPrintable(QString::number(sheet.page)));
        const Edges edges = readStick(sheets);

        const model::Piece& piece = papers.piece();
        const line::Line& line = papers.plan.line.fair.line;
        const double end_m = line.length();
        std::vector<double> along_m{-piece.stack.runsPastStart_m, 0, end_m, end_m + piece.stack.runsPastEnd_m};
        for (const model::Pin& pin : piece.stack.pins) along_m.push_back(pin.at_m);
        std::vector<double> outside_m;
        for (const double at_m : along_m) {
            outside_m.push_back(
                holding::alongOutside(piece.stack, piece.line.describes, piece.line.stripsOn, line, at_m));
        }
        for (const holding::StationPlace& station : papers.plan.holding.stations) {
            along_m.push_back(station.at_m);
            outside_m.push_back(station.alongOutside_m);
        }
        if (piece.stack
                .scarfedEnd) {  // its heel is on the outside, one depth of the stack times the slope before the end
            const double depth_m = laminate::faceDistance(piece.stack, piece.line.describes, line,
                                                          math::countOf(papers.plan.stack.strips), end_m) -
                                   laminate::faceDistance(piece.stack, piece.line.describes, line, 0, end_m);
            outside_m.push_back(holding::alongOutside(piece.stack, piece.line.describes, piece.line.stripsOn, line,
                                                      end_m - piece.stack.scarfedEnd->slope * depth_m));
        }
        for (const holding::StationPlace& station : papers.plan.holding.stations) {
            QVERIFY2(isNamed(sheets, station.number), qPrintable(QString::number(station.number)));
        }
        const std::vector<double> outside = once(outside_m);
        const std::vector<double> along = once(along_m);
        QCOMPARE(edges.outside_mm.size(), outside.size());
        QCOMPARE(edges.along_mm.size(), along.size());
        const double worst = std::max(worstOf(edges.outside_mm, outside), worstOf(edges.along_mm, along));
        qInfo("story stick of %s: %zu sheets, %zu + %zu marks over %.1f mm, worst %.3f mm; seams %.3f, twice seen %.3f",
              piece.name.c_str(), sheets.size(), outside.size(), along.size(), outside.back() - outside.front(), worst,
              seamsApart, edges.apart_mm);
        QVERIFY(worst < wanted_mm);
        QVERIFY(edges.apart_mm < wanted_mm);
        QVERIFY(seamsApart < wanted_mm);
    }

    // From the boat's millimetres to the joined whole: by one grid line of each direction and its printed coordinate.
    std::optional<QPointF> gridOrigin(const std::vector<SheetSeen>& sheets) {
        for (const SheetSeen& sheet : sheets) {
            std::optional<double> x;
            std::optional<double> y;
            for (std::size_t i = 0; i + 2 < sheet.words.size(); ++i) {
                const Word& word = sheet.words[i];
                const Word& number = sheet.words[i + 1];
                if (sheet.words[i + 2].text != "mm" || std::abs(number.box.bottom() - word.box.bottom()) > 0.5)
                    continue;
                const double value = number.text.toDouble();
                if (word.text == "x") {
                    const QRectF beside(word.box.left() - 1.6, word.box.top() - 40, 1.2, 38);
                    const auto lines = sheet.picture.linesIn(beside, true, 0.08);
                    if (lines.size() == 1) x = lines.front() + sheet.offset.x() - value;
                }
                if (word.text == "y") {
                    const QRectF below(word.box.right() + 12, word.box.bottom() + 0.2, 20, 1.6);
                    const auto lines = sheet.picture.linesIn(below, false, 0.08);
                    if (lines.size() == 1) y = lines.front() + sheet.offset.y() + value;
                }
            }
            if (x && y) return QPointF(*x, *y);
        }
        return std::nullopt;
    }

    // Ink of a curve or a tick at a place of the boat, on whichever sheets show it: how far it lies from there along
    // `across` (in the boat's x and y), millimetres; the greatest if several.
    std::optional<double> missAt(const std::vector<SheetSeen>& sheets, const QPointF& origin, const line::Xy& place_m,
                                 double heading_rad) {
        std::optional<double> worst;
        const QPointF across(-std::sin(heading_rad), -std::cos(heading_rad));  // y downwards on paper
        for (const SheetSeen& sheet : sheets) {
            if (!sheet.joined) continue;
            const QPointF at = origin + QPointF(place_m.x_m * 1000, -place_m.y_m * 1000) - sheet.offset;
            if (!QRectF(14, 14, sheet.picture.width_mm() - 28, sheet.picture.height_mm() - 44).contains(at)) continue;
            const auto miss = sheet.picture.inkOffset(at, across, 1.0, 0.8);
            if (miss && (!worst || std::abs(*miss) > std::abs(*worst))) worst = miss;
        }
        return worst;
    }

    struct Expected {
        line::Xy on;
        double heading_rad = 0;
    };

    // `curve` gives the drawn curve by arc length of the line, and `ticks` the marks on it that must be there.
    void measureDrawing(const Papers& papers, const QString& paper, const std::function<Expected(double)>& curve,
                        double from_m, double to_m, double tickSide, const std::vector<double>& ticks_m,
                        double tightest_m) {
        std::vector<SheetSeen> sheets = seeSheets(papers.file(paper), dotsPerInch);
        const double seamsApart = joinSheets(sheets, 1);  // sheet 0 is the map
        for (std::size_t i = 1; i < sheets.size(); ++i) QVERIFY2(sheets[i].joined, qPrintable(QString::number(i)));
        const std::optional<QPointF> origin = gridOrigin(sheets);
        QVERIFY(origin.has_value());

        // The curve, square to itself, at many places between its marks.
        double worst = 0;
        int seen = 0;
        int asked = 0;
        for (double at_m = from_m + 0.0137; at_m < to_m - 0.005; at_m += 0.0317) {
            const Expected place = curve(at_m);
            ++asked;
            if (const auto miss = missAt(sheets, *origin, place.on, place.heading_rad)) {
                ++seen;
                worst = std::max(worst, std::abs(*miss));
            }
        }
        // The ticks, along the curve, some millimetres off it.
        const auto tickMiss = [&](double at_m, double off_mm) {
            const Expected place = curve(at_m);
            const line::Xy off{place.on.x_m - off_mm / 1000 * std::sin(place.heading_rad),
                               place.on.y_m + off_mm / 1000 * std::cos(place.heading_rad)};
            return missAt(sheets, *origin, off, place.heading_rad + M_PI / 2);
        };
        double worstTick = 0;
        for (const double at_m : ticks_m) {
            const auto miss = tickMiss(at_m, tickSide * 5);
            QVERIFY2(miss.has_value(), qPrintable(QString::number(at_m)));
            worstTick = std::max(worstTick, std::abs(*miss));
        }
        const auto tightest = tickMiss(tightest_m, -tickSide * 5);
        QVERIFY(tightest.has_value());
        qInfo(
            "%s of %s: %zu sheets, curve seen at %d of %d places, worst %.3f mm; %zu ticks, worst %.3f; tightest %.3f; "
            "seams %.3f",
            qPrintable(paper), papers.piece().name.c_str(), sheets.size(), seen, asked, worst, ticks_m.size(),
            worstTick, std::abs(*tightest), seamsApart);
        QVERIFY(seen > 0.9 * asked);
        QVERIFY(worst < wanted_mm);
        QVERIFY(worstTick < wanted_mm);
        QVERIFY(std::abs(*tightest) < wanted_mm);
        QVERIFY(seamsApart < wanted_mm);
    }

    void measureLine(const Papers& papers) {
        const line::Line& line = papers.plan.line.fair.line;
        const auto curve = [&](double at_m) {
            const line::Place place = line.at(at_m);
            return Expected{{place.x_m, place.y_m}, place.heading_rad};
        };
        std::vector<double> ticks{0, line.length()};
        for (const holding::StationPlace& station : papers.plan.holding.stations) {
            if (station.at_m >= 0 && station.at_m <= line.length()) ticks.push_back(station.at_m);
        }
        measureDrawing(papers, "full-size-line", curve, 0, line.length(),
                       laminate::sideSign(papers.piece().line.stripsOn), ticks, papers.plan.line.tightest.at_m);
    }

    // The form against the first face of the planned stack, whose places lie every few millimetres.
    void measureForm(const Papers& papers) {
        const laminate::StackPlan& planned = papers.plan.stack;
        // The form allows for springback: its edge is not the first face of the stack on the wanted line.
        QVERIFY(papers.plan.form.corrected);
        const auto curve = [&](double at_m) {
            const line::Place edge = papers.plan.form.line.faying(at_m);
            return Expected{{edge.x_m, edge.y_m}, edge.heading_rad};
        };
        std::vector<double> ticks{0, papers.plan.line.fair.line.length()};
        for (const holding::StationPlace& station : papers.plan.holding.stations) ticks.push_back(station.at_m);
        measureDrawing(papers, "full-size-form", curve, planned.at_m.front(), planned.at_m.back(),
                       -laminate::sideSign(papers.piece().line.stripsOn), ticks, papers.plan.form.tightestAt_m);
    }

private slots:
    void StoryStickOfAStemAddsUpOverItsSheets() { measureStick(papersOf(stem(), QPageSize::A4)); }
    void StoryStickOnLetterPaperAddsUpToo() { measureStick(papersOf(stem(), QPageSize::Letter)); }
    void StoryStickOfASixMetreRailAddsUpOverItsSheets() { measureStick(papersOf(longRail(), QPageSize::A4)); }

    void FullSizeLineLiesWhereThePlanHasIt() { measureLine(papersOf(stem(), QPageSize::A4)); }
    void FullSizeLineOfASixMetreRailLiesWhereThePlanHasIt() { measureLine(papersOf(longRail(), QPageSize::A3)); }
    void FullSizeFormLiesWhereThePlanHasItsEdge() { measureForm(papersOf(stem(), QPageSize::Letter)); }

    void CheckSquaresMeasureWhatTheySayOnEverySheet() {
        for (const auto size : {QPageSize::A4, QPageSize::Letter}) {
            const Papers& papers = papersOf(stem(), size);
            double worst = 0;
            int seen = 0;
            for (const QString paper : {"station-table", "story-stick", "full-size-line", "full-size-form"}) {
                const QString file = papers.file(paper);
                const std::vector<Picture> pictures = picturesOf(file, dotsPerInch);
                const std::vector<std::vector<Word>> words = wordsOf(file);
                const QStringList texts = textsOf(file);
                QCOMPARE(static_cast<int>(pictures.size()), texts.size());
                for (int page = 1; page <= texts.size(); ++page) {
                    if (!texts[page - 1].contains("inner square")) continue;  // they have a rule instead
                    ++seen;
                    const auto at = static_cast<std::size_t>(page - 1);
                    const CheckSquares squares = checkSquares(pictures[at], words[at]);
                    for (const double miss : {squares.innerWidth_mm - 100, squares.innerHeight_mm - 100,
                                              squares.outerWidth_mm - 101.6, squares.outerHeight_mm - 101.6}) {
                        QVERIFY2(std::abs(miss) < 0.1,
                                 qPrintable(QString("%1 page %2: %3").arg(paper).arg(page).arg(miss)));
                        worst = std::max(worst, std::abs(miss));
                    }
                }
            }
            qInfo("check squares of %d sheets: worst %.3f mm", seen, worst);
            QVERIFY(seen > 0);
        }
    }

    // The ticks of the rule on sheets that have nothing at full size.
    void CheckRulesMeasureWhatTheySay() {
        const Papers& papers = papersOf(stem(), QPageSize::A4);
        int seen = 0;
        for (const QString paper : {"station-table", "closing-sheet", "props-and-screws"}) {
            const QString file = papers.file(paper);
            const std::vector<std::vector<Word>> pages = wordsOf(file);
            for (std::size_t page = 0; page < pages.size(); ++page) {
                const std::vector<Word>& words = pages[page];
                for (std::size_t i = 0; i + 3 < words.size(); ++i) {
                    if (words[i].text != "100" || words[i + 1].text != "mm" || words[i + 2].text != "4") continue;
                    const Picture picture = pictureOf(file, static_cast<int>(page) + 1, dotsPerInch);
                    // Upper ticks beside the words "100 mm", lower ones beside "4 in".
                    const auto apart = [&](const QRectF& box) {
                        const auto ticks = picture.linesIn(QRectF(12, box.center().y() - 0.5, 104, 1), true, 0.45);
                        return ticks.size() < 2 ? 0 : ticks.back() - ticks.front();
                    };
                    QVERIFY2(std::abs(apart(words[i].box) - 100) < 0.1,
                             qPrintable(QString::number(apart(words[i].box))));
                    QVERIFY2(std::abs(apart(words[i + 2].box) - 101.6) < 0.1,
                             qPrintable(QString::number(apart(words[i + 2].box))));
                    ++seen;
                }
            }
        }
        QVERIFY(seen >= 3);
    }
};

}  // namespace fayline::test

int main(int argc, char** argv) {
    fayline::glue::letLibraryReturnErrors();
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    fayline::test::PaperMeasureTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "paper_measure_test.moc"
