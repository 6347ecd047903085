#include "core/model/rules.hpp"

#include <cmath>
#include <cstdio>

namespace fayline::model {

namespace {

// No length, force or price in a boat yard is beyond this, in any unit of the file; nor has a thing that must have a
// size one below the least. They keep what follows from the input finite.
constexpr double mostOfAll = 1e9;
constexpr double leastSize = 1e-6;

bool isNumber(const Value& value) {
    return value.kind == Value::Kind::number;
}

std::string figures(double value) {
    return units::writeInUnit(value, {});
}

// Two digits at `at`, or -1.
int twoDigits(const std::string& text, std::size_t at) {
    if (at + 2 > text.size()) return -1;
    const auto digit = [&](std::size_t i) { return text[i] >= '0' && text[i] <= '9' ? text[i] - '0' : -100; };
    const int number = digit(at) * 10 + digit(at + 1);
    return number < 0 ? -1 : number;
}

// Seconds after midnight of 08:30 or 08:30:15; -1 if it is no time of day.
double timeOfDay(const std::string& text) {
    if (text.size() != 5 && text.size() != 8) return -1;
    const int hour = twoDigits(text, 0);
    const int minute = twoDigits(text, 3);
    const int second = text.size() == 8 ? twoDigits(text, 6) : 0;
    if (text[2] != ':' || (text.size() == 8 && text[5] != ':')) return -1;
    if (hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 59) return -1;
    return hour * 3600.0 + minute * 60 + second;
}

bool isDate(const std::string& text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
    const int century = twoDigits(text, 0);
    const int year = twoDigits(text, 2);
    const int month = twoDigits(text, 5);
    const int day = twoDigits(text, 8);
    if (century < 0 || year < 0 || month < 1 || month > 12 || day < 1) return false;
    const int fullYear = century * 100 + year;
    const bool leap = (fullYear % 4 == 0 && fullYear % 100 != 0) || fullYear % 400 == 0;
    constexpr int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return day <= days[month - 1] + (month == 2 && leap ? 1 : 0);
}

}  // namespace

std::string Place::path() const {
    std::string path = above ? above->path() : "";
    if (item >= 0) return path + "[" + std::to_string(item) + "]";
    return path.empty() || key.empty() ? path + std::string(key) : path + "." + std::string(key);
}

void refuse(const Place& place, const std::string& wrong, const std::string& accepted) {
    throw units::InputError(place.path(), wrong, "give " + accepted);
}

void refuseList(const Value& value, const Place& place, const std::string& accepted) {
    if (value.kind != Value::Kind::list) refuse(place, found(value) + ", not a list", accepted);
    refuse(place, "this list holds " + (value.items.empty() ? "nothing" : std::to_string(value.items.size())),
           accepted);
}

void refusePair(const Value& value, const Place& place, const std::string& accepted) {
    if (value.kind != Value::Kind::list) refuse(place, found(value) + ", not a list", accepted);
    refuse(place, "this list holds " + std::to_string(value.items.size()) + ", not two", accepted);
}

void refuseWord(const Value& value, const Place& place, const std::string& accepted) {
    const bool isText = value.kind == Value::Kind::text;
    refuse(place, found(value) + (isText ? " that is not known here" : ", not a word"), accepted);
}

std::string found(const Value& value) {
    constexpr std::size_t most = 40;
    std::string reported = value.text.substr(0, most);
    reported.resize(endOfUtf8(reported));
    if (value.text.size() > most) reported += "...";
    switch (value.kind) {
        case Value::Kind::null:
            return "null stands here";
        case Value::Kind::truth:
            return value.truth ? "true stands here" : "false stands here";
        case Value::Kind::number:
            return reported + " is a number";
        case Value::Kind::text:
            return writeOnOneLine(textValue(reported)) + " is text";
        case Value::Kind::list:
            return "a list stands here";
        case Value::Kind::group:
            return "a group of keys stands here";
    }
    return "";
}

void read(const Value& value, const Place& place, const Number& rule, double& target) {
    if (!isNumber(value)) refuse(place, found(value) + ", not a number", accepted(rule));
    const double inFile = units::readInUnit(value.text, {});
    const std::string wrong = value.text.substr(0, 40) + " is not " + std::string(rule.what);
    const bool tooLittle = rule.above ? inFile <= rule.least : inFile < rule.least;
    if (tooLittle || inFile > rule.most) refuse(place, wrong, accepted(rule));
    if (std::abs(inFile) > mostOfAll)
        refuse(place, wrong, accepted(rule) + (inFile > 0 ? ", at most " : ", at least -") + figures(mostOfAll));
    if (rule.above && rule.least == 0 && inFile < leastSize)
        refuse(place, wrong, accepted(rule) + ", at least " + figures(leastSize));
    target = units::readInUnit(value.text, rule.unit);
}

Value write(double value, const Place& place, const Number& rule) {
    if (!std::isfinite(value)) refuse(place, "this is not a finite number", accepted(rule));
    return numberValue(units::writeInUnit(value, rule.unit));
}

std::string accepted(const Number& rule) {
    const bool hasLeast = rule.least > -unbounded;
    const bool hasMost = rule.most < unbounded;
    if (hasLeast && hasMost && !rule.above) return "a number from " + figures(rule.least) + " to " + figures(rule.most);
    std::string text = "a number";
    if (hasLeast) text += rule.above ? " above " + figures(rule.least) : " of " + figures(rule.least) + " or more";
    if (hasMost) text += (hasLeast ? " and at most " : " of at most ") + figures(rule.most);
    return text;
}

void read(const Value& value, const Place& place, const Whole& rule, int& target) {
    if (!isNumber(value)) refuse(place, found(value) + ", not a number", accepted(rule));
    const double number = units::readInUnit(value.text, {});
    const std::string reported = value.text.substr(0, 40);
    if (std::floor(number) != number) refuse(place, reported + " is not a whole number", accepted(rule));
    if (number < rule.least || number > rule.most)
        refuse(place, reported + " is not " + std::string(rule.what), accepted(rule));
    target = int(number);
}

Value write(int value, const Place&, const Whole&) {
    return numberValue(std::to_string(value));
}

std::string accepted(const Whole& rule) {
    if (rule.most == std::numeric_limits<int>::max())
        return "a whole number of " + std::to_string(rule.least) + " or more";
    return "a whole number from " + std::to_string(rule.least) + " to " + std::to_string(rule.most);
}

void read(const Value& value, const Place& place, const Text& rule, std::string& target) {
    if (value.kind != Value::Kind::text) refuse(place, found(value) + ", not text", accepted(rule));
    target = value.text;
}

Value write(const std::string& value, const Place& place, const Text& rule) {
    if (endOfUtf8(value) < value.size()) refuse(place, "this text holds bytes that are not UTF-8", accepted(rule));
    return textValue(value);
}

std::string accepted(const Text&) {
    return "a text in double quotes";
}

void read(const Value& value, const Place& place, const Truth& rule, bool& target) {
    if (value.kind != Value::Kind::truth) refuse(place, found(value) + ", neither true nor false", accepted(rule));
    target = value.truth;
}

Value write(bool value, const Place&, const Truth&) {
    return truthValue(value);
}

std::string accepted(const Truth&) {
    return "true or false";
}

void read(const Value& value, const Place& place, const Clock& rule, double& target) {
    if (value.kind != Value::Kind::text) refuse(place, found(value) + ", not a time in quotes", accepted(rule));
    const double seconds = timeOfDay(value.text);
    if (seconds < 0) refuse(place, found(value) + ", but not a time of day", accepted(rule));
    target = seconds;
}

Value write(double value, const Place& place, const Clock& rule) {
    if (!(value >= 0 && value < 24 * 3600)) refuse(place, "this is not a time of day", accepted(rule));
    const int seconds = int(value);
    char text[48];
    if (seconds % 60 == 0)
        std::snprintf(text, sizeof text, "%02d:%02d", seconds / 3600, seconds / 60 % 60);
    else
        std::snprintf(text, sizeof text, "%02d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
    return textValue(text);
}

std::string accepted(const Clock&) {
    return "a time of day like \"08:30\"";
}

void read(const Value& value, const Place& place, const DateTime& rule, std::string& target) {
    if (value.kind != Value::Kind::text) refuse(place, found(value) + ", not a day and time in quotes", accepted(rule));
    const std::string& text = value.text;
    const bool dayAlone = text.size() == 10;
    const bool right = isDate(text.substr(0, 10)) &&
                       (dayAlone || ((text[10] == 'T' || text[10] == ' ') && timeOfDay(text.substr(11)) >= 0));
    if (!text.empty() && !right) refuse(place, found(value) + ", but not a day and time", accepted(rule));
    target = text;
}

Value write(const std::string& value, const Place& place, const DateTime&) {
    return write(value, place, Text{});
}

std::string accepted(const DateTime&) {
    return "a day and time like \"2026-05-02T08:30\"";
}

std::string acceptedWords(const std::vector<std::string_view>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
        text += "\"" + std::string(words[i]) + "\"";
    }
    return text;
}

}  // namespace fayline::model
