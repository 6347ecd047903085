#include "app/panels/offsets_model.hpp"

#include <algorithm>
#include <cmath>

#include "app/panels/reading.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/cures.hpp"

namespace fayline::app {

namespace {

// The feet belong to the points only when there are as many.
const line::Foot* footOf(const Shown& shown, int row) {
    if (!shown.plan) return nullptr;
    const std::vector<line::Foot>& feet = shown.plan->line.fair.points;
    if (feet.size() != shown.piece.line.points.size()) return nullptr;
    return &feet[row];
}

const line::Suspect* suspectOf(const Shown& shown, int row) {
    if (!shown.plan || shown.plan->line.fair.points.size() != shown.piece.line.points.size()) return nullptr;
    const auto& suspects = shown.plan->line.misread.suspects;
    const auto found = std::find_if(suspects.begin(), suspects.end(), [row](const auto& s) { return s.point == row; });
    return found == suspects.end() ? nullptr : &*found;
}

QString suspicion(const Shown& shown, const line::Suspect& suspect) {
    const QString expected = text(units::writeLength(suspect.expected_m, shown.display));
    if (suspect.slip.empty())
        return QStringLiteral("probably misread: a fair line has %1 at %2")
            .arg(QLatin1Char(suspect.axis))
            .arg(expected);
    return QStringLiteral("probably misread: %1 (a fair line has %2 at %3)")
        .arg(text(suspect.slip))
        .arg(QLatin1Char(suspect.axis))
        .arg(expected);
}

}  // namespace

OffsetsModel::OffsetsModel(QObject* parent)
    : ItemsModel(
          tr("point"), "line.points",
          [](model::Piece& piece) -> std::vector<model::Point>& { return piece.line.points; }, nullptr, parent) {
    ListColumn label = typed(&model::Point::label, way::name(),
                             {.name = tr("Point"),
                              .hint = tr("The point's name on the loft board"),
                              .widest = "WL 10",
                              .change = tr("Call point %4 %2")});
    label.text = [this](const Shown& shown, int row) { return pointName(shown.piece, row); };
    label.severity = [](const Shown& shown, int row) {
        return suspectOf(shown, row) ? QVariant(int(plan::Severity::caution)) : QVariant();
    };
    std::vector<ListColumn> columns{
        label,
        coordinate(0),
        coordinate(1),
        misfit(),
        typed(&model::Point::mustPass, way::tick(),
              {.name = tr("Fixed"),
               .hint = tr("The line goes through this point"),
               .change = tr("Fix the line at %1"),
               .cleared = tr("Free the line at %1"),
               .ticked = {tr("not fixed"), tr("fixed")}}),
        typed(&model::Point::read, way::oneOf<model::Read>({"both", "x", "y"}),
              {.name = tr("Read"),
               .hint = tr("Which value was read; the other is then a line of the grid and exact"),
               .change = tr("Take %2 of %1 as read"),
               .cleared = tr("Take both values of %1 as read")})};
    for (std::size_t i = 0; i < columns.size(); ++i) {
        columns[i].more = [i, more = columns[i].more, shows = columns[i].text](const Shown& shown, int row, int role) {
            if (role == placeRole) {
                const line::Foot* foot = footOf(shown, row);
                return foot ? QVariant(foot->at_m) : QVariant();
            }
            if (role == Qt::ToolTipRole || role == Qt::AccessibleDescriptionRole) {
                if (const line::Suspect* suspect = suspectOf(shown, row)) return QVariant(suspicion(shown, *suspect));
                if (role == Qt::ToolTipRole && i < misfitColumn) return QVariant(shows(shown, row));
            }
            return more ? more(shown, row, role) : QVariant();
        };
    }
    setColumns(std::move(columns));
}

ListColumn OffsetsModel::coordinate(std::size_t axis) const {
    const QString name = axis == 0 ? QStringLiteral("x") : QStringLiteral("y");
    const auto member = axis == 0 ? &model::Point::x_m : &model::Point::y_m;
    ListColumn column = typed(member, way::length(),
                              {.name = name,
                               .hint = axis == 0 ? tr("x as it was written") : tr("y as it was written"),
                               .change = axis == 0 ? tr("Set %1 x to %2") : tr("Set %1 y to %2")});
    column.typed = column.text = [this, axis](const Shown& shown, int row) {
        return coordinateText(item(shown, row), int(axis), shown.display);
    };
    column.read = [this, axis, member](model::Piece& piece, int row, const QString& written, const Shown& shown) {
        model::Point& point = at(piece, row);
        point.*member = readLengthText(written, shown.display);
        point.written[axis] = app::text(written);
        return written;
    };
    column.severity = [name](const Shown& shown, int row) {
        const line::Suspect* suspect = suspectOf(shown, row);
        return suspect && name == QLatin1Char(suspect->axis) ? QVariant(int(plan::Severity::caution)) : QVariant();
    };
    return column;
}

ListColumn OffsetsModel::misfit() const {
    ListColumn column{
        .name = tr("Misfit"),
        .hint = tr("From the fair line; + to the left, walking from the first point. Full bar: the limit."),
        .widest = "+0.00 mm"};
    const auto known = [](const Shown& shown, int row) {
        const line::Foot* foot = footOf(shown, row);
        return foot && std::isfinite(foot->misfit_m) ? std::optional(foot->misfit_m) : std::nullopt;
    };
    column.text = [known](const Shown& shown, int row) {
        const std::optional<double> misfit_m = known(shown, row);
        return misfit_m ? app::text(units::writeSmall(*misfit_m, shown.display)) : QString(QChar(0x2013));
    };
    column.number = [known](const Shown& shown, int row) {
        const std::optional<double> misfit_m = known(shown, row);
        return misfit_m ? QVariant(*misfit_m) : QVariant();
    };
    column.more = [known, hint = column.hint](const Shown& shown, int row, int role) -> QVariant {
        if (role == Qt::ToolTipRole) return hint;
        const std::optional<double> misfit_m = known(shown, row);
        if (!misfit_m || (role != barRole && role != barFromMiddleRole)) return {};
        if (role == barFromMiddleRole) return true;
        const model::LineInput& line = shown.piece.line;
        const double full = line.fairWithin_m > 0 ? line.fairWithin_m : line.readTo_m;
        return full > 0 ? std::clamp(*misfit_m / full, -1.0, 1.0) : 0.0;
    };
    return column;
}

QString OffsetsModel::cellName(int row, int column) const {
    return rowName(row) + QStringLiteral(", ") + headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
}

void OffsetsModel::insertPoint(int before, const QString& merges) {
    if (!hasPiece()) return;
    const std::vector<model::Point>& points = items();
    const int count = math::countOf(points);
    before = std::clamp(before, 0, count);
    // On the fair line, so that nothing moves until the user types or drags the point to where it belongs.
    model::Point point;
    const line::FairLine* fair =
        count > 0 && footOf(shown(), 0) && piece().line.takeOff_m == 0 ? &plan()->line.fair : nullptr;
    if (count >= 2 && fair) {
        const auto foot = [&](int i) { return fair->points[i].at_m; };
        const double at_m = before == 0       ? foot(0) - (foot(1) - foot(0))
                            : before == count ? foot(count - 1) + (foot(count - 1) - foot(count - 2))
                                              : (foot(before - 1) + foot(before)) / 2;
        const line::Place place = fair->line.at(at_m);
        point.x_m = place.x_m;
        point.y_m = place.y_m;
    } else if (count >= 2 && before > 0 && before < count) {
        point.x_m = (points[before - 1].x_m + points[before].x_m) / 2;
        point.y_m = (points[before - 1].y_m + points[before].y_m) / 2;
    } else if (count >= 2) {
        const model::Point& end = before == 0 ? points[0] : points[count - 1];
        const model::Point& next = before == 0 ? points[1] : points[count - 2];
        point.x_m = 2 * end.x_m - next.x_m;
        point.y_m = 2 * end.y_m - next.y_m;
    } else if (count == 1) {
        point.x_m = points[0].x_m + 0.1;
        point.y_m = points[0].y_m;
    }
    insertItem(before == count ? tr("Add a point") : tr("Insert a point"), before, point, merges);
}

void OffsetsModel::movePoint(int row, int by) {
    if (!hasPiece()) return;
    moveItem(row, by,
             (by < 0 ? tr("Move %1 up the table") : tr("Move %1 down the table")).arg(pointName(piece(), row)));
}

void OffsetsModel::takeRowBack() {
    change(
        tr("Remove a point"), [](model::Piece& piece) { piece.line.points.pop_back(); }, nextRow);
}

void OffsetsModel::replacePoints(const std::vector<model::Point>& points, const QString& name) {
    if (!points.empty()) change(name, [&](model::Piece& piece) { piece.line.points = points; });
}

namespace {

QString slipText(const Shown& shown, const line::RepeatedSlip& slip) {
    QStringList names;
    for (const int row : slip.points) names << pointName(shown.piece, row);
    return QObject::tr("%1: %2 reads %3 in each")
        .arg(names.join(QStringLiteral(", ")))
        .arg(QLatin1Char(slip.axis))
        .arg(text(slip.slip));
}

QString suspectText(const Shown& shown, const line::Suspect& suspect) {
    const QString name = pointName(shown.piece, suspect.point);
    const model::Point& read = shown.piece.line.points[suspect.point];
    if (suspect.try_m[0] != read.x_m && suspect.try_m[1] != read.y_m) {
        const QString better = QStringLiteral("%1, %2").arg(text(suspect.tryWritten[0]), text(suspect.tryWritten[1]));
        return QObject::tr("%1: %2; try %3").arg(name, text(suspect.slip), better);
    }
    return QObject::tr("%1: %2 reads %3; try %4")
        .arg(name)
        .arg(QLatin1Char(suspect.axis))
        .arg(text(suspect.slip), text(suspect.tryWritten[suspect.axis == 'x' ? 0 : 1]));
}

Repair repairOf(const Shown& shown, const plan::Cure& cure, const QString& words, const std::vector<int>& points) {
    return {points, words, {text(plan::writeText(cure.name, shown.display)), {}, cure.piece}};
}

}  // namespace

std::vector<Repair> repairsOf(const Shown& shown) {
    std::vector<Repair> repairs;
    const std::size_t count = shown.piece.line.points.size();
    if (shown.pieceIndex < 0 || !shown.plan || shown.outOfDate || shown.plan->line.fair.points.size() != count)
        return repairs;
    const line::Misread& misread = shown.plan->line.misread;
    for (const line::RepeatedSlip& slip : misread.repeated) {
        if (const auto cure = plan::slipCorrected(shown.piece, slip, shown.display))
            repairs.push_back(repairOf(shown, *cure, slipText(shown, slip), slip.points));
    }
    for (const line::Suspect& suspect : misread.suspects) {
        if (const auto cure = plan::offsetCorrected(shown.piece, suspect))
            repairs.push_back(repairOf(shown, *cure, suspectText(shown, suspect), {suspect.point}));
    }
    return repairs;
}

}  // namespace fayline::app
