// What can be changed of the stack: the fields of the strips panel.
#include <QStringList>

#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/strips_panel.hpp"
#include "app/panels/typed_fields.hpp"

namespace fayline::app {

void StripsPanel::makeGroupFields() {
    // The chosen one; nothing that is kept where there is none.
    const auto group = [this](model::Piece& piece) -> model::Strips& {
        static model::Strips none;
        const auto chosen = static_cast<std::size_t>(chosenGroup());
        return chosen < piece.stack.strips.size() ? piece.stack.strips[chosen] : none = {};
    };
    const auto bent = [group](const Shown& shown) { return group(const_cast<model::Piece&>(shown.piece)).bentBefore; };
    const TypedFields typed(groupFields_, "", group);
    typed.add({"tapersTo",
               tr("Tapers to"),
               {},
               tr("Thickness at the line's end. Empty: as thick as at the start."),
               tr("does not taper")},
              &model::Strips::tapersTo_m, way::orNone(way::thickness()),
              {tr("Taper strips to %2"), tr("Do not taper strips")});
    typed.add({"modulus",
               tr("Measured modulus"),
               {},
               tr("Modulus of elasticity as you measured it, in MPa or psi. Empty: from the table."),
               tr("from the table")},
              &model::Strips::moe_Pa, way::modulus(),
              {tr("Set the measured modulus to %2"), tr("Take the modulus from the table")});
    groupFields_->addChoice(
        {"bentBefore", tr("Pre-bent"), {}, tr("Strips softened and dried on the form keep part of the curve.")},
        {tr("no"), tr("soaked"), tr("steamed"), tr("boiled")},
        [bent](const Shown& shown) { return bent(shown) ? static_cast<int>(bent(shown)->how) : 0; },
        [group](model::Piece& piece, int chosen, const Shown&) {
            model::Strips& strips = group(piece);
            if (chosen == 0) {
                strips.bentBefore.reset();
                return tr("Bend strips dry");
            }
            if (!strips.bentBefore) strips.bentBefore.emplace();
            strips.bentBefore->how = static_cast<model::Softened>(chosen);
            static const QStringList names{
                {}, tr("Pre-bend strips, soaked"), tr("Pre-bend strips, steamed"), tr("Pre-bend strips, boiled")};
            return names[chosen];
        });
    groupFields_->addText(
        {"set", tr("Set kept"), {}, tr("Part of the curve that those strips keep, 0 to 100 %.")},
        [bent](const Shown& shown) { return bent(shown) ? writeShareText(bent(shown)->set) : QString(); },
        [group](model::Piece& piece, const QString& written, const Shown&) {
            model::Strips& strips = group(piece);
            if (!strips.bentBefore)
                throw units::InputError("", "the strips were not bent before", "say first how they were softened");
            strips.bentBefore->set = readShare(written);
            return tr("Change the set kept to %1").arg(writeShareText(strips.bentBefore->set));
        });
    typed.addTick(
        {"sacrificial", tr("Sacrificial, planed off"), {}, tr("Spreads the clamps; not part of the finished piece.")},
        &model::Strips::sacrificial, {tr("Plane strips away after"), tr("Keep strips in the piece")});
    typed.addTick({"dryFace", tr("No glue outside"), {}, tr("The pieces part outside these strips.")},
                  &model::Strips::dryFace, {tr("Leave a joint dry"), tr("Glue the joint")});
    addSection("groupHead", tr("More about these strips"), false, {groupFields_, drying_},
               [this](const std::shared_ptr<const Shown>& shown) {
                   groupFields_->show(shown);
                   showDrying();
               });
}

namespace {

void addPins(Fields* fields) {
    const Way<std::vector<double>> places{
        [](const std::vector<double>& at_m, const Shown& shown) {
            QStringList written;
            for (const double at : at_m) written << writeLengthText(at, shown.display);
            return written.join("; ");
        },
        [](const QString& written, const Shown& shown) { return readLengths(written, shown.display); }};
    addField(
        fields,
        {"pins", tr("Locating pins at"), "stack.pins",
         tr("Places along the line of pins through every strip, with ; between. Empty: none."), tr("none")},
        places, {tr("Pin the strips at %2"), tr("Take the pins out")},
        [](const Shown& shown) {
            std::vector<double> at_m;
            for (const model::Pin& pin : shown.piece.stack.pins) at_m.push_back(pin.at_m);
            return at_m;
        },
        [](model::Piece& piece, const std::vector<double>& at_m) {
            piece.stack.pins.resize(at_m.size());
            for (std::size_t i = 0; i < at_m.size(); ++i) piece.stack.pins[i].at_m = at_m[i];
            return QString();
        });
}

void addScarf(Fields* fields, const char* object, const QString& name, const char* path,
              std::optional<model::Scarf> model::Stack::*member, const Named& named) {
    const Way<std::optional<double>> slope{
        [](const std::optional<double>& of, const Shown&) { return of ? writeScarf(model::Scarf{*of}) : QString(); },
        [](const QString& written, const Shown&) { return readScarf(written); }};
    addField(
        fields, {object, name, path, tr("The whole stack cut to a scarf, 1 in so much. Empty: none."), tr("none")},
        slope, named,
        [member](const Shown& shown) {
            const std::optional<model::Scarf>& scarf = shown.piece.stack.*member;
            return scarf ? std::optional(scarf->slope) : std::nullopt;
        },
        [member](model::Piece& piece, const std::optional<double>& of) {
            std::optional<model::Scarf>& scarf = piece.stack.*member;
            if (of)
                (scarf ? *scarf : scarf.emplace()).slope = *of;
            else
                scarf.reset();
            return QString();
        });
}

}  // namespace

void StripsPanel::makeStackFields() {
    using model::Stack;
    const TypedFields stack(stackFields_, "stack.", over(&model::Piece::stack));
    stack.add({"runsPastStart", tr("Extra at start"), "runs_past_start_mm",
               tr("Extra length before the first trim line, sawn off after.")},
              &Stack::runsPastStart_m, way::thickness(), {tr("Set extra at start to %3")});
    stack.add({"runsPastEnd", tr("Extra at end"), "runs_past_end_mm",
               tr("Extra length past the last trim line, sawn off after.")},
              &Stack::runsPastEnd_m, way::thickness(), {tr("Set extra at end to %3")});
    stack.add({"glueLine", tr("Joint thickness"), "glue_line_mm", tr("Thickness of the glue in one cured joint.")},
              &Stack::glueLine_m, way::thickness(), {tr("Set joint thickness to %3")});
    stack.add({"ripAllowance", tr("Rip allowance, each edge"), "rip_allowance_mm",
               tr("Strips are ripped this much wider and planed off after.")},
              &Stack::ripAllowance_m, way::thickness(), {tr("Set the rip allowance to %3")});
    stack.add({"moisture", tr("Moisture of the wood"), "moisture_pct", tr("Of the dry mass, when it is glued.")},
              &Stack::moisture, way::share(), {tr("Set the moisture to %3")});
    stack.add({"serviceMoisture", tr("Moisture in service"), "service_moisture_pct",
               tr("What the piece settles to on the boat.")},
              &Stack::serviceMoisture, way::share(), {tr("Set the moisture in service to %3")});
    stack.add({"grainSlope", tr("Slope of grain"), "grain_slope",
               tr("How far the grain runs out of the strip: 1 in 33, or 3 %, or straight.")},
              &Stack::grainSlope, way::grainSlope(), {tr("Set the slope of grain to %3")});
    stackFields_->addText(
        {"gluings", tr("Let cure after strip"), "stack.gluings",
         tr("Strips after which a glue-up ends and cures, with ; between. Empty: one glue-up."), tr("one glue-up")},
        [](const Shown& shown) {
            QStringList after;
            for (const int strip : shown.piece.stack.gluings) after << QString::number(strip);
            return after.join("; ");
        },
        [](model::Piece& piece, const QString& written, const Shown&) {
            piece.stack.gluings = readWholes(written);
            return piece.stack.gluings.empty() ? tr("Glue all in one glue-up")
                                               : tr("Glue in %1 glue-ups").arg(piece.stack.gluings.size() + 1);
        });
    addPins(stackFields_);
    addScarf(stackFields_, "scarfedStart", tr("Scarfed at the start"), "stack.scarfed_start", &Stack::scarfedStart,
             {tr("Scarf the start %3"), tr("Do not scarf the start")});
    addScarf(stackFields_, "scarfedEnd", tr("Scarfed at the end"), "stack.scarfed_end", &Stack::scarfedEnd,
             {tr("Scarf the end %3"), tr("Do not scarf the end")});
    addSection("stackHead", tr("The stack as a whole"), false, stackFields_);
}

}  // namespace fayline::app
