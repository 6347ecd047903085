#include "core/line/fit.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/line/balance.hpp"
#include "core/line/fit_start.hpp"
#include "core/line/movable_spline.hpp"
#include "core/math/banded_least_squares.hpp"
#include "core/math/quadrature.hpp"

namespace fayline::line {

namespace {

// Weight of a point that must be passed and of a heading, against 1 for a point that was read: what such a weight
// leaves is a millionth of what a read point would be missed by.
constexpr double mustPassWeight = 1e6;
constexpr double headingWeight = 1e6;

// Smoothing, times the number of points, at which the softest bend is held a hundred times stiffer by the curvature's
// rate than by the misses: the line then is a circle, and more only adds rounding.
constexpr double circleSmoothing = 0.2;

// Rounds. Of 5000 random fair lines, free or under conditions of every kind, 4996 settled within 23 rounds, and at most
// 3 rounds of each were restless, that is, changed the curvature by more than a hundredth of the greatest: a line that
// goes on so has points that no fair line goes through. The other four went to and fro by less and had not settled
// within 100 rounds either.
constexpr int mostRounds = 30;
constexpr double restless = 0.01;
constexpr int mostRestless = 12;
constexpr int evenRounds = 2;               // in which the parameter is made arc length in any case
constexpr double mostSpeedVariation = 0.3;  // of |dr/dt|, before it is made so again
constexpr int mostEvenings = 6;
constexpr double footReach = 0.01;         // of the parameter, in one step toward a foot
constexpr double mostChange_log = 10;      // of the smoothing, in one round that changes the line little
constexpr double carefulChange_log = 1.5;  // and in one that changes it much
constexpr double littleChange = 0.1;       // of the greatest curvature
constexpr double mostTurn_rad = 0.3;       // of the line anywhere, in one round
constexpr double quickRounds = 0.3;        // moves that shrink to this or less from round to round are left alone
constexpr int weighingRounds = 6;  // in which points with one grid value are weighed anew by the way of the line
constexpr int firstRelaxed = 5;    // round; those before still choose the smoothing
constexpr double leastShare = 1.0 / 1024;  // of a round's move

// Settled: no curvature changes by more between rounds, as a share of the greatest. Many knots leave more rounding, by
// the square of their number.
constexpr double settledCurvature = 1e-9;
constexpr double roundingOfCurvature = 4e-15;

class Fit {
public:
    Fit(const FitInput& input, const std::atomic<bool>& stop)
        : input_(input),
          stop_(stop),
          points_(static_cast<int>(input.points.size())),
          aims_(aimedAt(input)),
          parameters_(chordParameters(aims_)),
          spline_(breaksFor(parameters_)),
          misses_(points_, 0),
          weights_(points_, 1) {
        balanceAims_ = {input.scatter, input.mostMiss, input.throughMiss, std::log(circleSmoothing * points_)};
    }

    FitResult run();

private:
    void startShape();
    void look();
    void lookAtEnergy();
    void lookAtPoints();
    void lookAtHeading(std::optional<double> heading_rad, double t);
    void choose(int round, bool careful);
    bool moveOn(int round);
    void goBack();
    Condition curvatureBy(const QuinticInterval& interval, double t) const;
    void spread(FitResult& result);
    bool improved();
    void relax(const std::vector<double>& moves, int round);
    void putShare(double share);
    double turnSinceBefore() const;
    std::pair<double, double> changeOfCurvature() const;

    const FitInput& input_;
    const std::atomic<bool>& stop_;
    int points_;
    std::vector<Vector> aims_;
    std::vector<double> parameters_;  // of the points' feet
    MovableSpline spline_;
    std::vector<double> misses_;
    std::vector<double> weights_;  // of the points' squared misses
    bool weighing_ = true;
    BalanceAims balanceAims_;
    Balance balance_;
    std::vector<double> curvature_;     // at the Gauss points
    double startGap_ = 0, endGap_ = 0;  // how far along the line the end points lie from its ends
    double length_ = 0;                 // of the spline
    double energy_ = 0, squares_ = 0;   // integral of the squared rate of curvature; weighed squares of the misses
    double headingMiss_rad_ = 0;
    std::array<double, 2> greatestRate_{};  // of curvature by arc length, in either half of the line
    double smoothing_log_ = 0;
    bool chosen_ = false;  // the smoothing is the one that was wanted, sought exactly

    // The round before.
    std::vector<double> xBefore_, yBefore_, xAfter_, yAfter_, parametersBefore_, curvatureBefore_;
    double meritBefore_ = 0;
    std::vector<double> movesBefore_;
    double share_ = 1, taken_ = 1, relaxation_ = 1;  // of the moves: now, in the round before, and what to begin with
};

// Smoothing splines of x and y by the parameter, the parameter then made arc length, a few times over.
void Fit::startShape() {
    const double spacing = 2.0 / std::min(points_ - 1, 20);
    const double smoothing = 1e-3 * std::pow(spacing, 5) * points_ / 20;
    smoothing_log_ = std::log(smoothing);
    math::BandedLeastSquares<6, 2> triangle;
    for (int pass = 0; pass == 0 || (pass < 3 && !stop_); ++pass) {
        triangle.clear(spline_.controls());
        int next = 0;
        for (std::size_t i = 0; i < spline_.intervals().size(); ++i) {
            const QuinticInterval& interval = spline_.intervals()[i];
            for (int g = 0; g < 3; ++g) {
                const double root = std::sqrt(smoothing * math::gauss3Weight[g] * interval.width);
                math::BandedLeastSquares<6, 2>::Row row{};
                for (int a = 0; a < 6; ++a) row[a] = root * spline_.gauss()[3 * i + g].third[a];
                triangle.add(interval.first, row);
            }
            const bool last = i + 1 == spline_.intervals().size();
            for (; next < points_ && (last || parameters_[next] < interval.start + interval.width); ++next) {
                const auto value = valuesAt(interval, parameters_[next]).value;
                math::BandedLeastSquares<6, 2>::Row row{};
                std::copy(value.begin(), value.end(), row.begin());
                row[6] = aims_[next].x;
                row[7] = aims_[next].y;
                triangle.add(interval.first, row);
            }
        }
        triangle.solve(0, spline_.x);
        triangle.solve(1, spline_.y);
        spline_.evenOut(parameters_);
    }
}

// Rate of curvature at every Gauss point, weighed so that the sum of squares is its integral over arc length, and how
// it changes with the control points' moves.
void Fit::lookAtEnergy() {
    const auto& gauss = spline_.gauss();
    balance_.energy.clear(spline_.controls());
    curvature_.resize(gauss.size());
    energy_ = 0;
    length_ = 0;
    greatestRate_.fill(0);
    for (std::size_t g = 0; g < gauss.size(); ++g) {
        const QuinticInterval& interval = spline_.intervals()[g / 3];
        const QuinticValues& basis = gauss[g];
        const Vector r1 = spline_.sum(basis.first, interval.first);
        const Vector r2 = spline_.sum(basis.second, interval.first);
        const Vector r3 = spline_.sum(basis.third, interval.first);
        // f = dk/ds sqrt(|r1|) = (r1 x r3) |r1|^-7/2 - 3 (r1 x r2) (r1 . r2) |r1|^-11/2, and its derivatives by r1, r2,
        // r3.
        const double speed2 = dot(r1, r1), speed = std::sqrt(speed2);
        const double c13 = cross(r1, r3), c12 = cross(r1, r2), d12 = dot(r1, r2);
        const double p7 = 1 / (speed2 * speed * std::sqrt(speed)), p11 = p7 / speed2;
        const double root = std::sqrt(math::gauss3Weight[g % 3] * interval.width);
        const double rate = c13 * p7 - 3 * c12 * d12 * p11;  // times sqrt(|r1|)
        const double f = root * rate;
        double& greatest = greatestRate_[2 * g < gauss.size() ? 0 : 1];
        greatest = std::max(greatest, std::abs(rate) / std::sqrt(speed));
        curvature_[g] = c12 / (speed2 * speed);
        energy_ += f * f;
        length_ += math::gauss3Weight[g % 3] * interval.width * speed;
        const double bySpeed = (-3.5 * c13 * p7 + 16.5 * c12 * d12 * p11) / speed2;
        const Vector f1 =
            Vector{p7 * r3.y, -p7 * r3.x} - (3 * p11) * (d12 * Vector{r2.y, -r2.x} + c12 * r2) + bySpeed * r1;
        const Vector f2 = (-3 * p11) * (d12 * leftOf(r1) + c12 * r1);
        const Vector f3 = p7 * leftOf(r1);
        Balance::Triangle::Row row;
        for (int a = 0; a < 6; ++a) {
            const Vector n = spline_.normal(interval.first + a);
            row[a] = root * (basis.first[a] * dot(f1, n) + basis.second[a] * dot(f2, n) + basis.third[a] * dot(f3, n));
        }
        row[6] = -f;
        balance_.energy.add(interval.first, row);
    }
}

// Feet and misses of the points, and how the misses change with the moves. The foot's own shift changes the miss only
// by the second order.
void Fit::lookAtPoints() {
    const auto& intervals = spline_.intervals();
    balance_.conditions.clear();
    squares_ = 0;
    for (int i = 0; i < points_; ++i) {
        const Vector point{input_.points[i].x, input_.points[i].y};
        const bool end = i == 0 || i + 1 == points_;
        double t = end ? (i == 0 ? 0.0 : 1.0) : parameters_[i];
        Vector r, r1;
        QuinticValues basis;
        int first = 0;
        for (int step = 0; step < 8; ++step) {
            const QuinticInterval& interval = intervals[intervalAt(intervals, t)];
            basis = valuesAt(interval, t);
            first = interval.first;
            r = spline_.sum(basis.value, first);
            r1 = spline_.sum(basis.first, first);
            if (end) break;
            const Vector away = point - r;
            const double speed2 = dot(r1, r1);
            const double slope = std::max(0.2 * speed2, speed2 - dot(away, spline_.sum(basis.second, first)));
            const double by = std::clamp(dot(away, r1) / slope, -footReach, footReach);
            if (std::abs(by) < 1e-15) break;
            t = std::clamp(t + by, 0.0, 1.0);
        }
        parameters_[i] = t;
        const Vector along = unit(r1), left = leftOf(along), away = point - r;
        if (i == 0) startGap_ = dot(away, along);
        if (i + 1 == points_) endGap_ = dot(away, along);
        misses_[i] = dot(away, left) + input_.takeOff;
        const bool mustPass = input_.points[i].mustPass;
        if (weighing_) {
            const double share = scatterShare(input_.points[i].read, along.x, along.y);
            weights_[i] = mustPass ? mustPassWeight : 1 / (share * share);
        }
        Condition condition{first, {}, misses_[i], weights_[i], !mustPass};
        for (int a = 0; a < 6; ++a) condition.entry[a] = basis.value[a] * dot(spline_.normal(first + a), left);
        squares_ += condition.weight * condition.value * condition.value;
        balance_.conditions.push_back(condition);
    }
}

void Fit::lookAtHeading(std::optional<double> heading_rad, double t) {
    if (!heading_rad) return;
    const auto& intervals = spline_.intervals();
    const QuinticInterval& interval = intervals[intervalAt(intervals, t)];
    const auto basis = valuesAt(interval, t);
    const Vector r1 = spline_.sum(basis.first, interval.first);
    const Vector wanted{std::cos(*heading_rad), std::sin(*heading_rad)};
    // The end is about to slide along the line to the foot of its point and turns as the line does.
    const double speed = norm(r1);
    const double slide =
        (t == 0 ? startGap_ : endGap_) * cross(r1, spline_.sum(basis.second, interval.first)) / (speed * speed * speed);
    const double off = std::atan2(cross(r1, wanted), dot(r1, wanted)) - slide;
    Condition condition{interval.first, {}, off, headingWeight, false};
    for (int a = 0; a < 6; ++a) {
        condition.entry[a] = basis.first[a] * cross(r1, spline_.normal(interval.first + a)) / dot(r1, r1);
    }
    headingMiss_rad_ = std::max(headingMiss_rad_, std::abs(condition.value));
    squares_ += condition.weight * condition.value * condition.value;
    balance_.conditions.push_back(condition);
}

void Fit::look() {
    spline_.face();
    lookAtEnergy();
    lookAtPoints();
    headingMiss_rad_ = 0;
    lookAtHeading(input_.startHeading_rad, 0);
    lookAtHeading(input_.endHeading_rad, 1);
    balance_.ready();
}

// Whether the round's move made the whole better; if not, a smaller share of it has been put in its place.
bool Fit::improved() {
    const double merit = std::exp(smoothing_log_) * energy_ + squares_;
    if (merit <= meritBefore_ * (1 + 1e-6) || share_ <= leastShare) return true;
    putShare(share_ / 4);
    return false;
}

// How much of the moves to take, from how they followed on those before (Aitken; Irons & Tuck 1969, from memory):
// rounds that overshoot are held back, rounds that creep are lengthened.
void Fit::relax(const std::vector<double>& moves, int round) {
    double now = 0, before = 0, product = 0, difference = 0;
    if (movesBefore_.size() == moves.size()) {
        for (std::size_t j = 0; j < moves.size(); ++j) {
            const double change = moves[j] - movesBefore_[j];
            now += moves[j] * moves[j];
            before += movesBefore_[j] * movesBefore_[j];
            product += movesBefore_[j] * change;
            difference += change * change;
        }
    }
    const bool quick = now <= quickRounds * quickRounds * before || difference <= 0;
    if (!quick && round >= firstRelaxed) relaxation_ = std::clamp(-taken_ * product / difference, 0.05, 1.5);
    movesBefore_ = moves;
}

void Fit::putShare(double share) {
    share_ = share;
    for (int j = 0; j < spline_.controls(); ++j) {
        spline_.x[j] = xBefore_[j] + share_ * (xAfter_[j] - xBefore_[j]);
        spline_.y[j] = yBefore_[j] + share_ * (yAfter_[j] - yBefore_[j]);
    }
    parameters_ = parametersBefore_;
}

// The greatest change of heading by the whole of the round's move.
double Fit::turnSinceBefore() const {
    double most = 0;
    for (std::size_t g = 0; g < spline_.gauss().size(); ++g) {
        const auto& basis = spline_.gauss()[g].first;
        const int first = spline_.intervals()[g / 3].first;
        const Vector after = spline_.sum(basis, first);
        Vector before;
        for (int a = 0; a < 6; ++a) {
            before.x += basis[a] * xBefore_[first + a];
            before.y += basis[a] * yBefore_[first + a];
        }
        // The move over the speed before, so that a move too large to be an angle still counts as large.
        most = std::max(most, std::abs(cross(before, after)) / dot(before, before));
    }
    return most;
}

// Since the round before: the greatest change, and the greatest curvature there was.
std::pair<double, double> Fit::changeOfCurvature() const {
    double change = 0, most = 0;
    for (std::size_t g = 0; g < curvature_.size(); ++g) {
        change = std::max(change, std::abs(curvature_[g] - curvatureBefore_[g]));
        most = std::max(most, std::abs(curvature_[g]));
    }
    return {change, most};
}

// The smoothing of the next move, sought the more exactly the further the rounds have come.
void Fit::choose(int round, bool careful) {
    const bool exact = round > 1 && !careful;
    const double precision = round == 0 ? 0.3 : exact ? 1e-10 : 0.01;
    const double reach_log = careful ? carefulChange_log : mostChange_log;
    const double before_log = smoothing_log_;
    smoothing_log_ = balance_.chooseSmoothing(balanceAims_, before_log, reach_log, precision, stop_);
    chosen_ = exact && std::abs(smoothing_log_ - before_log) < reach_log;
}

// False: the conditions do not determine the moves.
bool Fit::moveOn(int round) {
    const std::vector<double>& moves = balance_.movesAt(smoothing_log_);
    if (!std::ranges::all_of(moves, [](double move) { return std::isfinite(move); })) return false;
    meritBefore_ = std::exp(smoothing_log_) * energy_ + squares_;
    xBefore_ = spline_.x;
    yBefore_ = spline_.y;
    parametersBefore_ = parameters_;
    curvatureBefore_ = curvature_;
    taken_ = share_;
    share_ = 1;
    spline_.move(moves, 1, startGap_, endGap_);
    xAfter_ = spline_.x;
    yAfter_ = spline_.y;
    relax(moves, round);
    const double turn = turnSinceBefore();
    const double share = std::min(relaxation_, mostTurn_rad / std::max(turn, 1e-300));
    if (share != 1) putShare(share);
    return true;
}

// To the shape of the round before.
void Fit::goBack() {
    spline_.x = xBefore_;
    spline_.y = yBefore_;
    parameters_ = parametersBefore_;
    look();
}

// How the curvature at one place hangs on the moves.
Condition Fit::curvatureBy(const QuinticInterval& interval, double t) const {
    const QuinticValues basis = valuesAt(interval, t);
    const Vector r1 = spline_.sum(basis.first, interval.first);
    const Vector r2 = spline_.sum(basis.second, interval.first);
    const double speed2 = dot(r1, r1), speed3 = speed2 * std::sqrt(speed2), c12 = cross(r1, r2);
    Condition curvature{interval.first, {}, c12 / speed3};
    for (int a = 0; a < 6; ++a) {
        const Vector n = spline_.normal(interval.first + a);
        const double byFirst = cross(n, r2) - 3 * c12 * dot(r1, n) / speed2;
        curvature.entry[a] = (basis.first[a] * byFirst + basis.second[a] * cross(r1, n)) / speed3;
    }
    return curvature;
}

// Three things put the curvature off, and their squares add up; fair.cpp tells why.
void Fit::spread(FitResult& result) {
    if (stop_) return;
    balance_.movesAt(smoothing_log_);
    const auto& intervals = spline_.intervals();
    const auto sumOf = [](const Condition& what, const std::vector<double>& moves) {
        double sum = 0;
        for (int a = 0; a < 6; ++a) sum += what.entry[a] * moves[what.first + a];
        return sum;
    };
    // A line that ends with a rate of curvature r instead of 0 is what a pull of smoothing * r on its end's curvature
    // makes of it.
    std::array<std::vector<double>, 2> byEnd;
    for (const int end : {0, 1}) {
        const Condition at = curvatureBy(end == 0 ? intervals.front() : intervals.back(), end);
        byEnd[end] = balance_.answerTo(at.first, at.entry);
        for (double& move : byEnd[end]) move *= std::exp(smoothing_log_) * greatestRate_[end];
    }
    const auto add = [&](const QuinticInterval& interval, double t) {
        if (stop_) return;
        const Condition curvature = curvatureBy(interval, t);
        const Balance::Moved moved = balance_.movedByReadings(balance_.answerTo(curvature.first, curvature.entry));
        // What the misses would still change holds the readings' own scatter as well, at most once.
        double variance = std::max(input_.scatter * input_.scatter * moved.variance, moved.again * moved.again);
        for (const std::vector<double>& end : byEnd) variance += std::pow(sumOf(curvature, end), 2);
        result.spreadAt.push_back(t);
        result.curvatureSpread.push_back(std::sqrt(variance));
    };
    // Of many points only so many places: each costs time in proportion to their number.
    constexpr std::size_t mostPlaces = 200;
    const std::size_t stride = 1 + intervals.size() / mostPlaces;
    for (std::size_t i = 0; i < intervals.size(); i += stride) add(intervals[i], intervals[i].start);
    add(intervals.back(), 1);
}

FitResult Fit::run() {
    startShape();
    FitResult result;
    int evenings = 0;
    int restlessRounds = 0;
    const double intervals = static_cast<double>(spline_.intervals().size());
    for (int round = 0; round < mostRounds; ++round) {
        result.rounds = round;
        if (stop_) {
            result.end = FitEnd::stopped;
            break;
        }
        weighing_ = round < weighingRounds;
        look();
        if (stop_) continue;
        bool careful = false;
        if (round > 0) {
            if (!std::isfinite(energy_ + squares_)) {
                goBack();
                result.end = FitEnd::undetermined;
                break;
            }
            if (!improved()) continue;
            if (length_ > mostTimesTheWay) {
                result.end = FitEnd::strays;
                break;
            }
            const auto [change, greatest] = changeOfCurvature();
            const double part = std::min(1.0, share_);
            const double rounding = roundingOfCurvature * intervals * intervals * (1 + greatest);
            if (chosen_ && change < part * (settledCurvature * greatest + rounding)) {
                result.end = FitEnd::settled;
                break;
            }
            restlessRounds += change > restless * greatest ? 1 : 0;
            if (restlessRounds > mostRestless) {
                result.end = FitEnd::restless;
                break;
            }
            careful = change > part * littleChange * std::max(greatest, 1.0);
            if (evenings < mostEvenings && (round <= evenRounds || spline_.speedVariation() > mostSpeedVariation)) {
                ++evenings;
                spline_.evenOut(parameters_);
                look();
            }
        }
        choose(round, careful);
        if (stop_ || !moveOn(round)) {
            result.end = stop_ ? FitEnd::stopped : FitEnd::undetermined;
            break;
        }
    }
    spread(result);
    result.knots = closedKnots(spline_.knots());
    result.x = closedControls(spline_.knots(), spline_.x);
    result.y = closedControls(spline_.knots(), spline_.y);
    result.parameters = parameters_;
    result.misses = misses_;
    result.smoothing = std::exp(smoothing_log_);
    result.headingMiss_rad = headingMiss_rad_;
    return result;
}

}  // namespace

FitResult fit(const FitInput& input, const std::atomic<bool>& stop) {
    return Fit(input, stop).run();
}

}  // namespace fayline::line
