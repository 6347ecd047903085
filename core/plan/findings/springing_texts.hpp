// What is said of springing home and of what earlier pieces say (springing.cpp, learned_findings.cpp).
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

// %1 how far, %2 at which end, %3 of what breaks it, %4 the limit.
inline constexpr Phrase springHome{
    FAYLINE_TEXT("plan",
                 "Springing it home by %1 at %2 leaves %3 of breaking in it for good (limit %4). Fasten it before you "
                 "release the pull.")};
inline constexpr Phrase springHomeTooMuch{FAYLINE_TEXT(
    "plan",
    "Springing it home by %1 at %2 leaves %3 of breaking in it for good (limit %4). Make it again, or plane "
    "it to its line.")};
inline constexpr Phrase readHoursAfter{FAYLINE_TEXT("plan", "As read %1 hours after it came off, %2.")};
inline constexpr Phrase readDaysAfter{FAYLINE_TEXT("plan", "As read %1 days after it came off, %2.")};
inline constexpr Phrase foretold{FAYLINE_TEXT("plan", "Off this form %1.")};
inline constexpr Phrase standsAsIf{FAYLINE_TEXT("plan", "%1, as if it sprang back %2 times what theory says.")};
inline constexpr Phrase pullMiddle{
    FAYLINE_TEXT("plan", "With the ends held, a pull of %1 square to the chord at %2 brings the rise.")};
inline constexpr Phrase pullEndsTogether{
    FAYLINE_TEXT("plan", "A pull of %1 along the chord draws the ends together by what the chord is off.")};
inline constexpr Phrase pushEndsApart{
    FAYLINE_TEXT("plan", "A push of %1 along the chord spreads the ends by what the chord is off.")};
inline constexpr Phrase neighbourHolds{FAYLINE_TEXT(
    "plan",
    "Either brings that measure only; to lie on its line everywhere the piece needs a neighbour that holds "
    "it all along, with up to %1 at %2.")};
inline constexpr Phrase stressStays{
    FAYLINE_TEXT("plan", "A stress of up to %1 stays in strip %2 at %3 for good, %4 of what breaks it.")};
inline constexpr Phrase woodBears{FAYLINE_TEXT("plan", "Wood bears about %1 for good.")};
inline constexpr Phrase woodBearsLess{
    FAYLINE_TEXT("plan", "That is more than the %1 that wood bears for good: make it again, or plane it to its line.")};
inline constexpr Phrase sprungCaution{FAYLINE_TEXT(
    "plan", "It pulls at its fastenings for good; sprung, it whips when a hold slips: rope it and stand clear.")};
inline constexpr Phrase nothingComesOff{
    FAYLINE_TEXT("plan", "The piece stays where it is glued, so there is nothing to spring home.")};
inline constexpr Phrase comesOffOnLine{
    FAYLINE_TEXT("plan",
                 "By the plan the piece comes off its form on the wanted line. Type how far it really opens to see "
                 "what it takes to spring it home.")};

inline constexpr Phrase learnedAdopted{
    FAYLINE_TEXT("plan", "Your earlier pieces sprang back %1 times the rule (%2 to %3), and so is this one planned.")};
inline constexpr Phrase learnedUnused{FAYLINE_TEXT(
    "plan",
    "Your earlier pieces sprang back %1 times the rule (%2 to %3); this one is planned at %4. To use theirs "
    "set its springback factor.")};
inline constexpr Phrase learnedOutside{FAYLINE_TEXT(
    "plan",
    "Springback planned at %4 times the rule; your pieces say %1 (%2 to %3). Set the springback factor, or "
    "check your readings.")};
inline constexpr Phrase againstAsItIs{
    FAYLINE_TEXT("plan", "Records without a copy of their stack and form are compared with the piece as it is now.")};
inline constexpr Phrase readingLeftOut{FAYLINE_TEXT("plan", "A springback reading of your record does not count.")};
inline constexpr Phrase learnedMean{
    FAYLINE_TEXT("plan", "One piece opened %1 times what the rule says."),
    FAYLINE_TEXT_N("plan", "%n pieces opened %1 times what the rule says, in the mean.")};
inline constexpr Phrase learnedNext{
    FAYLINE_TEXT("plan", "The next is expected at %1 times, and 95 of 100 between %2 and %3.")};
inline constexpr Phrase learnedFew{FAYLINE_TEXT(
    "plan",
    "That is little to go by, so what other builders measured (nothing to twice the rule) still counts for "
    "much.")};
inline constexpr Phrase learnedSome{FAYLINE_TEXT("plan", "What other builders measured still counts.")};
inline constexpr Phrase learnedMany{FAYLINE_TEXT("plan", "These are enough to stand by themselves.")};
inline constexpr Phrase nothingLearned{FAYLINE_TEXT("plan", "Nothing follows from what was read so far.")};

}  // namespace fayline::plan::texts
