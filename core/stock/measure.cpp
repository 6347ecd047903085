#include "core/stock/measure.hpp"

#include <array>
#include <cmath>

namespace fayline::stock {

int stripsAcross(double width_m, double sawn_m, double kerf_m) {
    const double rounding = 1e-9;  // so that a board of just so many strips gives them
    return static_cast<int>(std::floor((width_m + kerf_m) / (sawn_m + kerf_m) + rounding));
}

double scarfLength_m(double slope, double thickness_m) {
    return slope * thickness_m;
}

double scarfArea_m2(double slope, double thickness_m, double width_m) {
    return width_m * thickness_m * std::sqrt(1 + slope * slope);
}

std::optional<double> scarfStrength(double slope) {
    struct Row {
        double slope;
        double factor;
    };
    constexpr std::array rows{Row{5, 0.65}, Row{8, 0.80}, Row{10, 0.85}, Row{12, 0.90}};
    if (!(slope >= rows.front().slope)) return std::nullopt;
    for (std::size_t i = 1; i < rows.size(); ++i)
        if (slope <= rows[i].slope)
            return rows[i - 1].factor + (rows[i].factor - rows[i - 1].factor) * (slope - rows[i - 1].slope) /
                                            (rows[i].slope - rows[i - 1].slope);
    return rows.back().factor;
}

units::Source scarfStrengthSource() {
    return {"Freas and Selbo, USDA Technical Bulletin 1069, 1954", units::Mark::fromMemory};
}

}  // namespace fayline::stock
