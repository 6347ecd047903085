// A band over the drawing while a day runs by the clock and another window is in front: which day, how long it runs,
// the worst that is wrong with it, and the way back.
//
// Objects by name: "clockBand"; "clockBandWords" (label), "backToClock" (button).
#pragma once

#include <QTimer>
#include <QWidget>
#include <optional>

#include "core/plan/findings/finding.hpp"

class QLabel;
class QPushButton;

namespace fayline::app {

class ClockScreen;

class ClockBand : public QWidget {
    Q_OBJECT
public:
    explicit ClockBand(QWidget* parent = nullptr);

    void follow(ClockScreen* clock);
    std::optional<plan::Severity> worst() const { return worst_; }  // of what is warned of; none: nothing
    void tick();                                                    // shows what stands now; once a second by itself

signals:
    void backAsked();

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    ClockScreen* clock_ = nullptr;
    QLabel* words_;
    QPushButton* back_;
    QTimer second_;
    std::optional<plan::Severity> worst_;
};

}  // namespace fayline::app
