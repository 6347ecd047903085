#include "app/window/panel_stack.hpp"

#include <QSettings>
#include <QTimer>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/look/icons.hpp"
#include "app/look/theme.hpp"
#include "app/panels/parts.hpp"
#include "app/window/paper_panel.hpp"

namespace fayline::app {

PanelStack::PanelStack(QWidget* parent) : PanelScroll(parent) {
    setObjectName("panelStack");
    setAccessibleName(tr("Panels"));
    setFocusPolicy(Qt::NoFocus);  // its parts have it; keys that they leave alone scroll

    auto* body = new QWidget(this);
    auto* column = new QVBoxLayout(body);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    std::vector<NamedPanel> panels = makePanels(body);
    // It tells of papers, which the other panels know nothing of.
    panels.insert(std::ranges::upper_bound(panels, plan::Question::paper, {}, &NamedPanel::question),
                  {plan::Question::paper, tr("Paper"), new PaperPanel(body)});
    for (const NamedPanel& named : panels) {
        auto* head = new QToolButton(body);
        head->setObjectName("panelHead" + QString::number(int(named.question)));
        head->setText(named.title);
        head->setFont(textFont(TextSize::title));
        head->setIcon(icon("folded"));
        head->setIconSize({16, 16});
        head->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
        head->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
        head->setMinimumHeight(4 * gridStep);
        head->setAutoRaise(true);
        head->setFocusPolicy(Qt::StrongFocus);
        auto* under = new QFrame(body);
        under->setFrameShape(QFrame::HLine);
        column->addWidget(head);
        column->addWidget(named.panel);
        column->addWidget(under);
        named.panel->hide();
        named.panel->installEventFilter(this);

        const size_t index = sections_.size();
        sections_.push_back({named.question, head, named.panel});
        connect(head, &QToolButton::clicked, this,
                [this, index] { setOpen(sections_[index], sections_[index].panel->isHidden()); });
        connect(named.panel, &app::Panel::changeAsked, this, &PanelStack::changeAsked);
        connect(named.panel, &app::Panel::placeHovered, this, &PanelStack::placeHovered);
        connect(named.panel, &app::Panel::placeSelected, this, &PanelStack::placeSelected);
        connect(named.panel, &app::Panel::pointSelected, this, &PanelStack::pointSelected);
        connect(named.panel, &app::Panel::stripSelected, this, &PanelStack::stripSelected);
        connect(named.panel, &app::Panel::momentPointed, this, &PanelStack::momentPointed);
        connect(named.panel, &app::Panel::actionAsked, this, &PanelStack::actionAsked);
        connect(named.panel, &app::Panel::ownGluesAsked, this, &PanelStack::ownGluesAsked);
        connect(named.panel, &app::Panel::calculateAsked, this, &PanelStack::calculateAsked);
        connect(named.panel, &app::Panel::keepInShedAsked, this, &PanelStack::keepInShedAsked);
        connect(named.panel, &app::Panel::wholePieceWanted, this, &PanelStack::wholePieceWanted);
        connect(named.panel, &app::Panel::panelAsked, this, &PanelStack::openPanel);
    }
    column->addStretch(1);
    rememberFolds(body);
    setWidget(body);
}

// What the user folds and opens in the panels stays so at the next start.
void PanelStack::rememberFolds(QWidget* body) {
    for (app::Section* section : body->findChildren<app::Section*>()) {
        const QString key = "sections/" + section->object();
        section->setOpen(QSettings().value(key, section->isOpen()).toBool());
        connect(section, &app::Section::folded, this, [key](bool open) { QSettings().setValue(key, open); });
    }
}

void PanelStack::show(const Shown& shown) {
    shown_ = shown;
    for (Section& section : sections_) {
        section.stale = true;
        if (!section.panel->isHidden() && !(followsHand(shown) && isOutOfSight(*section.panel))) bring(section);
    }
}

bool PanelStack::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Paint) {
        const auto found = std::ranges::find(sections_, watched, &Section::panel);
        // It has come into sight; the layout may change, so not from within the painting.
        if (found != sections_.end() && found->stale) {
            QMetaObject::invokeMethod(
                this,
                [this, at = found - sections_.begin()] {
                    Section& section = sections_[at];
                    if (section.stale && !section.panel->isHidden()) bring(section);
                },
                Qt::QueuedConnection);
        }
    }
    return PanelScroll::eventFilter(watched, event);
}

void PanelStack::lightPlace(std::optional<double> at_m) {
    lit_ = at_m;
    for (Section& section : sections_) {
        if (!section.panel->isHidden()) section.panel->lightPlace(at_m);
    }
}

void PanelStack::selectPlace(std::optional<double> at_m) {
    selected_ = at_m;
    for (Section& section : sections_) {
        if (!section.panel->isHidden()) section.panel->selectPlace(at_m);
    }
}

void PanelStack::selectStrip(int place) {
    for (Section& section : sections_) {
        if (!section.panel->isHidden()) section.panel->selectStrip(place);
    }
}

void PanelStack::selectPoint(int point) {
    for (Section& section : sections_) {
        if (!section.panel->isHidden()) section.panel->selectPoint(point);
    }
}

void PanelStack::goToPoint(int point) {
    if (!openPanel(plan::Question::line)) return;
    std::ranges::find(sections_, plan::Question::line, &Section::question)->panel->goToPoint(point);
}

bool PanelStack::openPanel(plan::Question question) {
    const auto found = std::ranges::find(sections_, question, &Section::question);
    if (found == sections_.end()) return false;
    setOpen(*found, true);
    QToolButton* head = found->head;
    head->setFocus(Qt::OtherFocusReason);
    // Once the layout has settled, so that its title comes to the top.
    QTimer::singleShot(0, this, [this, head] {
        ensureVisible(0, head->y() + viewport()->height() - 1, 0, 0);
        ensureVisible(0, head->y(), 0, 0);
    });
    return true;
}

void PanelStack::setOneAtATime(bool one) {
    oneAtATime_ = one;
    if (!one) return;
    bool first = true;
    for (Section& section : sections_) {
        if (section.panel->isHidden()) continue;
        if (!first) setOpen(section, false);
        first = false;
    }
}

std::vector<int> PanelStack::openQuestions() const {
    std::vector<int> open;
    for (const Section& section : sections_) {
        if (!section.panel->isHidden()) open.push_back(int(section.question));
    }
    return open;
}

void PanelStack::setOpenQuestions(const std::vector<int>& questions) {
    for (Section& section : sections_)
        setOpen(section, std::ranges::find(questions, int(section.question)) != questions.end());
}

void PanelStack::setOpen(Section& section, bool open) {
    if (open && oneAtATime_) {
        for (Section& other : sections_) {
            if (&other != &section && !other.panel->isHidden()) setOpen(other, false);
        }
    }
    section.head->setAccessibleName((open ? tr("Panel %1, open") : tr("Panel %1, folded")).arg(section.head->text()));
    section.head->setIcon(icon(open ? "unfolded" : "folded"));
    if (open && section.stale) bring(section);
    section.panel->setVisible(open);
}

void PanelStack::bring(Section& section) {
    section.panel->show(shown_);
    if (std::exchange(section.old, shown_.outOfDate) != shown_.outOfDate) section.panel->dim(shown_.outOfDate);
    section.panel->lightPlace(lit_);
    section.panel->selectPlace(selected_);
    section.stale = false;
}

}  // namespace fayline::app

#include "moc_panel_stack.cpp"
