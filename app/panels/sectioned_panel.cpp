#include "app/panels/sectioned_panel.hpp"

#include <QHBoxLayout>
#include <utility>

#include "app/look/theme.hpp"
#include "app/panels/figures_model.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/piece_table.hpp"
#include "app/panels/source_note.hpp"

namespace fayline::app {

Section* SectionedPanel::addSection(const char* object, const QString& name, bool open,
                                    const std::vector<QWidget*>& parts, Show show) {
    auto* section = new Section(QLatin1String(object), name, open, std::move(show), this);
    for (QWidget* part : parts) section->add(part);
    sections_.push_back(section);
    return section;
}

NotebookTable* SectionedPanel::figuresTable(const char* object, const QString& name, FiguresModel* model,
                                            const std::vector<Width>& widths, int stretched) {
    auto* table = new NotebookTable(this);
    table->setObjectName(QLatin1String(object));
    table->setAccessibleName(name);
    table->setModel(model);
    bool twoLines = false;
    std::vector<NotebookTable::ColumnWidth> columns;
    for (const Width& width : widths) {
        columns.push_back({width.column, width.widest});
        twoLines |= model->headerData(width.column, Qt::Horizontal, underRole).isValid();
    }
    table->setTwoLines(twoLines);
    table->setMostRows(14);
    table->setColumns(columns, stretched);
    connect(table, &NotebookTable::sourceAsked, this, [table](const QModelIndex& index) {
        const QPoint below = table->viewport()->mapToGlobal(table->visualRect(index).bottomLeft());
        openSourceNote(table, below, index.data(sourceRole).toString());
    });
    return table;
}

NotebookTable* SectionedPanel::typedTable(const char* object, const QString& name, PieceTable* model, Words* unread,
                                          const std::vector<Width>& widths, int stretched) {
    auto* table = new NotebookTable(this);
    table->setObjectName(QLatin1String(object));
    table->setAccessibleName(name);
    table->setModel(model);
    std::vector<NotebookTable::ColumnWidth> columns;
    for (const Width& width : widths) columns.push_back({width.column, width.widest});
    table->setColumns(columns, stretched);
    connect(model, &PieceTable::changeAsked, this, &Panel::changeAsked);
    connect(model, &PieceTable::unreadChanged, this, [model, unread] { unread->say(model->unread()); });
    return table;
}

QWidget* SectionedPanel::rowTools(NotebookTable* table, const char* addObject, const QString& addName,
                                  const char* removeObject, const QString& removeName, const std::function<void()>& add,
                                  const std::function<void()>& remove) {
    auto* tools = new QWidget(this);
    auto* side = new QHBoxLayout(tools);
    side->setContentsMargins(0, 0, 0, 0);
    side->setSpacing(gridStep / 4);
    QToolButton* more = iconButton(QLatin1String(addObject), QStringLiteral("add"), addName, tools);
    QToolButton* less = iconButton(QLatin1String(removeObject), QStringLiteral("remove"), removeName, tools);
    side->addWidget(more);
    side->addWidget(less);
    side->addStretch();
    connect(more, &QToolButton::clicked, this, add);
    connect(less, &QToolButton::clicked, this, remove);
    connect(table, &NotebookTable::insertAsked, this, add);
    connect(table, &NotebookTable::removeAsked, this, remove);
    return tools;
}

void SectionedPanel::takeShown(const Shown& shown) {
    if (!shown_ || !shown_->samePieceAs(shown) || shown.pieceIndex < 0) studied_.clear();
    shown_ = std::make_shared<const Shown>(shown);
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
    section->setNote(!any || !studyIsOld(study)     ? QString()
                     : refused                      ? tr("out of date")
                     : !shown_->failure.isEmpty()   ? tr("could not be worked out")
                                                    : tr("being worked out"));
}

}  // namespace fayline::app
