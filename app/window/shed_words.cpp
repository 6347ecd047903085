#include "app/window/shed_words.hpp"

#include <algorithm>

#include "app/look/names.hpp"
#include "app/look/text.hpp"
#include "app/panels/ways.hpp"
#include "core/glue/adhesive.hpp"
#include "core/units/day_text.hpp"
#include "core/wood/species.hpp"

namespace fayline::app {

namespace {

// What is written as the panels write it.
class ShedWords {
public:
    ShedWords(const model::Shed& shed, const units::Display& display) : shed_(shed) {
        shown_.display = display;
        for (const model::OwnSpecies& own : shed.species) shown_.species.push_back(wood::ownSpecies(own));
        const std::vector<wood::Species>& builtIn = wood::builtInSpecies();
        shown_.species.insert(shown_.species.end(), builtIn.begin(), builtIn.end());
    }

    QStringList of(model::ShedPart part) const {
        switch (part) {
            case model::ShedPart::tools:
                return tools();
            case model::ShedPart::glue:
                return glue();
            case model::ShedPart::air:
                return air();
            case model::ShedPart::crew:
                return crew();
            case model::ShedPart::stock:
                return stock();
            case model::ShedPart::units:
                return display();
            case model::ShedPart::glues:
                return glues();
            case model::ShedPart::woods:
                return woods();
        }
        return {};
    }

private:
    template <class Value>
    QString as(const Way<Value>& way, const Value& value) const {
        return way.write(value, shown_);
    }

    QStringList tools() const {
        QStringList lines;
        for (const model::Tool& tool : *shed_.tools) {
            QString line = tr("%1 x %2: %3, %4")
                               .arg(tool.count)
                               .arg(text(tool.name), holdName(tool.kind), as(way::force(), tool.most_N));
            if (tool.opening_m) line += tr(", opens %1").arg(as(way::thickness(), *tool.opening_m));
            lines << line;
        }
        return lines.isEmpty() ? QStringList(tr("No tool.")) : lines;
    }

    QStringList glue() const {
        const model::Glue& usual = shed_.glue->glue;
        std::vector<glue::Adhesive> known;
        for (const model::OwnAdhesive& own : shed_.adhesives) known.push_back(glue::ownAdhesive(own));
        known.insert(known.end(), glue::builtInAdhesives().begin(), glue::builtInAdhesives().end());
        const auto found = std::ranges::find(known, usual.adhesive, &glue::Adhesive::id);
        return {
            text(found == known.end() ? usual.adhesive : found->name),
            tr("Wet-out %1, spread %2").arg(as(way::coat(), usual.wetOut_kg_m2), as(way::coat(), usual.spread_kg_m2)),
            tr("Pot %1, waste %2").arg(as(way::volume(), usual.cup_m3), as(way::share(), usual.waste))};
    }

    QStringList air() const {
        const model::Glue& air = shed_.air->glue;
        QStringList lines{
            tr("By day %1, humidity %2").arg(as(way::temperature(), air.air_C), as(way::share(), air.humidity)),
            tr("Over night %1").arg(as(way::temperature(), air.airOverNight_C))};
        if (air.tent.lasts_s > 0)
            lines << tr("Tent at %1 for %2")
                         .arg(as(way::temperature(), air.tent.air_C), text(units::writeDuration(air.tent.lasts_s)));
        return lines;
    }

    QStringList crew() const {
        const model::Crew& crew = *shed_.crew;
        return {tr("Pairs of hands: %1").arg(crew.hands),
                tr("Begin at %1").arg(text(units::writeClock(crew.startAt_s))),
                tr("Mixing %1, wetting out %2, spreading %3")
                    .arg(text(units::writeDuration(crew.rates.mix_s)), as(way::areaRate(), crew.rates.wetOut_m2_s),
                         as(way::areaRate(), crew.rates.spread_m2_s))};
    }

    QStringList stock() const {
        QStringList lines;
        for (const model::Board& board : shed_.stock->boards) {
            lines << tr("%1 x %2: %3 x %4 x %5")
                         .arg(board.count)
                         .arg(board.name.empty() ? woodName(shown_, board.species) : text(board.name),
                              text(units::writeLength(board.length_m, shown_.display)),
                              as(way::thickness(), board.width_m), as(way::thickness(), board.thickness_m));
        }
        if (lines.isEmpty()) lines << tr("No boards.");
        return lines << tr("Saw cut %1").arg(as(way::thickness(), shed_.stock->kerf_m));
    }

    QStringList display() const {
        const units::Display& all = shed_.display->display;
        if (all == units::inchShop) return {tr("Inch shop")};
        if (all == units::metricShop) return {tr("Metric shop")};
        return {tr("Like %1, %2, %3, %4, %5")
                    .arg(text(units::writeThickness(0.0127, all)), text(units::writeForce(1000, all)),
                         text(units::writeTemperature(20, all)), text(units::writeMass(0.1, all)),
                         text(units::writeVolume(0.0005, all)))};
    }

    QStringList glues() const {
        QStringList lines;
        for (const model::OwnAdhesive& own : shed_.adhesives)
            lines << (own.name.empty() ? text(own.id) : text(own.name));
        return lines;
    }

    QStringList woods() const {
        QStringList lines;
        for (const model::OwnSpecies& own : shed_.species)
            lines << tr("%1, your own").arg(own.name.empty() ? text(own.id) : text(own.name));
        std::vector<std::pair<std::string, int>> trials;
        for (const model::Trial& trial : shed_.trials) {
            const auto found = std::ranges::find(trials, trial.species, &std::pair<std::string, int>::first);
            if (found == trials.end()) {
                trials.emplace_back(trial.species, 1);
            } else {
                ++found->second;
            }
        }
        for (const auto& [species, count] : trials)
            lines << tr("%1, trials: %2").arg(woodName(shown_, species)).arg(count);
        return lines;
    }

    const model::Shed& shed_;
    Shown shown_;
};

}  // namespace

QStringList shedWords(const model::Shed& shed, model::ShedPart part, const units::Display& display) {
    return model::has(shed, part) ? ShedWords(shed, display).of(part) : QStringList();
}

}  // namespace fayline::app
