// What many files copy, copied and destroyed in one place: see core/model/boat.hpp.
#include "core/plan/plan.hpp"

namespace fayline::plan {

Finding::Finding() = default;
Finding::Finding(const Finding& other) = default;
Finding::Finding(Finding&& other) noexcept = default;
Finding& Finding::operator=(const Finding& other) = default;
Finding& Finding::operator=(Finding&& other) noexcept = default;
Finding::~Finding() = default;

LinePlan::LinePlan() = default;
LinePlan::LinePlan(const LinePlan& other) = default;
LinePlan::LinePlan(LinePlan&& other) noexcept = default;
LinePlan& LinePlan::operator=(const LinePlan& other) = default;
LinePlan& LinePlan::operator=(LinePlan&& other) noexcept = default;
LinePlan::~LinePlan() = default;

HoldingPlan::HoldingPlan() = default;
HoldingPlan::HoldingPlan(const HoldingPlan& other) = default;
HoldingPlan::HoldingPlan(HoldingPlan&& other) noexcept = default;
HoldingPlan& HoldingPlan::operator=(const HoldingPlan& other) = default;
HoldingPlan& HoldingPlan::operator=(HoldingPlan&& other) noexcept = default;
HoldingPlan::~HoldingPlan() = default;

HoldingStudy::HoldingStudy() = default;
HoldingStudy::HoldingStudy(const HoldingStudy& other) = default;
HoldingStudy::HoldingStudy(HoldingStudy&& other) noexcept = default;
HoldingStudy& HoldingStudy::operator=(const HoldingStudy& other) = default;
HoldingStudy& HoldingStudy::operator=(HoldingStudy&& other) noexcept = default;
HoldingStudy::~HoldingStudy() = default;

Plan::Plan() = default;
Plan::Plan(const Plan& other) = default;
Plan::Plan(Plan&& other) noexcept = default;
Plan& Plan::operator=(const Plan& other) = default;
Plan& Plan::operator=(Plan&& other) noexcept = default;
Plan::~Plan() = default;

Shop::Shop() = default;
Shop::Shop(const Shop& other) = default;
Shop::Shop(Shop&& other) noexcept = default;
Shop& Shop::operator=(const Shop& other) = default;
Shop& Shop::operator=(Shop&& other) noexcept = default;
Shop::~Shop() = default;

}  // namespace fayline::plan
