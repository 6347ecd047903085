// The sections of the holding panel where something is said: tools at hand, limits, what bears, the boat's blocks.
#include <QHeaderView>
#include <algorithm>

#include "app/panels/fields.hpp"
#include "app/panels/figures_model.hpp"
#include "app/panels/holding_panel.hpp"
#include "app/panels/holding_rows.hpp"
#include "app/panels/holding_words.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/stack_models.hpp"
#include "app/panels/support_models.hpp"
#include "app/panels/tools_model.hpp"
#include "core/measure/force.hpp"

namespace fayline::app {

namespace {

// A length of the piece, reached by `at`, as a thickness or as a place along something.
using PlateReach = std::function<double&(boat::Piece&)>;
using ReachOptional = std::function<std::optional<double>&(boat::Piece&)>;

template <class To, class From>
To of(const std::function<To&(boat::Piece&)>& reach, const From& piece) {
    return reach(const_cast<boat::Piece&>(piece));  // only read
}

void addThickness(Fields* fields, const Fields::About& about, const PlateReach& reach) {
    fields->addText(
        about,
        [reach](const Shown& shown) {
            return text(measure::writeThickness(of<double>(reach, shown.piece), shown.display));
        },
        [reach, name = about.name](boat::Piece& piece, const QString& written, const Shown& shown) {
            reach(piece) = readLengthText(written, shown.display);
            return QObject::tr("Set \"%1\" to %2").arg(name, written.trimmed());
        });
}

void addPlace(Fields* fields, const Fields::About& about, const PlateReach& reach) {
    fields->addText(
        about, [reach](const Shown& shown) { return writeLengthText(of<double>(reach, shown.piece), shown.display); },
        [reach, name = about.name](boat::Piece& piece, const QString& written, const Shown& shown) {
            reach(piece) = readLengthText(written, shown.display);
            return QObject::tr("Set \"%1\" to %2").arg(name, written.trimmed());
        });
}

using Write = std::function<QString(double, const measure::Display&)>;

void addOptionalLength(Fields* fields, const Fields::About& about, const ReachOptional& reach, const QString& whenEmpty,
                       const Write& write) {
    fields->addText(
        about,
        [reach, write](const Shown& shown) {
            const std::optional<double> length = of<std::optional<double>>(reach, shown.piece);
            return length ? write(*length, shown.display) : QString();
        },
        [reach, name = about.name](boat::Piece& piece, const QString& written, const Shown& shown) {
            reach(piece) = readOptionalLength(written, shown.display);
            return QObject::tr("Set \"%1\"").arg(name);
        },
        whenEmpty);
}

void addOptionalPlace(Fields* fields, const Fields::About& about, const ReachOptional& reach,
                      const QString& whenEmpty) {
    addOptionalLength(fields, about, reach, whenEmpty,
                      [](double at_m, const measure::Display& display) { return writeLengthText(at_m, display); });
}

void addOptionalThickness(Fields* fields, const Fields::About& about, const ReachOptional& reach,
                          const QString& whenEmpty) {
    addOptionalLength(fields, about, reach, whenEmpty, [](double thickness_m, const measure::Display& display) {
        return text(measure::writeThickness(thickness_m, display));
    });
}

void addFriction(Fields* fields, const Fields::About& about, const PlateReach& reach) {
    fields->addText(
        about, [reach](const Shown& shown) { return text(measure::writeNumber(of<double>(reach, shown.piece))); },
        [reach, name = about.name](boat::Piece& piece, const QString& written, const Shown&) {
            reach(piece) = readNumber(written);
            return QObject::tr("Set \"%1\" to %2").arg(name, written.trimmed());
        });
}

Fields::About about(const char* object, const QString& name, const char* path, const QString& hint) {
    return {QLatin1String(object), name, QLatin1String(path), hint};
}

}  // namespace

// Tools at hand

QWidget* HoldingPanel::toolFields() {
    auto* fields = new Fields(this);
    const auto add = [&](const char* object, int column, const QString& hint, const QString& whenEmpty) {
        const QString name = tools_->headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
        fields->addText(
            {QLatin1String(object), name, {}, hint},
            [this, column](const Shown&) {
                return tools_->index(toolsTable_->currentIndex().row(), column).data(Qt::EditRole).toString();
            },
            [this, column, name](boat::Piece& piece, const QString& written, const Shown& shown) {
                const auto row = static_cast<std::size_t>(std::max(toolsTable_->currentIndex().row(), 0));
                if (row >= piece.holding.tools.size()) return QString();
                boat::Tool& tool = piece.holding.tools[row];
                const std::optional<double> length = readOptionalLength(written, shown.display);
                if (column == ToolsModel::padColumn) tool.pad_m = readLengthText(written, shown.display);
                if (column == ToolsModel::openingColumn) tool.opening_m = length;
                if (column == ToolsModel::throatColumn) tool.throat_m = length;
                if (column == ToolsModel::pitchColumn) tool.pitch_m = length;
                return tr("Change the %1 of a tool").arg(name.toLower());
            },
            whenEmpty);
    };
    add("toolPad", ToolsModel::padColumn, tr("How much of the line its pad covers."), {});
    add("toolOpening", ToolsModel::openingColumn, tr("How far it opens."), tr("not known"));
    add("toolThroat", ToolsModel::throatColumn, tr("How far it reaches over an edge."), tr("not known"));
    add("toolPitch", ToolsModel::pitchColumn, tr("Of its screw; tells a pull as turns past snug."), tr("not known"));
    connect(fields, &Fields::changeAsked, this, &Panel::changeAsked);
    return fields;
}

void HoldingPanel::makeToolsAtHand() {
    auto* unread = new Words(QStringLiteral("toolsUnread"), true, this);
    toolsTable_ = typedTable("tools", tr("Tools at hand"), tools_, unread,
                             {{ToolsModel::nameColumn, QStringLiteral("bar clamp")},
                              {ToolsModel::kindColumn, QStringLiteral("xx clamp")},
                              {ToolsModel::mostColumn, QStringLiteral("12300 N")},
                              {ToolsModel::countColumn, QStringLiteral("000")}},
                             ToolsModel::nameColumn);
    QWidget* buttons = rowTools(
        toolsTable_, "addTool", tr("Add a tool like this one (Insert)"), "removeTool",
        tr("Remove the chosen tools (Delete)"), [this] { tools_->addTool(toolsTable_->currentIndex().row()); },
        [this] { tools_->removeTools(toolsTable_->chosenRows()); });
    auto* fields = static_cast<Fields*>(toolFields());
    auto* counts = new FiguresModel(countColumns(), this);
    NotebookTable* countTable = figuresTable(
        "toolCounts", tr("Tools asked and there"), counts,
        {{0, QStringLiteral("clamp")}, {1, QStringLiteral("000")}, {2, tr("not listed")}, {3, QStringLiteral("000")}},
        0);
    auto* short_ = new SteadyWords(QStringLiteral("toolsShort"), this);
    auto* served = new FiguresModel(servedColumns(), this);
    NotebookTable* servedTable =
        figuresTable("served", tr("Which tool serves which station"), served,
                     {{0, QStringLiteral("00")}, {1, QStringLiteral("bar")}, {2, QStringLiteral("0.00")}}, 1);
    along_.push_back(servedTable);
    connect(toolsTable_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [fields](const auto&) { fields->startAnew(); });
    addSection("toolsHead", tr("Tools at hand"), false,
               {toolsTable_, unread, buttons, fields, countTable, short_, servedTable},
               [this, fields, counts, short_, served](const std::shared_ptr<const Shown>& shown) {
                   tools_->show(shown);
                   if (!toolsTable_->currentIndex().isValid() && tools_->rowCount() > 0)
                       toolsTable_->setCurrentIndex(tools_->index(0, ToolsModel::nameColumn));
                   fields->show(shown);
                   const bool any = tools_->rowCount() > 0;
                   if (fields->isHidden() == any) fields->setVisible(any);
                   if (!shown->plan) return;
                   counts->show(countRows(shown->plan->holding.atHand));
                   short_->say(atHandWords(shown->plan->holding.atHand, shown->display));
                   served->show(servedRows(shown->plan->holding, shown->piece));
               });
}

// Limits and habits

QWidget* HoldingPanel::settingsFields() {
    auto* fields = new Fields(this);
    addThickness(
        fields,
        about("gapLimit", tr("Gap that may be left"), "holding.gap_limit_mm", tr("Between the trim lines, anywhere.")),
        [](boat::Piece& piece) -> double& { return piece.holding.gapLimit_m; });
    addOptionalThickness(
        fields,
        about("glueLineVaries", tr("Glue line may vary by"), "holding.glue_line_varies_mm",
              tr("Between two pads, where it is pressed out. Empty: by its own thickness.")),
        [](boat::Piece& piece) -> std::optional<double>& { return piece.holding.glueLineVaries_m; },
        tr("as thick as it is"));
    fields->addChoice(
        about("pads", tr("Pads"), "holding.pads",
              tr("Pads on dry wood hold the outer strip; on wet or waxed wood they let it slide.")),
        {tr("hold the outer strip"), tr("let it slide")},
        [](const Shown& shown) { return static_cast<int>(shown.piece.holding.pads); },
        [](boat::Piece& piece, int chosen, const Shown&) {
            piece.holding.pads = static_cast<boat::Pads>(chosen);
            return chosen == 0 ? tr("Let pads hold") : tr("Let pads slide");
        });
    fields->addChoice(
        about("closesFrom", tr("Closed from"), "holding.from", tr("Where the first station is closed.")),
        {tr("the start"), tr("the middle"), tr("the end")},
        [](const Shown& shown) { return static_cast<int>(shown.piece.holding.from); },
        [](boat::Piece& piece, int chosen, const Shown&) {
            piece.holding.from = static_cast<boat::From>(chosen);
            return tr("Set where the closing begins");
        });
    addThickness(fields,
                 about("caul", tr("Caul under the pads"), "holding.cauls.thickness_mm",
                       tr("Its thickness; it spreads each pad. 0: none.")),
                 [](boat::Piece& piece) -> double& { return piece.holding.cauls.thickness_m; });
    addFriction(fields,
                about("floorFriction", tr("Friction on the floor"), "holding.floor.friction",
                      tr("Between a prop's foot and what it stands on.")),
                [](boat::Piece& piece) -> double& { return piece.holding.floor.friction; });
    fields->addText(
        about("backbone", tr("Wood of the backbone"), "holding.backbone.species",
              tr("What screws hold in. Empty: that of the strip next to it.")),
        [](const Shown& shown) {
            const std::string& id = shown.piece.holding.backbone.species;
            return id.empty() ? QString() : woodName(shown, id);
        },
        [](boat::Piece& piece, const QString& written, const Shown& shown) {
            const QString name = written.trimmed();
            const auto& known = shown.species;
            const auto found = std::find_if(known.begin(), known.end(), [&](const wood::Species& species) {
                return text(species.name).compare(name, Qt::CaseInsensitive) == 0 || text(species.id) == name;
            });
            if (!name.isEmpty() && found == known.end())
                throw measure::InputError("", "\"" + text(name) + "\" is not a wood that is known",
                                          "give one of the strips' woods by its name");
            piece.holding.backbone.species = name.isEmpty() ? std::string() : found->id;
            return tr("Set the wood of the backbone");
        },
        tr("as the strip next to it"));
    connect(fields, &Fields::changeAsked, this, &Panel::changeAsked);
    return fields;
}

void HoldingPanel::makeSettings() {
    auto* fields = static_cast<Fields*>(settingsFields());
    addSection("settingsHead", tr("Limit, pads and cauls"), false, {fields},
               [fields](const std::shared_ptr<const Shown>& shown) { fields->show(shown); });
}

// What it is bent on

QWidget* HoldingPanel::supportFields() {
    auto* fields = new Fields(this);
    fields->addChoice(
        about("formKind", tr("Bent on"), "form.kind", tr("What bears the stack while the glue hardens.")),
        {tr("a solid form"), tr("posts"), tr("the boat itself")},
        [](const Shown& shown) { return static_cast<int>(shown.piece.form.kind); },
        [](boat::Piece& piece, int chosen, const Shown&) {
            piece.form.kind = static_cast<boat::FormKind>(chosen);
            static const QStringList names{tr("Bend on a solid form"), tr("Bend on posts"), tr("Bend on the boat")};
            return names[chosen];
        });
    addOptionalPlace(
        fields,
        about("carriesOnStart", tr("Carries on before the start"), "form.carries_on_start_mm",
              tr("How far the support runs past the trim line. Empty: as far as the strips; on the boat "
                 "none.")),
        [](boat::Piece& piece) -> std::optional<double>& { return piece.form.carriesOnStart_m; }, tr("as the strips"));
    addOptionalPlace(
        fields,
        about("carriesOnEnd", tr("Carries on past the end"), "form.carries_on_end_mm",
              tr("How far the support runs past the trim line. Empty: as far as the strips; on the boat "
                 "none.")),
        [](boat::Piece& piece) -> std::optional<double>& { return piece.form.carriesOnEnd_m; }, tr("as the strips"));
    connect(fields, &Fields::changeAsked, this, &Panel::changeAsked);
    return fields;
}

void HoldingPanel::makeSupport() {
    auto* fields = static_cast<Fields*>(supportFields());
    auto* unread = new Words(QStringLiteral("postsUnread"), true, this);
    NotebookTable* table = typedTable("posts", tr("Posts of the form"), posts_, unread,
                                      {{PostsModel::atColumn, QStringLiteral("12-11-7+")},
                                       {PostsModel::widthColumn, QStringLiteral("15/64 in")},
                                       {PostsModel::holdsColumn, QStringLiteral("12300 N")},
                                       {PostsModel::thrustColumn, QStringLiteral("12300 N")}},
                                      PostsModel::atColumn);
    along_.push_back(table);
    QWidget* buttons = rowTools(
        table, "addPost", tr("Add a post at the selected place (Insert)"), "removePost",
        tr("Remove this post (Delete)"), [this] { posts_->addPost(middle_m()); },
        [this, table] { posts_->removePost(table->currentIndex().row()); });
    addSection("supportHead", tr("What it is bent on"), false, {fields, table, unread, buttons},
               [this, fields, table, buttons](const std::shared_ptr<const Shown>& shown) {
                   fields->show(shown);
                   posts_->show(shown);
                   const bool posted = shown->pieceIndex >= 0 && shown->piece.form.kind == boat::FormKind::posts;
                   if (table->isHidden() == posted) table->setVisible(posted);
                   if (buttons->isHidden() == posted) buttons->setVisible(posted);
               });
}

// The boat on its blocks

QWidget* HoldingPanel::hullFields() {
    auto* fields = new Fields(this);
    fields->addText(
        about("hullWeight", tr("Weight of the boat"), "holding.hull",
              tr("With all that is in it. 0: not asked whether it stays down.")),
        [](const Shown& shown) { return text(measure::typedMass(shown.piece.holding.hull.weight_kg, shown.display)); },
        [](boat::Piece& piece, const QString& written, const Shown& shown) {
            piece.holding.hull.weight_kg = measure::readMass(text(written), shown.display);
            return tr("Set the weight of the boat to %1").arg(written.trimmed());
        });
    addPlace(fields,
             about("hullCentreX", tr("Its centre, x"), "holding.hull.centre_x_mm", tr("Where its weight acts.")),
             [](boat::Piece& piece) -> double& { return piece.holding.hull.centreX_m; });
    addPlace(fields,
             about("hullCentreY", tr("Its centre, y"), "holding.hull.centre_y_mm", tr("Where its weight acts.")),
             [](boat::Piece& piece) -> double& { return piece.holding.hull.centreY_m; });
    addFriction(fields,
                about("hullFriction", tr("Friction on the blocks"), "holding.hull.friction",
                      tr("Between the boat and its blocks.")),
                [](boat::Piece& piece) -> double& { return piece.holding.hull.friction; });
    connect(fields, &Fields::changeAsked, this, &Panel::changeAsked);
    return fields;
}

void HoldingPanel::makeHull() {
    auto* words = new SteadyWords(QStringLiteral("hullWords"), this);
    auto* caution = new SteadyWords(QStringLiteral("hullCaution"), this);
    auto* unread = new Words(QStringLiteral("blocksUnread"), true, this);
    NotebookTable* table = typedTable("blocks", tr("Blocks under the boat"), blocks_, unread,
                                      {{BlocksModel::xColumn, QStringLiteral("12-11-7+")},
                                       {BlocksModel::yColumn, QStringLiteral("12-11-7+")},
                                       {BlocksModel::pushColumn, QStringLiteral("12300 N")}},
                                      BlocksModel::xColumn);
    QWidget* buttons = rowTools(
        table, "addBlock", tr("Add a block (Insert)"), "removeBlock", tr("Remove this block (Delete)"),
        [this] { blocks_->addBlock(); }, [this, table] { blocks_->removeBlock(table->currentIndex().row()); });
    auto* fields = static_cast<Fields*>(hullFields());
    addSection("hullHead", tr("The boat on its blocks"), false, {words, caution, fields, table, unread, buttons},
               [this, words, caution, fields](const std::shared_ptr<const Shown>& shown) {
                   words->say(shown->plan ? hullWords(shown->plan->holding, shown->display) : QString());
                   caution->say(findingWords(*shown, {"hull", "boat", "block"}));
                   fields->show(shown);
                   blocks_->show(shown);
               });
}

}  // namespace fayline::app
