#include "app/panels/record_panel.hpp"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/look/theme.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/remarks_edit.hpp"
#include "core/laminate/springback/learned.hpp"
#include "core/math/count.hpp"
#include "core/plan/shop.hpp"

namespace fayline::app {

namespace {

// All that figures of a day follow from.
bool sameDay(const model::Record& a, const model::Record& b) {
    return a.when == b.when && a.dryFit == b.dryFit && a.air_C == b.air_C && a.marks == b.marks && a.airs == b.airs &&
           a.on == b.on;
}

}  // namespace

RecordPanel::RecordPanel(QWidget* parent)
    : SectionedPanel(parent), answer_(new AnswerNote(plan::Question::record, QStringLiteral("record"), this)) {
    setObjectName(QStringLiteral("recordPanel"));
    setAccessibleName(tr("Record"));
    QWidget* clocks = makeClocks();
    makeDays();
    makeLessons();
    makeTasks();
    makeReadings();
    makeLearned();
    layOut({answer_, clocks});
}

QWidget* RecordPanel::makeClocks() {
    auto* part = new QWidget(this);
    auto* across = new QHBoxLayout(part);
    across->setContentsMargins(0, 0, 0, 0);
    across->setSpacing(gridStep);
    const auto put = [&](const char* object, const QString& words, const QString& action) {
        QPushButton* button = wordButton(QLatin1String(object), words, part);
        connect(button, &QPushButton::clicked, this, [this, action] { emit actionAsked(action); });
        across->addWidget(button);
    };
    put("openClock", tr("Glue-up clock..."), QStringLiteral("clock"));
    put("openDryFit", tr("Timed dry fit..."), QStringLiteral("dryFit"));
    across->addStretch();
    return part;
}

void RecordPanel::makeDays() {
    const Figures days = figuresTable("days", tr("Glue-ups and dry fits of this piece"), dayColumns());
    days_ = days.table;
    daysModel_ = days.model;
    days_->setSelectionMode(QAbstractItemView::SingleSelection);
    connect(days_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &RecordPanel::showChosen);
    connect(days_, &NotebookTable::removeAsked, this, &RecordPanel::removeDay);

    ofDay_ = new QWidget(this);
    auto* column = new QVBoxLayout(ofDay_);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(gridStep / 2);
    dayWords_ = new SteadyWords(QStringLiteral("dayWords"), ofDay_);
    remarks_ = new RemarksEdit(QStringLiteral("remarks"), ofDay_);
    remarks_->setAccessibleName(tr("Remarks on this day"));
    remarks_->setPlaceholderText(tr("Remarks: what went well, what to do otherwise"));
    QToolButton* remove =
        iconButton(QStringLiteral("removeDay"), QStringLiteral("remove"), tr("Remove this day (Delete)"), ofDay_);
    connect(remarks_, &RemarksEdit::typed, this, &RecordPanel::remark);
    connect(remove, &QToolButton::clicked, this, &RecordPanel::removeDay);
    column->addWidget(dayWords_);
    column->addWidget(remarks_);
    column->addWidget(remove, 0, Qt::AlignLeft);
    ofDays_.push_back(addSection("daysHead", tr("Glue-ups and dry fits"), true, {days_, ofDay_},
                                 [this](const std::shared_ptr<const Shown>&) { showDays(); }));
}

void RecordPanel::makeLessons() {
    const Figures compared =
        figuresTable("dayCompared", tr("Planned and real times of each kind of work"), comparedColumns());
    auto* words = new SteadyWords(QStringLiteral("dayLearned"), this);
    rates_ = wordButton(QStringLiteral("useDayRates"), tr("Use these times"), this);
    rates_->setToolTip(tr("The crew of this piece then works as fast as measured. One step to undo."));
    connect(rates_, &QPushButton::clicked, this, &RecordPanel::useRates);
    ofDays_.push_back(addSection("dayLearnedHead", tr("Learned from that day"), true, {compared.table, words, rates_},
                                 [this, compared, words](const std::shared_ptr<const Shown>&) {
                                     const Past* past = chosenPast();
                                     const bool any = past && *past && !(*past)->compared.empty();
                                     compared.model->show(any ? comparedRows(**past) : std::vector<FigureRow>(),
                                                          shown_->outOfDate);
                                     showIf(compared.table, any);
                                     words->say(any ? lessons(**past) : tr("Nothing was measured."));
                                     showIf(rates_, any && !(*past)->learned.said.empty());
                                 }));
}

void RecordPanel::makeTasks() {
    const Figures tasks = figuresTable("dayTasks", tr("Tasks of that day, planned and real"), pastTaskColumns());
    ofDays_.push_back(addSection("dayTasksHead", tr("Tasks of that day"), false, {tasks.table},
                                 [this, model = tasks.model](const std::shared_ptr<const Shown>&) {
                                     const Past* past = chosenPast();
                                     model->show(past && *past ? pastTaskRows(**past) : std::vector<FigureRow>(),
                                                 shown_->outOfDate);
                                 }));
}

// What a day that is of the piece as it was takes is a plan; it is kept as long as nothing else changes.
Past RecordPanel::pastOf(const model::Record& record) {
    plan::Shop shop;
    shop.display = shown_->display;
    shop.species = shown_->species;
    if (shown_->adhesives) shop.adhesives = *shown_->adhesives;
    const bool older = plan::hasChangedSince(shown_->piece, record);
    model::Piece was;
    if (older) {
        was = laminate::asMeasured(shown_->piece, record);
        was.record = {record};
        was.record[0].notes.clear();
        was.record[0].letGo.clear();
        const auto known = std::ranges::find(older_, was, &std::pair<model::Piece, Past>::first);
        if (known != older_.end()) return known->second;
    }
    Past past = plan::pastDay(shown_->piece, shop, shown_->plan->day, record);
    if (older) older_.emplace_back(std::move(was), past);
    return past;
}

// While a hand moves the figures stay as they were.
void RecordPanel::takePast() {
    if (shown_->pieceIndex < 0 || !shown_->plan) {
        past_.assign(shown_->pieceIndex < 0 ? 0 : shown_->piece.record.size(), std::nullopt);
        pastOf_.reset();
        return;
    }
    const std::vector<model::Record>& records = shown_->piece.record;
    const bool sameDays =
        pastOf_ && pastOf_->samePieceAs(*shown_) && std::ranges::equal(pastOf_->piece.record, records, sameDay);
    if (sameDays && (shown_->outOfDate || followsHand(*shown_) || pastOf_->plan == shown_->plan)) return;
    if (!pastOf_ || !pastOf_->samePieceAs(*shown_) || older_.size() > records.size() + 20) older_.clear();
    past_.clear();
    for (const model::Record& record : records) past_.push_back(pastOf(record));
    pastOf_ = shown_;
}

void RecordPanel::show(const Shown& shown) {
    if (!shown_ || !shown_->samePieceAs(shown)) daysTold_ = 0;
    takeShown(shown);
    answer_->show(*shown_);
    takePast();
    for (Section* section : ofDays_) showIf(section, !past_.empty());
    for (Section* section : sections_) section->show(shown_);
}

// The newest day is chosen where another piece is shown, or one more day is there.
void RecordPanel::showDays() {
    const std::vector<model::Record>& records = shown_->piece.record;
    std::vector<FigureRow> rows;
    for (std::size_t i = 0; i < past_.size(); ++i) rows.push_back(dayRow(records[i], past_[i]));
    const int count = math::countOf(rows);
    daysModel_->show(std::move(rows), shown_->outOfDate);
    const bool more = count > std::exchange(daysTold_, count);
    if (count > 0 && (more || chosen() < 0)) days_->setCurrentIndex(daysModel_->index(count - 1, 0));
    showDay();
}

int RecordPanel::chosen() const {
    const int row = days_->currentIndex().row();
    return row < math::countOf(past_) ? row : -1;
}

const Past* RecordPanel::chosenPast() const {
    const int row = chosen();
    return row < 0 ? nullptr : &past_[row];
}

void RecordPanel::showChosen() {
    if (!shown_) return;
    for (Section* section : ofDays_) section->show(shown_);
}

void RecordPanel::showDay() {
    const int row = chosen();
    showIf(ofDay_, row >= 0);
    if (row < 0) return;
    const model::Record& record = shown_->piece.record[row];
    dayWords_->say(dayWords(shown_->piece, record, past_[row], shown_->display));
    remarks_->show(text(record.notes));
}

// What is typed in one go is one step.
void RecordPanel::remark(const QString& words) {
    const int row = chosen();
    if (row < 0 || shown_->pieceIndex < 0) return;
    Change change{tr("Remarks on a day"), QStringLiteral("remarks %1").arg(row), shown_->piece};
    change.after.record[row].notes = text(words);
    emit changeAsked(change);
}

void RecordPanel::removeDay() {
    const int row = chosen();
    if (row < 0 || shown_->pieceIndex < 0) return;
    Change change{
        shown_->piece.record[row].dryFit ? tr("Remove a dry fit") : tr("Remove a glue-up"), {}, shown_->piece};
    change.after.record.erase(change.after.record.begin() + row);
    emit changeAsked(change);
}

void RecordPanel::useRates() {
    const int row = chosen();
    if (row < 0 || !shown_->plan || shown_->outOfDate) return;
    const Past past = pastOf(shown_->piece.record[row]);
    if (!past) return;
    Change change{tr("Use the measured times"), {}, shown_->piece};
    change.after.crew.rates = past->learned.rates;
    emit changeAsked(change);
}

}  // namespace fayline::app

#include "moc_record_panel.cpp"
