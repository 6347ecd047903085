// The counts of the stacks that could be glued, as the strips panel's picture and table show them.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "app/look/shown.hpp"
#include "app/panels/figures_model.hpp"
#include "core/plan/study/choices.hpp"

namespace fayline::app {

// In the order in which they are offered.
enum class ChoiceCount {
    thickness,
    strips,
    strain,
    breaking,
    spares,
    springback,
    opens,
    endPull,
    glue,
    closed,
    margin,
    sawn,
    woodLost,
    boards,
    stripsShort
};
inline constexpr int choiceCounts = 15;

QStringList choiceCountNames();

// In SI; none where the choice has no such number, which then is as bad as can be.
std::optional<double> choiceCount(const plan::Choice& choice, ChoiceCount count);
QString choiceCountText(const plan::Choice& choice, ChoiceCount count, const units::Display& display);

// Whether less of it is worse: of the margin of time.
bool moreIsBetter(ChoiceCount count);

// Values at which a scale from `least` to `most` is marked, with their text; no more than `parts` steps.
struct ScaleMark {
    double value = 0;
    QString text;
};
std::vector<ScaleMark> choiceScale(ChoiceCount count, double least, double most, int parts,
                                   const units::Display& display);

// "8 x 1/4 in"
QString choiceName(const plan::Choice& choice, const units::Display& display);

// The choice with all its counts, a line each; first why it cannot be, where that is so.
QString choiceInFull(const plan::Choice& choice, const units::Display& display);

// Those that none beats, and for each row its index among all.
std::vector<FigureColumn> choiceColumns();
struct ChoiceRows {
    std::vector<FigureRow> rows;
    std::vector<int> indices;
    int linesUnder = 2;  // that the longest name takes, beside its first
};
ChoiceRows choiceRows(const plan::Choices& choices, const units::Display& display);

// What would change: today's stack beside another, count by count. What reads alike is alike.
std::vector<FigureColumn> choiceChangeColumns();
std::vector<FigureRow> choiceChangeRows(const plan::Choice& today, const plan::Choice& other,
                                        const units::Display& display);

}  // namespace fayline::app
