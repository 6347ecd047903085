#include "app/look/shown.hpp"

namespace fayline::app {

Shown::Shown() = default;
Shown::Shown(const Shown& other) = default;
Shown::Shown(Shown&& other) noexcept = default;
Shown& Shown::operator=(const Shown& other) = default;
Shown& Shown::operator=(Shown&& other) noexcept = default;
Shown::~Shown() = default;

}  // namespace fayline::app
