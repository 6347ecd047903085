#include "core/plan/plan.hpp"

#include <cmath>
#include <limits>

#include "core/laminate/springback/form_ground.hpp"
#include "core/model/validate.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/roots.hpp"
#include "core/plan/not_pressed.hpp"
#include "core/plan/parts.hpp"
#include "core/plan/shop.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

Plan::Plan() = default;
Plan::Plan(const Plan& other) = default;
Plan::Plan(Plan&& other) noexcept = default;
Plan& Plan::operator=(const Plan& other) = default;
Plan& Plan::operator=(Plan&& other) noexcept = default;
Plan::~Plan() = default;

namespace {

constexpr double sampleStep_m = 0.01;

// Means nothing once `stop` is set.
LinePlan planLine(const model::LineInput& input, const units::Display& display, const std::atomic<bool>& stop) {
    LinePlan plan{.of = input, .fair = line::fair(fairInputOf(input), stop)};
    // What hinders a line is told at once, not when the studies come to it.
    if (stop || (!plan.fair.settled && !seekMisread(plan, display, stop))) return plan;
    requireLine(plan, display, stop);
    if (stop) return plan;
    plan.tightest = plan.fair.line.tightest();
    plan.samples = line::sample(plan.fair.line, sampleStep_m);
    for (const line::Place& place : plan.samples) {
        plan.curvatureSd_per_m.push_back(line::curvatureSd(plan.fair, place.at_m));
    }
    const double curvature = std::abs(plan.tightest.curvature_per_m);
    const double off = line::nineteenOfTwenty * line::curvatureSd(plan.fair, plan.tightest.at_m);
    plan.radiusFrom_m = 1 / (curvature + off);
    plan.radiusTo_m = off < curvature ? 1 / (curvature - off) : std::numeric_limits<double>::infinity();
    return plan;
}

// Whether an earlier plan is of this piece, and changed by so little that its contact is a good beginning.
bool nearlyOf(const model::Piece& piece, const line::Line& line, const Plan* before) {
    constexpr double nearly = 0.02;
    return before && before->id == piece.id &&
           std::abs(before->line.fair.line.length() - line.length()) < nearly * line.length();
}

// Whether an earlier plan has the very line, and the words in which slips of writing are told.
bool sameLine(const model::Piece& piece, const Shop& shop, const Plan* before) {
    return before && before->line.of == piece.line && before->display.lengths == shop.display.lengths;
}

}  // namespace

line::FairInput fairInputOf(const model::LineInput& input) {
    line::FairInput fair;
    for (const model::Point& point : input.points) {
        fair.points.push_back({point.x_m, point.y_m, point.mustPass, point.read});
    }
    fair.readTo_m = input.readTo_m;
    fair.fairWithin_m = input.fairWithin_m;
    fair.startHeading_rad = input.startHeading_rad;
    fair.endHeading_rad = input.endHeading_rad;
    // Away from the strips: to the right where they lie on the left.
    fair.takeOff_m = -laminate::sideSign(input.stripsOn) * input.takeOff_m;
    return fair;
}

bool seekMisread(LinePlan& plan, const units::Display& display, const std::atomic<bool>& stop) {
    std::vector<std::array<std::string, 2>> written;
    std::vector<std::string> labels;
    for (const model::Point& point : plan.of.points) {
        written.push_back(point.written);
        labels.push_back(point.label);
    }
    std::optional<line::Misread> found =
        line::findMisread(fairInputOf(plan.of), plan.fair, written, labels, display.lengths, stop);
    if (!found) return false;
    plan.misread = std::move(*found);
    plan.misreadSought = true;
    return true;
}

std::vector<Finding> allFindings(const model::Piece& piece, const Shop& shop, const Plan& plan) {
    std::vector<Finding> all;
    const auto add = [&all](const std::vector<Finding>& some) { all.insert(all.end(), some.begin(), some.end()); };
    add(lineFindings(piece, plan.line));
    add(stackFindings(piece, shop, plan.line, plan.stack));
    add(woodFindings(piece, shop, plan.stack));
    add(ruleFindings(piece, plan.line, plan.stack));
    add(inPlaceFindings(piece, plan.line, plan.form));
    add(formFindings(piece, shop, plan));
    add(learnedFindings(plan));
    add(holdingFindings(piece, shop, plan));
    add(glueFindings(piece, plan));
    add(dayFindings(plan));
    return all;
}

Shop shopOf(const model::Boat& boat) {
    Shop shop;
    shop.display = boat.display;
    for (const model::OwnSpecies& own : boat.species) shop.species.push_back(wood::ownSpecies(own));
    for (const wood::Species& builtIn : wood::builtInSpecies()) shop.species.push_back(builtIn);
    for (const model::OwnAdhesive& own : boat.adhesives) shop.adhesives.push_back(glue::ownAdhesive(own));
    for (const glue::Adhesive& builtIn : glue::builtInAdhesives()) shop.adhesives.push_back(builtIn);
    for (const model::Piece& piece : boat.pieces) {
        if (springbackRead(piece)) shop.recorded.push_back(piece);
        if (!boat.boards.empty() && piece.stock.boards.empty()) shop.sharing.push_back(piece);
    }
    for (const model::Board& board : boat.boards) shop.boards.push_back(board);
    shop.measured = wood::woodsMeasured(boat.trials, shop.species);
    return shop;
}

Plan makePlan(const model::Piece& piece, const Shop& shop, const Plan* before) {
    const std::atomic<bool> goOn{false};
    return *makePlan(piece, shop, before, goOn);
}

std::optional<Plan> makePlan(const model::Piece& piece, const Shop& shop, const Plan* before,
                             const std::atomic<bool>& stop) {
    if (stop) return std::nullopt;
    model::validate(piece);
    Plan plan;
    plan.id = piece.id;
    plan.piece = piece.name;
    plan.display = shop.display;
    plan.line = sameLine(piece, shop, before) ? before->line : planLine(piece.line, shop.display, stop);
    if (stop) return std::nullopt;
    const line::Line& line = plan.line.fair.line;
    plan.stack = laminate::planStack(piece.stack, piece.line.describes, piece.line.stripsOn, line, shop.species,
                                     laminate::heldFirstAt(piece.holding.from, line.length()));
    if (stop) return std::nullopt;
    plan.form = laminate::planForm(piece, line, shop.species, plan.stack);
    if (stop) return std::nullopt;
    plan.holding = planHolding(piece, shop, plan, nearlyOf(piece, line, before) ? &before->holding : nullptr, stop);
    if (stop) return std::nullopt;
    plan.day = planDay(piece, shop, line, plan.stack, before ? &before->day.glue : nullptr);
    if (stop) return std::nullopt;
    std::vector<Finding> findings = allFindings(piece, shop, plan);
    hangFindings(findings, {});
    plan.findings = std::move(findings);
    plan.answers = answersOf(piece, shop, plan);
    return plan;
}

}  // namespace fayline::plan
