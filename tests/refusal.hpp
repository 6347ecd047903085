// The error by which a call refuses its input.
#pragma once

#include <gtest/gtest.h>

#include <string>

#include "core/units/input_error.hpp"

namespace fayline::made {

// What `call` throws; a failure of the test where it takes what it is given.
template <typename Call>
units::InputError refusal(const Call& call) {
    try {
        call();
    } catch (const units::InputError& error) {
        return error;
    }
    ADD_FAILURE() << "taken";
    return {"", "taken", ""};
}

// The path of the error that `call` throws, or `taken`.
template <typename Call>
std::string refusedAt(const Call& call, const char* taken = "taken") {
    try {
        call();
    } catch (const units::InputError& error) {
        return error.path();
    }
    return taken;
}

// All that the error says.
template <typename Call>
std::string refusalText(const Call& call, const char* taken = "nothing") {
    try {
        call();
    } catch (const units::InputError& error) {
        return error.what();
    }
    return taken;
}

}  // namespace fayline::made
