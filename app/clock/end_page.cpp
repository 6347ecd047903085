#include "app/clock/end_page.hpp"

#include <QHeaderView>
#include <QLabel>
#include <QScrollArea>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/look/text.hpp"
#include "app/look/theme.hpp"
#include "core/math/count.hpp"
#include "core/units/day_text.hpp"

namespace fayline::app {

namespace {

QLabel* paragraph(const char* name) {
    auto* label = new QLabel;
    label->setObjectName(name);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    return label;
}

}  // namespace

EndPage::EndPage(QWidget* parent)
    : Page(parent),
      title_(new BigText(20, 48)),
      after_(paragraph("clockAfter")),
      table_(new QTableWidget),
      learned_(paragraph("clockLearned")) {
    setObjectName("clockEnd");
    title_->setBold(true);
    table_->setObjectName("clockCompared");
    table_->setAccessibleName(tr("Planned and real times of each kind of work"));
    table_->setColumnCount(4);
    table_->setHorizontalHeaderLabels({tr("Work"), tr("Times"), tr("Planned"), tr("Real")});
    table_->verticalHeader()->hide();
    table_->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
    table_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table_->setSelectionMode(QAbstractItemView::NoSelection);
    table_->setFocusPolicy(Qt::NoFocus);
    table_->setShowGrid(false);
    table_->setFrameShape(QFrame::NoFrame);
    table_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    table_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);

    auto* within = new QWidget;
    auto* words = new QVBoxLayout(within);
    words->setContentsMargins(0, 0, 0, 0);
    words->setSpacing(2 * gridStep);
    words->addWidget(after_);
    words->addWidget(table_);
    words->addWidget(learned_);
    words->addStretch(1);
    auto* scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidget(within);
    scroll->setFocusPolicy(Qt::StrongFocus);

    auto* keys = new KeyRow;
    rates_ = keys->add("clockTakeRates", tr("Use these times"), "R");
    connect(rates_, &QAbstractButton::clicked, this, &EndPage::takeRates);
    BigKey* close = keys->add("clockClose", tr("Back to the boat"), tr("Enter, Esc"));
    close->setMain(true);
    connect(close, &QAbstractButton::clicked, this, [this] { emit closeAsked(); });

    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(3 * gridStep, 2 * gridStep, 3 * gridStep, 2 * gridStep);
    column->setSpacing(gridStep);
    column->addWidget(title_, 1);
    column->addWidget(scroll, 8);
    column->addWidget(keys);
}

void EndPage::show(const RunningDay& day, const plan::RatesLearned& learned) {
    const QString piece = text(day.day().piece.name);
    title_->setText(day.day().dryFit ? tr("The dry fit of %1 is over").arg(piece)
                                     : tr("The glue-up of %1 is over").arg(piece));
    std::vector<std::string> after = plan::afterSaid(day.day(), day.now(), day.startAt_s());
    after.push_back(tr("The boat's record has it; undo takes it out again.").toStdString());
    after_->setText(joined(after));
    fill(plan::comparedOf(day.day(), day.now()));
    learned_->setText(learned.said.empty() ? tr("Your crew worked as fast as planned.")
                                           : tr("Measured times:\n%1").arg(joined(learned.said)));
    rates_->setEnabled(!learned.said.empty());
}

void EndPage::fill(const std::vector<plan::Compared>& rows) {
    table_->setRowCount(math::countOf(rows));
    for (int i = 0; i < math::countOf(rows); ++i) {
        const plan::Compared& row = rows[i];
        const QStringList cells{text(row.what), QString::number(row.count), text(units::writeDuration(row.planned_s)),
                                text(units::writeDuration(row.real_s))};
        for (int column = 0; column < cells.size(); ++column) {
            table_->setItem(i, column, new QTableWidgetItem(cells[column]));
        }
    }
    table_->setVisible(!rows.empty());
    QResizeEvent resized(size(), size());
    resizeEvent(&resized);
}

void EndPage::resizeEvent(QResizeEvent* event) {
    Page::resizeEvent(event);
    QFont large = font();
    large.setPixelSize(std::clamp(height() / 36, 15, 36));
    for (QWidget* one : {static_cast<QWidget*>(after_), static_cast<QWidget*>(learned_)}) one->setFont(large);
    table_->setFont(large);
    table_->horizontalHeader()->setFont(large);
    const int row = QFontMetrics(large).height() + gridStep;
    table_->verticalHeader()->setDefaultSectionSize(row);
    for (int i = 0; i < table_->rowCount(); ++i) table_->setRowHeight(i, row);
    for (int column = 1; column < 4; ++column) table_->setColumnWidth(column, 5 * large.pixelSize() + 2 * gridStep);
    table_->setFixedHeight(row * table_->rowCount() + row + gridStep);
}

void EndPage::takeRates() {
    rates_->setEnabled(false);
    emit ratesAsked();
    learned_->setText(learned_->text() + '\n' + tr("These times are in use; undo gives the old ones back."));
}

bool EndPage::press(const QKeyEvent& key) {
    switch (key.key()) {
        case Qt::Key_R:
            if (rates_->isEnabled()) takeRates();
            return true;
        case Qt::Key_Return:
        case Qt::Key_Enter:
        case Qt::Key_Escape:
            emit closeAsked();
            return true;
        default:
            return false;
    }
}

}  // namespace fayline::app

#include "moc_end_page.cpp"
