#include "core/plan/study/springing.hpp"

#include <algorithm>
#include <cmath>

#include "core/laminate/springback/on_form.hpp"
#include "core/math/root.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/findings/springing_texts.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

namespace {

// So little of a section's turn is the least that may be left, and so many times as much the most.
constexpr double leastLeft = 0.05;
constexpr double mostTold = 3;

// By how much the reported end stands off with the factor.
class ReportedEnd {
public:
    ReportedEnd(const model::Piece& piece, const Plan& plan)
        : lies_(laminate::lieOn(piece, plan.line.fair.line, plan.stack, plan.form.line)),
          atStart_(reportedAtStart(plan.form, plan.line.fair.line.length())) {}

    double off_m(double factor) const {
        const laminate::Opening opening = laminate::openingOf(lies_.ground.ground, lies_.wanted, lies_.letGo(factor));
        return atStart_ ? opening.start_m : opening.end_m;
    }
    double theory() const { return lies_.theory(); }

private:
    laminate::OnForm lies_;
    bool atStart_;
};

double factorOfEnd(const model::Piece& piece, const Plan& plan, double off_m) {
    const ReportedEnd reported(piece, plan);
    if (!(reported.theory() > 0)) {
        throw units::InputError("", "these strips give nothing back", "a piece of two strips or more, glued bent");
    }
    const double low = (1 - mostTold) / reported.theory();
    const double high = (1 - leastLeft) / reported.theory();
    const double least = reported.off_m(low);
    const double most = reported.off_m(high);
    if (!(off_m > std::min(least, most) && off_m < std::max(least, most))) {
        throw units::InputError("", "let go by any springback the end would not stand so far off",
                                "between " + tapeText(least, plan.display) + (least < 0 ? " closed in" : "") + " and " +
                                    tapeText(most, plan.display) + " open");
    }
    return math::illinois([&](double factor) { return reported.off_m(factor) - off_m; },
                          {low, least - off_m, high, most - off_m}, 100,
                          [](double, double left_m, double) { return std::abs(left_m) < 1e-7; });
}

}  // namespace

std::optional<laminate::SprungHome> springHome(const model::Piece& piece, const Plan& plan,
                                               const std::optional<double>& off_m) {
    if (!plan.form.letsGo || !plan.form.possible) return std::nullopt;
    std::optional<laminate::OpenedBy> opened;
    if (off_m) opened = laminate::OpenedBy{0, factorOfEnd(piece, plan, *off_m)};
    return laminate::sprungHome(piece, plan.line.fair.line, plan.stack, plan.form, opened);
}

std::vector<Message> springHomeTexts(const laminate::SprungHome& home, const Plan& plan) {
    const auto place = [&plan](double at_m) { return put::place(at_m, plan.line.fair.line.length()); };
    const Arg bears = put::share(laminate::shareForGood);
    return {
        {texts::pullMiddle, {put::force(std::abs(home.middlePull_N)), place(home.middleAt_m)}},
        {home.endsPull_N < 0 ? texts::pushEndsApart : texts::pullEndsTogether, {put::force(std::abs(home.endsPull_N))}},
        {texts::neighbourHolds, {put::moment(std::abs(home.moment_N_m)), place(home.momentAt_m)}},
        {texts::stressStays,
         {put::stress(home.stress_Pa), put::count(home.stressPlace), place(home.stressAt_m),
          put::share(home.breakingShare)}},
        {home.bears ? texts::woodBears : texts::woodBearsLess, {bears}},
        texts::sprungCaution};
}

std::vector<Message> springingTexts(const std::optional<laminate::SprungHome>& home, const Plan& plan) {
    if (!plan.form.letsGo) return {texts::nothingComesOff};
    if (!home) return {texts::comesOffOnLine};
    const bool atStart = reportedAtStart(plan.form, plan.line.fair.line.length());
    std::vector<Message> all{{texts::standsAsIf, {endStands(home->off, atStart), put::number(home->factor, 2)}}};
    const std::vector<Message> more = springHomeTexts(*home, plan);
    all.insert(all.end(), more.begin(), more.end());
    return all;
}

}  // namespace fayline::plan
