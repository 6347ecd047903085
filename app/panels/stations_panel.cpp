#include "app/panels/stations_panel.hpp"

#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "app/look/icons.hpp"
#include "app/look/names.hpp"
#include "app/look/theme.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"

namespace fayline::app {

StationsPanel::StationsPanel(QWidget* parent)
    : Panel(parent),
      stations_(new StationsModel(this)),
      answer_(new AnswerNote(plan::Question::holding, QStringLiteral("holding"), this)),
      plot_(new AlongPlot(this)),
      table_(new NotebookTable(this)),
      unread_(new Words(QStringLiteral("stationsUnread"), true, this)),
      reason_(new Words(QStringLiteral("evenReason"), true, this)) {
    setObjectName(QStringLiteral("stationsPanel"));
    setAccessibleName(tr("Stations"));
    plot_->setObjectName(QStringLiteral("plot"));
    plot_->setAccessibleName(tr("Stations on the bend of the line, by length along it"));
    table_->setObjectName(QStringLiteral("stations"));
    table_->setAccessibleName(tr("Stations"));
    table_->setModel(stations_);
    table_->setTwoLines(true);
    table_->setMostRows(14);
    table_->setColumns({{StationsModel::numberColumn, QStringLiteral("00")},
                        {StationsModel::kindColumn, QStringLiteral("clamp")},
                        {StationsModel::alongColumn, QStringLiteral("12-11-7+")},
                        {StationsModel::xColumn, QStringLiteral("12-11-7+")},
                        {StationsModel::fixedColumn, {}}},
                       StationsModel::kindColumn);

    QVBoxLayout* layout = panelLayout(this);
    layout->addWidget(answer_);
    layout->addWidget(plot_);
    layout->addWidget(table_);
    layout->addWidget(unread_);
    layout->addWidget(makeTools());
    layout->addWidget(new Heading(tr("Set out evenly"), this));
    layout->addWidget(makeEvenly());
    layout->addWidget(reason_);
    layout->addStretch();
    tabInReadingOrder(this);

    connect(stations_, &PieceTable::changeAsked, this, &Panel::changeAsked);
    connect(stations_, &PieceTable::unreadChanged, this, [this] { unread_->say(stations_->unread()); });
    connect(plot_, &AlongPlot::placeHovered, this, &Panel::placeHovered);
    connect(plot_, &AlongPlot::placeSelected, this, &Panel::placeSelected);
    connect(table_, &NotebookTable::placeHovered, this, &Panel::placeHovered);
    connect(table_, &NotebookTable::placeChosen, this, &Panel::placeSelected);
}

QWidget* StationsPanel::makeTools() {
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

QWidget* StationsPanel::makeEvenly() {
    auto* evenly = new QWidget(this);
    auto* grid = new QGridLayout(evenly);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(gridStep);
    grid->setVerticalSpacing(gridStep / 2);
    const auto addEdit = [&](const char* object, const QString& name, const QString& hint, int row) {
        auto* edit = new QLineEdit(evenly);
        edit->setObjectName(QLatin1String(object));
        edit->setAccessibleName(name);
        edit->setAccessibleDescription(hint);
        edit->setToolTip(hint);
        edit->setFont(tabularFont(edit->font()));
        auto* label = new QLabel(name, evenly);
        label->setBuddy(edit);
        grid->addWidget(label, row, 0);
        grid->addWidget(edit, row, 1);
        connect(edit, &QLineEdit::returnPressed, this, &StationsPanel::setOutEvenly);
        return edit;
    };
    from_ = addEdit("evenFrom", tr("From"), tr("Along the line from its first point"), 0);
    to_ = addEdit("evenTo", tr("To"), tr("Along the line from its first point"), 1);
    spacing_ = addEdit("evenSpacing", tr("Not further apart than"),
                       tr("Stations are spread evenly, no further apart than this"), 2);
    kind_ = new QComboBox(evenly);
    kind_->setObjectName(QStringLiteral("evenKind"));
    kind_->setAccessibleName(tr("Held by"));
    for (const boat::HoldKind kind : allHoldKinds()) kind_->addItem(holdIcon(kind), holdName(kind));
    auto* label = new QLabel(tr("Held by"), evenly);
    label->setBuddy(kind_);
    grid->addWidget(label, 3, 0);
    grid->addWidget(kind_, 3, 1);
    QPushButton* go = wordButton(QStringLiteral("setOutEvenly"), tr("Set out evenly"), evenly);
    go->setToolTip(tr("Fixed stations stay, all others give way to the new ones"));
    grid->addWidget(go, 4, 1);
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    connect(go, &QPushButton::clicked, this, &StationsPanel::setOutEvenly);
    return evenly;
}

void StationsPanel::setOutEvenly() {
    if (!shown_ || shown_->pieceIndex < 0) return;
    const auto read = [this](QLineEdit* edit) {
        try {
            return readLengthText(edit->text(), shown_->display);
        } catch (const measure::InputError& error) {
            throw measure::InputError("", text(edit->accessibleName()) + ": " + error.wrong(), error.accepted());
        }
    };
    try {
        const double from_m = read(from_);
        const double to_m = read(to_);
        const double spacing_m = read(spacing_);
        const boat::HoldKind kind = allHoldKinds()[static_cast<std::size_t>(std::max(kind_->currentIndex(), 0))];
        reason_->say({});
        stations_->setOutEvenly(from_m, to_m, spacing_m, kind);
    } catch (const measure::InputError& error) {
        reason_->say(why(error));
    }
}

void StationsPanel::show(const Shown& shown) {
    const bool another =
        !shown_ || shown_->pieceIndex != shown.pieceIndex || shown_->display.lengths != shown.display.lengths;
    shown_ = std::make_shared<const Shown>(shown);
    answer_->show(*shown_);
    stations_->show(shown_);
    showPlot();
    showEvenDefaults(another);
}

void StationsPanel::showEvenDefaults(bool another) {
    if (another) {
        reason_->say({});
        for (QLineEdit* edit : {from_, to_, spacing_}) edit->setModified(false);
    }
    if (shown_->pieceIndex < 0) return;
    const auto fill = [this](QLineEdit* edit, double length_m) {
        const QString written = writeLengthText(length_m, shown_->display);
        if (!edit->isModified() && edit->text() != written) edit->setText(written);
    };
    constexpr double firstTry_m = 0.15;
    const bool metric = shown_->display.lengths == measure::LengthNotation::millimetres;
    fill(from_, 0);
    fill(spacing_, metric ? firstTry_m : 6 * measure::inch_m);
    if (shown_->plan) fill(to_, shown_->plan->line.fair.line.length());
}

void StationsPanel::showPlot() {
    if (shown_->pieceIndex < 0 || !shown_->plan || shown_->plan->line.samples.size() < 2) return plot_->setNothing();
    const std::vector<line::Place>& samples = shown_->plan->line.samples;
    AlongPlot::Picture picture;
    picture.display = shown_->display;
    picture.caption = tr("Stations, and how the line bends");
    picture.from_m = samples.front().at_m;
    picture.to_m = samples.back().at_m;
    AlongPlot::Curve curve;
    curve.main = false;
    double most = 1e-3;
    for (const line::Place& place : samples) {
        if (!std::isfinite(place.curvature_per_m)) continue;
        curve.points.append({place.at_m, std::abs(place.curvature_per_m)});
        most = std::max(most, std::abs(place.curvature_per_m));
    }
    picture.most = most * 1.08;
    picture.ticks.push_back({0, tr("straight")});
    for (const double radius : niceRadii(most, shown_->display))
        picture.ticks.push_back({1 / radius, writeLengthText(radius, shown_->display)});
    picture.curves.push_back(std::move(curve));
    int row = 0;
    for (const holding::StationPlace& station : shown_->plan->holding.stations) {
        picture.from_m = std::min(picture.from_m, station.at_m);
        picture.to_m = std::max(picture.to_m, station.at_m);
        // Numbers that would touch each other are left out; the table has them all.
        const std::size_t every = 1 + shown_->plan->holding.stations.size() / 14;
        const bool named = static_cast<std::size_t>(row++) % every == 0;
        picture.marks.push_back({station.at_m, named ? QString::number(station.number) : QString(), true});
    }
    picture.reading = [display = shown_->display](double at_m) {
        return tr("%1 along").arg(writeLengthText(at_m, display));
    };
    plot_->setPicture(std::move(picture));
}

void StationsPanel::lightPlace(std::optional<double> at_m) {
    plot_->lightPlace(at_m);
    table_->lightPlace(at_m);
}

void StationsPanel::selectPlace(std::optional<double> at_m) {
    selected_m_ = at_m;
    plot_->selectPlace(at_m);
}

}  // namespace fayline::app
