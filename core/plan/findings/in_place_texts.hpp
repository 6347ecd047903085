// What in_place_findings.cpp says.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

// %1: the start or the end.
inline constexpr Phrase endsStay{
    FAYLINE_TEXT("plan", "The ends stay put without fastenings (%1 of what the wood takes for good).")};
inline constexpr Phrase endPeels{
    FAYLINE_TEXT("plan", "%1 peels: %2 of what the wood takes for good. Leave the clamps on until it is fastened.")};
inline constexpr Phrase endComesOff{FAYLINE_TEXT(
    "plan", "%1 comes off without a fastening: %2 of what breaks the wood. Fasten it, or use thinner strips.")};
inline constexpr Phrase liftsOffBoat{
    FAYLINE_TEXT("plan",
                 "The bend left in it lifts %1 off the boat with %2 across the grain; the wood parts at %3 in the mean "
                 "and may bear %4 for good.")};
inline constexpr Phrase liftsOffForm{
    FAYLINE_TEXT("plan",
                 "The bend left in it lifts %1 off its form with %2 across the grain; the wood parts at %3 in the mean "
                 "and may bear %4 for good.")};
// %5: how far inside it.
inline constexpr Phrase pullsOffBoat{
    FAYLINE_TEXT("plan",
                 "The bend left in it pulls the piece off the boat %5 inside %1 with %2 across the grain (a hollow "
                 "presses its very end on); the wood parts at %3 in the mean and may bear %4 for good.")};
inline constexpr Phrase pullsOffForm{
    FAYLINE_TEXT("plan",
                 "The bend left in it pulls the piece off its form %5 inside %1 with %2 across the grain (a hollow "
                 "presses its very end on); the wood parts at %3 in the mean and may bear %4 for good.")};
inline constexpr Phrase fibresStay{
    FAYLINE_TEXT("plan",
                 "The outermost fibres of its strips stay strained as they were bent: at %1 to %2, %3 of what breaks "
                 "them.")};
inline constexpr Phrase thinnerStripsKeepLess{FAYLINE_TEXT("plan", "Thinner strips leave less bend in it.")};

inline constexpr Phrase fastenEnd{
    FAYLINE_TEXT("plan",
                 "Fasten %1 for good, about %2 from it, to hold %3. If it bears rig, engine or people, ask a designer "
                 "or surveyor.")};
inline constexpr Phrase fastenWhy{FAYLINE_TEXT(
    "plan",
    "A fastening through the stack takes the whole pull off the glue there, a moment of %1. Local rules and "
    "licensed practice come first.")};

}  // namespace fayline::plan::texts
