#include "app/panels/sectioned_panel.hpp"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/look/theme.hpp"
#include "app/panels/fields.hpp"
#include "app/panels/figures_model.hpp"
#include "app/panels/list_model.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/shed_line.hpp"
#include "app/panels/source_note.hpp"

namespace fayline::app {

SectionedPanel::SectionedPanel(QWidget* parent)
    : Panel(parent), calculate_(wordButton(QStringLiteral("calculate"), tr("Not calculated. Calculate"), this)) {
    calculate_->hide();
    connect(calculate_, &QPushButton::clicked, this, &Panel::calculateAsked);
}

Section* SectionedPanel::addSection(const char* object, const QString& name, bool open,
                                    const std::vector<QWidget*>& parts, Show show) {
    auto* section = new Section(QLatin1String(object), name, open, std::move(show), this);
    for (QWidget* part : parts) section->add(part);
    sections_.push_back(section);
    return section;
}

void SectionedPanel::layOut(const std::vector<QWidget*>& above) {
    QVBoxLayout* layout = panelLayout(this);
    for (QWidget* part : above) layout->addWidget(part);
    layout->addWidget(calculate_, 0, Qt::AlignLeft);
    for (Section* section : sections_) layout->addWidget(section);
    layout->addStretch();
    tabInReadingOrder(this);
}

Section* SectionedPanel::addSection(const char* object, const QString& name, bool open, Fields* fields) {
    return addSection(object, name, open, {fields}, [fields](const auto& shown) { fields->show(shown); });
}

Fields* SectionedPanel::newFields() {
    auto* fields = new Fields(this);
    connect(fields, &Fields::changeAsked, this, &Panel::changeAsked);
    return fields;
}

ShedLine* SectionedPanel::newShedLine(model::ShedPart part) {
    auto* line = new ShedLine(part, this);
    connect(line, &ShedLine::changeAsked, this, &Panel::changeAsked);
    connect(line, &ShedLine::keepAsked, this, &Panel::keepInShedAsked);
    return line;
}

SectionedPanel::Link SectionedPanel::newLink(const char* object, const QString& button, plan::Question to) {
    auto* part = new QWidget(this);
    auto* words = new QLabel(part);
    words->setObjectName(QLatin1String(object) + QStringLiteral("Words"));
    words->setTextFormat(Qt::PlainText);
    words->setWordWrap(true);
    QPushButton* go = wordButton(QLatin1String(object), button, part);
    connect(go, &QPushButton::clicked, this, [this, to] { emit panelAsked(to); });
    auto* side = new QHBoxLayout(part);
    side->setContentsMargins(0, 0, 0, 0);
    side->addWidget(words, 1);
    side->addWidget(go);
    return {part, words};
}

SectionedPanel::Figures SectionedPanel::figuresTable(const char* object, const QString& name,
                                                     std::vector<FigureColumn> columns, int stretched) {
    std::vector<NotebookTable::ColumnWidth> widths;
    for (const FigureColumn& column : columns) widths.push_back({math::countOf(widths), column.widest});
    const bool twoLines = std::ranges::any_of(columns, [](const FigureColumn& one) { return !one.under.isEmpty(); });
    auto* model = new FiguresModel(std::move(columns), this);
    auto* table = new NotebookTable(this);
    table->setObjectName(QLatin1String(object));
    table->setAccessibleName(name);
    table->setModel(model);
    table->setTwoLines(twoLines);
    table->setColumns(widths, stretched);
    tellSources(table);
    return {table, model};
}

void SectionedPanel::tellSources(NotebookTable* table) {
    connect(table, &NotebookTable::sourceAsked, this, [table](const QModelIndex& index) {
        const QPoint below = table->viewport()->mapToGlobal(table->visualRect(index).bottomLeft());
        openSourceNote(table, below, index.data(sourceRole).toString());
    });
}

NotebookTable* SectionedPanel::typedTable(const char* object, const QString& name, ListModel* model, Words* unread,
                                          const std::vector<int>& columns, int stretched) {
    auto* table = new NotebookTable(this);
    table->setObjectName(QLatin1String(object));
    table->setAccessibleName(name);
    table->setModel(model);
    table->setColumns(model->widths(columns), stretched);
    table->setGrows(NotebookTable::Grows::byTab);
    connect(model, &PieceTable::changeAsked, this, &Panel::changeAsked);
    connect(model, &PieceTable::unreadChanged, this, [model, unread] { unread->say(model->unread()); });
    return table;
}

QWidget* SectionedPanel::rowTools(NotebookTable* table, const RowTool& add, const RowTool& remove,
                                  const std::vector<RowTool>& more) {
    auto* tools = new QWidget(this);
    auto* side = new QHBoxLayout(tools);
    side->setContentsMargins(0, 0, 0, 0);
    side->setSpacing(gridStep / 4);
    const auto put = [&](const RowTool& tool, const char* icon) {
        QToolButton* button = iconButton(tool.object, icon, tool.name, tools);
        side->addWidget(button);
        connect(button, &QToolButton::clicked, this, tool.act);
    };
    put(add, "add");
    put(remove, "remove");
    for (const RowTool& tool : more) put(tool, tool.icon);
    side->addStretch();
    connect(table, &NotebookTable::insertAsked, this, add.act);
    connect(table, &NotebookTable::removeAsked, this, remove.act);
    typeOnInNewRow(table, add.act);
    return tools;
}

// A row that Tab asks for is typed in as soon as it is there.
void SectionedPanel::typeOnInNewRow(NotebookTable* table, const std::function<void()>& add) {
    auto* model = qobject_cast<PieceTable*>(table->model());
    const auto awaited = std::make_shared<bool>(false);
    connect(table, &NotebookTable::rowAsked, this, [model, awaited, add] {
        model->whenChanged([awaited, add] {
            *awaited = true;
            add();
        });
    });
    const auto type = [table, model, awaited](const QModelIndex&, int row) {
        if (!std::exchange(*awaited, false)) return;
        for (int visual = 0; visual < model->columnCount(); ++visual) {
            const QModelIndex cell = model->index(row, table->horizontalHeader()->logicalIndex(visual));
            if (table->isColumnHidden(cell.column()) || !(cell.flags() & Qt::ItemIsEditable)) continue;
            table->setCurrentIndex(cell);
            return table->edit(cell);
        }
    };
    connect(model, &PieceTable::rowsInserted, table, type, Qt::QueuedConnection);
}

void SectionedPanel::takeShown(const Shown& shown) {
    if (!shown_ || !shown_->samePieceAs(shown) || shown.pieceIndex < 0) studied_.clear();
    shown_ = std::make_shared<const Shown>(shown);
    showIf(calculate_, shown.stopped && shown.plan && !plan::isStudied(*shown.plan));
    if (shown_->pieceIndex < 0 || !shown_->plan) return;
    for (const plan::Study study : plan::allStudies) {
        if (plan::has(*shown_->plan, study)) studied_[study] = shown_->plan;
    }
}

const std::shared_ptr<const plan::Plan>& SectionedPanel::studiedPlan(plan::Study study) const {
    static const std::shared_ptr<const plan::Plan> none;
    const auto found = studied_.find(study);
    return found == studied_.end() ? none : found->second;
}

bool SectionedPanel::studyIsOld(plan::Study study) const {
    return shown_->outOfDate || !shown_->plan || !plan::has(*shown_->plan, study);
}

void SectionedPanel::noteStudy(Section* section, plan::Study study) const {
    const bool refused = shown_->outOfDate && !shown_->reason.isEmpty();
    const bool any = shown_->pieceIndex >= 0;
    section->setNote(!any || !studyIsOld(study)   ? QString()
                     : refused                    ? tr("old result")
                     : !shown_->failure.isEmpty() ? tr("could not be calculated")
                     : shown_->stopped            ? tr("not calculated")
                                                  : tr("calculating"));
}

QString SectionedPanel::awaited() const {
    return shown_->stopped ? tr("Not calculated") : tr("Calculating");
}

}  // namespace fayline::app
