#include "app/paper/bench_figures.hpp"

#include <algorithm>
#include <cmath>

#include "app/paper/marks.hpp"
#include "core/holding/kinds.hpp"
#include "core/measure/figures.hpp"
#include "core/measure/scale.hpp"
#include "core/measure/units.hpp"
#include "core/plan/wording.hpp"

namespace fayline::app::paper {

namespace {

constexpr int longestToolName = 40;  // letters

QString whole(const std::string& text) {
    return inOnePiece(QString::fromStdString(text));
}

QString lacksText(holding::Lacks lacks) {
    switch (lacks) {
        case holding::Lacks::nothing:
            break;
        case holding::Lacks::strength:
            return "NONE AT HAND: too weak";
        case holding::Lacks::opening:
            return "NONE AT HAND: none opens far enough";
        case holding::Lacks::throat:
            return "NONE AT HAND: throats too short";
        case holding::Lacks::count:
            return "NONE AT HAND: all in use";
    }
    return {};
}

}  // namespace

QString inOnePiece(const QString& text) {
    return QString(text).replace(' ', QChar(QChar::Nbsp));
}

QString forceText(double force_N, const measure::Display& display) {
    return whole(measure::writeForce(force_N, display));
}

Cell pullCell(double pull_N, holding::HoldState state, const measure::Display& display, const QString& below) {
    if (!holding::pullsLightly(state, pull_N)) return textCell(forceText(pull_N, display), true, below);
    return textCell("light", true, inOnePiece("under " + forceText(holding::lightPull_N, display)));
}

QString thicknessText(double length_m, const measure::Display& display) {
    return whole(measure::writeThickness(length_m, display));
}

QString smallText(double length_m, const measure::Display& display) {
    return whole(plan::smallText(length_m, display));
}

QString onScaleText(double force_N, const measure::Display& display) {
    return whole(measure::writeOnScale(measure::massThatWeighs(force_N), display));
}

QString degreesText(double angle_rad) {
    if (!std::isfinite(angle_rad)) return measure::noFigure;
    return QString::fromStdString(measure::upToDecimals(measure::toDegrees(angle_rad), 1)) + "°";
}

QString pressureText(double pressure_Pa, const measure::Display& display) {
    return whole(measure::writePressure(pressure_Pa, display));
}

QString lengthUnit(const measure::Display& display) {
    switch (display.lengths) {
        case measure::LengthNotation::feetInchesEighths:
            return "ft-in-eighths";
        case measure::LengthNotation::inches:
            return "in";
        case measure::LengthNotation::millimetres:
            break;
    }
    return "mm";
}

QString lengthHead(const measure::Display& display) {
    const bool both = display.lengths != measure::LengthNotation::millimetres;
    return both ? lengthUnit(display) + ", below: mm" : "mm";
}

Cell lengthCell(double length_m, const measure::Display& display, bool bold) {
    const QString mm = numberText(measure::toMillimetres(length_m), 1);
    if (display.lengths == measure::LengthNotation::millimetres) return {mm, {}, bold, false};
    return {whole(measure::writeLength(length_m, display.lengths)), mm, bold, false};
}

Cell textCell(const QString& text, bool bold, const QString& below) {
    return {text, below, bold, false};
}

QString toolText(const boat::Piece& piece, const plan::Plan& plan, int station) {
    for (const holding::Served& served : plan.holding.atHand.served) {
        if (served.station != station) continue;
        const auto tool = static_cast<std::size_t>(served.tool);
        if (served.tool < 0 || tool >= piece.holding.tools.size()) return lacksText(served.lacks);
        const QString name = QString::fromStdString(piece.holding.tools[tool].name).simplified();
        return name.size() <= longestToolName ? name : name.left(longestToolName - 1) + "…";
    }
    return {};
}

QString sourcesText(const std::vector<measure::Source>& sources) {
    QStringList texts;
    std::vector<measure::Mark> marks;
    for (const measure::Source& source : sources) {
        if (source.text.empty()) continue;
        const QString text = QString::fromStdString(source.text) + " (" + measure::markText(source.mark) + ")";
        if (texts.contains(text)) continue;
        texts << text;
        if (std::find(marks.begin(), marks.end(), source.mark) == marks.end()) marks.push_back(source.mark);
    }
    if (texts.isEmpty()) return {};
    std::sort(marks.begin(), marks.end());
    QStringList meanings;
    for (const measure::Mark mark : marks) {
        meanings << QString(measure::markText(mark)) + " " + QString::fromUtf8(measure::markMeaning(mark));
    }
    return "Sources: " + texts.join("; ") + ". Marks: " + meanings.join(", ") + ".";
}

}  // namespace fayline::app::paper
