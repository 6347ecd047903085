#include "app/panels/offsets_model.hpp"

#include <algorithm>
#include <cmath>

#include "app/panels/reading.hpp"
#include "core/math/count.hpp"

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
    const QString expected = text(measure::writeLength(suspect.expected_m, shown.display));
    if (suspect.slip.empty())
        return QStringLiteral("probably misread: a fair line has %1 at %2")
            .arg(QLatin1Char(suspect.axis))
            .arg(expected);
    return QStringLiteral("probably misread: %1 (a fair line has %2 at %3)")
        .arg(text(suspect.slip))
        .arg(QLatin1Char(suspect.axis))
        .arg(expected);
}

// In the order of boat::Read.
const QStringList& readWords() {
    static const QStringList words{QStringLiteral("both"), QStringLiteral("x"), QStringLiteral("y")};
    return words;
}

// "points[3]" in the path of what is wrong with the piece.
bool isAtFault(const Shown& shown, int row) {
    return shown.reasonPath.startsWith(QStringLiteral("line.points[%1]").arg(row));
}

}  // namespace

int OffsetsModel::rowsOf(const Shown& shown) const {
    return math::countOf(shown.piece.line.points);
}

bool OffsetsModel::sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const {
    return a.piece.line.points[rowOfA] == b.piece.line.points[rowOfB];
}

int OffsetsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

QVariant OffsetsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::TextAlignmentRole)
        return int((section == labelColumn                               ? Qt::AlignLeft
                    : section == mustPassColumn || section == readColumn ? Qt::AlignHCenter
                                                                         : Qt::AlignRight) |
                   Qt::AlignVCenter);
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole) return {};
    const bool tip = role == Qt::ToolTipRole;
    switch (section) {
        case labelColumn:
            return tip ? tr("What the point is called on the board") : tr("Point");
        case xColumn:
            return tip ? tr("x as it was written") : QStringLiteral("x");
        case yColumn:
            return tip ? tr("y as it was written") : QStringLiteral("y");
        case misfitColumn:
            return tip ? tr("How far the point lies from the fair line; + to the left, walking from the first point "
                            "on. "
                            "The bar is full at the most that a point may be missed by.")
                       : tr("Misfit");
        case mustPassColumn:
            return tip ? tr("The line must pass through this point") : tr("Pass");
        case readColumn:
            return tip ? tr("Which value was read; the other is then a line of the grid and exact") : tr("Read");
        default:
            return {};
    }
}

Qt::ItemFlags OffsetsModel::flags(const QModelIndex& index) const {
    Qt::ItemFlags flags = PieceTable::flags(index);
    if (!index.isValid()) return flags;
    if (index.column() == mustPassColumn) return flags | Qt::ItemIsUserCheckable;
    return index.column() == misfitColumn ? flags : flags | Qt::ItemIsEditable;
}

QVariant OffsetsModel::cell(int row, int column, int role) const {
    const boat::Point& point = piece().line.points[row];
    if (role == placeRole) {
        const line::Foot* foot = footOf(shown(), row);
        return foot ? QVariant(foot->at_m) : QVariant();
    }
    if (role == faultRole) return isAtFault(shown(), row) ? QVariant(shown().reason) : QVariant();
    if (role == Qt::ToolTipRole || role == Qt::AccessibleDescriptionRole) {
        if (isAtFault(shown(), row)) return shown().reason;
        if (const line::Suspect* suspect = suspectOf(shown(), row)) return suspicion(shown(), *suspect);
        if (role == Qt::ToolTipRole && column < misfitColumn) return cell(row, column, Qt::DisplayRole);
        return role == Qt::ToolTipRole && column == misfitColumn ? headerData(column, Qt::Horizontal, role)
                                                                 : QVariant();
    }
    switch (column) {
        case labelColumn:
            if (role == Qt::DisplayRole) return pointName(piece(), row);
            if (role == Qt::EditRole || role == sortRole) return text(point.label);
            if (role == severityRole && (isAtFault(shown(), row) || suspectOf(shown(), row)))
                return int(isAtFault(shown(), row) ? plan::Severity::stop : plan::Severity::caution);
            return {};
        case xColumn:
        case yColumn: {
            const int axis = column == xColumn ? 0 : 1;
            if (role == Qt::DisplayRole || role == Qt::EditRole) return coordinateText(point, axis, shown().display);
            if (role == sortRole) return axis == 0 ? point.x_m : point.y_m;
            if (role == Qt::TextAlignmentRole) return int(Qt::AlignRight | Qt::AlignVCenter);
            const line::Suspect* suspect = suspectOf(shown(), row);
            if (role == severityRole && suspect && suspect->axis == (axis == 0 ? 'x' : 'y'))
                return int(plan::Severity::caution);
            return {};
        }
        case misfitColumn:
            return misfit(row, role);
        case mustPassColumn:
            if (role == Qt::CheckStateRole) return int(point.mustPass ? Qt::Checked : Qt::Unchecked);
            if (role == sortRole) return point.mustPass ? 1 : 0;
            if (role == Qt::AccessibleTextRole) return point.mustPass ? tr("must pass") : tr("need not pass");
            return {};
        case readColumn:
            if (role == choicesRole) return readWords();
            if (role == Qt::DisplayRole || role == Qt::EditRole) return readWords()[static_cast<int>(point.read)];
            return role == sortRole ? QVariant(static_cast<int>(point.read)) : QVariant();
        default:
            return {};
    }
}

QVariant OffsetsModel::misfit(int row, int role) const {
    const line::Foot* foot = footOf(shown(), row);
    if (role == Qt::TextAlignmentRole) return int(Qt::AlignRight | Qt::AlignVCenter);
    if (!foot || !std::isfinite(foot->misfit_m)) return role == Qt::DisplayRole ? QVariant(QChar(0x2013)) : QVariant();
    switch (role) {
        case Qt::DisplayRole:
            return text(measure::writeSmall(foot->misfit_m, shown().display));
        case sortRole:
            return foot->misfit_m;
        case barFromMiddleRole:
            return true;
        case barRole: {
            const boat::LineInput& line = piece().line;
            const double full = line.fairWithin_m > 0 ? line.fairWithin_m : line.readTo_m;
            return full > 0 ? std::clamp(foot->misfit_m / full, -1.0, 1.0) : 0.0;
        }
        default:
            return {};
    }
}

QString OffsetsModel::put(boat::Piece& piece, int row, int column, const QVariant& value) const {
    boat::Point& point = piece.line.points[row];
    const QString name = pointName(piece, row);
    const QString written = value.toString().trimmed();
    switch (column) {
        case labelColumn:
            point.label = text(written);
            return tr("Call point %1 %2").arg(row + 1).arg(written);
        case xColumn:
        case yColumn: {
            const std::size_t axis = column == xColumn ? 0 : 1;
            if (written == coordinateText(point, static_cast<int>(axis), shown().display)) return {};
            (axis == 0 ? point.x_m : point.y_m) = readLengthText(written, shown().display);
            point.written[axis] = text(written);
            return tr("Set %1 %2 to %3").arg(name, axis == 0 ? QStringLiteral("x") : QStringLiteral("y"), written);
        }
        case mustPassColumn:
            point.mustPass = value.toInt() == Qt::Checked;
            return point.mustPass ? tr("Pass through %1").arg(name) : tr("Let %1 be missed").arg(name);
        case readColumn: {
            const auto chosen = readWords().indexOf(written);
            if (chosen < 0 || static_cast<int>(point.read) == chosen) return {};
            point.read = static_cast<boat::Read>(chosen);
            return chosen == 0 ? tr("Take both values of %1 as read").arg(name)
                               : tr("Take %1 of %2 as read").arg(written, name);
        }
        default:
            return {};
    }
}

QString OffsetsModel::cellName(int row, int column) const {
    return pointName(piece(), row) + QStringLiteral(", ") +
           headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
}

void OffsetsModel::askPoints(std::vector<boat::Point> points, const QString& name) {
    Change change{name, {}, piece()};
    change.after.line.points = std::move(points);
    if (change.after != piece()) emit changeAsked(change);
}

void OffsetsModel::insertPoint(int before) {
    if (!hasPiece()) return;
    std::vector<boat::Point> points = piece().line.points;
    const int count = math::countOf(points);
    before = std::clamp(before, 0, count);
    const auto at = [&](int i) -> const boat::Point& { return points[i]; };
    // On the fair line, so that nothing moves until the user types or drags the point to where it belongs.
    boat::Point point;
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
        point.x_m = (at(before - 1).x_m + at(before).x_m) / 2;
        point.y_m = (at(before - 1).y_m + at(before).y_m) / 2;
    } else if (count >= 2) {
        const boat::Point& end = before == 0 ? at(0) : at(count - 1);
        const boat::Point& next = before == 0 ? at(1) : at(count - 2);
        point.x_m = 2 * end.x_m - next.x_m;
        point.y_m = 2 * end.y_m - next.y_m;
    } else if (count == 1) {
        point.x_m = at(0).x_m + 0.1;
        point.y_m = at(0).y_m;
    }
    points.insert(points.begin() + before, point);
    askPoints(std::move(points), before == count ? tr("Add a point") : tr("Insert a point"));
}

void OffsetsModel::removePoints(std::vector<int> rows) {
    if (!hasPiece()) return;
    std::sort(rows.begin(), rows.end(), std::greater<>());
    rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
    std::vector<boat::Point> points = piece().line.points;
    QString name;
    int removed = 0;
    for (const int row : rows) {
        if (row < 0 || row >= math::countOf(points)) continue;
        name = pointName(piece(), row);
        points.erase(points.begin() + row);
        ++removed;
    }
    if (removed > 0)
        askPoints(std::move(points), removed == 1 ? tr("Remove %1").arg(name) : tr("Remove %1 points").arg(removed));
}

void OffsetsModel::movePoint(int row, int by) {
    if (!hasPiece()) return;
    std::vector<boat::Point> points = piece().line.points;
    const int to = row + by;
    if (row < 0 || to < 0 || row >= math::countOf(points) || to >= math::countOf(points)) return;
    const boat::Point moved = points[row];
    points.erase(points.begin() + row);
    points.insert(points.begin() + to, moved);
    askPoints(std::move(points), by < 0 ? tr("Move %1 up the table").arg(pointName(piece(), row))
                                        : tr("Move %1 down the table").arg(pointName(piece(), row)));
}

void OffsetsModel::insertPoints(int before, const std::vector<boat::Point>& points, const QString& name) {
    if (!hasPiece() || points.empty()) return;
    std::vector<boat::Point> all = piece().line.points;
    all.insert(all.begin() + std::clamp(before, 0, math::countOf(all)), points.begin(), points.end());
    askPoints(std::move(all), name);
}

void OffsetsModel::replacePoints(const std::vector<boat::Point>& points, const QString& name) {
    if (hasPiece() && !points.empty()) askPoints(points, name);
}

std::vector<Repair> repairsOf(const Shown& shown) {
    std::vector<Repair> repairs;
    const std::size_t count = shown.piece.line.points.size();
    if (shown.pieceIndex < 0 || !shown.plan || shown.outOfDate || shown.plan->line.fair.points.size() != count)
        return repairs;
    const line::Misread& misread = shown.plan->line.misread;
    for (const line::RepeatedSlip& slip : misread.repeated) {
        Repair repair{slip.points, {}, {}};
        repair.change = {QObject::tr("Correct %1 points").arg(slip.points.size()), {}, shown.piece};
        QStringList names;
        for (const int row : slip.points) {
            boat::Point& point = repair.change.after.line.points.at(static_cast<std::size_t>(row));
            const std::size_t axis = slip.axis == 'x' ? 0 : 1;
            double& coordinate = axis == 0 ? point.x_m : point.y_m;
            coordinate += slip.by_m;
            point.written[axis] = measure::writeLength(coordinate, shown.display.lengths);
            names << pointName(shown.piece, row);
        }
        repair.text = QObject::tr("%1: %2 reads %3 in each")
                          .arg(names.join(QStringLiteral(", ")))
                          .arg(QLatin1Char(slip.axis))
                          .arg(text(slip.slip));
        repairs.push_back(std::move(repair));
    }
    for (const line::Suspect& suspect : misread.suspects) {
        if (suspect.slip.empty()) continue;
        const QString name = pointName(shown.piece, suspect.point);
        Repair repair{{suspect.point}, {}, {}};
        repair.change = {QObject::tr("Correct %1").arg(name), {}, shown.piece};
        boat::Point& point = repair.change.after.line.points.at(static_cast<std::size_t>(suspect.point));
        point.x_m = suspect.try_m[0];
        point.y_m = suspect.try_m[1];
        point.written = suspect.tryWritten;
        const bool both = point.x_m != shown.piece.line.points[suspect.point].x_m &&
                          point.y_m != shown.piece.line.points[suspect.point].y_m;
        const QString better =
            both ? QStringLiteral("%1, %2").arg(text(suspect.tryWritten[0]), text(suspect.tryWritten[1]))
                 : text(suspect.tryWritten[suspect.axis == 'x' ? 0 : 1]);
        repair.text = both ? QObject::tr("%1: %2; try %3").arg(name, text(suspect.slip), better)
                           : QObject::tr("%1: %2 reads %3; try %4")
                                 .arg(name)
                                 .arg(QLatin1Char(suspect.axis))
                                 .arg(text(suspect.slip), better);
        repairs.push_back(std::move(repair));
    }
    return repairs;
}

}  // namespace fayline::app
