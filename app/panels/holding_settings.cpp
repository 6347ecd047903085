// Where something is said in the holding panel: tools at hand, limits, the boat's blocks.
#include <QHBoxLayout>
#include <QHeaderView>
#include <algorithm>

#include "app/panels/figures_model.hpp"
#include "app/panels/holding_panel.hpp"
#include "app/panels/holding_rows.hpp"
#include "app/panels/holding_words.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/shed_line.hpp"
#include "app/panels/support_models.hpp"
#include "app/panels/tools_model.hpp"
#include "app/panels/typed_fields.hpp"
#include "core/model/shed.hpp"

namespace fayline::app {

// Tools at hand

// Of the tool at the cursor.
Fields* HoldingPanel::toolFields() {
    Fields* fields = newFields();
    const auto tool = [this](model::Piece& piece) -> model::Tool& {
        static model::Tool none;
        const auto row = static_cast<std::size_t>(std::max(toolsTable_->currentIndex().row(), 0));
        return row < piece.holding.tools.size() ? piece.holding.tools[row] : none = {};
    };
    const TypedFields typed(fields, "", tool);
    const auto size = way::orNone(way::thickness());
    typed.add({"toolPad", tr("Pad"), {}, tr("How much of the line its pad covers.")}, &model::Tool::pad_m,
              way::thickness(), {tr("Change the pad of a tool")});
    typed.add({"toolOpening", tr("Opening"), {}, tr("How far it opens."), tr("not known")}, &model::Tool::opening_m,
              size, {tr("Change the opening of a tool")});
    typed.add({"toolThroat", tr("Throat"), {}, tr("How far it reaches over an edge."), tr("not known")},
              &model::Tool::throat_m, size, {tr("Change the throat of a tool")});
    typed.add({"toolPitch", tr("Pitch"), {}, tr("Of its screw; gives a force as turns past snug."), tr("not known")},
              &model::Tool::pitch_m, size, {tr("Change the pitch of a tool")});
    return fields;
}

// The tools themselves stand above the sections, being changed most.
std::vector<QWidget*> HoldingPanel::makeTools() {
    auto* unread = new Words(QStringLiteral("toolsUnread"), true, this);
    toolsTable_ =
        typedTable("tools", tr("Tools at hand"), tools_, unread,
                   {ToolsModel::nameColumn, ToolsModel::kindColumn, ToolsModel::mostColumn, ToolsModel::countColumn},
                   ToolsModel::nameColumn);
    QWidget* buttons = rowTools(toolsTable_,
                                {"addTool", tr("Add a tool like this one (Insert)"),
                                 [this] { tools_->addTool(toolsTable_->currentIndex().row()); }},
                                {"removeTool", tr("Remove the chosen tools (Delete)"),
                                 [this] { tools_->removeTools(toolsTable_->chosenRows()); }});
    auto* under = new QWidget(this);
    auto* across = new QHBoxLayout(under);
    across->setContentsMargins(0, 0, 0, 0);
    across->addWidget(buttons, 0, Qt::AlignTop);
    across->addWidget(toolsInShed_ = newShedLine(model::ShedPart::tools), 1);
    return {toolsTable_, unread, under};
}

void HoldingPanel::showTools() {
    tools_->show(shown_);
    toolsInShed_->show(shown_);
    if (!toolsTable_->currentIndex().isValid() && tools_->rowCount() > 0)
        toolsTable_->setCurrentIndex(tools_->index(0, ToolsModel::nameColumn));
    static const QStringList to{tr("Clamped to: a solid form"), tr("Clamped to: posts"), tr("Clamped to: the boat")};
    clampedTo_->setText(shown_->pieceIndex < 0 ? QString() : to[int(shown_->piece.form.kind)]);
}

void HoldingPanel::makeToolsAtHand() {
    Fields* fields = toolFields();
    const auto [countTable, counts] = figuresTable("toolCounts", tr("Tools needed"), countColumns());
    auto* short_ = new SteadyWords(QStringLiteral("toolsShort"), this);
    const auto [servedTable, served] = figuresTable("served", tr("Which tool at which station"), servedColumns(), 1);
    along_.push_back(servedTable);
    connect(toolsTable_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [fields](const auto&) { fields->startAnew(); });
    addSection("toolsHead", tr("More about the tools"), false, {fields, countTable, short_, servedTable},
               [this, fields, counts, short_, served](const std::shared_ptr<const Shown>& shown) {
                   fields->show(shown);
                   showIf(fields, tools_->rowCount() > 0);
                   if (!shown->plan) return;
                   counts->show(countRows(shown->plan->holding.atHand));
                   short_->say(atHandWords(shown->plan->holding.atHand, shown->display));
                   served->show(servedRows(shown->plan->holding, shown->piece));
               });
}

// Limits and habits

void HoldingPanel::makeSettings() {
    Fields* fields = newFields();
    using model::Holding;
    const QString usual = tr("Set \"%1\" to %2");
    const TypedFields holding(fields, "holding.", over(&model::Piece::holding), usual);
    holding.add({"gapLimit", tr("Largest gap allowed"), "gap_limit_mm", tr("Between the trim lines, anywhere.")},
                &Holding::gapLimit_m, way::thickness());
    holding.add(
        {"glueLineVaries", tr("Joint may vary by"), "glue_line_varies_mm",
         tr("Between two pads, where glue is squeezed out. Empty: by its own thickness."), tr("as thick as it is")},
        &Holding::glueLineVaries_m, way::orNone(way::thickness()), {tr("Set \"%1\"")});
    holding.addChoice(
        {"pads", tr("Pads"), "pads", tr("Dry pads grip the outer strip; waxed or wet ones let it slide.")},
        &Holding::pads, {tr("dry pads, grip"), tr("waxed pads, slide")},
        {tr("Make the pads grip"), tr("Make the pads slide")});
    const QString begins = tr("Set where clamping starts");
    holding.addChoice({"closesFrom", tr("Start clamping at"), "from", tr("Where you tighten the first station.")},
                      &Holding::from, {tr("the start"), tr("the middle"), tr("the end")}, {begins, begins, begins});
    const TypedFields cauls(fields, "holding.cauls.", over(&model::Piece::holding, &Holding::cauls), usual);
    cauls.add({"caul", tr("Caul under the pads"), "thickness_mm",
               tr("Its thickness; it spreads the force of each pad. 0: none.")},
              &model::Cauls::thickness_m, way::thickness());
    const TypedFields floor(fields, "holding.floor.", over(&model::Piece::holding, &Holding::floor), usual);
    floor.add(
        {"floorFriction", tr("Friction on the floor"), "friction", tr("Between a prop's foot and what it stands on.")},
        &model::Floor::friction, way::number(1, 3));
    const TypedFields backbone(fields, "holding.backbone.", over(&model::Piece::holding, &Holding::backbone));
    Way<std::string> wood = way::wood("give one of the strips' woods by its name");
    wood.read = [read = wood.read](const QString& written, const Shown& shown) {
        return written.trimmed().isEmpty() ? std::string() : read(written, shown);
    };
    backbone.add({"backbone", tr("Wood of the backbone"), "species",
                  tr("Screws go into it. Empty: the wood of the strip next to it."), tr("as the strip next to it")},
                 &model::Backbone::species, wood, {tr("Set the wood of the backbone")});
    addSection("settingsHead", tr("Limit, pads and cauls"), false, fields);
}

// The boat on its blocks

Fields* HoldingPanel::hullFields() {
    Fields* fields = newFields();
    using model::Hull;
    const auto part = over(&model::Piece::holding, &model::Holding::hull);
    TypedFields(fields, "holding.hull", part)
        .add({"hullWeight", tr("Weight of the boat"), {}, tr("With all that is in it. 0: do not check the boat.")},
             &Hull::weight_kg, way::mass(), {tr("Set the weight of the boat to %2")});
    const TypedFields hull(fields, "holding.hull.", part, tr("Set \"%1\" to %2"));
    hull.add({"hullCentreX", tr("Its centre, x"), "centre_x_mm", tr("Where its weight acts.")}, &Hull::centreX_m,
             way::length());
    hull.add({"hullCentreY", tr("Its centre, y"), "centre_y_mm", tr("Where its weight acts.")}, &Hull::centreY_m,
             way::length());
    hull.add({"hullFriction", tr("Friction on the blocks"), "friction", tr("Between the boat and its blocks.")},
             &Hull::friction, way::number(1, 3));
    return fields;
}

void HoldingPanel::makeHull() {
    auto* words = new SteadyWords(QStringLiteral("hullWords"), this);
    auto* caution = new SteadyWords(QStringLiteral("hullCaution"), this);
    auto* unread = new Words(QStringLiteral("blocksUnread"), true, this);
    NotebookTable* table =
        typedTable("blocks", tr("Blocks under the boat"), blocks_, unread, {0, 1, 2}, BlocksModel::xColumn);
    QWidget* buttons = rowTools(table, {"addBlock", tr("Add a block (Insert)"), [this] { blocks_->addBlock(); }},
                                {"removeBlock", tr("Remove this block (Delete)"),
                                 [this, table] { blocks_->removeBlock(table->currentIndex().row()); }});
    Fields* fields = hullFields();
    addSection("hullHead", tr("The boat on its blocks"), false, {words, caution, fields, table, unread, buttons},
               [this, words, caution, fields](const std::shared_ptr<const Shown>& shown) {
                   words->say(shown->plan ? hullWords(shown->plan->holding, shown->display) : QString());
                   caution->say(findingWords(*shown, {"hull", "boat", "block"}));
                   fields->show(shown);
                   blocks_->show(shown);
               });
}

}  // namespace fayline::app
