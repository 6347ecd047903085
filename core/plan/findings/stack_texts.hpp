// What findings about the stack of strips say, and what helps where strips break.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

// The last is a sentence of what helps.
inline constexpr Phrase stripBreaks{FAYLINE_TEXT("plan", "%1 breaks at %2: %3 of what %4 takes. %5")};
inline constexpr Phrase stripBreaksWhy{
    FAYLINE_TEXT("plan", "It is bent there to a strain of %1; its wood breaks at %2 on average.")};
inline constexpr Phrase stripBreaksHot{
    FAYLINE_TEXT("plan", "%1 tears at %2 while bent hot: %3 of what hot wood takes. Use thinner strips.")};
inline constexpr Phrase stripBreaksHotWhy{
    FAYLINE_TEXT("plan", "It is strained there to %1; hot wet wood without a strap tears at %2 on average.")};
inline constexpr Phrase steelStrap{FAYLINE_TEXT(
    "plan", "The tighter bends published for steamed wood hold only with a steel strap along the outside.")};
inline constexpr Phrase mostStripsBreak{
    FAYLINE_TEXT("plan", "%1 strips will break; above 1 in 3, spares do not help. %2")};
inline constexpr Phrase cutSpares{
    FAYLINE_TEXT_N("plan", "A strip breaks in %1 glue-ups (allowed 1 in 20). Cut %2 spare."),
    FAYLINE_TEXT_N("plan", "A strip breaks in %1 glue-ups (allowed 1 in 20). Cut %2 spares.")};

inline constexpr Phrase useThinnerOrSteam{FAYLINE_TEXT("plan", "Use strips up to %1 thick, or steam them.")};
inline constexpr Phrase useThinner{FAYLINE_TEXT("plan", "Use strips up to %1 thick.")};
inline constexpr Phrase steamThem{FAYLINE_TEXT("plan", "Steam the strips.")};
inline constexpr Phrase useWood{FAYLINE_TEXT("plan", "Use %1 instead.")};
inline constexpr Phrase easeBend{FAYLINE_TEXT("plan", "Ease the bend.")};
inline constexpr Phrase thinnerGo{FAYLINE_TEXT("plan", "Strips no thicker than %1 would bend with %2 to spare.")};
inline constexpr Phrase woodsGo{FAYLINE_TEXT("plan", "Strips as thick as these would bend with %2 to spare in %1.")};
inline constexpr Phrase steamedGo{FAYLINE_TEXT(
    "plan",
    "Strips steamed or boiled and dried on the form would bend with %2 to spare, if they keep at least %1 of the "
    "curve.")};
inline constexpr Phrase soakingNotKnown{FAYLINE_TEXT("plan", "Soaking alone is not known to help.")};
inline constexpr Phrase tooTightForStrips{FAYLINE_TEXT(
    "plan",
    "Neither thinner strips that can be made, nor another wood known here, nor steaming would do: the bend is too "
    "tight for strips.")};

inline constexpr Phrase bendForLoad{FAYLINE_TEXT(
    "plan",
    "Carries load? The bend at %1 leaves about %2 of a straight timber's strength. Ask the designer, or use thinner "
    "strips.")};
inline constexpr Phrase bendBeyondRules{FAYLINE_TEXT(
    "plan",
    "Carries load? The bend at %1 leaves less strength than rules state. Ask the designer, or use thinner strips.")};
inline constexpr Phrase ruleThickness{FAYLINE_TEXT("plan", "Strips no thicker than %1 are wanted, these are %2 (%3).")};
inline constexpr Phrase ruleRadius{
    FAYLINE_TEXT("plan", "A radius of %1 times the thickness or more is wanted, here it is %2 (%3).")};
inline constexpr Phrase ruleFactor{FAYLINE_TEXT("plan", "Another rule leaves %1 of the strength (%2).")};
inline constexpr Phrase sourceMarked{FAYLINE_TEXT("plan", "%1, %2")};

inline constexpr Phrase noRoom{
    FAYLINE_TEXT("plan", "No room for the stack at %1: it reaches %2 into a radius of %3. Use a thinner stack.")};
inline constexpr Phrase stackCrossesItself{
    FAYLINE_TEXT("plan", "The stack runs into itself: %1 meets %2. Check the offsets and the extra length.")};
inline constexpr Phrase pinsForbidSliding{FAYLINE_TEXT(
    "plan",
    "Pins stop the strips from sliding: beyond %1 the outer strip must slip %2 (pins pass %3). Pin one place.")};

inline constexpr Phrase endFallsShort{
    FAYLINE_TEXT("plan", "The outer strip ends %1 short at %2; you left %3. Cut each strip to its own length.")};
inline constexpr Phrase endStepsBack{FAYLINE_TEXT("plan", "The outer strip ends %1 short at %2; you left %3.")};
inline constexpr Phrase endRunsPast{FAYLINE_TEXT("plan", "The outer strip runs %1 past the inner one at %2.")};
inline constexpr Phrase cutToOneLength{
    FAYLINE_TEXT("plan", "This is with all strips cut to one length and held together at %1.")};
inline constexpr Phrase missesTrimLine{FAYLINE_TEXT("plan", "It would not reach the trim line.")};
inline constexpr Phrase endsEven{FAYLINE_TEXT("plan", "Cut each strip to its own length if the ends are to lie even.")};

inline constexpr Phrase drierThanTables{FAYLINE_TEXT(
    "plan", "Wood at %1 moisture is drier than its strength tables (%2). Take strains and stiffness as rough.")};
inline constexpr Phrase wetterThanTables{FAYLINE_TEXT(
    "plan", "Wood at %1 moisture is wetter than its strength tables (%2). Take strains and stiffness as rough.")};
inline constexpr Phrase grainBeyondTable{FAYLINE_TEXT(
    "plan", "Grain of 1 in %1 is steeper than its strength tables (1 in %2). Expect weaker strips than shown.")};

inline constexpr Phrase speciesWarning{
    FAYLINE_TEXT("plan", "Take the published values of %1 with care. Measure a strip of your own.")};
inline constexpr Phrase speciesStrength{FAYLINE_TEXT("plan", "Its bending strength is taken as %1.")};

inline constexpr Phrase dryBeforeGlue{FAYLINE_TEXT(
    "plan", "Pre-bent strips must dry on the form to %1 before glue: %2. Weigh one until it loses no more.")};
inline constexpr Phrase neverDry{FAYLINE_TEXT(
    "plan", "Pre-bent strips must dry to %1 before glue; in this air they only reach %2. Dry them warmer or drier.")};
inline constexpr Phrase dryHours{FAYLINE_TEXT_N("plan", "about an hour"), FAYLINE_TEXT_N("plan", "about %n hours")};
inline constexpr Phrase dryDays{FAYLINE_TEXT_N("plan", "about a day"), FAYLINE_TEXT_N("plan", "about %n days")};
inline constexpr Phrase dryDaysBetween{FAYLINE_TEXT("plan", "%1 to %2 days")};
inline constexpr Phrase dryFromWet{FAYLINE_TEXT(
    "plan",
    "That is from wet through, %1 thick, in air of %2 and %3 humidity, each strip with a face open to the air.")};
inline constexpr Phrase dryAir{FAYLINE_TEXT("plan", "The air is at %1 and %2 humidity.")};
inline constexpr Phrase setIsYours{FAYLINE_TEXT(
    "plan",
    "That they keep %1 of the curve is your figure; only the rest counts as strain, pull and springback here.")};
inline constexpr Phrase bentSoaked{FAYLINE_TEXT(
    "plan",
    "Soaked and bent cold they are first strained by the whole curve, to %1, and taken to break as dry ones do, at %2 "
    "on average: no figure was found by which cold wet wood stretches further.")};
inline constexpr Phrase bentHot{
    FAYLINE_TEXT("plan", "While hot they are strained to %1; hot wet wood without a strap tears at %2 on average.")};
inline constexpr Phrase steamScalds{FAYLINE_TEXT("plan", "Steam scalds: wear gloves and sleeves.")};

inline constexpr Phrase storedBend{
    FAYLINE_TEXT("plan", "Bent strips can throw %1 as high as %2. Rope the stack; stay clear of the ends.")};
inline constexpr Phrase storedEnergy{
    FAYLINE_TEXT("plan", "Bent and loose they store %1 J, and whip when a clamp slips.")};
inline constexpr Phrase localRules{FAYLINE_TEXT("plan", "Local rules and licensed practice come first.")};

inline constexpr Phrase ruleStripOfMoulding{
    FAYLINE_TEXT("plan", "%1 is %2 of the moulding; rules for classed vessels usually ask for no more than a third.")};
inline constexpr Phrase ruleMoulding{FAYLINE_TEXT("plan", "It is %1 thick, the moulding %2.")};
inline constexpr Phrase ruleScarfSlope{
    FAYLINE_TEXT("plan", "The scarf at %1 is 1 in %2; rules for classed vessels usually ask for 1 in %3 to 1 in 12.")};
inline constexpr Phrase onlyIfClassed{
    FAYLINE_TEXT("plan", "Such rules bind only a vessel that is classed; the society's own text governs.")};

}  // namespace fayline::plan::texts
