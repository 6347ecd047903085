#include "core/model/boat.hpp"

namespace fayline::model {

LineInput::LineInput() = default;
LineInput::LineInput(const LineInput& other) = default;
LineInput::LineInput(LineInput&& other) noexcept = default;
LineInput& LineInput::operator=(const LineInput& other) = default;
LineInput& LineInput::operator=(LineInput&& other) noexcept = default;
LineInput::~LineInput() = default;
bool LineInput::operator==(const LineInput& other) const = default;

Stack::Stack() = default;
Stack::Stack(const Stack& other) = default;
Stack::Stack(Stack&& other) noexcept = default;
Stack& Stack::operator=(const Stack& other) = default;
Stack& Stack::operator=(Stack&& other) noexcept = default;
Stack::~Stack() = default;
bool Stack::operator==(const Stack& other) const = default;

Form::Form() = default;
Form::Form(const Form& other) = default;
Form::Form(Form&& other) noexcept = default;
Form& Form::operator=(const Form& other) = default;
Form& Form::operator=(Form&& other) noexcept = default;
Form::~Form() = default;
bool Form::operator==(const Form& other) const = default;

Holding::Holding() = default;
Holding::Holding(const Holding& other) = default;
Holding::Holding(Holding&& other) noexcept = default;
Holding& Holding::operator=(const Holding& other) = default;
Holding& Holding::operator=(Holding&& other) noexcept = default;
Holding::~Holding() = default;
bool Holding::operator==(const Holding& other) const = default;

Record::Record() = default;
Record::Record(const Record& other) = default;
Record::Record(Record&& other) noexcept = default;
Record& Record::operator=(const Record& other) = default;
Record& Record::operator=(Record&& other) noexcept = default;
Record::~Record() = default;
bool Record::operator==(const Record& other) const = default;

Piece::Piece() = default;
Piece::Piece(const Piece& other) = default;
Piece::Piece(Piece&& other) noexcept = default;
Piece& Piece::operator=(const Piece& other) = default;
Piece& Piece::operator=(Piece&& other) noexcept = default;
Piece::~Piece() = default;
bool Piece::operator==(const Piece& other) const = default;

Boat::Boat() = default;
Boat::Boat(const Boat& other) = default;
Boat::Boat(Boat&& other) noexcept = default;
Boat& Boat::operator=(const Boat& other) = default;
Boat& Boat::operator=(Boat&& other) noexcept = default;
Boat::~Boat() = default;
bool Boat::operator==(const Boat& other) const = default;

}  // namespace fayline::model
