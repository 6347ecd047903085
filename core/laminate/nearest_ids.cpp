#include "core/laminate/nearest_ids.hpp"

#include <algorithm>
#include <cctype>
#include <numeric>

#include "core/math/count.hpp"

namespace fayline::laminate {

namespace {

// Twice the letters apart, so that the beginning of a part can be half a letter further off than a whole one.
constexpr int letter = 2;
constexpr int beginningOnly = 1;

// How many letters must be changed, left out, put in or swapped with the next to make one word of the other (optimal
// string alignment).
int lettersApart(std::string_view one, std::string_view other) {
    std::vector<int> before(other.size() + 1);
    std::vector<int> row(other.size() + 1);
    std::vector<int> next(other.size() + 1);
    std::iota(row.begin(), row.end(), 0);
    for (std::size_t i = 1; i <= one.size(); ++i) {
        next[0] = static_cast<int>(i);
        for (std::size_t j = 1; j <= other.size(); ++j) {
            const int changed = row[j - 1] + (one[i - 1] == other[j - 1] ? 0 : 1);
            next[j] = std::min({changed, row[j] + 1, next[j - 1] + 1});
            const bool swapped = i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1];
            if (swapped) next[j] = std::min(next[j], before[j - 2] + 1);
        }
        before = row;
        row = next;
    }
    return row.back();
}

std::vector<std::string> partsOf(std::string_view text) {
    std::vector<std::string> parts(1);
    for (const char sign : text) {
        const auto byte = static_cast<unsigned char>(sign);
        if (std::isalnum(byte) || byte >= 0x80) {
            parts.back() += static_cast<char>(std::tolower(byte));
        } else if (!parts.back().empty()) {
            parts.emplace_back();
        }
    }
    if (parts.back().empty()) parts.pop_back();
    return parts;
}

std::string joined(const std::vector<std::string>& parts) {
    return std::accumulate(parts.begin(), parts.end(), std::string());
}

int apart(std::string_view typed, std::string_view part) {
    const int whole = letter * lettersApart(typed, part);
    if (part.size() <= typed.size()) return whole;
    return std::min(whole, letter * lettersApart(typed, part.substr(0, typed.size())) + beginningOnly);
}

int apart(const std::vector<std::string>& typed, const std::vector<std::string>& id) {
    int byParts = 0;
    for (const std::string& word : typed) {
        int least = letter * math::countOf(word);
        for (const std::string& part : id) least = std::min(least, apart(word, part));
        byParts += least;
    }
    return std::min(byParts, apart(joined(typed), joined(id)));
}

}  // namespace

std::vector<std::string> nearestIds(std::string_view typed, const std::vector<wood::Species>& species,
                                    std::size_t most) {
    const std::vector<std::string> words = partsOf(typed);
    std::vector<std::pair<int, std::string>> near;
    for (const wood::Species& wood : species) near.emplace_back(apart(words, partsOf(wood.id)), wood.id);
    std::ranges::stable_sort(near, [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < std::min(most, near.size()); ++i) ids.push_back(near[i].second);
    return ids;
}

}  // namespace fayline::laminate
