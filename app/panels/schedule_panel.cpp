#include "app/panels/schedule_panel.hpp"

#include <QComboBox>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <utility>

#include "app/panels/lanes_chart.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/schedule_rows.hpp"
#include "app/panels/typed_fields.hpp"
#include "core/math/count.hpp"
#include "core/plan/day_words.hpp"
#include "core/plan/remedies.hpp"

namespace fayline::app {

namespace {

boat::Crew& crewOf(boat::Piece& piece) {
    return piece.crew;
}

boat::Rates& ratesOf(boat::Piece& piece) {
    return piece.crew.rates;
}

template <boat::Mishap boat::Mishaps::*which>
boat::Mishap& mishapOf(boat::Piece& piece) {
    return piece.crew.mishaps.*which;
}

boat::StationTimes& stationTimesOf(boat::Piece& piece) {
    return piece.crew.rates.station;
}

QString clockWidth() {
    return QStringLiteral("00:00");
}

QString durationWidth() {
    return QStringLiteral("-1 h 20 min");
}

}  // namespace

SchedulePanel::SchedulePanel(QWidget* parent)
    : SectionedPanel(parent),
      answer_(new AnswerNote(plan::Question::time, QStringLiteral("crew"), this)),
      gluings_(new QComboBox(this)),
      chart_(new LanesChart(this)),
      momentWords_(new SteadyWords(QStringLiteral("momentWords"), this)) {
    setObjectName(QStringLiteral("schedulePanel"));
    setAccessibleName(tr("Schedule"));
    gluings_->setObjectName(QStringLiteral("gluing"));
    gluings_->setAccessibleName(tr("Which gluing is shown"));
    gluings_->setFocusPolicy(Qt::StrongFocus);
    gluings_->hide();
    chart_->setObjectName(QStringLiteral("lanes"));
    chart_->setAccessibleName(tr("Hands, cups and faces by the minute"));
    chart_->setAccessibleDescription(
        tr("Left and Right move the minute that is pointed at, with Shift by ten; the drawing shows what is wet and "
           "held by then."));

    makeChance();
    makeRemedies();
    makeFaces();
    makeCups();
    makeTasks();
    makeCrew();
    makeRates();
    makeUncertain();

    QVBoxLayout* layout = panelLayout(this);
    layout->addWidget(answer_);
    layout->addWidget(gluings_);
    layout->addWidget(chart_);
    layout->addWidget(momentWords_);
    for (Section* section : sections_) layout->addWidget(section);
    layout->addStretch();
    tabInReadingOrder(this);
    connect(chart_, &LanesChart::minutePointed, this, &SchedulePanel::pointAt);
    connect(gluings_, &QComboBox::activated, this, [this] {
        pointAt(std::nullopt);
        if (shown_) show(*shown_);
    });
}

const plan::GluingDay* SchedulePanel::gluing() const {
    return gluingOf(*shown_, gluings_->currentIndex());
}

void SchedulePanel::makeChance() {
    auto* words = new SteadyWords(QStringLiteral("chanceWords"), this);
    Section* section = addSection("chanceHead", tr("Chance"), true, {words}, nullptr);
    section->setShow([this, words, section](const std::shared_ptr<const Shown>&) {
        noteStudy(section, plan::Study::day);
        const plan::Plan* known = studied(plan::Study::day);
        const bool any = known && known->dayStudy && !known->day.glue.batches.empty();
        words->say(any ? text(plan::chanceWords(known->day, *known->dayStudy)) : QString());
    });
}

void SchedulePanel::makeRemedies() {
    auto* words = new SteadyWords(QStringLiteral("remediesWords"), this);
    remedies_ = new FiguresModel(remedyColumns(), this);
    remediesTable_ = figuresTable("remedies", tr("What would give more time"), remedies_,
                                  {{0, tr("one more pair of hands")}, {1, durationWidth()}, {2, tr("> 99")}}, 0);
    remedyAsks_ = new SteadyWords(QStringLiteral("remedyAsks"), this);
    adopt_ = wordButton(QStringLiteral("adoptRemedy"), tr("Take the chosen one"), this);
    connect(adopt_, &QPushButton::clicked, this, &SchedulePanel::adoptRemedy);
    connect(remediesTable_, &QAbstractItemView::doubleClicked, this, &SchedulePanel::adoptRemedy);
    connect(remediesTable_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &SchedulePanel::sayRemedy);
    Section* section =
        addSection("remediesHead", tr("More time"), true, {words, remediesTable_, remedyAsks_, adopt_}, nullptr);
    section->setShow([this, words, section](const std::shared_ptr<const Shown>&) {
        noteStudy(section, plan::Study::day);
        const plan::Plan* known = studied(plan::Study::day);
        const bool any = known && known->dayStudy && !known->day.glue.batches.empty();
        words->say(any ? text(plan::remediesWords(known->day, *known->dayStudy)) : QString());
        remedies_->show(any ? remedyRows(known->dayStudy->remedies) : std::vector<FigureRow>(),
                        studyIsOld(plan::Study::day));
        const bool some = remedies_->rowCount() > 0;
        for (QWidget* part : {static_cast<QWidget*>(remediesTable_), static_cast<QWidget*>(adopt_)})
            if (part->isHidden() == some) part->setVisible(some);
        sayRemedy();
    });
}

const plan::Remedy* SchedulePanel::chosenRemedy() const {
    const plan::Plan* known = studied(plan::Study::day);
    const int row = remediesTable_->currentIndex().row();
    if (!known || !known->dayStudy || row < 0 || row >= math::countOf(known->dayStudy->remedies)) return nullptr;
    return &known->dayStudy->remedies[row];
}

void SchedulePanel::sayRemedy() {
    const plan::Remedy* chosen = chosenRemedy();
    const bool any = chosen != nullptr;
    if (adopt_->isEnabled() != any) adopt_->setEnabled(any);
    remedyAsks_->say(any ? text(chosen->asks) : QString());
}

void SchedulePanel::adoptRemedy() {
    const plan::Remedy* chosen = chosenRemedy();
    if (!chosen || !shown_ || shown_->pieceIndex < 0) return;
    emit changeAsked({tr("Take %1").arg(text(chosen->brief)), {}, plan::withRemedy(shown_->piece, *chosen)});
}

void SchedulePanel::makeFaces() {
    auto* model = new FiguresModel(faceColumns(), this);
    NotebookTable* table = figuresTable("faceTimes", tr("Faces"), model,
                                        {{0, QStringLiteral("00-00")},
                                         {1, clockWidth()},
                                         {2, clockWidth()},
                                         {3, tr("Open until")},
                                         {4, durationWidth()}},
                                        0);
    addSection("facesHead", tr("Faces"), true, {table}, [this, model](const std::shared_ptr<const Shown>& shown) {
        const plan::GluingDay* of = gluing();
        model->show(of ? faceRows(*shown, *of) : std::vector<FigureRow>(), shown->outOfDate);
    });
}

void SchedulePanel::makeCups() {
    auto* model = new FiguresModel(cupColumns(), this);
    NotebookTable* table = figuresTable(
        "cupTimes", tr("Cups"), model,
        {{0, QStringLiteral("00")}, {1, clockWidth()}, {2, tr("Used up")}, {3, clockWidth()}, {4, durationWidth()}}, 0);
    addSection("cupsHead", tr("Cups"), true, {table}, [this, model](const std::shared_ptr<const Shown>& shown) {
        const plan::GluingDay* of = gluing();
        model->show(of ? cupRows(*shown, *of) : std::vector<FigureRow>(), shown->outOfDate);
    });
}

void SchedulePanel::makeTasks() {
    auto* model = new FiguresModel(taskColumns(), this);
    NotebookTable* table = figuresTable(
        "tasks", tr("Tasks in their order"), model,
        {{0, tr("carry the stack to its place")}, {1, clockWidth()}, {2, QStringLiteral("1 h 20 min")}}, 0);
    addSection("tasksHead", tr("Tasks"), false, {table}, [this, model](const std::shared_ptr<const Shown>& shown) {
        const plan::GluingDay* of = gluing();
        model->show(of ? taskRows(*shown, *of) : std::vector<FigureRow>(), shown->outOfDate);
    });
}

void SchedulePanel::makeCrew() {
    auto* fields = new Fields(this);
    const TypedFields typed{fields, crewOf, QStringLiteral("crew.")};
    typed.addWhole({QStringLiteral("hands"), tr("Pairs of hands"), QStringLiteral("hands"), tr("You count as one")},
                   &boat::Crew::hands);
    typed.addClock({QStringLiteral("startAt"), tr("Begin at"), QStringLiteral("start_at"), tr("Time on the wall")},
                   &boat::Crew::startAt_s);
    connect(fields, &Fields::changeAsked, this, &Panel::changeAsked);
    addSection("crewHead", tr("Crew"), true, {fields},
               [fields](const std::shared_ptr<const Shown>& shown) { fields->show(shown); });
}

void SchedulePanel::makeRates() {
    auto* fields = new Fields(this);
    const TypedFields typed{fields, ratesOf, QStringLiteral("crew.rates.")};
    typed.addDuration({QStringLiteral("mixTakes"), tr("Mixing a cup"), QStringLiteral("mix_min"),
                       tr("Measuring out, two minutes of stirring, scraping the sides")},
                      &boat::Rates::mix_s);
    typed.addAreaRate({QStringLiteral("wetOutRate"), tr("Wetting out, a pair of hands"),
                       QStringLiteral("wet_out_m2_min"), tr("At 20 C; the colder, the slower")},
                      &boat::Rates::wetOut_m2_s);
    typed.addAreaRate({QStringLiteral("spreadRate"), tr("Spreading, a pair of hands"), QStringLiteral("spread_m2_min"),
                       tr("At 20 C; the colder, the slower")},
                      &boat::Rates::spread_m2_s);
    typed.addDuration({QStringLiteral("stackStrip"), tr("Handling a strip"), QStringLiteral("stack_strip_min"),
                       tr("Turning it over or laying it on the pile")},
                      &boat::Rates::stackStrip_s);
    typed.addDuration({QStringLiteral("soakTakes"), tr("Soaking in"), QStringLiteral("soak_min"),
                       tr("Wait between wetting out and spreading")},
                      &boat::Rates::soak_s);
    typed.addDuration({QStringLiteral("carryTakes"), tr("Carrying the stack"), QStringLiteral("carry_min"), {}},
                      &boat::Rates::carry_s);
    const TypedFields station{fields, stationTimesOf, QStringLiteral("crew.rates.station_min.")};
    station.addDuration({QStringLiteral("clampTakes"), tr("A clamp, strap or wedge"), QStringLiteral("clamp"), {}},
                        &boat::StationTimes::clamp_s);
    station.addDuration({QStringLiteral("propTakes"), tr("A prop"), QStringLiteral("prop"), {}},
                        &boat::StationTimes::prop_s);
    station.addDuration({QStringLiteral("jackTakes"), tr("A jack"), QStringLiteral("jack"), {}},
                        &boat::StationTimes::jack_s);
    station.addDuration({QStringLiteral("screwTakes"), tr("A screw"), QStringLiteral("screw"), {}},
                        &boat::StationTimes::screw_s);
    typed.addNumber({QStringLiteral("scrapeRate"), tr("Scraping, m a minute"), QStringLiteral("scrape_m_min"),
                     tr("Of one edge, by one pair of hands")},
                    &boat::Rates::scrape_m_s, 60);
    typed.addAreaRate({QStringLiteral("wipeRate"), tr("Wiping"), QStringLiteral("wipe_m2_min"), {}},
                      &boat::Rates::wipe_m2_s);
    typed.addAreaRate({QStringLiteral("sandRate"), tr("Sanding"), QStringLiteral("sand_m2_min"), {}},
                      &boat::Rates::sand_m2_s);
    connect(fields, &Fields::changeAsked, this, &Panel::changeAsked);
    addSection("ratesHead", tr("How long things take"), false, {fields},
               [fields](const std::shared_ptr<const Shown>& shown) { fields->show(shown); });
}

void SchedulePanel::makeUncertain() {
    auto* fields = new Fields(this);
    const TypedFields typed{fields, crewOf, QStringLiteral("crew.")};
    typed.addShareWithin1(
        {QStringLiteral("pace"), tr("Pace of the day"), QStringLiteral("pace_pct"),
         tr("By how much all work of a day goes quicker or slower than planned; the record of earlier "
            "gluings narrows it. Common practice, no source")},
        &boat::Crew::pace);
    typed.addShareWithin1(
        {QStringLiteral("glueUncertain"), tr("Open time and pot life"), QStringLiteral("glue_uncertain_pct"),
         tr("By how much the glue is quicker or slower than its sheet: temperature, product, mixing. "
            "Common practice, no source")},
        &boat::Crew::glueUncertain);
    typed.addShareWithin1({QStringLiteral("uncertain"), tr("A single task"), QStringLiteral("uncertain_pct"),
                           tr("It takes half of that less at the quickest and all of it more at the slowest")},
                          &boat::Crew::uncertain);
    const auto addMishap = [fields](const char* object, const QString& often, const QString& costs, auto part,
                                    const char* key) {
        const TypedFields mishap{fields, part, QStringLiteral("crew.mishaps.") + QLatin1String(key) + QLatin1Char('.')};
        const QString name = QString::fromLatin1(object);
        mishap.addShareWithin1({name + QStringLiteral("Chance"), often, QStringLiteral("chance_pct"),
                                tr("On so many gluings in a hundred; 0: never. Common practice, no source")},
                               &boat::Mishap::chance);
        mishap.addDuration({name + QStringLiteral("Costs"), costs, QStringLiteral("min"), {}}, &boat::Mishap::lasts_s);
    };
    addMishap("stripBreaks", tr("A strip breaks"), tr("and costs"), mishapOf<&boat::Mishaps::stripBreaks>,
              "strip_breaks");
    addMishap("clampSlips", tr("A clamp slips"), tr("and costs"), mishapOf<&boat::Mishaps::clampSlips>, "clamp_slips");
    addMishap("cupSpills", tr("A cup is knocked over"), tr("and costs"), mishapOf<&boat::Mishaps::cupSpills>,
              "cup_spills");
    connect(fields, &Fields::changeAsked, this, &Panel::changeAsked);
    addSection("uncertainHead", tr("How far days differ"), false, {fields},
               [fields](const std::shared_ptr<const Shown>& shown) { fields->show(shown); });
}

void SchedulePanel::showGluings() {
    const auto count = shown_->pieceIndex >= 0 && shown_->plan ? math::countOf(shown_->plan->day.gluings) : 0;
    if (gluings_->isHidden() == (count > 1)) gluings_->setVisible(count > 1);
    if (gluings_->count() == count) return;
    const QSignalBlocker blocker(gluings_);
    gluings_->clear();
    for (int i = 0; i < count; ++i) gluings_->addItem(tr("Gluing %1 of %2").arg(i + 1).arg(count));
    gluings_->setCurrentIndex(count > 0 ? shown_->plan->day.worstGluing : -1);
}

void SchedulePanel::show(const Shown& shown) {
    takeShown(shown);
    answer_->show(*shown_);
    showGluings();
    showChart();
    for (Section* section : sections_) section->show(shown_);
}

void SchedulePanel::showChart() {
    const plan::GluingDay* of = gluing();
    if (chart_->isHidden() == (of != nullptr)) chart_->setVisible(of != nullptr);
    if (of) chart_->setPicture(lanesPicture(*shown_, *of));
    // What was pointed at is told of the new plan.
    if (chart_->litMinute() || momentWords_->isHidden() == (of != nullptr)) pointAt(chart_->litMinute());
}

void SchedulePanel::pointAt(std::optional<double> at_s) {
    const bool before = chart_->litMinute().has_value();
    const plan::GluingDay* of = shown_ ? gluing() : nullptr;
    if (!of) at_s.reset();
    chart_->lightMinute(at_s);
    if (!at_s) {
        momentWords_->say(of ? tr("Point at a minute: the drawing shows what is wet and held by then.") : QString());
        if (before) emit momentPointed(std::nullopt);
        return;
    }
    const PointedMoment pointed = pointedMoment(*shown_, *of, *at_s);
    momentWords_->say(pointed.words);
    emit momentPointed(pointed);
}

void SchedulePanel::hideEvent(QHideEvent* event) {
    SectionedPanel::hideEvent(event);
    pointAt(std::nullopt);
}

}  // namespace fayline::app
