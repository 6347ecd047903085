#include "app/panels/stack_models.hpp"

namespace fayline::app {

GroupsModel::GroupsModel(QObject* parent)
    : ItemsModel(
          tr("group"), "stack.strips",
          [](model::Piece& piece) -> std::vector<model::Strips>& { return piece.stack.strips; }, nullptr, parent) {
    ListColumn wood = typed(&model::Strips::species, way::wood("choose one of the list"),
                            {.name = tr("Wood"), .change = tr("Set the wood to %3")});
    wood.text = [this](const Shown& shown, int row) {
        const model::Strips& group = item(shown, row);
        const QString name = woodName(shown, group.species);
        return group.sacrificial ? name + tr(", planed away") : name;
    };
    setColumns({typed(&model::Strips::count, way::whole(),
                      {.name = tr("Strips"), .widest = "00", .change = tr("Set the number of strips to %3")}),
                typed(&model::Strips::thickness_m, way::thickness(),
                      {.name = tr("Thickness"), .change = tr("Set the thickness of strips to %3")}),
                wood});
}

void GroupsModel::addGroup(int after) {
    if (!hasPiece()) return;
    const int row = std::clamp(after + 1, 0, rowCount());
    model::Strips group;
    if (rowCount() > 0) {
        const model::Strips& like = items()[std::max(row - 1, 0)];
        group.thickness_m = like.thickness_m;
        group.species = like.species;
    }
    insertItem(tr("Add strips"), row, group);
}

void GroupsModel::removeGroup(int row) {
    if (rowCount() > 1) removeItems({row}, tr("Remove strips"), {});
}

void GroupsModel::moveGroup(int row, int by) {
    moveItem(row, by, by < 0 ? tr("Move strips towards the form") : tr("Move strips outwards"));
}

WidthsModel::WidthsModel(QObject* parent)
    : ItemsModel(
          tr("width"), "stack.widths",
          [](model::Piece& piece) -> std::vector<model::Width>& { return piece.stack.widths; }, &model::Width::at_m,
          parent) {
    setColumns({ordering(way::length(), {.name = tr("Along"), .change = tr("Move a width to %2")}),
                typed(&model::Width::width_m, way::thickness(),
                      {.name = tr("Width"),
                       .hint = tr("Finished width; even between two places, level beyond"),
                       .change = tr("Set the width to %3")})});
}

void WidthsModel::addWidth(double at_m) {
    if (!hasPiece()) return;
    model::Width width;
    width.at_m = at_m;
    if (!items().empty()) width.width_m = laminate::widthAt(piece().stack, at_m);
    insertInOrder(tr("Add a width"), width);
}

void WidthsModel::removeWidth(int row) {
    if (rowCount() > 1) removeItems({row}, tr("Remove a width"), {});
}

}  // namespace fayline::app
