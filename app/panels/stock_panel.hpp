// The stock of the present piece: its answer, the boards on hand, each board drawn with its strips; sawing and scarfs,
// figures, what helps where boards do not suffice, what can be bought, what is cut already.
#pragma once

#include "app/panels/sectioned_panel.hpp"

class QComboBox;

namespace fayline::plan {
struct StockStudy;
struct BoardCuts;
}  // namespace fayline::plan

namespace fayline::app {

class AnswerNote;
class BoardsModel;
class StockPicture;
template <class Of>
class TypedFields;
class SteadyWords;

class StockPanel : public SectionedPanel {
    Q_OBJECT
public:
    explicit StockPanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;
    void selectStrip(int place) override;

private:
    void makeBoards();
    QWidget* makeStrip();
    void makeFigures();
    void makeCures();
    void makeSawing();
    void makeBuying();
    void makeCut();

    NotebookTable* boardsTable(const char* object, const QString& name, BoardsModel* model, Words* unread);
    TypedFields<model::Board> boardFields(Fields* fields, NotebookTable* table, bool toBuy);
    static void addWood(const TypedFields<model::Board>& typed, const QString& object);
    static void addPrice(const TypedFields<model::Board>& typed, const QString& object);
    const plan::StockStudy* study() const;  // null: not known yet, or no piece
    void showBoards();
    void showPicture();
    void showStrip();
    void choose(int place);
    void pin(int place, int board);  // of the study's boards; -1: any
    void change(const QString& name, const model::Piece& after);
    void leaveButton();
    bool isShared() const;  // the boards are the boat's
    void share(bool with);

    AnswerNote* answer_;
    BoardsModel* boards_;
    BoardsModel* buy_;
    NotebookTable* boardsTable_ = nullptr;
    Words* boardsUnread_ = nullptr;
    QWidget* boardTools_ = nullptr;
    Fields* boardFields_ = nullptr;
    Fields* priceFields_ = nullptr;
    Section* priceSection_ = nullptr;
    SteadyWords* told_ = nullptr;
    SteadyWords* sharedWords_ = nullptr;
    QPushButton* share_ = nullptr;
    StockPicture* picture_;
    SteadyWords* stripWords_ = nullptr;
    QComboBox* stripBoard_ = nullptr;
    QPushButton* lost_ = nullptr;
    QPushButton* uncut_ = nullptr;
    QPushButton* useSpare_ = nullptr;
    QPushButton* allCut_ = nullptr;
    Section* curesSection_ = nullptr;
    int chosen_ = 0;                            // place of a strip; 0: none
    std::vector<int> drawn_;                    // which of the study's boards the picture has
    std::shared_ptr<const Shown> boardsShown_;  // with the boat's boards in the place of the piece's where it has none
};

}  // namespace fayline::app
