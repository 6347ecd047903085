// What the longer look at the holding adds: over-run, stations proposed, carrying.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase clampAtStart{
    FAYLINE_TEXT("plan", "Set a clamp of %1 right at the start trim line, so that the start comes down.")};
inline constexpr Phrase clampAtEnd{
    FAYLINE_TEXT("plan", "Set a clamp of %1 right at the end trim line, so that the end comes down.")};
inline constexpr Phrase runPastStart{FAYLINE_TEXT(
    "plan",
    "Leave strips and form %2 past the start trim line and clamp there with %1, so that the start comes down.")};
inline constexpr Phrase runPastEnd{FAYLINE_TEXT(
    "plan", "Leave strips and form %2 past the end trim line and clamp there with %1, so that the end comes down.")};
inline constexpr Phrase noRunBringsStart{
    FAYLINE_TEXT("plan", "No extra length brings the start down with a clamp of %1.")};
inline constexpr Phrase noRunBringsEnd{FAYLINE_TEXT("plan", "No extra length brings the end down with a clamp of %1.")};
inline constexpr Phrase strongerPullWould{
    FAYLINE_TEXT("plan", "A pull of %1 at the last clamp, where it is now, would do it too.")};
inline constexpr Phrase caulWould{FAYLINE_TEXT("plan", "A caul %1 thick would do it too.")};

inline constexpr Phrase contactIsEnough{
    FAYLINE_TEXT("plan", "This glue fills gaps, so contact is enough. Squeeze-out everywhere would take %1 stations.")};
inline constexpr Phrase contactIsEnoughAlone{FAYLINE_TEXT(
    "plan", "This glue fills gaps, so contact is enough. No number of your tools would squeeze it out everywhere.")};
inline constexpr Phrase mightStandApart{FAYLINE_TEXT("plan", "%1 might then be %2 apart, not %3.")};

inline constexpr Phrase toolsCloseIt{FAYLINE_TEXT("plan", "%1 closes it. For squeeze-out everywhere use %2."),
                                     FAYLINE_TEXT_N("plan", "%1 close it. For squeeze-out everywhere use %2.")};
inline constexpr Phrase toolsCloseItUnderCaul{
    FAYLINE_TEXT("plan", "%1 closes it. For squeeze-out everywhere use %2, or one long caul %3 thick."),
    FAYLINE_TEXT_N("plan", "%1 close it. For squeeze-out everywhere use %2, or one long caul %3 thick.")};
inline constexpr Phrase allThatYouHave{FAYLINE_TEXT("plan", "That is all that you have.")};
inline constexpr Phrase notAllThatYouHave{FAYLINE_TEXT("plan", "That is not all that you have.")};
inline constexpr Phrase closeApartAtMost{FAYLINE_TEXT("plan", "They hold it down everywhere, %1 apart at most.")};

inline constexpr Phrase nothingPressesBetweenPosts{
    FAYLINE_TEXT("plan", "Between posts nothing squeezes this glue out, however many clamps. %1 on posts closes it."),
    FAYLINE_TEXT_N("plan", "Between posts nothing squeezes this glue out, however many clamps. %1 on posts close it.")};
inline constexpr Phrase nothingPressesEverywhere{
    FAYLINE_TEXT("plan", "No number of your tools squeezes this glue out everywhere. %1 closes it."),
    FAYLINE_TEXT_N("plan", "No number of your tools squeezes this glue out everywhere. %1 close it.")};
inline constexpr Phrase clampsOnPostsOnly{
    FAYLINE_TEXT("plan", "Clamps stand on posts only. Gap limit and strength are met.")};
inline constexpr Phrase notPadBesidePad{
    FAYLINE_TEXT("plan", "Not even pad beside pad would. Gap limit and strength are met.")};

inline constexpr Phrase noSetClosesGaps{
    FAYLINE_TEXT("plan", "No arrangement of your tools closes every gap. Use thinner strips, or allow a wider gap.")};
inline constexpr Phrase noSetIsStrongEnough{FAYLINE_TEXT(
    "plan", "No arrangement of your tools closes it: they are too weak. Get stronger ones, or use thinner strips.")};
inline constexpr Phrase noSetSqueezesOut{
    FAYLINE_TEXT("plan", "No arrangement of your tools squeezes this glue out everywhere. Get more, or use cauls.")};

inline constexpr Phrase moreToolsNeeded{
    FAYLINE_TEXT("plan", "It takes at least %1 stations, and you have tools for %2. Get %3 more.")};
inline constexpr Phrase fewerWithoutSqueeze{
    FAYLINE_TEXT("plan", "For gap and strength alone %1 would do; squeezing the glue out asks for more.")};

inline constexpr Phrase sagsWhenCarried{FAYLINE_TEXT(
    "plan", "Carried at %1 points the loose stack sags %2 under its own %3. Carry it on a plank, or on edge.")};

}  // namespace fayline::plan::texts
