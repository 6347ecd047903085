#include "core/plan/springing.hpp"

#include <algorithm>
#include <cmath>

#include "core/math/count.hpp"
#include "core/math/root.hpp"
#include "core/measure/input_error.hpp"
#include "core/plan/form_wording.hpp"
#include "core/plan/wording.hpp"
#include "core/stack/on_form.hpp"

namespace fayline::plan {

namespace {

using measure::writeForce;
using measure::writeMoment;
using measure::writeShare;
using measure::writeStress;

// So little of a section's turn is the least that may be left, and so many times as much the most.
constexpr double leastLeft = 0.05;
constexpr double mostTold = 3;

// By how much the reported end stands off with the factor.
class ReportedEnd {
public:
    ReportedEnd(const boat::Piece& piece, const Plan& plan)
        : lies_(stack::lieOn(piece, plan.line.fair.line, plan.stack, plan.form.line)),
          atStart_(reportedAtStart(plan.form, plan.line.fair.line.length())) {}

    double off_m(double factor) const {
        const stack::Opening opening = stack::openingOf(lies_.ground.ground, lies_.wanted, lies_.letGo(factor));
        return atStart_ ? opening.start_m : opening.end_m;
    }
    double theory() const { return lies_.theory(); }

private:
    stack::OnForm lies_;
    bool atStart_;
};

double factorOfEnd(const boat::Piece& piece, const Plan& plan, double off_m) {
    const ReportedEnd reported(piece, plan);
    if (!(reported.theory() > 0)) {
        throw measure::InputError("", "these strips give nothing back", "a piece of two strips or more, glued bent");
    }
    const double low = (1 - mostTold) / reported.theory();
    const double high = (1 - leastLeft) / reported.theory();
    const double least = reported.off_m(low);
    const double most = reported.off_m(high);
    if (!(off_m > std::min(least, most) && off_m < std::max(least, most))) {
        throw measure::InputError("", "let go by any springback the end would not stand so far off",
                                  "between " + tapeText(least, plan.display) + (least < 0 ? " closed in" : "") +
                                      " and " + tapeText(most, plan.display) + " open");
    }
    return math::illinois([&](double factor) { return reported.off_m(factor) - off_m; },
                          {low, least - off_m, high, most - off_m}, 100,
                          [](double, double left_m, double) { return std::abs(left_m) < 1e-7; });
}

std::string pullsText(const stack::SprungHome& home, const Plan& plan) {
    const double length = plan.line.fair.line.length();
    std::string text =
        " With the ends held, " + writeForce(std::abs(home.middlePull_N), plan.display) + " " +
        placeText(home.middleAt_m, length, plan.display) + ", square to the chord, brings the rise; or " +
        writeForce(std::abs(home.endsPull_N), plan.display) + " along the chord " +
        (home.endsPull_N < 0 ? "pushes the ends apart" : "draws the ends together") + " by what the chord is off.";
    return text +
           " A single pull brings that measure only; to lie on its line everywhere the piece wants a neighbour "
           "that holds it all along, with up to " +
           writeMoment(std::abs(home.moment_N_m), plan.display) + " " +
           placeText(home.momentAt_m, length, plan.display) + ".";
}

}  // namespace

std::optional<stack::SprungHome> springHome(const boat::Piece& piece, const Plan& plan,
                                            const std::optional<double>& off_m) {
    if (!plan.form.letsGo || !plan.form.possible) return std::nullopt;
    std::optional<stack::OpenedBy> opened;
    if (off_m) opened = stack::OpenedBy{0, factorOfEnd(piece, plan, *off_m)};
    return stack::sprungHome(piece, plan.line.fair.line, plan.stack, plan.form, opened);
}

std::string springingText(const std::optional<stack::SprungHome>& home, const Plan& plan) {
    if (!plan.form.letsGo) return "Nothing lets go, so nothing is to be sprung home.";
    if (!home) {
        return "By the plan the piece comes off its form on the wanted line. Type how far it really stands off, and "
               "what it takes to spring it home stands here.";
    }
    const double length = plan.line.fair.line.length();
    const bool atStart = reportedAtStart(plan.form, length);
    std::string text =
        capitalised(openingText(home->off, atStart, home->measured ? "stands" : "will stand", plan.display)) +
        ": as if it gave back " + measure::writeNumber(home->factor, 2) + " times what theory says.";
    text += pullsText(*home, plan);
    text += " For good stays a stress of up to " + writeStress(home->stress_Pa) + ", in " +
            stripText(home->stressPlace, math::countOf(plan.stack.strips)) + " " +
            placeText(home->stressAt_m, length, plan.display) + ", " + writeShare(home->breakingShare) +
            " of what breaks it";
    text += home->bears
                ? "; wood bears about " + writeShare(stack::shareForGood) + " for good."
                : ", more than the " + writeShare(stack::shareForGood) + " that wood bears for good: make it again.";
    return text + " It pulls at its fastenings for good; sprung, it whips when a hold slips: rope it and stand clear.";
}

}  // namespace fayline::plan
