#include "app/panels/station_fields.hpp"

#include <QVBoxLayout>

#include "app/look/theme.hpp"
#include "app/panels/holding_words.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"

namespace fayline::app {

StationFields::StationFields(QWidget* parent)
    : QWidget(parent),
      told_(new SteadyWords(QStringLiteral("stationTold"), this)),
      common_(new Fields(this)),
      prop_(new Fields(this)),
      screw_(new Fields(this)),
      strap_(new Fields(this)) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(gridStep);
    layout->addWidget(told_);
    makeCommon();
    makeProp();
    makeScrew();
    makeStrap();
    for (Fields* fields : {common_, prop_, screw_, strap_}) {
        layout->addWidget(fields);
        fields->hide();
        connect(fields, &Fields::changeAsked, this, &StationFields::changeAsked);
    }
}

const model::Station& StationFields::first(const Shown& shown) const {
    static const model::Station none;
    const auto& stations = shown.piece.holding.stations;
    const int index = chosen_.empty() ? -1 : chosen_.front();
    return index >= 0 && index < math::countOf(stations) ? stations[index] : none;
}

// Finds the value in a station by `reach`; changes those of the chosen that `concerns` is true of.
template <class Value, class Reach, class Concerns>
void StationFields::addOver(Fields* fields, const Fields::About& about, const Way<Value>& way, const Named& named,
                            Reach reach, Concerns concerns) {
    addField(
        fields, about, way, named, [=, this](const Shown& shown) { return reach(first(shown)); },
        [=, this](model::Piece& piece, const Value& value) {
            int changed = 0;
            for (const int index : chosen_) {
                if (index < 0 || index >= math::countOf(piece.holding.stations)) continue;
                ++changed;
                model::Station& station = piece.holding.stations[index];
                if (concerns(station)) reach(station) = value;
            }
            return changed > 1 ? tr(" of %1 stations").arg(changed) : tr(" of a station");
        });
}

template <class Value>
void StationFields::add(Fields* fields, const Fields::About& about, Value model::Station::*member,
                        const Way<Value>& way, const Named& named) {
    addOver(
        fields, about, way, named, [=](auto& station) -> auto& { return station.*member; },
        [](const model::Station&) { return true; });
}

template <class Value, class Of>
void StationFields::add(Fields* fields, const Fields::About& about, Of model::Station::*part, Value Of::*member,
                        const Way<Value>& way, const Named& named) {
    addOver(
        fields, about, way, named, [=](auto& station) -> auto& { return station.*part.*member; },
        [](const model::Station& station) { return model::is<Of>(station.kind); });
}

void StationFields::makeCommon() {
    using model::Station;
    add(common_,
        {"stationPull",
         tr("Fixed force"),
         {},
         tr("Exactly this, square to the form; of a strap the tension. Empty: as needed."),
         tr("as needed")},
        &Station::pull_N, way::orNone(way::force()), {tr("Set the fixed force")});
    add(common_, {"stationMost", tr("Max force"), {}, tr("Its strength; of a jack its rated load.")}, &Station::most_N,
        way::force(), {tr("Set the max force")});
    add(common_, {"stationPad", tr("Pad along the line"), {}, tr("How much of the line its pad covers.")},
        &Station::pad_m, way::thickness(), {tr("Set the pad")});
    add(common_,
        {"stationSide",
         tr("Side clamp (edges only, no squeeze)"),
         {},
         tr("Pulls across the width of the strips and presses nothing on the form.")},
        &Station::side, way::tick(), {tr("Make it a side clamp"), tr("Make it press on the form")});
}

void StationFields::makeProp() {
    using model::Strut;
    const auto part = &model::Station::strut;
    const QString notGiven = tr("not given");
    const auto place = way::orNone(way::length());
    const Named set{tr("Set \"%1\"")};
    add(prop_, {"footX", tr("Foot, x"), {}, tr("Where its foot stands."), notGiven}, part, &Strut::footX_m, place, set);
    add(prop_, {"footY", tr("Foot, y"), {}, tr("Where its foot stands; the floor is there."), notGiven}, part,
        &Strut::footY_m, place, set);
    using Sides = std::optional<std::array<double, 2>>;
    const Way<Sides> section{
        [](const Sides& sides, const Shown& shown) { return writeSection(sides, shown.display); },
        [](const QString& written, const Shown& shown) { return readSection(written, shown.display); }};
    add(prop_,
        {"section", tr("Section"), {}, tr("Its two sides, such as 89 x 38; it buckles over the lesser."), notGiven},
        part, &Strut::section_m, section, {tr("Set the section")});
    add(prop_, {"stop", tr("Stop fitted at"), {}, tr("What keeps it from slipping there.")}, part, &Strut::stop,
        way::oneOf<model::Stop>({tr("neither end"), tr("its head"), tr("its foot"), tr("both ends")}),
        {tr("Set the stop")});
    add(prop_, {"propTo", tr("Stands on or against"), {}, tr("The floor, or what is overhead.")}, part, &Strut::to,
        way::oneOf<model::PropTo>({tr("the floor"), tr("overhead")}), {tr("Set the footing")});
}

void StationFields::makeScrew() {
    using model::Screw;
    const auto part = &model::Station::screw;
    const auto size = way::orNone(way::thickness());
    const Named set{tr("Set \"%1\"")};
    add(screw_, {"screwDiameter", tr("Diameter"), {}, tr("Of the screw's shank."), tr("not given")}, part,
        &Screw::diameter_m, size, set);
    add(screw_,
        {"intoBackbone", tr("Into the backbone"), {}, tr("Length of thread that holds there."), tr("not given")}, part,
        &Screw::intoBackbone_m, size, set);
    add(screw_, {"washer", tr("Washer, across"), {}, tr("Diameter of the washer on the outer strip."), tr("none")},
        part, &Screw::washer_m, size, set);
}

void StationFields::makeStrap() {
    using model::Strap;
    const auto part = &model::Station::strap;
    add(strap_, {"strapTo", tr("Goes round to"), {}, tr("Along the line from its first point."), tr("not given")}, part,
        &Strap::to_m, way::orNone(way::length()), {tr("Set \"%1\"")});
    add(strap_, {"pullsFrom", tr("Drawn from"), {}, tr("It pulls hardest where it is drawn.")}, part, &Strap::pullsFrom,
        way::oneOf<model::PullsFrom>({tr("its start"), tr("its end"), tr("both ends")}), {tr("Set the drawn end")});
    add(strap_, {"strapFriction", tr("Friction on the stack"), {}, tr("Between strap and outer strip.")}, part,
        &Strap::friction, way::number(1, 3), {tr("Set the friction")});
}

void StationFields::choose(std::vector<int> stations) {
    if (stations == chosen_) return;
    chosen_ = std::move(stations);
    if (!shown_) return;
    for (Fields* fields : {common_, prop_, screw_, strap_}) fields->startAnew();
    showKind();
}

void StationFields::show(const std::shared_ptr<const Shown>& shown) {
    shown_ = shown;
    std::erase_if(chosen_, [&](int i) { return i >= math::countOf(shown_->piece.holding.stations); });
    for (Fields* fields : {common_, prop_, screw_, strap_}) fields->show(shown_);
    showKind();
}

void StationFields::showKind() {
    const bool any = shown_->pieceIndex >= 0 && !chosen_.empty();
    const model::HoldKind kind = first(*shown_).kind;
    showIf(common_, any);
    showIf(prop_, any && model::is<model::Strut>(kind));
    showIf(screw_, any && model::is<model::Screw>(kind));
    showIf(strap_, any && model::is<model::Strap>(kind));
    told_->say(any ? stationWords(*shown_, chosen_.front()) : QString());
}

}  // namespace fayline::app
