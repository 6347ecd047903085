// What happens while stations are closed one after the other.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

// Orders of closing.
inline constexpr Phrase fromTheStart{FAYLINE_TEXT("plan", "from the start")};
inline constexpr Phrase fromTheMiddle{FAYLINE_TEXT("plan", "from the middle outwards")};
inline constexpr Phrase fromTheEnd{FAYLINE_TEXT("plan", "from the end")};
inline constexpr Phrase noBetterOrder{FAYLINE_TEXT("plan", "No other order of closing was found that asks for less.")};
inline constexpr Phrase betterOrder{FAYLINE_TEXT("plan", "Closed %1 it is %2 at most.")};
inline constexpr Phrase betterOrderForBoat{FAYLINE_TEXT("plan", "Closed %1 the boat's margin is %2 at the worst.")};
inline constexpr Phrase orderThatSparesBoat{FAYLINE_TEXT("plan", "Closed %1 nothing lifts, tips or slides the boat.")};

inline constexpr Phrase drawInBeside{
    FAYLINE_TEXT("plan", "Draw the stack in beside it with another tool first, and stand clear.")};
inline constexpr Phrase firstTurnToFail{
    FAYLINE_TEXT("plan", "This is the worst moment; the first is when %1 goes on.")};
inline constexpr Phrase drawInForBoat{FAYLINE_TEXT(
    "plan", "A clamp or a screw pushes nothing on the boat. If there is none, weight and shore the boat.")};
inline constexpr Phrase nobodyUnder{FAYLINE_TEXT("plan", "Nobody under the boat at that moment.")};

inline constexpr Phrase tightenAgain{
    FAYLINE_TEXT("plan", "%1 will not close at first: %2 is left. Tighten it again once all are on."),
    FAYLINE_TEXT_N("plan", "%1 will not close at first: up to %2 is left. Tighten them again once all are on.")};
inline constexpr Phrase tightenAgainWhy{FAYLINE_TEXT(
    "plan",
    "The widest gap is under %1, which then pulls all it can (%2). It closes only once later stations pull, so go over "
    "it again before the glue grabs.")};
inline constexpr Phrase restsOtherwise{FAYLINE_TEXT(
    "plan",
    "Closed in this order the stack ends in another shape: %1 leaves %2, not %3. Stand clear, and clamp between.")};
inline constexpr Phrase restsOtherwiseWhy{FAYLINE_TEXT(
    "plan", "Both shapes are in balance, and it can snap from one into the other. Draw it down with a screw.")};
inline constexpr Phrase floorInTheWay{FAYLINE_TEXT(
    "plan", "When %1 is closed the free end reaches below the floor. Lift the boat, or close from the other end.")};
inline constexpr Phrase snapsWhileClosing{
    FAYLINE_TEXT("plan", "The stack can snap down while %1 is closed. Keep fingers out, and close it slowly.")};
inline constexpr Phrase maySnapWhileClosing{
    FAYLINE_TEXT("plan", "The stack may snap down while %1 is closed. Keep fingers out, and close it slowly.")};
inline constexpr Phrase maySnapWhy{FAYLINE_TEXT("plan", "Whether it does was not found out: take it that it can.")};
inline constexpr Phrase freeEndSticksOut{
    FAYLINE_TEXT("plan", "The free end sticks out %1 after %2. Rope it, and stand clear of both ends.")};
inline constexpr Phrase freeEndWhips{FAYLINE_TEXT("plan", "A bent stack can whip free.")};

}  // namespace fayline::plan::texts
