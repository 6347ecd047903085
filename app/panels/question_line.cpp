#include "app/panels/question_line.hpp"

#include <QEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QTextLayout>
#include <algorithm>

#include "app/look/icons.hpp"
#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"
#include "app/panels/findings_list.hpp"
#include "app/panels/reading.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

namespace {

constexpr int mostLines = 2;
constexpr int badgeSide = 10;

QFont wordFont() {
    QFont font = textFont(TextSize::body);
    font.setWeight(QFont::DemiBold);
    return font;
}

QFont figuresFont() {
    return tabularFont(textFont(TextSize::small));
}

// The lines that `text` takes when broken between words at `width` pixels; a word alone may stick out.
QStringList linesAt(const QString& text, int width, const QFont& font) {
    QStringList lines;
    QString line;
    for (const QString& word : text.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        const QString longer = line.isEmpty() ? word : line + QLatin1Char(' ') + word;
        if (!line.isEmpty() && wholeTextWidth(longer, font) > width) {
            lines << line;
            line = word;
        } else {
            line = longer;
        }
    }
    if (!line.isEmpty()) lines << line;
    return lines;
}

// The least width at which `text` needs no more than two lines.
int leastWidth(const QString& text, const QFont& font) {
    const QStringList words = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    int least = wholeTextWidth(text, font);
    for (qsizetype first = 1; first < words.size(); ++first) {
        const int above = wholeTextWidth(words.first(first).join(QLatin1Char(' ')), font);
        const int below = wholeTextWidth(words.sliced(first).join(QLatin1Char(' ')), font);
        least = std::min(least, std::max(above, below));
    }
    return least + 1;
}

const char* questionWord(plan::Question question) {
    switch (question) {
        case plan::Question::line:
            return QT_TRANSLATE_NOOP("QuestionLine", "Line");
        case plan::Question::strips:
            return QT_TRANSLATE_NOOP("QuestionLine", "Strips");
        case plan::Question::form:
            return QT_TRANSLATE_NOOP("QuestionLine", "Form");
        case plan::Question::holding:
            return QT_TRANSLATE_NOOP("QuestionLine", "Holding");
        case plan::Question::glue:
            return QT_TRANSLATE_NOOP("QuestionLine", "Glue");
        case plan::Question::time:
            return QT_TRANSLATE_NOOP("QuestionLine", "Time");
        case plan::Question::stock:
            return QT_TRANSLATE_NOOP("QuestionLine", "Stock");
        case plan::Question::paper:
            return QT_TRANSLATE_NOOP("QuestionLine", "Paper");
        case plan::Question::record:
            return QT_TRANSLATE_NOOP("QuestionLine", "Record");
    }
    return "";
}

// The question whose panel has the place at `path`, a path from the piece on; none: no panel has it.
std::optional<plan::Question> questionOf(const QString& path) {
    using enum plan::Question;
    static const std::pair<QLatin1String, plan::Question> firsts[] = {
        {QLatin1String("line"), line},       {QLatin1String("stack"), strips}, {QLatin1String("form"), form},
        {QLatin1String("holding"), holding}, {QLatin1String("glue"), glue},    {QLatin1String("crew"), time},
        {QLatin1String("stock"), stock},     {QLatin1String("record"), record}};
    for (const auto& [first, question] : firsts) {
        if (path == first || path.startsWith(first + QLatin1Char('.')) || path.startsWith(first + QLatin1Char('[')))
            return question;
    }
    return std::nullopt;
}

}  // namespace

QuestionButton::QuestionButton(plan::Question question, QWidget* parent)
    : QAbstractButton(parent), question_(question), word_(QObject::tr(questionWord(question))) {
    setObjectName(QStringLiteral("question%1").arg(static_cast<int>(question)));
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAttribute(Qt::WA_Hover);
    show(nullptr, {}, false);
}

void QuestionButton::show(const plan::Answer* answer, const units::Display& display, bool outOfDate) {
    const bool answered = answer && !answer->figures.empty();
    const QString figures = answered ? app::text(plan::writeWithin(answer->figures, display)) : QString(QChar(0x2013));
    const std::optional<plan::Severity> worst = answer ? answer->worst : std::nullopt;
    if (answer) word_ = app::text(plan::questionName(answer->question));
    set(figures, answered, worst, outOfDate, answer ? app::text(plan::answerText(*answer, display)) : QString());
}

void QuestionButton::showUnplanned(const QString& figures, const QString& why, bool atFault) {
    set(figures, false, atFault ? std::optional(plan::Severity::stop) : std::nullopt, false, why);
}

void QuestionButton::set(const QString& figures, bool answered, const std::optional<plan::Severity>& worst,
                         bool outOfDate, const QString& sentence) {
    setToolTip(sentence);
    if (figures == figures_ && answered == answered_ && worst == worst_ && outOfDate == outOfDate_ && least_ > 0)
        return;
    figures_ = figures;
    answered_ = answered;
    worst_ = worst;
    outOfDate_ = outOfDate;
    measureWidth(false);
    setAccessibleName(worst ? tr("%1: %2. Worst finding: %3").arg(word_, figures_, severityWord(*worst))
                            : tr("%1: %2").arg(word_, figures_));
    setAccessibleDescription(answered ? QString() : sentence);
    update();
}

void QuestionButton::measureWidth(bool mayShrink) {
    const int word = wholeTextWidth(word_, wordFont()) + badgeSide + gridStep / 2;
    const int least = std::max(word, leastWidth(figures_, figuresFont())) + gridStep;
    // Widths that follow every figure would make the whole line tremble while a point is dragged.
    if (least <= least_ && !mayShrink) return;
    least_ = least;
    updateGeometry();
}

bool QuestionButton::showsAll() const {
    const int room = width() - gridStep;
    const QFont font = figuresFont();
    const QStringList lines = linesAt(figures_, room, font);
    return lines.size() <= mostLines &&
           std::all_of(lines.begin(), lines.end(),
                       [&](const QString& line) { return wholeTextWidth(line, font) <= room; }) &&
           wholeTextWidth(word_, wordFont()) <= room;
}

QSize QuestionButton::sizeHint() const {
    const int height = QFontMetrics(wordFont()).height() + mostLines * QFontMetrics(figuresFont()).height() + gridStep;
    return {least_, height};
}

void QuestionButton::paintEvent(QPaintEvent*) {
    const Theme& t = theme();
    QPainter painter(this);
    if (isDown() || underMouse()) painter.fillRect(rect(), t.raised);
    painter.fillRect(QRect(0, gridStep / 2, 1, height() - gridStep), t.rule);
    const QRect inner = rect().adjusted(gridStep / 2, gridStep / 2, -gridStep / 2, -gridStep / 2);
    painter.setFont(wordFont());
    const int wordHeight = painter.fontMetrics().height();
    int left = inner.left();
    if (worst_) {
        painter.setRenderHint(QPainter::Antialiasing);
        const QRectF box(left, inner.top() + (wordHeight - badgeSide) / 2.0, badgeSide, badgeSide);
        painter.fillPath(findingShape(*worst_, box), findingColor(*worst_));
        left += badgeSide + gridStep / 2;
    }
    painter.setPen(answered_ ? t.ink : t.faint);
    painter.drawText(QRect(left, inner.top(), inner.right() - left + 1, wordHeight), Qt::AlignLeft | Qt::AlignVCenter,
                     word_);
    const QFont figuresSet = figuresFont();
    painter.setFont(figuresSet);
    painter.setPen(answered_ && !outOfDate_ ? t.ink : t.faint);
    const QFontMetrics metrics = painter.fontMetrics();
    int top = inner.top() + wordHeight;
    const QStringList lines = linesAt(figures_, inner.width(), figuresSet);
    for (const QString& line : lines.first(std::min<qsizetype>(mostLines, lines.size()))) {
        painter.drawText(QRect(inner.left(), top, inner.width(), metrics.height()), Qt::AlignLeft | Qt::AlignVCenter,
                         line);
        top += metrics.height();
    }
    if (!hasFocus()) return;
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(QPen(t.accent, 1));
    painter.drawRect(rect().adjusted(1, 0, -1, -1));
}

void QuestionButton::enterEvent(QEnterEvent* event) {
    QAbstractButton::enterEvent(event);
    update();
}

void QuestionButton::leaveEvent(QEvent* event) {
    QAbstractButton::leaveEvent(event);
    update();
}

void QuestionButton::changeEvent(QEvent* event) {
    QAbstractButton::changeEvent(event);
    if (event->type() == QEvent::FontChange) measureWidth(true);
}

QuestionLine::QuestionLine(QWidget* parent) : QWidget(parent) {
    setObjectName(QStringLiteral("questionLine"));
    setAccessibleName(tr("The nine questions"));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    using enum plan::Question;
    for (const plan::Question question : {line, strips, form, holding, glue, time, stock, paper, record}) {
        auto* button = new QuestionButton(question, this);
        connect(button, &QAbstractButton::clicked, this, [this, question] { emit questionChosen(question); });
        buttons_.push_back(button);
    }
}

void QuestionLine::show(const Shown& shown) {
    if (shown.pieceIndex >= 0 && !shown.plan && !shown.reason.isEmpty()) return showUnplanned(shown);
    for (QuestionButton* button : buttons_) {
        const plan::Answer* answer = nullptr;
        if (shown.pieceIndex >= 0 && shown.plan) {
            const auto& answers = shown.plan->answers;
            const auto found = std::find_if(answers.begin(), answers.end(),
                                            [&](const plan::Answer& a) { return a.question == button->question(); });
            if (found != answers.end()) answer = &*found;
        }
        button->show(answer, shown.display, shown.outOfDate);
    }
}

void QuestionLine::showUnplanned(const Shown& shown) {
    const std::optional<plan::Question> fault = questionOf(shown.reasonPath);
    const QString why = tr("No plan yet: %1.").arg(shown.reason);
    for (QuestionButton* button : buttons_) {
        const bool atFault = button->question() == fault;
        const QString elsewhere =
            fault ? tr("no plan yet: see %1").arg(QObject::tr(questionWord(*fault))) : tr("no plan yet");
        button->showUnplanned(atFault ? tr("cannot be planned") : elsewhere, why, atFault);
    }
}

int QuestionLine::neededWidth(int perRow) const {
    int width = 0;
    for (int column = 0; column < perRow; ++column) {
        int widest = 0;
        for (int i = column; i < math::countOf(buttons_); i += perRow) {
            widest = std::max(widest, buttons_[i]->sizeHint().width());
        }
        width += widest;
    }
    return width;
}

int QuestionLine::perRow(int width) const {
    const int all = math::countOf(buttons_);
    return width >= neededWidth(all) ? all : (all + 1) / 2;
}

QSize QuestionLine::sizeHint() const {
    return {neededWidth(math::countOf(buttons_)), buttons_.front()->sizeHint().height()};
}

QSize QuestionLine::minimumSizeHint() const {
    return {neededWidth(perRow(0)), buttons_.front()->sizeHint().height()};
}

int QuestionLine::heightForWidth(int width) const {
    return (perRow(width) < math::countOf(buttons_) ? 2 : 1) * buttons_.front()->sizeHint().height();
}

// What is left over of the width goes to all columns alike.
void QuestionLine::place() {
    const int columns = perRow(width());
    const int spare = std::max(0, width() - neededWidth(columns));
    const int height = buttons_.front()->sizeHint().height();
    int left = 0;
    for (int column = 0; column < columns; ++column) {
        int wide = spare * (column + 1) / columns - spare * column / columns;
        int widest = 0;
        for (int i = column; i < math::countOf(buttons_); i += columns) {
            widest = std::max(widest, buttons_[i]->sizeHint().width());
        }
        wide += widest;
        for (int i = column, row = 0; i < math::countOf(buttons_); i += columns, ++row) {
            buttons_[i]->setGeometry(left, row * height, wide, height);
        }
        left += wide;
    }
}

void QuestionLine::resizeEvent(QResizeEvent*) {
    place();
}

// A button that needs another width asks for a new layout.
bool QuestionLine::event(QEvent* event) {
    if (event->type() == QEvent::LayoutRequest) {
        updateGeometry();
        place();
    }
    return QWidget::event(event);
}

void QuestionLine::keyPressEvent(QKeyEvent* event) {
    const int step = event->key() == Qt::Key_Right ? 1 : event->key() == Qt::Key_Left ? -1 : 0;
    const auto at =
        std::find_if(buttons_.begin(), buttons_.end(), [](const QuestionButton* b) { return b->hasFocus(); });
    if (event->key() == Qt::Key_C && at != buttons_.end() &&
        ((*at)->question() == plan::Question::time || (*at)->question() == plan::Question::record)) {
        emit clockAsked();
        return;
    }
    if (step == 0 || at == buttons_.end()) return QWidget::keyPressEvent(event);
    const auto next =
        std::clamp<std::ptrdiff_t>(at - buttons_.begin() + step, 0, static_cast<std::ptrdiff_t>(buttons_.size()) - 1);
    buttons_[next]->setFocus(Qt::TabFocusReason);
}

}  // namespace fayline::app
