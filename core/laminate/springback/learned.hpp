// What the springback of earlier pieces, measured when they were let go and days after, says about the rule.
//
// Of a reading, the factor f is the one with which the piece, let go from its form with f rho in place of rho at every
// section, has the chord that was read (against the chord read on the form) and the rise. Chord and rise weigh by how
// well each could be read.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/line/line.hpp"
#include "core/model/boat.hpp"
#include "core/wood/species.hpp"

namespace fayline::laminate {

// One standard deviation of a chord or rise read with a tape or rule, and of a form against what it should be, metres.
// Common practice, no source.
inline constexpr double tapeError_m = 0.0005;
inline constexpr double formMadeWithin_m = 0.001;

// A chord on the form that differs from the plan's by more than this was read on another form, or elsewhere: a share of
// it, and metres beside. Our choice.
inline constexpr double formChordShare = 0.02;
inline constexpr double formChordOff_m = 0.005;

// Factors beyond these belong to no springback (the published ones lie between 0 and 2): a slip of the pen. Our choice.
inline constexpr double leastFactor = -2;
inline constexpr double mostFactor = 6;

// The piece as it is, for its record to keep, so that later edits of the piece do not change what was measured.
model::MeasuredOn measuredOn(const model::Piece& piece);

// The piece as it was when the record was made; as it stands where the record keeps no copy.
model::Piece asMeasured(const model::Piece& piece, const model::Record& record);

// A piece whose springback was measured, as it was then, and its fair line.
struct RecordedPiece {
    model::Piece piece;
    line::Line line;
    // Where it stands: which of the shop's recorded pieces, and which of that one's records is piece.record[0].
    std::size_t index = 0;
    std::size_t firstRecord = 0;
};

// One reading against the theory for the stack it was read on.
struct SpringbackReading {
    std::string piece;
    std::string when;
    double after_s = 0;
    double measured = 0;      // share of its curve that the piece gave back at the tightest place: factor x theory
    double theory = 0;        // rho of the rule for that stack there
    double factor = 0;        // measured / theory
    double error = 0;         // of the factor, from reading a tape (one standard deviation)
    bool last = false;        // the last of its glue-up, or the only one: it counts
    bool asItStands = false;  // its record keeps no copy of the piece: held against the piece as it is now
    std::size_t index = 0;    // of RecordedPiece
    std::size_t record = 0;   // which of that piece's records
    double share = 1;         // of the last reading's springback that was there at this one; 1 where that is none
};

struct Learned {
    std::vector<SpringbackReading> readings;  // piece by piece, early ones first
    int pieces = 0;                           // whose last reading counts
    double mean = 0;                          // of their factors
    // What the next piece's factor is expected to be, and between what it lies with 95 %: see nextFactor. None: no
    // reading that says anything.
    std::optional<double> factor;
    double low = 0;
    double high = 0;
    std::vector<std::string> leftOut;  // readings from which nothing follows, each with the reason, a full sentence
};

// `recorded`: pieces of the boat that have `record[].let_go`, each as it was when that was read (asMeasured). Each
// glue-up of a record is a piece of its own; dry fits and pieces that nothing lets go say nothing, nor one that no plan
// can be made of. Error: against pieces let go by planForm with a factor of their own, 1e-6 of the factor.
Learned learnSpringback(const std::vector<RecordedPiece>& recorded, const std::vector<wood::Species>& species);

// The factor of a shop's next piece from those of its earlier ones, each with its reading error.
struct NextFactor {
    double factor = 1;
    double low = 0;
    double high = 2;
};
// Builders' measured pieces lie between nothing and twice the rule. That is taken as 95 % of all pieces, half of its
// variance between shops (glue, wood, how soon the form comes off) and half between pieces of one shop, and as worth
// scatterCounts degrees of freedom; so without a reading the next lies between 0 and 2. Every reading moves the shop's
// mean from 1 toward its own and, by Student's range, the scatter toward that of its pieces. That halves are halves is
// our choice: too little is published to tell.
// Of shops and pieces drawn so (normal, two deviations to either end), 93 to 96 of 100 next pieces lay within the range
// after one to twelve.
//   (1) ten pieces that agree: their mean, within 0.3 of it
NextFactor nextFactor(const std::vector<double>& factors, const std::vector<double>& errors);
inline constexpr int scatterCounts = 4;

// The factor of this reading of the piece, and its error; none with the reason where nothing follows from it. Throws
// InputError as planStack and planForm do.
struct FactorRead {
    std::optional<double> factor;
    double error = 0;
    double theory = 0;
    std::string why;  // not
};
FactorRead factorOf(const model::LetGo& reading, const RecordedPiece& recorded,
                    const std::vector<wood::Species>& species);

}  // namespace fayline::laminate
