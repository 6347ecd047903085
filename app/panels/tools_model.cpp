#include "app/panels/tools_model.hpp"

#include "app/look/icons.hpp"
#include "core/model/hold_traits.hpp"

namespace fayline::app {

ToolsModel::ToolsModel(QObject* parent)
    : ItemsModel(
          tr("tool"), "holding.tools",
          [](model::Piece& piece) -> std::vector<model::Tool>& { return piece.holding.tools; }, nullptr, parent) {
    ListColumn kind{.name = tr("Kind"), .widest = "xx clamp"};
    kind.more = [this](const Shown& shown, int row, int role) {
        return role == Qt::DecorationRole ? QVariant(holdIcon(item(shown, row).kind)) : QVariant();
    };
    const auto size = way::orNone(way::thickness());
    setColumns({typed(&model::Tool::name, way::name(), {.name = tr("Tool"), .change = tr("Name a tool %2")}),
                typed(&model::Tool::kind, way::holdKind(), kind),
                typed(&model::Tool::most_N, way::force(), {.name = tr("Max force")}),
                typed(&model::Tool::count, way::whole(), {.name = tr("Count")}),
                typed(&model::Tool::pad_m, way::thickness(), {.name = tr("Pad")}),
                typed(&model::Tool::opening_m, size,
                      {.name = tr("Opening"), .hint = tr("How far it opens; empty: not known")}),
                typed(&model::Tool::throat_m, size,
                      {.name = tr("Throat"), .hint = tr("How far it reaches over an edge; empty: not known")}),
                typed(&model::Tool::pitch_m, size,
                      {.name = tr("Pitch"), .hint = tr("Of its screw, for turns past snug; empty: not known")})});
}

void ToolsModel::addTool(int like) {
    if (!hasPiece()) return;
    const bool known = like >= 0 && like < rowCount();
    model::Tool tool;
    if (known) tool.kind = items()[like].kind;
    tool.name = std::string(model::holdWord(tool.kind));
    insertItem(tr("Add a tool"), known ? like + 1 : rowCount(), tool);
}

}  // namespace fayline::app
