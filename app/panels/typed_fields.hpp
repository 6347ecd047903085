// Fields for the members of one part of a piece, each by its way of being written and read (app/panels/ways.hpp), so
// that a field is one line.
#pragma once

#include <type_traits>

#include "app/panels/fields.hpp"
#include "app/panels/ways.hpp"

namespace fayline::app {

// What a field's change is called, where it is not "Waste: 12 %": %1 the field's name, %2 what was typed, %3 how that
// then reads.
struct Named {
    QString change = {};
    QString cleared = {};   // the same where the member is then empty, off, or the first of its kind
    QStringList each = {};  // of an enumeration: for each
};

// A field over a value that `get` finds in what is shown and `put` puts into a piece, giving what is added to the
// change's name. A box to tick for what is on or off, a choice for an enumeration, else a text.
template <class Value, class Get, class Put>
void addField(Fields* fields, const Fields::About& about, const Way<Value>& way, const Named& named, Get get, Put put) {
    const auto take = [=](model::Piece& piece, const Value& value, const QString& written, const Shown& shown) {
        const QString added = put(piece, value);
        const bool cleared = value == Value() && !named.cleared.isEmpty();
        QString pattern = cleared ? named.cleared : named.change;
        if constexpr (std::is_enum_v<Value>)
            if (!named.each.isEmpty()) pattern = named.each[int(value)];
        return filled(pattern, {about.name, written.trimmed(), way.write(value, shown)}) + added;
    };
    if constexpr (std::is_same_v<Value, bool>) {
        fields->addTick(about, get,
                        [=](model::Piece& piece, bool on, const Shown& shown) { return take(piece, on, {}, shown); });
    } else if constexpr (std::is_enum_v<Value>) {
        fields->addChoice(
            about, way.choices({}), [=](const Shown& shown) { return int(get(shown)); },
            [=](model::Piece& piece, int index, const Shown& shown) { return take(piece, Value(index), {}, shown); });
    } else {
        fields->addText(
            about, [=](const Shown& shown) { return way.write(get(shown), shown); },
            [=](model::Piece& piece, const QString& written, const Shown& shown) {
                return take(piece, way.read(written, shown), written, shown);
            });
    }
}

// Finds a part of a piece by the members that lead to it.
template <class First, class... Rest>
auto over(First first, Rest... rest) {
    return [=](model::Piece & piece) -> auto& {
        return ((piece.*first).*....*rest);
    };
}

// `part` finds the part `Of` in a piece, and `path` leads to it in the project file ("glue."); the path of a field's
// About is the key behind that. `usual`: what changes are called that say nothing else.
template <class Of>
class TypedFields {
public:
    template <class Part>
    TypedFields(Fields* fields, const char* path, Part part, const QString& usual = tr("%1: %2"))
        : fields_(fields), path_(path), part_(part), usual_(usual) {}

    template <class Value>
    void add(Fields::About about, Value Of::*member, const Way<Value>& way, Named named = {}) const {
        about.path = path_ + about.path;
        if (named.change.isEmpty()) named.change = std::is_enum_v<Value> ? tr("%1: %3") : usual_;
        addField(
            fields_, about, way, named,
            // Only read: a piece that is shown is not changed.
            [=, part = part_](const Shown& shown) { return part(const_cast<model::Piece&>(shown.piece)).*member; },
            [=, part = part_](model::Piece& piece, const Value& value) {
                part(piece).*member = value;
                return QString();
            });
    }
    template <class Kind>
    void addChoice(const Fields::About& about, Kind Of::*member, const QStringList& words,
                   const QStringList& each = {}) const {
        add(about, member, way::oneOf<Kind>(words), {.each = each});
    }
    void addTick(const Fields::About& about, bool Of::*member, const Named& named = {}) const {
        add(about, member, way::tick(), named.change.isEmpty() ? Named{tr("%1: yes"), tr("%1: no")} : named);
    }

private:
    Fields* fields_;
    QString path_;
    std::function<Of&(model::Piece&)> part_;
    QString usual_;
};

template <class Part>
TypedFields(Fields*, const char*, Part, const QString& = {})
    -> TypedFields<std::remove_reference_t<std::invoke_result_t<Part, model::Piece&>>>;

}  // namespace fayline::app
