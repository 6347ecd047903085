#include "core/holding/props/prop.hpp"

#include <algorithm>
#include <cmath>

#include "core/model/hold_traits.hpp"

namespace fayline::holding {

namespace {

using units::Mark;

constexpr double stopTrusted_rad = 60 * std::numbers::pi / 180;  // its thrust is then twice the pull (C)
constexpr double rounding_rad = 1e-9;

double pullOf(const std::vector<HeldStation>& held, int index) {
    for (const HeldStation& station : held) {
        if (station.index == index) return station.pull_N;
    }
    return 0;
}

// A caul, or an outermost strip that is to come off or is kept dry outside, keeps glue from the head.
bool headIsDry(const model::Piece& piece) {
    if (piece.holding.cauls.thickness_m > 0) return true;
    const std::vector<model::Strips>& strips = piece.stack.strips;
    return !strips.empty() && (strips.back().sacrificial || strips.back().dryFace);
}

void setFriction(PropPlan& plan, const model::Piece& piece) {
    const bool dry = headIsDry(piece);
    plan.headFriction = dry ? safeFriction : 0;
    plan.footFriction = piece.holding.floor.friction;
    plan.frictionSource =
        dry ? units::Source{"friction cone; 0.1 as the least of published values for dry wood", Mark::derived}
            : units::Source{"a face smeared with wet glue counts as without friction; common practice, no source",
                            Mark::commonPractice};
    plan.footFrictionSource = {"friction cone, with the coefficient of the floor as given", Mark::derived};
}

void setSlips(PropPlan& plan, const model::Strut& strut) {
    const bool head = plan.slant_rad > coneOf(plan.headFriction) + rounding_rad;
    const bool foot = plan.footSlant_rad > coneOf(plan.footFriction) + rounding_rad;
    plan.slips = head ? (foot ? Slips::both : Slips::head) : (foot ? Slips::foot : Slips::no);
    plan.stopsHold = (!head || strut.stoppedAt(model::Stop::head)) && (!foot || strut.stoppedAt(model::Stop::foot));
}

// In the frame of an upright from the ground to the head (`up` -1: overhead, upside down) the prop leans by an angle
// that must lie within the foot's cone about 0 and the head's about the lean of the stack's normal.
std::optional<line::Xy> footHolding(const PropPlan& plan, const PropPlace& place, line::Xy into, double up,
                                    const model::Strut& strut) {
    const auto cone = [&](model::Stop end, double friction) {
        return strut.stoppedAt(end) ? std::max(stopTrusted_rad, coneOf(friction)) : coneOf(friction);
    };
    const double height = up * (plan.head.y_m - place.level_m);
    const double lean = std::atan2(into.x_m, up * into.y_m);
    const double footCone = std::min(cone(model::Stop::foot, plan.footFriction), steepest_rad);
    const double headCone = std::min(cone(model::Stop::head, plan.headFriction), steepest_rad);
    const double least = std::max(-footCone, lean - headCone);
    const double most = std::min(footCone, lean + headCone);
    if (height <= 0 || least > most) return std::nullopt;
    const double from = plan.head.x_m - height * std::tan(most);
    const double to = plan.head.x_m - height * std::tan(least);
    const double low = std::min(from, to);
    const double high = std::max(from, to);
    if (low <= plan.foot.x_m && plan.foot.x_m <= high) return line::Xy{plan.foot.x_m, place.level_m};
    const double within = std::min(footWithin_m, (high - low) / 2);
    return line::Xy{std::clamp(plan.foot.x_m, low + within, high - within), place.level_m};
}

void setColumn(PropPlan& plan, const model::Station& station, const model::Strut& strut) {
    plan.most_N = station.most_N;
    plan.sectionAssumed = !strut.section_m && !model::traitsOf(station.kind).isRated;
    plan.woodenColumn = strut.section_m || plan.sectionAssumed;
    if (!plan.woodenColumn) {
        plan.allowable_N = plan.most_N;
        plan.columnSource = {"rated load of the jack as given; 29 CFR 1926.305(a): never exceeded", Mark::published};
        return;
    }
    plan.section_m = strut.section_m.value_or(propSection_m);
    const double least = std::min(plan.section_m[0], plan.section_m[1]);
    const double other = std::max(plan.section_m[0], plan.section_m[1]);
    const Column column = ndsColumn(plan.length_m, least, other, propEMin_Pa, propAlong_Pa);
    plan.slenderness = column.slenderness;
    plan.tooSlender = column.slenderness > mostSlender;
    plan.allowable_N = column.allowable_N;
    // No bar is so short that it would carry more than this before it is crushed; keeps a bar of no length finite.
    const double shortest_m = least / 100;
    plan.bucklesAt_N =
        eulerLoad(std::max(plan.length_m, shortest_m), propModulus_Pa, other * least * least * least / 12);
    plan.columnSource = {
        "NDS 3.7, sound softwood assumed (E_min 4 000 MPa, F_c* 10 MPa), hinged at both ends; buckling "
        "by Euler (E 11 000 MPa)",
        Mark::fromMemory};
}

}  // namespace

double coneOf(double friction) {
    return std::atan(friction);
}

std::vector<PropPlan> propPlans(const StackOnForm& work, const Held& held) {
    return propPlans(work, held.stations);
}

std::vector<PropPlan> propPlans(const StackOnForm& work, const std::vector<HeldStation>& held) {
    std::vector<PropPlan> plans;
    for (const PropPlace& place : propPlaces(work.piece, work.line, work.piece.holding.stations)) {
        const model::Station& station = work.piece.holding.stations[static_cast<std::size_t>(place.index)];
        const model::Strut& strut = *model::as<model::Strut>(station);
        PropPlan plan{.index = place.index,
                      .number = place.number,
                      .head = place.head,
                      .foot = place.foot,
                      .footAssumed = place.footAssumed,
                      .length_m = place.length_m,
                      .slant_rad = place.slant_rad,
                      .footSlant_rad = place.footSlant_rad,
                      .cannotPress = place.squareShare <= 0,
                      .footAboveHead = place.footAboveHead};
        plan.thrust_N = plan.cannotPress ? 0 : pullOf(held, place.index) / place.squareShare;
        setFriction(plan, work.piece);
        setSlips(plan, strut);
        const double up = strut.to == model::PropTo::floor ? 1 : -1;
        plan.footThatHolds = footHolding(plan, place, {-place.outward.x_m, -place.outward.y_m}, up, strut);
        setColumn(plan, station, strut);
        plans.push_back(plan);
    }
    return plans;
}

}  // namespace fayline::holding
