// The fields of the glue panel.
#include <QComboBox>
#include <QPushButton>
#include <QSignalBlocker>
#include <algorithm>

#include "app/panels/fields.hpp"
#include "app/panels/glue_panel.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/typed_fields.hpp"
#include "core/units/day_reading.hpp"

namespace fayline::app {

void GluePanel::makeGlue() {
    Fields* fields = newFields();
    adhesive_ = fields->addChoice(
        {"adhesive", tr("Glue"), "glue.adhesive",
         tr("Those of the program and your own, which the data sheet's figures make")},
        {},
        [](const Shown& shown) {
            if (!shown.adhesives) return -1;
            const auto found = std::find_if(shown.adhesives->begin(), shown.adhesives->end(),
                                            [&](const auto& one) { return one.id == shown.piece.glue.adhesive; });
            return found == shown.adhesives->end() ? -1 : int(found - shown.adhesives->begin());
        },
        [](model::Piece& piece, int index, const Shown& shown) {
            const glue::Adhesive& chosen = shown.adhesives->at(std::size_t(index));
            piece.glue.adhesive = chosen.id;
            return tr("Take %1").arg(text(chosen.name));
        });
    const TypedFields typed(fields, "glue.", over(&model::Piece::glue));
    typed.addChoice({"measuredBy", tr("Measured"), "measured_by", tr("Amounts are rounded to what that reads")},
                    &model::Glue::measuredBy, {tr("on a scale"), tr("by marks on a pot")});
    typed.add({"scaleReads", tr("Scale reads to"), "scale_reads_g", {}}, &model::Glue::scaleReads_kg, way::smallMass());
    typed.add({"cupReads", tr("Pot's marks every"), "cup_reads_ml", {}}, &model::Glue::cupReads_m3, way::volume());
    typed.add({"cupHolds", tr("Pot size"), "cup_ml", tr("To the brim; it is filled to seven tenths at most")},
              &model::Glue::cup_m3, way::volume());
    typed.addChoice({"vessel", tr("Pot"), "vessel", tr("In a shallow tray the mix loses its heat and lasts longer")},
                    &model::Glue::vessel, {tr("deep pot"), tr("shallow tray")});
    warning_ = new SteadyWords("adhesiveWarning", this);
    QPushButton* own = wordButton("ownGlues", tr("Your own glues..."), this);
    connect(own, &QPushButton::clicked, this, &Panel::ownGluesAsked);
    addSection("glueFieldsHead", tr("The glue"), true, {fields, warning_, own},
               [this, fields](const std::shared_ptr<const Shown>& shown) {
                   showAdhesives();
                   fields->show(shown);
                   warning_->say(shown->plan ? text(shown->plan->day.glue.adhesive.warning) : QString());
               });
}

void GluePanel::showAdhesives() {
    QStringList names;
    if (shown_->adhesives) {
        for (const glue::Adhesive& one : *shown_->adhesives)
            names << (one.own ? tr("%1 (your own)").arg(text(one.name)) : text(one.name));
    }
    if (names == adhesives_) return;
    adhesives_ = names;
    const QSignalBlocker blocker(adhesive_);
    adhesive_->clear();
    adhesive_->addItems(names);
}

void GluePanel::makeCoats() {
    Fields* fields = newFields();
    const TypedFields typed(fields, "glue.", over(&model::Piece::glue));
    typed.addChoice({"faces", tr("Wood surface"), "faces", tr("Rough wood drinks more")}, &model::Glue::faces,
                    {tr("planed"), tr("sanded"), tr("sawn")});
    typed.addChoice({"surfaceWork", tr("Before wetting"), "surface_work",
                     tr("Oily and dense woods need wiping or sanding; that takes time")},
                    &model::Glue::surfaceWork, {tr("nothing"), tr("wiped"), tr("sanded and wiped")});
    typed.add({"wetOut", tr("Wet-out, each side"), "wet_out_g_m2", tr("Thin mix, on both sides of every joint")},
              &model::Glue::wetOut_kg_m2, way::coat());
    typed.add({"spreadCoat", tr("Spread, a coat"), "spread_g_m2", tr("Thickened mix")}, &model::Glue::spread_kg_m2,
              way::coat());
    typed.addTick(
        {"bothFaces", tr("Spread on both sides"), "both_faces", tr("Off: on one side of each joint, as is usual")},
        &model::Glue::bothFaces);
    typed.add({"filler", tr("Filler, g to 100 g of mix"), "filler_g_per_100g", {}}, &model::Glue::filler,
              way::number(100));
    typed.add({"thinner", tr("Thinner in the wet-out"), "thinner_pct",
               tr("Weakens the cured resin; warm resin wets out as well without it")},
              &model::Glue::thinner, way::share());
    typed.add(
        {"waste", tr("Waste"), "waste_pct", tr("What stays in pots and on rollers; squeeze-out is counted apart")},
        &model::Glue::waste, way::share());
    typed.add({"pasteYield", tr("Mix thickness, Pa"), "paste_yield_Pa",
               tr("Rule of thumb: syrup 0, ketchup 20-50, mayonnaise 80-150, peanut butter 300-600")},
              &model::Glue::pasteYield_Pa, way::number());
    addSection("coatsHead", tr("Coats"), false, fields);
}

void GluePanel::makeAir() {
    Fields* fields = newFields();
    const TypedFields typed(fields, "glue.", over(&model::Piece::glue));
    typed.add({"air", tr("Air by day"), "air_C", tr("At the glue-up, of shed, wood and resin")}, &model::Glue::air_C,
              way::temperature());
    typed.add({"humidity", tr("Humidity"), "humidity_pct", tr("Relative")}, &model::Glue::humidity, way::share());
    typed.add({"airOverNight", tr("Air over night"), "air_over_night_C", tr("Lowest of the coming night")},
              &model::Glue::airOverNight_C, way::temperature());
    const TypedFields tent(fields, "glue.tent.", over(&model::Piece::glue, &model::Glue::tent));
    tent.add({"tentFrom", tr("Tent heated from"), "from_h", tr("Hours after the last clamp is on")},
             &model::Tent::from_s, way::duration(3600));
    tent.add(
        {"tentHours", tr("Tent heated for"), "hours", tr("0: no tent. Mind fire, fumes and local rules for heaters.")},
        &model::Tent::lasts_s, way::duration(3600));
    tent.add({"tentAir", tr("Air in the tent"), "air_C", {}}, &model::Tent::air_C, way::temperature());
    addSection("glueAirHead", tr("Air"), true, fields);
}

}  // namespace fayline::app
