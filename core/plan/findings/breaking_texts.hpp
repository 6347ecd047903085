// What is said of strips that may break: what keeps them whole, and what becomes of a stack that lost one.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase remedyEnough{
    FAYLINE_TEXT("plan", "To need no spares, use %1: a strip then breaks in %2 glue-ups (allowed 1 in 20).")};
inline constexpr Phrase remedyNotEnough{
    FAYLINE_TEXT("plan", "Nothing alone saves all spares. Best use %1: a strip then breaks in %2 glue-ups.")};
inline constexpr Phrase softenedStrips{FAYLINE_TEXT("plan", "steamed or boiled strips that keep %1 of the curve")};
inline constexpr Phrase straightGrain{FAYLINE_TEXT("plan", "grain that runs out no faster than 1 in %1")};
inline constexpr Phrase remedyNoSpare{FAYLINE_TEXT(
    "plan", "With %1 a strip breaks in %2 glue-ups, no spare is needed, and clamps pull %3 times as hard.")};
inline constexpr Phrase remedySpares{
    FAYLINE_TEXT_N("plan",
                   "With %1 a strip breaks in %2 glue-ups, %4 spare is needed, and clamps pull %3 times as hard."),
    FAYLINE_TEXT_N("plan",
                   "With %1 a strip breaks in %2 glue-ups, %4 spares are needed, and clamps pull %3 times as hard.")};
inline constexpr Phrase remedyNoNumber{FAYLINE_TEXT(
    "plan", "With %1 a strip breaks in %2 glue-ups, no number of spares is enough, and clamps pull %3 times as hard.")};
inline constexpr Phrase measureWhatTheyKeep{
    FAYLINE_TEXT("plan", "What softened strips keep is for you to measure: dry one on the form and see.")};
inline constexpr Phrase soakingColdNotKnown{
    FAYLINE_TEXT("plan", "Soaking cold is not known to let wood bend further.")};

inline constexpr Phrase oneStripFewer{
    FAYLINE_TEXT("plan", "If a strip breaks, put in a spare. Without one the piece is %1 shallower and %2 as stiff.")};
inline constexpr Phrase onlyStrip{FAYLINE_TEXT("plan", "it is the only strip")};
inline constexpr Phrase cannotBeGlued{
    FAYLINE_TEXT("plan", "If %1 breaks and no spare is at hand, the piece cannot be glued: %2.")};
inline constexpr Phrase withoutStrip{FAYLINE_TEXT(
    "plan", "If %1, the nearest to breaking, is lost, the piece is %2 shallower and, glued, %3 as stiff.")};
inline constexpr Phrase givesBackInstead{FAYLINE_TEXT("plan", "It gives back %1 of its curve instead of %2.")};
inline constexpr Phrase fewerEndOpen{
    FAYLINE_TEXT("plan", "Off the form made for all of them, the end will stand %1 open, the start laid on.")};
inline constexpr Phrase fewerEndClosed{
    FAYLINE_TEXT("plan", "Off the form made for all of them, the end will stand %1 closed in, the start laid on.")};
inline constexpr Phrase fewerStartOpen{
    FAYLINE_TEXT("plan", "Off the form made for all of them, the start will stand %1 open, the end laid on.")};
inline constexpr Phrase fewerStartClosed{
    FAYLINE_TEXT("plan", "Off the form made for all of them, the start will stand %1 closed in, the end laid on.")};
inline constexpr Phrase designerSays{
    FAYLINE_TEXT("plan", "Whether that depth still carries its load is for the designer to say.")};
inline constexpr Phrase pullsInstead{
    FAYLINE_TEXT("plan", "The hardest pull is %1 instead of %2, the largest gap %3 instead of %4.")};

inline constexpr Phrase putInSpare{FAYLINE_TEXT("plan", "Put a spare in its place while the glue is open.")};
inline constexpr Phrase withoutSpareGoOn{FAYLINE_TEXT_N("plan", "Without one, go on with %1 strip."),
                                         FAYLINE_TEXT_N("plan", "Without one, go on with %1 strips.")};
inline constexpr Phrase goOnWith{FAYLINE_TEXT_N("plan", "Go on with %1 strip."),
                                 FAYLINE_TEXT_N("plan", "Go on with %1 strips.")};
inline constexpr Phrase leaveOnForm{FAYLINE_TEXT(
    "plan",
    "Leave the piece on its form: one more strip, glued on outside once the rest has cured, brings depth and "
    "springback back to what the form is made for.")};
inline constexpr Phrase glueOneMore{
    FAYLINE_TEXT("plan", "If the depth is wanted, glue one more on outside once the rest has cured.")};
inline constexpr Phrase glueOneMoreOnForm{FAYLINE_TEXT(
    "plan",
    "If the depth is wanted, glue one more on outside once the rest has cured, before the piece leaves its form.")};
inline constexpr Phrase breakingSplinters{FAYLINE_TEXT(
    "plan",
    "A strip breaks with a crack and throws splinters on the outside of the bend: keep eyes covered and hands off "
    "there, and clean the broken ends out of the wet joints.")};

}  // namespace fayline::plan::texts
