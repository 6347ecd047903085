// A panel of sections that fold: what those with many parts have in common.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <vector>

#include "app/panels/panel.hpp"

namespace fayline::app {

class FiguresModel;
class NotebookTable;
class PieceTable;
class Section;
class Words;

class SectionedPanel : public Panel {
    Q_OBJECT
public:
    using Panel::Panel;

protected:
    using Show = std::function<void(const std::shared_ptr<const Shown>&)>;
    struct Width {
        int column;
        QString widest;
    };

    Section* addSection(const char* object, const QString& name, bool open, const std::vector<QWidget*>& parts,
                        Show show);
    NotebookTable* figuresTable(const char* object, const QString& name, FiguresModel* model,
                                const std::vector<Width>& widths, int stretched);
    NotebookTable* typedTable(const char* object, const QString& name, PieceTable* model, Words* unread,
                              const std::vector<Width>& widths, int stretched);
    // Buttons and keys that add and remove rows of `table`.
    QWidget* rowTools(NotebookTable* table, const char* addObject, const QString& addName, const char* removeObject,
                      const QString& removeName, const std::function<void()>& add, const std::function<void()>& remove);

    // What takes longer comes with later plans; until then the last plan of this piece that had it is shown, fainter.
    void takeShown(const Shown& shown);
    // That plan; null: none yet.
    const plan::Plan* studied(plan::Study study) const { return studiedPlan(study).get(); }
    const std::shared_ptr<const plan::Plan>& studiedPlan(plan::Study study) const;
    bool studyIsOld(plan::Study study) const;
    void noteStudy(Section* section, plan::Study study) const;

    std::shared_ptr<const Shown> shown_;
    std::vector<Section*> sections_;
    std::vector<NotebookTable*> along_;  // tables whose rows lie along the line

private:
    std::map<plan::Study, std::shared_ptr<const plan::Plan>> studied_;
};

}  // namespace fayline::app
