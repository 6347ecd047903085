#include "app/panels/support_models.hpp"

#include <algorithm>
#include <cmath>

#include "app/panels/reading.hpp"
#include "core/math/count.hpp"
#include "core/measure/force.hpp"

namespace fayline::app {

namespace {

const QString noFigure(QChar(0x2013));

QVariant toTheRight() {
    return int(Qt::AlignRight | Qt::AlignVCenter);
}

}  // namespace

// Posts

int PostsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

int PostsModel::rowsOf(const Shown& shown) const {
    return math::countOf(shown.piece.form.posts);
}

bool PostsModel::sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const {
    return a.piece.form.posts[rowOfA] == b.piece.form.posts[rowOfB];
}

QVariant PostsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::TextAlignmentRole) return toTheRight();
    if (role == Qt::ToolTipRole && section == thrustColumn) return tr("What the stack thrusts on it");
    if (role == Qt::ToolTipRole && section == holdsColumn) return tr("What holds it to the floor before it slides");
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case atColumn:
            return tr("Along");
        case widthColumn:
            return tr("Width");
        case holdsColumn:
            return tr("Holds");
        case thrustColumn:
            return tr("Thrust");
        default:
            return {};
    }
}

Qt::ItemFlags PostsModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags flags = PieceTable::flags(index);
    return index.isValid() && index.column() != thrustColumn ? flags | Qt::ItemIsEditable : flags;
}

QString PostsModel::typed(const boat::Post& post, int column) const {
    switch (column) {
        case atColumn:
            return writeLengthText(post.at_m, shown().display);
        case widthColumn:
            return text(measure::writeThickness(post.width_m, shown().display));
        case holdsColumn:
            return text(measure::typedForce(post.holds_N, shown().display));
        default:
            return {};
    }
}

std::optional<double> PostsModel::thrustOn(int row) const {
    if (!plan() || shown().outOfDate) return std::nullopt;
    for (const holding::PostLoad& load : plan()->holding.posts)
        if (load.index == row && std::isfinite(load.thrust_N)) return load.thrust_N;
    return std::nullopt;
}

QVariant PostsModel::cell(int row, int column, int role) const {
    const boat::Post& post = piece().form.posts[row];
    if (role == Qt::TextAlignmentRole) return toTheRight();
    if (role == placeRole) return post.at_m;
    if ((role == faultRole || role == Qt::ToolTipRole) &&
        shown().reasonPath.startsWith(QStringLiteral("form.posts[%1]").arg(row)))
        return shown().reason;
    if (column == thrustColumn) {
        const std::optional<double> thrust = thrustOn(row);
        if (role == severityRole && thrust && *thrust > post.holds_N) return int(plan::Severity::caution);
        if (role == sortRole && thrust) return *thrust;
        if (role != Qt::DisplayRole) return {};
        return thrust ? text(measure::writeForce(*thrust, shown().display)) : noFigure;
    }
    if (role == sortRole) return column == atColumn ? post.at_m : column == widthColumn ? post.width_m : post.holds_N;
    return role == Qt::DisplayRole || role == Qt::EditRole ? QVariant(typed(post, column)) : QVariant();
}

QString PostsModel::put(boat::Piece& piece, int row, int column, const QVariant& value) const {
    boat::Post& post = piece.form.posts[row];
    const QString written = value.toString().trimmed();
    if (written == typed(post, column)) return {};
    switch (column) {
        case atColumn:
            post.at_m = readLengthText(written, shown().display);
            std::stable_sort(piece.form.posts.begin(), piece.form.posts.end(),
                             [](const boat::Post& a, const boat::Post& b) { return a.at_m < b.at_m; });
            return tr("Move a post to %1").arg(written);
        case widthColumn:
            post.width_m = readLengthText(written, shown().display);
            return tr("Set the width of a post to %1").arg(written);
        case holdsColumn:
            post.holds_N = measure::readForce(text(written), shown().display);
            return tr("Set what holds a post to %1").arg(written);
        default:
            return {};
    }
}

QString PostsModel::cellName(int row, int column) const {
    return tr("Post %1, %2").arg(row + 1).arg(headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().toLower());
}

void PostsModel::addPost(double at_m) {
    if (!hasPiece()) return;
    Change change{tr("Add a post"), {}, piece()};
    std::vector<boat::Post>& posts = change.after.form.posts;
    boat::Post post;
    if (!posts.empty()) {
        post.width_m = posts.back().width_m;
        post.holds_N = posts.back().holds_N;
    }
    post.at_m = at_m;
    posts.insert(std::upper_bound(posts.begin(), posts.end(), at_m,
                                  [](double at, const boat::Post& other) { return at < other.at_m; }),
                 post);
    emit changeAsked(change);
}

void PostsModel::removePost(int row) {
    if (!hasPiece() || row < 0 || row >= rowCount()) return;
    Change change{tr("Remove a post"), {}, piece()};
    change.after.form.posts.erase(change.after.form.posts.begin() + row);
    emit changeAsked(change);
}

// Blocks

int BlocksModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

int BlocksModel::rowsOf(const Shown& shown) const {
    return math::countOf(shown.piece.holding.hull.blocks);
}

bool BlocksModel::sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const {
    return a.piece.holding.hull.blocks[rowOfA] == b.piece.holding.hull.blocks[rowOfB];
}

QVariant BlocksModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::TextAlignmentRole) return toTheRight();
    if (role == Qt::ToolTipRole && section == pushColumn) return tr("What it pushes up with all props at work");
    if (role != Qt::DisplayRole) return {};
    return section == xColumn ? tr("x") : section == yColumn ? tr("y") : tr("Pushes");
}

Qt::ItemFlags BlocksModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags flags = PieceTable::flags(index);
    return index.isValid() && index.column() != pushColumn ? flags | Qt::ItemIsEditable : flags;
}

const holding::BlockPush* BlocksModel::pushOn(int row) const {
    if (!plan() || shown().outOfDate || !plan()->holding.hull) return nullptr;
    for (const holding::BlockPush& push : plan()->holding.hull->blocks)
        if (push.index == row) return &push;
    return nullptr;
}

QVariant BlocksModel::cell(int row, int column, int role) const {
    const boat::Block& block = piece().holding.hull.blocks[row];
    if (role == Qt::TextAlignmentRole) return toTheRight();
    if ((role == faultRole || role == Qt::ToolTipRole) &&
        shown().reasonPath.startsWith(QStringLiteral("holding.hull.blocks[%1]").arg(row)))
        return shown().reason;
    if (column == pushColumn) {
        const holding::BlockPush* push = pushOn(row);
        if (role == severityRole && push && push->lifts) return int(plan::Severity::caution);
        if (role == sortRole && push) return push->push_N;
        if (role != Qt::DisplayRole) return {};
        if (!push) return noFigure;
        return push->lifts ? tr("lifts") : text(measure::writeForce(push->push_N, shown().display));
    }
    const double length_m = column == xColumn ? block.x_m : block.y_m;
    if (role == sortRole) return length_m;
    return role == Qt::DisplayRole || role == Qt::EditRole ? QVariant(writeLengthText(length_m, shown().display))
                                                           : QVariant();
}

QString BlocksModel::put(boat::Piece& piece, int row, int column, const QVariant& value) const {
    boat::Block& block = piece.holding.hull.blocks[row];
    const QString written = value.toString().trimmed();
    if (column == pushColumn || written == cell(row, column, Qt::EditRole).toString()) return {};
    (column == xColumn ? block.x_m : block.y_m) = readLengthText(written, shown().display);
    return tr("Move block %1").arg(row + 1);
}

QString BlocksModel::cellName(int row, int column) const {
    return tr("Block %1, %2")
        .arg(row + 1)
        .arg(headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().toLower());
}

void BlocksModel::addBlock() {
    if (!hasPiece()) return;
    Change change{tr("Add a block"), {}, piece()};
    std::vector<boat::Block>& blocks = change.after.holding.hull.blocks;
    constexpr double apart_m = 1;
    boat::Block block;
    if (!blocks.empty()) {
        block.x_m = blocks.back().x_m + apart_m;
        block.y_m = blocks.back().y_m;
    }
    blocks.push_back(block);
    emit changeAsked(change);
}

void BlocksModel::removeBlock(int row) {
    if (!hasPiece() || row < 0 || row >= rowCount()) return;
    Change change{tr("Remove block %1").arg(row + 1), {}, piece()};
    change.after.holding.hull.blocks.erase(change.after.holding.hull.blocks.begin() + row);
    emit changeAsked(change);
}

}  // namespace fayline::app
