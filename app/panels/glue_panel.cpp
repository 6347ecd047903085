#include "app/panels/glue_panel.hpp"

#include <QPushButton>
#include <QVBoxLayout>
#include <utility>

#include "app/panels/along_plot.hpp"
#include "app/panels/glue_rows.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "core/plan/day_words.hpp"

namespace fayline::app {

GluePanel::GluePanel(QWidget* parent)
    : SectionedPanel(parent),
      answer_(new AnswerNote(plan::Question::glue, QStringLiteral("glue"), this)),
      caution_(new SteadyWords(QStringLiteral("glueCaution"), this)) {
    setObjectName(QStringLiteral("gluePanel"));
    setAccessibleName(tr("Glue"));

    makeAmounts();
    makeBatches();
    makePotLife();
    makeConditions();
    makeCure();
    makeGlue();
    makeCoats();
    makeAir();

    QVBoxLayout* layout = panelLayout(this);
    layout->addWidget(answer_);
    layout->addWidget(caution_);
    for (Section* section : sections_) layout->addWidget(section);
    layout->addStretch();
    tabInReadingOrder(this);
}

void GluePanel::makeAmounts() {
    auto* model = new FiguresModel(amountColumns(boat::MeasuredBy::scale), this);
    NotebookTable* table =
        figuresTable("amounts", tr("How much of what"), model,
                     {{0, tr("left in cups, on tools")}, {1, tr("By weight")}, {2, tr("By volume")}}, 0);
    addSection("amountsHead", tr("Amounts"), true, {table}, [model](const std::shared_ptr<const Shown>& shown) {
        if (!shown->plan) return model->show({}, false);
        model->name(amountColumns(shown->piece.glue.measuredBy));
        model->show(amountRows(*shown), shown->outOfDate);
    });
}

void GluePanel::makeBatches() {
    auto* batches = new FiguresModel(batchColumns({}, boat::MeasuredBy::scale), this);
    NotebookTable* table = figuresTable("batches", tr("Cups"), batches,
                                        {{0, tr("end grain")},
                                         {1, QStringLiteral("12.3 fl oz")},
                                         {2, QStringLiteral("12.3 fl oz")},
                                         {3, QStringLiteral("12.3 oz")}},
                                        0);
    auto* goingOff = new FiguresModel(goingOffColumns(), this);
    NotebookTable* times = figuresTable("goingOff", tr("When each cup goes off"), goingOff,
                                        {{0, QStringLiteral("00")},
                                         {1, QStringLiteral("000\u2013000 min")},
                                         {2, QStringLiteral("00:00")},
                                         {3, QStringLiteral("000\u2013000 \u00b0C")}},
                                        0);
    addSection("batchesHead", tr("Cups"), true, {table, times},
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
    potLife_ = new AlongPlot(this);
    potLife_->setObjectName(QStringLiteral("plot"));
    potLife_->setAccessibleName(tr("How long a mix lasts, by its mass"));
    connect(potLife_, &AlongPlot::placeHovered, potLife_, &AlongPlot::lightPlace);
    connect(potLife_, &AlongPlot::placeSelected, potLife_, &AlongPlot::selectPlace);
    auto* model = new FiguresModel(vesselColumns(), this);
    NotebookTable* table = figuresTable("vessels", tr("The same mix in other vessels"), model,
                                        {{0, tr("half, in a tray")},
                                         {1, QStringLiteral("0000 g")},
                                         {2, QStringLiteral("000\u2013000 min")},
                                         {3, QStringLiteral("000\u2013000 \u00b0C")}},
                                        0);
    auto* words = new SteadyWords(QStringLiteral("potLifeWords"), this);
    Section* section = addSection("potLifeHead", tr("Pot life"), true, {potLife_, table, words}, nullptr);
    section->setShow([this, model, words, section](const std::shared_ptr<const Shown>& shown) {
        showPotLife(section);
        if (!shown->plan) {
            words->say({});
            return model->show({}, false);
        }
        const bool any = !shown->plan->day.glue.batches.empty();
        model->show(vesselRows(*shown), shown->outOfDate);
        words->say(any ? text(plan::potLifeWords(shown->plan->day.glue)) : QString());
    });
}

void GluePanel::showPotLife(Section* section) {
    noteStudy(section, plan::Study::day);
    const plan::Plan* known = studied(plan::Study::day);
    if (!known || !known->dayStudy) {
        pictured_.reset();
        return potLife_->setNothing();
    }
    const boat::Vessel vessel = shown_->piece.glue.vessel;
    if (pictured_.get() == known && picturedVessel_ == vessel) return;
    pictured_ = studiedPlan(plan::Study::day);
    picturedVessel_ = vessel;
    std::optional<AlongPlot::Picture> picture = potLifePicture(*known, shown_->piece.glue, known->dayStudy->potLives);
    if (potLife_->isHidden() == picture.has_value()) potLife_->setVisible(picture.has_value());
    if (picture) potLife_->setPicture(std::move(*picture));
}

void GluePanel::makeConditions() {
    auto* model = new FiguresModel(conditionColumns(), this);
    NotebookTable* table = figuresTable("conditions", tr("What the air does"), model,
                                        {{0, tr("In this air")}, {1, tr("faces at 13.1 \u00b0C or more")}}, 0);
    addSection("conditionsHead", tr("Conditions"), true, {table}, [model](const std::shared_ptr<const Shown>& shown) {
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
    auto* model = new FiguresModel(cureColumns(), this);
    NotebookTable* table = figuresTable(
        "cure", tr("When what may be done"), model,
        {{0, tr("Full strength")}, {1, QStringLiteral("00:00 the next day")}, {2, QStringLiteral("1 h 20 min")}}, 0);
    addSection("cureHead", tr("Cure"), true, {table, plot}, [model, plot](const std::shared_ptr<const Shown>& shown) {
        const bool any = shown->plan && !shown->plan->day.glue.batches.empty();
        model->show(any ? cureRows(*shown) : std::vector<FigureRow>(), shown->outOfDate);
        std::optional<AlongPlot::Picture> picture = any ? curePicture(*shown) : std::nullopt;
        if (plot->isHidden() == picture.has_value()) plot->setVisible(picture.has_value());
        if (picture) plot->setPicture(std::move(*picture));
    });
}

void GluePanel::show(const Shown& shown) {
    takeShown(shown);
    answer_->show(*shown_);
    const bool planned = shown_->pieceIndex >= 0 && shown_->plan;
    caution_->say(planned ? text(plan::glueCaution(shown_->plan->day.glue)) : QString());
    for (Section* section : sections_) section->show(shown_);
}

}  // namespace fayline::app
