#include "core/model/boat.hpp"

namespace fayline::model {

// What the compiler makes of each, here alone instead of in every file.
#define FAYLINE_MEMBERS_OF(Struct)                                \
    Struct::Struct() = default;                                   \
    Struct::Struct(const Struct& other) = default;                \
    Struct::Struct(Struct&& other) noexcept = default;            \
    Struct& Struct::operator=(const Struct& other) = default;     \
    Struct& Struct::operator=(Struct&& other) noexcept = default; \
    Struct::~Struct() = default;                                  \
    bool Struct::operator==(const Struct& other) const = default;

FAYLINE_MEMBERS_OF(LineInput)
FAYLINE_MEMBERS_OF(Stack)
FAYLINE_MEMBERS_OF(Form)
FAYLINE_MEMBERS_OF(Holding)
FAYLINE_MEMBERS_OF(Record)
FAYLINE_MEMBERS_OF(Piece)
FAYLINE_MEMBERS_OF(Boat)

}  // namespace fayline::model
