#include "app/panels/glue_rows.hpp"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "app/look/text.hpp"
#include "app/panels/reading.hpp"
#include "core/glue/conditions.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/units/day_reading.hpp"
#include "core/units/day_text.hpp"

namespace fayline::app {

namespace {

QString mass(double mass_kg, const units::Display& display) {
    return text(units::writeMass(mass_kg, display));
}

QString volume(double volume_m3, const units::Display& display) {
    return text(units::writeVolume(volume_m3, display));
}

QString duration(double time_s) {
    return text(units::writeDuration(time_s));
}

QString temperature(double air_C, const units::Display& display) {
    return text(units::writeTemperature(air_C, display));
}

// A part as the user measures it, the other way under it.
FigureCell part(double mass_kg, double volume_m3, model::MeasuredBy by, const units::Display& display) {
    if (!(mass_kg > 0)) return FigureCell{tr("none")};
    const bool scale = by == model::MeasuredBy::scale;
    FigureCell cell{scale ? mass(mass_kg, display) : volume(volume_m3, display),
                    scale ? volume(volume_m3, display) : mass(mass_kg, display)};
    cell.sort = scale ? mass_kg : volume_m3;
    return cell;
}

QString firstPart(const glue::Adhesive& adhesive) {
    if (adhesive.kind == model::AdhesiveKind::urea) return tr("Powder");
    return adhesive.onePart() ? tr("Glue") : tr("Resin");
}

QString secondPart(const glue::Adhesive& adhesive) {
    return adhesive.kind == model::AdhesiveKind::urea ? tr("Water") : tr("Hardener");
}

// In the order of glue::BatchFor.
QString useName(glue::BatchFor use) {
    return QStringList{tr("wet out"), tr("spread"), tr("end grain")}.value(int(use));
}

QString cupName(const plan::Plan& plan, const glue::Batch& batch) {
    return plan.day.gluings.size() > 1 ? tr("%1, glue-up %2").arg(batch.number).arg(batch.gluing + 1)
                                       : QString::number(batch.number);
}

const schedule::CupTimes* timesOf(const plan::Plan& plan, const glue::Batch& batch) {
    for (const plan::GluingDay& day : plan.day.gluings) {
        if (day.job.gluing != batch.gluing) continue;
        for (const schedule::CupTimes& cup : day.run.cups) {
            if (cup.number == batch.number) return &cup;
        }
    }
    return nullptr;
}

// Two numbers of a range as a narrow column has them.
QString narrowRange(const std::string& words) {
    return text(words).replace(QStringLiteral(" to "), QStringLiteral("\u2013"));
}

QString life(const glue::Between& lasts_s) {
    return narrowRange(plan::lifeWords(lasts_s));
}

QString peak(const glue::Between& peak_C, const units::Display& display) {
    return narrowRange(plan::peakWords(peak_C, display));
}

// How hot it gets, with a shape beside it where it may smoke.
FigureCell heat(const glue::Between& peak_C, plan::Severity smoking, const units::Display& display) {
    FigureCell cell{peak(peak_C, display)};
    cell.sort = peak_C.to;
    if (peak_C.to > glue::smokes_C) cell.severity = static_cast<int>(smoking);
    return cell;
}

const units::Source& modelSource() {
    static const units::Source source{"pot that heats itself, from the data sheet's pot life (an estimate)",
                                      units::Mark::derived};
    return source;
}

// A value, what it is held against under it, and where that comes from.
FigureRow fact(const QString& what, FigureCell value, const QString& beside, const units::Source& source) {
    value.under = beside;
    value.source = sourceText(source);
    return {{{what}, value}};
}

}  // namespace

std::optional<int> severityOf(const plan::Plan& plan, std::initializer_list<plan::Code> codes) {
    std::optional<int> worst;
    for (const plan::Finding& finding : plan.findings) {
        const bool meant = std::ranges::find(codes, finding.code) != codes.end();
        if (meant && (!worst || static_cast<int>(finding.severity) < *worst))
            worst = static_cast<int>(finding.severity);
    }
    return worst;
}

std::vector<FigureColumn> amountColumns(model::MeasuredBy by) {
    const bool scale = by == model::MeasuredBy::scale;
    return {wordColumn(tr("All batches"), tr("left in pots, on tools")),
            figureColumn(scale ? tr("By weight") : tr("By volume"), tr("By weight"), {}, tr("As you measure")),
            figureColumn(scale ? tr("By volume") : tr("By weight"), tr("By volume"), {},
                         tr("The same the other way, from the densities"))};
}

std::vector<FigureRow> amountRows(const Shown& shown) {
    const glue::GluePlan& glue = shown.plan->day.glue;
    const units::Display& display = shown.display;
    const bool scale = shown.piece.glue.measuredBy == model::MeasuredBy::scale;
    std::vector<FigureRow> rows;
    const auto add = [&](const QString& what, double mass_kg, std::optional<double> volume_m3,
                         const units::Source& source, std::optional<int> severity = std::nullopt) {
        const QString weight = mass(mass_kg, display);
        const QString room = volume_m3 ? volume(*volume_m3, display) : QString(QChar(0x2013));
        const bool weighed = scale || !volume_m3;
        rows.push_back({{{.text = what, .severity = severity},
                         {.text = weighed ? weight : room, .source = sourceText(source)},
                         {weighed ? room : weight}}});
    };
    const units::Source asGiven{"your own figure, beside the project's default", units::Mark::commonPractice};
    add(firstPart(glue.adhesive), glue.parts_kg[0], glue.parts_m3[0], glue.adhesive.ratioSource);
    if (!glue.adhesive.onePart())
        add(secondPart(glue.adhesive), glue.parts_kg[1], glue.parts_m3[1], glue.adhesive.ratioSource);
    if (glue.filler_kg > 0) add(tr("Filler"), glue.filler_kg, std::nullopt, asGiven);
    if (glue.thinner_kg > 0)
        add(tr("Thinner"), glue.thinner_kg, std::nullopt, asGiven, severityOf(*shown.plan, {plan::Code::thinned}));
    add(tr("The mix"), glue.mixed_kg, glue.parts_m3[0] + glue.parts_m3[1], glue.adhesive.densitySource);
    const units::Source balance{"glue lines as thick as the strips' panel has them (derived)", units::Mark::derived};
    const units::Source soaking{"a share of the wet-out, by how rough the wood is (common practice)",
                                units::Mark::commonPractice};
    const glue::Amounts& amounts = glue.amounts;
    add(tr("in the joints"), amounts.line_kg, std::nullopt, balance,
        severityOf(*shown.plan, {plan::Code::starvedJoint}));
    add(tr("on the wood"), amounts.soaksIn_kg, std::nullopt, soaking);
    add(tr("squeezed out"), amounts.squeezedOut_kg, std::nullopt, balance);
    add(tr("left in pots, on tools"), amounts.waste_kg, std::nullopt, asGiven);
    rows.push_back({{{tr("Spread on each joint")},
                     {.text = text(units::typedCoat(std::round(1000 * amounts.perJoint_kg_m2()) / 1000)),
                      .source = sourceText(glue.adhesive.spreadSource)},
                     {}}});
    rows.push_back({{{tr("Wood, both sides of each joint")}, {text(units::writeArea(glue.area_m2, display))}, {}}});
    return rows;
}

std::vector<FigureColumn> batchColumns(const glue::Adhesive& adhesive, model::MeasuredBy by) {
    const QString other = by == model::MeasuredBy::scale ? tr("by volume") : tr("by weight");
    return {wordColumn(tr("Batch"), tr("end grain"), tr("for")),
            figureColumn(firstPart(adhesive), "12.3 fl oz", other, tr("As scale or pot reads")),
            figureColumn(secondPart(adhesive), "12.3 fl oz", other),
            figureColumn(tr("Added"), "12.3 oz", tr("what"), tr("Filler or thinner, by weight"))};
}

std::vector<FigureRow> batchRows(const Shown& shown) {
    const plan::Plan& plan = *shown.plan;
    const model::MeasuredBy by = shown.piece.glue.measuredBy;
    std::vector<FigureRow> rows;
    for (const glue::Batch& batch : plan.day.glue.batches) {
        FigureCell added{tr("none")};
        if (batch.filler_kg > 0) added = FigureCell{mass(batch.filler_kg, shown.display), tr("filler")};
        if (batch.thinner_kg > 0) added = FigureCell{mass(batch.thinner_kg, shown.display), tr("thinner")};
        rows.push_back({{{.text = cupName(plan, batch), .under = useName(batch.use), .sort = double(batch.number)},
                         part(batch.parts_kg[0], batch.parts_m3[0], by, shown.display),
                         part(batch.parts_kg[1], batch.parts_m3[1], by, shown.display),
                         added}});
    }
    return rows;
}

std::vector<FigureColumn> goingOffColumns() {
    return {wordColumn(tr("Batch"), "00"),
            figureColumn(tr("Pot life"), "000\u2013000 min", tr("use within"),
                         tr("From mixing until it goes off in its pot; use it within the time below it")),
            figureColumn(tr("Use by"), "00:00", tr("used up"), tr("Clock time as planned")),
            figureColumn(tr("Peak: left"), "000\u2013000 \u00b0C", tr("full pot"),
                         tr("How hot leftovers get; below it: the whole batch left standing"))};
}

std::vector<FigureRow> goingOffRows(const Shown& shown) {
    const plan::Plan& plan = *shown.plan;
    std::vector<FigureRow> rows;
    for (const glue::Batch& batch : plan.day.glue.batches) {
        FigureCell lasts{life(batch.potLife_s), duration(batch.useWithin_s)};
        lasts.source = sourceText(modelSource());
        if (!batch.inTime) lasts.severity = severityOf(plan, {plan::Code::cupGoesOff});
        FigureCell useBy;
        if (const schedule::CupTimes* times = timesOf(plan, batch)) {
            const double start_s = shown.piece.crew.startAt_s;
            useBy = FigureCell{text(units::writeClock(start_s + times->useBy_s)),
                               text(units::writeClock(start_s + times->emptied_s))};
            if (times->margin_s() < 0) useBy.severity = static_cast<int>(plan::Severity::caution);
        }
        FigureCell left = batch.leftPeak_C ? heat(*batch.leftPeak_C, plan::Severity::caution, shown.display)
                                           : FigureCell{tr("nothing")};
        left.under = peak(batch.fullPeak_C, shown.display);
        left.source = sourceText(modelSource());
        rows.push_back({{{.text = cupName(plan, batch), .sort = double(batch.number)}, lasts, useBy, left}});
    }
    return rows;
}

std::vector<FigureColumn> vesselColumns() {
    return {wordColumn(tr("Largest mix"), tr("half, in a tray"), {}, tr("The largest batch, in other pots")),
            figureColumn(tr("Mix"), "0000 g"), figureColumn(tr("Pot life"), "000\u2013000 min"),
            figureColumn(tr("Gets to"), "000\u2013000 \u00b0C", {}, tr("How hot it gets, left standing"))};
}

std::vector<FigureRow> vesselRows(const Shown& shown) {
    std::vector<FigureRow> rows;
    const std::vector<glue::VesselTried>& tried = shown.plan->day.glue.vessels;
    for (const glue::VesselTried& one : tried) {
        const bool half = one.mixed_kg < 0.75 * tried.front().mixed_kg;
        const bool tray = one.vessel == model::Vessel::tray;
        rows.push_back({{{tray ? (half ? tr("half, in a tray") : tr("in a tray"))
                               : (half ? tr("half, in a pot") : tr("in a pot"))},
                         {mass(one.mixed_kg, shown.display)},
                         {.text = life(one.potLife_s), .source = sourceText(modelSource())},
                         heat(one.peak_C, plan::Severity::note, shown.display)}});
    }
    return rows;
}

std::vector<FigureColumn> conditionColumns() {
    return {wordColumn(tr("In this air"), tr("In this air")),
            figureColumn(tr("Air now"), tr("wood at 13.1 \u00b0C or more"), tr("beside it"))};
}

std::vector<FigureRow> conditionRows(const Shown& shown) {
    const plan::Plan& plan = *shown.plan;
    const glue::GluePlan& glue = plan.day.glue;
    const units::Display& display = shown.display;
    const auto marked = [&](const QString& text, std::initializer_list<plan::Code> codes) {
        return FigureCell{.text = text, .severity = severityOf(plan, codes)};
    };
    const QString least = tr("%1 or more").arg(temperature(glue.adhesive.least_C, display));
    const bool nightIsAssumed = shown.piece.glue.airOverNight_C == model::Glue{}.airOverNight_C;
    std::vector<FigureRow> rows;
    rows.push_back(
        fact(tr("Air now"),
             marked(temperature(shown.piece.glue.air_C, display), {plan::Code::tooColdForGlue, plan::Code::hotDay}),
             least, glue.adhesive.leastSource));
    rows.push_back(
        fact(tr("Coldest until the next day"),
             marked(temperature(glue.cure.leastAir_C, display), {plan::Code::nightTooCold, plan::Code::tooColdForGlue}),
             nightIsAssumed ? tr("assumed; %1").arg(least) : least, glue.adhesive.leastSource));
    rows.push_back(
        fact(tr("Dew point"),
             marked(temperature(std::round(glue.dewPoint_C), display),
                    {plan::Code::nearDewPoint, plan::Code::coldWoodSweats}),
             tr("wood at %1 or more").arg(temperature(std::ceil(glue.dewPoint_C + glue::aboveDewPoint_K), display)),
             units::Source{"Magnus formula, Alduchov and Eskridge 1996; guidance tied to ISO 8502-4",
                           units::Mark::transcribed}));
    rows.push_back(fact(tr("Wood comes to"),
                        marked(text(units::writeShare(glue.airMoisture)), {plan::Code::woodWetForGlue}),
                        tr("strips at %1").arg(text(units::writeShare(shown.piece.stack.moisture))),
                        units::Source{"Wood Handbook eq. 4-5", units::Mark::transcribed}));
    rows.push_back(
        fact(tr("A film stays open"), FigureCell{duration(glue.openTime_s)},
             tr("%1 at %2").arg(duration(glue.adhesive.openTime_s), temperature(glue.adhesive.openTimeAt_C, display)),
             glue.adhesive.openTimeSource));
    rows.push_back(fact(tr("Spreading goes at"), FigureCell{text(units::writeShare(glue.slowdown))},
                        tr("of your rate at %1").arg(temperature(20, display)),
                        units::Source{"a mix twice as thick for each 5 K colder; spreading with its cube root",
                                      units::Mark::commonPractice}));
    return rows;
}

std::vector<FigureColumn> cureColumns() {
    return {wordColumn(tr("Once closed"), tr("Full strength")), figureColumn(tr("At"), "00:00 the next day"),
            figureColumn(tr("After"), "1 h 20 min")};
}

std::vector<FigureRow> cureRows(const Shown& shown) {
    const glue::CurePlan& cure = shown.plan->day.glue.cure;
    const units::Source& source = shown.plan->day.glue.adhesive.cureSource;
    std::vector<FigureRow> rows;
    const auto add = [&](const QString& what, double after_s, std::optional<int> severity = std::nullopt) {
        rows.push_back({{{what},
                         {.text = text(units::writeClock(cure.closedAt_s + after_s)),
                          .severity = severity,
                          .source = sourceText(source)},
                         {duration(after_s)}}});
    };
    add(tr("Scrape from"), cure.softUntil_s);
    add(tr("Scrape until"), cure.scrapeUntil_s);
    add(tr("Clamps off"), cure.clampsOff_s, severityOf(*shown.plan, {plan::Code::neverCures}));
    add(tr("Planing"), cure.work_s);
    add(tr("Full strength"), cure.full_s);
    return rows;
}

}  // namespace fayline::app
