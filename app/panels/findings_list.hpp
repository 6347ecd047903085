// All findings of the piece, the worst first; a click leads to the place.
//
// Objects by name: "findings" (the list), "findingSource" (label: where the chosen one's limit comes from),
// "repair0", "repair1" (buttons: the offered repairs of misread offsets, the worst first).
#pragma once

#include <QWidget>
#include <memory>
#include <optional>
#include <vector>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"

class QLabel;
class QListView;
class QPushButton;
class QVBoxLayout;

namespace fayline::app {

class FindingsModel;
class Words;
struct Repair;

class FindingsList : public QWidget {
    Q_OBJECT
public:
    explicit FindingsList(QWidget* parent = nullptr);
    ~FindingsList() override;
    void show(const Shown& shown);

signals:
    void findingChosen(plan::About about, std::optional<double> at_m, int point);
    void placeHovered(std::optional<double> at_m);
    void changeAsked(const Change& change);  // the offered repair of a misread offset

protected:
    bool eventFilter(QObject* object, QEvent* event) override;

private:
    void choose(int row);
    void showSource();
    void showRepairs(const Shown& shown);

    FindingsModel* model_;
    QListView* view_;
    Words* none_;
    Words* source_;
    QVBoxLayout* repairsLayout_;
    std::vector<QPushButton*> buttons_;
    std::vector<Repair> repairs_;
};

}  // namespace fayline::app
