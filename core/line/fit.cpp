#include "core/line/fit.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace fayline::line {

namespace {

// Gauss-Legendre rule of 3 points on 0..1 (Abramowitz & Stegun, Table 25.4): the third derivative of degree 5 is a
// parabola, of which the square is met exactly.
constexpr std::array<double, 3> gaussAt{0.1127016653792583, 0.5, 0.8872983346207417};
constexpr std::array<double, 3> gaussWeight{5.0 / 18, 8.0 / 18, 5.0 / 18};

// Weight of a point that must be passed and of a heading, against 1 for a point that was read: what such a weight
// leaves is a millionth of what a read point would be missed by.
constexpr double mustPassWeight = 1e6;
constexpr double headingWeight = 1e6;

constexpr int mostRounds = 80;
constexpr double footReach = 0.01;  // of the parameter, in one step toward a foot
constexpr int evenRounds = 2;       // in which the parameter is made arc length
// Settled: no curvature changes by more between rounds, as a share of the greatest. Many knots leave more rounding, by
// the square of their number.
constexpr double settledCurvature = 1e-9;
constexpr double roundingOfCurvature = 4e-15;
// Weight times points at which what is left of the curvature's rate is a thousandth of the misses: the line then is a
// circle. (The softest bend costs about 500 times its square, (4.73)^6 / ... of a bar free at both ends.)
constexpr double circleSmoothing = 0.2;
constexpr double leastLogSmoothing = -60;

struct Vector {
    double x = 0;
    double y = 0;
};

Vector operator+(Vector a, Vector b) {
    return {a.x + b.x, a.y + b.y};
}
Vector operator-(Vector a, Vector b) {
    return {a.x - b.x, a.y - b.y};
}
Vector operator*(double f, Vector a) {
    return {f * a.x, f * a.y};
}
double dot(Vector a, Vector b) {
    return a.x * b.x + a.y * b.y;
}
double cross(Vector a, Vector b) {
    return a.x * b.y - a.y * b.x;
}
double norm(Vector a) {
    return std::sqrt(dot(a, a));
}
Vector leftOf(Vector a) {
    return {-a.y, a.x};
}
Vector unit(Vector a) {
    return (1 / norm(a)) * a;
}

// One linear condition on the normal moves of six neighbouring control points.
struct Row {
    int first = 0;
    std::array<double, 6> entry{};
    double value = 0;  // what is to become 0 when `entry` times the moves is taken off it
    double weight = 1;
};

using Triangle = BandedTriangle<1>;

class Fit {
public:
    explicit Fit(const FitInput& input);
    FitResult run();

private:
    void place();
    void startShape();
    void measureLength();
    double lengthTo(double t) const;
    void lookAtEnergy();
    void lookAtPoints();
    double chooseSmoothing();
    double rootOf(double (Fit::*measure)(double), double aim, double start);
    double rootMeanSquare(double logSmoothing);
    double greatest(double logSmoothing);
    bool solve(double logSmoothing);
    void move(double share);
    void evenOut();
    double merit(double smoothing) const { return smoothing * energy_ + squares_; }

    Vector control(int j) const { return {x_[j], y_[j]}; }
    Vector sum(const std::array<double, 6>& basis, int first) const {
        Vector r;
        for (int j = 0; j < 6; ++j) {
            r.x += basis[j] * x_[first + j];
            r.y += basis[j] * y_[first + j];
        }
        return r;
    }

    const FitInput& input_;
    int points_ = 0;
    int controls_ = 0;
    std::vector<Vector> aims_;  // the points, after take-off where the start needs it
    std::vector<double> knots_;
    std::vector<QuinticInterval> intervals_;
    std::vector<QuinticValues> gauss_;  // three for each interval
    std::vector<double> greville_;      // where each control point has its greatest say
    std::vector<QuinticValues> atGreville_;
    std::vector<double> sites_;  // as many places within 0..1 as control points, one in the reach of each
    std::vector<double> x_, y_, xBefore_, yBefore_;
    std::vector<Vector> normals_, tangents_;

    Triangle energyTriangle_, triangle_;
    std::vector<double> moves_;
    std::vector<double> curvature_, curvatureBefore_;
    double energy_ = 0, squares_ = 0;
    std::vector<double> parameters_, misses_;
    std::vector<double> length_;
    std::vector<int> order_;
    std::vector<Row> rows_;  // one for each point, then headings
    double logSmoothing_ = 0, mostLogSmoothing_ = 0;
    double startGap_ = 0, endGap_ = 0;
    bool interpolates_ = false;
};

Fit::Fit(const FitInput& input) : input_(input), points_(static_cast<int>(input.points.size())) {
    for (const FitPoint& point : input.points) aims_.push_back({point.x, point.y});
    if (input.takeOff != 0) {
        std::vector<Vector> moved = aims_;
        for (int i = 0; i < points_; ++i) {
            const int from = std::clamp(i - 1, 0, points_ - 3);
            const Vector a = aims_[from + 1] - aims_[from];
            const Vector b = aims_[from + 2] - aims_[from + 1];
            const double la = norm(a), lb = norm(b);
            // Tangent of the parabola through three neighbours.
            const Vector mid = (lb / (la + lb) / la) * a + (la / (la + lb) / lb) * b;
            Vector along = mid;
            if (i < from + 1) along = (2 / la) * a - mid;
            if (i > from + 1) along = (2 / lb) * b - mid;
            moved[i] = aims_[i] + input.takeOff * leftOf(unit(along));
        }
        aims_ = moved;
    }
    interpolates_ = input.mostMiss <= 0;
    mostLogSmoothing_ = std::log(circleSmoothing * points_);
    place();
}

// Parameters by chord length and knots at the points, with more between them the fewer the points.
void Fit::place() {
    parameters_.assign(points_, 0);
    for (int i = 1; i < points_; ++i) parameters_[i] = parameters_[i - 1] + norm(aims_[i] - aims_[i - 1]);
    for (double& t : parameters_) t /= parameters_.back();
    parameters_.back() = 1;
    const int gaps = points_ - 1;
    const int each = gaps <= 6 ? (24 + gaps - 1) / gaps : gaps <= 25 ? 4 : gaps <= 100 ? 2 : 1;
    std::vector<double> breaks{0};
    for (int i = 0; i < gaps; ++i) {
        for (int k = 1; k <= each; ++k) {
            breaks.push_back(parameters_[i] + (parameters_[i + 1] - parameters_[i]) * k / each);
        }
    }
    breaks.back() = 1;
    knots_ = openKnots(breaks);
    intervals_ = quinticIntervals(knots_);
    controls_ = static_cast<int>(knots_.size()) - 6;
    for (const QuinticInterval& interval : intervals_) {
        for (const double u : gaussAt) gauss_.push_back(valuesAt(interval, interval.start + u * interval.width));
    }
    const std::vector<double> closed = closedKnots(knots_);
    for (int j = 0; j < controls_; ++j) {
        sites_.push_back(std::accumulate(closed.begin() + j + 1, closed.begin() + j + 6, 0.0) / 5);
        const double sum = std::accumulate(knots_.begin() + j + 1, knots_.begin() + j + 6, 0.0);
        greville_.push_back(sum / 5);
        atGreville_.push_back(valuesAt(intervals_[intervalAt(intervals_, sum / 5)], sum / 5));
    }
    x_.assign(controls_, 0);
    y_.assign(controls_, 0);
    normals_.resize(controls_);
    tangents_.resize(controls_);
    misses_.resize(points_);
    moves_.assign(controls_, 0);
}

// Smoothing splines of x and y by the parameter, the parameter then set to the arc length, a few times over.
void Fit::startShape() {
    const double spacing = 2.0 / std::min(points_ - 1, 20);
    const double smoothing = 1e-3 * std::pow(spacing, 5) * points_ / 20;
    for (int pass = 0; pass < 3; ++pass) {
        BandedTriangle<2> triangle;
        triangle.clear(controls_);
        int next = 0;
        for (std::size_t k = 0; k < intervals_.size(); ++k) {
            const QuinticInterval& interval = intervals_[k];
            for (int g = 0; g < 3; ++g) {
                const double root = std::sqrt(smoothing * gaussWeight[g] * interval.width);
                BandedTriangle<2>::Row row{};
                for (int a = 0; a < 6; ++a) row[a] = root * gauss_[3 * k + g].third[a];
                triangle.add(interval.first, row);
            }
            for (; next < points_ && intervalAt(intervals_, parameters_[next]) == static_cast<int>(k); ++next) {
                const auto value = valuesAt(interval, parameters_[next]).value;
                BandedTriangle<2>::Row row{};
                std::copy(value.begin(), value.end(), row.begin());
                row[6] = aims_[next].x;
                row[7] = aims_[next].y;
                triangle.add(interval.first, row);
            }
        }
        triangle.solve(0, x_);
        triangle.solve(1, y_);
        if (pass == 2) break;
        measureLength();
        for (int i = 1; i + 1 < points_; ++i) {
            parameters_[i] = lengthTo(parameters_[i]) / length_.back();
        }
    }
}

// Arc length at the start of each interval and at the end.
void Fit::measureLength() {
    length_.assign(1, 0);
    for (std::size_t i = 0; i < intervals_.size(); ++i) {
        double own = 0;
        for (int k = 0; k < 3; ++k) {
            own += gaussWeight[k] * intervals_[i].width * norm(sum(gauss_[3 * i + k].first, intervals_[i].first));
        }
        length_.push_back(length_.back() + own);
    }
}

double Fit::lengthTo(double t) const {
    const int k = intervalAt(intervals_, t);
    return length_[k] + (t - intervals_[k].start) / intervals_[k].width * (length_[k + 1] - length_[k]);
}

// Rate of curvature at every Gauss point, weighed so that the sum of squares is the integral over arc length, and how
// it changes with the control points' moves.
void Fit::lookAtEnergy() {
    energyTriangle_.clear(controls_);
    curvature_.resize(gauss_.size());
    energy_ = 0;
    for (int j = 0; j < controls_; ++j) {
        const QuinticInterval& at = intervals_[intervalAt(intervals_, greville_[j])];
        tangents_[j] = unit(sum(atGreville_[j].first, at.first));
        normals_[j] = leftOf(tangents_[j]);
    }
    for (std::size_t g = 0; g < gauss_.size(); ++g) {
        const QuinticInterval& interval = intervals_[g / 3];
        const QuinticValues& basis = gauss_[g];
        const Vector r1 = sum(basis.first, interval.first);
        const Vector r2 = sum(basis.second, interval.first);
        const Vector r3 = sum(basis.third, interval.first);
        const double speed2 = dot(r1, r1), speed = std::sqrt(speed2);
        const double c13 = cross(r1, r3), c12 = cross(r1, r2), d12 = dot(r1, r2);
        const double p7 = 1 / (speed2 * speed * std::sqrt(speed)), q11 = p7 / speed2;
        const double f = c13 * p7 - 3 * c12 * d12 * q11;
        curvature_[g] = c12 / (speed2 * speed);
        const double root = std::sqrt(gaussWeight[g % 3] * interval.width);
        const double bySpeed = -3.5 * c13 * p7 / speed2 + 3 * 5.5 * c12 * d12 * q11 / speed2;  // over speed
        const Vector f1 = {p7 * r3.y - 3 * q11 * (r2.y * d12 + c12 * r2.x) + bySpeed * r1.x,
                           -p7 * r3.x - 3 * q11 * (-r2.x * d12 + c12 * r2.y) + bySpeed * r1.y};
        const Vector f2 = {-3 * q11 * (-r1.y * d12 + c12 * r1.x), -3 * q11 * (r1.x * d12 + c12 * r1.y)};
        const Vector f3 = p7 * leftOf(r1);
        Triangle::Row row;
        for (int a = 0; a < 6; ++a) {
            const Vector n = normals_[interval.first + a];
            row[a] = root * (basis.first[a] * dot(f1, n) + basis.second[a] * dot(f2, n) + basis.third[a] * dot(f3, n));
        }
        row[6] = -root * f;
        energy_ += root * f * root * f;
        energyTriangle_.add(interval.first, row);
    }
}

// Feet and misses of the points, and how the misses change with the moves.
void Fit::lookAtPoints() {
    rows_.clear();
    squares_ = 0;
    for (int i = 0; i < points_; ++i) {
        const Vector point{input_.points[i].x, input_.points[i].y};
        double t = parameters_[i];
        const double reach = std::max(footReach, 0.3 * std::min(i > 0 ? t - parameters_[i - 1] : 1.0,
                                                                i + 1 < points_ ? parameters_[i + 1] - t : 1.0));
        Vector r, r1;
        QuinticValues basis;
        int first = 0;
        const bool end = i == 0 || i + 1 == points_;
        if (end) t = i == 0 ? 0 : 1;
        for (int k = 0; k < 6; ++k) {
            const QuinticInterval& interval = intervals_[intervalAt(intervals_, t)];
            basis = valuesAt(interval, t);
            first = interval.first;
            r = sum(basis.value, first);
            r1 = sum(basis.first, first);
            if (end) break;
            const Vector away = point - r;
            const double speed2 = dot(r1, r1);
            const double slope = std::max(0.2 * speed2, speed2 - dot(away, sum(basis.second, first)));
            const double step = std::clamp(dot(away, r1) / slope, -reach, reach);
            if (std::abs(step) < 1e-15) break;
            t = std::clamp(t + step, 1e-9, 1 - 1e-9);
        }
        parameters_[i] = t;
        const Vector along = unit(r1), left = leftOf(along), away = point - r;
        if (i == 0) startGap_ = dot(away, along);
        if (i + 1 == points_) endGap_ = dot(away, along);
        misses_[i] = dot(away, left) + input_.takeOff;
        Row row{first, {}, misses_[i], input_.points[i].mustPass ? mustPassWeight : 1};
        for (int a = 0; a < 6; ++a) row.entry[a] = basis.value[a] * dot(normals_[first + a], left);
        rows_.push_back(row);
    }
    const auto head = [&](std::optional<double> heading_rad, double t) {
        if (!heading_rad) return;
        const QuinticInterval& interval = intervals_[intervalAt(intervals_, t)];
        const auto basis = valuesAt(interval, t);
        const Vector r1 = sum(basis.first, interval.first);
        const Vector wanted{std::cos(*heading_rad), std::sin(*heading_rad)};
        const double speed2 = dot(r1, r1);
        Row row{interval.first, {}, std::atan2(cross(r1, wanted), dot(r1, wanted)), headingWeight};
        for (int a = 0; a < 6; ++a) {
            row.entry[a] = basis.first[a] * cross(r1, normals_[interval.first + a]) / speed2;
        }
        rows_.push_back(row);
    };
    head(input_.startHeading_rad, 0);
    head(input_.endHeading_rad, 1);

    order_.resize(rows_.size());
    std::iota(order_.begin(), order_.end(), 0);
    std::stable_sort(order_.begin(), order_.end(), [&](int a, int b) { return rows_[a].first < rows_[b].first; });
    for (const Row& row : rows_) squares_ += row.weight * row.value * row.value;
}

// The moves that are best for the conditions as they stand, taken as linear.
bool Fit::solve(double logSmoothing) {
    const double root = std::exp(logSmoothing / 2);
    triangle_.clear(controls_);
    std::size_t next = 0;
    for (int j = 0; j < controls_; ++j) {
        Triangle::Row row = energyTriangle_.rows()[j];
        for (double& entry : row) entry *= root;
        triangle_.add(j, row);
        for (; next < order_.size() && rows_[order_[next]].first == j; ++next) {
            const Row& condition = rows_[order_[next]];
            const double weight = std::sqrt(condition.weight);
            for (int a = 0; a < 6; ++a) row[a] = weight * condition.entry[a];
            row[6] = weight * condition.value;
            triangle_.add(j, row);
        }
    }
    return triangle_.solve(0, moves_);
}

double Fit::rootMeanSquare(double logSmoothing) {
    if (!solve(logSmoothing)) return 1e9;
    double sum = 0;
    int read = 0;
    for (int i = 0; i < points_; ++i) {
        if (input_.points[i].mustPass) continue;
        double miss = rows_[i].value;
        for (int a = 0; a < 6; ++a) miss -= rows_[i].entry[a] * moves_[rows_[i].first + a];
        sum += miss * miss;
        ++read;
    }
    return std::sqrt(sum / std::max(1, read));
}

double Fit::greatest(double logSmoothing) {
    if (!solve(logSmoothing)) return 1e9;
    double most = 0;
    for (int i = 0; i < points_; ++i) {
        if (input_.points[i].mustPass && !interpolates_) continue;
        double miss = rows_[i].value;
        for (int a = 0; a < 6; ++a) miss -= rows_[i].entry[a] * moves_[rows_[i].first + a];
        most = std::max(most, std::abs(miss));
    }
    return most;
}

// The logarithm of the smoothing at which `measure` (growing with it) is `aim`, from `start` on, or an end of the
// range.
double Fit::rootOf(double (Fit::*measure)(double), double aim, double start) {
    const auto off = [&](double at) { return std::log(std::max(1e-300, (this->*measure)(at)) / aim); };
    double a = std::clamp(start, leastLogSmoothing, mostLogSmoothing_);
    double fa = off(a);
    double stride = std::clamp(std::abs(fa) * 2, 1e-6, 4.0);
    double b = a, fb = fa;
    while ((fa > 0) == (fb > 0)) {
        if (fb > 0 ? b <= leastLogSmoothing : b >= mostLogSmoothing_) return b;
        a = b;
        fa = fb;
        b = std::clamp(fb > 0 ? b - stride : b + stride, leastLogSmoothing, mostLogSmoothing_);
        fb = off(b);
        stride *= 3;
    }
    for (int i = 0; i < 40; ++i) {
        if (std::abs(fb) < 1e-11 || std::abs(b - a) < 1e-12) break;
        const double c = b - fb * (b - a) / (fb - fa);
        const double fc = off(c);
        if ((fc > 0) != (fb > 0)) {
            a = b;
            fa = fb;
        } else {
            fa /= 2;
        }
        b = c;
        fb = fc;
    }
    return b;
}

double Fit::chooseSmoothing() {
    if (interpolates_) return rootOf(&Fit::greatest, input_.throughMiss, logSmoothing_);
    double at = rootOf(&Fit::rootMeanSquare, input_.targetMiss, logSmoothing_);
    if (greatest(at) > input_.mostMiss) at = rootOf(&Fit::greatest, input_.mostMiss * (1 - 1e-9), at);
    return at;
}

// Control points go square to the line by what was solved for, and along it so that the ends come to the feet of the
// end points.
void Fit::move(double share) {
    for (int j = 0; j < controls_; ++j) {
        const double along = (1 - greville_[j]) * startGap_ + greville_[j] * endGap_;
        const Vector by = (share * moves_[j]) * normals_[j] + (share * along) * tangents_[j];
        x_[j] = xBefore_[j] + by.x;
        y_[j] = yBefore_[j] + by.y;
    }
}

// Makes the parameter arc length: the same line, met anew at as many places as there are control points.
void Fit::evenOut() {
    measureLength();
    BandedTriangle<2> triangle;
    triangle.clear(controls_);
    for (const double even : sites_) {
        const double wanted = even * length_.back();
        const auto after = std::upper_bound(length_.begin() + 1, length_.end() - 1, wanted);
        const std::size_t k = after - length_.begin() - 1;
        const QuinticInterval& interval = intervals_[k];
        double u = std::clamp((wanted - length_[k]) / (length_[k + 1] - length_[k]), 0.0, 1.0);
        for (int step = 0; step < 2; ++step) {
            double own = 0;
            for (int g = 0; g < 3; ++g) {
                const auto basis = valuesAt(interval, interval.start + u * gaussAt[g] * interval.width);
                own += gaussWeight[g] * u * interval.width * norm(sum(basis.first, interval.first));
            }
            const auto basis = valuesAt(interval, interval.start + u * interval.width);
            u += (wanted - length_[k] - own) / (interval.width * norm(sum(basis.first, interval.first)));
        }
        const Vector r = sum(valuesAt(interval, interval.start + u * interval.width).value, interval.first);
        const QuinticInterval& at = intervals_[intervalAt(intervals_, even)];
        const auto value = valuesAt(at, even).value;
        BandedTriangle<2>::Row row{};
        std::copy(value.begin(), value.end(), row.begin());
        row[6] = r.x;
        row[7] = r.y;
        triangle.add(at.first, row);
    }
    triangle.solve(0, x_);
    triangle.solve(1, y_);
    for (int i = 1; i + 1 < points_; ++i) parameters_[i] = lengthTo(parameters_[i]) / length_.back();
}

FitResult Fit::run() {
    startShape();
    FitResult result;
    logSmoothing_ = std::log(1e-3 * std::pow(2.0 / std::min(points_ - 1, 20), 5));
    for (int round = 1; round <= mostRounds; ++round) {
        result.rounds = round;
        lookAtEnergy();
        lookAtPoints();
        if (round > 1) {
            double change = 0, most = 1;
            for (std::size_t g = 0; g < curvature_.size(); ++g) {
                change = std::max(change, std::abs(curvature_[g] - curvatureBefore_[g]));
                most = std::max(most, std::abs(curvature_[g]));
            }
            const double intervals = static_cast<double>(intervals_.size());
            if (change < std::max(settledCurvature, roundingOfCurvature * intervals * intervals) * most) {
                result.settled = true;
                break;
            }
        }
        logSmoothing_ = chooseSmoothing();
        solve(logSmoothing_);
        xBefore_ = x_;
        yBefore_ = y_;
        curvatureBefore_ = curvature_;
        move(1);
        if (round <= evenRounds) evenOut();
    }
    result.outcome = result.settled ? "settled after " + std::to_string(result.rounds) + " rounds"
                                    : "did not settle within " + std::to_string(mostRounds) + " rounds";
    result.knots = closedKnots(knots_);
    result.x = closedControls(knots_, x_);
    result.y = closedControls(knots_, y_);
    result.parameters = parameters_;
    result.misses = misses_;
    result.smoothing = std::exp(logSmoothing_);
    return result;
}

}  // namespace

FitResult fit(const FitInput& input) {
    return Fit(input).run();
}

}  // namespace fayline::line
