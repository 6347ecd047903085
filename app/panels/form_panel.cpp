#include "app/panels/form_panel.hpp"

#include <QCheckBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>

#include "app/panels/figures_model.hpp"
#include "app/panels/form_rows.hpp"
#include "app/panels/list_model.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/support_models.hpp"
#include "app/panels/typed_fields.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/units/input_error.hpp"
#include "core/units/units.hpp"
#include "core/wood/air.hpp"

namespace fayline::app {

FormPanel::FormPanel(QWidget* parent)
    : SectionedPanel(parent),
      answer_(new AnswerNote(plan::Question::form, QStringLiteral("form"), this)),
      plot_(new AlongPlot(this)) {
    setObjectName(QStringLiteral("formPanel"));
    setAccessibleName(tr("Form"));
    plot_->setObjectName(QStringLiteral("plot"));
    plot_->setAccessibleName(tr("How far the form's edge lies from the wanted one, by length along the line"));

    Fields* fields = mainFields();
    makeOpenings();
    makeInPlace();
    makeFields();
    makeSupport();
    makeRule();
    makeHome();
    makeFewer();
    makePlaned();
    makeAir();

    layOut({answer_, fields, plot_});
    tellPlaces(plot_);
}

void FormPanel::makeInPlace() {
    const auto [table, model] = figuresTable("stressLeft", tr("What stays in the piece at its ends"), stressColumns());
    along_.push_back(table);
    inPlace_ = addSection(
        "stressHead", tr("What stays in it"), true, {table}, [model](const std::shared_ptr<const Shown>& shown) {
            if (!shown->plan || !shown->plan->form.stressLeft) return model->show({}, false);
            model->show(stressRows(*shown->plan->form.stressLeft, shown->plan->line.fair.line.length(), shown->display),
                        shown->outOfDate);
        });
}

// Whether it stays where it is glued, and what that is.
Fields* FormPanel::mainFields() {
    Fields* fields = main_ = newFields();
    using model::Form;
    const TypedFields form(fields, "form.", over(&model::Piece::form), tr("Set \"%1\""));
    form.addChoice({"formKind", tr("Clamped to"), "kind", tr("What the stack is clamped to while the glue cures.")},
                   &Form::kind, {tr("a solid form"), tr("posts"), tr("the boat itself")},
                   {tr("Clamp to a solid form"), tr("Clamp to posts"), tr("Clamp to the boat")});
    form.addTick({"letGo", tr("Comes off the form"), "let_go", tr("Off: the piece stays on its form.")}, &Form::letGo,
                 {tr("Take the piece off the form"), tr("Keep the piece on its form")});
    letGo_ = fields->findChild<QCheckBox*>(QStringLiteral("letGo"));
    return fields;
}

void FormPanel::makeFields() {
    Fields* fields = newFields();
    using model::Form;
    const TypedFields form(fields, "form.", over(&model::Piece::form));
    form.addTick({"allowsForSpringback", tr("Overbend for springback"), "allows_for_springback",
                  tr("Off: your form has the wanted line itself.")},
                 &Form::allowsForSpringback, {tr("Overbend the form"), tr("Do not overbend the form")});
    form.add({"springbackFactor", tr("Springback factor"), "springback_factor",
              tr("Your earlier pieces over the calculated: see Record. 1: as calculated.")},
             &Form::springbackFactor, way::number(1, 4), {tr("Set the springback factor to %2")});
    form.add({"fixedAt", tr("Form meets line at"), "fixed_at_mm",
              tr("Same place and direction there. Empty: at the first pin, else where clamping starts."),
              tr("where clamping starts")},
             &Form::fixedAt_m, way::orNone(way::length()), {tr("Move where form meets line")});
    addSection("formFieldsHead", tr("The form's line"), false, fields);
}

Fields* FormPanel::supportFields() {
    Fields* fields = newFields();
    using model::Form;
    const TypedFields form(fields, "form.", over(&model::Piece::form), tr("Set \"%1\""));
    const QString hint = tr("Past the trim line. Empty: as far as the strips; on the boat none.");
    form.add({"carriesOnStart", tr("Form runs past start"), "carries_on_start_mm", hint, tr("as the strips")},
             &Form::carriesOnStart_m, way::orNone(way::length()));
    form.add({"carriesOnEnd", tr("Form runs past end"), "carries_on_end_mm", hint, tr("as the strips")},
             &Form::carriesOnEnd_m, way::orNone(way::length()));
    return fields;
}

void FormPanel::makeSupport() {
    Fields* fields = supportFields();
    auto* posts = new PostsModel(this);
    auto* unread = new Words(QStringLiteral("postsUnread"), true, this);
    NotebookTable* table =
        typedTable("posts", tr("Posts of the form"), posts, unread, {0, 1, 2, 3}, PostsModel::atColumn);
    along_.push_back(table);
    const auto add = [this, posts] {
        const bool planned = shown_ && shown_->plan;
        posts->addPost(selected_m_.value_or(planned ? shown_->plan->line.fair.line.length() / 2 : 0));
    };
    QWidget* buttons = rowTools(table, {"addPost", tr("Add a post at the selected place (Insert)"), add},
                                {"removePost", tr("Remove this post (Delete)"),
                                 [posts, table] { posts->removePost(table->currentIndex().row()); }});
    addSection("supportHead", tr("What it is clamped to"), false, {fields, table, unread, buttons},
               [fields, posts, table, buttons](const std::shared_ptr<const Shown>& shown) {
                   fields->show(shown);
                   posts->show(shown);
                   const bool posted = shown->pieceIndex >= 0 && shown->piece.form.kind == model::FormKind::posts;
                   showIf(table, posted);
                   showIf(buttons, posted);
               });
}

void FormPanel::makePlaned() {
    auto* planed = new ItemsModel<model::Planed>(
        tr("planed place"), "stack.planed_after",
        [](model::Piece& piece) -> std::vector<model::Planed>& { return piece.stack.planedAfter; },
        &model::Planed::at_m, this);
    planed->setColumns({planed->typed(&model::Planed::at_m, way::length(), {.name = tr("Along")}),
                        planed->typed(&model::Planed::inside_m, way::thickness(),
                                      {.name = tr("Inside"),
                                       .hint = tr("Taken off the inner side; even between two places, level beyond")}),
                        planed->typed(&model::Planed::outside_m, way::thickness(),
                                      {.name = tr("Outside"),
                                       .hint = tr("Taken off the outer side, sacrificial strips not counted")})});
    auto* unread = new Words(QStringLiteral("planedUnread"), true, this);
    NotebookTable* table = typedTable("planed", tr("Planed after glue-up"), planed, unread, {0, 1, 2}, 0);
    along_.push_back(table);
    QWidget* buttons = rowTools(table,
                                {"addPlaned", tr("Add a planed place (Insert)"),
                                 [this, planed] {
                                     planed->change(tr("Plane after glue-up"), [this](model::Piece& piece) {
                                         std::vector<model::Planed>& there = piece.stack.planedAfter;
                                         double at_m = selected_m_.value_or(0);
                                         while (std::ranges::count(there, at_m, &model::Planed::at_m) > 0) at_m += 0.1;
                                         there.push_back({.at_m = at_m, .outside_m = 0.001});
                                     });
                                 }},
                                {"removePlaned", tr("Remove this place (Delete)"), [planed, table] {
                                     planed->removeItems({table->currentIndex().row()}, tr("Do not plane there"), {});
                                 }});
    addSection("planedHead", tr("Planed after glue-up"), false, {table, unread, buttons},
               [planed](const std::shared_ptr<const Shown>& shown) { planed->show(shown); });
}

void FormPanel::makeAir() {
    auto* part = new QWidget(this);
    auto* grid = new QGridLayout(part);
    grid->setContentsMargins(0, 0, 0, 0);
    const auto field = [&](const char* object, const QString& name, const QString& hint, int row) {
        auto* edit = new QLineEdit(part);
        edit->setObjectName(QLatin1String(object));
        edit->setAccessibleName(name);
        edit->setToolTip(hint);
        addLabelled(grid, row, name, edit);
        connect(edit, &QLineEdit::textChanged, this, &FormPanel::showAir);
        return edit;
    };
    air_ = field("serviceAir", tr("Air aboard"), tr("Mean temperature where the piece will be"), 0);
    humidity_ = field("serviceHumidity", tr("Humidity aboard, %"), tr("Relative humidity, 0 to 100"), 1);
    airWords_ = new SteadyWords(QStringLiteral("airWords"), this);
    QPushButton* use = wordButton(QStringLiteral("useAirMoisture"), tr("Use as moisture aboard"), this);
    connect(use, &QPushButton::clicked, this, [this] {
        if (!airMoisture_ || !shown_ || shown_->pieceIndex < 0) return;
        Change change{tr("Set the service moisture from the air"), {}, shown_->piece};
        change.after.stack.serviceMoisture = std::round(1000 * *airMoisture_) / 1000;
        emit changeAsked(change);
    });
    addSection("airHead", tr("Moisture from the air"), false, {part, airWords_, use},
               [this](const std::shared_ptr<const Shown>&) { showAir(); });
}

void FormPanel::showAir() {
    airMoisture_.reset();
    if (air_->text().trimmed().isEmpty() || humidity_->text().trimmed().isEmpty() || !shown_) {
        airWords_->say(tr("Give temperature and humidity to see the wood's moisture there."));
        return;
    }
    try {
        const double typed = readNumber(air_->text());
        const bool fahrenheit = shown_->display.temperatures == units::TemperatureUnit::fahrenheit;
        const double air_C = fahrenheit ? units::fromFahrenheit(typed) : typed;
        airMoisture_ = wood::equilibriumMoisture(air_C, readShare(humidity_->text()));
        airWords_->say(tr("Wood comes to %1 there, within 1 % moisture (Wood Handbook eq. 4-5).")
                           .arg(text(units::writeShare(*airMoisture_, 3))));
    } catch (const units::InputError& error) {
        airWords_->say(why(error));
    }
}

void FormPanel::show(const Shown& shown) {
    takeShown(shown);
    answer_->show(*shown_);
    main_->show(shown_);
    showPlot();
    const bool stays = shown_->pieceIndex >= 0 && shown_->plan && shown_->plan->form.stressLeft.has_value();
    showIf(inPlace_, stays);
    for (Section* section : {openings_, rule_, home_}) showIf(section, !stays);
    showIf(letGo_, shown_->pieceIndex < 0 || shown_->piece.form.kind != model::FormKind::inPlace);
    for (Section* section : sections_) section->show(shown_);
}

void FormPanel::showPlot() {
    std::optional<AlongPlot::Picture> picture = formPicture(shown_);
    showIf(plot_, picture.has_value());
    if (picture) plot_->setPicture(std::move(*picture));
}

void FormPanel::lightPlace(std::optional<double> at_m) {
    plot_->lightPlace(at_m);
    for (NotebookTable* table : along_) table->lightPlace(at_m);
}

void FormPanel::selectPlace(std::optional<double> at_m) {
    selected_m_ = at_m;
    plot_->selectPlace(at_m);
}

}  // namespace fayline::app
