// The sections of the form panel that say what the piece does when it is let go, and what can be done about it.
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>

#include "app/panels/fields.hpp"
#include "app/panels/figures_model.hpp"
#include "app/panels/form_panel.hpp"
#include "app/panels/form_rows.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/one_fewer.hpp"
#include "core/plan/study/springing.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

namespace {

// Words that follow from a plan of the very piece; while it is out of date they stay as they were.
bool upToDate(const Shown& shown) {
    return shown.pieceIndex >= 0 && shown.plan && !shown.outOfDate;
}

}  // namespace

void FormPanel::makeOpenings() {
    const auto [table, model] = figuresTable("openings", tr("How far the piece opens"), openingColumns());
    auto* spread = new SteadyWords(QStringLiteral("spreadWords"), this);
    auto* moisture = new SteadyWords(QStringLiteral("moistureWords"), this);
    openings_ = addSection("openingsHead", tr("How far it opens"), true, {table, spread, moisture},
                           [model, spread, moisture](const std::shared_ptr<const Shown>& shown) {
                               if (!shown->plan) {
                                   spread->say({});
                                   moisture->say({});
                                   return model->show({}, false);
                               }
                               model->show(openingRows(*shown->plan, shown->display), shown->outOfDate);
                               spread->say(text(plan::writeTexts(plan::spreadTexts(*shown->plan), shown->display)));
                               moisture->say(text(plan::writeTexts(
                                   plan::moistureTexts(shown->piece.stack, *shown->plan), shown->display)));
                           });
}

void FormPanel::makeRule() {
    auto* words = new SteadyWords(QStringLiteral("ruleWords"), this);
    rule_ = addSection("ruleHead", tr("Rule of thumb, two ways"), false, {words},
                       [words](const std::shared_ptr<const Shown>& shown) {
                           if (!upToDate(*shown)) return;
                           const std::string rule =
                               plan::writeTexts(plan::ruleTexts(shown->piece.stack, shown->plan->form), shown->display);
                           words->say(rule.empty() ? tr("The piece stays on its form: no springback.") : text(rule));
                       });
}

void FormPanel::makeFewer() {
    auto* words = new SteadyWords(QStringLiteral("fewerWords"), this);
    addSection("fewerHead", tr("If a strip breaks"), false, {words},
               [words](const std::shared_ptr<const Shown>& shown) {
                   if (!upToDate(*shown)) return;
                   plan::Shop shop;
                   shop.display = shown->display;
                   shop.species = shown->species;
                   const plan::OneFewer fewer = plan::withOneFewer(shown->piece, shop, *shown->plan);
                   words->say(text(plan::writeTexts(plan::oneFewerTexts(fewer, *shown->plan), shown->display)));
               });
}

// What takes a millisecond waits until the hand has rested, and with it for the study.
bool FormPanel::handMoves() const {
    return studied(plan::Study::learned) && studyIsOld(plan::Study::learned);
}

void FormPanel::makeHome() {
    auto* part = new QWidget(this);
    auto* grid = new QGridLayout(part);
    grid->setContentsMargins(0, 0, 0, 0);
    homeOff_ = new QLineEdit(part);
    homeOff_->setObjectName(QStringLiteral("homeOff"));
    homeOff_->setAccessibleName(tr("End open by"));
    homeOff_->setPlaceholderText(tr("as calculated"));
    const QString hint =
        tr("Gap at the end, the other end on the line; closed in is less than 0. Empty: as calculated.");
    homeOff_->setToolTip(hint);
    homeOff_->setAccessibleDescription(hint);
    homeName_ = new QLabel(part);
    homeName_->setBuddy(homeOff_);
    grid->addWidget(homeName_, 0, 0);
    grid->addWidget(homeOff_, 0, 1);
    homeReason_ = new Words(QStringLiteral("homeOffReason"), true, this);
    homeWords_ = new SteadyWords(QStringLiteral("homeWords"), this);
    home_ = addSection("homeHead", tr("Springing it home"), false, {part, homeReason_, homeWords_},
                       [this](const std::shared_ptr<const Shown>& shown) {
                           // Another piece stands off otherwise.
                           if (!homePiece_ || !homePiece_->samePieceAs(*shown)) homeOff_->clear();
                           homePiece_ = shown;
                           if (!handMoves()) showHome();
                       });
    connect(homeOff_, &QLineEdit::textChanged, this, &FormPanel::showHome);
}

void FormPanel::showHome() {
    if (!shown_ || !upToDate(*shown_)) return;
    const plan::Plan& plan = *shown_->plan;
    const bool atStart = plan::reportedAtStart(plan.form, plan.line.fair.line.length());
    homeName_->setText(atStart ? tr("Start open by") : tr("End open by"));
    homeOff_->setAccessibleName(homeName_->text());
    try {
        const std::optional<double> off_m = readOptionalLength(homeOff_->text(), shown_->display);
        homeWords_->say(text(plan::writeTexts(plan::springingTexts(plan::springHome(shown_->piece, plan, off_m), plan),
                                              shown_->display)));
        homeReason_->say({});
    } catch (const units::InputError& error) {
        homeReason_->say(why(error));
    }
}

}  // namespace fayline::app
