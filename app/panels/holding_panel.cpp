#include "app/panels/holding_panel.hpp"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <utility>

#include "app/panels/along_plot.hpp"
#include "app/panels/even_stations.hpp"
#include "app/panels/figures_model.hpp"
#include "app/panels/holding_changes.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/source_note.hpp"
#include "app/panels/station_fields.hpp"
#include "app/panels/support_models.hpp"
#include "app/panels/tools_model.hpp"

namespace fayline::app {

HoldingPanel::HoldingPanel(QWidget* parent)
    : SectionedPanel(parent),
      stations_(new StationsModel(this)),
      tools_(new ToolsModel(this)),
      blocks_(new BlocksModel(this)),
      answer_(new AnswerNote(plan::Question::holding, QStringLiteral("holding"), this)),
      gaps_(new AlongPlot(this)),
      pulls_(new AlongPlot(this)),
      table_(nullptr),
      unread_(new Words(QStringLiteral("stationsUnread"), true, this)),
      fields_(new StationFields(this)) {
    setObjectName(QStringLiteral("holdingPanel"));
    setAccessibleName(tr("Holding"));
    gaps_->setObjectName(QStringLiteral("plot"));
    gaps_->setAccessibleName(tr("Gap between stack and form, by length along the line"));
    pulls_->setObjectName(QStringLiteral("pullPlot"));
    pulls_->setAccessibleName(tr("Pull at each station and pressure on the form, by length along the line"));
    pulls_->setLow(true);

    const Link clampedTo = newLink("toForm", tr("Change in Form"), plan::Question::form);
    clampedTo_ = clampedTo.words;
    std::vector<QWidget*> above{answer_, clampedTo.part};
    for (QWidget* part : makeTools()) above.push_back(part);
    above.push_back(gaps_);
    makeProposal();
    makeStations();
    makePulls();
    makeEvenly();
    makeClosing();
    makeOverRun();
    makeProps();
    makeScrews();
    makeStraps();
    makeToolsAtHand();
    makeSettings();
    makeHull();

    layOut(above);

    for (AlongPlot* plot : {gaps_, pulls_}) tellPlaces(plot);
    for (NotebookTable* table : along_) tellPlaces(table);
}

void HoldingPanel::makeStations() {
    using Of = StationsModel;
    table_ =
        typedTable("stations", tr("Stations"), stations_, unread_,
                   {Of::numberColumn, Of::kindColumn, Of::alongColumn, Of::pullColumn, Of::gapColumn, Of::fixedColumn},
                   Of::kindColumn);
    table_->setTwoLines(true);
    table_->setGrows(NotebookTable::Grows::never);  // where a station stands is chosen first
    along_.push_back(table_);
    QWidget* tools = rowTools(table_,
                              {"addStation", tr("Add a station at the selected place (Insert)"),
                               [this] { stations_->addStation(middle_m()); }},
                              {"removeStation", tr("Remove the chosen stations (Delete)"),
                               [this] { stations_->removeStations(table_->chosenRows()); }});
    addSection("stationsHead", tr("Stations"), true, {table_, unread_, tools, fields_},
               [this](const std::shared_ptr<const Shown>& shown) {
                   stations_->show(shown);
                   if (!table_->currentIndex().isValid() && stations_->rowCount() > 0)
                       table_->setCurrentIndex(stations_->index(0, StationsModel::kindColumn));
                   fields_->show(shown);
                   chooseStations();
               });
    connect(fields_, &StationFields::changeAsked, this, &Panel::changeAsked);
    connect(table_->selectionModel(), &QItemSelectionModel::selectionChanged, this, &HoldingPanel::chooseStations);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &HoldingPanel::chooseStations);
}

void HoldingPanel::makePulls() {
    addSection("pullsHead", tr("Force and pressure"), false, {pulls_},
               [this](const auto&) { pictures_ ? pulls_->setPicture(pictures_->pull) : pulls_->setNothing(); });
}

void HoldingPanel::makeEvenly() {
    auto* evenly = new EvenStations(stations_, this);
    addSection("evenHead", tr("Set out evenly"), false, {evenly},
               [evenly](const std::shared_ptr<const Shown>& shown) { evenly->show(shown); });
}

double HoldingPanel::middle_m() const {
    return selected_m_.value_or(shown_ && shown_->plan ? shown_->plan->line.fair.line.length() / 2 : 0);
}

// The fields show the station at the cursor first, and change all that are chosen.
void HoldingPanel::chooseStations() {
    std::vector<int> chosen;
    const int current = stations_->stationOf(table_->currentIndex().row());
    if (current >= 0) chosen.push_back(current);
    for (const int row : table_->chosenRows()) {
        const int station = stations_->stationOf(row);
        if (station >= 0 && station != current) chosen.push_back(station);
    }
    fields_->choose(std::move(chosen));
}

const plan::HoldingStudy* HoldingPanel::study(plan::Study part) const {
    return studied(part) ? &*studied(part)->holdingStudy : nullptr;
}

bool HoldingPanel::pressed(plan::Study part) const {
    return studied(part) && studied(part)->holding.held.outcome != holding::Outcome::notPressed;
}

void HoldingPanel::show(const Shown& shown) {
    const bool otherUnits = !shown_ || !(shown_->display == shown.display);
    takeShown(shown);
    answer_->show(*shown_);
    showTools();
    const bool drawn = shown_->pieceIndex >= 0 && shown_->plan && shown_->plan->line.samples.size() >= 2;
    pictures_ = drawn ? std::optional(holdingPictures(shown_)) : std::nullopt;
    pictures_ ? gaps_->setPicture(pictures_->gap) : gaps_->setNothing();
    const bool planned = shown_->pieceIndex >= 0 && shown_->plan;
    showIf(props_, planned && !shown_->plan->holding.props.empty());
    showIf(screws_, planned && !shown_->plan->holding.screws.empty());
    showIf(straps_, planned && !shown_->plan->holding.straps.empty());
    for (Section* section : sections_) section->show(shown_);
    if (otherUnits) table_->horizontalHeader()->viewport()->update();
}

void HoldingPanel::lightPlace(std::optional<double> at_m) {
    gaps_->lightPlace(at_m);
    pulls_->lightPlace(at_m);
    for (NotebookTable* table : along_) table->lightPlace(at_m);
}

void HoldingPanel::selectPlace(std::optional<double> at_m) {
    selected_m_ = at_m;
    gaps_->selectPlace(at_m);
    pulls_->selectPlace(at_m);
    const int row = at_m ? stations_->rowAtPlace(*at_m) : -1;
    if (row < 0 && !table_->hasFocus()) table_->clearSelection();  // chosen elsewhere is something else
    if (row < 0 || table_->selectionModel()->isRowSelected(row)) return;
    table_->setCurrentIndex(stations_->index(row, StationsModel::kindColumn));
}

}  // namespace fayline::app
