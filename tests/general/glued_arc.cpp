#include "tests/general/glued_arc.hpp"

#include <array>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iomanip>
#include <map>
#include <sstream>
#include <stdexcept>

namespace fayline::general {

namespace {

// One strip's nodes by half steps: i outwards (0..2), j along the arc, k across the width (0..2). A node stands at the
// corners and the middles of edges of each element.
using Nodes = std::map<std::array<int, 3>, int>;

class Deck {
public:
    explicit Deck(const GluedArc& arc) : arc_(arc) {
        double inner = arc.formRadius_m;
        for (const ArcStrip& strip : arc.strips) {
            addStrip(inner, strip.thickness_m);
            inner += strip.thickness_m;
        }
        depth_m_ = inner - arc.formRadius_m;
    }

    void write(const std::string& path) const {
        std::ofstream out(path);
        out << std::setprecision(15) << "*NODE, NSET=ALL\n" << nodes_.str();
        int element = 0;
        for (std::size_t strip = 0; strip < arc_.strips.size(); ++strip) writeElements(out, strip, element);
        out << "*ORIENTATION, NAME=ROUND, SYSTEM=CYLINDRICAL\n0., 0., 0., 0., 0., 1.\n";
        for (std::size_t strip = 0; strip < arc_.strips.size(); ++strip) writeWood(out, strip);
        out << "*EQUATION\n" << tied();
        out << "*BOUNDARY\n" << held();
        out << "*INITIAL CONDITIONS, TYPE=TEMPERATURE\nALL, 0.\n*STEP\n*STATIC\n*TEMPERATURE\n" << locked_.str();
        out << "*NODE PRINT, NSET=ALL\nU\n*END STEP\n";
        if (!out) throw std::runtime_error(path + " could not be written");
    }

    // Turn of the section at `j` half steps, anticlockwise, from the movement of its innermost and outermost node.
    double turned(const std::map<int, std::array<double, 3>>& moved, int j) const {
        const std::array<double, 3>& in = moved.at(strips_.front().at({0, j, 0}));
        const std::array<double, 3>& out = moved.at(strips_.back().at({2, j, 0}));
        const double angle = angleAt(j);
        return (-(out[0] - in[0]) * std::sin(angle) + (out[1] - in[1]) * std::cos(angle)) / depth_m_;
    }

    double angleAt(int j) const { return arc_.turn_rad * j / (2 * arc_.along); }

private:
    void addStrip(double inner_m, double thickness_m) {
        Nodes nodes;
        const double middle = inner_m + thickness_m / 2;
        for (int i = 0; i <= 2; ++i) {
            for (int j = 0; j <= 2 * arc_.along; ++j) {
                for (int k = 0; k <= 2; ++k) {
                    if (i % 2 + j % 2 + k % 2 > 1) continue;
                    const int node = ++count_;
                    nodes[{i, j, k}] = node;
                    const double r = inner_m + thickness_m * i / 2;
                    nodes_ << std::setprecision(15) << node << ", " << r * std::cos(angleAt(j)) << ", "
                           << r * std::sin(angleAt(j)) << ", " << arc_.width_m * k / 2 << "\n";
                    locked_ << std::setprecision(15) << node << ", " << -(r - middle) / middle << "\n";
                }
            }
        }
        strips_.push_back(nodes);
    }

    void writeElements(std::ostream& out, std::size_t strip, int& element) const {
        static const std::array<std::array<int, 3>, 20> corners{
            {{0, 0, 0}, {2, 0, 0}, {2, 2, 0}, {0, 2, 0}, {0, 0, 2}, {2, 0, 2}, {2, 2, 2},
             {0, 2, 2}, {1, 0, 0}, {2, 1, 0}, {1, 2, 0}, {0, 1, 0}, {1, 0, 2}, {2, 1, 2},
             {1, 2, 2}, {0, 1, 2}, {0, 0, 1}, {2, 0, 1}, {2, 2, 1}, {0, 2, 1}}};
        out << "*ELEMENT, TYPE=C3D20, ELSET=STRIP" << strip << "\n";
        for (int along = 0; along < arc_.along; ++along) {
            out << ++element;
            for (std::size_t c = 0; c < corners.size(); ++c) {
                const auto& [i, j, k] = corners[c];
                out << (c == 10 ? ",\n" : ", ") << strips_[strip].at({i, 2 * along + j, k});
            }
            out << "\n";
        }
    }

    // Local axes of the orientation: 1 outwards, 2 round the arc (the grain), 3 across the width.
    void writeWood(std::ostream& out, std::size_t strip) const {
        const double E = arc_.strips[strip].modulus_Pa;
        const double across = E / 12;
        const double G = E / 16;
        constexpr double poisson = 0.3;
        out << "*MATERIAL, NAME=WOOD" << strip << "\n*ELASTIC, TYPE=ENGINEERING CONSTANTS\n"
            << across << ", " << E << ", " << across << ", " << poisson / 12 << ", " << poisson << ", " << poisson
            << ", " << G << ", " << across / (2 * (1 + poisson)) << ",\n"
            << G << ", 0.\n*EXPANSION, TYPE=ORTHO\n0., 1., 0.\n*SOLID SECTION, ELSET=STRIP" << strip
            << ", MATERIAL=WOOD" << strip << ", ORIENTATION=ROUND\n";
    }

    std::string tied() const {
        std::ostringstream out;
        for (std::size_t strip = 1; strip < strips_.size(); ++strip) {
            for (const auto& [at, node] : strips_[strip]) {
                if (at[0] != 0) continue;
                for (int way = 1; way <= 3; ++way) {
                    out << "2\n"
                        << node << ", " << way << ", 1., " << strips_[strip - 1].at({2, at[1], at[2]}) << ", " << way
                        << ", -1.\n";
                }
            }
        }
        return out.str();
    }

    // Only what keeps it from floating away: one edge of the first section in both ways, its other edge from turning,
    // one side of the piece in its plane. Tied nodes are held by those they are tied to.
    std::string held() const {
        std::ostringstream out;
        out << strips_.front().at({0, 0, 0}) << ", 1, 2\n" << strips_.back().at({2, 0, 0}) << ", 2, 2\n";
        for (std::size_t strip = 0; strip < strips_.size(); ++strip) {
            for (const auto& [at, node] : strips_[strip]) {
                if (at[2] == 0 && (strip == 0 || at[0] != 0)) out << node << ", 3, 3\n";
            }
        }
        return out.str();
    }

    const GluedArc& arc_;
    double depth_m_ = 0;
    int count_ = 0;
    std::vector<Nodes> strips_;
    std::ostringstream nodes_;
    std::ostringstream locked_;
};

std::map<int, std::array<double, 3>> readMoved(const std::string& path) {
    std::ifstream in(path);
    std::map<int, std::array<double, 3>> moved;
    for (std::string line; std::getline(in, line);) {
        std::istringstream words(line);
        int node = 0;
        std::array<double, 3> by{};
        if (words >> node >> by[0] >> by[1] >> by[2]) moved[node] = by;
    }
    return moved;
}

}  // namespace

double curvatureLetGo(const GluedArc& arc, const std::string& folder, int seconds) {
    const Deck deck(arc);
    deck.write(folder + "/arc.inp");
    const std::string command =
        "cd '" + folder + "' && OMP_NUM_THREADS=1 timeout " + std::to_string(seconds) + " ccx -i arc > arc.out 2>&1";
    if (std::system(command.c_str()) != 0) throw std::runtime_error("ccx (Debian's calculix-ccx) is missing or failed");
    const std::map<int, std::array<double, 3>> moved = readMoved(folder + "/arc.dat");
    if (moved.empty()) throw std::runtime_error("ccx told no movements");

    const int from = arc.along / 2;
    const int to = 3 * arc.along / 2;
    double area = 0;
    double moment = 0;
    double inner = arc.formRadius_m;
    for (const ArcStrip& strip : arc.strips) {
        area += strip.modulus_Pa * strip.thickness_m;
        moment += strip.modulus_Pa * strip.thickness_m * (inner + strip.thickness_m / 2);
        inner += strip.thickness_m;
    }
    const double axisRadius = moment / area;
    return -(deck.turned(moved, to) - deck.turned(moved, from)) /
           (axisRadius * (deck.angleAt(to) - deck.angleAt(from)));
}

}  // namespace fayline::general
