#include "app/paper/day_figures.hpp"

#include <QStringList>
#include <algorithm>
#include <cmath>
#include <vector>

#include "app/paper/bench_figures.hpp"
#include "app/paper/sheet.hpp"
#include "core/math/count.hpp"
#include "core/units/day_text.hpp"

namespace fayline::app::paper {

namespace {

QString wholeText(const std::string& text) {
    return inOnePiece(QString::fromStdString(text));
}

// "strips 9 to 5", "strip 2", "strips 4, 3 and 1": strips in the order given.
QString stripsText(const std::vector<int>& strips) {
    if (strips.size() == 1) return QString("strip %1").arg(strips.front());
    bool inRow = strips.size() > 2;
    for (std::size_t i = 2; i < strips.size() && inRow; ++i) {
        inRow = strips[i] - strips[i - 1] == strips[1] - strips[0];
    }
    if (inRow && std::abs(strips[1] - strips[0]) == 1) {
        return QString("strips %1 to %2").arg(strips.front()).arg(strips.back());
    }
    QStringList numbers;
    for (const int strip : strips) numbers << QString::number(strip);
    const QString last = numbers.takeLast();
    return "strips " + numbers.join(", ") + " and " + last;
}

}  // namespace

QString clockText(const model::Piece& piece, double after_s) {
    return std::isfinite(after_s) ? wholeText(units::writeClock(piece.crew.startAt_s + after_s)) : QString("never");
}

QString durationText(double time_s) {
    return wholeText(units::writeDuration(time_s));
}

QString massText(double mass_kg, const units::Display& display) {
    return wholeText(units::writeMass(mass_kg, display));
}

QString volumeText(double volume_m3, const units::Display& display) {
    return wholeText(units::writeVolume(volume_m3, display));
}

QString usedForText(const plan::GluingDay& day, int cup) {
    std::vector<int> strips;
    bool onBoat = false;
    bool endGrain = false;
    for (const schedule::Task& task : day.run.tasks) {
        if (task.cup != cup || task.work == schedule::Work::mix) continue;
        if (task.strip < 0) endGrain = true;
        if (task.strip == 0) onBoat = true;
        if (task.strip > 0 && (strips.empty() || strips.back() != task.strip)) strips.push_back(task.strip);
    }
    QStringList texts;
    if (endGrain) texts << "the end grain of the scarf";
    if (!strips.empty()) texts << stripsText(strips);
    if (onBoat) texts << "the joint on the boat";
    return texts.join(", ");
}

QString whoText(const schedule::Task& task, int hands) {
    if (task.lanes.empty()) return {};
    if (hands > 2 && math::countOf(task.lanes) == hands) return "all";
    QStringList names;
    for (const int lane : task.lanes) {
        names << (lane < 26 ? QString(QChar('A' + lane)) : QString::number(lane + 1));
    }
    return inOnePiece(names.join(" + "));
}

QString roomToWrite(double width_mm, double size_mm) {
    return QString(std::max(1, static_cast<int>(width_mm / widthOf("_", size_mm))), '_');
}

QString skinCaution() {
    return "Resin and hardener make skin and lungs allergic, and once may be enough: gloves of laminated plastic or "
           "thick "
           "nitrile, not rubber (P), long sleeves, glasses, fresh air. Wash with soap, never with solvent. The maker's "
           "safety sheet and local rules come first.";
}

QString hotCupCaution() {
    return "A batch that grows hot is lost: do not spread it. It can boil, smoke, melt its pot and burn (P). Carry it "
           "outdoors by the rim onto sand or stone, keep out of the vapour, and let no child or dog near. No foam or "
           "glass pots.";
}

QString dustAndRagsCaution(const model::Piece& piece) {
    QString text =
        "Fillers and the dust of half-cured glue harm lungs and skin: a mask when you weigh, sand or sweep (P).";
    if (piece.glue.thinner > 0 || piece.glue.surfaceWork != model::SurfaceWork::nothing) {
        text +=
            " Solvents burn: no flame or spark, open doors. Rags go into a closed metal bin with water, they can heat "
            "themselves (C).";
    }
    return text;
}

}  // namespace fayline::app::paper
