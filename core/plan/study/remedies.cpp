#include "core/plan/study/remedies.hpp"

#include <algorithm>

#include "core/plan/findings/day_texts.hpp"
#include "core/plan/shop.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

namespace {

constexpr int daysEach = 2000;
constexpr double coolerBy_K = 5;

int stripsOf(const model::Stack& stack) {
    int count = 0;
    for (const model::Strips& strips : stack.strips) count += strips.count;
    return count;
}

class Trials {
public:
    Trials(const model::Piece& piece, const Shop& shop, const line::Line& line, const DayPlan& day,
           const std::atomic<bool>& stop)
        : piece_(piece),
          shop_(shop),
          line_(line),
          day_(day),
          uncertain_(uncertainOf(piece.crew, paceOf(piece, shop, day))),
          stop_(stop) {}

    // The day of a try; nothing where no plan can be made of it.
    std::optional<DayPlan> dayOf(const model::Piece& piece) const {
        try {
            const laminate::StackPlan stack =
                laminate::planStack(piece.stack, piece.line.describes, piece.line.stripsOn, line_, shop_.species);
            if (stack.spares < 0) return std::nullopt;
            return planDay(piece, shop_, line_, stack, &day_.glue);
        } catch (const units::InputError&) {
            return std::nullopt;
        }
    }

    // The remedy with what it gives; nothing where no plan can be made with it.
    std::optional<Remedy> tried(Remedy remedy) const {
        const std::optional<DayPlan> day = dayOf(withRemedy(piece_, remedy));
        if (!day) return std::nullopt;
        const GluingDay& worst = day->gluings[day->worstGluing];
        const auto days = schedule::simulateDays(worst.job, uncertain_, daysEach, daysSeed, stop_);
        if (!days) return std::nullopt;
        remedy.margin_s = day->margin_s;
        remedy.cupMargin_s = day->cupMargin_s;
        remedy.chanceInTime = days->chanceInTime;
        if (remedy.kind == RemedyKind::plannedBreak) remedy.asks = breakAsks(*day, remedy.breakAfterStrip);
        return remedy;
    }

    std::vector<Remedy> all() const {
        std::vector<Remedy> remedies{of(RemedyKind::moreHands, texts::moreHands)};
        addSlowerGlues(remedies);
        addCooler(remedies);
        if (piece_.glue.vessel == model::Vessel::cup) {
            remedies.push_back(of(RemedyKind::trays, texts::trays));
        }
        addBreak(remedies);
        addThicker(remedies);
        return remedies;
    }

private:
    static Remedy of(RemedyKind kind, const Message& what, std::vector<Message> asks = {}) {
        Remedy remedy;
        remedy.kind = kind;
        remedy.what = remedy.brief = what;
        remedy.asks = std::move(asks);
        return remedy;
    }

    void addSlowerGlues(std::vector<Remedy>& remedies) const {
        const glue::Adhesive* now = glue::findAdhesive(shop_.adhesives, piece_.glue.adhesive);
        if (!now) return;
        for (const glue::Adhesive& other : shop_.adhesives) {
            const bool slower = other.kind == now->kind && other.mix == now->mix && other.openTime_s > now->openTime_s;
            if (!slower || other.least_C > piece_.glue.air_C) continue;
            remedies.push_back(of(RemedyKind::slowerGlue, {texts::slowerGlue, {other.name}}, {texts::slowerGlueAsks}));
            remedies.back().adhesive = other.id;
            remedies.back().brief = other.name;
        }
    }

    void addCooler(std::vector<Remedy>& remedies) const {
        const glue::Adhesive* now = glue::findAdhesive(shop_.adhesives, piece_.glue.adhesive);
        const double air_C = piece_.glue.air_C - coolerBy_K;
        if (!now || air_C < now->least_C) return;
        remedies.push_back(
            of(RemedyKind::coolerAir, {texts::coolMorning, {put::temperature(air_C)}}, {texts::coolMorningAsks}));
    }

    // The break that leaves the most time in the worse of both gluings.
    void addBreak(std::vector<Remedy>& remedies) const {
        if (!piece_.stack.gluings.empty()) return;
        std::optional<Remedy> best;
        for (int after = 1; after < stripsOf(piece_.stack) && !stop_; ++after) {
            Remedy one = of(RemedyKind::plannedBreak, {texts::plannedBreak, {}, after});
            one.breakAfterStrip = after;
            one.brief = {texts::breakAfter, {put::count(after)}};
            const std::optional<DayPlan> day = dayOf(withRemedy(piece_, one));
            if (!day) continue;
            one.margin_s = day->margin_s;
            if (!best || one.margin_s > best->margin_s) best = one;
        }
        if (best) remedies.push_back(*best);
    }

    std::vector<Message> breakAsks(const DayPlan& day, int afterStrip) const {
        const schedule::Job& rest = day.gluings.back().job;
        return {{texts::breakFirst, {put::count(afterStrip)}},
                {texts::breakThen,
                 {put::duration(rest.wipe_s), put::duration(rest.sand_s)},
                 stripsOf(piece_.stack) - afterStrip},
                texts::secondSheet};
    }

    void addThicker(std::vector<Remedy>& remedies) const {
        const model::Piece piece = withRemedy(piece_, of(RemedyKind::fewerStrips, {}));
        for (std::size_t i = 0; i < piece.stack.strips.size(); ++i) {
            if (piece.stack.strips[i].count == piece_.stack.strips[i].count) continue;
            remedies.push_back(of(RemedyKind::fewerStrips,
                                  {texts::fewerStrips, {put::thickness(piece.stack.strips[i].thickness_m)}},
                                  {texts::fewerStripsAsk}));
        }
    }

    const model::Piece& piece_;
    const Shop& shop_;
    const line::Line& line_;
    const DayPlan& day_;
    schedule::Uncertain uncertain_;
    const std::atomic<bool>& stop_;
};

// One strip fewer of the group with the most, the others thicker by as much.
void makeFewer(model::Stack& stack) {
    const auto most = std::ranges::max_element(stack.strips, [](const auto& a, const auto& b) {
        return (a.sacrificial ? 0 : a.count) < (b.sacrificial ? 0 : b.count);
    });
    if (most == stack.strips.end() || most->sacrificial || most->count < 3) return;
    const double thicker = static_cast<double>(most->count) / (most->count - 1);
    --most->count;
    most->thickness_m *= thicker;
    if (most->tapersTo_m) *most->tapersTo_m *= thicker;
}

}  // namespace

model::Piece withRemedy(const model::Piece& piece, const Remedy& remedy) {
    model::Piece after = piece;
    switch (remedy.kind) {
        case RemedyKind::moreHands:
            ++after.crew.hands;
            break;
        case RemedyKind::slowerGlue:
            after.glue.adhesive = remedy.adhesive;
            break;
        case RemedyKind::coolerAir:
            after.glue.air_C -= coolerBy_K;
            break;
        case RemedyKind::trays:
            after.glue.vessel = model::Vessel::tray;
            break;
        case RemedyKind::plannedBreak:
            after.stack.gluings = {remedy.breakAfterStrip};
            break;
        case RemedyKind::fewerStrips:
            makeFewer(after.stack);
            break;
    }
    return after;
}

std::optional<std::vector<Remedy>> remediesFor(const model::Piece& piece, const Shop& shop, const line::Line& line,
                                               const DayPlan& day, const std::atomic<bool>& stop) {
    const Trials trials(piece, shop, line, day, stop);
    std::vector<Remedy> remedies;
    for (const Remedy& one : trials.all()) {
        const std::optional<Remedy> remedy = trials.tried(one);
        if (stop) return std::nullopt;
        if (remedy && (remedy->margin_s > day.margin_s || remedy->cupMargin_s > day.cupMargin_s))
            remedies.push_back(*remedy);
    }
    std::ranges::stable_sort(remedies, std::greater{}, &Remedy::margin_s);
    return remedies;
}

std::optional<DayStudy> studyDay(const model::Piece& piece, const Shop& shop, const line::Line& line,
                                 const DayPlan& day, const std::atomic<bool>& stop) {
    const GluingDay& worst = day.gluings[day.worstGluing];
    const Pace pace = paceOf(piece, shop, day);
    const auto days = schedule::simulateDays(worst.job, uncertainOf(piece.crew, pace), daysSimulated, daysSeed, stop);
    if (!days) return std::nullopt;
    DayStudy study{*days, pace.middle, pace.scatter, pace.days, {}, {}};
    for (const model::Vessel vessel : {model::Vessel::cup, model::Vessel::tray}) {
        study.potLives.push_back(
            glue::potLifeByMass(day.glue.fitted, day.glue.adhesive, vessel, piece.glue.cup_m3, piece.glue.air_C));
        if (stop) return std::nullopt;
    }
    const bool isShort = day.margin_s < shortMargin * worst.job.openTime_s || day.cupMargin_s < 0;
    if (isShort || days->chanceInTime < shortChance || days->chanceCups < shortChance) {
        std::optional<std::vector<Remedy>> remedies = remediesFor(piece, shop, line, day, stop);
        if (!remedies) return std::nullopt;
        study.remedies = std::move(*remedies);
    }
    return study;
}

}  // namespace fayline::plan
