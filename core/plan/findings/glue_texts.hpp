// What glue_findings.cpp says.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase batchLate{FAYLINE_TEXT("plan", "Batch %1 takes %2 to mix and use up (limit %3). %4")};
inline constexpr Phrase useSmallerBatches{FAYLINE_TEXT("plan", "Mix batches of %1.")};
inline constexpr Phrase useTray{FAYLINE_TEXT("plan", "Pour it into a tray.")};
inline constexpr Phrase useGlue{FAYLINE_TEXT("plan", "Use %1.")};
inline constexpr Phrase mixFaster{FAYLINE_TEXT("plan", "Mix faster, or choose a cooler hour.")};
inline constexpr Phrase batchLasts{FAYLINE_TEXT("plan", "It lasts %1, of which %2 may be planned for.")};
inline constexpr Phrase batchGoesOff{FAYLINE_TEXT("plan", "It lasts %1, so it goes off before it is used up.")};
inline constexpr Phrase batchMended{FAYLINE_TEXT("plan", "What helps: %1.")};
inline constexpr Phrase batchNotMended{FAYLINE_TEXT("plan", "Not enough: %1.")};
inline constexpr Phrase triedSmaller{FAYLINE_TEXT("plan", "batches of %1 (last %2, take %3)")};
inline constexpr Phrase triedTray{FAYLINE_TEXT("plan", "a tray (lasts %1, takes %2)")};
inline constexpr Phrase triedGlue{FAYLINE_TEXT("plan", "%1, which lasts %2 and takes %3")};
inline constexpr Phrase skinCaution{FAYLINE_TEXT(
    "plan", "Resin and hardener make skin and lungs allergic: wear gloves and long sleeves in fresh air.")};
inline constexpr Phrase makersSheet{FAYLINE_TEXT("plan", "The maker's safety sheet and local rules come first.")};

inline constexpr Phrase batchSmokes{
    FAYLINE_TEXT("plan",
                 "A full batch left standing can reach %1 and smoke (limit %2). Use it at once, spread leftovers thin, "
                 "carry a hot one outdoors.")};
inline constexpr Phrase leftoverSmokes{
    FAYLINE_TEXT("plan",
                 "Leftovers can reach %1 and smoke (limit %2), a full batch %3. Spread them thin; carry a hot batch "
                 "outdoors.")};
inline constexpr Phrase useBatchAtOnce{FAYLINE_TEXT("plan", "Use a batch as soon as it is mixed.")};
inline constexpr Phrase fireRules{FAYLINE_TEXT("plan", "Local fire rules come first.")};

inline constexpr Phrase starvedJoint{FAYLINE_TEXT(
    "plan", "Each joint gets %1 of glue; a glue line of %2 needs %3. Spread more, or plan a thinner line.")};
inline constexpr Phrase soaksInCounted{FAYLINE_TEXT("plan", "What soaks into the wood is counted.")};
inline constexpr Phrase ratioRounded{
    FAYLINE_TEXT("plan",
                 "Batch %1 as measured is %2 off its mixing ratio (limit %3). Use a finer scale or mix larger "
                 "batches.")};
inline constexpr Phrase woodWet{
    FAYLINE_TEXT("plan", "Strips at %1 moisture are too wet for epoxy (limit %2). Let them dry before you glue them.")};
inline constexpr Phrase airMoisture{FAYLINE_TEXT("plan", "In this air wood comes to %1, give or take 1 %.")};

inline constexpr Phrase nearDewPoint{
    FAYLINE_TEXT("plan", "The air, %1, is close to its dew point, %2. Warm the shed to %3 or more.")};
inline constexpr Phrase dewOnFaces{
    FAYLINE_TEXT("plan", "Nearer to the dew point than that, strips may be damp without showing it.")};
inline constexpr Phrase coldWoodSweats{
    FAYLINE_TEXT("plan",
                 "Strips as cold as the night, %1, sweat in this air (dew point %2). Bring them in the day before and "
                 "wipe them dry.")};
inline constexpr Phrase tooCold{
    FAYLINE_TEXT("plan", "The air is at %1; %2 needs %3. Use a faster glue, or warm wood, glue and shed.")};
inline constexpr Phrase nightTooCold{
    FAYLINE_TEXT("plan", "Night falls to %1; %2 needs %3. Heat a tent over the piece, or it cures only by day.")};
inline constexpr Phrase cureStands{
    FAYLINE_TEXT("plan", "While it is that cold the cure is counted as standing still.")};
inline constexpr Phrase tentCaution{
    FAYLINE_TEXT("plan", "In a heated tent mind fire and fumes; local rules for heaters come first.")};
inline constexpr Phrase hotDay{FAYLINE_TEXT(
    "plan", "At %1 glue goes off fast (hot above %2): open time is %3. Start in the cool of the morning.")};
inline constexpr Phrase keepInShade{FAYLINE_TEXT("plan", "Keep resin and batches in the shade.")};
inline constexpr Phrase thinned{
    FAYLINE_TEXT("plan",
                 "The wet-out is thinned with %1 solvent: it cures softer, and solvent burns. Use warm resin instead; "
                 "no flame, no spark.")};
inline constexpr Phrase thinnedShrinks{
    FAYLINE_TEXT("plan", "Thinned resin shrinks, and solvent that is closed in stays in; warm resin wets as well.")};
inline constexpr Phrase solventRags{
    FAYLINE_TEXT("plan", "Put rags into a closed metal bin; local rules for solvents come first.")};
inline constexpr Phrase neverCures{FAYLINE_TEXT(
    "plan",
    "In this air %1 does not cure far enough in three weeks to take clamps off. Heat a tent over it, or use "
    "a faster glue.")};

}  // namespace fayline::plan::texts
