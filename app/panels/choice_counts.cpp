#include "app/panels/choice_counts.hpp"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "app/look/judged.hpp"
#include "app/panels/reading.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/stock/measure.hpp"
#include "core/units/day_text.hpp"
#include "core/units/overall.hpp"
#include "core/units/units.hpp"

namespace fayline::app {

namespace {

constexpr double leastChance = 1e-4;  // that is told as a figure

QString durationText(double time_s) {
    const QString size = text(units::writeDuration(std::abs(time_s)));
    return time_s < 0 ? tr("-%1").arg(size) : size;
}

// A value of a count as its scale and table say it.
QString valueText(ChoiceCount count, double value, const units::Display& display) {
    switch (count) {
        case ChoiceCount::thickness:
            return text(units::writeThickness(value, display));
        case ChoiceCount::strips:
        case ChoiceCount::spares:
        case ChoiceCount::stripsShort:
            return text(units::writeNumber(value));
        case ChoiceCount::boards:
            return display.lengths == units::LengthNotation::millimetres
                       ? tr("%1 m³").arg(text(units::writeNumber(value, 3)))
                       : tr("%1 bf").arg(text(units::writeNumber(value / stock::boardFoot_m3, 3)));
        case ChoiceCount::breaking:
            // Finer than anyone can know: the scatter itself is known to a figure or two.
            if (value > 0 && value < leastChance)
                return QStringLiteral("<%1").arg(text(units::writeShare(leastChance)));
            return text(units::writeShare(value));
        case ChoiceCount::strain:
        case ChoiceCount::springback:
        case ChoiceCount::woodLost:
            return text(units::writeShare(value));
        case ChoiceCount::endPull:
            return text(units::writeForce(value, display));
        case ChoiceCount::glue:
            return text(units::writeMass(value, display));
        case ChoiceCount::opens:
            return text(plan::tapeText(value, display));
        case ChoiceCount::sawn:
            return text(units::writeOverall(value, display.lengths));
        case ChoiceCount::closed:
        case ChoiceCount::margin:
            return durationText(value);
    }
    return {};
}

// One unit of a count in SI, and the steps in it that a scale may have; the last ones go on by tens.
struct Steps {
    double unit = 1;
    std::vector<double> sizes;
};

Steps decimal(double unit, double least) {
    Steps steps{unit, {}};
    for (double decade = least; decade < 1e7 * least; decade *= 10) {
        for (const double figure : {1.0, 2.0, 5.0}) steps.sizes.push_back(decade * figure);
    }
    return steps;
}

Steps stepsOf(ChoiceCount count, const units::Display& display) {
    switch (count) {
        case ChoiceCount::thickness:
            if (display.lengths == units::LengthNotation::millimetres) return decimal(1e-3, 0.1);
            return {units::inch_m, {1 / 32.0, 1 / 16.0, 1 / 8.0, 1 / 4.0, 1 / 2.0, 1, 2, 4}};
        case ChoiceCount::strips:
        case ChoiceCount::spares:
        case ChoiceCount::stripsShort:
            return decimal(1, 1);
        case ChoiceCount::boards:
            if (display.lengths == units::LengthNotation::millimetres) return decimal(1, 1e-3);
            return decimal(stock::boardFoot_m3, 0.1);
        case ChoiceCount::endPull:
            return decimal(units::forceUnit_N(display), 1);
        case ChoiceCount::glue:
            if (display.weights == units::WeightUnit::gram) return decimal(1e-3, 1);
            return {units::ounce_kg, {0.5, 1, 2, 4, 8, 16, 32, 64, 160, 320}};
        case ChoiceCount::opens:
            if (display.lengths == units::LengthNotation::millimetres) return decimal(1e-3, 1);
            return {units::inch_m, {1 / 16.0, 1 / 8.0, 1 / 4.0, 1 / 2.0, 1, 2, 4, 12, 24, 48, 120}};
        case ChoiceCount::sawn:
            return decimal(display.lengths == units::LengthNotation::millimetres ? 1 : units::foot_m, 1);
        case ChoiceCount::closed:
        case ChoiceCount::margin:
            return {60, {1, 2, 5, 10, 15, 30, 60, 120, 240, 480, 1440}};
        default:
            return decimal(0.01, 1e-3);
    }
}

// Its first group of strips; under it each other one on a line of its own, and what the choice is marked as.
FigureCell nameCell(const plan::Choice& choice, const units::Display& display) {
    QString name = choiceName(choice, display);
    name.replace(QStringLiteral(" + "), QStringLiteral("\n+ "))
        .replace(QStringLiteral(" to "), QStringLiteral("\nto "));
    QStringList lines = name.split(QLatin1Char('\n'));
    FigureCell cell{.text = lines.takeFirst()};
    QStringList marked;
    if (!choice.named.empty()) marked << tr("suggested");
    if (choice.asItIs) marked << tr("yours");
    if (!marked.isEmpty()) lines << marked.join(QStringLiteral(", "));
    cell.under = lines.join(QLatin1Char('\n'));
    return cell;
}

}  // namespace

QStringList choiceCountNames() {
    return {tr("Thickest strip"), tr("Strips to handle"), tr("Bend, % of breaking"), tr("Chance that one breaks"),
            tr("Spares"),         tr("Springback"),       tr("Springback at end"),   tr("Pull at the ends"),
            tr("Glue"),           tr("Glue-up takes"),    tr("Spare time"),          tr("Strips to saw"),
            tr("Waste"),          tr("Wood from boards"), tr("Strips short")};
}

std::optional<double> choiceCount(const plan::Choice& choice, ChoiceCount count) {
    switch (count) {
        case ChoiceCount::thickness:
            return choice.thickness_m;
        case ChoiceCount::strips:
            return choice.count;
        case ChoiceCount::strain:
            return choice.shareOnForm;
        case ChoiceCount::breaking:
            return choice.chanceOfBreaking;
        case ChoiceCount::spares:
            return choice.spares < 0 ? std::nullopt : std::optional<double>(choice.spares);
        case ChoiceCount::springback:
            return choice.springbackRatio;
        case ChoiceCount::opens:
            return choice.opens_m ? std::optional<double>(std::abs(*choice.opens_m)) : std::nullopt;
        case ChoiceCount::endPull:
            return choice.endPull_N;
        case ChoiceCount::glue:
            return choice.glue_kg;
        case ChoiceCount::closed:
            return choice.closed_s;
        case ChoiceCount::margin:
            return choice.margin_s;
        case ChoiceCount::sawn:
            return choice.stripLength_m;
        case ChoiceCount::woodLost:
            return choice.woodLost;
        case ChoiceCount::boards:
            return choice.boards_m3;
        case ChoiceCount::stripsShort:
            return choice.stripsShort;
    }
    return std::nullopt;
}

QString choiceCountText(const plan::Choice& choice, ChoiceCount count, const units::Display& display) {
    const std::optional<double> value = choiceCount(choice, count);
    return value && std::isfinite(*value) ? valueText(count, *value, display) : QStringLiteral("\u2013");
}

bool moreIsBetter(ChoiceCount count) {
    return count == ChoiceCount::margin;
}

std::vector<ScaleMark> choiceScale(ChoiceCount count, double least, double most, int parts,
                                   const units::Display& display) {
    const Steps steps = stepsOf(count, display);
    const auto fits = [&](double size) { return (most - least) <= parts * size * steps.unit * (1 + 1e-9); };
    const auto found = std::find_if(steps.sizes.begin(), steps.sizes.end(), fits);
    const double step = (found == steps.sizes.end() ? steps.sizes.back() : *found) * steps.unit;
    std::vector<ScaleMark> marks;
    const double hair = 1e-9 * step;
    for (double i = std::ceil((least - hair) / step); i * step <= most + hair; ++i) {
        const double value = i == 0 ? 0 : i * step;
        marks.push_back({value, valueText(count, value, display)});
    }
    return marks;
}

QString choiceName(const plan::Choice& choice, const units::Display& display) {
    model::Stack stack;
    stack.strips = choice.strips;
    return text(plan::stripsFigures(stack, display));
}

QString choiceInFull(const plan::Choice& choice, const units::Display& display) {
    QStringList lines{choiceName(choice, display)};
    if (!choice.possible) lines << tr("Will not work: %1.").arg(text(plan::writeWithin(choice.whyNot, display)));
    const QStringList names = choiceCountNames();
    for (int i = 0; i < choiceCounts; ++i) {
        lines << QStringLiteral("%1: %2").arg(names[i], choiceCountText(choice, static_cast<ChoiceCount>(i), display));
    }
    if (choice.overDepth_m > 1e-6) {
        lines << tr("Deeper than now, to plane off: %1").arg(text(units::writeThickness(choice.overDepth_m, display)));
    }
    return lines.join(QLatin1Char('\n'));
}

std::vector<FigureColumn> choiceColumns() {
    return {wordColumn(tr("Strips"), "27 x 15/64 in"),
            figureColumn(tr("Bend"), "<0.01 %", tr("one breaks\nspares"),
                         tr("Worst strip on the form, % of breaking; chance that one breaks; spares to saw")),
            figureColumn(tr("Springs"), "0.000 %", tr("end pull\nwaste"),
                         tr("Share of its curve that it loses; pull that brings its ends down; wood lost")),
            figureColumn(tr("Glue"), "1 h 20 min", tr("takes\nspare"),
                         tr("Glue to mix; time of the glue-up; open time that the worst joint has to spare"))};
}

ChoiceRows choiceRows(const plan::Choices& choices, const units::Display& display) {
    ChoiceRows made;
    for (std::size_t i = 0; i < choices.all.size(); ++i) {
        const plan::Choice& choice = choices.all[i];
        if (!choice.paretoOptimal) continue;
        const auto told = [&](ChoiceCount count) { return choiceCountText(choice, count, display); };
        FigureRow row;
        const auto under = [&](ChoiceCount one, ChoiceCount other) {
            return told(one) + QLatin1Char('\n') + told(other);
        };
        row.cells = {nameCell(choice, display),
                     FigureCell{told(ChoiceCount::strain), under(ChoiceCount::breaking, ChoiceCount::spares)},
                     FigureCell{told(ChoiceCount::springback), under(ChoiceCount::endPull, ChoiceCount::woodLost)},
                     FigureCell{told(ChoiceCount::glue), under(ChoiceCount::closed, ChoiceCount::margin)}};
        made.linesUnder = std::max(made.linesUnder, int(row.cells.front().under.count(QLatin1Char('\n'))) + 1);
        row.hint = choiceInFull(choice, display);
        made.rows.push_back(std::move(row));
        made.indices.push_back(static_cast<int>(i));
    }
    return made;
}

std::vector<FigureColumn> choiceChangeColumns() {
    return {wordColumn(tr("What would change"), "Bend, % of breaking"), figureColumn(tr("Today"), "99 ft 10 in"),
            figureColumn(tr("This stack"), "mm 99 ft 10 in")};  // the shape before it as well
}

std::vector<FigureRow> choiceChangeRows(const plan::Choice& today, const plan::Choice& other,
                                        const units::Display& display) {
    constexpr ChoiceCount compared[] = {ChoiceCount::strain, ChoiceCount::strips,     ChoiceCount::opens,
                                        ChoiceCount::closed, ChoiceCount::margin,     ChoiceCount::glue,
                                        ChoiceCount::sawn,   ChoiceCount::spares,     ChoiceCount::woodLost,
                                        ChoiceCount::boards, ChoiceCount::stripsShort};
    const auto judge = [&](ChoiceCount count) {
        if (choiceCountText(today, count, display) == choiceCountText(other, count, display)) {
            return plan::Judged::alike;
        }
        const std::optional<double> before = choiceCount(today, count);
        const std::optional<double> after = choiceCount(other, count);
        if (!before || !after) return plan::Judged::differs;
        return (*after > *before) == moreIsBetter(count) ? plan::Judged::better : plan::Judged::worse;
    };
    std::vector<FigureRow> rows;
    for (const ChoiceCount count : compared) {
        const bool ofBoards = count == ChoiceCount::boards || count == ChoiceCount::stripsShort;
        if (ofBoards && !choiceCount(today, count) && !choiceCount(other, count)) continue;  // none are listed
        FigureCell after{.text = choiceCountText(other, count, display)};
        after.judged = static_cast<int>(judge(count));
        rows.push_back({.cells = {FigureCell{.text = choiceCountNames()[static_cast<int>(count)]},
                                  FigureCell{.text = choiceCountText(today, count, display)}, after},
                        .hint = judgedText(plan::Judged(*after.judged))});
    }
    return rows;
}

}  // namespace fayline::app
