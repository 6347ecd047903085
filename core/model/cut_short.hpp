// A text that ends before what it describes is complete: a file that was cut short.
#pragma once

#include "core/units/input_error.hpp"

namespace fayline::model {

// Thrown by parseText where the text ends too early.
class CutShort : public units::InputError {
public:
    using InputError::InputError;
};

}  // namespace fayline::model
