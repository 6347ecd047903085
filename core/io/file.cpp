#include "core/io/file.hpp"

#include <algorithm>
#include <functional>
#include <type_traits>

#include "core/io/shed_file.hpp"
#include "core/model/keys_shed.hpp"
#include "core/model/together.hpp"

// What reads and writes groups belongs to the tables of keys, and stands in their namespace.
namespace fayline::model {

using io::Key;

using units::InputError;

namespace {

constexpr int format = 1;

template <class Member, class T>
using MemberOf = std::remove_cvref_t<std::invoke_result_t<Member, T&>>;

// ---- Reading

// What reading a group asks that is the same whatever the group fills: kept out of the template, which is made anew for
// every key and struct.
class GroupReader {
public:
    GroupReader(const Value& group, const Place& place, Kept& kept)
        : place_(place), group_(group), kept_(kept), taken_(group.members.size(), false) {}

    void keepUnknown() {
        for (std::size_t i = 0; i < taken_.size(); ++i)
            if (!taken_[i]) kept_.unknown.push_back(group_.members[i]);
    }

protected:
    // The value of a key; null where it does not stand there.
    const Value* take(std::string_view key) {
        const auto isIt = [&](const Member& member) { return member.key == key; };
        const auto found = std::ranges::find_if(group_.members, isIt);
        if (found == group_.members.end()) return nullptr;
        taken_[found - group_.members.begin()] = true;
        kept_.given.emplace(key);
        return &found->value;
    }

    const Place& place_;

private:
    const Value& group_;
    Kept& kept_;
    std::vector<bool> taken_;
};

void needGroup(const Value& value, const Place& place) {
    if (value.kind != Value::Kind::group) refuse(place, found(value) + ", not a group", accepted(Group{}));
}

// Fills `target` from the members of a group; what no key of the table takes is kept as unknown.
template <class T>
class Reader : public GroupReader {
public:
    Reader(const Value& group, const Place& place, T& target, Kept& kept)
        : GroupReader(group, place, kept), target_(target) {}

    template <class Member, class Rule>
    void operator()(std::string_view key, Member member, const Rule& rule, When when = When::said) {
        const Place place{&place_, key};
        const Value* value = take(key);
        if (value)
            read(*value, place, rule, std::invoke(member, target_));
        else if (when == When::required)
            refuse(place, "this is missing", accepted(rule));
    }

    template <class KeptOf, class Walk>
    void inner(std::string_view key, KeptOf kept, Walk walk) {
        const Place place{&place_, key};
        const Value* value = take(key);
        if (!value) return;
        needGroup(*value, place);
        Reader reader(*value, place, target_, std::invoke(kept, target_));
        walk(reader);
        reader.keepUnknown();
    }

private:
    T& target_;
};

}  // namespace

template <class T>
void read(const Value& value, const Place& place, const Group&, T& target) {
    needGroup(value, place);
    Reader<T> reader(value, place, target, target.kept);
    keysOf(reader, static_cast<const T*>(nullptr));
    reader.keepUnknown();
}

namespace {

constexpr std::string_view boatKey = "fayline";
constexpr std::string_view shedKey = "fayline_shed";

// Takes the format's number, which stands under `name`, out of the file's group.
void checkFormat(Value& root, std::string_view name) {
    const Place place{nullptr, name};
    const std::string accepted = std::to_string(format);
    const auto key = std::ranges::find(root.members, name, &Member::key);
    if (key == root.members.end())
        throw InputError(std::string(name), "the number of the format is missing",
                         "begin the file with \"" + std::string(name) + "\": " + accepted);
    if (key->value.kind != Value::Kind::number) refuse(place, found(key->value) + ", not a number", accepted);
    const std::string reported = key->value.text.substr(0, 40);
    const double number = units::readInUnit(key->value.text, {});
    if (number > format)
        throw io::NewerFormat(std::string(name), "written by a newer Fayline: format " + reported,
                              "this one reads " + accepted);
    if (number != format) refuse(place, reported + " is not the number of a format", accepted);
    root.members.erase(key);
}

// ---- Writing

// The members of a group, gathered: see When.
class GroupWriter {
public:
    GroupWriter(const Kept& kept, const Place& place) : place_(place), kept_(kept) {}

    Value finish() {
        for (const Member& member : kept_.unknown) group_.members.push_back(member);
        return std::move(group_);
    }

protected:
    bool stands(std::string_view key, When when, bool isDefault) const {
        if (when == When::required || isGiven(key)) return true;
        const bool madeByProgram = kept_.given.empty();
        if (when == When::place) return madeByProgram;
        return !isDefault || (when == When::plainly && madeByProgram);
    }

    bool isGiven(std::string_view key) const { return kept_.given.contains(std::string(key)); }

    void add(std::string_view key, Value value) { group_.members.push_back({std::string(key), std::move(value)}); }

    const Place& place_;

private:
    const Kept& kept_;
    Value group_ = groupValue();
};

// Gathers them from `source`.
template <class T>
class Writer : public GroupWriter {
public:
    Writer(const T& source, const T& defaults, const Kept& kept, const Place& place)
        : GroupWriter(kept, place), source_(source), defaults_(defaults) {}

    template <class Member, class Rule>
    void operator()(std::string_view key, Member member, const Rule& rule, When when = When::said) {
        const auto& value = std::invoke(member, source_);
        const bool isDefault = value == std::invoke(member, defaults_);
        if (stands(key, when, isDefault)) add(key, write(value, Place{&place_, key}, rule));
    }

    template <class KeptOf, class Walk>
    void inner(std::string_view key, KeptOf kept, Walk walk) {
        const Place place{&place_, key};
        Writer writer(source_, defaults_, std::invoke(kept, source_), place);
        walk(writer);
        Value group = writer.finish();
        if (isGiven(key) || !group.members.empty()) add(key, std::move(group));
    }

private:
    const T& source_;
    const T& defaults_;
};

// A struct as nobody filled it.
template <class T>
const T& defaultsOf() {
    static const T defaults{};
    return defaults;
}

}  // namespace

template <class T>
Value write(const T& value, const Place& place, const Group&) {
    Writer<T> writer(value, defaultsOf<T>(), value.kept, place);
    keysOf(writer, static_cast<const T*>(nullptr));
    return writer.finish();
}

namespace {

// A coordinate that follows from what was written needs no key; one that does not is given its own.
void sayPlaces(LineInput& line, units::LengthNotation notation) {
    for (Point& point : line.points) {
        for (int axis = 0; axis < 2; ++axis) {
            const double at_m = axis == 0 ? point.x_m : point.y_m;
            const std::string key = axis == 0 ? "x_mm" : "y_mm";
            if (point.kept.given.empty() || point.kept.given.contains(key)) continue;
            if (coordinateAsWritten(point, axis, notation) != at_m) point.kept.given.insert(key);
        }
    }
}

void sayPlaces(Boat& boat) {
    for (Piece& piece : boat.pieces) {
        sayPlaces(piece.line, boat.display.lengths);
        for (Record& record : piece.record) {
            if (record.on) sayPlaces(record.on->line, boat.display.lengths);
        }
    }
}

// ---- The list of keys

template <class T>
class Lister;

template <class T, class Rule>
void list(const std::string& path, std::vector<Key>& keys, const std::vector<T>&, const ListOf<Rule>& rule);
template <class T, class Rule>
void list(const std::string& path, std::vector<Key>& keys, const std::optional<T>&, const OrNull<Rule>& rule);
template <class T, class Rule>
void list(const std::string&, std::vector<Key>&, const T&, const Rule&) {}  // a plain value has no keys of its own
template <class T>
void list(const std::string& path, std::vector<Key>& keys, const T&, const Group&) {
    Lister<T> lister(path, keys);
    keysOf(lister, static_cast<const T*>(nullptr));
}
template <class T, class Rule>
void list(const std::string& path, std::vector<Key>& keys, const std::vector<T>&, const ListOf<Rule>& rule) {
    list(path + "[]", keys, defaultsOf<T>(), rule.rule);
}
template <class T, class Rule>
void list(const std::string& path, std::vector<Key>& keys, const std::optional<T>&, const OrNull<Rule>& rule) {
    list(path, keys, defaultsOf<T>(), rule.rule);
}

class KeyList {
public:
    KeyList(std::string path, std::vector<Key>& keys) : keys_(keys), path_(std::move(path)) {}

protected:
    std::string pathOf(std::string_view key) const {
        return path_.empty() ? std::string(key) : path_ + "." + std::string(key);
    }

    void add(std::string_view key, std::string defaultValue, std::string accepted) {
        keys_.push_back({pathOf(key), std::move(defaultValue), std::move(accepted)});
    }

    std::vector<Key>& keys_;

private:
    std::string path_;
};

template <class T>
class Lister : public KeyList {
public:
    using KeyList::KeyList;

    template <class Member, class Rule>
    void operator()(std::string_view key, Member member, const Rule& rule, When when = When::said) {
        const auto& value = std::invoke(member, defaultsOf<T>());
        const bool mustBeGiven = when == When::required || when == When::place;
        add(key, mustBeGiven ? "" : writeOnOneLine(write(value, Place{}, rule)), accepted(rule));
        list(pathOf(key), keys_, value, rule);
    }

    template <class KeptOf, class Walk>
    void inner(std::string_view key, KeptOf, Walk walk) {
        add(key, "{}", accepted(Group{}));
        Lister lister(pathOf(key), keys_);
        walk(lister);
    }
};

}  // namespace

}  // namespace fayline::model

namespace fayline::io {

using namespace model;

namespace {

// What stands in the text of `whatFile` after the number of its format, which stands under `name`.
template <class T>
T readWhole(std::string_view text, std::string_view name, const std::string& whatFile) {
    Value root = parseText(text);
    if (root.kind != Value::Kind::group)
        throw InputError("", found(root) + ", not " + whatFile,
                         "give a group in braces that begins with \"" + std::string(name) + "\": 1");
    checkFormat(root, name);
    T whole;
    read(root, Place{}, Group{}, whole);
    return whole;
}

template <class T>
std::string writeWhole(const T& whole, std::string_view name) {
    Value root = write(whole, Place{}, Group{});
    root.members.insert(root.members.begin(), {std::string(name), numberValue(std::to_string(format))});
    return writeOverLines(root);
}

template <class T>
std::vector<Key> keysOfWhole(std::string_view name) {
    std::vector<Key> keys{{std::string(name), "", std::to_string(format)}};
    Lister<T> lister("", keys);
    keysOf(lister, static_cast<const T*>(nullptr));
    return keys;
}

}  // namespace

Boat readBoat(std::string_view text) {
    Boat boat = readWhole<Boat>(text, boatKey, "a project file");
    completeAndCheck(boat);
    return boat;
}

Shed readShed(std::string_view text) {
    Shed shed = readWhole<Shed>(text, shedKey, "a shed file");
    checkTogether(shed);
    return shed;
}

std::string writeBoat(const Boat& boat) {
    Boat said = boat;
    giveMissingIds(said);
    sayPlaces(said);
    said.kept.given.insert("pieces");
    return writeWhole(said, boatKey);
}

std::string writeShed(const Shed& shed) {
    return writeWhole(shed, shedKey);
}

std::vector<Key> fileKeys() {
    return keysOfWhole<Boat>(boatKey);
}

std::vector<Key> shedKeys() {
    return keysOfWhole<Shed>(shedKey);
}

}  // namespace fayline::io
