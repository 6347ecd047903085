#include "app/window/paper_panel.hpp"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <algorithm>
#include <numeric>

#include "app/look/theme.hpp"
#include "app/panels/figures_model.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

namespace {

struct SizeChoice {
    QPageSize::PageSizeId size;
    const char* action;  // of the window
};

constexpr SizeChoice sizeChoices[] = {{QPageSize::A4, "paperA4"}, {QPageSize::Letter, "paperLetter"}};

// What a paper is for, in one line.
QString purpose(Paper paper) {
    switch (paper) {
        case Paper::stationTable:
            return QObject::tr("Each clamp's place, pull and strips");
        case Paper::storyStick:
            return QObject::tr("Scale 1 : 1, marks for strips and form");
        case Paper::line:
            return QObject::tr("Scale 1 : 1 on sheets to join, to check by");
        case Paper::form:
            return QObject::tr("Scale 1 : 1 on sheets to join, to saw the form by");
        case Paper::closing:
            return QObject::tr("Which clamp first, what happens then");
        case Paper::props:
            return QObject::tr("Lengths, loads, cautions");
        case Paper::batches:
            return QObject::tr("Resin, hardener, use by: a card for each batch");
        case Paper::run:
            return QObject::tr("Who does what when, on the wall");
        case Paper::cutList:
            return QObject::tr("To the saw: strips, boards, rips");
        case Paper::buying:
            return QObject::tr("To the timber yard: boards, sizes, price");
    }
    return {};
}

}  // namespace

QString paperSizeName(QPageSize::PageSizeId size) {
    return size == QPageSize::Letter ? QObject::tr("Letter, 8 1/2 x 11 in") : QObject::tr("A4, 210 x 297 mm");
}

PaperPanel::PaperPanel(QWidget* parent)
    : SectionedPanel(parent), answer_(new AnswerNote(plan::Question::paper, QStringLiteral("paper"), this)) {
    setObjectName(QStringLiteral("paperPanel"));
    setAccessibleName(tr("Paper"));
    const Figures papers = figuresTable("papers", tr("Papers of this piece"),
                                        {wordColumn(tr("Paper"), {}, tr("what it is for")),
                                         figureColumn(tr("Sheets"), "100", {}, tr("Of the paper size below"))});
    table_ = papers.table;
    model_ = papers.model;
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    connect(table_, &QAbstractItemView::activated, this, [this] { ask("preview"); });
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this](const QModelIndex& now) {
        for (QPushButton* button : {preview_, print_}) button->setEnabled(now.isValid());
    });
    QWidget* buttons = makeButtons();
    QWidget* size = makeSize();
    QPushButton* all = wordButton(QStringLiteral("saveAllPapers"), tr("Save all papers as PDF..."), this);
    all->setToolTip(tr("The papers of all pieces, a file each, into a folder"));
    connect(all, &QPushButton::clicked, this, [this] { emit actionAsked(QStringLiteral("savePapers")); });
    auto* part = new QWidget(this);  // at the left, as wide as its words
    auto* across = new QHBoxLayout(part);
    across->setContentsMargins(0, 0, 0, 0);
    across->addWidget(all);
    across->addStretch();
    layOut({answer_, table_, buttons, size, part});
}

QWidget* PaperPanel::makeButtons() {
    auto* part = new QWidget(this);
    auto* across = new QHBoxLayout(part);
    across->setContentsMargins(0, 0, 0, 0);
    across->setSpacing(gridStep);
    preview_ = wordButton(QStringLiteral("previewPaper"), tr("Preview..."), part);
    preview_->setToolTip(tr("Look at the chosen paper (Enter)"));
    print_ = wordButton(QStringLiteral("printPaper"), tr("Print..."), part);
    print_->setToolTip(tr("Print the chosen paper"));
    connect(preview_, &QPushButton::clicked, this, [this] { ask("preview"); });
    connect(print_, &QPushButton::clicked, this, [this] { ask("print"); });
    for (QPushButton* button : {preview_, print_}) {
        button->setEnabled(false);
        across->addWidget(button);
    }
    across->addStretch();
    return part;
}

QWidget* PaperPanel::makeSize() {
    auto* part = new QWidget(this);
    auto* across = new QHBoxLayout(part);
    across->setContentsMargins(0, 0, 0, 0);
    across->setSpacing(gridStep);
    size_ = new QComboBox(part);
    size_->setObjectName(QStringLiteral("paperSize"));
    size_->setAccessibleName(tr("Paper size"));
    size_->setToolTip(tr("For printing, preview and PDF; it is remembered"));
    size_->setFocusPolicy(Qt::StrongFocus);
    for (const SizeChoice& choice : sizeChoices) size_->addItem(paperSizeName(choice.size));
    auto* label = new QLabel(tr("Paper size"), part);
    label->setBuddy(size_);
    across->addWidget(label);
    across->addWidget(size_);
    inAll_ = new QLabel(part);
    inAll_->setObjectName(QStringLiteral("sheetsInAll"));
    across->addWidget(inAll_);
    across->addStretch();
    connect(size_, &QComboBox::activated, this,
            [this](int index) { emit actionAsked(QLatin1String(sizeChoices[index].action)); });
    return part;
}

void PaperPanel::ask(const QString& action) {
    const int row = table_->currentIndex().row();
    if (row >= 0 && row < math::countOf(papers_)) emit actionAsked(action + QString::number(int(papers_[row])));
}

void PaperPanel::show(const Shown& shown) {
    takeShown(shown);
    answer_->show(*shown_);
    papers_ = shown.pieceIndex < 0 ? std::vector<Paper>() : papersOf(shown.piece, !shown.boatBoards.empty());
    const bool counts = shown_->plan && !shown_->outOfDate && plan::isStudied(*shown_->plan);
    const std::shared_ptr<const plan::Plan> plan = counts ? shown_->plan : nullptr;
    if (counted_ != plan || countedFor_ != paperSize()) {
        counted_ = plan;
        countedFor_ = paperSize();
        sheets_.clear();
        if (plan) QMetaObject::invokeMethod(this, &PaperPanel::countNext, Qt::QueuedConnection);
    }
    showPapers();
    const auto chosen = std::ranges::find(sizeChoices, paperSize(), &SizeChoice::size);
    size_->setCurrentIndex(int(chosen - std::begin(sizeChoices)));
}

void PaperPanel::showPapers() {
    std::vector<FigureRow> rows;
    for (const Paper paper : papers_) {
        FigureCell name{paperName(paper)};
        name.under = purpose(paper);
        FigureCell sheets;
        if (rows.size() < sheets_.size()) sheets.text = QString::number(sheets_[rows.size()]);
        rows.push_back({{name, sheets}});
    }
    model_->show(std::move(rows));
    showIf(table_, !papers_.empty());
    if (!papers_.empty() && !table_->currentIndex().isValid()) table_->setCurrentIndex(model_->index(0, 0));
    const bool all = !papers_.empty() && sheets_.size() == papers_.size();
    inAll_->setText(all ? tr("%n sheets in all", nullptr, std::accumulate(sheets_.begin(), sheets_.end(), 0))
                        : QString());
}

// A paper is laid out to be counted: one at a time, so that the window waits for none but that.
void PaperPanel::countNext() {
    if (!counted_ || shown_->plan != counted_ || sheets_.size() >= papers_.size()) return;
    sheets_.push_back(
        sheetCount(papers_[sheets_.size()], shown_->piece, *counted_, shown_->species, defaultPageLayout()));
    if (sheets_.size() == papers_.size()) return showPapers();
    QMetaObject::invokeMethod(this, &PaperPanel::countNext, Qt::QueuedConnection);
}

}  // namespace fayline::app

#include "moc_paper_panel.cpp"
