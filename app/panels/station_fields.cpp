#include "app/panels/station_fields.hpp"

#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "app/look/names.hpp"
#include "app/look/theme.hpp"
#include "app/panels/fields.hpp"
#include "app/panels/holding_words.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "core/boat/hold_traits.hpp"
#include "core/math/count.hpp"
#include "core/measure/force.hpp"

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

const boat::Station& StationFields::first(const Shown& shown) const {
    static const boat::Station none;
    const auto& stations = shown.piece.holding.stations;
    const int index = chosen_.empty() ? -1 : chosen_.front();
    return index >= 0 && index < math::countOf(stations) ? stations[index] : none;
}

QString StationFields::change(boat::Piece& piece, const QString& what, const Put& put) const {
    int changed = 0;
    for (const int index : chosen_) {
        if (index < 0 || index >= math::countOf(piece.holding.stations)) continue;
        put(piece.holding.stations[index]);
        ++changed;
    }
    return changed > 1 ? tr("%1 of %2 stations").arg(what).arg(changed) : tr("%1 of a station").arg(what);
}

template <class Of, class PutIn>
QString StationFields::changeAs(boat::Piece& piece, const QString& what, const PutIn& put) const {
    return change(piece, what, [&put](boat::Station& station) {
        if (Of* one = boat::as<Of>(station)) put(*one);
    });
}

void StationFields::makeCommon() {
    common_->addText(
        {QStringLiteral("stationPull"),
         tr("Given pull"),
         {},
         tr("Pulls exactly this, square to the form; of a strap the tension. Empty: closes its gap with no more than "
            "the most it has.")},
        [this](const Shown& shown) {
            const auto& pull = first(shown).pull_N;
            return pull ? text(measure::typedForce(*pull, shown.display)) : QString();
        },
        [this](boat::Piece& piece, const QString& written, const Shown& shown) {
            const std::optional<double> pull = readOptionalForce(written, shown.display);
            return change(piece, tr("Set the given pull"), [&](boat::Station& station) { station.pull_N = pull; });
        },
        tr("closes its gap"));
    common_->addText(
        {QStringLiteral("stationMost"), tr("Most it can pull"), {}, tr("Its strength; of a jack its rated load.")},
        [this](const Shown& shown) { return text(measure::typedForce(first(shown).most_N, shown.display)); },
        [this](boat::Piece& piece, const QString& written, const Shown& shown) {
            const double most = measure::readForce(text(written), shown.display);
            return change(piece, tr("Set the most"), [&](boat::Station& station) { station.most_N = most; });
        });
    common_->addText(
        {QStringLiteral("stationPad"), tr("Pad along the line"), {}, tr("How much of the line its pad covers.")},
        [this](const Shown& shown) { return text(measure::writeThickness(first(shown).pad_m, shown.display)); },
        [this](boat::Piece& piece, const QString& written, const Shown& shown) {
            const double pad = readLengthText(written, shown.display);
            return change(piece, tr("Set the pad"), [&](boat::Station& station) { station.pad_m = pad; });
        });
    common_->addTick(
        {QStringLiteral("stationSide"),
         tr("Side clamp: only keeps the pile in line"),
         {},
         tr("Pulls across the strips' width and presses nothing on the form.")},
        [this](const Shown& shown) { return first(shown).side; },
        [this](boat::Piece& piece, bool on, const Shown&) {
            return change(piece, on ? tr("Take the pressing") : tr("Give back the pressing"),
                          [&](boat::Station& station) { station.side = on; });
        });
}

template <class Of>
void StationFields::addLength(Fields* fields, Long isLong, const char* object, const QString& name, const QString& hint,
                              Of boat::Station::*part, std::optional<double> Of::*member, const QString& whenEmpty) {
    fields->addText(
        {QLatin1String(object), name, {}, hint},
        [this, part, member, isLong](const Shown& shown) {
            const std::optional<double>& length = first(shown).*part.*member;
            if (!length) return QString();
            return isLong == Long::yes ? writeLengthText(*length, shown.display)
                                       : text(measure::writeThickness(*length, shown.display));
        },
        [this, member, name](boat::Piece& piece, const QString& written, const Shown& shown) {
            const std::optional<double> length = readOptionalLength(written, shown.display);
            return changeAs<Of>(piece, tr("Set \"%1\"").arg(name), [&](Of& one) { one.*member = length; });
        },
        whenEmpty);
}

void StationFields::makeProp() {
    addLength(prop_, Long::yes, "footX", tr("Foot, x"), tr("Where its foot stands."), &boat::Station::strut,
              &boat::Strut::footX_m, tr("not given"));
    addLength(prop_, Long::yes, "footY", tr("Foot, y"), tr("Where its foot stands; the floor is there."),
              &boat::Station::strut, &boat::Strut::footY_m, tr("not given"));
    prop_->addText(
        {QStringLiteral("section"),
         tr("Section"),
         {},
         tr("Its two sides, such as 89 x 38; it buckles over the lesser.")},
        [this](const Shown& shown) { return writeSection(first(shown).strut.section_m, shown.display); },
        [this](boat::Piece& piece, const QString& written, const Shown& shown) {
            const auto section = readSection(written, shown.display);
            return changeAs<boat::Strut>(piece, tr("Set the section"),
                                         [&](boat::Strut& strut) { strut.section_m = section; });
        },
        tr("not given"));
    prop_->addChoice(
        {QStringLiteral("stop"), tr("Stop fitted at"), {}, tr("What keeps it from slipping there.")},
        {tr("neither end"), tr("its head"), tr("its foot"), tr("both ends")},
        [this](const Shown& shown) { return static_cast<int>(first(shown).strut.stop); },
        [this](boat::Piece& piece, int chosen, const Shown&) {
            return changeAs<boat::Strut>(piece, tr("Set the stop"),
                                         [&](boat::Strut& strut) { strut.stop = static_cast<boat::Stop>(chosen); });
        });
    prop_->addChoice(
        {QStringLiteral("propTo"), tr("Stands on or against"), {}, tr("The floor, or what is overhead.")},
        {tr("the floor"), tr("overhead")},
        [this](const Shown& shown) { return static_cast<int>(first(shown).strut.to); },
        [this](boat::Piece& piece, int chosen, const Shown&) {
            return changeAs<boat::Strut>(piece, tr("Set the footing"),
                                         [&](boat::Strut& strut) { strut.to = static_cast<boat::PropTo>(chosen); });
        });
}

void StationFields::makeScrew() {
    addLength(screw_, Long::no, "screwDiameter", tr("Diameter"), tr("Of the screw's shank."), &boat::Station::screw,
              &boat::Screw::diameter_m, tr("not given"));
    addLength(screw_, Long::no, "intoBackbone", tr("Into the backbone"), tr("Length of thread that holds there."),
              &boat::Station::screw, &boat::Screw::intoBackbone_m, tr("not given"));
    addLength(screw_, Long::no, "washer", tr("Washer, across"), tr("Diameter of the washer on the outer strip."),
              &boat::Station::screw, &boat::Screw::washer_m, tr("none"));
}

void StationFields::makeStrap() {
    addLength(strap_, Long::yes, "strapTo", tr("Goes round as far as"), tr("Along the line from its first point."),
              &boat::Station::strap, &boat::Strap::to_m, tr("not given"));
    strap_->addChoice(
        {QStringLiteral("pullsFrom"), tr("Drawn from"), {}, tr("It pulls most where it is drawn.")},
        {tr("its start"), tr("its end"), tr("both ends")},
        [this](const Shown& shown) { return static_cast<int>(first(shown).strap.pullsFrom); },
        [this](boat::Piece& piece, int chosen, const Shown&) {
            return changeAs<boat::Strap>(piece, tr("Set the drawn end"), [&](boat::Strap& strap) {
                strap.pullsFrom = static_cast<boat::PullsFrom>(chosen);
            });
        });
    strap_->addText(
        {QStringLiteral("strapFriction"), tr("Friction on the stack"), {}, tr("Between strap and outer strip.")},
        [this](const Shown& shown) { return text(measure::writeNumber(first(shown).strap.friction)); },
        [this](boat::Piece& piece, const QString& written, const Shown&) {
            const double friction = readNumber(written);
            return changeAs<boat::Strap>(piece, tr("Set the friction"),
                                         [&](boat::Strap& strap) { strap.friction = friction; });
        });
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
    const boat::HoldKind kind = first(*shown_).kind;
    const auto turn = [](QWidget* part, bool on) {
        if (part->isHidden() == on) part->setVisible(on);
    };
    turn(common_, any);
    turn(prop_, any && boat::is<boat::Strut>(kind));
    turn(screw_, any && boat::is<boat::Screw>(kind));
    turn(strap_, any && boat::is<boat::Strap>(kind));
    told_->say(any ? stationWords(*shown_, chosen_.front()) : QString());
}

}  // namespace fayline::app
