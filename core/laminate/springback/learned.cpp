#include "core/laminate/springback/learned.hpp"

#include <algorithm>
#include <cmath>

#include "core/laminate/springback/form_plan.hpp"
#include "core/laminate/springback/on_form.hpp"
#include "core/math/count.hpp"
#include "core/units/input_error.hpp"
#include "core/wood/student.hpp"

namespace fayline::laminate {

namespace {

// A factor whose error is larger than the whole range of measured pieces says nothing.
constexpr double mostError = 1;

// The piece on its form, and let go with any factor.
struct LetGoPiece {
    LetGoPiece(const RecordedPiece& recorded, const std::vector<wood::Species>& species) {
        const model::Piece& piece = recorded.piece;
        const StackPlan stack =
            planStack(piece.stack, piece.line.describes, piece.line.stripsOn, recorded.line, species);
        const FormPlan form = planForm(piece, recorded.line, species, stack);
        letsGo = form.letsGo;
        lies = lieOn(piece, recorded.line, stack, form.line);
        const Ground& ground = lies.ground.ground;
        straight_m = lies.onForm.nodes()[ground.end].s_m - lies.onForm.nodes()[ground.start].s_m;
    }

    Opening letGo(double factor) const { return openingOf(lies.ground.ground, lies.onForm, lies.letGo(factor)); }

    OnForm lies;
    bool letsGo = true;
    double straight_m = 0;  // between the trim lines, were it laid straight
};

// One length that was read, as the piece let go with a factor would have it.
struct Read {
    double (*of)(const Opening&) = nullptr;
    double wanted_m = 0;
    double error_m = 0;
};

std::vector<Read> readsOf(const model::LetGo& reading) {
    std::vector<Read> reads;
    const double formMade = std::hypot(tapeError_m, formMadeWithin_m);
    if (reading.chordPiece_m > 0 && reading.chordForm_m > 0) {
        // What the form is off by is in both chords.
        reads.push_back({[](const Opening& o) { return o.chord_m; }, reading.chordPiece_m - reading.chordForm_m,
                         std::sqrt(2) * tapeError_m});
    } else if (reading.chordPiece_m > 0) {
        reads.push_back({[](const Opening& o) { return o.chordTo_m; }, reading.chordPiece_m, formMade});
    }
    if (reading.risePiece_m > 0) {
        reads.push_back({[](const Opening& o) { return o.riseTo_m; }, reading.risePiece_m, formMade});
    }
    return reads;
}

std::string whyNone(const model::LetGo& reading, const LetGoPiece& piece) {
    if (!piece.letsGo) return "nothing lets this piece go";
    if (!(reading.chordPiece_m > 0) && !(reading.risePiece_m > 0))
        return "neither chord nor rise of the piece stand there";
    if (reading.chordPiece_m > piece.straight_m || reading.risePiece_m > piece.straight_m / 2) {
        return "the piece, laid straight, is shorter than what was read";
    }
    const double onForm = piece.letGo(0).chordFrom_m;
    const double most = formChordShare * onForm + formChordOff_m;
    if (reading.chordForm_m > 0 && std::abs(reading.chordForm_m - onForm) > most) {
        return "the chord that was read on the form is not that of the form as the plan has it";
    }
    return {};
}

FactorRead factorFrom(const std::vector<Read>& reads, const LetGoPiece& piece) {
    FactorRead result;
    result.theory = piece.lies.theory();
    constexpr double step = 1e-3;
    double factor = 1;
    for (int round = 0; round < 12; ++round) {
        const Opening here = piece.letGo(factor);
        const Opening more = piece.letGo(factor + step);
        double square = 0;
        double along = 0;
        for (const Read& read : reads) {
            const double slope = (read.of(more) - read.of(here)) / step / read.error_m;
            square += slope * slope;
            along += slope * (read.wanted_m - read.of(here)) / read.error_m;
        }
        if (!(square > 1 / (mostError * mostError))) {
            result.why = "so little springback follows for it that a tape does not tell it";
            return result;
        }
        result.error = 1 / std::sqrt(square);
        const double next = std::clamp(factor + along / square, leastFactor - 1, mostFactor + 1);
        const double moved = std::abs(next - factor);
        factor = next;
        if (moved < 1e-9) break;
    }
    if (factor < leastFactor || factor > mostFactor) {
        result.why = "it is far more than any springback, or far the other way; was it read at the trim lines?";
        return result;
    }
    result.factor = factor;
    return result;
}

FactorRead factorOn(const model::LetGo& reading, const LetGoPiece& piece) {
    FactorRead none{.theory = piece.lies.theory(), .why = whyNone(reading, piece)};
    return none.why.empty() ? factorFrom(readsOf(reading), piece) : none;
}

std::string leftOutText(const std::string& name, const std::string& when, const std::string& why) {
    return name + (when.empty() ? "" : ", glued " + when) + ", is left out: " + why + ".";
}

// The readings of one glue-up, early ones first, the last one marked.
void addReadings(Learned& learned, const RecordedPiece& recorded, std::size_t index, const LetGoPiece& piece) {
    const model::Record& record = recorded.piece.record[index];
    std::vector<model::LetGo> inOrder = record.letGo;
    std::ranges::stable_sort(inOrder, {}, &model::LetGo::after_s);
    const std::size_t before = learned.readings.size();
    for (const model::LetGo& reading : inOrder) {
        const FactorRead read = factorOn(reading, piece);
        if (!read.factor) {
            learned.leftOut.push_back(leftOutText(recorded.piece.name, record.when, read.why));
            continue;
        }
        SpringbackReading shown{.piece = recorded.piece.name,
                                .when = record.when,
                                .after_s = reading.after_s,
                                .theory = read.theory,
                                .factor = *read.factor};
        shown.measured = shown.factor * shown.theory;
        shown.error = read.error;
        shown.asItStands = !record.on.has_value();
        shown.index = recorded.index;
        shown.record = recorded.firstRecord + index;
        learned.readings.push_back(shown);
    }
    if (learned.readings.size() == before) return;
    learned.readings.back().last = true;
    const double last = learned.readings.back().factor;
    for (std::size_t i = before; i < learned.readings.size(); ++i) {
        // Where the last is none, no reading is a share of it.
        if (std::abs(last) > learned.readings.back().error)
            learned.readings[i].share = learned.readings[i].factor / last;
    }
}

}  // namespace

model::MeasuredOn measuredOn(const model::Piece& piece) {
    model::MeasuredOn on;
    on.line = piece.line;
    on.stack = piece.stack;
    on.form = piece.form;
    return on;
}

model::Piece asMeasured(const model::Piece& piece, const model::Record& record) {
    model::Piece was = piece;
    if (!record.on) return was;
    was.line = record.on->line;
    was.stack = record.on->stack;
    was.form = record.on->form;
    return was;
}

FactorRead factorOf(const model::LetGo& reading, const RecordedPiece& recorded,
                    const std::vector<wood::Species>& species) {
    return factorOn(reading, LetGoPiece(recorded, species));
}

NextFactor nextFactor(const std::vector<double>& factors, const std::vector<double>& errors) {
    constexpr double rule = 1;
    const double deviation = 1 / wood::studentRange95(scatterCounts);  // the range is one to either side of the rule
    const double between = deviation * deviation / 2;
    const double withinShop = deviation * deviation / 2;

    const auto count = static_cast<double>(factors.size());
    double mean = rule;
    double squares = scatterCounts * withinShop;
    double reading = 0;
    int degreesOfFreedom = scatterCounts;
    if (!factors.empty()) {
        mean = 0;
        for (const double factor : factors) mean += factor / count;
        for (const double factor : factors) squares += (factor - mean) * (factor - mean);
        for (const double error : errors) reading += error * error / count;
        degreesOfFreedom += math::countOf(factors) - 1;
    }
    const double scatter = squares / degreesOfFreedom;
    const double weight = count / std::max(scatter, reading);
    const double shopVariance = 1 / (1 / between + weight);
    const double expected = shopVariance * (rule / between + weight * mean);
    const double within = wood::studentRange95(degreesOfFreedom) * std::sqrt(shopVariance + scatter);
    return {expected, expected - within, expected + within};
}

Learned learnSpringback(const std::vector<RecordedPiece>& recorded, const std::vector<wood::Species>& species) {
    Learned learned;
    for (const RecordedPiece& one : recorded) {
        const bool any =
            std::ranges::any_of(one.piece.record, [](const model::Record& record) { return !record.letGo.empty(); });
        if (!any) continue;
        std::optional<LetGoPiece> piece;
        try {
            piece.emplace(one, species);
        } catch (const units::InputError& error) {
            learned.leftOut.push_back(
                leftOutText(one.piece.name, {}, std::string("no plan can be made of it, ") + error.what()));
            continue;
        }
        for (std::size_t i = 0; i < one.piece.record.size(); ++i) {
            const model::Record& record = one.piece.record[i];
            if (record.letGo.empty()) continue;
            if (record.dryFit) {
                learned.leftOut.push_back(leftOutText(one.piece.name, record.when, "a dry fit has no glue to hold it"));
                continue;
            }
            addReadings(learned, one, i, *piece);
        }
    }
    std::vector<double> factors;
    std::vector<double> errors;
    for (const SpringbackReading& reading : learned.readings) {
        if (!reading.last) continue;
        factors.push_back(reading.factor);
        errors.push_back(reading.error);
        learned.mean += reading.factor;
    }
    learned.pieces = math::countOf(factors);
    if (factors.empty()) return learned;
    learned.mean /= learned.pieces;
    const NextFactor next = nextFactor(factors, errors);
    learned.factor = next.factor;
    learned.low = next.low;
    learned.high = next.high;
    return learned;
}

}  // namespace fayline::laminate
