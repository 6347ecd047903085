#include "core/plan/study/choices_candidates.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/units/units.hpp"

namespace fayline::plan {

namespace {

constexpr double same_m = 1e-7;

bool metric(units::LengthNotation notation) {
    return notation == units::LengthNotation::millimetres;
}

// Raised to what a planer can be set to.
double settable(double thickness_m, units::LengthNotation notation) {
    const double step_m = metric(notation) ? 0.0001 : units::inch_m / 64;
    return std::ceil(thickness_m / step_m - 1e-6) * step_m;
}

double endOf(const model::Strips& strips) {
    return strips.tapersTo_m.value_or(strips.thickness_m);
}

bool goTogether(const model::Strips& one, const model::Strips& other) {
    return !one.sacrificial && !other.sacrificial && !one.dryFace && one.species == other.species &&
           one.moe_Pa == other.moe_Pa && one.breaksAt == other.breaksAt && one.bentBefore == other.bentBefore;
}

// Groups cut where a gluing ends within them.
struct Cut {
    model::Strips strips;
    bool endsGluing = false;
};

std::vector<Cut> cutAtGluings(const model::Stack& stack) {
    std::vector<Cut> cuts;
    int before = 0;
    for (const model::Strips& group : stack.strips) {
        int left = group.count;
        while (left > 0) {
            int take = left;
            bool ends = false;
            for (const int after : stack.gluings) {
                if (after <= before || after > before + take) continue;
                take = after - before;
                ends = true;
            }
            Cut cut{group, ends};
            cut.strips.count = take;
            // Only the outer face of the whole group is dry.
            if (take < left) cut.strips.dryFace = false;
            cuts.push_back(cut);
            before += take;
            left -= take;
        }
    }
    return cuts;
}

double woodAt(const Band& band, bool end) {
    double wood_m = 0;
    for (const model::Strips& strips : band.kept) wood_m += strips.count * (end ? endOf(strips) : strips.thickness_m);
    return wood_m;
}

void finish(Band& band, double glueLine_m) {
    const double start_m = woodAt(band, false);
    band.depth_m = start_m + (band.count - 1) * glueLine_m;
    band.tapers = std::ranges::any_of(band.kept, [](const auto& s) { return s.tapersTo_m.has_value(); });
    band.taper = woodAt(band, true) / start_m;
    band.dryFace = band.kept.back().dryFace;
}

// `count` strips `thickness_m` thick of the band's kind.
model::Strips stripsOf(const Band& band, double thickness_m, int count, units::LengthNotation notation) {
    model::Strips strips = band.like;
    strips.count = count;
    strips.thickness_m = thickness_m;
    strips.dryFace = false;
    strips.tapersTo_m.reset();
    if (band.tapers) strips.tapersTo_m = settable(thickness_m * band.taper, notation);
    return strips;
}

// The fewest that fill `depth_m`.
int countFor(double depth_m, double thickness_m, double glueLine_m) {
    const double slack_m = std::min(depthSlack_m, depth_m / 100);
    const double count = std::ceil((depth_m + glueLine_m - slack_m) / (thickness_m + glueLine_m));
    // More than are handled are one too many, however many.
    return static_cast<int>(std::clamp(count, 1.0, mostStripsHandled + 1.0));
}

class Builder {
public:
    explicit Builder(const CandidatesWanted& wanted)
        : wanted_(wanted), glue_m_(wanted.stack.glueLine_m), bands_(bandsOf(wanted.stack)) {
        for (std::size_t i = 0; i < bands_.size(); ++i) {
            if (!bands_[i].filled) continue;
            depth_m_ += bands_[i].depth_m;
            if (!deepest_ || bands_[i].depth_m > bands_[*deepest_].depth_m) deepest_ = i;
        }
    }

    bool fills() const { return deepest_.has_value(); }

    std::vector<double> grid() const {
        const double least_m = thinnest_m(wanted_.notation);
        double step_m = metric(wanted_.notation) ? 0.0005 : units::inch_m / 32;
        const double most_m = deepest().depth_m / 2;
        while ((most_m - least_m) / step_m + 1 > mostThicknesses) step_m *= 2;
        std::vector<double> thicknesses;
        for (int i = 0; least_m + i * step_m <= most_m + same_m; ++i) thicknesses.push_back(least_m + i * step_m);
        return thicknesses;
    }

    std::vector<double> evenly(const std::vector<double>& grid) const {
        const double least_m = thinnest_m(wanted_.notation);
        constexpr int most = 12;
        std::vector<double> thicknesses;
        for (int n = 2; n <= most; ++n) {
            const double t = settable((deepest().depth_m + glue_m_) / n - glue_m_, wanted_.notation);
            const bool known = std::ranges::any_of(grid, [t](double g) { return std::abs(g - t) < 5e-5; });
            if (t >= least_m - same_m && !known) thicknesses.push_back(t);
        }
        return thicknesses;
    }

    std::optional<Candidate> alike(double thickness_m) const {
        return filledWith(thickness_m, [&](const Band& band, std::vector<model::Strips>& strips) {
            strips.push_back(
                stripsOf(band, thickness_m, countFor(band.depth_m, thickness_m, glue_m_), wanted_.notation));
        });
    }

    // Thin strips over `share` of the deepest band's depth.
    std::optional<Candidate> mixed(double thin_m, double thick_m, double share) const {
        const Band& deep = deepest();
        if (!wanted_.sawn(deep.like, thin_m * std::max(1.0, deep.taper))) return std::nullopt;
        const double fill = share * deep.depth_m / (thin_m + glue_m_);
        const int thin = static_cast<int>(std::lround(std::clamp(fill, 1.0, mostStripsHandled + 1.0)));
        const double rest_m = deep.depth_m - thin * (thin_m + glue_m_);
        if (rest_m < thick_m / 2) return std::nullopt;
        std::optional<Candidate> made = filledWith(thick_m, [&](const Band& band, std::vector<model::Strips>& strips) {
            if (&band != &deep) {
                strips.push_back(stripsOf(band, thick_m, countFor(band.depth_m, thick_m, glue_m_), wanted_.notation));
                return;
            }
            strips.push_back(stripsOf(band, thin_m, thin, wanted_.notation));
            strips.push_back(stripsOf(band, thick_m, countFor(rest_m, thick_m, glue_m_), wanted_.notation));
            if (!wanted_.thinOnForm) std::swap(strips[strips.size() - 1], strips[strips.size() - 2]);
        });
        if (made) made->mixed = true;
        return made;
    }

    Candidate asItIs() const {
        Candidate candidate{wanted_.stack.strips, wanted_.stack.gluings, 0, false, true};
        for (const Band& band : bands_) {
            if (!band.filled) continue;
            for (const model::Strips& strips : band.kept) {
                candidate.mixed = candidate.mixed || strips.thickness_m != band.like.thickness_m;
                candidate.thickness_m = std::max(candidate.thickness_m, strips.thickness_m);
            }
        }
        if (candidate.thickness_m > 0) return candidate;
        for (const model::Strips& strips : candidate.strips) {
            candidate.thickness_m = std::max(candidate.thickness_m, strips.thickness_m);
        }
        return candidate;
    }

private:
    const Band& deepest() const { return bands_[*deepest_]; }

    // The whole stack, the bands that are filled by `fill`; nothing where it gets too deep, has too many strips, or the
    // stock does not give them.
    std::optional<Candidate> filledWith(
        double thickness_m, const std::function<void(const Band&, std::vector<model::Strips>&)>& fill) const {
        Candidate candidate;
        candidate.thickness_m = thickness_m;
        double depth_m = 0;
        int count = 0;
        for (const Band& band : bands_) {
            const std::size_t first = candidate.strips.size();
            if (band.filled) {
                if (!wanted_.sawn(band.like, thickness_m * std::max(1.0, band.taper))) return std::nullopt;
                fill(band, candidate.strips);
            } else {
                candidate.strips.insert(candidate.strips.end(), band.kept.begin(), band.kept.end());
            }
            candidate.strips.back().dryFace = band.dryFace;
            int inBand = 0;
            for (std::size_t i = first; i < candidate.strips.size(); ++i) {
                inBand += candidate.strips[i].count;
                if (band.filled) depth_m += candidate.strips[i].count * candidate.strips[i].thickness_m;
            }
            if (band.filled) depth_m += (inBand - 1) * glue_m_;
            count += inBand;
            if (band.endsGluing) candidate.gluings.push_back(count);
        }
        if (depth_m > (1 + mostOverDepth) * depth_m_ || count > mostStripsHandled) return std::nullopt;
        return candidate;
    }

    const CandidatesWanted& wanted_;
    double glue_m_ = 0;
    std::vector<Band> bands_;
    double depth_m_ = 0;  // of all that is filled
    std::optional<std::size_t> deepest_;
};

// Goes along the strips of groups one by one.
class OneByOne {
public:
    explicit OneByOne(const std::vector<model::Strips>& groups) : groups_(groups) { skipEmpty(); }

    bool atEnd() const { return group_ == groups_.size(); }
    const model::Strips& strip() const { return groups_[group_]; }
    bool dryFace() const { return strip().dryFace && strip_ + 1 == strip().count; }
    void next() {
        ++strip_;
        skipEmpty();
    }

private:
    void skipEmpty() {
        while (!atEnd() && strip_ >= strip().count) {
            ++group_;
            strip_ = 0;
        }
    }

    const std::vector<model::Strips>& groups_;
    std::size_t group_ = 0;
    int strip_ = 0;
};

// The same strips in the same order, however they are grouped.
bool sameStrips(const std::vector<model::Strips>& one, const std::vector<model::Strips>& other) {
    OneByOne a(one);
    OneByOne b(other);
    for (; !a.atEnd() && !b.atEnd(); a.next(), b.next()) {
        const model::Strips& x = a.strip();
        const model::Strips& y = b.strip();
        const bool same = std::abs(x.thickness_m - y.thickness_m) < same_m && std::abs(endOf(x) - endOf(y)) < same_m &&
                          x.species == y.species && x.sacrificial == y.sacrificial && a.dryFace() == b.dryFace();
        if (!same) return false;
    }
    return a.atEnd() && b.atEnd();
}

void addNew(std::vector<Candidate>& all, std::optional<Candidate> candidate) {
    if (!candidate) return;
    const bool known =
        std::ranges::any_of(all, [&](const Candidate& c) { return sameStrips(c.strips, candidate->strips); });
    if (!known) all.push_back(std::move(*candidate));
}

std::vector<Candidate> mixedOnes(const Builder& builder, const CandidatesWanted& wanted,
                                 const std::vector<double>& grid) {
    std::vector<Candidate> all;
    for (const double thick : grid) {
        if (wanted.breaksAt_m > 0 && thick > wanted.breaksAt_m) break;
        for (const double part : {0.85, 0.7, 0.5}) {
            const auto above = std::upper_bound(grid.begin(), grid.end(), part * thick + same_m);
            if (above == grid.begin()) continue;
            for (const double share : {1.0 / 3, 1.0 / 2, 2.0 / 3}) {
                addNew(all, builder.mixed(*(above - 1), thick, share));
            }
        }
    }
    if (all.size() <= static_cast<std::size_t>(mostMixed)) return all;
    std::vector<Candidate> few;
    for (std::size_t i = 0; i < static_cast<std::size_t>(mostMixed); ++i)
        few.push_back(all[i * all.size() / mostMixed]);
    return few;
}

}  // namespace

double thinnest_m(units::LengthNotation notation) {
    return metric(notation) ? 0.0015 : units::sixteenth_m;
}

std::vector<Band> bandsOf(const model::Stack& stack) {
    std::vector<Band> bands;
    bool joins = false;
    for (const Cut& cut : cutAtGluings(stack)) {
        if (joins && goTogether(bands.back().kept.back(), cut.strips)) {
            bands.back().kept.push_back(cut.strips);
            bands.back().count += cut.strips.count;
        } else {
            bands.push_back({.like = cut.strips, .kept = {cut.strips}, .count = cut.strips.count});
        }
        bands.back().endsGluing = cut.endsGluing;
        joins = !cut.endsGluing;
    }
    int most = 0;
    for (Band& band : bands) {
        finish(band, stack.glueLine_m);
        if (!band.like.sacrificial) most = std::max(most, band.count);
    }
    for (Band& band : bands) band.filled = !band.like.sacrificial && (band.count > 1 || most == 1);
    return bands;
}

std::vector<Candidate> candidatesFor(const CandidatesWanted& wanted) {
    const Builder builder(wanted);
    std::vector<Candidate> all{builder.asItIs()};
    if (!builder.fills()) return all;
    const std::vector<double> grid = builder.grid();
    for (const double thickness : grid) addNew(all, builder.alike(thickness));
    for (const double thickness : builder.evenly(grid)) addNew(all, builder.alike(thickness));
    for (Candidate& candidate : mixedOnes(builder, wanted, grid)) addNew(all, std::move(candidate));
    std::ranges::stable_sort(all, [](const Candidate& a, const Candidate& b) {
        if (a.mixed != b.mixed) return b.mixed;
        return a.thickness_m < b.thickness_m - same_m;
    });
    return all;
}

}  // namespace fayline::plan
