// The sections of the holding panel that say what follows: proposal, closing order, over-run, props, screws, straps.
#include "app/panels/figures_model.hpp"
#include "app/panels/holding_changes.hpp"
#include "app/panels/holding_panel.hpp"
#include "app/panels/holding_rows.hpp"
#include "app/panels/holding_words.hpp"
#include "app/panels/parts.hpp"
#include "core/plan/study/holding_study.hpp"

namespace fayline::app {

void HoldingPanel::makeProposal() {
    auto* words = new SteadyWords(QStringLiteral("proposalWords"), this);
    const auto [table, model] = figuresTable("proposed", tr("Suggested stations"), proposalColumns());
    along_.push_back(table);
    QPushButton* adopt = wordButton(QStringLiteral("adopt"), tr("Use these"), this);
    adopt->setToolTip(tr("They replace your stations; fixed ones stay. One step to undo."));
    Section* section = addSection("proposalHead", tr("Suggested stations"), false, {words, table, adopt}, nullptr);
    section->setShow([this, words, model, adopt, section](const std::shared_ptr<const Shown>& shown) {
        noteStudy(section, plan::Study::proposal);
        const plan::HoldingStudy* known = study(plan::Study::proposal);
        words->say(!known                           ? awaited()
                   : pressed(plan::Study::proposal) ? proposalWords(known->proposal, shown->display)
                                                    : tr("Not calculated: no shape found."));
        model->show(known ? proposalRows(*known, shown->display) : std::vector<FigureRow>(),
                    studyIsOld(plan::Study::proposal));
        adopt->setEnabled(adoptProposal(*shown).has_value());
    });
    connect(adopt, &QPushButton::clicked, this, [this] {
        if (const std::optional<Change> change = adoptProposal(*shown_)) emit changeAsked(*change);
    });
}

void HoldingPanel::makeClosing() {
    auto* carried = new SteadyWords(QStringLiteral("carriedWords"), this);
    const auto [table, model] = figuresTable("closing", tr("Closing order"), closingColumns(), 1);
    along_.push_back(table);
    Section* section = addSection("closingHead", tr("Closing order"), false, {table, carried}, nullptr);
    section->setShow([this, carried, model, section](const std::shared_ptr<const Shown>& shown) {
        noteStudy(section, plan::Study::closing);
        const plan::HoldingStudy* known = study(plan::Study::closing);
        model->show(known ? closingRows(*known, shown->piece, shown->display) : std::vector<FigureRow>(),
                    studyIsOld(plan::Study::closing));
        const plan::HoldingStudy* carriedKnown = study(plan::Study::carried);
        carried->say(carriedKnown ? carriedWords(carriedKnown->carried, shown->display) : awaited());
    });
}

void HoldingPanel::makeOverRun() {
    auto* start = new SteadyWords(QStringLiteral("overRunStart"), this);
    auto* end = new SteadyWords(QStringLiteral("overRunEnd"), this);
    QPushButton* run = wordButton(QStringLiteral("runOn"), tr("Lengthen as needed"), this);
    run->setToolTip(tr("Lengthens strips and form, shortens nothing. Then set a station at the far end."));
    Section* section = addSection("overRunHead", tr("Extra length"), false, {start, end, run}, nullptr);
    section->setShow([this, start, end, run, section](const std::shared_ptr<const Shown>& shown) {
        noteStudy(section, plan::Study::overRun);
        const plan::HoldingStudy* known = study(plan::Study::overRun);
        const model::Stack& stack = shown->piece.stack;
        start->say(!known ? awaited()
                   : pressed(plan::Study::overRun)
                       ? overRunWords(tr("At the start"), known->overRun.start, stack.runsPastStart_m, shown->display)
                       : tr("Not calculated: no shape found."));
        end->say(known && pressed(plan::Study::overRun)
                     ? overRunWords(tr("At the end"), known->overRun.end, stack.runsPastEnd_m, shown->display)
                     : QString());
        run->setEnabled(runOnAsNeeded(*shown).has_value());
    });
    connect(run, &QPushButton::clicked, this, [this] {
        if (const std::optional<Change> change = runOnAsNeeded(*shown_)) emit changeAsked(*change);
    });
}

void HoldingPanel::makeProps() {
    auto* caution = new SteadyWords(QStringLiteral("propCaution"), this);
    const auto [table, model] = figuresTable("props", tr("Props and jacks"), propColumns(), 3);
    along_.push_back(table);
    props_ = addSection("propsHead", tr("Props and jacks"), false, {table, caution},
                        [model, caution](const std::shared_ptr<const Shown>& shown) {
                            if (!shown->plan) return;
                            model->show(propRows(shown->plan->holding, shown->piece, shown->display));
                            caution->say(findingWords(*shown, {"prop", "jack"}));
                        });
}

void HoldingPanel::makeScrews() {
    const auto [table, model] = figuresTable("screws", tr("Temporary screws"), screwColumns());
    along_.push_back(table);
    screws_ = addSection("screwsHead", tr("Temporary screws"), false, {table},
                         [model](const std::shared_ptr<const Shown>& shown) {
                             if (shown->plan) model->show(screwRows(shown->plan->holding, shown->display));
                         });
}

void HoldingPanel::makeStraps() {
    const auto [table, model] = figuresTable("straps", tr("Straps"), strapColumns());
    along_.push_back(table);
    straps_ =
        addSection("strapsHead", tr("Straps"), false, {table}, [model](const std::shared_ptr<const Shown>& shown) {
            if (shown->plan) model->show(strapRows(shown->plan->holding, shown->display));
        });
}

}  // namespace fayline::app
