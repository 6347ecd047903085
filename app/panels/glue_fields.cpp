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
#include "core/measure/day_reading.hpp"

namespace fayline::app {

namespace {

boat::Glue& glueOf(boat::Piece& piece) {
    return piece.glue;
}

boat::Tent& tentOf(boat::Piece& piece) {
    return piece.glue.tent;
}

}  // namespace

void GluePanel::makeGlue() {
    auto* fields = new Fields(this);
    adhesive_ = fields->addChoice(
        {QStringLiteral("adhesive"), tr("Glue"), QStringLiteral("glue.adhesive"),
         tr("Those of the program and your own, which the data sheet's figures make")},
        {},
        [](const Shown& shown) {
            if (!shown.adhesives) return -1;
            const auto found = std::find_if(shown.adhesives->begin(), shown.adhesives->end(),
                                            [&](const auto& one) { return one.id == shown.piece.glue.adhesive; });
            return found == shown.adhesives->end() ? -1 : int(found - shown.adhesives->begin());
        },
        [](boat::Piece& piece, int index, const Shown& shown) {
            const glue::Adhesive& chosen = shown.adhesives->at(std::size_t(index));
            piece.glue.adhesive = chosen.id;
            return tr("Take %1").arg(text(chosen.name));
        });
    const TypedFields typed{fields, glueOf, QStringLiteral("glue.")};
    typed.addChoice({QStringLiteral("measuredBy"), tr("Measured"), QStringLiteral("measured_by"),
                     tr("How you measure out: amounts are rounded to what that reads")},
                    &boat::Glue::measuredBy, {tr("on a scale"), tr("by a cup's marks")});
    typed.addMass({QStringLiteral("scaleReads"), tr("Scale reads to"), QStringLiteral("scale_reads_g"), {}},
                  &boat::Glue::scaleReads_kg);
    typed.addVolume({QStringLiteral("cupReads"), tr("Cup's marks every"), QStringLiteral("cup_reads_ml"), {}},
                    &boat::Glue::cupReads_m3);
    typed.addVolume({QStringLiteral("cupHolds"), tr("Vessel holds"), QStringLiteral("cup_ml"),
                     tr("To the brim; it is filled to seven tenths at most")},
                    &boat::Glue::cup_m3);
    typed.addChoice({QStringLiteral("vessel"), tr("Vessel"), QStringLiteral("vessel"),
                     tr("In a shallow tray the mix sheds its heat and lasts longer")},
                    &boat::Glue::vessel, {tr("deep cup"), tr("shallow tray")});
    connect(fields, &Fields::changeAsked, this, &Panel::changeAsked);
    warning_ = new SteadyWords(QStringLiteral("adhesiveWarning"), this);
    QPushButton* own = wordButton(QStringLiteral("ownGlues"), tr("Your own glues..."), this);
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
    auto* fields = new Fields(this);
    const TypedFields typed{fields, glueOf, QStringLiteral("glue.")};
    typed.addChoice({QStringLiteral("faces"), tr("Faces are"), QStringLiteral("faces"), tr("Rough faces drink more")},
                    &boat::Glue::faces, {tr("planed"), tr("sanded"), tr("sawn")});
    typed.addChoice({QStringLiteral("surfaceWork"), tr("Before wetting"), QStringLiteral("surface_work"),
                     tr("Oily and dense woods want wiping or sanding, which takes time of the day")},
                    &boat::Glue::surfaceWork, {tr("nothing"), tr("wiped"), tr("sanded and wiped")});
    typed.addCoat({QStringLiteral("wetOut"), tr("Wet-out, a face"), QStringLiteral("wet_out_g_m2"),
                   tr("Thin mix, on both faces of every joint")},
                  &boat::Glue::wetOut_kg_m2);
    typed.addCoat(
        {QStringLiteral("spreadCoat"), tr("Spread, a coat"), QStringLiteral("spread_g_m2"), tr("Thickened mix")},
        &boat::Glue::spread_kg_m2);
    typed.addTick({QStringLiteral("bothFaces"), tr("Spread on both faces"), QStringLiteral("both_faces"),
                   tr("Else on one face of each joint, which is usual")},
                  &boat::Glue::bothFaces);
    typed.addNumber(
        {QStringLiteral("filler"), tr("Filler, g to 100 g of mix"), QStringLiteral("filler_g_per_100g"), {}},
        &boat::Glue::filler, 100);
    typed.addShare({QStringLiteral("thinner"), tr("Thinner in the wet-out"), QStringLiteral("thinner_pct"),
                    tr("Weakens the cured resin; warm resin wets as well without")},
                   &boat::Glue::thinner);
    typed.addShare({QStringLiteral("waste"), tr("Waste"), QStringLiteral("waste_pct"),
                    tr("What stays in cups and on rollers; squeeze-out is counted apart")},
                   &boat::Glue::waste);
    typed.addNumber(
        {QStringLiteral("pasteYield"), tr("Paste's yield stress, Pa"), QStringLiteral("paste_yield_Pa"),
         tr("Not published for filled epoxy (looked for), so a rule of thumb: syrup 0, ketchup 20 to 50, mayonnaise "
            "80 to 150, peanut butter 300 to 600. It says what pressure the glue line wants")},
        &boat::Glue::pasteYield_Pa);
    connect(fields, &Fields::changeAsked, this, &Panel::changeAsked);
    addSection("coatsHead", tr("Coats"), false, {fields},
               [fields](const std::shared_ptr<const Shown>& shown) { fields->show(shown); });
}

void GluePanel::makeAir() {
    auto* fields = new Fields(this);
    const TypedFields typed{fields, glueOf, QStringLiteral("glue.")};
    typed.addTemperature({QStringLiteral("air"), tr("Air by day"), QStringLiteral("air_C"),
                          tr("At the glue-up, of shed, wood and resin")},
                         &boat::Glue::air_C);
    typed.addShare({QStringLiteral("humidity"), tr("Humidity"), QStringLiteral("humidity_pct"), tr("Relative")},
                   &boat::Glue::humidity);
    typed.addTemperature({QStringLiteral("airOverNight"), tr("Air over night"), QStringLiteral("air_over_night_C"),
                          tr("Lowest of the coming night")},
                         &boat::Glue::airOverNight_C);
    const TypedFields tent{fields, tentOf, QStringLiteral("glue.tent.")};
    tent.addDuration({QStringLiteral("tentFrom"), tr("Tent heated from"), QStringLiteral("from_h"),
                      tr("Hours after the last clamp is on")},
                     &boat::Tent::from_s, 3600);
    tent.addDuration({QStringLiteral("tentHours"), tr("Tent heated for"), QStringLiteral("hours"),
                      tr("0: no tent. Mind fire and fumes, and what local rules say of heaters.")},
                     &boat::Tent::lasts_s, 3600);
    tent.addTemperature({QStringLiteral("tentAir"), tr("Air in the tent"), QStringLiteral("air_C"), {}},
                        &boat::Tent::air_C);
    connect(fields, &Fields::changeAsked, this, &Panel::changeAsked);
    addSection("glueAirHead", tr("Air"), true, {fields},
               [fields](const std::shared_ptr<const Shown>& shown) { fields->show(shown); });
}

}  // namespace fayline::app
