#include "core/plan/findings/text.hpp"

#include <cmath>
#include <string_view>

#include "core/holding/kinds.hpp"
#include "core/plan/findings/breaking_wording.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/findings/line_wording.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/units/day_reading.hpp"
#include "core/units/day_text.hpp"
#include "core/units/figures.hpp"
#include "core/units/force.hpp"
#include "core/units/scale.hpp"
#include "core/units/units.hpp"

namespace fayline::plan {

Message::Message() = default;
Message::Message(const Phrase& pattern) : phrase(pattern) {}
Message::Message(const Phrase& pattern, std::vector<Arg> in, int number)
    : phrase(pattern), args(std::move(in)), count(number) {}
Message::Message(std::string words) {
    if (words.empty()) return;
    phrase = {"%1"};
    args.emplace_back(std::move(words));
}
Message::Message(const Message& other) = default;
Message::Message(Message&& other) noexcept = default;
Message& Message::operator=(const Message& other) = default;
Message& Message::operator=(Message&& other) noexcept = default;
Message::~Message() = default;

Arg::Arg(Kind what, double number, double other, int digits)
    : kind(what), value(number), beside(other), figures(digits) {}
Arg::Arg(std::string text) : words(std::move(text)) {}
Arg::Arg(const char* text) : words(text) {}
Arg::Arg(Message message) : kind(Kind::list), messages{std::move(message)} {}
Arg::Arg(Kind what, std::vector<Message> all) : kind(what), messages(std::move(all)) {}
Arg::Arg(const Arg& other) = default;
Arg::Arg(Arg&& other) noexcept = default;
Arg& Arg::operator=(const Arg& other) = default;
Arg& Arg::operator=(Arg&& other) noexcept = default;
Arg::~Arg() = default;

bool Arg::operator==(const Arg& other) const = default;

bool Message::empty() const {
    return *phrase.one == '\0';
}

bool Message::is(const Phrase& other) const {
    return std::string_view(phrase.one) == other.one;
}

bool Message::operator==(const Message& other) const {
    return is(other.phrase) && count == other.count && args == other.args;
}

namespace {

constexpr Phrase andLast{FAYLINE_TEXT("plan", "%1 and %2")};
constexpr Phrase orLast{FAYLINE_TEXT("plan", "%1 or %2")};
constexpr Phrase beforeStart{FAYLINE_TEXT("plan", "%1 before the start")};
constexpr Phrase pastEnd{FAYLINE_TEXT("plan", "%1 past the end")};
constexpr Phrase atStart{FAYLINE_TEXT("plan", "the start")};
constexpr Phrase atEnd{FAYLINE_TEXT("plan", "the end")};
constexpr Phrase roughly{FAYLINE_TEXT("plan", "about %1")};
constexpr Phrase fromTo{FAYLINE_TEXT("plan", "%1 to %2")};
constexpr Phrase light{FAYLINE_TEXT("plan", "light, under %1")};

class Writer {
public:
    Writer(const units::Display& display, const Translate& translate) : display_(display), translate_(translate) {}

    std::string write(const Message& message) const {
        const Phrase& phrase = message.phrase;
        const char* english = phrase.many && message.count != 1 ? phrase.many : phrase.one;
        const std::string pattern =
            translate_ ? translate_(phrase.many ? phrase.many : phrase.one, message.count) : std::string(english);
        std::string text;
        for (std::size_t i = 0; i < pattern.size(); ++i) {
            const char next = i + 1 < pattern.size() ? pattern[i + 1] : '\0';
            const auto place = static_cast<std::size_t>(next - '1');
            if (pattern[i] == '%' && next == 'n') {
                text += std::to_string(message.count);
                ++i;
            } else if (pattern[i] == '%' && next >= '1' && next <= '9' && place < message.args.size()) {
                const std::string in = write(message.args[place]);
                text += text.ends_with(". ") ? capitalised(in) : in;
                ++i;
            } else {
                text += pattern[i];
            }
        }
        return text;
    }

private:
    std::string joined(const std::vector<Message>& messages, const Phrase& last) const {
        std::string text;
        for (std::size_t i = 0; i + 1 < messages.size(); ++i) text += (i == 0 ? "" : ", ") + write(messages[i]);
        if (messages.empty()) return text;
        return messages.size() == 1 ? write(messages.back()) : write(Message(last, {text, messages.back()}));
    }

    std::string place(double at_m, double length_m) const {
        if (at_m < 0) return write(Message(beforeStart, {put::span(-at_m)}));
        if (at_m > length_m) return write(Message(pastEnd, {put::span(at_m - length_m)}));
        if (at_m == 0) return write(Message(atStart));
        return at_m == length_m ? write(Message(atEnd)) : units::writeLength(at_m, display_);
    }

    std::string weight(double mass_kg) const {
        const bool metric = display_.lengths == units::LengthNotation::millimetres;
        units::Display besideLengths = display_;
        besideLengths.weights = metric ? units::WeightUnit::gram : units::WeightUnit::ounce;
        return units::writeOnScale(mass_kg, besideLengths);
    }

    std::string force(double force_N, double other_N) const {
        constexpr int mostFigures = 5;
        int figures = 2;
        while (figures < mostFigures &&
               units::writeForce(force_N, display_, figures) == units::writeForce(other_N, display_, figures)) {
            ++figures;
        }
        return units::writeForce(force_N, display_, figures);
    }

    // The model of a mix that heats itself knows its peak no better than to ten degrees.
    std::string peak(double from_C, double to_C) const {
        const bool fahrenheit = display_.temperatures == units::TemperatureUnit::fahrenheit;
        const auto tens = [fahrenheit](double value_C) {
            const double value = fahrenheit ? units::toFahrenheit(value_C) : value_C;
            return units::writeNumber(10 * std::round(value / 10), 4);
        };
        const std::string to = tens(to_C) + (fahrenheit ? " \u00b0F" : " \u00b0C");
        if (tens(from_C) == tens(to_C)) return write(Message(roughly, {to}));
        return write(Message(fromTo, {tens(from_C), to}));
    }

    static std::string degrees(double angle_rad, int decimals) {
        return units::fixedFigures(units::toDegrees(angle_rad), decimals) + "\u00b0";
    }

    static std::string angle(double angle_rad, double other_rad) {
        return degrees(angle_rad, degrees(angle_rad, 0) == degrees(other_rad, 0) ? 1 : 0);
    }

    std::string write(const Arg& arg) const {
        switch (arg.kind) {
            case Arg::Kind::words:
                return arg.words;
            case Arg::Kind::list:
                return joined(arg.messages, andLast);
            case Arg::Kind::alternatives:
                return joined(arg.messages, orLast);
            case Arg::Kind::sentences:
                return writeTexts(arg.messages, display_, translate_);
            case Arg::Kind::number:
                return units::writeNumber(arg.value, arg.figures);
            case Arg::Kind::count:
                return units::fixedFigures(arg.value, 0);
            case Arg::Kind::countWord:
                return translate_ ? units::fixedFigures(arg.value, 0) : numberWord(static_cast<int>(arg.value));
            case Arg::Kind::share:
                return units::writeShare(arg.value, arg.figures);
            case Arg::Kind::chance:
                return chanceText(arg.value);
            case Arg::Kind::place:
                return place(arg.value, arg.beside);
            case Arg::Kind::length:
                return units::writeLength(arg.value, display_);
            case Arg::Kind::span:
                return spanText(arg.value, display_);
            case Arg::Kind::small:
                return smallText(arg.value, display_);
            case Arg::Kind::thickness:
                return units::writeThickness(arg.value, display_);
            case Arg::Kind::atLeast:
                return atLeastText(arg.value, display_);
            case Arg::Kind::tape:
                return tapeText(arg.value, display_);
            case Arg::Kind::reach:
                return reachText(arg.value, display_);
            case Arg::Kind::known:
                return units::writeLength(knownLength(arg.value, arg.beside, display_), display_);
            case Arg::Kind::force:
                return units::writeForce(arg.value, display_);
            case Arg::Kind::pull:
                return arg.beside > 0 ? write(Message(light, {put::force(holding::lightPull_N)}))
                                      : units::writeForce(arg.value, display_);
            case Arg::Kind::forceBeside:
                return force(arg.value, arg.beside);
            case Arg::Kind::moment:
                return units::writeMoment(arg.value, display_);
            case Arg::Kind::mass:
                return units::writeMass(arg.value, display_);
            case Arg::Kind::weight:
                return weight(arg.value);
            case Arg::Kind::temperature:
                return units::writeTemperature(arg.value, display_);
            case Arg::Kind::peak:
                return peak(arg.beside, arg.value);
            case Arg::Kind::coat:
                return units::typedCoat(std::round(1000 * arg.value) / 1000);
            case Arg::Kind::pressure:
                return units::writePressure(arg.value, display_);
            case Arg::Kind::stress:
                return units::writeStress(arg.value, display_);
            case Arg::Kind::angle:
                return degrees(arg.value, 0);
            case Arg::Kind::angleBeside:
                return angle(arg.value, arg.beside);
            case Arg::Kind::duration:
                return units::writeDuration(arg.value);
            case Arg::Kind::clock:
                return units::writeClock(arg.value);
        }
        return {};
    }

    const units::Display& display_;
    const Translate& translate_;
};

}  // namespace

std::string writeText(const Message& message, const units::Display& display, const Translate& translate) {
    return capitalised(Writer(display, translate).write(message));
}

std::string writeWithin(const Message& message, const units::Display& display, const Translate& translate) {
    return Writer(display, translate).write(message);
}

std::string writeTexts(const std::vector<Message>& messages, const units::Display& display,
                       const Translate& translate) {
    std::string text;
    for (const Message& message : messages) {
        if (!message.empty()) text += (text.empty() ? "" : " ") + writeText(message, display, translate);
    }
    return text;
}

}  // namespace fayline::plan
