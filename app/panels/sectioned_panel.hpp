// A panel of sections that fold: what those with many parts have in common.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <vector>

#include "app/panels/panel.hpp"

class QLabel;
class QPushButton;

namespace fayline::app {

class Fields;
class FiguresModel;
struct FigureColumn;
class ListModel;
class NotebookTable;
class Section;
class ShedLine;
class Words;

class SectionedPanel : public Panel {
    Q_OBJECT
public:
    explicit SectionedPanel(QWidget* parent);

protected:
    using Show = std::function<void(const std::shared_ptr<const Shown>&)>;
    struct Figures {
        NotebookTable* table;
        FiguresModel* model;
    };

    Section* addSection(const char* object, const QString& name, bool open, const std::vector<QWidget*>& parts,
                        Show show);
    void layOut(const std::vector<QWidget*>& above);  // these above the sections, when all are made
    // A section of nothing but fields.
    Section* addSection(const char* object, const QString& name, bool open, Fields* fields);
    Fields* newFields();  // whose changes are asked for
    ShedLine* newShedLine(model::ShedPart part);
    Figures figuresTable(const char* object, const QString& name, std::vector<FigureColumn> columns, int stretched = 0);
    // What stands in another panel, in `words`, with a button named `object` that goes there.
    struct Link {
        QWidget* part;
        QLabel* words;
    };
    Link newLink(const char* object, const QString& button, plan::Question to);
    void tellSources(NotebookTable* table);  // opens where a number comes from beside it
    NotebookTable* typedTable(const char* object, const QString& name, ListModel* model, Words* unread,
                              const std::vector<int>& columns, int stretched);
    // Buttons, and keys where a row is added or removed, for the rows of `table`.
    struct RowTool {
        const char* object;
        QString name;
        std::function<void()> act;
        const char* icon = nullptr;
    };
    QWidget* rowTools(NotebookTable* table, const RowTool& add, const RowTool& remove,
                      const std::vector<RowTool>& more = {});
    void typeOnInNewRow(NotebookTable* table, const std::function<void()>& add);

    // What takes longer comes with later plans; until then the last plan of this piece that had it is shown, fainter.
    void takeShown(const Shown& shown);
    // That plan; null: none yet.
    const plan::Plan* studied(plan::Study study) const { return studiedPlan(study).get(); }
    const std::shared_ptr<const plan::Plan>& studiedPlan(plan::Study study) const;
    bool studyIsOld(plan::Study study) const;
    void noteStudy(Section* section, plan::Study study) const;
    QString awaited() const;  // in the place of what a study says that is not there

    QPushButton* calculate_;  // begins what the user stopped
    std::shared_ptr<const Shown> shown_;
    std::vector<Section*> sections_;
    std::vector<NotebookTable*> along_;  // tables whose rows lie along the line

private:
    std::map<plan::Study, std::shared_ptr<const plan::Plan>> studied_;
};

}  // namespace fayline::app
