// What cups and faces ask for.
#include <algorithm>

#include "core/schedule/day.hpp"

namespace fayline::schedule {

namespace {

Warning aboutCup(WarningKind kind, int cup, double by_s) {
    return {.kind = kind, .stop = kind == WarningKind::cupOver, .cup = cup, .by_s = by_s};
}

Warning aboutFace(WarningKind kind, int inner, double by_s) {
    return {.kind = kind,
            .stop = kind == WarningKind::faceOff || kind == WarningKind::faceLate,
            .inner = inner,
            .by_s = by_s};
}

void addCups(const Now& now, std::vector<Warning>& warnings) {
    for (const CupNow& cup : now.cups) {
        if (cup.left_s < 0) {
            warnings.push_back(aboutCup(WarningKind::cupOver, cup.number, -cup.left_s));
        } else if (cup.left_s < littleLeft * cup.whole_s) {
            warnings.push_back(aboutCup(WarningKind::cupShort, cup.number, cup.left_s));
        }
    }
    // What is foreseen of the cup in hand.
    for (const CupTimes& cup : now.run.cups) {
        const bool inHand = std::ranges::any_of(
            now.cups, [&](const CupNow& c) { return c.number == cup.number && c.left_s >= littleLeft * c.whole_s; });
        if (!inHand || cup.margin_s() >= 0) continue;
        warnings.push_back(aboutCup(WarningKind::cupForeseen, cup.number, -cup.margin_s()));
    }
}

void addFaces(const Now& now, std::vector<Warning>& warnings) {
    if (now.faces.empty()) return;
    const FaceNow& worst = now.faces.front();
    if (worst.left_s < 0) {
        warnings.push_back(aboutFace(WarningKind::faceOff, worst.inner, -worst.left_s));
        return;
    }
    if (now.run.worstFace < 0) return;
    const FaceTimes& face = now.run.faces[now.run.worstFace];
    if (now.margin_s < 0) {
        warnings.push_back(aboutFace(WarningKind::faceLate, face.inner, -now.margin_s));
        warnings.back().breakOff = now.breakOff;
    } else if (now.marginAtPace_s < 0) {
        warnings.push_back(aboutFace(WarningKind::pace, face.inner, -now.marginAtPace_s));
        warnings.back().marginAsPlanned_s = now.margin_s;
    } else if (now.margin_s < littleLeft * (face.openUntil_s - face.wetted_s)) {
        warnings.push_back(aboutFace(WarningKind::faceShort, face.inner, now.margin_s));
    }
}

}  // namespace

Urgency urgencyOf(double left_s, double whole_s) {
    if (left_s < 0) return Urgency::over;
    return left_s < littleLeft * whole_s ? Urgency::little : Urgency::ample;
}

std::vector<Warning> warningsOf(const Now& now) {
    std::vector<Warning> warnings;
    addCups(now, warnings);
    addFaces(now, warnings);
    std::ranges::stable_sort(warnings, [](const Warning& a, const Warning& b) { return a.stop && !b.stop; });
    return warnings;
}

}  // namespace fayline::schedule
