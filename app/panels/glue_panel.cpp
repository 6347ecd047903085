#include "app/panels/glue_panel.hpp"

#include <QPushButton>
#include <utility>

#include "app/panels/along_plot.hpp"
#include "app/panels/fields.hpp"
#include "app/panels/glue_rows.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "core/plan/findings/day_words.hpp"

namespace fayline::app {

GluePanel::GluePanel(QWidget* parent)
    : SectionedPanel(parent),
      answer_(new AnswerNote(plan::Question::glue, QStringLiteral("glue"), this)),
      caution_(new SteadyWords(QStringLiteral("glueCaution"), this)) {
    setObjectName(QStringLiteral("gluePanel"));
    setAccessibleName(tr("Glue"));

    Fields* fields = mainFields();
    warning_ = new SteadyWords(QStringLiteral("adhesiveWarning"), this);
    potLife_ = new AlongPlot(this);
    potLife_->setObjectName(QStringLiteral("plot"));
    potLife_->setAccessibleName(tr("How long a mix lasts, by its mass"));
    connect(potLife_, &AlongPlot::placeHovered, potLife_, &AlongPlot::lightPlace);
    connect(potLife_, &AlongPlot::placeSelected, potLife_, &AlongPlot::selectPlace);
    makeAmounts();
    makeBatches();
    makePotLife();
    makeConditions();
    makeCure();
    makeGlue();
    makeCoats();
    makeAir();

    layOut({answer_, caution_, fields, warning_, potLife_});
}

void GluePanel::makeAmounts() {
    const auto [table, model] =
        figuresTable("amounts", tr("How much of what"), amountColumns(model::MeasuredBy::scale));
    addSection("amountsHead", tr("Amounts"), true, {table}, [model](const std::shared_ptr<const Shown>& shown) {
        if (!shown->plan) return model->show({}, false);
        model->name(amountColumns(shown->piece.glue.measuredBy));
        model->show(amountRows(*shown), shown->outOfDate);
    });
}

void GluePanel::makeBatches() {
    const auto [table, batches] = figuresTable("batches", tr("Batches"), batchColumns({}, model::MeasuredBy::scale));
    const auto [times, goingOff] = figuresTable("goingOff", tr("When each batch goes off"), goingOffColumns());
    addSection("batchesHead", tr("Batches"), true, {table, times},
               [batches, goingOff](const std::shared_ptr<const Shown>& shown) {
                   if (!shown->plan) {
                       batches->show({}, false);
                       return goingOff->show({}, false);
                   }
                   batches->name(batchColumns(shown->plan->day.glue.adhesive, shown->piece.glue.measuredBy));
                   batches->show(batchRows(*shown), shown->outOfDate);
                   goingOff->show(goingOffRows(*shown), shown->outOfDate);
               });
}

void GluePanel::makePotLife() {
    const auto [table, model] = figuresTable("vessels", tr("The same mix in other pots"), vesselColumns());
    auto* words = new SteadyWords(QStringLiteral("potLifeWords"), this);
    Section* section = addSection("potLifeHead", tr("Pot life in other pots"), false, {table, words}, nullptr);
    section->setShow([this, model, words, section](const std::shared_ptr<const Shown>& shown) {
        noteStudy(section, plan::Study::day);
        if (!shown->plan) {
            words->say({});
            return model->show({}, false);
        }
        const bool any = !shown->plan->day.glue.batches.empty();
        model->show(vesselRows(*shown), shown->outOfDate);
        words->say(any ? text(plan::writeTexts(plan::potLifeTexts(shown->plan->day.glue), shown->display)) : QString());
    });
}

void GluePanel::showPotLife() {
    const plan::Plan* known = studied(plan::Study::day);
    if (!known || !known->dayStudy) {
        pictured_.reset();
        return potLife_->setNothing();
    }
    const model::Vessel vessel = shown_->piece.glue.vessel;
    if (pictured_.get() == known && picturedVessel_ == vessel) return;
    pictured_ = studiedPlan(plan::Study::day);
    picturedVessel_ = vessel;
    std::optional<AlongPlot::Picture> picture =
        potLifePicture(*known, shown_->piece.glue, known->dayStudy->potLives, shown_->display);
    showIf(potLife_, picture.has_value());
    if (picture) potLife_->setPicture(std::move(*picture));
}

void GluePanel::makeConditions() {
    const auto [table, model] = figuresTable("conditions", tr("What the air does"), conditionColumns());
    addSection("conditionsHead", tr("Conditions"), false, {table}, [model](const std::shared_ptr<const Shown>& shown) {
        model->show(shown->plan ? conditionRows(*shown) : std::vector<FigureRow>(), shown->outOfDate);
    });
}

void GluePanel::makeCure() {
    auto* plot = new AlongPlot(this);
    plot->setObjectName(QStringLiteral("curePlot"));
    plot->setAccessibleName(tr("Air at the glue from closing on, by the hour"));
    plot->setLow(true);
    connect(plot, &AlongPlot::placeHovered, plot, &AlongPlot::lightPlace);
    connect(plot, &AlongPlot::placeSelected, plot, &AlongPlot::selectPlace);
    const auto [table, model] = figuresTable("cure", tr("When what may be done"), cureColumns());
    addSection("cureHead", tr("Cure"), false, {table, plot}, [model, plot](const std::shared_ptr<const Shown>& shown) {
        const bool any = shown->plan && !shown->plan->day.glue.batches.empty();
        model->show(any ? cureRows(*shown) : std::vector<FigureRow>(), shown->outOfDate);
        std::optional<AlongPlot::Picture> picture = any ? curePicture(*shown) : std::nullopt;
        showIf(plot, picture.has_value());
        if (picture) plot->setPicture(std::move(*picture));
    });
}

void GluePanel::show(const Shown& shown) {
    takeShown(shown);
    answer_->show(*shown_);
    const bool planned = shown_->pieceIndex >= 0 && shown_->plan;
    caution_->say(planned ? text(plan::writeTexts(plan::glueCaution(shown_->plan->day.glue), shown_->display))
                          : QString());
    showAdhesives();
    main_->show(shown_);
    warning_->say(planned ? text(shown_->plan->day.glue.adhesive.warning) : QString());
    showPotLife();
    for (Section* section : sections_) section->show(shown_);
}

}  // namespace fayline::app
