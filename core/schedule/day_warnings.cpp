// What cups and faces ask for, in words.
#include <algorithm>

#include "core/measure/day_text.hpp"
#include "core/schedule/day.hpp"

namespace fayline::schedule {

using measure::writeDuration;

namespace {

std::string faceText(int inner) {
    if (inner == 0) return "the face on the boat";
    return "the face between strips " + std::to_string(inner) + " and " + std::to_string(inner + 1);
}

std::string capital(std::string text) {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

void addCups(const Now& now, std::vector<Warning>& warnings) {
    for (const CupNow& cup : now.cups) {
        const std::string name = "Cup " + std::to_string(cup.number);
        const std::string code = "cup " + std::to_string(cup.number);
        if (cup.left_s < 0) {
            warnings.push_back({true, code + " over",
                                name + " is " + writeDuration(-cup.left_s) +
                                    " past its time. If it is warm, thick or stringy do not spread it: carry it "
                                    "outdoors, keep out of its vapour, and mix a new one."});
        } else if (cup.left_s < littleLeft * cup.whole_s) {
            warnings.push_back({false, code + " short",
                                name + " is to be used up within " + writeDuration(cup.left_s) +
                                    ". Spread it out thin in a tray if it grows warm."});
        }
    }
    // What is foreseen of the cup in hand.
    for (const CupTimes& cup : now.run.cups) {
        const bool inHand = std::ranges::any_of(
            now.cups, [&](const CupNow& c) { return c.number == cup.number && c.left_s >= littleLeft * c.whole_s; });
        if (!inHand || cup.margin_s() >= 0) continue;
        warnings.push_back({false, "cup " + std::to_string(cup.number) + " foreseen",
                            "Cup " + std::to_string(cup.number) + " will not be empty until " +
                                writeDuration(-cup.margin_s()) + " after its time: put part of it into a tray now."});
    }
}

void addFaces(const Now& now, std::vector<Warning>& warnings) {
    if (now.faces.empty()) return;
    const FaceNow& worst = now.faces.front();
    if (worst.left_s < 0) {
        warnings.push_back({true, "face off",
                            capital(faceText(worst.inner)) + " went off " + writeDuration(-worst.left_s) +
                                " ago. Look at it before you close it: glue that no longer wets or strings is to be "
                                "taken off."});
        return;
    }
    if (now.run.worstFace < 0) return;
    const FaceTimes& face = now.run.faces[now.run.worstFace];
    std::string text = capital(faceText(face.inner));
    if (now.margin_s < 0) {
        text += " goes off " + writeDuration(-now.margin_s) + " before the last station is on.";
        if (now.breakOff) {
            text += " Stop wetting after strip " + std::to_string(now.breakOff->afterStrip) +
                    " and close what is wetted: then " + writeDuration(now.breakOff->margin_s) +
                    " are in hand, and the rest is a gluing of its own.";
        } else {
            text += " Every pair of hands that can be fetched helps now.";
        }
        warnings.push_back({true, "face late", text});
    } else if (now.marginAtPace_s < 0) {
        warnings.push_back({false, "pace",
                            "At the pace so far the last station is on " + writeDuration(-now.marginAtPace_s) +
                                " after the worst face has gone off; at the planned pace " +
                                writeDuration(now.margin_s) + " are in hand."});
    } else if (now.margin_s < littleLeft * (face.openUntil_s - face.wetted_s)) {
        warnings.push_back(
            {false, "face short", text + " is closed with " + writeDuration(now.margin_s) + " in hand."});
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
