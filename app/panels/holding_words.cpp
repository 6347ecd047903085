#include "app/panels/holding_words.hpp"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "app/look/names.hpp"
#include "app/panels/reading.hpp"
#include "core/measure/force.hpp"

namespace fayline::app {

namespace {

QString tr(const char* words) {
    return QObject::tr(words);
}

// What the glue line asks of the stations there.
QString pressingWords(const holding::PressingNeed& need, const measure::Display& display) {
    if (!std::isfinite(need.spacing_m) || need.pressure_Pa <= 0) return {};
    return tr(" The glue line wants %1 there: pads no further apart than %2 (%3 governs).")
        .arg(text(measure::writePressure(need.pressure_Pa)), text(measure::writeLength(need.spacing_m, display)),
             need.bySpread ? tr("what a pad presses") : tr("its strength"));
}

}  // namespace

QString stationWords(const Shown& shown, int station) {
    if (!shown.plan || station < 0 || station >= static_cast<int>(shown.piece.holding.stations.size())) return {};
    const plan::HoldingPlan& holding = shown.plan->holding;
    for (std::size_t i = 0; i < holding.stations.size(); ++i) {
        const holding::StationPlace& place = holding.stations[i];
        if (place.index != station) continue;
        const boat::Station& of = shown.piece.holding.stations[static_cast<std::size_t>(station)];
        QString words = tr("Station %1, %2, at x %3, y %4 on the outside of the stack.")
                            .arg(QString::number(place.number), holdName(of.kind),
                                 writeLengthText(place.onOutside.x_m, shown.display),
                                 writeLengthText(place.onOutside.y_m, shown.display));
        if (i < holding.pressing.size() && !of.side) words += pressingWords(holding.pressing[i], shown.display);
        return words;
    }
    return {};
}

}  // namespace fayline::app
