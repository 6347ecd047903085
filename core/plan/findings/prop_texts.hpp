// Props and jacks: slipping, leaning, buckling.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase headSlips{FAYLINE_TEXT(
    "plan", "%1 slips at its head: it leans %2 (holds to %3). Fit a stop there, or set its foot at x %4.")};
inline constexpr Phrase headSlipsAnywhere{FAYLINE_TEXT(
    "plan", "%1 slips at its head: it leans %2 (holds to %3), and no other foot would do. Fit a stop there.")};
inline constexpr Phrase headSlipsWhy{
    FAYLINE_TEXT("plan", "Friction holds it only while it leans no more than that from square to the stack.")};
inline constexpr Phrase footSlips{FAYLINE_TEXT(
    "plan", "%1 slips at its foot: it leans %2 (holds to %3). Fit a stop there, or set its foot at x %4.")};
inline constexpr Phrase footSlipsAnywhere{FAYLINE_TEXT(
    "plan", "%1 slips at its foot: it leans %2 (holds to %3), and no other place would do. Fit a stop there.")};
inline constexpr Phrase footSlipsWhy{
    FAYLINE_TEXT("plan", "Friction holds it only while it leans no more than that from square to what it stands on.")};

inline constexpr Phrase propsCanFly{FAYLINE_TEXT(
    "plan",
    "Props push with %1 in all, and one that slips flies: keep out of its way. Block the boat before anyone is under "
    "it; local rules come first.")};
inline constexpr Phrase propsCanFlyMore{
    FAYLINE_TEXT("plan", "Never trust a jack alone. Where rules ask for licensed practice, leave it to that.")};
inline constexpr Phrase propsPushOverhead{
    FAYLINE_TEXT("plan", "Props to what is overhead can lift it. Keep their push to what it is known to carry.")};
inline constexpr Phrase footAssumed{
    FAYLINE_TEXT("plan", "%1 has no foot given, and is taken to stand straight below its head. Enter its foot."),
    FAYLINE_TEXT_N("plan",
                   "%1 have no feet given, and are taken to stand straight below their heads. Enter their feet.")};
inline constexpr Phrase sectionAssumed{
    FAYLINE_TEXT("plan", "%1 has no section given, and is taken as %2 by %3 of sound softwood. Enter its section."),
    FAYLINE_TEXT_N("plan",
                   "%1 have no section given, and are taken as %2 by %3 of sound softwood. Enter their sections.")};

inline constexpr Phrase propBuckles{
    FAYLINE_TEXT("plan", "%1 carries %2 along itself (allowed %3). Use a thicker or a shorter one.")};
inline constexpr Phrase propBucklesWhy{FAYLINE_TEXT("plan", "A column of %1 like it buckles at %2.")};
inline constexpr Phrase propTooSlender{
    FAYLINE_TEXT("plan", "%1 is %2 long, over fifty times its least side. Use a thicker or a shorter one.")};
inline constexpr Phrase propTooSlenderWhy{FAYLINE_TEXT("plan", "The rule for columns goes no further.")};
inline constexpr Phrase jackOverRating{FAYLINE_TEXT("plan", "%1 carries %2 (rated for %3). Use a stronger one.")};
inline constexpr Phrase propOverStrength{
    FAYLINE_TEXT("plan", "%1 carries %2 along itself (its max force is %3). Use a stronger one.")};
inline constexpr Phrase footAboveHead{FAYLINE_TEXT(
    "plan", "%1 stands on the floor with its foot above its head, and pushes nothing. Set its foot below.")};
inline constexpr Phrase footBelowHead{
    FAYLINE_TEXT("plan", "%1 goes to what is overhead with its foot below its head. Set its foot above.")};
inline constexpr Phrase propCannotPress{FAYLINE_TEXT(
    "plan", "%1 leans %2 from square to the stack and pushes nothing toward the form. Set its foot elsewhere.")};

}  // namespace fayline::plan::texts
