// What is said of the day: its margins, chances and remedies (day_findings.cpp, day_words.cpp, remedies.cpp).
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

// A joint by its inner strip, in a piece of one glue-up and of several.
inline constexpr Phrase joint{FAYLINE_TEXT("plan", "joint %1-%2")};
inline constexpr Phrase jointOnBoat{FAYLINE_TEXT("plan", "the joint on the boat")};
inline constexpr Phrase jointOfGlueUp{FAYLINE_TEXT("plan", "joint %1-%2 of glue-up %3")};
inline constexpr Phrase jointOnBoatOfGlueUp{FAYLINE_TEXT("plan", "the joint on the boat of glue-up %1")};

inline constexpr Phrase closedTooLate{FAYLINE_TEXT(
    "plan", "%1 is clamped %2 too late (open time %3). Try more hands, a slower glue, or a break between strips.")};
inline constexpr Phrase spareShort{FAYLINE_TEXT(
    "plan",
    "%1 is clamped with only %2 to spare (open time %3). Try more hands, a slower glue, or a break between "
    "strips.")};
inline constexpr Phrase openTimeEnded{
    FAYLINE_TEXT("plan",
                 "It is clamped %1 after it was wetted; in this air the glue stays open for %2, so its open time has "
                 "ended by then.")};
inline constexpr Phrase openTimeLeft{
    FAYLINE_TEXT("plan", "It is clamped %1 after it was wetted; in this air the glue stays open for %2.")};
inline constexpr Phrase batchWaits{FAYLINE_TEXT(
    "plan", "Batch %1 is used up %2 after mixing began (limit %3). Mix it later or smaller, or keep it in a tray.")};
inline constexpr Phrase hotBatchOutdoors{FAYLINE_TEXT("plan", "Carry a hot batch outdoors.")};

inline constexpr Phrase spare{FAYLINE_TEXT("plan", "%1 to spare")};
inline constexpr Phrase tooLate{FAYLINE_TEXT("plan", "%1 too late")};
inline constexpr Phrase moreThan99{FAYLINE_TEXT("plan", "more than 99 in 100")};
inline constexpr Phrase fewerThan1{FAYLINE_TEXT("plan", "fewer than 1 in 100")};
inline constexpr Phrase inHundred{FAYLINE_TEXT("plan", "about %1 in 100")};
inline constexpr Phrase odds{FAYLINE_TEXT("plan", "%1; in time on %2 days; for 95 in 100 it takes %3 to spare")};
inline constexpr Phrase oddsSentence{
    FAYLINE_TEXT("plan", "%1; in time on %2 days; for 95 in 100 it takes %3 to spare.")};
inline constexpr Phrase chanceShort{FAYLINE_TEXT("plan", "%1: in time on %2 days (95 in 100 wanted).")};
inline constexpr Phrase chanceShortTry{FAYLINE_TEXT("plan", "%1: in time on %2 days (95 in 100 wanted). Try %3: %4.")};
inline constexpr Phrase spareFor95{FAYLINE_TEXT("plan", "For 95 in 100 days it takes %1 to spare.")};
inline constexpr Phrase mostTimeFrom{FAYLINE_TEXT("plan", "Most time comes from %1.")};
inline constexpr Phrase batchesInTime{FAYLINE_TEXT(
    "plan", "Every batch is used up by its use-by, well before it goes off, on %1 days. Smaller batches raise that.")};
inline constexpr Phrase daysSpread{FAYLINE_TEXT(
    "plan", "One day in twenty ends with %1 or worse, the middle one with %2, one in twenty with %3 or better.")};
inline constexpr Phrase paceGiven{
    FAYLINE_TEXT("plan", "Each day has one pace for all work, which varies by %1 until a glue-up is on record.")};
inline constexpr Phrase paceRecorded{
    FAYLINE_TEXT(
        "plan", "Each day has one pace for all work, which varies by %1, narrowed or widened by one recorded glue-up."),
    FAYLINE_TEXT_N("plan",
                   "Each day has one pace for all work, which varies by %1, narrowed or widened by %n recorded "
                   "glue-ups.")};
inline constexpr Phrase paceMiddle{FAYLINE_TEXT("plan", "The middle day takes %1 times the planned minutes.")};
inline constexpr Phrase othersVary{
    FAYLINE_TEXT("plan", "Glue, single tasks and mishaps vary as given below (common practice, no source).")};
inline constexpr Phrase remediesTried{FAYLINE_TEXT("plan", "Each tried by making the day anew, the most time first.")};
inline constexpr Phrase remediesNone{FAYLINE_TEXT(
    "plan", "None of what was tried gives more time. Use fewer clamps, quicker hands or a smaller piece.")};
inline constexpr Phrase remediesNotNeeded{FAYLINE_TEXT("plan", "None is needed: there is ample time to spare.")};

inline constexpr Phrase moreHands{FAYLINE_TEXT("plan", "one more pair of hands")};
inline constexpr Phrase trays{FAYLINE_TEXT("plan", "the mix in shallow trays")};
inline constexpr Phrase slowerGlue{FAYLINE_TEXT("plan", "the slower %1")};
inline constexpr Phrase slowerGlueAsks{FAYLINE_TEXT("plan", "Clamps stay on longer too; see the cure with this glue.")};
inline constexpr Phrase coolMorning{FAYLINE_TEXT("plan", "the cool of the morning, %1")};
inline constexpr Phrase coolMorningAsks{
    FAYLINE_TEXT("plan", "Begin when it is as cool as that, and keep resin and batches in the shade.")};
inline constexpr Phrase plannedBreak{
    FAYLINE_TEXT("plan", "a planned break: glue one strip, let it cure on the form, wash and sand, then the rest"),
    FAYLINE_TEXT_N("plan", "a planned break: glue %n strips, let them cure on the form, wash and sand, then the rest")};
inline constexpr Phrase breakAfter{FAYLINE_TEXT("plan", "a break after strip %1")};
inline constexpr Phrase breakFirst{FAYLINE_TEXT("plan", "Stop after strip %1 and clamp what is glued on the form.")};
inline constexpr Phrase breakThen{
    FAYLINE_TEXT("plan",
                 "When it has cured, wash off the blush (%1 by one pair of hands) and sand (%2); then glue the other "
                 "strip."),
    FAYLINE_TEXT_N("plan",
                   "When it has cured, wash off the blush (%1 by one pair of hands) and sand (%2); then glue the other "
                   "%n strips.")};
inline constexpr Phrase secondSheet{FAYLINE_TEXT("plan", "A second run sheet follows the first.")};
inline constexpr Phrase fewerStrips{FAYLINE_TEXT("plan", "one strip fewer, %1 thick")};
inline constexpr Phrase fewerStripsAsk{
    FAYLINE_TEXT("plan", "They bend round, nearer to breaking, and spring back more: the form changes with them.")};

inline constexpr Phrase overTime{FAYLINE_TEXT("plan", "over %1")};
inline constexpr Phrase hoursRange{FAYLINE_TEXT("plan", "%1 to %2 h")};
inline constexpr Phrase minutesRange{FAYLINE_TEXT("plan", "%1 to %2 min")};
inline constexpr Phrase alone{"%1"};

inline constexpr Phrase epoxyCaution{FAYLINE_TEXT(
    "plan",
    "Resin and hardener make skin and lungs allergic, for good: gloves, long sleeves, fresh air. A full "
    "batch heats itself and can smoke: use it at once or pour it into a tray, and carry a hot one outdoors.")};
inline constexpr Phrase resorcinolCaution{
    FAYLINE_TEXT("plan", "Resorcinol and formaldehyde harm skin, eyes and lungs: gloves, eye protection, fresh air.")};
inline constexpr Phrase ureaCaution{FAYLINE_TEXT(
    "plan", "Urea resins give off formaldehyde, and the powder is no dust to breathe: gloves, mask, fresh air.")};
inline constexpr Phrase polyurethaneCaution{FAYLINE_TEXT(
    "plan", "Isocyanates make lungs and skin allergic, for good: gloves and fresh air, more so in the warm.")};
inline constexpr Phrase makersSheetsFirst{
    FAYLINE_TEXT("plan", "The maker's data and safety sheets and local rules come first.")};

inline constexpr Phrase fittedFrom{
    FAYLINE_TEXT("plan", "Calculated from one pot life of the data sheet."),
    FAYLINE_TEXT_N("plan", "Calculated from %n pot lives of the data sheet, met within %1.")};
inline constexpr Phrase warmthSizeFitted{FAYLINE_TEXT("plan", "How warmth and size hasten it is fitted.")};
inline constexpr Phrase warmthFitted{
    FAYLINE_TEXT("plan", "How warmth hastens it is fitted, how size does is what is usual.")};
inline constexpr Phrase sizeFitted{
    FAYLINE_TEXT("plan", "How size hastens it is fitted, how warmth does is what is usual.")};
inline constexpr Phrase noneFitted{
    FAYLINE_TEXT("plan", "How warmth and size hasten it is what is usual for such a glue.")};
inline constexpr Phrase potLifeRange{
    FAYLINE_TEXT("plan",
                 "A range, since no sheet says how much heat its own pot lost: from 0.6 to 6 times that of a pot in "
                 "still air is assumed. Pot lives of two masses, as a glue of your own, take its place.")};
inline constexpr Phrase ownGlueLasts{FAYLINE_TEXT(
    "plan", "At %1, %2 in a pot twice as large lasts %3 and gets to %4 if left; a film stays open for %5.")};
inline constexpr Phrase secondPotLife{
    FAYLINE_TEXT("plan", "A second pot life, of another mass at the same temperature, takes the range away.")};

// %1 the time on the wall, %2 how long after the start, %3 what is being done.
inline constexpr Phrase moment{FAYLINE_TEXT("plan", "%1, %2 in: %3.")};
inline constexpr Phrase momentDone{FAYLINE_TEXT("plan", "%1, %2 in: all is done.")};
inline constexpr Phrase momentIdle{FAYLINE_TEXT("plan", "%1, %2 in: nothing is being done.")};
inline constexpr Phrase openTimesEnded{
    FAYLINE_TEXT("plan", "The open time of one joint ended before it was clamped."),
    FAYLINE_TEXT_N("plan", "The open time of %n joints ended before they were clamped.")};
inline constexpr Phrase jointStaysOpen{FAYLINE_TEXT("plan", "%1 stays open for %2.")};
inline constexpr Phrase stationsOn{FAYLINE_TEXT("plan", "%1 of %n station is on."),
                                   FAYLINE_TEXT_N("plan", "%1 of %n stations are on.")};

// What the clock warns of.
inline constexpr Phrase batchOver{FAYLINE_TEXT(
    "plan",
    "Batch %1 is %2 past its time. If it is warm, thick or stringy do not spread it: carry it outdoors, keep "
    "out of its vapour, and mix a new one.")};
inline constexpr Phrase batchShort{
    FAYLINE_TEXT("plan", "Use batch %1 within %2. Spread it thin in a tray if it grows warm.")};
inline constexpr Phrase batchForeseen{
    FAYLINE_TEXT("plan", "Batch %1 will be used up %2 after its time. Put part of it into a tray now.")};
inline constexpr Phrase jointOver{FAYLINE_TEXT(
    "plan",
    "The open time of %1 ended %2 ago. Look at it before you clamp it: take off glue that no longer wets or "
    "strings.")};
inline constexpr Phrase jointLate{FAYLINE_TEXT("plan", "The open time of %1 ends %2 before the last clamp is on.")};
inline constexpr Phrase stopAfter{FAYLINE_TEXT(
    "plan", "Stop wetting after strip %1 and clamp what is wetted: %2 to spare. Glue the rest another day.")};
inline constexpr Phrase fetchHands{FAYLINE_TEXT("plan", "Fetch every pair of hands you can.")};
inline constexpr Phrase paceLate{FAYLINE_TEXT(
    "plan",
    "At this pace the last clamp is on %1 after the open time of the worst joint; at the planned pace %2 are "
    "to spare.")};
inline constexpr Phrase jointShort{FAYLINE_TEXT("plan", "%1 is clamped with %2 to spare.")};

}  // namespace fayline::plan::texts
