#include "app/panels/ways.hpp"

#include <algorithm>

#include "app/look/names.hpp"
#include "app/panels/reading.hpp"
#include "core/model/hold_traits.hpp"
#include "core/units/day_reading.hpp"
#include "core/units/force.hpp"
#include "core/units/units.hpp"
#include "core/wood/species.hpp"

namespace fayline::app {

namespace {

// From functions of core/units, in the units of a display.
template <class Write, class Read>
Way<double> measured(Write write, Read read, const char* widest = "") {
    return {[write](double value, const Shown& shown) { return text(write(value, shown.display)); },
            [read](const QString& written, const Shown& shown) { return read(text(written), shown.display); },
            QLatin1String(widest)};
}

// From functions that know no units.
template <class Write, class Read>
Way<double> plain(Write write, Read read) {
    return {[write](double value, const Shown&) { return write(value); },
            [read](const QString& written, const Shown&) { return read(written); }};
}

units::InputError isNo(const QString& written, const char* what, const char* accepted) {
    return {"", "\"" + text(written.trimmed()) + "\" is " + what, accepted};
}

}  // namespace

namespace way {

Way<double> length() {
    return {[](double length_m, const Shown& shown) { return writeLengthText(length_m, shown.display); },
            [](const QString& written, const Shown& shown) { return readLengthText(written, shown.display); },
            "12-11-7+"};
}

Way<double> thickness() {
    Way<double> way = length();
    way.write = [](double length_m, const Shown& shown) {
        return text(units::writeThickness(length_m, shown.display));
    };
    way.widest = "15/64 in";
    return way;
}

Way<double> force() {
    return measured(units::typedForce, units::readForce, "12300 N");
}

Way<double> mass() {
    return measured(units::typedMass, units::readMass);
}

Way<double> smallMass() {
    return measured(units::typedSmallMass, units::readSmallMass);
}

Way<double> volume() {
    return measured(units::typedVolume, units::readVolume);
}

Way<double> temperature() {
    return measured(units::typedTemperature, units::readTemperature);
}

Way<double> areaRate() {
    return measured(units::typedAreaRate, units::readAreaRate);
}

Way<double> coat() {
    return plain([](double value) { return text(units::typedCoat(value)); },
                 [](const QString& written) { return units::readCoat(text(written)); });
}

Way<double> duration(double unit_s) {
    return plain([unit_s](double value) { return text(units::typedDuration(value, unit_s)); },
                 [unit_s](const QString& written) { return units::readDuration(text(written), unit_s); });
}

Way<double> clock() {
    return plain([](double value) { return text(units::typedClock(value)); },
                 [](const QString& written) { return units::readClock(text(written)); });
}

Way<double> share() {
    return plain(writeShareText, readShare);
}

Way<double> shareWithin1() {
    return plain(writeShareText, readShareWithin1);
}

Way<double> number(double times, int figures) {
    return plain([=](double value) { return text(units::writeNumber(times * value, figures)); },
                 [=](const QString& written) { return readNumber(written) / times; });
}

Way<double> grainSlope() {
    return plain(writeGrainSlope, readGrainSlope);
}

Way<std::optional<double>> heading() {
    return {[](const std::optional<double>& heading_rad, const Shown&) { return writeHeading(heading_rad); },
            [](const QString& written, const Shown&) { return readHeading(written); }};
}

Way<std::optional<double>> modulus() {
    return orNone(measured(units::typedStress, units::readStress));
}

Way<int> whole() {
    return {[](int value, const Shown&) { return QString::number(value); },
            [](const QString& written, const Shown&) { return readWhole(written); }, "000"};
}

Way<bool> tick() {
    return {[](bool on, const Shown&) { return on ? QStringLiteral("1") : QString(); },
            [](const QString& written, const Shown&) { return !written.isEmpty(); }, "", Qt::AlignHCenter};
}

Way<std::string> name() {
    return {[](const std::string& value, const Shown&) { return text(value); },
            [](const QString& written, const Shown&) { return text(written); }, "bar clamp", Qt::AlignLeft};
}

Way<std::string> wood(const char* accepted) {
    return {[](const std::string& id, const Shown& shown) { return woodName(shown, id); },
            [accepted](const QString& written, const Shown& shown) {
                const QString wanted = written.trimmed();
                const auto found =
                    std::find_if(shown.species.begin(), shown.species.end(), [&](const wood::Species& species) {
                        return text(species.name).compare(wanted, Qt::CaseInsensitive) == 0 ||
                               text(species.id) == wanted;
                    });
                if (found == shown.species.end()) throw isNo(written, "not a wood that is known", accepted);
                return found->id;
            },
            "Oak",
            Qt::AlignLeft,
            [](const Shown& shown) {
                QStringList names;
                for (const ChoiceGroup& group : woodGroups(shown.species)) names += group.choices;
                return names;
            },
            [](const Shown& shown) { return woodGroups(shown.species); }};
}

int chosenOf(const QStringList& words, const QString& written, const char* isNone) {
    const auto same = [&](const QString& word) { return word.compare(written.trimmed(), Qt::CaseInsensitive) == 0; };
    const auto found = std::find_if(words.begin(), words.end(), same);
    if (found == words.end()) throw isNo(written, isNone, "choose one of the list");
    return int(found - words.begin());
}

Way<model::HoldKind> holdKind() {
    QStringList words;
    for (const model::HoldTraits& traits : model::holdTraits) words << holdName(traits.kind);
    return oneOf<model::HoldKind>(words, "no way of holding");
}

}  // namespace way

QString filled(const QString& pattern, const QStringList& with) {
    QString whole;
    for (qsizetype i = 0; i < pattern.size(); ++i) {
        const int which = pattern[i] == u'%' && i + 1 < pattern.size() ? pattern[i + 1].digitValue() : -1;
        if (which < 1 || which > with.size()) {
            whole += pattern[i];
            continue;
        }
        whole += with[which - 1];
        ++i;
    }
    return whole;
}

QList<ChoiceGroup> woodGroups(const std::vector<wood::Species>& species) {
    QList<ChoiceGroup> groups{{QObject::tr("Hardwoods"), {}}, {QObject::tr("Softwoods"), {}}};
    for (const wood::Species& one : species) {
        QStringList& names = groups[one.hardwood ? 0 : 1].choices;
        if (!names.contains(text(one.name))) names << text(one.name);
    }
    for (ChoiceGroup& group : groups) group.choices.sort(Qt::CaseInsensitive);
    return groups;
}

QString woodName(const Shown& shown, const std::string& id) {
    const wood::Species* species = wood::findSpecies(shown.species, id);
    return text(species ? species->name : id);
}

}  // namespace fayline::app
