// Pieces of the sample boats as a view is shown them, and a window's part of the work: what is asked for is done.
#pragma once

#include <QObject>
#include <memory>
#include <string>
#include <vector>

#include "app/formview/form_view.hpp"
#include "core/io/file.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"

namespace fayline::app {

inline model::Boat sampleBoat(const std::string& name) {
    model::Boat boat = io::loadBoat(std::string(FAYLINE_SAMPLES) + "/" + name + ".fayline");
    boat.display = {.lengths = boat.display.lengths};  // what tests say is in newtons, grams and degrees Celsius
    return boat;
}

inline Shown shownOf(const model::Boat& boat, int piece) {
    Shown shown;
    shown.piece = boat.pieces.at(piece);
    shown.pieceIndex = piece;
    shown.display = boat.display;
    shown.plan = std::make_shared<plan::Plan>(plan::makePlan(shown.piece, plan::shopOf(boat)));
    return shown;
}

// Every piece of every sample boat.
inline std::vector<Shown> allShown() {
    std::vector<Shown> all;
    for (const char* name : {"marram", "marram_in_place", "marram_misread", "minimal"}) {
        const model::Boat boat = sampleBoat(name);
        for (size_t i = 0; i < boat.pieces.size(); ++i) all.push_back(shownOf(boat, static_cast<int>(i)));
    }
    return all;
}

// Does what the view asks for, as the window would, and keeps it.
struct Bench : QObject {
    model::Boat boat;
    Shown shown;
    FormView view;
    std::vector<Change> changes;
    int ended = 0;
    std::vector<std::optional<double>> hovered;
    std::vector<std::optional<double>> selected;

    explicit Bench(const std::string& name = "marram", int piece = 0, QSize size = {900, 600})
        : boat(sampleBoat(name)), shown(shownOf(boat, piece)) {
        view.resize(size);
        view.show(shown);
        connect(&view, &FormView::changeAsked, this, [this](const Change& change) {
            changes.push_back(change);
            shown.piece = change.after;
            shown.plan = std::make_shared<plan::Plan>(plan::makePlan(shown.piece, plan::shopOf(boat)));
            view.show(shown);
        });
        connect(&view, &FormView::dragEnded, this, [this] { ++ended; });
        connect(&view, &FormView::placeHovered, this, [this](std::optional<double> at_m) { hovered.push_back(at_m); });
        connect(&view, &FormView::placeSelected, this,
                [this](std::optional<double> at_m) { selected.push_back(at_m); });
    }

    QPoint pointAt(int index) const {
        const auto& point = shown.piece.line.points.at(index);
        return view.transform().toScreen({point.x_m, point.y_m}).toPoint();
    }
    QPoint onLine(double at_m) const {
        const line::Place place = shown.plan->line.fair.line.at(at_m);
        return view.transform().toScreen({place.x_m, place.y_m}).toPoint();
    }
};

}  // namespace fayline::app
