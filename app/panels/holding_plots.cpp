#include "app/panels/holding_plots.hpp"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "app/panels/reading.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/units/force.hpp"
#include "core/units/units.hpp"

namespace fayline::app {

namespace {

// 0 and some round multiples of `unit` up to `most`; `write` makes a text of a value.
std::vector<AlongPlot::Tick> roundTicks(double most, double unit, const std::function<QString(double)>& write) {
    constexpr double parts = 3.5;
    std::vector<AlongPlot::Tick> ticks;
    if (!(most > 0) || !std::isfinite(most)) return ticks;
    double step = unit * std::pow(10, std::floor(std::log10(most / unit / parts)));
    for (const double figure : {2.0, 2.5, 2.0}) {  // 1, 2, 5, 10
        if (most / step <= parts) break;
        step *= figure;
    }
    for (int i = 0; i * step <= most * (1 + 1e-9); ++i) ticks.push_back({i * step, write(i * step)});
    return ticks;
}

struct Range {
    double from_m = 0;
    double to_m = 0;
};

Range rangeOf(const plan::Plan& plan) {
    Range range{0, plan.line.fair.line.length()};
    const auto reach = [&range](double at_m) {
        if (!std::isfinite(at_m)) return;
        range.from_m = std::min(range.from_m, at_m);
        range.to_m = std::max(range.to_m, at_m);
    };
    for (const holding::StationPlace& station : plan.holding.stations) reach(station.at_m);
    if (!plan.holding.held.samples.empty()) {
        reach(plan.holding.held.samples.front().at_m);
        reach(plan.holding.held.samples.back().at_m);
    }
    return range;
}

AlongPlot::Picture pictureOf(const Shown& shown) {
    const Range range = rangeOf(*shown.plan);
    AlongPlot::Picture picture;
    picture.display = shown.display;
    picture.from_m = range.from_m;
    picture.to_m = range.to_m;
    picture.marks = {{0, QObject::tr("trim"), true}, {shown.plan->line.fair.line.length(), QObject::tr("trim"), true}};
    return picture;
}

const holding::HeldSample* sampleAt(const holding::Held& held, double at_m) {
    if (held.samples.empty()) return nullptr;
    const auto next = std::lower_bound(held.samples.begin(), held.samples.end(), at_m,
                                       [](const holding::HeldSample& sample, double at) { return sample.at_m < at; });
    return next == held.samples.end() ? &held.samples.back() : &*next;
}

AlongPlot::Picture gapPicture(const std::shared_ptr<const Shown>& shown) {
    const plan::Plan& plan = *shown->plan;
    const holding::Held& held = plan.holding.held;
    const double limit_m = shown->piece.holding.gapLimit_m;
    const double length_m = plan.line.fair.line.length();
    AlongPlot::Picture picture = pictureOf(*shown);
    picture.caption = !holding::inBalance(held.outcome) ? QObject::tr("Gap between stack and form: not known")
                      : held.samples.empty()            ? QObject::tr("Gap between stack and form: calculating")
                                                        : QObject::tr("Gap between stack and form");
    // Where the strips run past they may stand far off; the picture is for what stays.
    double largest = 0;
    for (const holding::HeldSample& sample : held.samples)
        if (sample.at_m >= -1e-9 && sample.at_m <= length_m + 1e-9 && std::isfinite(sample.gap_m))
            largest = std::max(largest, sample.gap_m);
    picture.most = std::max({1.15 * largest, 2 * limit_m, units::fromMillimetres(0.1)});
    AlongPlot::Curve curve;
    for (const holding::HeldSample& sample : held.samples)
        if (std::isfinite(sample.gap_m))
            curve.points.append({sample.at_m, std::clamp(sample.gap_m, 0.0, 1.1 * picture.most)});
    if (!curve.points.isEmpty()) picture.curves.push_back(std::move(curve));
    picture.limit = AlongPlot::Tick{
        limit_m, QObject::tr("limit %1").arg(smallFigure(limit_m, shown->display) + ' ' + smallUnit(shown->display))};
    const bool metric = shown->display.lengths == units::LengthNotation::millimetres;
    picture.ticks = roundTicks(picture.most, metric ? units::fromMillimetres(1) : units::inch_m,
                               [&](double value) { return smallFigure(value, shown->display); });
    int row = 0;
    for (const holding::StationPlace& station : plan.holding.stations) {
        // Numbers that would touch each other are left out; the table has them all.
        const std::size_t every = 1 + plan.holding.stations.size() / 14;
        // Nor may one lie under the words at a trim line.
        const double room_m = 0.05 * (picture.to_m - picture.from_m);
        const bool free = std::abs(station.at_m) > room_m && std::abs(station.at_m - length_m) > room_m;
        const bool named = static_cast<std::size_t>(row++) % every == 0 && free;
        picture.marks.push_back({station.at_m, named ? QString::number(station.number) : QString(), false});
    }
    picture.reading = [shown](double at_m) {
        const holding::HeldSample* sample = sampleAt(shown->plan->holding.held, at_m);
        const QString place = writeLengthText(at_m, shown->display);
        if (!sample || !std::isfinite(sample->gap_m)) return QObject::tr("%1 along").arg(place);
        return QObject::tr("%1 along: gap %2 %3")
            .arg(place, smallFigure(sample->gap_m, shown->display), smallUnit(shown->display));
    };
    return picture;
}

// The pull of the station next to a place, and the pressure there.
QString pullReading(const Shown& shown, double at_m) {
    const holding::Held& held = shown.plan->holding.held;
    QString words = QObject::tr("%1 along").arg(writeLengthText(at_m, shown.display));
    const auto nearest = std::min_element(
        held.stations.begin(), held.stations.end(),
        [at_m](const auto& a, const auto& b) { return std::abs(a.at_m - at_m) < std::abs(b.at_m - at_m); });
    if (nearest != held.stations.end() && std::isfinite(nearest->pull_N))
        words += QObject::tr(", %1 pulls %2")
                     .arg(nearest->number)
                     .arg(text(plan::pullText(nearest->pull_N, nearest->state, shown.display)));
    const holding::HeldSample* sample = sampleAt(held, at_m);
    if (sample && std::isfinite(sample->pressure_Pa))
        words += QObject::tr(", %1").arg(text(units::writePressure(sample->pressure_Pa, shown.display)));
    return words;
}

AlongPlot::Picture pullPicture(const std::shared_ptr<const Shown>& shown) {
    const holding::Held& held = shown->plan->holding.held;
    AlongPlot::Picture picture = pictureOf(*shown);
    for (AlongPlot::Mark& mark : picture.marks) mark.text.clear();  // said above
    picture.caption = QObject::tr("Pull at each station");
    double most = 0;
    for (const holding::HeldStation& station : held.stations) {
        AlongPlot::Stem stem{station.at_m, station.pull_N, std::nullopt};
        if (station.state != holding::HoldState::given) stem.most = station.most_N;
        for (const double value : {station.pull_N, stem.most.value_or(0)})
            if (std::isfinite(value)) most = std::max(most, value);
        picture.stems.push_back(stem);
    }
    picture.most = most > 0 ? 1.1 * most : 1000;
    double greatest_Pa = 0;
    for (const holding::HeldSample& sample : held.samples)
        if (std::isfinite(sample.pressure_Pa)) greatest_Pa = std::max(greatest_Pa, sample.pressure_Pa);
    if (greatest_Pa > 0) {
        AlongPlot::Curve pressure;
        pressure.main = false;
        for (const holding::HeldSample& sample : held.samples)
            if (std::isfinite(sample.pressure_Pa))
                pressure.points.append({sample.at_m, sample.pressure_Pa / greatest_Pa * 0.9 * picture.most});
        picture.curves.push_back(std::move(pressure));
        picture.caption +=
            QObject::tr("; thin: pressure, %1 at most").arg(text(units::writePressure(greatest_Pa, shown->display)));
    }
    picture.ticks = roundTicks(picture.most, units::forceUnit_N(shown->display),
                               [&](double value) { return text(units::writeForce(value, shown->display)); });
    picture.reading = [shown](double at_m) { return pullReading(*shown, at_m); };
    return picture;
}

QString widest(const std::vector<AlongPlot::Tick>& ticks) {
    QString longest;
    for (const AlongPlot::Tick& tick : ticks)
        if (tick.text.size() > longest.size()) longest = tick.text;
    return longest;
}

}  // namespace

HoldingPictures holdingPictures(const std::shared_ptr<const Shown>& shown) {
    HoldingPictures pictures{gapPicture(shown), pullPicture(shown)};
    pictures.gap.roomFor = widest(pictures.pull.ticks);
    pictures.pull.roomFor = widest(pictures.gap.ticks);
    return pictures;
}

}  // namespace fayline::app
