#include "app/panels/holding_panel.hpp"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>

#include "app/look/theme.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/even_stations.hpp"
#include "app/panels/holding_plots.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/station_fields.hpp"

namespace fayline::app {

HoldingPanel::HoldingPanel(QWidget* parent)
    : Panel(parent),
      stations_(new StationsModel(this)),
      answer_(new AnswerNote(plan::Question::holding, QStringLiteral("holding"), this)),
      gaps_(new AlongPlot(this)),
      pulls_(new AlongPlot(this)),
      table_(new NotebookTable(this)),
      unread_(new Words(QStringLiteral("stationsUnread"), true, this)),
      fields_(new StationFields(this)) {
    setObjectName(QStringLiteral("holdingPanel"));
    setAccessibleName(tr("Holding"));
    gaps_->setObjectName(QStringLiteral("plot"));
    gaps_->setAccessibleName(tr("Gap between stack and form, by length along the line"));
    pulls_->setObjectName(QStringLiteral("pullPlot"));
    pulls_->setAccessibleName(tr("Pull at each station and pressure on the form, by length along the line"));
    pulls_->setLow(true);

    QVBoxLayout* layout = panelLayout(this);
    layout->addWidget(answer_);
    layout->addWidget(gaps_);
    layout->addWidget(pulls_);
    makeStations();
    for (Section* section : sections_) layout->addWidget(section);
    layout->addStretch();
    tabInReadingOrder(this);

    for (AlongPlot* plot : {gaps_, pulls_}) {
        connect(plot, &AlongPlot::placeHovered, this, &Panel::placeHovered);
        connect(plot, &AlongPlot::placeSelected, this, &Panel::placeSelected);
    }
    for (NotebookTable* table : along_) {
        connect(table, &NotebookTable::placeHovered, this, &Panel::placeHovered);
        connect(table, &NotebookTable::placeChosen, this, &Panel::placeSelected);
    }
}

void HoldingPanel::makeStations() {
    table_->setObjectName(QStringLiteral("stations"));
    table_->setAccessibleName(tr("Stations"));
    table_->setModel(stations_);
    table_->setTwoLines(true);
    table_->setMostRows(14);
    table_->setColumns({{StationsModel::numberColumn, QStringLiteral("00")},
                        {StationsModel::kindColumn, QStringLiteral("clamp")},
                        {StationsModel::alongColumn, QStringLiteral("12-11-7+")},
                        {StationsModel::pullColumn, QStringLiteral("12300 N")},
                        {StationsModel::gapColumn, QStringLiteral("Gap, mm")},
                        {StationsModel::fixedColumn, {}}},
                       StationsModel::kindColumn);
    along_.push_back(table_);
    auto* stations = new Section(
        QStringLiteral("stationsHead"), tr("Stations"), true,
        [this](const std::shared_ptr<const Shown>& shown) {
            stations_->show(shown);
            if (!table_->currentIndex().isValid() && stations_->rowCount() > 0)
                table_->setCurrentIndex(stations_->index(0, StationsModel::kindColumn));
            fields_->show(shown);
            chooseStations();
        },
        this);
    stations->add(table_);
    stations->add(unread_);
    stations->add(makeTools());
    stations->add(fields_);
    sections_.push_back(stations);

    auto* evenly = new EvenStations(stations_, this);
    auto* even = new Section(
        QStringLiteral("evenHead"), tr("Set out evenly"), false,
        [this, evenly](const std::shared_ptr<const Shown>& shown) { evenly->show(shown); }, this);
    even->add(evenly);
    sections_.push_back(even);

    connect(stations_, &PieceTable::changeAsked, this, &Panel::changeAsked);
    connect(stations_, &PieceTable::unreadChanged, this, [this] { unread_->say(stations_->unread()); });
    connect(fields_, &StationFields::changeAsked, this, &Panel::changeAsked);
    connect(table_->selectionModel(), &QItemSelectionModel::selectionChanged, this, &HoldingPanel::chooseStations);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &HoldingPanel::chooseStations);
}

QWidget* HoldingPanel::makeTools() {
    auto* tools = new QWidget(this);
    auto* side = new QHBoxLayout(tools);
    side->setContentsMargins(0, 0, 0, 0);
    side->setSpacing(gridStep / 4);
    QToolButton* add = iconButton(QStringLiteral("addStation"), QStringLiteral("add"),
                                  tr("Add a station at the selected place (Insert)"), tools);
    QToolButton* remove = iconButton(QStringLiteral("removeStation"), QStringLiteral("remove"),
                                     tr("Remove the chosen stations (Delete)"), tools);
    side->addWidget(add);
    side->addWidget(remove);
    side->addStretch();
    const auto insert = [this] {
        const double middle_m = shown_ && shown_->plan ? shown_->plan->line.fair.line.length() / 2 : 0;
        stations_->addStation(selected_m_.value_or(middle_m));
    };
    const auto take = [this] { stations_->removeStations(table_->chosenRows()); };
    connect(add, &QToolButton::clicked, this, insert);
    connect(remove, &QToolButton::clicked, this, take);
    connect(table_, &NotebookTable::insertAsked, this, insert);
    connect(table_, &NotebookTable::removeAsked, this, take);
    return tools;
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

void HoldingPanel::show(const Shown& shown) {
    const bool otherUnits = !shown_ || !(shown_->display == shown.display);
    shown_ = std::make_shared<const Shown>(shown);
    answer_->show(*shown_);
    showPlots();
    for (Section* section : sections_) section->show(shown_);
    if (otherUnits) table_->horizontalHeader()->viewport()->update();
}

void HoldingPanel::showPlots() {
    if (shown_->pieceIndex < 0 || !shown_->plan || shown_->plan->line.samples.size() < 2) {
        gaps_->setNothing();
        pulls_->setNothing();
        return;
    }
    HoldingPictures pictures = holdingPictures(shown_);
    gaps_->setPicture(std::move(pictures.gap));
    pulls_->setPicture(std::move(pictures.pull));
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
    const QModelIndex there = stations_->index(row, StationsModel::kindColumn);
    if (row < 0 || table_->currentIndex().row() == row || table_->selectionModel()->isRowSelected(row)) return;
    table_->setCurrentIndex(there);
}

}  // namespace fayline::app
