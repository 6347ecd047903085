#include "app/paper/bench_figures.hpp"

#include <algorithm>
#include <cmath>

#include "app/paper/marks.hpp"
#include "core/holding/kinds.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/units/figures.hpp"
#include "core/units/scale.hpp"
#include "core/units/units.hpp"

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

QString forceText(double force_N, const units::Display& display) {
    return whole(units::writeForce(force_N, display));
}

Cell pullCell(double pull_N, holding::HoldState state, const units::Display& display, const QString& below) {
    if (!holding::pullsLightly(state, pull_N)) return textCell(forceText(pull_N, display), true, below);
    return textCell("light", true, inOnePiece("under " + forceText(holding::lightPull_N, display)));
}

QString thicknessText(double length_m, const units::Display& display) {
    return whole(units::writeThickness(length_m, display));
}

QString smallText(double length_m, const units::Display& display) {
    return whole(plan::smallText(length_m, display));
}

QString onScaleText(double force_N, const units::Display& display) {
    return whole(units::writeOnScale(units::massThatWeighs(force_N), display));
}

QString degreesText(double angle_rad) {
    if (!std::isfinite(angle_rad)) return units::noFigure;
    return QString::fromStdString(units::upToDecimals(units::toDegrees(angle_rad), 1)) + "°";
}

QString pressureText(double pressure_Pa, const units::Display& display) {
    return whole(units::writePressure(pressure_Pa, display));
}

QString lengthUnit(const units::Display& display) {
    switch (display.lengths) {
        case units::LengthNotation::feetInchesEighths:
            return "ft-in-eighths";
        case units::LengthNotation::inches:
            return "in";
        case units::LengthNotation::millimetres:
            break;
    }
    return "mm";
}

QString lengthHead(const units::Display& display) {
    const bool both = display.lengths != units::LengthNotation::millimetres;
    return both ? lengthUnit(display) + ", below: mm" : "mm";
}

Cell lengthCell(double length_m, const units::Display& display, bool bold) {
    const QString mm = numberText(units::toMillimetres(length_m), 1);
    if (display.lengths == units::LengthNotation::millimetres) return {mm, {}, bold, false};
    return {whole(units::writeLength(length_m, display.lengths)), mm, bold, false};
}

Cell textCell(const QString& text, bool bold, const QString& below) {
    return {text, below, bold, false};
}

QString toolText(const model::Piece& piece, const plan::Plan& plan, int station) {
    for (const holding::Served& served : plan.holding.atHand.served) {
        if (served.station != station) continue;
        const auto tool = static_cast<std::size_t>(served.tool);
        if (served.tool < 0 || tool >= piece.holding.tools.size()) return lacksText(served.lacks);
        const QString name = QString::fromStdString(piece.holding.tools[tool].name).simplified();
        return name.size() <= longestToolName ? name : name.left(longestToolName - 1) + "…";
    }
    return {};
}

QString sourcesText(const std::vector<units::Source>& sources) {
    QStringList texts;
    std::vector<units::Mark> marks;
    for (const units::Source& source : sources) {
        if (source.text.empty()) continue;
        const QString text = QString::fromStdString(source.text) + " (" + units::markText(source.mark) + ")";
        if (texts.contains(text)) continue;
        texts << text;
        if (std::find(marks.begin(), marks.end(), source.mark) == marks.end()) marks.push_back(source.mark);
    }
    if (texts.isEmpty()) return {};
    std::sort(marks.begin(), marks.end());
    QStringList meanings;
    for (const units::Mark mark : marks) {
        meanings << QString(units::markText(mark)) + " " + QString::fromUtf8(units::markMeaning(mark));
    }
    return "Sources: " + texts.join("; ") + ". Marks: " + meanings.join(", ") + ".";
}

}  // namespace fayline::app::paper
