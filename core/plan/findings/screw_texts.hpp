// Temporary screws that draw the stack down.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase screwDrawsOut{FAYLINE_TEXT(
    "plan", "%1 draws out: it pulls %2, and the wood holds %3 on average. Use a thicker or longer one, or two.")};
inline constexpr Phrase screwBreaks{
    FAYLINE_TEXT("plan", "%1 breaks: it pulls %2, and mild steel parts at %3. Use a thicker one, or two.")};
inline constexpr Phrase screwOverLoad{
    FAYLINE_TEXT("plan", "%1 pulls %2 (allowed for long %3). Use a thicker or longer one, or two.")};
inline constexpr Phrase screwDrawsOutAt{FAYLINE_TEXT("plan", "It draws out at %1 on average.")};
inline constexpr Phrase screwBreaksAt{FAYLINE_TEXT("plan", "It breaks at %1, if of mild steel.")};
inline constexpr Phrase washerUnknown{FAYLINE_TEXT(
    "plan",
    "The washer of %1 presses the outer strip with %2; what that wood takes across the grain is not in the table.")};
inline constexpr Phrase washerCrushes{FAYLINE_TEXT(
    "plan", "The washer of %1 presses the outer strip with %2 (the wood takes %3). Use a larger washer, or a pad.")};
inline constexpr Phrase screwNearEdge{
    FAYLINE_TEXT("plan", "%1 is %2 from the edge and may split it (it needs %3). Use a thinner one.")};
inline constexpr Phrase screwNearEnd{
    FAYLINE_TEXT("plan", "%1 is %2 from the end and may split it (it needs %3). Move it inwards.")};
inline constexpr Phrase screwSizesAssumed{
    FAYLINE_TEXT("plan", "%1 lacks a diameter, a depth or a washer: the usual is taken. Enter what you use."),
    FAYLINE_TEXT_N("plan", "%1 lack a diameter, a depth or a washer: the usual is taken. Enter what you use.")};
inline constexpr Phrase backboneAssumed{FAYLINE_TEXT(
    "plan", "The backbone is taken to be of the wood of the strip next to it. Enter its wood if it is another.")};
inline constexpr Phrase screwHead{FAYLINE_TEXT(
    "plan", "A screw draws only through a clear hole in the whole stack (%1), with a flat head on a washer. Wax it.")};
inline constexpr Phrase screwHeadWhy{
    FAYLINE_TEXT("plan", "A tapered head under the pull splits the strip, and without wax the glue keeps the screw.")};

}  // namespace fayline::plan::texts
