#include "app/panels/strips_panel.hpp"

#include <algorithm>
#include <cmath>

#include "app/panels/along_plot.hpp"
#include "app/panels/fields.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "core/plan/findings/breaking_wording.hpp"
#include "core/wood/species.hpp"

namespace fayline::app {

StripsPanel::StripsPanel(QWidget* parent)
    : SectionedPanel(parent),
      strips_(new StripsModel(this)),
      groups_(new GroupsModel(this)),
      widths_(new WidthsModel(this)),
      answer_(new AnswerNote(plan::Question::strips, QStringLiteral("stack"), this)),
      plot_(new AlongPlot(this)),
      stripsTable_(new NotebookTable(this)),
      spares_(new Words(QStringLiteral("spares"), false, this)),
      groupsUnread_(new Words(QStringLiteral("groupsUnread"), true, this)),
      groupFields_(newFields()),
      drying_(new SteadyWords(QStringLiteral("dryingWords"), this)),
      stackFields_(newFields()) {
    setObjectName(QStringLiteral("stripsPanel"));
    setAccessibleName(tr("Strips"));
    plot_->setObjectName(QStringLiteral("plot"));
    plot_->setAccessibleName(tr("Bend of the strip nearest to breaking, by length along the line"));
    stripsTable_->setObjectName(QStringLiteral("strips"));
    stripsTable_->setAccessibleName(tr("Strips as planned"));
    stripsTable_->setModel(strips_);
    stripsTable_->setTwoLines(true);
    stripsTable_->setColumns(strips_->widths({0, 1, 2, 3, 4}), StripsModel::shareColumn);
    groupsTable_ = typedTable("groups", tr("Strips, from the form outwards"), groups_, groupsUnread_, {0, 1, 2},
                              GroupsModel::woodColumn);
    groupsTable_->setGrows(NotebookTable::Grows::never);  // a stack does not get thicker in passing
    groupsTable_->setSelectionMode(QAbstractItemView::SingleSelection);
    makeChoices();
    makeStrips();
    makeGroupFields();
    makeWood();
    makeWidths();
    makeStackFields();
    makeLimits();

    layOut({answer_, groupsTable_, groupsUnread_, makeGroupTools(), plot_});

    tellPlaces(plot_);
    for (NotebookTable* table : {stripsTable_, widthsTable_}) tellPlaces(table);
    tellSources(stripsTable_);
    connect(groupsTable_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this] {
        groupFields_->startAnew();
        if (!shown_) return;
        showDrying();
        wood_->show(shown_);
    });
}

void StripsPanel::makeStrips() {
    addSection("stripsHead", tr("Strips to cut"), true, {stripsTable_, spares_},
               [this](const std::shared_ptr<const Shown>& shown) {
                   strips_->show(shown);
                   showSpares();
               });
}

// Rich text that can be copied from.
Words* StripsPanel::newBook(const char* object) {
    auto* words = new Words(QLatin1String(object), false, this);
    words->setTextFormat(Qt::RichText);
    words->setTextInteractionFlags(Qt::TextSelectableByMouse);
    return words;
}

void StripsPanel::makeWood() {
    Words* words = newBook("wood");
    wood_ = addSection(
        "woodHead", tr("About this wood"), false, {words}, [this, words](const std::shared_ptr<const Shown>& shown) {
            const int group = chosenGroup();
            const wood::Species* species =
                group < 0 ? nullptr : wood::findSpecies(shown->species, shown->piece.stack.strips[group].species);
            words->say(species ? woodText(*species, shown->display) : tr("Nothing is known of this wood."));
        });
}

void StripsPanel::makeLimits() {
    Words* words = newBook("limitsText");
    addSection("limitsHead", tr("Checks"), false, {words}, [words](const std::shared_ptr<const Shown>& shown) {
        words->say(shown->plan ? limitsText(shown->plan->stack, shown->display) : tr("No plan yet."));
    });
}

void StripsPanel::makeWidths() {
    auto* unread = new Words(QStringLiteral("widthsUnread"), true, this);
    widthsTable_ = typedTable("widths", tr("Widths along the line"), widths_, unread, {0, 1}, WidthsModel::atColumn);
    addSection("widthsHead", tr("Widths"), false, {widthsTable_, unread, makeWidthTools()},
               [this](const std::shared_ptr<const Shown>& shown) { widths_->show(shown); });
}

int StripsPanel::chosenGroup() const {
    const int groups = groups_->rowCount();
    if (groups == 0) return -1;
    const QModelIndex current = groupsTable_->currentIndex();
    return current.isValid() ? std::min(current.row(), groups - 1) : 0;
}

QWidget* StripsPanel::makeGroupTools() {
    const auto move = [this](int by) { groups_->moveGroup(chosenGroup(), by); };
    connect(groupsTable_, &NotebookTable::moveAsked, this, move);
    return rowTools(
        groupsTable_,
        {"addStrips", tr("Add strips outside these (Insert)"), [this] { groups_->addGroup(chosenGroup()); }},
        {"removeStrips", tr("Remove these strips (Delete)"), [this] { groups_->removeGroup(chosenGroup()); }},
        {{"stripsIn", tr("Move these strips towards the form (Alt+Up)"), [move] { move(-1); }, "up"},
         {"stripsOut", tr("Move these strips outwards (Alt+Down)"), [move] { move(+1); }, "down"}});
}

QWidget* StripsPanel::makeWidthTools() {
    const auto add = [this] {
        const double length_m = shown_ && shown_->plan ? shown_->plan->line.fair.line.length() : 0;
        widths_->addWidth(selected_m_.value_or(length_m));
    };
    return rowTools(widthsTable_, {"addWidth", tr("Add a width at the selected place (Insert)"), add},
                    {"removeWidth", tr("Remove this width (Delete)"),
                     [this] { widths_->removeWidth(widthsTable_->currentIndex().row()); }});
}

void StripsPanel::show(const Shown& shown) {
    takeShown(shown);
    answer_->show(*shown_);
    groups_->show(shown_);
    if (!groupsTable_->currentIndex().isValid() && groups_->rowCount() > 0)
        groupsTable_->setCurrentIndex(groups_->index(0, GroupsModel::countColumn));
    showPlot();
    for (Section* section : sections_) section->show(shown_);
}

void StripsPanel::showSpares() {
    QString words;
    if (shown_->pieceIndex >= 0 && shown_->plan && !shown_->plan->stack.strips.empty()) {
        const laminate::StackPlan& stack = shown_->plan->stack;
        words = tr("Depth %1 with glue.").arg(text(units::writeThickness(stack.depth_m, shown_->display)));
        if (stack.spares < 0) words += tr(" More than 1 in 3 will break: spares will not help.");
        if (stack.spares > 0)
            words += stack.spares == 1 ? tr(" Cut one spare.") : tr(" Cut %1 spares.").arg(stack.spares);
        words += tr(" Chance that one breaks: %1.").arg(text(plan::chanceText(stack.chanceAnyBreaks)));
    }
    spares_->say(words);
}

void StripsPanel::showPlot() {
    if (shown_->pieceIndex < 0 || !shown_->plan || shown_->plan->stack.at_m.size() < 2) return plot_->setNothing();
    const laminate::StackPlan& stack = shown_->plan->stack;
    if (stack.strips.empty()) return plot_->setNothing();
    const laminate::Strip& worst = laminate::worstStrip(stack);
    const auto strip = static_cast<std::size_t>(worst.place - 1);
    if (strip >= stack.strains.size() || stack.strains[strip].size() != stack.at_m.size()) return plot_->setNothing();
    AlongPlot::Picture picture;
    picture.display = shown_->display;
    picture.caption = tr("Strip %1, bend as % of breaking").arg(worst.place);
    picture.from_m = stack.at_m.front();
    picture.to_m = stack.at_m.back();
    picture.least = 0;
    picture.most = std::max(1.15, laminate::worstShare(worst) * 1.05);
    for (const double level : {0.0, 0.5}) picture.ticks.push_back({level, text(units::writeShare(level))});
    picture.ticks.push_back({1.0, QStringLiteral("100 %")});
    picture.limit = AlongPlot::Tick{1.0, tr("average strip breaks")};
    AlongPlot::Curve curve;
    for (std::size_t i = 0; i < stack.at_m.size(); ++i) {
        const double level = laminate::shareAt(worst, std::abs(stack.strains[strip][i]));
        if (std::isfinite(level)) curve.points.append({stack.at_m[i], level});
    }
    picture.curves.push_back(std::move(curve));
    const double length_m = shown_->plan->line.fair.line.length();
    picture.marks = {{0, tr("trim"), true}, {length_m, tr("trim"), true}};
    picture.reading = [shown = shown_, strip](double at_m) {
        const laminate::StackPlan& of = shown->plan->stack;
        const auto next = std::lower_bound(of.at_m.begin(), of.at_m.end(), at_m);
        const auto i = std::min(static_cast<std::size_t>(next - of.at_m.begin()), of.at_m.size() - 1);
        return tr("%1 along: bend %2")
            .arg(writeLengthText(at_m, shown->display), text(units::writeShare(std::abs(of.strains[strip][i]))));
    };
    plot_->setPicture(std::move(picture));
}

// How long the chosen strips take to dry, where they were softened: as the findings have it.
void StripsPanel::showDrying() {
    QStringList lines;
    if (shown_->pieceIndex >= 0 && shown_->plan) {
        const auto& strips = shown_->plan->stack.strips;
        for (const plan::Finding& finding : shown_->plan->findings) {
            const auto place = static_cast<std::size_t>(finding.strip);
            if (finding.code != plan::Code::dryBeforeGlue || place < 1 || place > strips.size()) continue;
            if (strips[place - 1].group == chosenGroup())
                lines << text(plan::textOf(finding, shown_->display) + " " + plan::detailsOf(finding, shown_->display));
        }
    }
    drying_->say(lines.join(QLatin1Char('\n')));
}

void StripsPanel::lightPlace(std::optional<double> at_m) {
    plot_->lightPlace(at_m);
    widthsTable_->lightPlace(at_m);
}

void StripsPanel::selectPlace(std::optional<double> at_m) {
    selected_m_ = at_m;
    plot_->selectPlace(at_m);
}

}  // namespace fayline::app
