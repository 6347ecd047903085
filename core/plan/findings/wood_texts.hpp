// What findings about the woods say: where trials say otherwise, where values are missing.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase woodStiffer{
    FAYLINE_TEXT_N(
        "plan",
        "Your trial of %1 says it is %2 stiffer than planned: it pulls as much harder. Give these strips its "
        "modulus."),
    FAYLINE_TEXT_N("plan",
                   "Your %3 trials of %1 say it is %2 stiffer than planned: it pulls as much harder. Give these strips "
                   "their modulus.")};
inline constexpr Phrase woodLessStiff{
    FAYLINE_TEXT_N(
        "plan",
        "Your trial of %1 says it is %2 less stiff than planned: it pulls as much less. Give these strips its "
        "modulus."),
    FAYLINE_TEXT_N(
        "plan",
        "Your %3 trials of %1 say it is %2 less stiff than planned: it pulls as much less. Give these strips "
        "their modulus.")};
inline constexpr Phrase modulusOfTable{
    FAYLINE_TEXT("plan", "Measured: a modulus of %1 at this moisture, give or take %2; the table gives %3.")};
inline constexpr Phrase modulusOfStrips{
    FAYLINE_TEXT("plan", "Measured: a modulus of %1 at this moisture, give or take %2; the strips have %3.")};
inline constexpr Phrase woodBreaksSooner{
    FAYLINE_TEXT_N(
        "plan",
        "Your trial says %1 breaks sooner than planned: a strip in %2 glue-ups, not %3. Give these strips its "
        "strain."),
    FAYLINE_TEXT_N(
        "plan",
        "Your %4 trials say %1 breaks sooner than planned: a strip in %2 glue-ups, not %3. Give these strips "
        "their strain.")};
inline constexpr Phrase woodBreaksLater{
    FAYLINE_TEXT_N(
        "plan",
        "Your trial says %1 breaks later than planned: a strip in %2 glue-ups, not %3. Give these strips its "
        "strain."),
    FAYLINE_TEXT_N("plan",
                   "Your %4 trials say %1 breaks later than planned: a strip in %2 glue-ups, not %3. Give these strips "
                   "their strain.")};
inline constexpr Phrase breaksAtMeasured{
    FAYLINE_TEXT("plan", "Measured: it breaks at a strain of %1, give or take %2; the plan takes %3.")};
inline constexpr Phrase sameBoards{FAYLINE_TEXT("plan", "Do so if the strips are sawn from the same boards.")};

inline constexpr Phrase trialLeftOut{FAYLINE_TEXT("plan", "A trial of %1 is left out: it says nothing. Correct it.")};
inline constexpr Phrase trialWrong{FAYLINE_TEXT("plan", "What is wrong: %1.")};

inline constexpr Phrase noCrushingStrength{
    FAYLINE_TEXT("plan", "No crushing strength for %1: pads are not checked. Enter it among the boat's own woods.")};
inline constexpr Phrase crushingNotChecked{FAYLINE_TEXT(
    "plan", "Props and washers that crush it are not checked either; in a file the value is compression_across_MPa.")};

inline constexpr Phrase woodByDefault{FAYLINE_TEXT(
    "plan",
    "%1 has no strength and no stiffness of its own: a middling hardwood's stand in. Enter them or measure a "
    "strip.")};
inline constexpr Phrase strengthByDefault{FAYLINE_TEXT(
    "plan", "%1 has no strength of its own: a middling hardwood's stands in. Enter it or measure a strip.")};
inline constexpr Phrase stiffnessByDefault{FAYLINE_TEXT(
    "plan", "%1 has no stiffness of its own: a middling hardwood's stands in. Enter it or measure a strip.")};
inline constexpr Phrase strengthTaken{
    FAYLINE_TEXT("plan", "Its bending strength is taken as %1; in a file the value is mor_MPa.")};
inline constexpr Phrase stiffnessTaken{
    FAYLINE_TEXT("plan", "Its modulus is taken as %1; in a file the value is moe_MPa.")};

}  // namespace fayline::plan::texts
