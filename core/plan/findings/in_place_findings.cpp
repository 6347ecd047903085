// What stays in a piece that nothing lets go, and what its free ends need for good.
#include <cmath>

#include "core/laminate/springback/in_place.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/in_place_texts.hpp"

namespace fayline::plan {

namespace {

using laminate::EndStress;

// Where `from_m` inside this end lies along the line.
double inside(const EndStress& end, double from_m) {
    return end.at_m + (end.atStart ? from_m : -from_m);
}

Arg endName(const EndStress& end, double length_m) {
    return put::place(end.atStart ? 0 : length_m, length_m);
}

Message pullOf(const model::Piece& piece, const EndStress& end, double length_m) {
    const bool onBoat = piece.form.kind == model::FormKind::inPlace;
    const Phrase& lifts = onBoat ? texts::liftsOffBoat : texts::liftsOffForm;
    const Phrase& pulls = onBoat ? texts::pullsOffBoat : texts::pullsOffForm;
    return {end.peelFrom_m > 0 ? pulls : lifts,
            {endName(end, length_m), put::stress(end.peel_Pa), put::stress(end.acrossMean_Pa),
             put::stress(end.acrossStrength_Pa), put::span(end.peelFrom_m)}};
}

Finding peel(const model::Piece& piece, const EndStress& end, const laminate::StressLeft& left, double length_m) {
    Finding finding = found(Code::peelAtEnd, end.acrossSource);
    finding.source.text =
        "beam on an elastic bed (derived), E across the grain a twelfth of that along it; " + finding.source.text;
    finding.at_m = inside(end, end.peelFrom_m);
    finding.value = end.peel_Pa / 1e6;
    finding.limit = end.acrossStrength_Pa / 1e6;
    finding.details.push_back(pullOf(piece, end, length_m));
    const Arg name = endName(end, length_m);
    const Arg share = put::share(end.peel_Pa / end.acrossStrength_Pa);
    if (end.peel_Pa > end.acrossMean_Pa) {
        finding.severity = Severity::stop;
        finding.text = {texts::endComesOff, {name, put::share(end.peel_Pa / end.acrossMean_Pa)}};
        finding.details.emplace_back(texts::thinnerStripsKeepLess);
    } else if (end.wantsFastening) {
        finding.text = {texts::endPeels, {name, share}};
        finding.details.emplace_back(texts::thinnerStripsKeepLess);
    } else {
        finding.severity = Severity::note;
        finding.text = {texts::endsStay, {share}};
        finding.details.push_back({texts::fibresStay,
                                   {put::place(left.surfaceStressAt_m, length_m), put::stress(left.surfaceStress_Pa),
                                    put::share(left.surfaceShare)}});
    }
    return finding;
}

Finding fastening(const EndStress& end, double length_m) {
    Finding finding = foundWithoutLimit(
        Code::fasteningWanted,
        {"beam on an elastic bed (derived), E across the grain a twelfth of that along it: common practice, no source",
         units::Mark::commonPractice});
    finding.at_m = inside(end, end.fasteningFrom_m);
    finding.value = end.fastening_N;
    finding.text = {texts::fastenEnd,
                    {endName(end, length_m), put::span(end.fasteningFrom_m), put::force(end.fastening_N)}};
    finding.details.push_back({texts::fastenWhy, {put::moment(std::abs(end.moment_N_m))}});
    return finding;
}

}  // namespace

std::vector<Finding> inPlaceFindings(const model::Piece& piece, const LinePlan& line, const laminate::FormPlan& form) {
    std::vector<Finding> findings;
    if (!form.stressLeft) return findings;
    const double length_m = line.fair.line.length();
    const laminate::StressLeft& left = *form.stressLeft;
    for (const EndStress* end : {&left.start, &left.end}) {
        if (!end->wantsFastening) continue;
        findings.push_back(peel(piece, *end, left, length_m));
        findings.push_back(fastening(*end, length_m));
    }
    const EndStress& worse = left.end.peel_Pa > left.start.peel_Pa ? left.end : left.start;
    if (findings.empty() && worse.peel_Pa > 0) findings.push_back(peel(piece, worse, left, length_m));
    return findings;
}

}  // namespace fayline::plan
