// Fields for the members of one part of a piece, each by its kind of quantity: how it is written and read follows from
// that, so that a field is one line.
#pragma once

#include <QStringList>
#include <functional>

#include "app/panels/fields.hpp"
#include "app/panels/reading.hpp"
#include "core/measure/day_reading.hpp"

namespace fayline::app {

// `Of` is the part ("boat::Glue"), `part` finds it in a piece, and `path` leads to it in the project file ("glue.").
// The path of a field's About is the key behind that.
template <class Of>
class TypedFields {
public:
    using Part = Of& (*)(boat::Piece&);
    TypedFields(Fields* fields, Part part, QString path) : fields_(fields), part_(part), path_(std::move(path)) {}

    void addTemperature(const Fields::About& about, double Of::*member) const {
        add(about, member, measure::typedTemperature, measure::readTemperature);
    }
    void addMass(const Fields::About& about, double Of::*member) const {
        add(about, member, measure::typedSmallMass, measure::readSmallMass);
    }
    void addVolume(const Fields::About& about, double Of::*member) const {
        add(about, member, measure::typedVolume, measure::readVolume);
    }
    void addAreaRate(const Fields::About& about, double Of::*member) const {
        add(about, member, measure::typedAreaRate, measure::readAreaRate);
    }
    void addCoat(const Fields::About& about, double Of::*member) const {
        add(
            about, member, [](double value, const measure::Display&) { return measure::typedCoat(value); },
            [](const std::string& written, const measure::Display&) { return measure::readCoat(written); });
    }
    // Written in `unit_s`: 60 minutes, 3600 hours. A bare number is in that.
    void addDuration(const Fields::About& about, double Of::*member, double unit_s = 60) const {
        add(
            about, member,
            [unit_s](double value, const measure::Display&) { return measure::typedDuration(value, unit_s); },
            [unit_s](const std::string& written, const measure::Display&) {
                return measure::readDuration(written, unit_s);
            });
    }
    void addClock(const Fields::About& about, double Of::*member) const {
        add(
            about, member, [](double value, const measure::Display&) { return measure::typedClock(value); },
            [](const std::string& written, const measure::Display&) { return measure::readClock(written); });
    }
    void addShare(const Fields::About& about, double Of::*member) const {
        add(
            about, member, [](double value, const measure::Display&) { return text(writeShareText(value)); },
            [](const std::string& written, const measure::Display&) { return readShare(text(written)); });
    }
    // A share that the project file accepts from nothing to all of it only.
    void addShareWithin1(const Fields::About& about, double Of::*member) const {
        add(
            about, member, [](double value, const measure::Display&) { return text(writeShareText(value)); },
            [](const std::string& written, const measure::Display&) { return readShareWithin1(text(written)); });
    }
    // A plain number, `times` the member.
    void addNumber(const Fields::About& about, double Of::*member, double times = 1) const {
        add(
            about, member,
            [times](double value, const measure::Display&) { return measure::writeNumber(times * value, 6); },
            [times](const std::string& written, const measure::Display&) { return readNumber(text(written)) / times; });
    }
    void addWhole(const Fields::About& about, int Of::*member) const {
        add(
            about, member, [](int value, const measure::Display&) { return std::to_string(value); },
            [](const std::string& written, const measure::Display&) { return readWhole(text(written)); });
    }

    // The names in the order of the enumeration.
    template <class Kind>
    void addChoice(const Fields::About& about, Kind Of::*member, const QStringList& names) const {
        fields_->addChoice(
            whole(about), names,
            [part = part_, member](const Shown& shown) {
                return int(part(const_cast<boat::Piece&>(shown.piece)).*member);
            },
            [part = part_, member, about, names](boat::Piece& piece, int index, const Shown&) {
                part(piece).*member = Kind(index);
                return QObject::tr("%1: %2").arg(about.name, names.at(index));
            });
    }
    void addTick(const Fields::About& about, bool Of::*member) const {
        fields_->addTick(
            whole(about),
            [part = part_, member](const Shown& shown) { return part(const_cast<boat::Piece&>(shown.piece)).*member; },
            [part = part_, member, about](boat::Piece& piece, bool on, const Shown&) {
                part(piece).*member = on;
                return (on ? QObject::tr("%1: yes") : QObject::tr("%1: no")).arg(about.name);
            });
    }

private:
    Fields::About whole(Fields::About about) const {
        about.path = path_ + about.path;
        return about;
    }

    template <class Value, class Write, class Read>
    void add(const Fields::About& about, Value Of::*member, Write write, Read read) const {
        fields_->addText(
            whole(about),
            // Only read: a piece that is shown is not changed.
            [part = part_, member, write](const Shown& shown) {
                return text(write(part(const_cast<boat::Piece&>(shown.piece)).*member, shown.display));
            },
            [part = part_, member, read, about](boat::Piece& piece, const QString& written, const Shown& shown) {
                part(piece).*member = read(text(written), shown.display);
                return QObject::tr("%1: %2").arg(about.name, written.trimmed());
            });
    }

    Fields* fields_;
    Part part_;
    QString path_;
};

}  // namespace fayline::app
