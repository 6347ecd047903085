// The findings of the piece, causes only, the worst first: one line each with the button that puts it right. A line
// opens to why, what follows from it and where its limit comes from. Notes are folded; facts stand in the panels; what
// is always so about the work stands in a strip of its own.
//
// Objects by name: "findingCount" (label: how many of each), "finding0", "finding1" (the lines), in each of them
// "line" (label), "cure" (button), "open" (button) and "detail" (label); "findingNotes" (button: shows the notes),
// "findingSafety" (label).
#pragma once

#include <QWidget>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"
#include "core/plan/findings/cures.hpp"

class QScrollArea;
class QToolButton;

namespace fayline::app {

class FindingLine;
class SteadyWords;

class FindingsList : public QWidget {
    Q_OBJECT
public:
    explicit FindingsList(QWidget* parent = nullptr);
    ~FindingsList() override;
    // While the piece is being planned anew the list stays as it was for the same piece.
    void show(const Shown& shown);

signals:
    void findingChosen(plan::About about, std::optional<double> at_m, int point);
    void placeHovered(std::optional<double> at_m);
    void changeAsked(const Change& change);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    // Which of those with the same code, as the plan orders them: places move with the hand.
    using Key = std::pair<plan::Code, int>;
    Key keyOf(std::size_t index) const;
    void fill();
    void fillLine(FindingLine& line, std::size_t index);
    void placeNotes(std::size_t above);
    void keepRoom();
    FindingLine& lineAt(std::size_t row);
    void choose(std::size_t row);

    Shown shown_;
    std::vector<std::size_t> rows_;  // of the plan's findings, those that lines stand for
    std::vector<FindingLine*> lines_;
    std::set<Key> open_;
    bool notesShown_ = false;
    std::optional<plan::Code> worst_;
    SteadyWords* count_;
    QScrollArea* scroll_;
    QWidget* inside_;
    QToolButton* notes_;
    SteadyWords* safety_;
};

QString severityWord(plan::Severity severity);  // "Stop", "Caution", "Note"

}  // namespace fayline::app
