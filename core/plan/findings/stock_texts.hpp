// What is said of strips and boards: the answer, the findings, what is wrong with boards, what would mend it.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

// The answer
inline constexpr Phrase stripCount{FAYLINE_TEXT("plan", "one strip"), FAYLINE_TEXT_N("plan", "%n strips")};
inline constexpr Phrase boardCount{FAYLINE_TEXT("plan", "one board"), FAYLINE_TEXT_N("plan", "%n boards")};
inline constexpr Phrase stripsFromBoards{FAYLINE_TEXT("plan", "%1 from %2")};
inline constexpr Phrase stripsShort{FAYLINE_TEXT("plan", "one strip short"), FAYLINE_TEXT_N("plan", "%n strips short")};
inline constexpr Phrase noBoardsFigures{FAYLINE_TEXT("plan", "no boards given")};
inline constexpr Phrase allCutFigures{FAYLINE_TEXT("plan", "all cut")};
inline constexpr Phrase listBoards{FAYLINE_TEXT("plan", "No boards given: list what you have or can buy.")};
inline constexpr Phrase stockCalculating{FAYLINE_TEXT("plan", "Being calculated: which board gives which strip.")};
inline constexpr Phrase allCut{FAYLINE_TEXT("plan", "Every strip is cut.")};
inline constexpr Phrase cutProven{FAYLINE_TEXT("plan", "%1 from %2, %3 waste: proven the best.")};
inline constexpr Phrase cutWithin{FAYLINE_TEXT("plan", "%1 from %2, %3 waste, at most %4 from the best.")};
inline constexpr Phrase boardsShortOf{FAYLINE_TEXT("plan", "One strip of %1 is short: the boards do not suffice."),
                                      FAYLINE_TEXT_N("plan", "%n strips of %1 are short: the boards do not suffice.")};
inline constexpr Phrase cheapestCure{FAYLINE_TEXT("plan", "What helps: %1.")};
inline constexpr Phrase sparesAmong{FAYLINE_TEXT("plan", "One of them is a spare."),
                                    FAYLINE_TEXT_N("plan", "%n of them are spares.")};
inline constexpr Phrase scarfsNeeded{FAYLINE_TEXT("plan", "One scarf to glue first."),
                                     FAYLINE_TEXT_N("plan", "%n scarfs to glue first.")};
inline constexpr Phrase toBuy{FAYLINE_TEXT("plan", "One board must be bought."),
                              FAYLINE_TEXT_N("plan", "%n boards must be bought.")};

// Findings
inline constexpr Phrase boardsShort{
    FAYLINE_TEXT("plan", "The boards give one strip less than the %1 needed. List more boards, or see what helps."),
    FAYLINE_TEXT_N("plan", "The boards give %n strips less than the %1 needed. List more boards, or see what helps.")};
inline constexpr Phrase boardsShortCure{
    FAYLINE_TEXT("plan", "The boards give one strip less than the %1 needed. What helps: %2."),
    FAYLINE_TEXT_N("plan", "The boards give %n strips less than the %1 needed. What helps: %2.")};
inline constexpr Phrase onlySparesShort{FAYLINE_TEXT("plan", "Only spares are missing.")};
inline constexpr Phrase noBoardsListed{FAYLINE_TEXT("plan", "No boards are listed for the %1 strips.")};
inline constexpr Phrase scarfInTightest{
    FAYLINE_TEXT("plan", "Strip %1 has a scarf at %2, in the tightest third of the bend. Use a longer board there.")};
inline constexpr Phrase scarfForcedLength{
    FAYLINE_TEXT("plan", "No board is long enough to span the tightest third with a scarf at its end.")};
inline constexpr Phrase scarfForcedCount{
    FAYLINE_TEXT("plan", "The boards long enough to span the tightest third are too few.")};
inline constexpr Phrase scarfBestBoards{
    FAYLINE_TEXT("plan", "Where a scarf must lie in the bend, keep it out of the outermost strip.")};
inline constexpr Phrase scarfTooSteep{FAYLINE_TEXT(
    "plan", "Scarfs of 1 in %1 keep about %2 of a strip's strength. For a piece under load cut them 1 in %3.")};
inline constexpr Phrase scarfSteepBeyond{FAYLINE_TEXT(
    "plan", "Scarfs of 1 in %1 are steeper than any in the table. For a piece under load cut them 1 in %3.")};
inline constexpr Phrase scarfWithoutClamp{
    FAYLINE_TEXT("plan", "No clamp presses the scarf of strip %1 at %2. Set one on it."),
    FAYLINE_TEXT_N("plan", "No clamp presses %n scarfs, the first in strip %1 at %2. Set one on each.")};
inline constexpr Phrase scarfGluedFirst{
    FAYLINE_TEXT("plan", "A scarf that is glued and cured before the strip is bent needs none.")};
inline constexpr Phrase moistureApart{FAYLINE_TEXT(
    "plan", "Board %1 has %2 moisture, the strips are planned at %3. Let the boards come within %4 points.")};
inline constexpr Phrase moistureService{
    FAYLINE_TEXT("plan", "Board %1 has %2 moisture, aboard it will have %3. Bring it to within %4 points.")};
inline constexpr Phrase planerTooThick{
    FAYLINE_TEXT("plan", "The strips are thinner than the %1 that your planer takes. Plane them on a carrier board.")};
inline constexpr Phrase pinNotKept{
    FAYLINE_TEXT("plan", "Strip %1 cannot be cut from the board that you chose for it. Choose another board.")};

// What is wrong with boards
inline constexpr Phrase noBoards{FAYLINE_TEXT("plan", "No boards are listed.")};
inline constexpr Phrase noBoardOfWood{FAYLINE_TEXT("plan", "No board is of %1.")};
inline constexpr Phrase noBoardGives{
    FAYLINE_TEXT("plan", "No board is large enough for strip %1, its planing and allowance counted.")};
inline constexpr Phrase kerfTooWide{FAYLINE_TEXT("plan", "The saw cut is wider than board %1.")};
inline constexpr Phrase boardAllBad{FAYLINE_TEXT("plan", "Board %1 is bad from end to end.")};
inline constexpr Phrase boardTooSmall{FAYLINE_TEXT("plan", "Board %1 is too small for any strip.")};
inline constexpr Phrase boardTooShort{
    FAYLINE_TEXT("plan", "Board %1 is too short: no part of a strip is cut under %2.")};
inline constexpr Phrase boardOtherWood{FAYLINE_TEXT("plan", "Board %1 is of a wood that no strip needs.")};
inline constexpr Phrase lanesTooShort{FAYLINE_TEXT("plan", "No number of scarfs makes strip %1 from boards so short.")};
inline constexpr Phrase thinnerThanPlaner{FAYLINE_TEXT("plan", "Strip %1 is thinner than the planer takes.")};
inline constexpr Phrase pinNotMet{FAYLINE_TEXT("plan", "The board chosen for strip %1 does not give it.")};
inline constexpr Phrase andMoreTrouble{FAYLINE_TEXT("plan", "One more board has something of the kind."),
                                       FAYLINE_TEXT_N("plan", "%n more boards have something of the kind.")};
inline constexpr Phrase sharersUnlike{FAYLINE_TEXT(
    "plan", "The shared boards are sawn as the first piece says; %1 has another saw cut, slope or planing.")};

// What would mend it, as buttons have it
inline constexpr Phrase sawEitherWay{FAYLINE_TEXT("plan", "Saw either way")};
inline constexpr Phrase oneScarfMore{FAYLINE_TEXT("plan", "Allow one more scarf")};
inline constexpr Phrase stripsThinner{FAYLINE_TEXT("plan", "Strips %1 thick")};
inline constexpr Phrase moreStripsThinner{FAYLINE_TEXT("plan", "%1 strips of %2")};
inline constexpr Phrase pieceNarrower{FAYLINE_TEXT("plan", "Piece %1 wide")};
inline constexpr Phrase boardsMore{FAYLINE_TEXT("plan", "One more board as %1"),
                                   FAYLINE_TEXT_N("plan", "%n more boards as %1")};
inline constexpr Phrase boardLonger{FAYLINE_TEXT("plan", "One board %1 long"),
                                    FAYLINE_TEXT_N("plan", "%n boards %1 long")};

}  // namespace fayline::plan::texts
