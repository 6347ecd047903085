#include "app/window/compare_dialog.hpp"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QGridLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPainter>
#include <QProgressDialog>
#include <QPushButton>
#include <QScrollArea>
#include <QStyledItemDelegate>
#include <QTableWidget>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "app/look/judged.hpp"
#include "app/look/text.hpp"
#include "app/look/theme.hpp"
#include "app/panels/finding_line.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/window/at_work.hpp"
#include "core/io/file.hpp"
#include "core/math/count.hpp"
#include "core/plan/study/deepen.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

namespace {

enum Column { question, what, first, second, judged, columns };

// Each figure has its line; cells of one row stand line by line beside each other.
class LinedCells : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        QStyleOptionViewItem within = option;
        within.rect.adjust(0, above, 0, 0);
        QStyledItemDelegate::paint(painter, within, index);
        painter->fillRect(QRect(option.rect.left(), option.rect.bottom(), option.rect.width(), 1), theme().rule);
    }

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        return QStyledItemDelegate::sizeHint(option, index) + QSize(gridStep, 2 * above);
    }

protected:
    static constexpr int above = gridStep / 2;

    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override {
        QStyledItemDelegate::initStyleOption(option, index);
        option->decorationAlignment = Qt::AlignTop | Qt::AlignLeft;
    }
};

// Throws InputError where no plan can be made.
std::shared_ptr<const plan::Plan> planOf(const model::Piece& piece, const plan::Shop& shop,
                                         const std::atomic<bool>& stop) {
    const std::optional<plan::Plan> live = plan::makePlan(piece, shop, nullptr, stop);
    if (!live) return nullptr;
    std::optional<plan::Plan> whole = plan::deepen(piece, shop, *live, stop);
    return std::make_shared<const plan::Plan>(whole ? std::move(*whole) : *live);
}

QString figureText(const plan::Message& figure, const units::Display& display) {
    return figure.empty() ? QStringLiteral("\u2013") : text(plan::writeWithin(figure, display));
}

}  // namespace

CompareDialog::CompareDialog(const Document& document, const Shown& shown, QWidget* parent)
    : QDialog(parent), display_(document.boat().display) {
    setObjectName("compareDialog");
    setWindowTitle(tr("Compare"));
    gather(document, shown);
    layOut();
    showStates();
    QTimer::singleShot(0, this, &CompareDialog::calculate);
}

// The piece as it is stands first, then what it was, then the boat's other pieces.
void CompareDialog::gather(const Document& document, const Shown& shown) {
    const model::Boat& boat = document.boat();
    const int index = document.currentPiece();
    const plan::Shop shop = plan::shopOf(boat);
    if (index >= 0) {
        const model::Piece& piece = boat.pieces[index];
        const QString name = text(piece.name);
        states_.push_back({tr("%1, as it is").arg(name), piece, shop, nullptr, {}});
        const bool whole = shown.pieceIndex == index && shown.piece == piece && shown.plan && !shown.outOfDate &&
                           plan::isStudied(*shown.plan);
        if (whole) states_.back().plan = shown.plan;
        if (const auto before = document.beforeLastChange(index))
            states_.push_back({tr("%1, before: %2").arg(name, before->change), before->piece, shop, nullptr, {}});
        if (document.hasUnsavedChanges() && !document.fileName().isEmpty() && !document.changedOnDisk()) {
            try {
                const model::Boat saved = io::loadBoat(pathOf(document.fileName()));
                const auto found = std::ranges::find(saved.pieces, piece.id, &model::Piece::id);
                if (found != saved.pieces.end())
                    states_.push_back({tr("%1, as last saved").arg(name), *found, plan::shopOf(saved), nullptr, {}});
            } catch (const units::InputError&) {
                // A file that is gone or cannot be read has nothing to compare with.
            }
        }
    }
    for (int i = 0; i < math::countOf(boat.pieces); ++i) {
        if (i != index) states_.push_back({text(boat.pieces[i].name), boat.pieces[i], shop, nullptr, {}});
    }
}

QComboBox* CompareDialog::box(const char* object, const QString& name, int chosen) {
    auto* made = new QComboBox(this);
    made->setObjectName(QLatin1String(object));
    made->setAccessibleName(name);
    made->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    for (const State& state : states_) made->addItem(state.name);
    made->setCurrentIndex(std::min(chosen, made->count() - 1));
    made->setToolTip(made->currentText());
    connect(made, &QComboBox::currentIndexChanged, this, [this, made] {
        made->setToolTip(made->currentText());
        calculate();
    });
    return made;
}

void CompareDialog::layOut() {
    auto* grid = new QGridLayout;
    boxes_ = {box("compareFirst", tr("First"), 1), box("compareSecond", tr("Second"), 0)};
    for (int side = 0; side < 2; ++side) {
        auto* name = new QLabel(side == 0 ? tr("&First") : tr("&Second"), this);
        name->setBuddy(boxes_[side]);
        grid->addWidget(name, side, 0);
        grid->addWidget(boxes_[side], side, 1);
    }
    grid->setColumnStretch(1, 1);
    grid->setHorizontalSpacing(gridStep);

    table_ = new QTableWidget(0, columns, this);
    table_->setObjectName("compared");
    table_->setAccessibleName(tr("What is better or worse, question by question"));
    table_->setHorizontalHeaderLabels({tr("Question"), QString(), tr("First"), tr("Second"), tr("Judged")});
    for (const Column side : {first, second}) table_->horizontalHeaderItem(side)->setTextAlignment(Qt::AlignRight);
    table_->viewport()->setAutoFillBackground(false);
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table_->setSelectionMode(QAbstractItemView::NoSelection);
    table_->setShowGrid(false);
    table_->setFrameShape(QFrame::NoFrame);
    table_->setWordWrap(false);
    table_->setItemDelegate(new LinedCells(table_));
    table_->setIconSize({14, 14});
    table_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    table_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    table_->verticalHeader()->hide();
    table_->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft);
    table_->horizontalHeader()->setSectionsClickable(false);
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table_->horizontalHeader()->setSectionResizeMode(what, QHeaderView::Stretch);

    note_ = new Words(QStringLiteral("compareNote"), false, this);
    again_ = wordButton(QStringLiteral("compareAgain"), tr("Calculate"), this);
    again_->setAutoDefault(false);
    connect(again_, &QPushButton::clicked, this, &CompareDialog::calculate);

    auto* inside = new QWidget(this);
    auto* under = new QVBoxLayout(inside);
    under->setContentsMargins(0, 0, gridStep, 0);
    under->setSpacing(gridStep);
    under->addWidget(note_);
    under->addWidget(again_, 0, Qt::AlignLeft);
    under->addWidget(table_);
    const auto lines = [&](const char* object, const QString& name) {
        Lines made{new Heading(name, inside), new QWidget(inside)};
        made.lines->setObjectName(QLatin1String(object));
        auto* column = new QVBoxLayout(made.lines);
        column->setContentsMargins(0, 0, 0, 0);
        column->setSpacing(0);
        under->addWidget(made.heading);
        under->addWidget(made.lines);
        return made;
    };
    gone_ = lines("findingsGone", tr("Findings that went"));
    come_ = lines("findingsNew", tr("New findings"));
    under->addStretch();
    auto* scrolled = new QScrollArea(this);
    scrolled->setWidgetResizable(true);
    scrolled->setFrameShape(QFrame::NoFrame);
    scrolled->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scrolled->setWidget(inside);

    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(2 * gridStep, 2 * gridStep, 2 * gridStep, 2 * gridStep);
    all->setSpacing(2 * gridStep);
    all->addLayout(grid);
    all->addWidget(scrolled, 1);
    all->addWidget(buttons);
    resize(720, 640);
}

CompareDialog::State& CompareDialog::state(int side) {
    return states_[static_cast<std::size_t>(std::max(0, boxes_[side]->currentIndex()))];
}

bool CompareDialog::isWhole(const State& state) const {
    return !state.trouble.isEmpty() || (state.plan && plan::isStudied(*state.plan));
}

// Makes what plans are missing of both sides; the user may stop that, and what is there then stays.
void CompareDialog::calculate() {
    if (working_ || states_.empty()) return;
    working_ = true;
    QWidget* focused = focusWidget();
    for (QComboBox* each : boxes_) each->setEnabled(false);
    for (int side = 0; side < 2; ++side) {
        State& of = state(side);
        if (isWhole(of)) continue;
        try {
            std::shared_ptr<const plan::Plan> made;
            const bool done = runAtWork(this, tr("Planning %1").arg(of.name),
                                        [&](const AtWork& work) { made = planOf(of.piece, of.shop, work.stop); });
            if (made) of.plan = made;
            if (!done) break;
        } catch (const units::InputError& error) {
            of.trouble = why(error);
        } catch (const std::exception& error) {
            of.trouble = QString::fromUtf8(error.what());
        }
    }
    for (QComboBox* each : boxes_) each->setEnabled(true);
    if (focused) focused->setFocus();
    working_ = false;
    showStates();
}

// Closing it gives up what is being planned.
void CompareDialog::reject() {
    if (auto* work = findChild<QProgressDialog*>(QStringLiteral("atWork"))) work->cancel();
    QDialog::reject();
}

void CompareDialog::showStates() {
    QStringList notes;
    std::optional<plan::Comparison> comparison;
    if (!states_.empty()) {
        const State& one = state(0);
        const State& other = state(1);
        if (states_.size() == 1) notes << tr("Change the piece or add another: then there is something to compare.");
        for (const State* each : {&one, &other}) {
            if (!each->trouble.isEmpty()) notes << tr("%1 cannot be planned: %2.").arg(each->name, each->trouble);
        }
        if (one.plan && other.plan) comparison = plan::compare(*one.plan, *other.plan);
        if (comparison && !comparison->findingsCompared)
            notes << tr("Not calculated to the end: findings are not compared.");
        showIf(again_, !working_ && !(isWhole(one) && isWhole(other)));
    }
    note_->say(notes.join(QLatin1Char('\n')));
    showIf(table_, comparison.has_value());
    if (comparison) fillTable(*comparison);
    showFindings(comparison ? &*comparison : nullptr);
}

void CompareDialog::fillTable(const plan::Comparison& comparison) {
    table_->setRowCount(math::countOf(comparison.questions));
    for (int row = 0; row < table_->rowCount(); ++row) {
        const plan::QuestionCompared& of = comparison.questions[row];
        QStringList names;
        QStringList before;
        QStringList after;
        QStringList judgements;
        for (const plan::FigureCompared& figure : of.figures) {
            names << text(plan::writeWithin(figure.name, display_));
            before << figureText(figure.first, display_);
            after << figureText(figure.second, display_);
            const bool alike = figure.judged == plan::Judged::alike && of.judged != plan::Judged::alike;
            judgements << (alike ? QString() : judgedText(figure.judged));
        }
        const auto put = [&](Column column, const QString& words, Qt::Alignment alignment = Qt::AlignLeft) {
            auto* item = new QTableWidgetItem(words);
            item->setTextAlignment(alignment | Qt::AlignTop);
            table_->setItem(row, column, item);
            return item;
        };
        put(question, tr(plan::questionName(of.question)));
        put(what, names.join(QLatin1Char('\n')));
        put(first, before.join(QLatin1Char('\n')), Qt::AlignRight);
        put(second, after.join(QLatin1Char('\n')), Qt::AlignRight);
        QTableWidgetItem* said = put(judged, judgements.join(QLatin1Char('\n')));
        said->setIcon(judgedIcon(of.judged));
        said->setData(Qt::AccessibleTextRole, judgedText(of.judged));
        said->setToolTip(judgedText(of.judged));
    }
    table_->resizeRowsToContents();
    table_->setFixedHeight(table_->horizontalHeader()->sizeHint().height() + table_->verticalHeader()->length() + 2);
}

void CompareDialog::showFindings(const plan::Comparison* comparison) {
    const auto show = [&](const Lines& lines, const std::vector<plan::Finding>& findings) {
        qDeleteAll(lines.lines->findChildren<FindingLine*>(QString(), Qt::FindDirectChildrenOnly));
        for (const plan::Finding& finding : findings) {
            auto* line = new FindingLine(lines.lines->objectName() + QStringLiteral("Line"), lines.lines);
            const QString detail = text(plan::detailsOf(finding, display_));
            const auto say = [line, finding, detail, display = display_](bool open) {
                line->say(finding.severity, text(plan::textOf(finding, display)), {}, !detail.isEmpty(), open,
                          open ? detail : QString());
            };
            say(false);
            auto open = std::make_shared<bool>(false);
            connect(line, &FindingLine::openAsked, line, [say, open] { say(*open = !*open); });
            connect(line, &FindingLine::chosen, line, [say, open] { say(*open = !*open); });
            lines.lines->layout()->addWidget(line);
        }
        showIf(lines.heading, !findings.empty());
        showIf(lines.lines, !findings.empty());
    };
    show(gone_, comparison ? comparison->gone : std::vector<plan::Finding>());
    show(come_, comparison ? comparison->come : std::vector<plan::Finding>());
}

}  // namespace fayline::app

#include "moc_compare_dialog.cpp"
