#include "core/laminate/layers.hpp"

#include <algorithm>

#include "core/laminate/stack.hpp"
#include "core/math/count.hpp"
#include "core/math/table.hpp"

namespace fayline::laminate {

namespace {

// Depth of the stack at one end, metres: strips and the glue lines between them.
struct Depth {
    double atStart_m = 0;
    double atEnd_m = 0;
};

Depth depthOf(const model::Stack& stack) {
    Depth depth;
    int count = 0;
    for (const model::Strips& strips : stack.strips) {
        depth.atStart_m += strips.count * strips.thickness_m;
        depth.atEnd_m += strips.count * strips.tapersTo_m.value_or(strips.thickness_m);
        count += strips.count;
    }
    const double glue = std::max(0, count - 1) * stack.glueLine_m;
    return {depth.atStart_m + glue, depth.atEnd_m + glue};
}

// How much of the depth lies inside the given line.
double shareInside(model::Describes describes) {
    switch (describes) {
        case model::Describes::innerFace:
            return 0;
        case model::Describes::middle:
            return 0.5;
        case model::Describes::outerFace:
            return 1;
    }
    return 0;
}

}  // namespace

std::vector<Layer> layers(const model::Stack& stack, model::Describes describes, double lineLength_m) {
    const Depth depth = depthOf(stack);
    const double inside = shareInside(describes);
    std::vector<Layer> layers;
    double start = -inside * depth.atStart_m;
    double end = -inside * depth.atEnd_m;
    for (std::size_t group = 0; group < stack.strips.size(); ++group) {
        const model::Strips& strips = stack.strips[group];
        const double atStart = strips.thickness_m;
        const double atEnd = strips.tapersTo_m.value_or(strips.thickness_m);
        for (int i = 0; i < strips.count; ++i) {
            Layer layer{.place = math::countOf(layers) + 1,
                        .group = static_cast<int>(group),
                        .inner = {start, end, lineLength_m},
                        .outer = {start + atStart, end + atEnd, lineLength_m}};
            layer.middle = between(layer.inner, layer.outer);
            start += atStart + stack.glueLine_m;
            end += atEnd + stack.glueLine_m;
            layers.push_back(layer);
        }
    }
    return layers;
}

Runs runsOf(const model::Stack& stack, const std::vector<Layer>& layers, int place, double lineLength_m) {
    const Layer& form = layers.front();
    const Layer& strip = layers[place - 1];
    double short_m = 0;
    double shortAtEnd_m = 0;
    if (stack.scarfedStart) short_m = stack.scarfedStart->slope * (strip.inner.atStart_m - form.inner.atStart_m);
    if (stack.scarfedEnd) shortAtEnd_m = stack.scarfedEnd->slope * (strip.inner.atEnd_m - form.inner.atEnd_m);
    return {{short_m - stack.runsPastStart_m, lineLength_m + stack.runsPastEnd_m - shortAtEnd_m},
            {short_m, lineLength_m - shortAtEnd_m}};
}

int stripsAt(const model::Stack& stack, const std::vector<Layer>& layers, double lineLength_m, double at_m) {
    return static_cast<int>(std::ranges::count_if(
        layers, [&](const Layer& layer) { return runsOf(stack, layers, layer.place, lineLength_m).bent.holds(at_m); }));
}

double sideSign(model::Side side) {
    return side == model::Side::left ? 1.0 : -1.0;
}

double faceDistance(const model::Stack& stack, model::Describes describes, const line::Line& line, int face,
                    double at_m) {
    const std::vector<Layer> strips = layers(stack, describes, line.length());
    if (strips.empty()) return 0;
    if (face <= 0) return strips.front().inner.at(at_m);
    return strips[std::min(static_cast<std::size_t>(face), strips.size()) - 1].outer.at(at_m);
}

double widthAt(const model::Stack& stack, double at_m) {
    const model::Width* before = nullptr;  // the last one at or before the place
    const model::Width* after = nullptr;   // the first one beyond
    for (const model::Width& width : stack.widths) {
        if (width.at_m <= at_m) {
            if (!before || width.at_m > before->at_m) before = &width;
        } else if (!after || width.at_m < after->at_m) {
            after = &width;
        }
    }
    if (!before) return after ? after->width_m : 0;
    if (!after) return before->width_m;
    return math::between(before->width_m, after->width_m, (at_m - before->at_m) / (after->at_m - before->at_m));
}

double ripWidthAt(const model::Stack& stack, double at_m) {
    return widthAt(stack, at_m) + 2 * stack.ripAllowance_m;
}

}  // namespace fayline::laminate
