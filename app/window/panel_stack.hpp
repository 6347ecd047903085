// The side panels under each other in the order of the job, each folded to its title or open.
#pragma once

#include <optional>
#include <vector>

#include "app/panels/panel.hpp"
#include "app/panels/panel_scroll.hpp"

class QToolButton;
class QVBoxLayout;

namespace fayline::app {

class PanelStack : public PanelScroll {
    Q_OBJECT
public:
    explicit PanelStack(QWidget* parent = nullptr);

    // Folded panels are shown it when they open, those scrolled away when they come into sight or the hand rests.
    void show(const Shown& shown);
    void lightPlace(std::optional<double> at_m);
    void selectPlace(std::optional<double> at_m);
    void selectStrip(int place);  // 1 on the form; 0: none
    void selectPoint(int point);  // -1: none; panels stay folded and the keyboard where it is

    // Opens the panel that answers `question`, brings it into sight and gives it the keyboard. False: there is none
    // yet.
    bool openPanel(plan::Question question);
    void goToPoint(int point);  // in the line panel
    void setOneAtATime(bool one);

    std::vector<int> openQuestions() const;  // for remembering
    void setOpenQuestions(const std::vector<int>& questions);

signals:
    void changeAsked(const Change& change);
    void placeHovered(std::optional<double> at_m);
    void placeSelected(std::optional<double> at_m);
    void pointSelected(int point);
    void stripSelected(int place);
    void momentPointed(const std::optional<PointedMoment>& moment);
    void actionAsked(const QString& name);
    void ownGluesAsked();
    void calculateAsked();
    void keepInShedAsked(model::ShedPart part);
    void wholePieceWanted();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct Section {
        plan::Question question;
        QToolButton* head;
        app::Panel* panel;  // QFrame has a Panel of its own
        bool stale = true;  // shown nothing since `shown_` changed
        bool old = false;   // looks out of date
    };
    void setOpen(Section& section, bool open);
    void bring(Section& section);
    void rememberFolds(QWidget* body);

    std::vector<Section> sections_;
    Shown shown_;
    std::optional<double> lit_;
    std::optional<double> selected_;
    bool oneAtATime_ = false;
};

}  // namespace fayline::app
