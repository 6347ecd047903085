#include "app/look/perception.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace fayline::app {

namespace {

// IEC 61966-2-1 (M): the curve between a channel as stored and its light, both 0..1.
double toLight(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}
double fromLight(double light) {
    return light <= 0.0031308 ? light * 12.92 : 1.055 * std::pow(light, 1 / 2.4) - 0.055;
}

constexpr std::array<double, 3> white{0.95047, 1.0, 1.08883};  // D65, 2 degrees
constexpr double bend = 6.0 / 29;

double toScale(double t) {
    return t > bend * bend * bend ? std::cbrt(t) : t / (3 * bend * bend) + 4.0 / 29;
}
double fromScale(double f) {
    return f > bend ? f * f * f : 3 * bend * bend * (f - 4.0 / 29);
}

}  // namespace

double luminance(const QColor& color) {
    return 0.2126 * toLight(color.redF()) + 0.7152 * toLight(color.greenF()) + 0.0722 * toLight(color.blueF());
}

double contrast(const QColor& a, const QColor& b) {
    const double la = luminance(a);
    const double lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

Lab toLab(const QColor& color) {
    const double r = toLight(color.redF());
    const double g = toLight(color.greenF());
    const double b = toLight(color.blueF());
    const double x = toScale((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / white[0]);
    const double y = toScale((0.2126729 * r + 0.7151522 * g + 0.0721750 * b) / white[1]);
    const double z = toScale((0.0193339 * r + 0.1191920 * g + 0.9503041 * b) / white[2]);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

QColor fromLab(const Lab& lab) {
    const double fy = (lab.lightness + 16) / 116;
    const double x = white[0] * fromScale(fy + lab.a / 500);
    const double y = white[1] * fromScale(fy);
    const double z = white[2] * fromScale(fy - lab.b / 200);
    const auto channel = [](double light) { return static_cast<float>(std::clamp(fromLight(light), 0.0, 1.0)); };
    return QColor::fromRgbF(channel(3.2404542 * x - 1.5371385 * y - 0.4985314 * z),
                            channel(-0.9692660 * x + 1.8760108 * y + 0.0415560 * z),
                            channel(0.0556434 * x - 0.2040259 * y + 1.0572252 * z));
}

QColor between(const QColor& from, const QColor& to, double share) {
    const double s = std::isfinite(share) ? std::clamp(share, 0.0, 1.0) : (share > 0 ? 1.0 : 0.0);
    const Lab a = toLab(from);
    const Lab b = toLab(to);
    return fromLab({a.lightness + s * (b.lightness - a.lightness), a.a + s * (b.a - a.a), a.b + s * (b.b - a.b)});
}

}  // namespace fayline::app
