// What can be changed of the stack: the fields of the strips panel.
#include <QStringList>

#include "app/panels/fields.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/strips_panel.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

using measure::writeThickness;

void StripsPanel::makeGroupFields() {
    const auto group = [this](const Shown& shown) -> const boat::Strips& {
        static const boat::Strips none;
        const auto& strips = shown.piece.stack.strips;
        const int chosen = chosenGroup();
        return chosen >= 0 && chosen < math::countOf(strips) ? strips[chosen] : none;
    };
    const auto change = [this](boat::Piece& piece) -> boat::Strips& {
        return piece.stack.strips.at(static_cast<std::size_t>(chosenGroup()));
    };
    groupFields_->addText(
        {QStringLiteral("tapersTo"),
         tr("Tapers to"),
         {},
         tr("Thickness at the line's end. Empty: as thick as at the start.")},
        [group](const Shown& shown) {
            const auto& tapersTo = group(shown).tapersTo_m;
            return tapersTo ? text(writeThickness(*tapersTo, shown.display)) : QString();
        },
        [change](boat::Piece& piece, const QString& written, const Shown& shown) {
            change(piece).tapersTo_m = readOptionalLength(written, shown.display);
            return change(piece).tapersTo_m ? tr("Taper strips to %1").arg(written.trimmed())
                                            : tr("Do not taper strips");
        },
        tr("does not taper"));
    groupFields_->addText(
        {QStringLiteral("modulus"),
         tr("Measured modulus"),
         {},
         tr("Modulus of elasticity in MPa that you measured on this wood; it is used as it is. Empty: from the "
            "table.")},
        [group](const Shown& shown) {
            const auto& moe = group(shown).moe_Pa;
            return moe ? text(measure::writeNumber(*moe / measure::megapascal_Pa, 6)) + QStringLiteral(" MPa")
                       : QString();
        },
        [change](boat::Piece& piece, const QString& written, const Shown&) {
            change(piece).moe_Pa = readOptionalStress(written);
            return change(piece).moe_Pa ? tr("Set the measured modulus to %1").arg(written.trimmed())
                                        : tr("Take the modulus from the table");
        },
        tr("from the table"));
    groupFields_->addChoice(
        {QStringLiteral("bentBefore"),
         tr("Bent before, having been"),
         {},
         tr("Strips that were softened and dried on the form keep a share of the curve.")},
        {tr("not bent before"), tr("soaked"), tr("steamed"), tr("boiled")},
        [group](const Shown& shown) {
            return group(shown).bentBefore ? static_cast<int>(group(shown).bentBefore->how) : 0;
        },
        [change](boat::Piece& piece, int chosen, const Shown&) {
            boat::Strips& strips = change(piece);
            if (chosen == 0) {
                strips.bentBefore.reset();
                return tr("Bend strips dry");
            }
            if (!strips.bentBefore) strips.bentBefore.emplace();
            strips.bentBefore->how = static_cast<boat::Softened>(chosen);
            static const QStringList names{{},
                                           tr("Soak and bend strips before"),
                                           tr("Steam and bend strips before"),
                                           tr("Boil and bend strips before")};
            return names[chosen];
        });
    groupFields_->addText(
        {QStringLiteral("set"),
         tr("Share of the curve taken"),
         {},
         tr("How much of the curve those strips keep by themselves, 0 to 100 %.")},
        [group](const Shown& shown) {
            return group(shown).bentBefore ? writeShareText(group(shown).bentBefore->set) : QString();
        },
        [change](boat::Piece& piece, const QString& written, const Shown&) {
            boat::Strips& strips = change(piece);
            if (!strips.bentBefore)
                throw measure::InputError("", "the strips were not bent before", "say first how they were softened");
            strips.bentBefore->set = readShare(written);
            return tr("Set the share of the curve taken to %1").arg(writeShareText(strips.bentBefore->set));
        });
    groupFields_->addTick(
        {QStringLiteral("sacrificial"),
         tr("Sacrificial: planed away after"),
         {},
         tr("Spreads the clamps and is not part of the finished piece.")},
        [group](const Shown& shown) { return group(shown).sacrificial; },
        [change](boat::Piece& piece, bool on, const Shown&) {
            change(piece).sacrificial = on;
            return on ? tr("Plane strips away after") : tr("Keep strips in the piece");
        });
    groupFields_->addTick(
        {QStringLiteral("dryFace"),
         tr("Dry outer face: the pieces part there"),
         {},
         tr("No glue on the outer face of these strips.")},
        [group](const Shown& shown) { return group(shown).dryFace; },
        [change](boat::Piece& piece, bool on, const Shown&) {
            change(piece).dryFace = on;
            return on ? tr("Leave a face dry") : tr("Glue the face");
        });
}

void StripsPanel::makeStackFields() {
    const auto addLength = [this](const char* object, const QString& name, const char* path, const QString& hint,
                                  double boat::Stack::*member, const QString& changeName) {
        stackFields_->addText(
            {QLatin1String(object), name, QLatin1String(path), hint},
            [member](const Shown& shown) { return text(writeThickness(shown.piece.stack.*member, shown.display)); },
            [member, changeName](boat::Piece& piece, const QString& written, const Shown& shown) {
                piece.stack.*member = readLengthText(written, shown.display);
                return changeName.arg(text(writeThickness(piece.stack.*member, shown.display)));
            });
    };
    const auto addShare = [this](const char* object, const QString& name, const char* path, const QString& hint,
                                 double boat::Stack::*member, const QString& changeName) {
        stackFields_->addText(
            {QLatin1String(object), name, QLatin1String(path), hint},
            [member](const Shown& shown) { return writeShareText(shown.piece.stack.*member); },
            [member, changeName](boat::Piece& piece, const QString& written, const Shown&) {
                piece.stack.*member = readShare(written);
                return changeName.arg(writeShareText(piece.stack.*member));
            });
    };
    const auto addScarf = [this](const char* object, const QString& name, const char* path,
                                 std::optional<boat::Scarf> boat::Stack::*member, const QString& changeName,
                                 const QString& goneName) {
        stackFields_->addText(
            {QLatin1String(object), name, QLatin1String(path),
             tr("The whole stack cut to a scarf, 1 in so much. Empty: none.")},
            [member](const Shown& shown) { return writeScarf(shown.piece.stack.*member); },
            [member, changeName, goneName](boat::Piece& piece, const QString& written, const Shown&) {
                const std::optional<double> slope = readScarf(written);
                if (!slope) {
                    (piece.stack.*member).reset();
                    return goneName;
                }
                if (!(piece.stack.*member)) (piece.stack.*member).emplace();
                (piece.stack.*member)->slope = *slope;
                return changeName.arg(writeScarf(piece.stack.*member));
            },
            tr("none"));
    };
    addLength("runsPastStart", tr("Runs past the start by"), "stack.runs_past_start_mm",
              tr("Over-run beyond the first trim line, sawn off after."), &boat::Stack::runsPastStart_m,
              tr("Run past the start by %1"));
    addLength("runsPastEnd", tr("Runs past the end by"), "stack.runs_past_end_mm",
              tr("Over-run beyond the last trim line, sawn off after."), &boat::Stack::runsPastEnd_m,
              tr("Run past the end by %1"));
    addLength("glueLine", tr("Glue line"), "stack.glue_line_mm", tr("Thickness of one cured glue line."),
              &boat::Stack::glueLine_m, tr("Set the glue line to %1"));
    addLength("ripAllowance", tr("Rip allowance, each edge"), "stack.rip_allowance_mm",
              tr("Strips are ripped so much wider and planed off after."), &boat::Stack::ripAllowance_m,
              tr("Set the rip allowance to %1"));
    addShare("moisture", tr("Moisture of the wood"), "stack.moisture_pct", tr("Of the dry mass, when it is glued."),
             &boat::Stack::moisture, tr("Set the moisture to %1"));
    addShare("serviceMoisture", tr("Moisture in service"), "stack.service_moisture_pct",
             tr("What the piece will settle to on the boat."), &boat::Stack::serviceMoisture,
             tr("Set the moisture in service to %1"));
    stackFields_->addText(
        {QStringLiteral("grainSlope"), tr("Slope of grain"), QStringLiteral("stack.grain_slope"),
         tr("How far the grain runs out of the strip: 1 in 33, or 3 %, or straight.")},
        [](const Shown& shown) { return writeGrainSlope(shown.piece.stack.grainSlope); },
        [](boat::Piece& piece, const QString& written, const Shown&) {
            piece.stack.grainSlope = readGrainSlope(written);
            return tr("Set the slope of grain to %1").arg(writeGrainSlope(piece.stack.grainSlope));
        });
    stackFields_->addText(
        {QStringLiteral("gluings"), tr("A gluing ends after strip"), QStringLiteral("stack.gluings"),
         tr("After which strips a gluing ends and cures, with ; between. Empty: all in one go.")},
        [](const Shown& shown) {
            QStringList after;
            for (const int strip : shown.piece.stack.gluings) after << QString::number(strip);
            return after.join(QStringLiteral("; "));
        },
        [](boat::Piece& piece, const QString& written, const Shown&) {
            piece.stack.gluings = readWholes(written);
            return piece.stack.gluings.empty() ? tr("Glue all in one go")
                                               : tr("Glue in %1 goes").arg(piece.stack.gluings.size() + 1);
        },
        tr("all in one go"));
    stackFields_->addText(
        {QStringLiteral("pins"), tr("Locating pins at"), QStringLiteral("stack.pins"),
         tr("Places along the line of pins through every strip, with ; between. Empty: none.")},
        [](const Shown& shown) {
            QStringList places;
            for (const boat::Pin& pin : shown.piece.stack.pins) places << writeLengthText(pin.at_m, shown.display);
            return places.join(QStringLiteral("; "));
        },
        [](boat::Piece& piece, const QString& written, const Shown& shown) {
            const std::vector<double> places = readLengths(written, shown.display);
            piece.stack.pins.resize(places.size());
            for (std::size_t i = 0; i < places.size(); ++i) piece.stack.pins[i].at_m = places[i];
            return places.empty() ? tr("Take the pins out") : tr("Pin the strips at %1").arg(written.trimmed());
        },
        tr("none"));
    addScarf("scarfedStart", tr("Scarfed at the start"), "stack.scarfed_start", &boat::Stack::scarfedStart,
             tr("Scarf the start %1"), tr("Do not scarf the start"));
    addScarf("scarfedEnd", tr("Scarfed at the end"), "stack.scarfed_end", &boat::Stack::scarfedEnd,
             tr("Scarf the end %1"), tr("Do not scarf the end"));
}

}  // namespace fayline::app
