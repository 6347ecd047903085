// What is kept of a part of the file besides its values.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/model/value.hpp"

namespace fayline::model {

// What a part of the file said beyond its values: the known keys that stood there (so that a default that was written
// is written again) and what this version does not know (written back unchanged after the known keys).
struct Kept {
    std::set<std::string> given;
    std::vector<Member> unknown;

    // Whether a default was written or left out says nothing about the boat: only what is unknown counts.
    bool operator==(const Kept& other) const { return unknown == other.unknown; }
};

}  // namespace fayline::model
