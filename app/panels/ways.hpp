// Ways in which a value of a piece is written into a cell or a field, and read back from what is typed there.
#pragma once

#include <QStringList>
#include <functional>
#include <optional>
#include <utility>

#include "app/look/shown.hpp"
#include "app/look/text.hpp"
#include "app/panels/searched_choice.hpp"

namespace fayline::app {

// Writes and reads in the units of what is shown. `read` throws InputError with an empty path.
template <class Value>
struct Way {
    std::function<QString(const Value&, const Shown&)> write;
    std::function<Value(const QString&, const Shown&)> read;
    QString widest = {};                                         // of what it writes: the width of a column
    Qt::AlignmentFlag side = Qt::AlignRight;                     // words stand at the left, figures at the right
    std::function<QStringList(const Shown&)> choices = nullptr;  // what may be chosen; none: anything may be typed
    std::function<QList<ChoiceGroup>(const Shown&)> groups = nullptr;  // the same where it is long
};

namespace way {

Way<double> length();     // as places along something are written
Way<double> thickness();  // as small lengths are
Way<double> force();
Way<double> mass();       // of a boat
Way<double> smallMass();  // of glue
Way<double> volume();
Way<double> temperature();
Way<double> areaRate();
Way<double> coat();
Way<double> duration(double unit_s = 60);  // 60: a bare number is minutes; 3600: hours
Way<double> clock();
Way<double> share();
Way<double> shareWithin1();                             // which the project file accepts from nothing to all of it only
Way<double> number(double times = 1, int figures = 6);  // `times` the value
Way<double> grainSlope();
Way<std::optional<double>> heading();  // degrees; empty: free
Way<std::optional<double>> modulus();  // MPa; empty: none
Way<int> whole();
Way<bool> tick();
Way<std::string> name();
Way<std::string> wood(const char* accepted);  // its id, by its name; `accepted` says where the names stand
Way<model::HoldKind> holdKind();              // one of model::holdTraits by its word

// Nothing where it is left empty.
template <class Value>
Way<std::optional<Value>> orNone(const Way<Value>& way) {
    return {[way](const std::optional<Value>& value, const Shown& shown) {
                return value ? way.write(*value, shown) : QString();
            },
            [way](const QString& written, const Shown& shown) {
                return written.trimmed().isEmpty() ? std::nullopt : std::optional<Value>(way.read(written, shown));
            },
            way.widest};
}

// Throws InputError where `written` is none of `words`: it then is, say, "no way of holding".
int chosenOf(const QStringList& words, const QString& written, const char* isNone);

// One of an enumeration, whose `words` are in its order.
template <class Kind>
Way<Kind> oneOf(const QStringList& words, const char* isNone = "none of these") {
    return {[words](const Kind& kind, const Shown&) { return words.at(int(kind)); },
            [=](const QString& written, const Shown&) { return Kind(chosenOf(words, written, isNone)); }, words.first(),
            Qt::AlignLeft, [words](const Shown&) { return words; }};
}

}  // namespace way

// The name of a change: `pattern` with what `with` has for %1, %2 and so on, whatever signs stand in that.
QString filled(const QString& pattern, const QStringList& with);

// The woods by name, hardwoods and softwoods, each once.
QList<ChoiceGroup> woodGroups(const std::vector<wood::Species>& species);

QString woodName(const Shown& shown, const std::string& id);  // the id itself where no such wood is known

}  // namespace fayline::app
