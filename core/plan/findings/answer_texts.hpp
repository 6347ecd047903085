// What the nine answers say.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase misreadFirst{
    FAYLINE_TEXT("plan", "%1 looks misread. Correct it first: all else follows from it."),
    FAYLINE_TEXT_N("plan", "%1 look misread. Correct them first: all else follows from them.")};
inline constexpr Phrase fairStraight{FAYLINE_TEXT("plan", "Straight, within %1 of every offset.")};
inline constexpr Phrase fairWithin{FAYLINE_TEXT("plan", "Fair within %1 of every offset. Tightest radius %2, at %3.")};
inline constexpr Phrase radiusBetween{FAYLINE_TEXT("plan", "The points leave that radius open: %1, 19 times of 20.")};
inline constexpr Phrase moreStandOut{
    FAYLINE_TEXT("plan", "More offsets stand out than were looked at: the worst came first.")};
inline constexpr Phrase straight{FAYLINE_TEXT("plan", "straight")};
inline constexpr Phrase radius{FAYLINE_TEXT("plan", "radius %1")};

inline constexpr Phrase bendCold{FAYLINE_TEXT("plan", "%1 bends cold, at %2 of breaking."),
                                 FAYLINE_TEXT_N("plan", "%1 bend cold, at %2 of breaking.")};
inline constexpr Phrase bendSoftened{FAYLINE_TEXT("plan", "%1, softened first, bends at %2 of breaking."),
                                     FAYLINE_TEXT_N("plan", "%1, softened first, bend at %2 of breaking.")};
inline constexpr Phrase breaksAt{FAYLINE_TEXT("plan", "%1 does not go round: at %2 of breaking."),
                                 FAYLINE_TEXT_N("plan", "%1 do not go round: %3 is at %2 of breaking.")};
inline constexpr Phrase noSpare{FAYLINE_TEXT("plan", "No spare needed.")};
inline constexpr Phrase spares{FAYLINE_TEXT("plan", "Cut one spare."), FAYLINE_TEXT_N("plan", "Cut %n spares.")};
inline constexpr Phrase shareOpen{
    FAYLINE_TEXT("plan", "By what the points leave open it is %1 to %2 of breaking, 19 times of 20.")};
inline constexpr Phrase stripsFigures{FAYLINE_TEXT("plan", "%1, %2")};

inline constexpr Phrase inPlace{FAYLINE_TEXT("plan", "in place")};
inline constexpr Phrase keptOnForm{FAYLINE_TEXT("plan", "kept on its form")};
inline constexpr Phrase staysOnBoat{FAYLINE_TEXT("plan", "Stays on the boat: no springback.")};
inline constexpr Phrase staysOnForm{FAYLINE_TEXT("plan", "Stays on its form: no springback.")};
inline constexpr Phrase glueHoldsEnds{FAYLINE_TEXT("plan", "The glue holds the ends.")};
inline constexpr Phrase fastenAtStart{FAYLINE_TEXT("plan", "Fasten the start: there it would peel.")};
inline constexpr Phrase fastenAtEnd{FAYLINE_TEXT("plan", "Fasten the end: there it would peel.")};
inline constexpr Phrase fastenAtBoth{FAYLINE_TEXT("plan", "Fasten both ends: there they would peel.")};
inline constexpr Phrase noForm{FAYLINE_TEXT("plan", "Springs back too much for any form. Use more, thinner strips.")};
inline constexpr Phrase noFormFigures{FAYLINE_TEXT("plan", "no form gives it")};
inline constexpr Phrase nothingSprings{FAYLINE_TEXT("plan", "The piece is straight: nothing springs back.")};
inline constexpr Phrase opensStart{FAYLINE_TEXT("plan", "Springs open about %1 at the start (0 to %2).")};
inline constexpr Phrase opensEnd{FAYLINE_TEXT("plan", "Springs open about %1 at the end (0 to %2).")};
inline constexpr Phrase closesStart{FAYLINE_TEXT("plan", "Springs in about %1 at the start (0 to %2).")};
inline constexpr Phrase closesEnd{FAYLINE_TEXT("plan", "Springs in about %1 at the end (0 to %2).")};
inline constexpr Phrase overbent{FAYLINE_TEXT("plan", "The form is overbent for it, to a radius of %1.")};
inline constexpr Phrase notOverbent{FAYLINE_TEXT("plan", "The form does not allow for it.")};

inline constexpr Phrase notSetOut{FAYLINE_TEXT("plan", "No clamps are set out yet.")};
inline constexpr Phrase noStationsFigures{FAYLINE_TEXT("plan", "not set out")};
inline constexpr Phrase notWorkedOut{FAYLINE_TEXT("plan", "How the strips lie under %1 could not be worked out.")};
inline constexpr Phrase clampCount{FAYLINE_TEXT("plan", "one clamp"), FAYLINE_TEXT_N("plan", "%n clamps")};
inline constexpr Phrase holdCount{FAYLINE_TEXT("plan", "one station"), FAYLINE_TEXT_N("plan", "%n clamps and props")};
inline constexpr Phrase holdingFigures{FAYLINE_TEXT("plan", "%1, gaps %2")};
inline constexpr Phrase closesIt{
    FAYLINE_TEXT("plan", "%1 closes it: gaps up to %2 (allowed %3). It pulls %4."),
    FAYLINE_TEXT_N("plan", "%1 close it: gaps up to %2 (allowed %3). Hardest pull %4, %5.")};
inline constexpr Phrase gapLeft{FAYLINE_TEXT("plan", "%1 leaves a gap of %2 at %3 (allowed %4)."),
                                FAYLINE_TEXT_N("plan", "%1 leave a gap of %2 at %3 (allowed %4).")};
inline constexpr Phrase hold{FAYLINE_TEXT("plan", "%1 %2")};
inline constexpr Phrase beingSuggested{FAYLINE_TEXT("plan", "Where they go is being worked out.")};
inline constexpr Phrase suggested{FAYLINE_TEXT("plan", "Suggested: %1.")};
inline constexpr Phrase suggestedAll{FAYLINE_TEXT("plan", "Suggested: all your %1, %2 apart.")};
inline constexpr Phrase suggestedOf{FAYLINE_TEXT("plan", "Suggested: %1, %2 apart.")};
inline constexpr Phrase squeezeTakes{FAYLINE_TEXT("plan", "For squeeze-out everywhere: %1, or a caul.")};
inline constexpr Phrase squeezeNever{FAYLINE_TEXT("plan", "No number of them squeezes glue out everywhere.")};
inline constexpr Phrase postsNeverSqueeze{FAYLINE_TEXT("plan", "Between posts nothing squeezes the glue out.")};

inline constexpr Phrase nothingGlued{FAYLINE_TEXT("plan", "Nothing is glued: no two strips have glue between them.")};
inline constexpr Phrase none{FAYLINE_TEXT("plan", "none")};
inline constexpr Phrase oneBatch{FAYLINE_TEXT("plan", "%1 in one batch (%2). Use it within %3.")};
inline constexpr Phrase batches{FAYLINE_TEXT("plan", "%1 in %2 batches (%3). Use the largest within %4.")};
inline constexpr Phrase lastsFor{FAYLINE_TEXT("plan", "It lasts %1.")};
inline constexpr Phrase parts{FAYLINE_TEXT("plan", "%1 + %2")};
inline constexpr Phrase clampsOff{FAYLINE_TEXT("plan", "Clamps off at %1.")};
inline constexpr Phrase batchCount{FAYLINE_TEXT("plan", "%1, one batch"), FAYLINE_TEXT_N("plan", "%1, %n batches")};

inline constexpr Phrase noClock{FAYLINE_TEXT("plan", "no clock")};
inline constexpr Phrase noClockRuns{FAYLINE_TEXT("plan", "Nothing is glued, so no clock runs.")};
inline constexpr Phrase lastOnToSpare{FAYLINE_TEXT("plan", "Last clamp on at %1: %2 to spare.")};
inline constexpr Phrase lastOnTooLate{FAYLINE_TEXT("plan", "Last clamp on at %1: %2 too late.")};
inline constexpr Phrase inGlueUp{FAYLINE_TEXT("plan", "That is glue-up %1.")};
inline constexpr Phrase oddsOfIt{FAYLINE_TEXT("plan", "%1 trial runs finish in time.")};
inline constexpr Phrase marginFor95{FAYLINE_TEXT("plan", "For 95 in 100 plan %1 to spare.")};
inline constexpr Phrase oddsComing{FAYLINE_TEXT("plan", "The odds are being worked out.")};
inline constexpr Phrase spareBy{FAYLINE_TEXT("plan", "%1 to spare")};
inline constexpr Phrase lateBy{FAYLINE_TEXT("plan", "%1 too late")};

inline constexpr Phrase canBePrinted{FAYLINE_TEXT("plan", "%1 can be printed.")};
inline constexpr Phrase cutList{FAYLINE_TEXT("plan", "the cut list")};
inline constexpr Phrase buyingList{FAYLINE_TEXT("plan", "the buying list")};
inline constexpr Phrase paperCount{FAYLINE_TEXT("plan", "one paper"), FAYLINE_TEXT_N("plan", "%n papers")};
inline constexpr Phrase stationTable{FAYLINE_TEXT("plan", "a table of the clamps")};
inline constexpr Phrase storyStick{FAYLINE_TEXT("plan", "a story stick")};
inline constexpr Phrase closingSheet{FAYLINE_TEXT("plan", "the order of clamping")};
inline constexpr Phrase propsSheet{FAYLINE_TEXT("plan", "a sheet of props and screws")};
inline constexpr Phrase batchCards{FAYLINE_TEXT("plan", "a card for each batch")};
inline constexpr Phrase runSheet{FAYLINE_TEXT("plan", "the run sheet of the day")};
inline constexpr Phrase fullSize{FAYLINE_TEXT("plan", "the line and the form at full size")};

inline constexpr Phrase listOnly{"%1"};
inline constexpr Phrase nothingYet{FAYLINE_TEXT("plan", "nothing yet")};
inline constexpr Phrase nothingRecorded{
    FAYLINE_TEXT("plan", "Nothing is recorded yet. The clock writes down what happens, in a dry fit too.")};
inline constexpr Phrase glueUps{FAYLINE_TEXT("plan", "one glue-up"), FAYLINE_TEXT_N("plan", "%n glue-ups")};
inline constexpr Phrase dryFits{FAYLINE_TEXT("plan", "one dry fit"), FAYLINE_TEXT_N("plan", "%n dry fits")};
inline constexpr Phrase recorded{FAYLINE_TEXT("plan", "%1, the last of %2.")};
inline constexpr Phrase readings{FAYLINE_TEXT("plan", "How far it sprang back was read once."),
                                 FAYLINE_TEXT_N("plan", "How far it sprang back was read %n times.")};

inline constexpr Phrase ready{FAYLINE_TEXT("plan", "Ready to glue")};
inline constexpr Phrase beingChecked{FAYLINE_TEXT("plan", "Being checked")};
inline constexpr Phrase thingsFirst{FAYLINE_TEXT("plan", "One thing first"), FAYLINE_TEXT_N("plan", "%n things first")};
inline constexpr Phrase withOpen{FAYLINE_TEXT("plan", "%1; not answered: %2")};
inline constexpr Phrase onlyOpen{FAYLINE_TEXT("plan", "Not answered yet: %1")};
inline constexpr Phrase openHolding{FAYLINE_TEXT("plan", "how it is held")};
inline constexpr Phrase openBoat{FAYLINE_TEXT("plan", "whether the boat stays down")};
inline constexpr Phrase openWood{FAYLINE_TEXT("plan", "how strong the wood is across the grain")};

}  // namespace fayline::plan::texts
