// Spoilt project files against readBoat: each gives a boat or an InputError, and nothing else.
//
// Two sample files and the file of every key are spoilt from a fixed seed in two ways: as text (bytes changed, parts
// cut, doubled, moved, words put in) and as a tree (a value replaced by another, a key dropped or renamed). Of each
// answer: a boat is written and read again as it was; an error says something and is valid UTF-8.
#include <array>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "core/io/file.hpp"
#include "core/model/value.hpp"

namespace {

using namespace fayline;
using model::Value;

std::mt19937_64 random64(20240608);

std::size_t below(std::size_t count) {
    return static_cast<std::size_t>(random64() % count);
}

constexpr std::array<std::string_view, 48> words{"{",
                                                 "}",
                                                 "[",
                                                 "]",
                                                 ",",
                                                 ":",
                                                 "\"",
                                                 "\\",
                                                 "null",
                                                 "true",
                                                 "false",
                                                 "0",
                                                 "-0",
                                                 "-1",
                                                 "1e400",
                                                 "1e-400",
                                                 "-1e308",
                                                 "1e15",
                                                 "0.1e-7",
                                                 "NaN",
                                                 "Infinity",
                                                 "01",
                                                 "1.",
                                                 "//",
                                                 "/* */",
                                                 "#",
                                                 "\"\\ud800\"",
                                                 "\"\\u0000\"",
                                                 "\xC3",
                                                 "\xEF\xBB\xBF",
                                                 "\n",
                                                 "\t",
                                                 "\"x_mm\"",
                                                 "\"fayline\": 1,",
                                                 "\"count\": 2",
                                                 "\"2-3-4+\"",
                                                 "\"written\"",
                                                 "\"auto\"",
                                                 "\"08:30\"",
                                                 "\"left\"",
                                                 "[[[[[[",
                                                 "{\"a\":{\"a\":",
                                                 "99999999999999999999",
                                                 "2147483648",
                                                 "1e9",
                                                 "1e10",
                                                 "\"inches\"",
                                                 "\"pieces\": []"};

std::string spoiltAsText(std::string text, const std::string& other) {
    for (std::size_t times = 1 + below(4); times > 0 && !text.empty(); --times) {
        const std::size_t at = below(text.size());
        const std::size_t length = below(std::min<std::size_t>(text.size() - at, 60)) + 1;
        switch (below(7)) {
            case 0:
                text[at] = static_cast<char>(below(256));
                break;
            case 1:
                text.erase(at, length);
                break;
            case 2:
                text.insert(at, text.substr(below(text.size()), length));
                break;
            case 3:
                text.insert(at, words[below(words.size())]);
                break;
            case 4:
                text.insert(at, other.substr(below(other.size()), length));
                break;
            case 5:
                text.resize(at);
                break;
            default:
                text.replace(at, length, words[below(words.size())]);
        }
    }
    return text;
}

void gather(Value& value, std::vector<Value*>& all) {
    all.push_back(&value);
    for (model::Member& member : value.members) gather(member.value, all);
    for (Value& item : value.items) gather(item, all);
}

Value anyValue() {
    static constexpr std::array<const char*, 12> numbers{"0",    "-6",   "1e9", "1e-300", "0.5",     "-0.0",
                                                         "1e15", "1000", "3",   "2.5",    "1e-7000", "4294967296"};
    static constexpr std::array<const char*, 8> texts{"",       "auto",     "right",    "08:30",
                                                      "2-3-4+", "in place", "\xC3\xB6", "2026-05-02"};
    switch (below(6)) {
        case 0:
            return {};
        case 1:
            return model::truthValue(below(2) == 0);
        case 2:
            return model::textValue(texts[below(texts.size())]);
        case 3:
            return below(2) == 0 ? model::listValue() : model::groupValue();
        default:
            return model::numberValue(numbers[below(numbers.size())]);
    }
}

std::string spoiltAsTree(Value root, Value other) {
    for (std::size_t times = 1 + below(3); times > 0; --times) {
        std::vector<Value*> all;
        std::vector<Value*> others;
        gather(root, all);
        gather(other, others);
        Value& value = *all[below(all.size())];
        switch (below(5)) {
            case 0:
                if (!value.members.empty())
                    value.members.erase(value.members.begin() + long(below(value.members.size())));
                break;
            case 1:
                if (!value.members.empty()) value.members[below(value.members.size())].key += "_old";
                break;
            case 2:
                if (!value.items.empty()) value.items.push_back(Value(value.items[below(value.items.size())]));
                break;
            case 3:
                value = Value(*others[below(others.size())]);
                break;
            default:
                value = anyValue();
        }
    }
    return model::writeOverLines(root);
}

[[noreturn]] void fail(const std::string& text, const std::string& why) {
    std::printf("%s, for the text\n%s\n", why.c_str(), text.c_str());
    std::exit(1);
}

// Whether the text was read.
bool check(const std::string& text) {
    model::Boat read;
    try {
        read = io::readBoat(text);
    } catch (const units::InputError& error) {
        const std::string told = error.what();
        if (error.wrong().empty() || error.accepted().empty()) fail(text, "an error says too little");
        if (model::endOfUtf8(told) < told.size()) fail(text, "an error is not valid UTF-8");
        if (told.size() > 2000) fail(text, "an error says too much");
        return false;
    } catch (const std::exception& error) {
        fail(text, std::string("an error of another kind: ") + error.what());
    }
    try {
        const std::string written = io::writeBoat(read);
        const model::Boat again = io::readBoat(written);
        if (!(again == read)) fail(text, "a boat does not come back");
        if (io::writeBoat(again) != written) fail(text, "a file does not come back");
    } catch (const std::exception& error) {
        fail(text, std::string("a boat that was read is not written and read again: ") + error.what());
    }
    return true;
}

std::string textOf(const std::string& path) {
    std::ifstream file(path);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

}  // namespace

int main(int argc, char** argv) {
    const long rounds = argc > 1 ? std::strtol(argv[1], nullptr, 10) : 200000;
    const std::string samples = FAYLINE_SAMPLES;
    std::vector<std::string> texts;
    std::vector<Value> trees;
    for (const char* name : {"/marram_misread.fayline", "/minimal.fayline", "/../tests/core/io/every_key.fayline"}) {
        texts.push_back(textOf(samples + name));
        if (!check(texts.back())) fail(name, "a sample is not read");
        trees.push_back(model::parseText(texts.back()));
    }
    long read = 0;
    for (long round = 0; round < rounds; ++round) {
        const std::size_t which = below(texts.size());
        const std::size_t other = below(texts.size());
        const std::string text =
            round % 2 == 0 ? spoiltAsText(texts[which], texts[other]) : spoiltAsTree(trees[which], trees[other]);
        if (check(text)) ++read;
    }
    std::printf("file_fuzz: %ld texts, %ld gave a boat, the others an error\n", rounds, read);
    return rounds > 0 && read > 0 ? 0 : 1;
}
