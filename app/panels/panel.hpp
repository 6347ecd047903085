// What all side panels have in common: they are shown a piece with its plan, light a place, and ask for changes.
#pragma once

#include <QWidget>
#include <optional>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"

namespace fayline::app {

class Panel : public QWidget {
    Q_OBJECT
public:
    using QWidget::QWidget;
    virtual void show(const Shown& shown) = 0;
    virtual void lightPlace(std::optional<double> at_m) { Q_UNUSED(at_m); }

signals:
    void changeAsked(const Change& change);
    void placeHovered(std::optional<double> at_m);
    void placeSelected(std::optional<double> at_m);
};

// The panels that exist, in the order of the job, each with the question it answers. The caller owns them.
struct NamedPanel {
    plan::Question question;
    QString title;
    Panel* panel;
};
std::vector<NamedPanel> makePanels(QWidget* parent);

}  // namespace fayline::app
