// Vectors in the plane.
//
// The operations serve any struct of two numbers that names itself a vector (`isVector`): the project's own have units
// in the names of their members.
#pragma once

#include <cmath>

namespace fayline::math {

struct Vector {
    double x = 0;
    double y = 0;
};

template <typename V>
inline constexpr bool isVector = false;
template <>
inline constexpr bool isVector<Vector> = true;

template <typename V>
concept PlaneVector = isVector<V>;

template <PlaneVector V>
constexpr V operator+(const V& a, const V& b) {
    const auto& [ax, ay] = a;
    const auto& [bx, by] = b;
    return {ax + bx, ay + by};
}
template <PlaneVector V>
constexpr V operator-(const V& a, const V& b) {
    const auto& [ax, ay] = a;
    const auto& [bx, by] = b;
    return {ax - bx, ay - by};
}
template <PlaneVector V>
constexpr V operator*(double factor, const V& a) {
    const auto& [x, y] = a;
    return {factor * x, factor * y};
}
template <PlaneVector V>
constexpr double dot(const V& a, const V& b) {
    const auto& [ax, ay] = a;
    const auto& [bx, by] = b;
    return ax * bx + ay * by;
}
// Positive where b lies to the left of a.
template <PlaneVector V>
constexpr double cross(const V& a, const V& b) {
    const auto& [ax, ay] = a;
    const auto& [bx, by] = b;
    return ax * by - ay * bx;
}
// Length, by the root of the squares' sum: quick, and right as long as the squares do not overflow.
template <PlaneVector V>
double norm(const V& a) {
    return std::sqrt(dot(a, a));
}
// Length, whatever the size of the members: slower.
template <PlaneVector V>
double hypot(const V& a) {
    const auto& [x, y] = a;
    return std::hypot(x, y);
}
template <PlaneVector V>
V unit(const V& a) {
    return (1 / norm(a)) * a;
}
// Turned left by a right angle.
template <PlaneVector V>
constexpr V leftOf(const V& a) {
    const auto& [x, y] = a;
    return {-y, x};
}
// Turned left by an angle.
template <PlaneVector V>
V turned(const V& a, double angle_rad) {
    const auto& [x, y] = a;
    const double c = std::cos(angle_rad);
    const double s = std::sin(angle_rad);
    return {x * c - y * s, x * s + y * c};
}

}  // namespace fayline::math
