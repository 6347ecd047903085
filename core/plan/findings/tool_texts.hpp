// Tools at hand, and straps.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase toolsShort{FAYLINE_TEXT("plan", "Needs %1, and you have %2. Get %3 more.")};
inline constexpr Phrase toolsShortOfAll{FAYLINE_TEXT("plan", "Needs %1, and your list has none. Get them first.")};
inline constexpr Phrase toolsShortButStrap{
    FAYLINE_TEXT("plan", "Needs %1, and you have %2. One strap drawn to %3 would do instead.")};
inline constexpr Phrase atTheirTurns{FAYLINE_TEXT("plan", "%1 as it goes on"),
                                     FAYLINE_TEXT_N("plan", "%1 as they go on")};
inline constexpr Phrase noneStrongEnough{
    FAYLINE_TEXT("plan", "No tool in your list is strong enough for %1, which needs %2. Get a stronger one."),
    FAYLINE_TEXT_N("plan", "No tool in your list is strong enough for %1: the first needs %2. Get stronger ones.")};
inline constexpr Phrase noneOpensFar{
    FAYLINE_TEXT("plan", "No tool strong enough for %1 opens far enough. Get one that does."),
    FAYLINE_TEXT_N("plan", "No tool strong enough for %1 opens far enough. Get some that do.")};
inline constexpr Phrase noneReachesFar{
    FAYLINE_TEXT("plan", "No tool strong enough for %1 has a throat deep enough. Get one that has."),
    FAYLINE_TEXT_N("plan", "No tool strong enough for %1 has a throat deep enough. Get some that have.")};
inline constexpr Phrase noneIsFree{
    FAYLINE_TEXT("plan", "No tool is left for %1: all that would do are in use elsewhere. Get one more."),
    FAYLINE_TEXT_N("plan", "No tool is left for %1: all that would do are in use elsewhere. Get more of them.")};
inline constexpr Phrase strapServesAll{
    FAYLINE_TEXT("plan", "A strap round the outside, drawn to %1, would do instead.")};
inline constexpr Phrase strapServesSome{
    FAYLINE_TEXT("plan", "A strap round the outside, drawn to %1, would do instead of %2 of them.")};
inline constexpr Phrase wedgesServeAll{FAYLINE_TEXT("plan", "Wedges under a bar across the form would do instead.")};
inline constexpr Phrase wedgesServeSome{
    FAYLINE_TEXT("plan", "Wedges under a bar across the form would do instead of %1 of them.")};
inline constexpr Phrase splitServes{
    FAYLINE_TEXT("plan",
                 "In two glue-ups, the first up to strip %2, every pull falls to %3 and %1 more tool would be "
                 "strong enough."),
    FAYLINE_TEXT_N("plan",
                   "In two glue-ups, the first up to strip %2, every pull falls to %3 and %1 more tools would "
                   "be strong enough.")};
inline constexpr Phrase strapWithoutEnd{
    FAYLINE_TEXT("plan", "%1 has no other end given, and presses nothing. Enter where it goes to.")};
inline constexpr Phrase strapIdle{FAYLINE_TEXT(
    "plan", "%1 presses nothing over %2 from %3 on, where the outside is straight or hollow. Set clamps there.")};

}  // namespace fayline::plan::texts
