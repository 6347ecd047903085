// What the figures are called by which two plans are compared.
#pragma once

#include "core/plan/findings/text.hpp"

namespace fayline::plan::texts {

inline constexpr Phrase figureAlone{"%1"};
inline constexpr Phrase straightLine{FAYLINE_TEXT("plan", "straight")};
inline constexpr Phrase comparedRadius{FAYLINE_TEXT("plan", "tightest radius")};
inline constexpr Phrase comparedMisfit{FAYLINE_TEXT("plan", "largest misfit")};
inline constexpr Phrase comparedBend{FAYLINE_TEXT("plan", "bend, of breaking")};
inline constexpr Phrase comparedChance{FAYLINE_TEXT("plan", "chance that one breaks")};
inline constexpr Phrase comparedSpares{FAYLINE_TEXT("plan", "spares")};
inline constexpr Phrase tooManyBreak{FAYLINE_TEXT("plan", "too many break")};
inline constexpr Phrase comparedSprings{FAYLINE_TEXT("plan", "springback at the end")};
inline constexpr Phrase comparedGap{FAYLINE_TEXT("plan", "largest gap")};
inline constexpr Phrase comparedPull{FAYLINE_TEXT("plan", "hardest pull")};
inline constexpr Phrase comparedStations{FAYLINE_TEXT("plan", "clamps and props")};
inline constexpr Phrase comparedGlue{FAYLINE_TEXT("plan", "glue to mix")};
inline constexpr Phrase comparedBatches{FAYLINE_TEXT("plan", "batches")};
inline constexpr Phrase comparedSpare{FAYLINE_TEXT("plan", "spare time")};
inline constexpr Phrase comparedTime{FAYLINE_TEXT("plan", "glue-up takes")};
inline constexpr Phrase comparedSawn{FAYLINE_TEXT("plan", "strips to saw, end to end")};
inline constexpr Phrase comparedPaper{FAYLINE_TEXT("plan", "to print")};
inline constexpr Phrase comparedRecord{FAYLINE_TEXT("plan", "recorded")};
inline constexpr Phrase comparedStops{FAYLINE_TEXT("plan", "stops")};
inline constexpr Phrase comparedCautions{FAYLINE_TEXT("plan", "cautions")};

}  // namespace fayline::plan::texts
