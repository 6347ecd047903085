// What findings about the line say.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase offsetMisread{FAYLINE_TEXT("plan", "%1 looks misread: %2 off fair. Check it.")};
inline constexpr Phrase offsetMisreadX{FAYLINE_TEXT("plan", "%1 looks misread: %2 off fair. Probably %3: try x %4.")};
inline constexpr Phrase offsetMisreadY{FAYLINE_TEXT("plan", "%1 looks misread: %2 off fair. Probably %3: try y %4.")};
inline constexpr Phrase offsetMisreadBoth{
    FAYLINE_TEXT("plan", "%1 looks misread: %2 off fair. Probably %3: try x %4, y %5.")};
inline constexpr Phrase offsetMisreadWhere{
    FAYLINE_TEXT("plan", "It lies at %1, %2 off the line that is fair without it; reading explains %3.")};

inline constexpr Phrase offsetsTooSmall{FAYLINE_TEXT("plan", "%1 look misread alike. Add %2 to each %3.")};
inline constexpr Phrase offsetsTooGreat{FAYLINE_TEXT("plan", "%1 look misread alike. Take %2 off each %3.")};
inline constexpr Phrase someOffsets{FAYLINE_TEXT_N("plan", "%1, %2 and %n other"),
                                    FAYLINE_TEXT_N("plan", "%1, %2 and %n others")};
inline constexpr Phrase allOffsets{FAYLINE_TEXT("plan", "All of them: %1.")};
inline constexpr Phrase likelySlip{FAYLINE_TEXT("plan", "Likely slip: %1.")};

inline constexpr Phrase lineNotSettled{
    FAYLINE_TEXT("plan", "The fair line did not settle: it misses the points by %1 on average. Check the offsets.")};
inline constexpr Phrase notSettledWrong{FAYLINE_TEXT(
    "plan",
    "%1 looks wrong: the line did not settle and misses the points by %2 on average. Check this offset first.")};
inline constexpr Phrase notSettledExchanged{FAYLINE_TEXT("plan",
                                                         "%1 and %2 look exchanged: the line did not settle and misses "
                                                         "the points by %3 on average. Check both rows first.")};
inline constexpr Phrase howFitEnded{FAYLINE_TEXT("plan", "How the fit ended: %1.")};
inline constexpr Phrase byLastLine{FAYLINE_TEXT("plan", "Everything else here goes by the last line tried.")};

inline constexpr Phrase missAtCeiling{
    FAYLINE_TEXT("plan", "%1 is at the fairing limit (%2). Check the offset or allow more.")};
inline constexpr Phrase missAtCeilingWhy{
    FAYLINE_TEXT("plan", "At %1 the line misses it by %2; the line would be fairer if it could pass further off.")};

inline constexpr Phrase reversesToHollow{FAYLINE_TEXT("plan", "The curve reverses at %1, from round to hollow.")};
inline constexpr Phrase reversesToRound{FAYLINE_TEXT("plan", "The curve reverses at %1, from hollow to round.")};
inline constexpr Phrase reversesBy{
    FAYLINE_TEXT("plan", "The lesser bend stands %1 off its chord; wavering would explain %2.")};

inline constexpr Phrase pointsOutOfOrder{
    FAYLINE_TEXT("plan", "%1 lies %2 before %3 but stands below it. Exchange the two rows or check both.")};
inline constexpr Phrase pointsInOrder{FAYLINE_TEXT("plan", "Points are listed in order along the line.")};

inline constexpr Phrase tightestBendUncertain{FAYLINE_TEXT(
    "plan", "The tightest bend, at %1, is known only to within %2 (wanted %3). Give a point beyond the trim line.")};
inline constexpr Phrase tightestRadiusBand{
    FAYLINE_TEXT("plan", "Its radius is %1, 19 times of 20, since no points beyond it say how the bend goes on.")};
inline constexpr Phrase tightestBendSways{
    FAYLINE_TEXT("plan", "Strain, chance of breaking and springback there may be %1 more or less than shown.")};

}  // namespace fayline::plan::texts
