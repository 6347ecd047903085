#include "app/panels/support_models.hpp"

#include <cmath>

#include "core/holding/props/hull.hpp"

namespace fayline::app {

namespace {

const QString noFigure(QChar(0x2013));

// What the plan says of the post or block of a row; null: nothing of the piece as it stands.
template <class List>
const typename List::value_type* toldOf(const List& all, const Shown& shown, int row) {
    const auto told = std::ranges::find(all, row, &List::value_type::index);
    return shown.outOfDate || told == all.end() ? nullptr : &*told;
}

std::optional<double> thrustOn(const Shown& shown, int row) {
    const holding::PostLoad* load = shown.plan ? toldOf(shown.plan->holding.posts, shown, row) : nullptr;
    return load && std::isfinite(load->thrust_N) ? std::optional(load->thrust_N) : std::nullopt;
}

const holding::BlockPush* pushOn(const Shown& shown, int row) {
    const bool any = shown.plan && shown.plan->holding.hull;
    return any ? toldOf(shown.plan->holding.hull->blocks, shown, row) : nullptr;
}

QVariant cautionIf(bool so) {
    return so ? QVariant(int(plan::Severity::caution)) : QVariant();
}

}  // namespace

PostsModel::PostsModel(QObject* parent)
    : ItemsModel(
          tr("post"), "form.posts", [](model::Piece& piece) -> std::vector<model::Post>& { return piece.form.posts; },
          &model::Post::at_m, parent) {
    ListColumn thrust{.name = tr("Thrust"), .hint = tr("Force of the stack on it"), .widest = "12300 N"};
    thrust.text = [](const Shown& shown, int row) {
        const std::optional<double> load = thrustOn(shown, row);
        return load ? text(units::writeForce(*load, shown.display)) : noFigure;
    };
    thrust.number = [](const Shown& shown, int row) {
        const std::optional<double> load = thrustOn(shown, row);
        return load ? QVariant(*load) : QVariant();
    };
    thrust.severity = [this](const Shown& shown, int row) {
        return cautionIf(thrustOn(shown, row).value_or(0) > item(shown, row).holds_N);
    };
    setColumns({ordering(way::length(), {.name = tr("Along"), .change = tr("Move a post to %2")}),
                typed(&model::Post::width_m, way::thickness(),
                      {.name = tr("Width"), .change = tr("Set the width of a post to %2")}),
                typed(&model::Post::holds_N, way::force(),
                      {.name = tr("Holds"),
                       .hint = tr("What holds it to the floor before it slides"),
                       .change = tr("Set what holds a post to %2")}),
                thrust});
}

void PostsModel::addPost(double at_m) {
    if (!hasPiece()) return;
    const model::Post like = items().empty() ? model::Post() : items().back();
    insertInOrder(tr("Add a post"), {at_m, like.width_m, like.holds_N});
}

BlocksModel::BlocksModel(QObject* parent)
    : ItemsModel(
          tr("block"), "holding.hull.blocks",
          [](model::Piece& piece) -> std::vector<model::Block>& { return piece.holding.hull.blocks; }, nullptr,
          parent) {
    ListColumn push{.name = tr("Pushes"), .hint = tr("Its push upwards with all props tight"), .widest = "12300 N"};
    push.text = [](const Shown& shown, int row) {
        const holding::BlockPush* known = pushOn(shown, row);
        if (!known) return noFigure;
        return known->lifts ? tr("lifts") : text(units::writeForce(known->push_N, shown.display));
    };
    push.number = [](const Shown& shown, int row) {
        const holding::BlockPush* known = pushOn(shown, row);
        return known ? QVariant(known->push_N) : QVariant();
    };
    push.severity = [](const Shown& shown, int row) {
        const holding::BlockPush* known = pushOn(shown, row);
        return cautionIf(known && known->lifts);
    };
    setColumns({typed(&model::Block::x_m, way::length(), {.name = tr("x"), .change = tr("Move %1")}),
                typed(&model::Block::y_m, way::length(), {.name = tr("y"), .change = tr("Move %1")}), push});
}

void BlocksModel::addBlock() {
    if (!hasPiece()) return;
    constexpr double apart_m = 1;
    model::Block block;
    if (!items().empty()) {
        block.x_m = items().back().x_m + apart_m;
        block.y_m = items().back().y_m;
    }
    insertItem(tr("Add a block"), rowCount(), block);
}

}  // namespace fayline::app
