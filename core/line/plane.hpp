// Vectors in the plane, for the fit's inner workings.
#pragma once

#include <cmath>

namespace fayline::line {

struct Vector {
    double x = 0;
    double y = 0;
};

inline Vector operator+(Vector a, Vector b) {
    return {a.x + b.x, a.y + b.y};
}
inline Vector operator-(Vector a, Vector b) {
    return {a.x - b.x, a.y - b.y};
}
inline Vector operator*(double f, Vector a) {
    return {f * a.x, f * a.y};
}
inline double dot(Vector a, Vector b) {
    return a.x * b.x + a.y * b.y;
}
inline double cross(Vector a, Vector b) {
    return a.x * b.y - a.y * b.x;
}
inline double norm(Vector a) {
    return std::sqrt(dot(a, a));
}
inline Vector leftOf(Vector a) {
    return {-a.y, a.x};
}
inline Vector unit(Vector a) {
    return (1 / norm(a)) * a;
}

}  // namespace fayline::line
