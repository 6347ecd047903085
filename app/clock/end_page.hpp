// The day when it is over: what comes after, and what was learned next to what was planned.
#pragma once

#include "app/clock/page.hpp"
#include "app/clock/running_day.hpp"
#include "core/plan/day/day_learned.hpp"

class QLabel;
class QTableWidget;

namespace fayline::app {

class EndPage : public Page {
    Q_OBJECT
public:
    explicit EndPage(QWidget* parent = nullptr);

    // The record of `day` is in the boat already; `learned` are the rates that it measured.
    void show(const RunningDay& day, const plan::RatesLearned& learned);
    bool press(const QKeyEvent& key) override;

signals:
    void ratesAsked();  // take the rates over
    void closeAsked();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void takeRates();
    void fill(const std::vector<plan::Compared>& rows);

    BigText* title_;
    QLabel* after_;
    QTableWidget* table_;
    QLabel* learned_;
    BigKey* rates_;
};

}  // namespace fayline::app
