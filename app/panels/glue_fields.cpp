// The fields of the glue panel.
#include <QComboBox>
#include <QPushButton>
#include <QSignalBlocker>
#include <algorithm>
#include <vector>

#include "app/panels/fields.hpp"
#include "app/panels/glue_panel.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/shed_line.hpp"
#include "app/panels/typed_fields.hpp"
#include "core/model/shed.hpp"
#include "core/units/day_reading.hpp"

namespace fayline::app {

namespace {

using Part = std::string glue::Adhesive::*;

const glue::Adhesive* chosenGlue(const Shown& shown) {
    return shown.adhesives ? glue::findAdhesive(*shown.adhesives, shown.piece.glue.adhesive) : nullptr;
}

// What there is to choose from of `part`, in the order of the list: all families, and the mixes and pot lives of the
// family that is chosen.
std::vector<std::string> choicesOf(const Shown& shown, Part part) {
    std::vector<std::string> choices;
    const glue::Adhesive* now = chosenGlue(shown);
    if (!shown.adhesives) return choices;
    for (const glue::Adhesive& one : *shown.adhesives) {
        const bool offered = part == &glue::Adhesive::family || (now && one.family == now->family);
        if (offered && std::ranges::find(choices, one.*part) == choices.end()) choices.push_back(one.*part);
    }
    return choices;
}

}  // namespace

// What is changed most: the glue, the air it meets and the hands that spread it.
Fields* GluePanel::mainFields() {
    Fields* fields = main_ = newFields();
    const auto add = [&](const char* object, const QString& name, const QString& hint, Part part) {
        QComboBox* choice = fields->addChoice(
            {object, name, "glue.adhesive", hint}, {},
            [part](const Shown& shown) {
                const glue::Adhesive* now = chosenGlue(shown);
                const std::vector<std::string> all = choicesOf(shown, part);
                return now ? int(std::ranges::find(all, now->*part) - all.begin()) : -1;
            },
            [part](model::Piece& piece, int index, const Shown& shown) {
                const glue::Adhesive* now = chosenGlue(shown);
                glue::Adhesive wanted = now ? *now : glue::Adhesive{};
                wanted.*part = choicesOf(shown, part).at(std::size_t(index));
                const glue::Adhesive* chosen =
                    glue::nearestOf(*shown.adhesives, wanted.family, wanted.mix, wanted.speed);
                piece.glue.adhesive = chosen->id;
                return tr("Take %1").arg(text(chosen->name));
            });
        adhesive_.push_back({choice, part, {}});
    };
    add("adhesive", tr("Glue"), tr("Those of the program and your own, which the data sheet's figures make"),
        &glue::Adhesive::family);
    add("mixingRatio", tr("Mixed, by volume"), tr("Resin to hardener, as the tin says"), &glue::Adhesive::mix);
    add("potLife", tr("Pot life on the tin"),
        tr("Of 100 g (3.5 oz) in air of 25 °C (77 °F); each hardener has its own"), &glue::Adhesive::speed);
    TypedFields(fields, "glue.", over(&model::Piece::glue))
        .add({"air", tr("Air by day"), "air_C", tr("At the glue-up, of shed, wood and resin")}, &model::Glue::air_C,
             way::temperature());
    TypedFields(fields, "crew.", over(&model::Piece::crew))
        .add({"hands", tr("Pairs of hands"), "hands", tr("You count as one")}, &model::Crew::hands, way::whole());
    return fields;
}

void GluePanel::makeGlue() {
    Fields* fields = newFields();
    const TypedFields typed(fields, "glue.", over(&model::Piece::glue));
    typed.addChoice({"measuredBy", tr("Measured"), "measured_by", tr("Amounts are rounded to what that reads")},
                    &model::Glue::measuredBy, {tr("on a scale"), tr("by marks on a pot")});
    typed.add({"scaleReads", tr("Scale reads to"), "scale_reads_g", {}}, &model::Glue::scaleReads_kg, way::smallMass());
    typed.add({"cupReads", tr("Pot's marks every"), "cup_reads_ml", {}}, &model::Glue::cupReads_m3, way::volume());
    typed.add({"cupHolds", tr("Pot size"), "cup_ml", tr("To the brim; it is filled to seven tenths at most")},
              &model::Glue::cup_m3, way::volume());
    typed.addChoice({"vessel", tr("Pot"), "vessel", tr("In a shallow tray the mix loses its heat and lasts longer")},
                    &model::Glue::vessel, {tr("deep pot"), tr("shallow tray")});
    QPushButton* own = wordButton("ownGlues", tr("Your own glues..."), this);
    connect(own, &QPushButton::clicked, this, &Panel::ownGluesAsked);
    ShedLine* shed = newShedLine(model::ShedPart::glue);
    addSection("glueFieldsHead", tr("Measuring, glues of your own"), false, {fields, own, shed},
               [fields, shed](const std::shared_ptr<const Shown>& shown) {
                   shed->show(shown);
                   fields->show(shown);
               });
}

void GluePanel::showAdhesives() {
    for (GlueChoice& one : adhesive_) {
        QStringList names;
        for (const std::string& name : choicesOf(*shown_, one.part)) {
            const auto of = std::ranges::find(*shown_->adhesives, name, one.part);
            names << (of->own && one.part == &glue::Adhesive::family ? tr("%1 (your own)").arg(text(name))
                                                                     : text(name));
        }
        one.field->setEnabled(names.size() > 1);
        if (names == one.names) continue;
        one.names = names;
        const QSignalBlocker blocker(one.field);
        one.field->clear();
        one.field->addItems(names);
    }
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
    typed.add({"filler", tr("Filler to 100 of mix"), "filler_g_per_100g", tr("By weight")}, &model::Glue::filler,
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
    ShedLine* shed = newShedLine(model::ShedPart::air);
    addSection("glueAirHead", tr("Night, humidity, tent"), false, {fields, shed}, [fields, shed](const auto& shown) {
        fields->show(shown);
        shed->show(shown);
    });
}

}  // namespace fayline::app
