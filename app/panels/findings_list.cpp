#include "app/panels/findings_list.hpp"

#include <QCoreApplication>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QTimer>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/look/text.hpp"
#include "app/look/theme.hpp"
#include "app/panels/finding_line.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"

namespace fayline::app {

QString severityWord(plan::Severity severity) {
    switch (severity) {
        case plan::Severity::stop:
            return QObject::tr("Stop");
        case plan::Severity::caution:
            return QObject::tr("Caution");
        case plan::Severity::note:
            return QObject::tr("Note");
    }
    return {};
}

namespace {

QString counted(int count, const QString& one, const QString& many) {
    return count == 1 ? one : many.arg(count);
}

// "1 stop, 2 cautions": what there is of each, but the notes.
QString countWords(const plan::Verdict& verdict) {
    QStringList parts;
    if (verdict.stops() > 0) parts << counted(verdict.stops(), QObject::tr("1 stop"), QObject::tr("%1 stops"));
    if (verdict.cautions() > 0)
        parts << counted(verdict.cautions(), QObject::tr("1 caution"), QObject::tr("%1 cautions"));
    return parts.join(QStringLiteral(", "));
}

bool hasDetail(const plan::Plan& plan, std::size_t index) {
    const plan::Finding& finding = plan.findings[index];
    return !finding.details.empty() || !finding.source.text.empty() ||
           std::ranges::count(plan.findings, static_cast<int>(index), &plan::Finding::root) > 0;
}

// Why, what follows from it, where the limit comes from.
QString detailWords(const plan::Plan& plan, std::size_t index, const units::Display& display) {
    const plan::Finding& finding = plan.findings[index];
    QStringList parts;
    if (const std::string why = plan::detailsOf(finding, display); !why.empty()) parts << text(why);
    QStringList following;
    for (const plan::Finding& other : plan.findings) {
        if (other.root == static_cast<int>(index))
            following << QStringLiteral("- ") + text(plan::textOf(other, display));
    }
    if (!following.isEmpty()) parts << QObject::tr("This causes:") << following;
    if (!finding.source.text.empty()) parts << QObject::tr("Source: %1").arg(sourceText(finding.source));
    return parts.join(QLatin1Char('\n'));
}

}  // namespace

FindingsList::FindingsList(QWidget* parent)
    : QWidget(parent),
      count_(new SteadyWords(QStringLiteral("findingCount"), this)),
      scroll_(new QScrollArea(this)),
      inside_(new QWidget),
      notes_(new QToolButton(inside_)),
      safety_(new SteadyWords(QStringLiteral("findingSafety"), this)) {
    setObjectName(QStringLiteral("findingsList"));
    setAccessibleName(tr("Findings, the worst first"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(gridStep / 2);
    QFont strong = font();
    strong.setBold(true);
    count_->findChild<QLabel*>()->setFont(strong);
    layout->addWidget(count_);
    auto* inside = new QVBoxLayout(inside_);
    inside->setContentsMargins(0, 0, 0, 0);
    inside->setSpacing(0);
    notes_->setObjectName(QStringLiteral("findingNotes"));
    notes_->setAutoRaise(true);
    notes_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    inside->addWidget(notes_, 0, Qt::AlignLeft);
    inside->addStretch(1);
    scroll_->setWidget(inside_);
    scroll_->setWidgetResizable(true);
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll_->setFocusPolicy(Qt::NoFocus);
    layout->addWidget(scroll_, 1);
    safety_->findChild<QLabel*>()->setForegroundRole(QPalette::PlaceholderText);
    layout->addWidget(safety_);
    connect(notes_, &QToolButton::clicked, this, [this] {
        notesShown_ = !notesShown_;
        fill();
    });
}

FindingsList::~FindingsList() = default;

void FindingsList::show(const Shown& shown) {
    const bool otherPiece = !shown.samePieceAs(shown_);
    const bool beingPlanned = shown.outOfDate && shown.reason.isEmpty() && !otherPiece && shown.plan == shown_.plan &&
                              shown.display == shown_.display;
    shown_ = shown;
    if (beingPlanned) {  // all keeps its place
        for (FindingLine* line : lines_) line->setEnabled(false);
        return;
    }
    if (otherPiece) open_.clear();
    std::optional<plan::Code> worst;
    if (shown_.pieceIndex >= 0 && shown_.plan && !shown_.plan->findings.empty()) {
        worst = shown_.plan->findings.front().code;
    }
    const bool toTop = otherPiece || worst != worst_;
    worst_ = worst;
    fill();
    if (toTop) scroll_->verticalScrollBar()->setValue(0);
}

void FindingsList::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    keepRoom();
}

// Some lines stay in sight however much there is to say of safety.
void FindingsList::keepRoom() {
    constexpr int leastLines = 3;
    const int spacing = layout()->spacing();
    const int count = count_->heightForWidth(width()) + spacing;
    const int safety = safety_->isHidden() ? 0 : safety_->heightForWidth(width()) + spacing;
    const int least = count + leastLines * (fontMetrics().height() + 2 * gridStep) + safety;
    if (minimumHeight() != least) setMinimumHeight(least);
}

FindingsList::Key FindingsList::keyOf(std::size_t index) const {
    const std::vector<plan::Finding>& all = shown_.plan->findings;
    const auto own = all.begin() + static_cast<std::ptrdiff_t>(index);
    return {own->code, static_cast<int>(std::count_if(all.begin(), own, [own](const plan::Finding& other) {
                return other.code == own->code && other.root < 0;
            }))};
}

void FindingsList::fill() {
    const bool any = shown_.pieceIndex >= 0 && shown_.plan;
    rows_.clear();
    std::vector<std::size_t> notes;
    QStringList safety;
    const std::size_t count = any ? shown_.plan->findings.size() : 0;
    for (std::size_t i = 0; i < count; ++i) {
        const plan::Finding& finding = shown_.plan->findings[i];
        if (finding.root >= 0) continue;
        switch (plan::levelOf(finding)) {
            case plan::Level::finding:
                (finding.severity == plan::Severity::note ? notes : rows_).push_back(i);
                break;
            case plan::Level::safety:
                safety << text(plan::textOf(finding, shown_.display));
                break;
            case plan::Level::fact:
                break;
        }
    }
    const plan::Verdict verdict = any ? plan::verdictOf(*shown_.plan) : plan::Verdict{};
    const QString counts = countWords(verdict);
    QString verdictWords = tr("No plan yet.");
    if (any) verdictWords = text(plan::writeText(verdict.text, shown_.display));
    count_->say(counts.isEmpty() ? verdictWords : tr("%1 (%2)").arg(verdictWords, counts));
    const std::size_t above = rows_.size();
    if (notesShown_) rows_.insert(rows_.end(), notes.begin(), notes.end());
    const int notesCount = static_cast<int>(notes.size());
    notes_->setVisible(notesCount > 0);
    notes_->setText(counted(notesCount, tr("1 note"), tr("%1 notes")));
    notes_->setArrowType(notesShown_ ? Qt::DownArrow : Qt::RightArrow);
    for (std::size_t row = 0; row < rows_.size(); ++row) fillLine(lineAt(row), rows_[row]);
    for (std::size_t row = 0; row < lines_.size(); ++row) lines_[row]->setVisible(row < rows_.size());
    placeNotes(above);
    constexpr int mostLines = 3;
    safety_->say(safety.mid(0, mostLines).join(QLatin1Char('\n')));
    keepRoom();
}

// The notes follow the button that shows them, for the eye and for the tab key.
void FindingsList::placeNotes(std::size_t above) {
    auto* layout = static_cast<QVBoxLayout*>(inside_->layout());
    const auto at = static_cast<int>(above);
    if (layout->indexOf(notes_) == at) return;
    layout->removeWidget(notes_);
    layout->insertWidget(at, notes_, 0, Qt::AlignLeft);
    QWidget* before = nullptr;
    for (int i = 0; i < layout->count(); ++i) {
        QWidget* next = layout->itemAt(i)->widget();
        if (!next) continue;
        const auto* line = qobject_cast<FindingLine*>(next);
        if (before) setTabOrder(before, next);
        before = line ? line->lastInside() : next;
    }
}

FindingLine& FindingsList::lineAt(std::size_t row) {
    auto* layout = static_cast<QVBoxLayout*>(inside_->layout());
    while (lines_.size() <= row) {
        const std::size_t number = lines_.size();
        auto* line = new FindingLine(QStringLiteral("finding%1").arg(number), inside_);
        layout->insertWidget(layout->count() - 1, line);
        connect(line, &FindingLine::chosen, this, [this, number] { choose(number); });
        connect(line, &FindingLine::hovered, this, &FindingsList::placeHovered);
        connect(line, &FindingLine::openAsked, this, [this, number, line] {
            if (number >= rows_.size()) return;
            const Key key = keyOf(rows_[number]);
            if (!open_.erase(key)) open_.insert(key);
            fill();
            // Once it has its new height: what it opened to, from its own top on.
            QTimer::singleShot(0, this, [this, line] {
                line->layout()->activate();
                inside_->layout()->activate();
                QCoreApplication::sendPostedEvents(inside_, QEvent::LayoutRequest);
                const int below = line->geometry().bottom() - scroll_->viewport()->height();
                QScrollBar* bar = scroll_->verticalScrollBar();
                if (bar->value() < below) bar->setValue(std::min(line->y(), below));
            });
        });
        connect(line, &FindingLine::cureAsked, this, [this, number] {
            if (number >= rows_.size() || shown_.outOfDate) return;
            const auto cure = plan::cureOf(shown_.piece, *shown_.plan, shown_.plan->findings[rows_[number]]);
            if (cure) emit changeAsked({text(plan::writeText(cure->name, shown_.display)), {}, cure->piece});
        });
        lines_.push_back(line);
    }
    return *lines_[row];
}

void FindingsList::fillLine(FindingLine& line, std::size_t index) {
    const plan::Finding& finding = shown_.plan->findings[index];
    const std::optional<plan::Cure> cure =
        shown_.outOfDate ? std::nullopt : plan::cureOf(shown_.piece, *shown_.plan, finding);
    line.setPlace(finding.at_m);
    line.setEnabled(!shown_.outOfDate);
    const bool open = open_.contains(keyOf(index));
    line.say(finding.severity, text(plan::textOf(finding, shown_.display)),
             cure ? text(plan::writeText(cure->name, shown_.display)) : QString(), hasDetail(*shown_.plan, index), open,
             open ? detailWords(*shown_.plan, index, shown_.display) : QString());
}

void FindingsList::choose(std::size_t row) {
    if (row >= rows_.size()) return;
    const plan::Finding& finding = shown_.plan->findings[rows_[row]];
    emit findingChosen(plan::aboutOf(finding.code), finding.at_m, finding.point);
}

}  // namespace fayline::app

#include "moc_findings_list.cpp"
