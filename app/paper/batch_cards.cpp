#include "app/paper/batch_cards.hpp"

#include "app/paper/bench_figures.hpp"
#include "app/paper/day_figures.hpp"
#include "app/paper/frame.hpp"
#include "app/paper/listing.hpp"
#include "app/paper/marks.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/units/day_text.hpp"

namespace fayline::app::paper {

namespace {

constexpr double cardSize_mm = 5;
constexpr double blankOfCup_mm = 17;

QString partName(const glue::Adhesive& adhesive, int part) {
    if (adhesive.onePart()) return "Glue";
    if (adhesive.kind == model::AdhesiveKind::urea) return part == 0 ? "Powder" : "Water";
    if (adhesive.kind == model::AdhesiveKind::polyurethane) return part == 0 ? "First part" : "Second part";
    return part == 0 ? "Resin" : "Hardener";
}

QString useText(const glue::Batch& batch) {
    switch (batch.use) {
        case glue::BatchFor::endGrain:
            return "thin, for the end grain";
        case glue::BatchFor::wetOut:
            return "thin, to wet out";
        case glue::BatchFor::spread:
            return batch.filler_kg > 0 ? "thickened, to spread" : "to spread";
    }
    return {};
}

// What the scale or the cup shows, and below it the same the other way.
Cell partCell(const glue::Batch& batch, int part, const model::Glue& glue, const units::Display& display) {
    const auto i = static_cast<std::size_t>(part);
    const QString weight = massText(batch.parts_kg[i], display);
    const QString volume = volumeText(batch.parts_m3[i], display);
    if (glue.measuredBy == model::MeasuredBy::scale) return textCell(weight, true, volume);
    const QString marks = numberText(batch.parts_m3[i] / glue.cupReads_m3, 0);
    return textCell(volume, true, inOnePiece(marks + (marks == "1" ? " mark" : " marks")));
}

const schedule::CupTimes* timesOf(const plan::GluingDay& day, int cup) {
    for (const schedule::CupTimes& times : day.run.cups) {
        if (times.number == cup) return &times;
    }
    return nullptr;
}

Table cardOf(const model::Piece& piece, const plan::Plan& plan, const plan::GluingDay& day, const glue::Batch& batch) {
    const glue::Adhesive& adhesive = plan.day.glue.adhesive;
    const units::Display& display = plan.display;
    Table card;
    card.size_mm = cardSize_mm;
    const QString used = usedForText(day, batch.number);
    card.title = QString("Batch %1: %2").arg(batch.number).arg(useText(batch)) + (used.isEmpty() ? "" : ": " + used);
    std::vector<Cell> row;
    const auto add = [&](const QString& head, const QString& below, const Cell& cell) {
        card.columns.push_back({head, below, Lean::left});
        row.push_back(cell);
    };
    add(partName(adhesive, 0), {}, partCell(batch, 0, piece.glue, display));
    if (!adhesive.onePart()) add(partName(adhesive, 1), {}, partCell(batch, 1, piece.glue, display));
    if (batch.filler_kg > 0) add("Filler", "after stirring", textCell(massText(batch.filler_kg, display), true));
    if (batch.thinner_kg > 0) add("Thinner", "see the plan", textCell(massText(batch.thinner_kg, display), true));
    if (const schedule::CupTimes* times = timesOf(day, batch.number)) {
        add("Begin to mix", "as planned", textCell(clockText(piece, times->mixedFrom_s)));
        add("USE UP BY", "as planned", textCell(clockText(piece, times->useBy_s), true));
    }
    const QString blank = roomToWrite(blankOfCup_mm, cardSize_mm);
    add("Begun at", "write it", textCell(blank));
    add("Use up by", durationText(batch.useWithin_s) + " later", textCell(blank));
    card.rows.push_back(row);
    return card;
}

QString heatText(const glue::Batch& batch, const units::Display& display) {
    QString text =
        QString("Use it up within %1 of mixing; it goes off after %2.")
            .arg(durationText(batch.useWithin_s), inOnePiece(QString::fromStdString(plan::lifeWords(batch.potLife_s))));
    const auto hot = [&](const glue::Between& peak_C) {
        return inOnePiece(QString::fromStdString(plan::peakWords(peak_C, display)));
    };
    if (batch.fullPeak_C.to > glue::smokes_C) {
        text += QString(" LEFT STANDING FULL IT CAN HEAT ITSELF TO %1: smoke, fire.").arg(hot(batch.fullPeak_C));
    } else {
        text += QString(" Left standing full it warms to %1.").arg(hot(batch.fullPeak_C));
    }
    if (batch.leftPeak_C && batch.leftPeak_C->to > glue::smokes_C) {
        text += QString(" Even leftovers can reach %1: spread them out thin.").arg(hot(*batch.leftPeak_C));
    }
    if (!batch.inTime) text += " STOP: it takes longer to use up than is safe to plan for.";
    return text;
}

std::vector<Paragraph> cupNotes(const model::Piece& piece, const plan::Plan& plan) {
    const glue::GluePlan& glue = plan.day.glue;
    std::vector<Paragraph> notes{{skinCaution(), 2.7, true}, {hotCupCaution(), 2.7, true}};
    notes.push_back({dustAndRagsCaution(piece), 2.4});
    if (!glue.adhesive.onePart()) {
        notes.push_back(
            {"Never change the ratio to change the speed. Stir for a minute at least, longer when it is cold, "
             "and scrape sides and bottom (P); filler goes in after.",
             2.7});
    }
    if (!glue.adhesive.warning.empty()) notes.push_back({QString::fromStdString(glue.adhesive.warning), 2.7});
    notes.push_back(
        {"Times after mixing are an estimate from the data sheet's pot life for a pot that heats itself (D), a range "
         "since no sheet says how much heat its own pot lost; a batch that feels warm is at its end whatever the clock "
         "says.",
         2.4});
    return notes;
}

QString summaryText(const model::Piece& piece, const plan::Plan& plan) {
    const glue::GluePlan& glue = plan.day.glue;
    const units::Display& display = plan.display;
    QString text = QString("%1. In all %2 of mix for %3")
                       .arg(QString::fromStdString(glue.adhesive.name), massText(glue.mixed_kg, display),
                            inOnePiece(QString::fromStdString(units::writeArea(glue.area_m2, display))));
    text += " of wood";
    if (!glue.adhesive.onePart()) {
        text += QString(": %1 %2 and %3 %4")
                    .arg(massText(glue.parts_kg[0], display), partName(glue.adhesive, 0).toLower(),
                         massText(glue.parts_kg[1], display), partName(glue.adhesive, 1).toLower());
    }
    text += QString(", in air of %1.")
                .arg(inOnePiece(QString::fromStdString(units::writeTemperature(piece.glue.air_C, display))));
    if (piece.glue.measuredBy == model::MeasuredBy::cup) {
        text += QString(" Measured by a pot with a mark each %1: by volume, not by weight.")
                    .arg(volumeText(piece.glue.cupReads_m3, display));
    } else if (!glue.adhesive.onePart()) {
        text += " Measured on a scale: by weight, not by volume.";
    }
    return text;
}

}  // namespace

bool isGlued(const model::Piece& piece) {
    int strips = 0;
    for (const model::Strips& group : piece.stack.strips) strips += group.count;
    return strips > 1 || piece.form.kind == model::FormKind::inPlace;
}

std::vector<Sheet> batchCards(const model::Piece& piece, const plan::Plan& plan, const Page& page) {
    Listing listing;
    listing.name = "batch after batch";
    if (plan.day.glue.batches.empty()) {
        listing.blocks.push_back(Paragraph{"Nothing of this piece is glued.", 3.8, true});
        return layOut(listing, page);
    }
    listing.notes = cupNotes(piece, plan);
    listing.laterNotes = {{skinCaution(), 2.4}, {hotCupCaution(), 2.4}};
    listing.blocks.push_back(Paragraph{summaryText(piece, plan), 3.4, true});
    for (const plan::GluingDay& day : plan.day.gluings) {
        for (const glue::Batch& batch : plan.day.glue.batches) {
            if (batch.gluing != day.job.gluing) continue;
            Table card = cardOf(piece, plan, day, batch);
            if (plan.day.gluings.size() > 1) card.title.prepend(QString("Glue-up %1, ").arg(day.job.gluing + 1));
            listing.blocks.push_back(card);
            listing.blocks.push_back(
                Paragraph{heatText(batch, plan.display), 2.9, batch.fullPeak_C.to > glue::smokes_C});
        }
    }
    listing.blocks.push_back(
        Paragraph{sourcesText({plan.day.glue.adhesive.ratioSource, plan.day.glue.adhesive.potLifeSource}), 2.1});
    return layOut(listing, page);
}

}  // namespace fayline::app::paper
