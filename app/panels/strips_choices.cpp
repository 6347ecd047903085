// The section of the strips panel that shows every stack that could be glued.
#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <algorithm>
#include <cmath>

#include "app/panels/choice_counts.hpp"
#include "app/panels/choices_picture.hpp"
#include "app/panels/figures_model.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/strips_panel.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

namespace {

constexpr int scaleParts = 5;

// From the least to the most of those that can be; what cannot is drawn at the edge where it lies beyond.
ChoicesPicture::Axis axisOf(const plan::Choices& choices, ChoiceCount count, const units::Display& display) {
    double least = INFINITY;
    double most = -INFINITY;
    const auto reach = [&](bool any) {
        for (const plan::Choice& choice : choices.all) {
            const std::optional<double> value = choiceCount(choice, count);
            if (!(choice.possible || choice.asItIs || any) || !value || !std::isfinite(*value)) continue;
            least = std::min(least, *value);
            most = std::max(most, *value);
        }
    };
    reach(false);
    if (!(least <= most)) reach(true);
    if (!(least <= most)) least = most = 0;
    ChoicesPicture::Axis axis;
    axis.name = choiceCountNames()[static_cast<int>(count)];
    const double span = most > least ? most - least : std::max(std::abs(most), 1e-3);
    axis.least = least >= 0 ? std::max(0.0, least - 0.08 * span) : least - 0.08 * span;
    axis.most = most + 0.08 * span;
    axis.marks = choiceScale(count, axis.least, axis.most, scaleParts, display);
    return axis;
}

// Where a count stands on its axis; without a number at its worse edge.
double placed(const plan::Choice& choice, ChoiceCount count, const ChoicesPicture::Axis& axis) {
    const std::optional<double> value = choiceCount(choice, count);
    if (value && std::isfinite(*value)) return *value;
    return moreIsBetter(count) ? axis.least : axis.most;
}

ChoicesPicture::Picture pictureOf(const plan::Choices& choices, ChoiceCount across, ChoiceCount up,
                                  const units::Display& display) {
    ChoicesPicture::Picture picture;
    picture.across = axisOf(choices, across, display);
    picture.up = axisOf(choices, up, display);
    for (const plan::Choice& choice : choices.all) {
        ChoicesPicture::Mark mark;
        mark.across = placed(choice, across, picture.across);
        mark.up = placed(choice, up, picture.up);
        mark.possible = choice.possible;
        mark.paretoOptimal = choice.paretoOptimal;
        mark.named = !choice.named.empty();
        mark.asItIs = choice.asItIs;
        const QString tells = choice.possible ? choiceCountText(choice, up, display) + QStringLiteral(", ") +
                                                    choiceCountText(choice, across, display)
                                              : text(plan::writeWithin(choice.whyNot, display));
        mark.told = QStringLiteral("%1: %2").arg(choiceName(choice, display), tells);
        mark.whole = choiceInFull(choice, display);
        picture.marks.push_back(std::move(mark));
    }
    return picture;
}

QString wordsOf(const plan::Choices& choices, const units::Display& display) {
    if (choices.namedIndex < 0) return QObject::tr("No other strip thickness works here.");
    return text(plan::writeText(choices.all[choices.namedIndex].named, display));
}

}  // namespace

// Which of two counts goes across and which upwards.
QWidget* StripsPanel::makeChoiceAxes() {
    auto* part = new QWidget(this);
    auto* grid = new QGridLayout(part);
    grid->setContentsMargins(0, 0, 0, 0);
    const auto box = [&](const char* object, const QString& name, const QString& label, ChoiceCount first, int row) {
        auto* chosen = new QComboBox(part);
        chosen->setObjectName(QLatin1String(object));
        chosen->setAccessibleName(name);
        chosen->addItems(choiceCountNames());
        chosen->setCurrentIndex(static_cast<int>(first));
        addLabelled(grid, row, label, chosen);
        connect(chosen, &QComboBox::currentIndexChanged, this, &StripsPanel::showChoicesPicture);
        return chosen;
    };
    upwards_ = box("choiceUp", tr("What is drawn up"), tr("Up"), ChoiceCount::strain, 0);
    across_ = box("choiceAcross", tr("What is drawn along"), tr("Along"), ChoiceCount::strips, 1);
    grid->setColumnStretch(1, 1);
    return part;
}

void StripsPanel::makeChoices() {
    picture_ = new ChoicesPicture(this);
    picture_->setObjectName(QStringLiteral("choicesPicture"));
    picture_->setAccessibleName(tr("Other strip thicknesses, drawn up and along"));
    auto* words = new SteadyWords(QStringLiteral("choiceNamed"), this);
    const Figures figures = figuresTable("choices", tr("Best trade-offs"), choiceColumns());
    choices_ = figures.model;
    NotebookTable* table = figures.table;
    table->setSelectionMode(QAbstractItemView::SingleSelection);
    choicesTable_ = table;
    connect(picture_, &ChoicesPicture::choiceAsked, this, &StripsPanel::choose);
    connect(table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this](const QModelIndex& row) {
        const auto at = static_cast<std::size_t>(row.row());
        if (!showingChosen_ && row.isValid() && at < choiceOfRow_.size()) choose(choiceOfRow_[at]);
    });
    chosenWords_ = new SteadyWords(QStringLiteral("choiceChosen"), this);
    const Figures changes = figuresTable("choiceChanges", tr("What this stack would change"), choiceChangeColumns());
    changes_ = changes.model;
    changesTable_ = changes.table;
    changesTable_->setSelectionMode(QAbstractItemView::NoSelection);
    changesTable_->setFocusPolicy(Qt::NoFocus);  // it is read: what is chosen stays chosen beside it
    take_ = wordButton(QStringLiteral("takeChoice"), tr("Take this stack"), this);
    connect(take_, &QPushButton::clicked, this, &StripsPanel::takeChosen);
    Section* section =
        addSection("choicesHead", tr("Other strip thicknesses"), false,
                   {makeChoiceAxes(), picture_, chosenWords_, changesTable_, take_, words, table}, nullptr);
    section->setShow([this, words, section](const std::shared_ptr<const Shown>& shown) {
        noteStudy(section, plan::Study::choices);
        if (!knownChoices()) words->say(awaited());
        // While a point is dragged nothing here changes but that it is out of date.
        const ChoicesShown now{studiedPlan(plan::Study::choices), shown->display, studyIsOld(plan::Study::choices)};
        if (choicesShown_ && *choicesShown_ == now) return;
        choicesShown_ = now;
        const plan::Choices* known = knownChoices();
        if (known) words->say(wordsOf(*known, shown->display));
        ChoiceRows made = known ? choiceRows(*known, shown->display) : ChoiceRows();
        choiceOfRow_ = std::move(made.indices);
        choicesTable_->setLinesUnder(made.linesUnder);
        showingChosen_ = true;
        choices_->show(std::move(made.rows), studyIsOld(plan::Study::choices));
        showingChosen_ = false;
        showChoicesPicture();
        showChosen();
    });
}

const plan::Choices* StripsPanel::knownChoices() const {
    return studied(plan::Study::choices) && studied(plan::Study::choices)->choices
               ? &*studied(plan::Study::choices)->choices
               : nullptr;
}

void StripsPanel::showChoicesPicture() {
    const plan::Choices* known = shown_ ? knownChoices() : nullptr;
    if (!known) return picture_->setPicture({});
    ChoicesPicture::Picture picture = pictureOf(*known, static_cast<ChoiceCount>(across_->currentIndex()),
                                                static_cast<ChoiceCount>(upwards_->currentIndex()), shown_->display);
    picture.faint = studyIsOld(plan::Study::choices);
    picture_->setPicture(std::move(picture));
}

void StripsPanel::choose(int index) {
    const plan::Choices* known = shown_ ? knownChoices() : nullptr;
    if (!known || index < 0 || index >= math::countOf(known->all)) return;
    chosen_ = known->all[index];
    showChosen();
}

// The one that the user chose, as long as it is among them; else the suggested one, else what the piece has.
int StripsPanel::chosenChoice() const {
    const plan::Choices* known = shown_ ? knownChoices() : nullptr;
    if (!known) return -1;
    const auto indexOf = [&](const auto& is) {
        const auto found = std::ranges::find_if(known->all, is);
        return found == known->all.end() ? -1 : static_cast<int>(found - known->all.begin());
    };
    if (chosen_) {
        const int index = indexOf([&](const plan::Choice& choice) {
            return choice.strips == chosen_->strips && choice.gluings == chosen_->gluings;
        });
        if (index >= 0) return index;
    }
    return known->namedIndex >= 0 ? known->namedIndex : indexOf(&plan::Choice::asItIs);
}

void StripsPanel::showChosen() {
    const plan::Choices* known = shown_ ? knownChoices() : nullptr;
    const int index = chosenChoice();
    const auto today =
        known ? std::ranges::find_if(known->all, &plan::Choice::asItIs) : std::vector<plan::Choice>::const_iterator();
    const bool any = known && index >= 0 && today != known->all.end();
    const bool old = any && studyIsOld(plan::Study::choices);
    picture_->choose(any ? index : -1);
    showingChosen_ = true;
    const auto row = std::ranges::find(choiceOfRow_, any ? index : -1);
    choicesTable_->setCurrentIndex(
        row == choiceOfRow_.end() ? QModelIndex() : choices_->index(static_cast<int>(row - choiceOfRow_.begin()), 0));
    if (row == choiceOfRow_.end()) choicesTable_->clearSelection();
    showingChosen_ = false;
    showIf(changesTable_, any);
    showIf(take_, any);
    if (!any) return chosenWords_->say({});
    const plan::Choice& choice = known->all[index];
    QString words = choiceName(choice, shown_->display);
    if (!choice.possible)
        words += tr(": will not work, %1.").arg(text(plan::writeWithin(choice.whyNot, shown_->display)));
    const bool beaten = choice.possible && !choice.paretoOptimal && !choice.asItIs;
    if (beaten) words += tr(": another is as good or better in everything.");
    if (choice.asItIs) words += tr(": your stack today.");
    chosenWords_->say(words);
    changes_->show(choiceChangeRows(*today, choice, shown_->display), old);
    take_->setEnabled(!old && choice.possible && !choice.asItIs);
}

void StripsPanel::takeChosen() {
    const plan::Choices* known = shown_ ? knownChoices() : nullptr;
    const int index = chosenChoice();
    if (!known || index < 0 || studyIsOld(plan::Study::choices) || shown_->pieceIndex < 0) return;
    const plan::Choice& choice = known->all[index];
    if (!choice.possible) return;
    Change change{tr("Choose %1").arg(choiceName(choice, shown_->display)), {}, shown_->piece};
    change.after.stack = plan::adopt(shown_->piece.stack, choice);
    if (change.after.stack == shown_->piece.stack) return;
    chosen_ = choice;  // it stays the one that is shown, as what the piece then has
    emit changeAsked(change);
}

}  // namespace fayline::app
