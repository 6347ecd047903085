// A piece of a sample file as views are shown it, and what the window does when a view asks for a change.
#pragma once

#include <QObject>
#include <QStringList>
#include <atomic>
#include <memory>
#include <vector>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"
#include "core/io/file.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/deepen.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

inline plan::Shop shopOf(const Shown& shown) {
    plan::Shop shop;
    shop.display = shown.display;
    shop.species = shown.species;
    shop.adhesives = shown.adhesives ? *shown.adhesives : glue::builtInAdhesives();
    return shop;
}

// Adds what takes longer to the plan that is shown, worked out once for all tests of a program: pieces that differ in
// their woods and glues alone are not told apart.
inline void deepenShown(Shown& shown) {
    struct Known {
        model::Piece piece;
        units::Display display;
        std::shared_ptr<const plan::Plan> plan;
    };
    static std::vector<Known> known;
    for (const Known& one : known) {
        if (one.piece != shown.piece || one.display != shown.display) continue;
        shown.plan = one.plan;
        return;
    }
    const std::atomic<bool> stop{false};
    shown.plan =
        std::make_shared<const plan::Plan>(plan::deepen(shown.piece, shopOf(shown), *shown.plan, stop).value());
    known.push_back({shown.piece, shown.display, shown.plan});
}

// Plans `shown.piece`, or says why it cannot be planned, as the window does.
inline void planAnew(Shown& shown) {
    const plan::Shop shop = shopOf(shown);
    try {
        shown.plan = std::make_shared<const plan::Plan>(plan::makePlan(shown.piece, shop));
        shown.outOfDate = false;
        shown.reason.clear();
        shown.reasonPath.clear();
    } catch (const units::InputError& error) {
        shown.outOfDate = true;
        shown.reason = QString::fromStdString(error.wrong() + "; " + error.accepted());
        shown.reasonPath = QString::fromStdString(error.path());
    }
}

inline Shown shownSample(const char* file = "marram.fayline", int piece = 0) {
    const model::Boat boat = io::loadBoat(std::string(FAYLINE_SAMPLES "/") + file);
    Shown shown;
    shown.piece = boat.pieces.at(static_cast<std::size_t>(piece));
    shown.pieceIndex = piece;
    shown.display = {.lengths = boat.display.lengths};  // what tests say is in newtons, grams and degrees Celsius
    shown.species = plan::shopOf(boat).species;
    shown.adhesives = std::make_shared<const std::vector<glue::Adhesive>>(plan::shopOf(boat).adhesives);
    planAnew(shown);
    return shown;
}

// Takes every change that `view` asks for into the piece and shows it again.
struct Taken {
    Shown shown;
    QStringList names;
    bool atRest = false;  // with what takes longer, as when the hand rests

    template <typename View, typename Show>
    void follow(View* view, Show show) {
        QObject::connect(view, &View::changeAsked, view, [this, show](const Change& change) {
            names << change.name;
            shown.piece = change.after;
            planAnew(shown);
            if (atRest) deepenShown(shown);
            show(shown);
        });
        if (atRest) deepenShown(shown);
        show(shown);
    }
};

}  // namespace fayline::app
