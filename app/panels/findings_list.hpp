// All findings of the piece, the worst first; a click leads to the place.
#pragma once

#include <QWidget>
#include <optional>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"

namespace fayline::app {

class FindingsList : public QWidget {
    Q_OBJECT
public:
    explicit FindingsList(QWidget* parent = nullptr);
    void show(const Shown& shown);

signals:
    void findingChosen(plan::About about, std::optional<double> at_m, int point);
    void placeHovered(std::optional<double> at_m);
    void changeAsked(const Change& change);  // the offered repair of a misread offset
};

}  // namespace fayline::app
