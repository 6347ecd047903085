#include "app/panels/schedule_panel.hpp"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <utility>

#include "app/panels/lanes_chart.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/schedule_rows.hpp"
#include "app/panels/shed_line.hpp"
#include "app/panels/typed_fields.hpp"
#include "core/math/count.hpp"
#include "core/model/shed.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/remedies.hpp"

namespace fayline::app {

SchedulePanel::SchedulePanel(QWidget* parent)
    : SectionedPanel(parent),
      answer_(new AnswerNote(plan::Question::time, QStringLiteral("crew"), this)),
      gluings_(new QComboBox(this)),
      chart_(new LanesChart(this)),
      momentWords_(new SteadyWords(QStringLiteral("momentWords"), this)) {
    setObjectName(QStringLiteral("schedulePanel"));
    setAccessibleName(tr("Time"));
    gluings_->setObjectName(QStringLiteral("gluing"));
    gluings_->setAccessibleName(tr("Which glue-up is shown"));
    gluings_->setFocusPolicy(Qt::StrongFocus);
    gluings_->hide();
    chart_->setObjectName(QStringLiteral("lanes"));
    chart_->setAccessibleName(tr("Hands, batches and joints by the minute"));
    chart_->setAccessibleDescription(
        tr("Left and Right move the minute, with Shift by ten; the drawing shows what is wet then."));

    Fields* fields = main_ = newFields();
    TypedFields(fields, "crew.", over(&model::Piece::crew))
        .add({"startAt", tr("Begin at"), "start_at", tr("Clock time")}, &model::Crew::startAt_s, way::clock());
    const Link hands = newLink("toGlue", tr("Change in Glue"), plan::Question::glue);
    hands_ = hands.words;
    makeChance();
    makeRemedies();
    addFigures("facesHead", tr("Joints"), false, "faceTimes", tr("Joints"), faceColumns(), faceRows);
    addFigures("cupsHead", tr("Batches"), false, "cupTimes", tr("Batches"), cupColumns(), cupRows);
    addFigures("tasksHead", tr("Tasks"), false, "tasks", tr("Tasks in their order"), taskColumns(), taskRows);
    makeRates();
    makeUncertain();

    layOut({answer_, fields, hands.part, gluings_, chart_, momentWords_});
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
        words->say(any ? text(plan::writeTexts(plan::chanceTexts(known->day, *known->dayStudy), shown_->display))
                       : QString());
    });
}

void SchedulePanel::makeRemedies() {
    auto* words = new SteadyWords(QStringLiteral("remediesWords"), this);
    const Figures figures = figuresTable("remedies", tr("What gains time"), remedyColumns());
    remedies_ = figures.model;
    remediesTable_ = figures.table;
    remedyAsks_ = new SteadyWords(QStringLiteral("remedyAsks"), this);
    adopt_ = wordButton(QStringLiteral("adoptRemedy"), tr("Use this"), this);
    connect(adopt_, &QPushButton::clicked, this, &SchedulePanel::adoptRemedy);
    connect(remediesTable_, &QAbstractItemView::doubleClicked, this, &SchedulePanel::adoptRemedy);
    connect(remediesTable_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &SchedulePanel::sayRemedy);
    Section* section =
        addSection("remediesHead", tr("Gain time"), true, {words, remediesTable_, remedyAsks_, adopt_}, nullptr);
    section->setShow([this, words, section](const std::shared_ptr<const Shown>&) {
        noteStudy(section, plan::Study::day);
        const plan::Plan* known = studied(plan::Study::day);
        const bool any = known && known->dayStudy && !known->day.glue.batches.empty();
        words->say(any ? text(plan::writeText(plan::remediesText(known->day, *known->dayStudy), shown_->display))
                       : QString());
        remedies_->show(any ? remedyRows(known->dayStudy->remedies, shown_->display) : std::vector<FigureRow>(),
                        studyIsOld(plan::Study::day));
        const bool some = remedies_->rowCount() > 0;
        for (QWidget* part : {static_cast<QWidget*>(remediesTable_), static_cast<QWidget*>(adopt_)}) showIf(part, some);
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
    remedyAsks_->say(any ? text(plan::writeTexts(chosen->asks, shown_->display)) : QString());
}

void SchedulePanel::adoptRemedy() {
    const plan::Remedy* chosen = chosenRemedy();
    if (!chosen || !shown_ || shown_->pieceIndex < 0) return;
    emit changeAsked({tr("Use %1").arg(text(plan::writeWithin(chosen->brief, shown_->display))),
                      {},
                      plan::withRemedy(shown_->piece, *chosen)});
}

// A section with a table of the gluing that is shown.
void SchedulePanel::addFigures(const char* head, const QString& title, bool open, const char* object,
                               const QString& name, std::vector<FigureColumn> columns, GluingRows rows) {
    const auto [table, model] = figuresTable(object, name, std::move(columns));
    addSection(head, title, open, {table}, [this, model, rows](const std::shared_ptr<const Shown>& shown) {
        const plan::GluingDay* of = gluing();
        model->show(of ? rows(*shown, *of) : std::vector<FigureRow>(), shown->outOfDate);
    });
}

void SchedulePanel::makeRates() {
    Fields* fields = newFields();
    const TypedFields typed(fields, "crew.rates.", over(&model::Piece::crew, &model::Crew::rates));
    typed.add(
        {"mixTakes", tr("Mixing a batch"), "mix_min", tr("Measuring out, two minutes of stirring, scraping the sides")},
        &model::Rates::mix_s, way::duration());
    typed.add({"wetOutRate", tr("Wetting out, a pair of hands"), "wet_out_m2_min",
               tr("At 20 °C (68 °F); the colder, the slower")},
              &model::Rates::wetOut_m2_s, way::areaRate());
    typed.add({"spreadRate", tr("Spreading, a pair of hands"), "spread_m2_min",
               tr("At 20 °C (68 °F); the colder, the slower")},
              &model::Rates::spread_m2_s, way::areaRate());
    typed.add({"stackStrip", tr("Handling a strip"), "stack_strip_min", tr("Turning it over or laying it on the pile")},
              &model::Rates::stackStrip_s, way::duration());
    typed.add({"soakTakes", tr("Soaking in"), "soak_min", tr("Wait between wetting out and spreading")},
              &model::Rates::soak_s, way::duration());
    typed.add({"carryTakes", tr("Carrying the stack"), "carry_min", {}}, &model::Rates::carry_s, way::duration());
    const TypedFields station(fields, "crew.rates.station_min.",
                              over(&model::Piece::crew, &model::Crew::rates, &model::Rates::station));
    station.add({"clampTakes", tr("A clamp, strap or wedge"), "clamp", {}}, &model::StationTimes::clamp_s,
                way::duration());
    station.add({"propTakes", tr("A prop"), "prop", {}}, &model::StationTimes::prop_s, way::duration());
    station.add({"jackTakes", tr("A jack"), "jack", {}}, &model::StationTimes::jack_s, way::duration());
    station.add({"screwTakes", tr("A screw"), "screw", {}}, &model::StationTimes::screw_s, way::duration());
    typed.add({"scrapeRate", tr("Scraping, m a minute"), "scrape_m_min", tr("Of one edge, by one pair of hands")},
              &model::Rates::scrape_m_s, way::number(60));
    typed.add({"wipeRate", tr("Wiping"), "wipe_m2_min", {}}, &model::Rates::wipe_m2_s, way::areaRate());
    typed.add({"sandRate", tr("Sanding"), "sand_m2_min", {}}, &model::Rates::sand_m2_s, way::areaRate());
    ShedLine* shed = newShedLine(model::ShedPart::crew);
    addSection("ratesHead", tr("How long things take"), false, {fields, shed}, [fields, shed](const auto& shown) {
        fields->show(shown);
        shed->show(shown);
    });
}

void SchedulePanel::makeUncertain() {
    Fields* fields = newFields();
    const TypedFields typed(fields, "crew.", over(&model::Piece::crew));
    typed.add({"pace", tr("Pace of the day"), "pace_pct",
               tr("All work of a day, quicker or slower; your record narrows it. Shop practice")},
              &model::Crew::pace, way::shareWithin1());
    typed.add({"glueUncertain", tr("Open time and pot life"), "glue_uncertain_pct",
               tr("Glue quicker or slower than its sheet. Shop practice")},
              &model::Crew::glueUncertain, way::shareWithin1());
    typed.add(
        {"uncertain", tr("A single task"), "uncertain_pct", tr("Quickest: half of that less. Slowest: all of it more")},
        &model::Crew::uncertain, way::shareWithin1());
    const auto addMishap = [&](const QString& name, const char* path, model::Mishap model::Mishaps::*which,
                               const QString& often) {
        const TypedFields mishap(fields, path, over(&model::Piece::crew, &model::Crew::mishaps, which));
        mishap.add({name + "Chance", often, "chance_pct", tr("Glue-ups in a hundred; 0: never. Shop practice")},
                   &model::Mishap::chance, way::shareWithin1());
        mishap.add({name + "Costs", tr("and costs"), "min", {}}, &model::Mishap::lasts_s, way::duration());
    };
    using model::Mishaps;
    addMishap("stripBreaks", "crew.mishaps.strip_breaks.", &Mishaps::stripBreaks, tr("A strip breaks"));
    addMishap("clampSlips", "crew.mishaps.clamp_slips.", &Mishaps::clampSlips, tr("A clamp slips"));
    addMishap("cupSpills", "crew.mishaps.cup_spills.", &Mishaps::cupSpills, tr("A batch is spilled"));
    addSection("uncertainHead", tr("Times vary by"), false, fields);
}

void SchedulePanel::showGluings() {
    const auto count = shown_->pieceIndex >= 0 && shown_->plan ? math::countOf(shown_->plan->day.gluings) : 0;
    showIf(gluings_, count > 1);
    if (gluings_->count() == count) return;
    const QSignalBlocker blocker(gluings_);
    gluings_->clear();
    for (int i = 0; i < count; ++i) gluings_->addItem(tr("Glue-up %1 of %2").arg(i + 1).arg(count));
    gluings_->setCurrentIndex(count > 0 ? shown_->plan->day.worstGluing : -1);
}

void SchedulePanel::show(const Shown& shown) {
    takeShown(shown);
    answer_->show(*shown_);
    main_->show(shown_);
    hands_->setText(shown_->pieceIndex < 0 ? QString() : tr("Pairs of hands: %1").arg(shown_->piece.crew.hands));
    showGluings();
    showChart();
    for (Section* section : sections_) section->show(shown_);
}

void SchedulePanel::showChart() {
    const plan::GluingDay* of = gluing();
    showIf(chart_, of != nullptr);
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
        momentWords_->say(of ? tr("Point at a minute: the drawing shows what is wet and clamped then.") : QString());
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
