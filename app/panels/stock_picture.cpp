#include "app/panels/stock_picture.hpp"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>
#include <set>

#include "app/look/text.hpp"
#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"
#include "core/math/count.hpp"
#include "core/units/length.hpp"

namespace fayline::app {

namespace {

constexpr double laneWanted_px = 11;  // of the thinnest lane, so that its number can be read
constexpr double boardMost_px = 260;
constexpr double plain_px = 7;  // of a board that nothing is cut from
constexpr double margin_px = 4;

QColor between(const QColor& a, const QColor& b, float share) {
    const auto part = [share](float from, float to) { return from + (to - from) * share; };
    return QColor::fromRgbF(part(a.redF(), b.redF()), part(a.greenF(), b.greenF()), part(a.blueF(), b.blueF()));
}

double lane(const plan::BoardCuts& board, const plan::SawnPart& part) {
    return board.ofFace ? part.deepTo_m - part.deepFrom_m : part.acrossTo_m - part.acrossFrom_m;
}

double crosswise(const plan::BoardCuts& board) {
    return board.ofFace ? board.board.thickness_m : board.board.width_m;
}

}  // namespace

StockPicture::StockPicture(QWidget* parent) : Plot(parent) {
    setMouseTracking(true);
    setAccessibleName(tr("Boards with the strips that are cut from them"));
}

void StockPicture::setPicture(Picture picture) {
    picture_ = std::move(picture);
    layOut();
    updateGeometry();
    update();
}

void StockPicture::choose(int place) {
    chosen_ = place;
    QString told;
    for (const plan::BoardCuts& board : picture_.boards) {
        for (const plan::SawnPart& part : board.parts) {
            if (part.piece.empty() && part.place == place && place > 0 && !part.lost)
                told = tr("Strip %1, board %2").arg(place).arg(name(board));
        }
    }
    setAccessibleDescription(told);
    update();
}

QSize StockPicture::sizeHint() const {
    const double line = QFontMetricsF(smallFigures()).height();
    const double last = rows_.empty() ? 0 : rows_.back().top + rows_.back().height;
    return {320, static_cast<int>(std::ceil(last + line + gridStep))};
}

QSize StockPicture::minimumSizeHint() const {
    return {200, sizeHint().height()};
}

void StockPicture::layOut() {
    const double line = std::ceil(QFontMetricsF(smallFigures()).height());
    double longest_m = 0;
    double thinnest_m = 1;
    double widest_m = 0;
    for (const plan::BoardCuts& board : picture_.boards) {
        longest_m = std::max(longest_m, board.board.length_m);
        for (const plan::SawnPart& part : board.parts) thinnest_m = std::min(thinnest_m, lane(board, part));
        if (!board.parts.empty()) widest_m = std::max(widest_m, crosswise(board));
    }
    left_ = margin_px;
    alongScale_ = longest_m > 0 ? std::max(10.0, width() - 2 * margin_px) / longest_m : 100;
    acrossScale_ = alongScale_;
    if (widest_m > 0)
        acrossScale_ = std::clamp(laneWanted_px / std::max(thinnest_m, 1e-4), alongScale_,
                                  std::max(alongScale_, boardMost_px / widest_m));
    rows_.clear();
    double top = margin_px;
    for (const plan::BoardCuts& board : picture_.boards) {
        Row row;
        top += line + 2;
        row.top = top;
        row.height = board.parts.empty() ? plain_px : crosswise(board) * acrossScale_;
        if (board.ofFace) {
            std::set<long> begun;
            for (const plan::SawnPart& part : board.parts) begun.insert(std::lround(part.acrossFrom_m * 1e5));
            for (const long from : begun) row.columns.push_back(static_cast<double>(from) / 1e5);
            row.height = row.height * math::countOf(row.columns) + 3.0 * (math::countOf(row.columns) - 1);
        }
        top += row.height + gridStep / 2.0;
        rows_.push_back(row);
    }
}

QRectF StockPicture::boardPlace(int board) const {
    const Row& row = rows_[board];
    return {along(0), row.top, picture_.boards[board].board.length_m * alongScale_, row.height};
}

QRectF StockPicture::partPlace(int board, int part) const {
    const plan::BoardCuts& of = picture_.boards[board];
    const plan::SawnPart& one = of.parts[part];
    const Row& row = rows_[board];
    double top = row.top;
    if (of.ofFace) {
        const auto column = std::ranges::find_if(
            row.columns, [&](double from_m) { return std::abs(from_m - one.acrossFrom_m) < 2e-5; });
        const auto index = static_cast<double>(column - row.columns.begin());
        top += index * (of.board.thickness_m * acrossScale_ + 3) + one.deepFrom_m * acrossScale_;
    } else {
        top += one.acrossFrom_m * acrossScale_;
    }
    return {along(one.from_m), top, one.length_m * alongScale_, lane(of, one) * acrossScale_};
}

StockPicture::At StockPicture::at(const QPointF& pixel) const {
    for (int board = 0; board < math::countOf(picture_.boards); ++board) {
        for (int part = 0; part < math::countOf(picture_.boards[board].parts); ++part) {
            if (partPlace(board, part).contains(pixel)) return {board, part};
        }
    }
    return {};
}

int StockPicture::boardAt(const QPointF& pixel) const {
    const double line = QFontMetricsF(smallFigures()).height() + 2;
    for (int board = 0; board < math::countOf(rows_); ++board) {
        if (pixel.y() >= rows_[board].top - line && pixel.y() <= rows_[board].top + rows_[board].height) return board;
    }
    return -1;
}

QString StockPicture::name(const plan::BoardCuts& board) const {
    const QString name = text(board.name);
    return board.board.count > 1 || board.toBuy ? tr("%1, no. %2").arg(name).arg(board.number) : name;
}

QString StockPicture::words(const At& where) const {
    if (where.part < 0) return {};
    const plan::BoardCuts& board = picture_.boards[where.board];
    const plan::SawnPart& part = board.parts[where.part];
    const auto length = [this](double at_m) { return text(units::writeLength(at_m, picture_.display)); };
    QString told = part.spare ? tr("Spare %1").arg(part.place) : tr("Strip %1").arg(part.place);
    if (!part.piece.empty()) told = tr("%1 of %2").arg(told, text(part.piece));
    if (part.parts > 1) told += tr(", part %1 of %2").arg(part.part).arg(part.parts);
    told += tr("\nboard %1, rip %2").arg(name(board)).arg(part.rip);
    told += tr("\nfrom %1 to %2 along it").arg(length(part.from_m), length(part.from_m + part.length_m));
    if (part.lost)
        told += tr("\nlost");
    else if (part.cut)
        told += tr("\ncut");
    if (part.faulty) told += tr("\na bad stretch lies where it is trimmed or planed away");
    if (part.pinned) told += tr("\nyou want it from this board");
    return told;
}

// Hatched, so that colour is not alone.
void StockPicture::drawBad(QPainter& painter, int board) const {
    const plan::BoardCuts& of = picture_.boards[board];
    const QRectF whole = boardPlace(board);
    for (const model::BadStretch& bad : of.board.bad) {
        QRectF place(along(bad.from_m), whole.top(), (bad.to_m - bad.from_m) * alongScale_, whole.height());
        if (!of.ofFace && !of.parts.empty() && (bad.acrossFrom_m || bad.acrossTo_m)) {
            const double from_m = bad.acrossFrom_m.value_or(0);
            const double to_m = bad.acrossTo_m.value_or(of.board.width_m);
            place.setTop(whole.top() + from_m * acrossScale_);
            place.setHeight((to_m - from_m) * acrossScale_);
        }
        place = place.intersected(whole);
        painter.setPen(Qt::NoPen);
        painter.setBrush(QBrush(picture_.faint ? theme().faint : theme().stop, Qt::BDiagPattern));
        painter.drawRect(place);
    }
}

void StockPicture::drawPart(QPainter& painter, int board, int part) const {
    const Theme& t = theme();
    const plan::SawnPart& one = picture_.boards[board].parts[part];
    const QRectF place = partPlace(board, part);
    const bool ours = one.piece.empty();
    const bool chosen = ours && chosen_ > 0 && one.place == chosen_ && !one.lost;
    QColor fill = between(t.ground, t.strainLow, ours ? 0.85f : 0.35f);
    if (one.spare) fill = between(t.ground, t.strainLow, 0.55f);
    if (one.cut) fill = between(t.ground, t.faint, 0.4f);
    if (chosen) fill = t.accent;
    if (picture_.faint) fill = between(t.ground, fill, 0.5f);
    painter.setPen(Qt::NoPen);
    painter.setBrush(fill);
    QPolygonF shape(place);
    // A scarfed end runs to a feather.
    const double slant = std::min(place.width() / 4, 6.0);
    shape = QPolygonF({place.topLeft() + QPointF(one.scarfAtStart ? slant : 0, 0), place.topRight(),
                       place.bottomRight() - QPointF(one.scarfAtEnd ? slant : 0, 0), place.bottomLeft()});
    painter.drawPolygon(shape);
    if (one.lost) {
        painter.setPen(QPen(t.stop, 1.25));
        painter.drawLine(place.topLeft(), place.bottomRight());
        painter.drawLine(place.bottomLeft(), place.topRight());
    }
    const double line = QFontMetricsF(painter.font()).height();
    if (place.height() < line * 0.66) return;
    QString words = QString::number(one.place);
    if (one.parts > 1) words += QChar('a' + std::min(one.part - 1, 25));
    if (one.spare) words = tr("%1 spare").arg(words);
    if (!ours) words = QStringLiteral("%1 %2").arg(text(one.piece), words);
    if (one.faulty) words += tr(", faulty");
    if (one.pinned) words += tr(", wanted here");
    if (one.lost)
        words += tr(", lost");
    else if (one.cut)
        words += tr(", cut");
    painter.setPen(picture_.faint ? t.faint : inkOn(fill));
    painter.drawText(place.adjusted(8, -4, -4, 4), Qt::AlignLeft | Qt::AlignVCenter,
                     elided(words, painter.font(), place.width() - 12));
}

void StockPicture::drawBoard(QPainter& painter, int board) const {
    const Theme& t = theme();
    const plan::BoardCuts& of = picture_.boards[board];
    const QRectF place = boardPlace(board);
    const double line = QFontMetricsF(painter.font()).height();
    const auto thickness = [this](double size_m) { return text(units::writeThickness(size_m, picture_.display)); };
    QString words = tr("%1: %2 x %3 x %4")
                        .arg(name(of), text(units::writeLength(of.board.length_m, picture_.display)),
                             thickness(of.board.width_m), thickness(of.board.thickness_m));
    if (of.toBuy) words += tr(", to buy");
    if (of.ofFace) words += tr(", resawn from its face");
    words += of.parts.empty() ? tr(", not used") : tr(", %1 % waste").arg(std::lround(100 * of.waste));
    const bool target = over_ == board && dragged_.part >= 0 && dragged_.board != board;
    painter.setPen(target ? t.accent : picture_.faint ? t.faint : t.ink);
    painter.drawText(QRectF(margin_px, place.top() - line - 1, width() - 2 * margin_px, line),
                     Qt::AlignLeft | Qt::AlignVCenter, elided(words, painter.font(), width() - 2 * margin_px));
    painter.setPen(Qt::NoPen);
    painter.setBrush(of.parts.empty() ? t.raised : between(t.ground, t.rule, 0.5f));
    painter.drawRect(place);
    for (int part = 0; part < math::countOf(of.parts); ++part) drawPart(painter, board, part);
    drawBad(painter, board);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(target ? t.accent : of.parts.empty() ? t.faint : t.ink, target ? 2 : 1));
    painter.drawRect(place);
}

void StockPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), theme().ground);
    painter.setFont(smallFigures());
    painter.setRenderHint(QPainter::Antialiasing);
    for (int board = 0; board < math::countOf(picture_.boards); ++board) drawBoard(painter, board);
    const double times = acrossScale_ / alongScale_;
    if (!rows_.empty() && times > 1.05) {
        const double line = QFontMetricsF(painter.font()).height();
        painter.setPen(theme().faint);
        painter.drawText(QRectF(0, rows_.back().top + rows_.back().height + 2, width() - margin_px, line),
                         Qt::AlignRight | Qt::AlignVCenter,
                         tr("widths drawn %1 times as large as lengths").arg(times, 0, 'f', times < 10 ? 1 : 0));
    }
    drawFocus(painter);
}

bool StockPicture::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return Plot::event(event);
    const auto* help = static_cast<QHelpEvent*>(event);
    const QString told = words(at(help->pos()));
    if (told.isEmpty()) {
        QToolTip::hideText();
        event->ignore();
    } else {
        QToolTip::showText(help->globalPos(), told, this);
    }
    return true;
}

void StockPicture::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return;
    const At hit = at(event->position());
    const bool ours = hit.part >= 0 && picture_.boards[hit.board].parts[hit.part].piece.empty();
    const int place = ours ? picture_.boards[hit.board].parts[hit.part].place : 0;
    choose(place);
    emit stripChosen(place);
    if (!ours || picture_.boards[hit.board].parts[hit.part].cut) return;
    pressed_ = event->position();
    dragged_ = hit;
}

void StockPicture::mouseMoveEvent(QMouseEvent* event) {
    if (!pressed_) {
        const At hit = at(event->position());
        setCursor(hit.part >= 0 ? Qt::PointingHandCursor : Qt::ArrowCursor);
        return;
    }
    constexpr double begins_px = 6;
    const QPointF away = event->position() - *pressed_;
    if (over_ < 0 && std::hypot(away.x(), away.y()) < begins_px) return;
    setCursor(Qt::ClosedHandCursor);
    over_ = boardAt(event->position());
    update();
}

void StockPicture::mouseReleaseEvent(QMouseEvent*) {
    const At from = dragged_;
    const int to = over_;
    pressed_.reset();
    dragged_ = {};
    over_ = -1;
    unsetCursor();
    update();
    if (from.part >= 0 && to >= 0 && to != from.board)
        emit boardAsked(picture_.boards[from.board].parts[from.part].place, to);
}

void StockPicture::walk(int by) {
    std::vector<int> places;
    for (const plan::BoardCuts& board : picture_.boards) {
        for (const plan::SawnPart& part : board.parts) {
            if (part.piece.empty() && !part.lost && std::ranges::find(places, part.place) == places.end())
                places.push_back(part.place);
        }
    }
    if (places.empty()) return;
    const auto here = std::ranges::find(places, chosen_);
    const int last = math::countOf(places) - 1;
    const int to =
        here == places.end() ? (by > 0 ? 0 : last) : std::clamp(static_cast<int>(here - places.begin()) + by, 0, last);
    choose(places[to]);
    emit stripChosen(places[to]);
}

void StockPicture::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Up:
        case Qt::Key_Left:
            return walk(-1);
        case Qt::Key_Down:
        case Qt::Key_Right:
            return walk(1);
        default:
            return Plot::keyPressEvent(event);
    }
}

}  // namespace fayline::app
