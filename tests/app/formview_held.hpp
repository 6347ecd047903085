// Forms held by figures written by hand, for tests of what holds a piece, as it is drawn and moved.
#pragma once

#include <QtTest>
#include <algorithm>
#include <cmath>
#include <limits>

#include "app/formview/edits.hpp"
#include "app/formview/force_marks.hpp"
#include "app/formview/form_edge.hpp"
#include "app/formview/sheet.hpp"
#include "app/look/theme.hpp"
#include "core/holding/props/hull.hpp"
#include "core/plan/shop.hpp"
#include "tests/app/formview_samples.hpp"

namespace fayline::app::held {

inline constexpr double none = std::numeric_limits<double>::quiet_NaN();
inline constexpr double endless = std::numeric_limits<double>::infinity();

// The stem with a held stack written by hand: pulls of 250, 500, ... N, gaps between trim lines of half a sine.
struct Held {
    model::Boat boat = sampleBoat("marram");
    Shown shown = shownOf(boat, 0);
    plan::Plan plan = *shown.plan;

    Held() { fill(); }

    double length_m() const { return plan.line.fair.line.length(); }

    void fill() {
        auto& holding = plan.holding;
        holding.held = {};
        holding.props.clear();
        holding.straps.clear();
        holding.posts.clear();
        holding.hull.reset();
        for (const auto& place : holding.stations) {
            holding::HeldStation station;
            station.index = place.index;
            station.number = place.number;
            station.at_m = place.at_m;
            station.pull_N = 250.0 * place.number;
            station.most_N = 2500;
            station.state = holding::HoldState::closes;
            holding.held.stations.push_back(station);
        }
        gaps([](double) { return 0.0; });
        show();
    }
    template <class Gap>
    void gaps(const Gap& gap) {
        auto& samples = plan.holding.held.samples;
        samples.clear();
        for (double at_m = -0.1; at_m < length_m() + 0.15; at_m += 0.01) samples.push_back({at_m, gap(at_m), 0, 0});
    }
    void show() { shown.plan = std::make_shared<plan::Plan>(plan); }

    struct Picture {
        Drawing drawing;
        Transform transform;
        Sheet sheet;
    };
    Picture picture(const ViewChoice& choice = {}, QSizeF view = {900, 600}) const {
        Picture made;
        made.drawing = drawingOf(*shown.plan, shown.piece.line.stripsOn);
        const Fonts fonts = fontsFrom(tabularFont(QApplication::font()));
        made.transform = fitted(boundsOf(shown, made.drawing), roomWithMarks(shown, made.drawing, view, fonts, choice));
        made.sheet = sheetOf(shown, made.drawing, made.transform, view, choice, fonts, false);
        return made;
    }
};

inline const ForceArrow* arrowOf(const Sheet& sheet, int station) {
    for (const ForceArrow& arrow : sheet.forces) {
        if (arrow.station == station) return &arrow;
    }
    return nullptr;
}

inline bool says(const std::vector<Text>& texts, const QString& words) {
    return std::any_of(texts.begin(), texts.end(), [&](const Text& text) { return text.words.contains(words); });
}

inline std::string overlapOf(const FormView& view) {
    const auto& texts = view.texts();
    for (size_t i = 0; i < texts.size(); ++i) {
        if (!QRectF(view.rect()).contains(texts[i].place)) return "leaves the view: " + texts[i].words.toStdString();
        for (size_t j = 0; j < i; ++j) {
            if (!texts[i].place.intersects(texts[j].place)) continue;
            return texts[i].words.toStdString() + " covers " + texts[j].words.toStdString();
        }
    }
    return {};
}

inline bool finite(const QPainterPath& path) {
    for (int i = 0; i < path.elementCount(); ++i) {
        if (!std::isfinite(path.elementAt(i).x) || !std::isfinite(path.elementAt(i).y)) return false;
    }
    return true;
}

inline bool finite(const Lines& lines) {
    return std::all_of(lines.begin(), lines.end(), [](const QPolygonF& line) {
        return std::all_of(line.begin(), line.end(),
                           [](const QPointF& at) { return std::isfinite(at.x()) && std::isfinite(at.y()); });
    });
}

// How far from `from` along `way` pixels of about this colour reach without a break of more than two, within `most`.
inline double reachOf(const QImage& image, QPointF from, QPointF way, const QColor& colour, double most) {
    double reach = 0;
    for (double at = 0; at <= most && at - reach <= 2; at += 0.25) {
        const QPointF place = from + way * at;
        const QPoint pixel(static_cast<int>(std::floor(place.x())), static_cast<int>(std::floor(place.y())));
        if (!image.rect().contains(pixel)) break;
        const QColor seen = image.pixelColor(pixel);
        const int off = std::abs(seen.red() - colour.red()) + std::abs(seen.green() - colour.green()) +
                        std::abs(seen.blue() - colour.blue());
        if (off < 90) reach = at;
    }
    return reach;
}

// The stem glued in place under a boat: two props from the floor and a hull on three blocks.
struct Propped : Bench {
    int prop = -1;

    Propped() : Bench("marram", 0) {
        auto& holding = shown.piece.holding;
        for (int i = 0; i < 2; ++i) {
            auto& station = holding.stations[2 + i];
            station.kind = model::HoldKind::prop;
            station.strut.footX_m = 0.9 - 0.3 * i;
            station.strut.footY_m = -0.5;
        }
        prop = 2;
        holding.hull.weight_kg = 800;
        holding.hull.centreX_m = 0.6;
        holding.hull.centreY_m = 0.9;
        holding.hull.blocks = {{.x_m = 0.2, .y_m = -0.3}, {.x_m = 0.7, .y_m = -0.3}, {.x_m = 1.3, .y_m = -0.3}};
        shown.plan = std::make_shared<plan::Plan>(plan::makePlan(shown.piece, plan::shopOf(boat)));
        view.show(shown);
        view.fitToWindow();
    }
    QPoint at(double x_m, double y_m) const { return view.transform().toScreen({x_m, y_m}).toPoint(); }
    void drag(QPoint from, QPoint to, Qt::KeyboardModifiers held = Qt::NoModifier) {
        QTest::mousePress(&view, Qt::LeftButton, held, from);
        for (const double share : {0.3, 0.7, 1.0}) {
            const QPointF now = QPointF(from) + QPointF(to - from) * share;
            QMouseEvent move(QEvent::MouseMove, now, view.mapToGlobal(now), Qt::NoButton, Qt::LeftButton, held);
            QCoreApplication::sendEvent(&view, &move);
        }
    }
    void release(QPoint at) { QTest::mouseRelease(&view, Qt::LeftButton, {}, at); }
    bool oneStep(const QString& name) const {
        if (changes.empty() || ended != 1) return false;
        return std::all_of(changes.begin(), changes.end(), [&](const Change& change) {
            return change.name == name && !change.merges.isEmpty() && change.merges == changes.front().merges;
        });
    }
    // The grip of a trim line: on the form's side of it.
    QPoint gripOf(int trim) {
        const Drawing drawing = drawingOf(*shown.plan, shown.piece.line.stripsOn);
        const Sheet sheet = sheetOf(shown, drawing, view.transform(), view.size(), ViewChoice{},
                                    fontsFrom(tabularFont(view.font())), false);
        return sheet.grips.at(trim).toPoint();
    }
    line::Xy placeOf(double at_m) const {
        const line::Place place = shown.plan->line.fair.line.at(at_m);
        return {place.x_m, place.y_m};
    }
};

inline double apart(const line::Xy& a, const line::Xy& b) {
    return std::hypot(a.x_m - b.x_m, a.y_m - b.y_m);
}

}  // namespace fayline::app::held
