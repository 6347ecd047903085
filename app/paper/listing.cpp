#include "app/paper/listing.hpp"

#include <algorithm>
#include <numeric>

#include "app/paper/frame.hpp"
#include "app/paper/join.hpp"

namespace fayline::app::paper {

namespace {

constexpr double padding_mm = 1.5;     // on either side of a column's words
constexpr double rowPadding_mm = 1.3;  // above and below a row's words
constexpr double tick_mm = 7.5;
constexpr double titleSize_mm = 3.8;
constexpr double belowShare = 0.78;  // size of the smaller lines
constexpr double smallestSize_mm = 1.5;
constexpr double widestWord_mm = 34;  // longer words are broken
constexpr double betweenBlocks_mm = 3;
constexpr double afterParagraph_mm = 1.3;
constexpr double mostNotes = 0.4;  // of a sheet's height for notes at its foot

double lineHeight(double size_mm) {
    return lineSpacing * size_mm;
}

double paragraphHeight(const Paragraph& paragraph, double width) {
    return static_cast<double>(wrapped(paragraph.text, width, paragraph.size_mm, paragraph.bold).size()) *
           lineHeight(paragraph.size_mm);
}

// Writes whole lines from `top` on and returns where the next one would begin.
double writeLines(Sheet& sheet, const QStringList& lines, const QPointF& topAt, double size_mm, Lean lean, bool bold) {
    double top = topAt.y();
    for (const QString& line : lines) {
        addWords(sheet, line, {topAt.x(), top + capitals * size_mm}, size_mm, lean, bold);
        top += lineHeight(size_mm);
    }
    return top;
}

struct Widths {
    double least = 0;    // of the widest word
    double natural = 0;  // of the widest line
};

void widen(Widths& widths, const QString& text, double size_mm, bool bold) {
    for (const QString& word : text.split(' ', Qt::SkipEmptyParts)) {
        widths.least = std::max(widths.least, std::min(widthOf(word, size_mm, bold) + 0.01, widestWord_mm));
    }
    widths.natural = std::max(widths.natural, widthOf(text, size_mm, bold) + 0.01);
}

// A table fitted to a width: how large its words are and how wide its columns.
class FittedTable {
public:
    FittedTable(const Table& table, double width) : table_(table), size_mm_(table.size_mm) {
        std::vector<Widths> widths = measured();
        while (leastWidth(widths) > width && size_mm_ > smallestSize_mm) {
            size_mm_ *= 0.97;
            widths = measured();
        }
        share(widths, width);
    }

    double headHeight() const {
        double height = 0;
        for (std::size_t i = 0; i < table_.columns.size(); ++i) {
            const Column& column = table_.columns[i];
            height = std::max(
                height, textHeight(column.head, headSize(), true, i) + textHeight(column.below, belowSize(), false, i));
        }
        return height + 1.5;
    }

    double rowHeight(const std::vector<Cell>& row) const {
        double height = 0;
        for (std::size_t i = 0; i < row.size(); ++i) {
            const double words =
                textHeight(row[i].text, size_mm_, row[i].bold, i) + textHeight(row[i].below, belowSize(), false, i);
            height = std::max({height, words, row[i].tick ? tick_mm : 0.0});
        }
        return height + 2 * rowPadding_mm;
    }

    void drawHead(Sheet& sheet, const QPointF& at) const {
        for (std::size_t i = 0; i < table_.columns.size(); ++i) {
            const Column& column = table_.columns[i];
            const double next = write(sheet, column.head, at, i, headSize(), column.lean, true);
            write(sheet, column.below, {at.x(), next}, i, belowSize(), column.lean, false);
        }
        const double y = at.y() + headHeight() - 0.5;
        addLine(sheet, {at.x(), y}, {at.x() + ends_.back(), y}, 0.3);
    }

    void drawRow(Sheet& sheet, const QPointF& at, const std::vector<Cell>& row) const {
        for (std::size_t i = 0; i < row.size(); ++i) {
            const QPointF top(at.x(), at.y() + rowPadding_mm);
            if (row[i].tick) addBox(sheet, {at.x() + begin(i) + padding_mm, top.y(), tick_mm, tick_mm}, 0.4);
            const double next = write(sheet, row[i].text, top, i, size_mm_, table_.columns[i].lean, row[i].bold);
            write(sheet, row[i].below, {top.x(), next}, i, belowSize(), table_.columns[i].lean, false);
        }
        const double y = at.y() + rowHeight(row);
        addLine(sheet, {at.x(), y}, {at.x() + ends_.back(), y}, 0.1);
    }

private:
    const Table& table_;
    double size_mm_;
    std::vector<double> ends_;  // of the columns, from the table's left edge

    double headSize() const { return 0.78 * size_mm_; }
    double belowSize() const { return belowShare * size_mm_; }
    double begin(std::size_t i) const { return i == 0 ? 0 : ends_[i - 1]; }
    double room(std::size_t i) const { return ends_[i] - begin(i) - 2 * padding_mm; }

    std::vector<Widths> measured() const {
        std::vector<Widths> all(table_.columns.size());
        for (std::size_t i = 0; i < all.size(); ++i) {
            widen(all[i], table_.columns[i].head, headSize(), true);
            widen(all[i], table_.columns[i].below, belowSize(), false);
            for (const std::vector<Cell>& row : table_.rows) {
                widen(all[i], row[i].text, size_mm_, row[i].bold);
                widen(all[i], row[i].below, belowSize(), false);
                if (row[i].tick) all[i].least = std::max(all[i].least, tick_mm);
            }
            all[i].natural = std::max(all[i].natural, all[i].least);
        }
        return all;
    }

    static double leastWidth(const std::vector<Widths>& widths) {
        return std::accumulate(widths.begin(), widths.end(), 0.0,
                               [](double sum, const Widths& column) { return sum + column.least + 2 * padding_mm; });
    }

    // What is left over goes first where lines would have to wrap, then to all alike.
    void share(const std::vector<Widths>& widths, double width) {
        const double spare = std::max(0.0, width - leastWidth(widths));
        double wanted = 0;
        for (const Widths& column : widths) wanted += column.natural - column.least;
        const double granted = wanted > 0 ? std::min(1.0, spare / wanted) : 0;
        const double each = (spare - granted * wanted) / static_cast<double>(widths.size());
        double end = 0;
        for (const Widths& column : widths) {
            end += column.least + 2 * padding_mm + granted * (column.natural - column.least) + each;
            ends_.push_back(end);
        }
    }

    double textHeight(const QString& text, double size_mm, bool bold, std::size_t column) const {
        return static_cast<double>(wrapped(text, room(column), size_mm, bold).size()) * lineHeight(size_mm);
    }

    double write(Sheet& sheet, const QString& text, const QPointF& at, std::size_t i, double size_mm, Lean lean,
                 bool bold) const {
        double x = begin(i) + padding_mm;
        if (lean == Lean::centre) x += room(i) / 2;
        if (lean == Lean::right) x = ends_[i] - padding_mm;
        return writeLines(sheet, wrapped(text, room(i), size_mm, bold), {at.x() + x, at.y()}, size_mm, lean, bold);
    }
};

// Paragraphs in two columns, whole ones only, in as little height as they need.
class Notes {
public:
    Notes(const std::vector<Paragraph>& paragraphs, double width, double most_mm)
        : paragraphs_(paragraphs), width_((width - columnGap_mm) / 2) {
        while (height_mm_ < most_mm && fitting(height_mm_) < paragraphs.size()) height_mm_ += 0.5;
    }

    double height_mm() const { return height_mm_; }
    std::size_t count() const { return fitting(height_mm_); }  // of paragraphs that find room

    void draw(Sheet& sheet, const QPointF& at) const {
        place(height_mm_, [&](const Paragraph& one, const QPointF& from) {
            writeLines(sheet, wrapped(one.text, width_, one.size_mm, one.bold), at + from, one.size_mm, Lean::left,
                       one.bold);
        });
    }

private:
    static constexpr double columnGap_mm = 6;
    const std::vector<Paragraph>& paragraphs_;
    double width_;
    double height_mm_ = 0;

    template <class Write>
    std::size_t place(double height_mm, const Write& write) const {
        double top = 0;
        int column = 0;
        for (std::size_t i = 0; i < paragraphs_.size(); ++i) {
            const double height = paragraphHeight(paragraphs_[i], width_);
            if (top + height > height_mm && column == 0) {
                column = 1;
                top = 0;
            }
            if (top + height > height_mm) return i;
            write(paragraphs_[i], QPointF(column * (width_ + columnGap_mm), top));
            top += height + afterParagraph_mm;
        }
        return paragraphs_.size();
    }

    std::size_t fitting(double height_mm) const {
        return place(height_mm, [](const Paragraph&, const QPointF&) {});
    }
};

// Places blocks one below the other and takes a new sheet where one is full.
class Flow {
public:
    Flow(const Listing& listing, const Page& page) : listing_(listing), page_(page) { left_ = begin(listing.notes); }

    std::vector<Sheet> run() {
        for (const Block& block : listing_.blocks) {
            std::visit([this](const auto& one) { place(one); }, block);
        }
        for (const Paragraph& paragraph : left_) place(paragraph);
        for (std::size_t i = 0; i < sheets_.size(); ++i) {
            sheets_[i].name = listing_.name;
            if (sheets_.size() > 1) sheets_[i].name += QString(", %1 of %2").arg(i + 1).arg(sheets_.size());
        }
        return std::move(sheets_);
    }

private:
    const Listing& listing_;
    const Page& page_;
    QRectF full_;  // what blocks fill on the present sheet
    double top_ = 0;
    std::vector<Sheet> sheets_;
    std::vector<Paragraph> left_;  // notes that found no room at the foot

    // A new sheet with these notes at its foot; returns those that found no room.
    std::vector<Paragraph> begin(const std::vector<Paragraph>& paragraphs) {
        requireFewSheets(static_cast<double>(sheets_.size() + 1), listing_.name);
        Sheet sheet;
        sheet.page = page_;
        sheet.title = titleBelow(page_);
        const QRectF area = aboveTitle(page_);
        const QRectF rule(area.left(), area.bottom() - checkRuleHeight_mm, area.width(), checkRuleHeight_mm);
        addCheckRule(sheet, rule);
        const Notes notes(paragraphs, area.width(), mostNotes * area.height());
        const double notesTop = rule.top() - 2 * gap_mm - notes.height_mm();
        notes.draw(sheet, {area.left(), notesTop});
        sheets_.push_back(std::move(sheet));
        full_ = QRectF(area.left(), area.top(), area.width(), notesTop - 2 * gap_mm - area.top());
        top_ = full_.top();
        return {paragraphs.begin() + static_cast<std::ptrdiff_t>(notes.count()), paragraphs.end()};
    }

    void begin() {
        if (!listing_.laterNotes.empty()) {
            begin(listing_.laterNotes);
        } else {
            begin({{bentStackCaution(), 2.4, false}, {localRulesCaution(), 2.4, false}});
        }
    }

    bool isFresh() const { return top_ <= full_.top(); }
    void makeRoomFor(double height) {
        if (top_ + height > full_.bottom() && !isFresh()) begin();
    }

    void place(const Paragraph& one) {
        makeRoomFor(paragraphHeight(one, full_.width()));
        // Longer than a whole sheet: line by line.
        for (const QString& line : wrapped(one.text, full_.width(), one.size_mm, one.bold)) {
            makeRoomFor(lineHeight(one.size_mm));
            top_ = writeLines(sheets_.back(), {line}, {full_.left(), top_}, one.size_mm, Lean::left, one.bold);
        }
        top_ += afterParagraph_mm;
    }

    void place(const Picture& one) {
        makeRoomFor(one.height_mm);
        one.draw(sheets_.back(), QRectF(full_.left(), top_, full_.width(), one.height_mm));
        top_ += one.height_mm + betweenBlocks_mm;
    }

    void drawTop(const FittedTable& fitted, const QString& title) {
        if (!title.isEmpty()) {
            top_ = writeLines(sheets_.back(), wrapped(title, full_.width(), titleSize_mm, true), {full_.left(), top_},
                              titleSize_mm, Lean::left, true) +
                   0.6;
        }
        fitted.drawHead(sheets_.back(), {full_.left(), top_});
        top_ += fitted.headHeight();
    }

    void place(const Table& table) {
        if (table.columns.empty() || table.rows.empty()) return;
        const FittedTable fitted(table, full_.width());
        if (!isFresh()) top_ += betweenBlocks_mm / 2;
        const double title =
            table.title.isEmpty() ? 0 : paragraphHeight({table.title, titleSize_mm, true}, full_.width()) + 0.6;
        makeRoomFor(title + fitted.headHeight() + fitted.rowHeight(table.rows.front()));
        drawTop(fitted, table.title);
        for (const std::vector<Cell>& row : table.rows) {
            if (top_ + fitted.rowHeight(row) > full_.bottom() && !isFresh()) {
                begin();
                drawTop(fitted, table.title.isEmpty() ? QString() : table.title + ", continued");
            }
            fitted.drawRow(sheets_.back(), {full_.left(), top_}, row);
            top_ += fitted.rowHeight(row);
        }
        top_ += betweenBlocks_mm;
    }
};

}  // namespace

std::vector<Sheet> layOut(const Listing& listing, const Page& page) {
    requireRoom(page);
    return Flow(listing, page).run();
}

}  // namespace fayline::app::paper
