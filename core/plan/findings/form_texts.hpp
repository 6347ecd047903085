// What is said of the form and of springback (form_findings.cpp, form_wording.cpp).
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase formImpossible{
    FAYLINE_TEXT("plan", "Springs back too much for any form: %1 at %2 (limit %3). Use more, thinner strips.")};
inline constexpr Phrase formNoRoom{
    FAYLINE_TEXT("plan",
                 "The strips do not fit on the form at %1: for a springback of %2 its hollow is too tight. Use more, "
                 "thinner strips.")};
inline constexpr Phrase formImpossibleWhy{
    FAYLINE_TEXT("plan", "The strips would keep hardly any bend there, however tight the form.")};
inline constexpr Phrase formNoRoomWhy{FAYLINE_TEXT(
    "plan", "Bent that much tighter than the line, the form's hollow is tighter than the strips are deep.")};
inline constexpr Phrase springBackLess{
    FAYLINE_TEXT("plan",
                 "More and thinner strips spring back less; so do strips that were soaked, steamed or boiled and dried "
                 "on the form.")};
inline constexpr Phrase formNotSettled{
    FAYLINE_TEXT("plan",
                 "The form's curve did not settle: tries differ by %1 (limit %2). Use more, thinner strips, or try the "
                 "form first.")};

// %1 how far, %2 which end, %3 the most.
inline constexpr Phrase springsOpen{
    FAYLINE_TEXT("plan", "Springs open %1 at %2 (0 to %3). The form is overbent for it.")};
inline constexpr Phrase springsIn{
    FAYLINE_TEXT("plan", "Springs closed by %1 at %2 (0 to %3). The form allows for it.")};
inline constexpr Phrase springsOpenUncorrected{
    FAYLINE_TEXT("plan", "Springs open %1 at %2 (0 to %3), and the form does not allow for it. Overbend the form.")};
inline constexpr Phrase springsInUncorrected{FAYLINE_TEXT(
    "plan", "Springs closed by %1 at %2 (0 to %3), and the form does not allow for it. Bend the form for it.")};
inline constexpr Phrase otherEndLaidOn{
    FAYLINE_TEXT("plan", "The end is measured off a form of the wanted line itself, with the other end laid on.")};
inline constexpr Phrase givesBack{FAYLINE_TEXT("plan", "The piece gives back %1 of its curve.")};
inline constexpr Phrase givesBackScarf{
    FAYLINE_TEXT("plan", "The piece gives back %1 of its curve (up to %2 where the scarf leaves fewer strips).")};
inline constexpr Phrase givesBackRange{FAYLINE_TEXT("plan", "The piece gives back %1 to %2 of its curve.")};
inline constexpr Phrase riseGoes{FAYLINE_TEXT("plan", "Its rise goes from %1 to %2.")};
inline constexpr Phrase measuredTwice{FAYLINE_TEXT(
    "plan", "Bends that builders measured sprang back from nothing to about twice that, some of it days later.")};
inline constexpr Phrase measuredTimes{FAYLINE_TEXT(
    "plan", "Bends that builders measured sprang back from nothing to about %1 times that, some of it days later.")};
inline constexpr Phrase measureLater{FAYLINE_TEXT("plan", "Measure when it comes off and again some days later.")};
inline constexpr Phrase springbackFactor{
    FAYLINE_TEXT("plan", "Springback is taken as %1 times the rule, as you set it from earlier pieces.")};

inline constexpr Phrase breaksOnForm{
    FAYLINE_TEXT("plan", "Strip %1 breaks on the form at %2: %3 of what its wood takes. Use thinner strips.")};
inline constexpr Phrase breaksOnFormWhy{
    FAYLINE_TEXT("plan",
                 "It bends round the line, but the form is tighter: strained to %1, where its wood breaks at %2 in the "
                 "mean.")};
inline constexpr Phrase takesSet{
    FAYLINE_TEXT("plan", "Strip %1 at %2 of breaking (set begins at %3) may spring back less.")};
inline constexpr Phrase takesSetWhy{
    FAYLINE_TEXT("plan", "At %1 its wood yields on the form and keeps some of its bend.")};
inline constexpr Phrase scarfFeather{FAYLINE_TEXT(
    "plan", "The last %1 of the scarf springs straight. That is normal: it pulls down at the scarf glue-up.")};
inline constexpr Phrase featherAlone{FAYLINE_TEXT("plan", "One strip is alone there and keeps no bend at all.")};

inline constexpr Phrase partOpen{FAYLINE_TEXT(
    "plan", "Strips %1 to %2, outside the dry face, spring open %3 at %4. The form is made for those inside.")};
inline constexpr Phrase partIn{FAYLINE_TEXT(
    "plan", "Strips %1 to %2, outside the dry face, spring closed by %3 at %4. The form is made for those inside.")};
inline constexpr Phrase partShare{FAYLINE_TEXT("plan", "They give back %1 of their curve, those on the form %2.")};
inline constexpr Phrase partShareScarf{
    FAYLINE_TEXT("plan",
                 "They give back %1 of their curve (up to %2 where the scarf leaves fewer strips), those on the form "
                 "%3.")};
inline constexpr Phrase partShareRange{
    FAYLINE_TEXT("plan", "They give back %1 to %2 of their curve, those on the form %3.")};
inline constexpr Phrase partOwnLine{
    FAYLINE_TEXT("plan", "The end is measured off their own line, with the other end laid on.")};
inline constexpr Phrase gluingsAddUp{
    FAYLINE_TEXT("plan",
                 "Glued in %n glue-up on one form it springs back %2; taken off after the first, %1. Leave it on "
                 "between."),
    FAYLINE_TEXT_N("plan",
                   "Glued in %n glue-ups on one form it springs back %2; taken off after the first, %1. Leave it on "
                   "between.")};
inline constexpr Phrase gluingsAsOne{
    FAYLINE_TEXT("plan", "That is what it gives back glued in one; taken off early it would have to be bent back.")};

inline constexpr Phrase planedOpen{FAYLINE_TEXT("plan", "Planing opens it about %1 more at %2.")};
inline constexpr Phrase planedIn{FAYLINE_TEXT("plan", "Planing closes it by about %1 at %2.")};
inline constexpr Phrase planedWhy{
    FAYLINE_TEXT("plan", "The wood that comes off takes the bending locked up in it along.")};
inline constexpr Phrase moistureOut{
    FAYLINE_TEXT("plan", "A moisture of %1 is outside what wood in air can have (4 to 30 %). Correct it.")};
inline constexpr Phrase serviceMoistureOut{
    FAYLINE_TEXT("plan", "A moisture of %1 in service is outside what wood in air can have (4 to 30 %). Correct it.")};
inline constexpr Phrase noShrinkage{FAYLINE_TEXT(
    "plan", "No shrinkage for %1: how moisture moves the curve is not known. Enter it with your own woods.")};
inline constexpr Phrase moistureOpens{
    FAYLINE_TEXT("plan", "From %1 moisture to %2 in service it opens about %3 more at %4.")};
inline constexpr Phrase moistureCloses{
    FAYLINE_TEXT("plan", "From %1 moisture to %2 in service it closes by about %3 at %4.")};
inline constexpr Phrase swellsOpens{
    FAYLINE_TEXT("plan",
                 "The wood swells through the stack and the curve opens by %1 (by %2 if the rings lie square to the "
                 "strips' faces).")};
inline constexpr Phrase swellsTightens{
    FAYLINE_TEXT("plan",
                 "The wood swells through the stack and the curve tightens by %1 (by %2 if the rings lie square to the "
                 "strips' faces).")};
inline constexpr Phrase shrinksOpens{
    FAYLINE_TEXT("plan",
                 "The wood shrinks through the stack and the curve opens by %1 (by %2 if the rings lie square to the "
                 "strips' faces).")};
inline constexpr Phrase shrinksTightens{FAYLINE_TEXT(
    "plan",
    "The wood shrinks through the stack and the curve tightens by %1 (by %2 if the rings lie square to the "
    "strips' faces).")};
inline constexpr Phrase besideSpringback{
    FAYLINE_TEXT("plan", "That comes beside springback; the end is measured with the other end laid on.")};
inline constexpr Phrase moistureRough{
    FAYLINE_TEXT("plan", "The figure is good between 6 and 14 %; beyond, take it as rough.")};
inline constexpr Phrase woodsMixed{FAYLINE_TEXT(
    "plan",
    "Woods that move by different amounts along the grain also warp the piece as two metals would; that is "
    "not counted.")};
inline constexpr Phrase thickPiece{FAYLINE_TEXT(
    "plan", "At %1 thick (limit %2) it goes on moving for weeks or months. Measure it again before you fit it.")};
inline constexpr Phrase thickPieceWhy{
    FAYLINE_TEXT("plan", "It comes to the moisture of its place that slowly, its faces first.")};

inline constexpr Phrase laterOpens{
    FAYLINE_TEXT("plan", "%1 it opens about %2 more at %3 (limit %4). The form does not allow for it.")};
inline constexpr Phrase laterCloses{
    FAYLINE_TEXT("plan", "%1 it closes by about %2 at %3 (limit %4). The form does not allow for it.")};
inline constexpr Phrase afterPlaning{FAYLINE_TEXT("plan", "after planing")};
inline constexpr Phrase afterASeason{FAYLINE_TEXT("plan", "after a season aboard")};
inline constexpr Phrase afterBoth{FAYLINE_TEXT("plan", "after planing and a season aboard")};

// Which end stands off, the other laid on.
inline constexpr Phrase startOpen{FAYLINE_TEXT("plan", "the start stands %1 open, the end laid on")};
inline constexpr Phrase startIn{FAYLINE_TEXT("plan", "the start stands %1 closed in, the end laid on")};
inline constexpr Phrase endOpen{FAYLINE_TEXT("plan", "the end stands %1 open, the start laid on")};
inline constexpr Phrase endIn{FAYLINE_TEXT("plan", "the end stands %1 closed in, the start laid on")};

inline constexpr Phrase ruleTwoWays{FAYLINE_TEXT(
    "plan",
    "The workshop's rule for n equal strips can be read in two ways that are one: y = x / n^2 with the rise x "
    "measured on the form, y = x / (n^2 - 1) with the rise x of the finished piece.")};
inline constexpr Phrase ruleNotAlike{FAYLINE_TEXT(
    "plan", "It holds for strips that are alike; for these the springback is summed up strip by strip instead.")};
inline constexpr Phrase ruleSays{FAYLINE_TEXT(
    "plan", "For %1 strips it says 1/%2 of the form's rise, or 1/%3 of the piece's: %4 more than the piece's %5.")};
inline constexpr Phrase ruleAndForm{
    FAYLINE_TEXT("plan",
                 "Calculated section by section, with the glue lines, the form rises %1 more; the rule takes the curve "
                 "for shallow.")};

inline constexpr Phrase spreadOwn{FAYLINE_TEXT(
    "plan", "By your own measured pieces the next one gives back between %1 and %2 times what theory says.")};
inline constexpr Phrase spreadBuilders{FAYLINE_TEXT(
    "plan",
    "Bends that builders measured (%1 of them) gave back from nothing to about twice what theory says, some "
    "of it days later: in the mean %2 times, standard deviation %3.")};
inline constexpr Phrase spreadAtStart{FAYLINE_TEXT("plan", "Without overbend the start stands between %1 and %2 off.")};
inline constexpr Phrase spreadAtEnd{FAYLINE_TEXT("plan", "Without overbend the end stands between %1 and %2 off.")};
inline constexpr Phrase ownPiecesBetter{FAYLINE_TEXT(
    "plan", "Measure yours when it comes off and again some days later; then your own pieces say better.")};

}  // namespace fayline::plan::texts
