#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <span>

#include "core/units/length.hpp"
#include "core/units/length_text.hpp"

namespace fayline::units {
namespace {

constexpr const char* example = "write a length like 2-3-4+, 27 1/2 in or 698.5 mm";
constexpr const char* eighthsExample = "write feet-inches-eighths like 2-3-4, for 2 feet 3 4/8 inches";

[[noreturn]] void refuse(const std::string& wrong, const std::string& accepted) {
    throw InputError("", wrong, accepted);
}

enum class Unit { none, foot, inch, millimetre, centimetre, metre };

// Numerator and denominator stay whole as long as they can, so that every way of writing a length ends in one
// division and gives the same double.
struct Number {
    double numerator = 0;
    double denominator = 1;
    bool whole = true;      // digits alone
    bool fraction = false;  // has a slash in it
    std::string text;

    double value() const { return numerator / denominator; }
};

struct Part {
    Number number;
    Unit unit = Unit::none;
    bool dashBefore = false;
};

struct Ratio {
    double numerator;
    double denominator;
};

Ratio metresPer(Unit unit) {
    switch (unit) {
        case Unit::foot:
            return {3048, 10000};
        case Unit::inch:
            return {254, 10000};
        case Unit::millimetre:
            return {1, 1000};
        case Unit::centimetre:
            return {1, 100};
        case Unit::none:
        case Unit::metre:
            break;
    }
    return {1, 1};
}

double metres(const Number& number, Unit unit) {
    const Ratio per = metresPer(unit);
    return number.numerator * per.numerator / (number.denominator * per.denominator);
}

void refuseDoubtfulComma(const std::string& text, Unit unit) {
    const std::size_t comma = text.find(',');
    if (comma == std::string::npos || unit == Unit::metre) return;
    const bool groupOfThree = text.size() == comma + 4 && text.find_first_of("eE") == std::string::npos;
    const bool couldBeThousands = comma >= 1 && comma <= 3 && text[0] != '0';
    if (!groupOfThree || !couldBeThousands) return;
    std::string joined = text;
    joined.erase(comma, 1);
    std::string pointed = text;
    pointed[comma] = '.';
    refuse(text + " may mean " + joined + " or " + pointed, "write " + joined + " or " + pointed);
}

Number readNumber(const std::string& written) {
    Number number;
    number.text = written;
    std::string text = written;
    std::size_t digits = 0;
    std::size_t decimals = 0;
    bool pastMark = false;
    bool exponent = false;
    for (char& c : text) {
        if (c == ',') c = '.';
        if (c == 'e' || c == 'E') exponent = true;
        if (c == '.') pastMark = true;
        const bool digit = c >= '0' && c <= '9';
        if (digit && !exponent) ++digits;
        if (digit && !exponent && pastMark) ++decimals;
    }
    number.whole = !pastMark && !exponent;

    const auto read = [&written](const std::string& figure) {
        double value = 0;
        const auto [end, error] = std::from_chars(figure.data(), figure.data() + figure.size(), value);
        if (error != std::errc{} || end != figure.data() + figure.size() || !std::isfinite(value)) {
            refuse(written + " is beyond any length", "give a length up to 1000 m");
        }
        return value;
    };
    const bool staysWhole = digits <= 15 && !exponent;
    if (!staysWhole) {
        number.numerator = read(text);
        return number;
    }
    if (pastMark) text.erase(text.find('.'), 1);
    number.numerator = read(text);
    for (std::size_t i = 0; i < decimals; ++i) number.denominator *= 10;
    return number;
}

Unit unitOfWord(const std::string& word) {
    struct Named {
        const char* word;
        Unit unit;
    };
    static constexpr std::array<Named, 18> units{{
        {"mm", Unit::millimetre},
        {"millimetre", Unit::millimetre},
        {"millimetres", Unit::millimetre},
        {"millimeter", Unit::millimetre},
        {"millimeters", Unit::millimetre},
        {"cm", Unit::centimetre},
        {"centimetres", Unit::centimetre},
        {"centimeters", Unit::centimetre},
        {"m", Unit::metre},
        {"metre", Unit::metre},
        {"metres", Unit::metre},
        {"meters", Unit::metre},
        {"in", Unit::inch},
        {"inch", Unit::inch},
        {"inches", Unit::inch},
        {"ft", Unit::foot},
        {"foot", Unit::foot},
        {"feet", Unit::foot},
    }};
    for (const Named& named : units) {
        if (word == named.word) return named.unit;
    }
    if (word == "nan" || word == "inf" || word == "infinity") refuse(word + " is not a length", example);
    refuse("\"" + word + "\" is not a unit of length", "write ' or ft, \" or in, mm, cm or m");
}

// Takes parts off the front of the tokens.
class PartReader {
public:
    explicit PartReader(std::span<const Token> tokens) : tokens_(tokens) {}

    std::vector<Part> readAll() {
        std::vector<Part> parts;
        while (!tokens_.empty()) {
            const bool dash = !parts.empty() && at(0, TokenKind::dash);
            if (dash) tokens_ = tokens_.subspan(1);
            parts.push_back(readPart());
            parts.back().dashBefore = dash;
        }
        return parts;
    }

private:
    bool at(std::size_t ahead, TokenKind kind) const { return ahead < tokens_.size() && tokens_[ahead].is(kind); }

    Part readPart() {
        if (!at(0, TokenKind::number)) refuseInPlaceOfNumber();
        Part part{.number = readMixedNumber(), .unit = readUnit()};
        refuseDoubtfulComma(part.number.text, part.unit);
        return part;
    }

    [[noreturn]] void refuseInPlaceOfNumber() const {
        if (tokens_.empty()) refuse("a number is missing at the end", example);
        const Token& token = tokens_[0];
        if (token.is(TokenKind::word)) unitOfWord(token.text);
        refuse("a number is missing before " + token.text, example);
    }

    Number readMixedNumber() {
        const Number first = readNumber(tokens_[0].text);
        if (at(1, TokenKind::slash)) return readFraction(0);
        // 27 1/2 and 27-1/2
        const std::size_t dash = at(1, TokenKind::dash) ? 1 : 0;
        const bool mixed = at(1 + dash, TokenKind::number) && at(2 + dash, TokenKind::slash);
        if (!mixed) {
            tokens_ = tokens_.subspan(1);
            return first;
        }
        const Number fraction = readFraction(1 + dash);
        const std::string text = first.text + " " + fraction.text;
        if (!first.whole) refuse(text + " has a decimal and a fraction", "write one or the other, like 27.5 or 27 1/2");
        if (fraction.numerator >= fraction.denominator) {
            refuse(fraction.text + " after " + first.text + " is not below 1", "write a fraction like 1/2 or 3/8");
        }
        return {first.numerator * fraction.denominator + fraction.numerator, fraction.denominator, false, true, text};
    }

    // The fraction whose numerator stands `ahead` of the front; takes everything up to its end.
    Number readFraction(std::size_t ahead) {
        const Number above = readNumber(tokens_[ahead].text);
        if (!at(ahead + 2, TokenKind::number))
            refuse("nothing stands under the stroke of " + above.text + "/", example);
        const Number below = readNumber(tokens_[ahead + 2].text);
        const std::string text = above.text + "/" + below.text;
        if (!above.whole || !below.whole) refuse(text + " is not a fraction of whole numbers", "write it like 3/8");
        if (below.numerator == 0) refuse("a fraction over 0 (" + text + ")", "write a fraction like 1/2 or 3/8");
        tokens_ = tokens_.subspan(ahead + 3);
        return {above.numerator, below.numerator, false, true, text};
    }

    Unit readUnit() {
        if (tokens_.empty()) return Unit::none;
        Unit unit = Unit::none;
        if (at(0, TokenKind::footMark)) unit = Unit::foot;
        if (at(0, TokenKind::inchMark)) unit = Unit::inch;
        if (at(0, TokenKind::word)) unit = unitOfWord(tokens_[0].text);
        if (unit != Unit::none) tokens_ = tokens_.subspan(1);
        return unit;
    }

    std::span<const Token> tokens_;
};

double onePart(const Part& part, LengthNotation assumed) {
    if (part.unit != Unit::none) return metres(part.number, part.unit);
    const bool inches = part.number.fraction || assumed != LengthNotation::millimetres;
    return metres(part.number, inches ? Unit::inch : Unit::millimetre);
}

double wholeFeet(const Part& part) {
    if (!part.number.whole) refuse(part.number.text + " feet: feet before inches are whole", eighthsExample);
    return part.number.numerator;
}

double feetAndInches(const Part& feet, const Part& inches) {
    const Number& over = inches.number;
    if (over.value() >= 12) {
        refuse(over.text + " inches: inches after feet run from 0 to 11",
               "write 2'-3 1/2\" or inches alone, like 27 1/2 in");
    }
    const double foot = wholeFeet(feet);
    return metres({foot * 12 * over.denominator + over.numerator, over.denominator}, Unit::inch);
}

double twoParts(const Part& first, const Part& second) {
    const std::string both = first.number.text + (second.dashBefore ? "-" : " ") + second.number.text;
    const bool secondMayBeInches = second.unit == Unit::none || second.unit == Unit::inch;
    if (first.unit == Unit::foot && secondMayBeInches) return feetAndInches(first, second);
    if (first.unit != Unit::none || !secondMayBeInches) {
        refuse(both + " in units that do not go together", "write one unit, or feet and inches like 2'-3 1/2\"");
    }
    if (!second.dashBefore) refuse(both + ": two numbers with nothing between them", example);
    if (second.unit == Unit::none && second.number.whole) {
        refuse(both + " may be feet and inches or inches and eighths",
               "write " + both + "-0 or 0-" + both + ", all of feet-inches-eighths");
    }
    return feetAndInches(first, second);
}

double threeParts(const std::vector<Part>& parts, std::optional<TokenKind> sixteenth) {
    const Part& inches = parts[1];
    const Part& eighths = parts[2];
    const bool unitsFit = (parts[0].unit == Unit::none || parts[0].unit == Unit::foot) &&
                          (inches.unit == Unit::none || inches.unit == Unit::inch) && eighths.unit == Unit::none;
    if (!unitsFit) refuse("three numbers in units that do not go together", eighthsExample);
    for (std::size_t i = 1; i < parts.size(); ++i) {
        if (parts[i].dashBefore || parts[i - 1].unit != Unit::none) continue;
        refuse(parts[i - 1].number.text + " " + parts[i].number.text + ": two numbers with nothing between them",
               eighthsExample);
    }
    const double foot = wholeFeet(parts[0]);
    if (!inches.number.whole) refuse(inches.number.text + " inches: inches before eighths are whole", eighthsExample);
    if (inches.number.numerator > 11) refuse(inches.number.text + " inches: inches run from 0 to 11", eighthsExample);
    if (!eighths.number.whole) {
        refuse(eighths.number.text + " eighths: eighths are whole",
               "write + after them for a sixteenth more, like 2-3-4+");
    }
    const double mostEighths = sixteenth == TokenKind::dash ? 8 : 7;
    if (eighths.number.numerator > mostEighths) {
        refuse(eighths.number.text + " eighths: eighths run from 0 to 7", eighthsExample);
    }
    double sixteenths = foot * 192 + inches.number.numerator * 16 + eighths.number.numerator * 2;
    if (sixteenth == TokenKind::plus) sixteenths += 1;
    if (sixteenth == TokenKind::dash) sixteenths -= 1;
    if (sixteenths < 0) refuse("a sixteenth off nothing (0-0-0-)", "write -0-0-0+ for a sixteenth below zero");
    return metres({sixteenths, 16}, Unit::inch);
}

double lengthOf(const std::vector<Part>& parts, std::optional<TokenKind> sixteenth, LengthNotation assumed) {
    if (parts.size() > 3) {
        refuse(parts[3].number.text + " is a fourth number", eighthsExample);
    }
    if (parts.size() == 3) return threeParts(parts, sixteenth);
    // The ambiguity of two numbers is told before a sign after them is.
    const double length = parts.size() == 2 ? twoParts(parts[0], parts[1]) : onePart(parts[0], assumed);
    if (sixteenth) {
        const char* sign = sixteenth == TokenKind::plus ? "+" : "-";
        refuse(std::string("a ") + sign + " at the end without eighths before it", eighthsExample);
    }
    return length;
}

}  // namespace

double readLength(std::string_view text, LengthNotation assumed) {
    const std::vector<Token> all = lengthTokens(text);
    std::span<const Token> tokens = all;

    const bool negative = tokens.front().is(TokenKind::dash);
    if (negative || tokens.front().is(TokenKind::plus)) tokens = tokens.subspan(1);
    if (tokens.empty()) refuse("a sign without a number", example);

    std::optional<TokenKind> sixteenth;
    const Token& last = tokens.back();
    if (tokens.size() > 1 && (last.is(TokenKind::plus) || last.is(TokenKind::dash))) {
        sixteenth = last.kind;
        tokens = tokens.first(tokens.size() - 1);
    }

    const double length = lengthOf(PartReader(tokens).readAll(), sixteenth, assumed);
    if (!(length <= longestLength_m)) refuse("a length of more than 1000 m", "give a length up to 1000 m");
    return negative && length != 0 ? -length : length;
}

}  // namespace fayline::units
