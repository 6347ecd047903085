// How the present piece is held: the answer in a sentence, plots of gap and pull along the piece, a table to edit, and
// what follows from it. Draws a plan and asks for changes; keeps nothing that the document holds.
#pragma once

#include <functional>
#include <memory>
#include <vector>

#include "app/panels/panel.hpp"
#include "app/panels/stations_model.hpp"

namespace fayline::app {

class AlongPlot;
class AnswerNote;
class BlocksModel;
class FiguresModel;
class NotebookTable;
class PostsModel;
class Section;
class StationFields;
class ToolsModel;
class Words;

class HoldingPanel : public Panel {
    Q_OBJECT
public:
    explicit HoldingPanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;
    void lightPlace(std::optional<double> at_m) override;
    void selectPlace(std::optional<double> at_m) override;

private:
    using Show = std::function<void(const std::shared_ptr<const Shown>&)>;
    struct Width {
        int column;
        QString widest;
    };
    // In the order in which they stand in the panel.
    void makeStations();
    void makeEvenly();
    void makeProposal();
    void makeClosing();
    void makeOverRun();
    void makeProps();
    void makeScrews();
    void makeStraps();
    void makeToolsAtHand();
    void makeSettings();
    void makeSupport();
    void makeHull();

    Section* addSection(const char* object, const QString& name, bool open, const std::vector<QWidget*>& parts,
                        Show show);
    NotebookTable* figuresTable(const char* object, const QString& name, FiguresModel* model,
                                const std::vector<Width>& widths, int stretched);
    NotebookTable* typedTable(const char* object, const QString& name, PieceTable* model, Words* unread,
                              const std::vector<Width>& widths, int stretched);
    // Buttons and keys that add and remove rows of `table`.
    QWidget* rowTools(NotebookTable* table, const char* addObject, const QString& addName, const char* removeObject,
                      const QString& removeName, const std::function<void()>& add, const std::function<void()>& remove);
    QWidget* toolFields();
    QWidget* settingsFields();
    QWidget* supportFields();
    QWidget* hullFields();

    void showPlots();
    void chooseStations();
    // What takes longer: of the piece as it stands, else of how it was a moment ago, else nothing.
    const plan::HoldingStudy* study() const;
    bool studyIsOld() const;
    void noteStudy(Section* section) const;
    double middle_m() const;  // the selected place, else the middle of the line

    std::shared_ptr<const Shown> shown_;
    std::shared_ptr<const plan::Plan> studied_;  // the last plan of this piece that has a study
    StationsModel* stations_;
    ToolsModel* tools_;
    PostsModel* posts_;
    BlocksModel* blocks_;
    AnswerNote* answer_;
    AlongPlot* gaps_;
    AlongPlot* pulls_;
    NotebookTable* table_;
    NotebookTable* toolsTable_ = nullptr;
    Words* unread_;
    StationFields* fields_;
    std::vector<Section*> sections_;
    Section* props_ = nullptr;  // there only when there is one
    Section* screws_ = nullptr;
    Section* straps_ = nullptr;
    std::vector<NotebookTable*> along_;  // tables whose rows lie along the line
    std::optional<double> selected_m_;
};

}  // namespace fayline::app
