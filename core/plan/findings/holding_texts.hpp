// How a piece is held: stations, gaps, pressing, pads and posts.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase holdAt{FAYLINE_TEXT("plan", "%1 at %2")};
inline constexpr Phrase holdAsItGoesOn{FAYLINE_TEXT("plan", "%1, as it goes on,")};
inline constexpr Phrase holdWhenOtherGoesOn{FAYLINE_TEXT("plan", "%1, when %2 goes on,")};

inline constexpr Phrase stationOffTheStrips{
    FAYLINE_TEXT("plan", "%1 reaches %2 past the strips. Move it inwards, or leave the strips longer.")};
inline constexpr Phrase stationOffTheForm{FAYLINE_TEXT(
    "plan", "%1 is %2 off what the strips lie on, and bends them inwards. Move it over the support, or extend that.")};
inline constexpr Phrase stationWithoutPost{
    FAYLINE_TEXT("plan", "%1 has no post under it and bends the strips inwards. Set a post there.")};
inline constexpr Phrase padsOverlap{
    FAYLINE_TEXT("plan", "%1 are %2 apart, and their pads need %3. Move one, or use smaller pads.")};

inline constexpr Phrase gapOverLimit{
    FAYLINE_TEXT("plan", "Gap %1 at %2 (allowed %3). Set a clamp there, or a stronger one.")};
inline constexpr Phrase gapAtStart{FAYLINE_TEXT(
    "plan", "Gap %1 at the start trim line (allowed %2). Leave the strips longer and clamp beyond the line.")};
inline constexpr Phrase gapAtEnd{FAYLINE_TEXT(
    "plan", "Gap %1 at the end trim line (allowed %2). Leave the strips longer and clamp beyond the line.")};
inline constexpr Phrase gapAtTrimRemedy{
    FAYLINE_TEXT("plan", "Let the form run on under the longer strips. A stronger clamp at that end may do too.")};
inline constexpr Phrase fallsInside{FAYLINE_TEXT(
    "plan", "The stack cuts the corner between its supports at %1 by %2 (allowed %3). Set a post between.")};

inline constexpr Phrase noStrength{
    FAYLINE_TEXT("plan", "%1 holds nothing: it has no max force. Enter the most that it can pull.")};
inline constexpr Phrase justCloses{FAYLINE_TEXT("plan", "%1 pulls all it can (%2) and just closes its gap.")};
inline constexpr Phrase leavesSmallGap{
    FAYLINE_TEXT("plan", "%1 pulls all it can (%2) and leaves %3 under its pad, within the limit.")};
inline constexpr Phrase leavesGap{FAYLINE_TEXT(
    "plan", "%1 pulls all it can (%2) and still leaves a gap of %3. Use a stronger one, or add one beside it.")};
inline constexpr Phrase snugIsEnough{FAYLINE_TEXT("plan", "%1: snug is enough.")};
inline constexpr Phrase snugIsEnoughWhy{
    FAYLINE_TEXT("plan", "It has no gap to close: the stack lies down there without it."),
    FAYLINE_TEXT_N("plan", "They have no gap to close: the stack lies down there without them.")};

inline constexpr Phrase noStations{
    FAYLINE_TEXT("plan", "No stations are set out yet, so nothing holds the stack down.")};
inline constexpr Phrase stackSnaps{
    FAYLINE_TEXT("plan", "The stack can jump at %1. Stand clear and add a clamp there.")};
inline constexpr Phrase stackSnapsWhy{FAYLINE_TEXT("plan",
                                                   "Held like this it can snap from one shape into another: the free "
                                                   "span there is long for its bend. Close it slowly.")};
inline constexpr Phrase springsAway{FAYLINE_TEXT(
    "plan", "The stack springs off the form. Clamp nearer its ends, or harder, and rope it whatever you do.")};
inline constexpr Phrase springsAwayByOffset{
    FAYLINE_TEXT("plan", "%1 looks wrong: with it the stack springs off the form. Check this offset first.")};
inline constexpr Phrase springsAwayByTwo{FAYLINE_TEXT(
    "plan", "%1 and %2 look exchanged: with them the stack springs off the form. Check these two offsets first.")};
inline constexpr Phrase holdingNotSettled{FAYLINE_TEXT("plan",
                                                       "No balance was found: the stack slips from under a pad, or "
                                                       "rests nowhere near the form. Clamp closer, or harder.")};
inline constexpr Phrase holdingNotSettledWhy{FAYLINE_TEXT("plan", "So no gaps and pulls are shown.")};
inline constexpr Phrase notSettledByOffset{
    FAYLINE_TEXT("plan", "%1 looks wrong: with it the stack finds no balance. Check this offset first.")};
inline constexpr Phrase notSettledByTwo{FAYLINE_TEXT(
    "plan", "%1 and %2 look exchanged: with them the stack finds no balance. Check these two offsets first.")};
inline constexpr Phrase hangsOnPads{FAYLINE_TEXT(
    "plan", "The largest gap depends on the pads: %1 if they grip, %2 if they slide. Wax them, or close every gap.")};
inline constexpr Phrase hangsOnPadsWhy{FAYLINE_TEXT("plan", "Once every gap is closed it no longer matters.")};

inline constexpr Phrase pressureBelowWanted{FAYLINE_TEXT(
    "plan",
    "%1 press the glue with %2 at most, and it needs %3. Use stronger ones, or set them no more than %4 apart.")};
inline constexpr Phrase pressureBelowWantedWhy{
    FAYLINE_TEXT("plan",
                 "They are %1 apart. This kind of glue needs that pressure however thin it is spread; what its maker "
                 "says comes first.")};
inline constexpr Phrase pressedAtPostsOnly{
    FAYLINE_TEXT("plan", "Glue is pressed at the posts only. Between them the strips' own bend must close it.")};
inline constexpr Phrase nothingBehind{FAYLINE_TEXT(
    "plan", "This glue needs %1 everywhere, and between posts nothing is behind the strips. Use a solid form.")};
inline constexpr Phrase squeezeOutReaches{
    FAYLINE_TEXT("plan", "%1 are %2 apart, and squeeze-out reaches %3. Add clamps or cauls.")};
inline constexpr Phrase squeezeOutStrength{FAYLINE_TEXT(
    "plan", "%1 are %2 apart, and strong enough to squeeze this glue out over %3. Add clamps, or use stronger ones.")};
inline constexpr Phrase squeezeOutWhy{FAYLINE_TEXT(
    "plan",
    "To press this glue out to a line of %1, set pads no more than %2 apart. One long caul under them reaches "
    "further.")};
inline constexpr Phrase squeezeOutStrengthWhy{
    FAYLINE_TEXT("plan", "To press this glue out to a line of %1, set clamps this strong no more than %2 apart.")};
inline constexpr Phrase pressingReaches{
    FAYLINE_TEXT("plan", "%1 are %2 apart, and their pads press this glue everywhere up to %3. Add clamps or cauls.")};
inline constexpr Phrase pressingReachesWhy{FAYLINE_TEXT(
    "plan", "This kind of glue needs %1: set pads no more than %2 apart. One long caul under them reaches further.")};
inline constexpr Phrase thinnerMix{FAYLINE_TEXT("plan", "A mix half as stiff reaches %1.")};

inline constexpr Phrase padCrushes{FAYLINE_TEXT(
    "plan", "The pad of %1 presses the outer strip with %2 (the wood takes %3). Put a larger pad or a caul under it.")};
inline constexpr Phrase postGivesWay{
    FAYLINE_TEXT("plan", "The post at %1 is pressed with %2 (it holds %3). Brace it before the stack goes on.")};
inline constexpr Phrase postGivesWayWhileClosing{FAYLINE_TEXT(
    "plan", "When %4 goes on, the post at %1 is pressed with %2 (it holds %3). Brace it before the stack goes on.")};

// Where no contact of stack and form is worked out.
inline constexpr Phrase rowWithoutLabel{FAYLINE_TEXT("plan", "point %1")};
inline constexpr Phrase notWorkedOutByOffset{
    FAYLINE_TEXT("plan", "%1 looks wrong, so no gaps and pulls are worked out. Check this offset first.")};
inline constexpr Phrase notWorkedOutByTwo{FAYLINE_TEXT(
    "plan", "%1 and %2 look exchanged, so no gaps and pulls are worked out. Check these two offsets first.")};
inline constexpr Phrase bentFarBeyondBreaking{FAYLINE_TEXT(
    "plan",
    "The strips would bend to %1 times what breaks them, at %2. Check the offsets, or use far thinner strips.")};
inline constexpr Phrase turnsWithinStack{
    FAYLINE_TEXT("plan", "The line turns within the stack at %1. Check the offsets, or make the stack thinner.")};
inline constexpr Phrase runsIntoItself{
    FAYLINE_TEXT("plan", "The line, or the stack on it, runs into itself at %1. Check the offsets there.")};
inline constexpr Phrase lineWanders{
    FAYLINE_TEXT("plan", "The line does not go from point to point: it is %1 long. Check the order of the offsets.")};
inline constexpr Phrase formNowhereUnder{
    FAYLINE_TEXT("plan", "The form lies nowhere under the strips. Move or lengthen it.")};
inline constexpr Phrase contactNotWorkedOut{FAYLINE_TEXT(
    "plan",
    "So how the stack lies on its form is not worked out: no gaps and pulls, no extra length, no order of closing, no "
    "suggested stations.")};

}  // namespace fayline::plan::texts
