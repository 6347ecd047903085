// The papers of the present piece: what each is for, the size they are laid out for, and the ways to the printer, to a
// look before it and into PDF files. The window's own actions do all of it.
//
// Objects by name: "paperPanel"; "answer", "reason", "sheetsInAll" (labels), "papers" (table), "previewPaper",
// "printPaper", "saveAllPapers" (buttons), "paperSize" (combo box).
#pragma once

#include <memory>
#include <vector>

#include "app/panels/sectioned_panel.hpp"
#include "app/paper/papers.hpp"

class QComboBox;
class QLabel;
class QPushButton;

namespace fayline::app {

class AnswerNote;

QString paperSizeName(QPageSize::PageSizeId size);  // "A4, 210 x 297 mm"

class PaperPanel : public SectionedPanel {
    Q_OBJECT
public:
    explicit PaperPanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;

private:
    QWidget* makeButtons();
    QWidget* makeSize();
    void ask(const QString& action);  // of the chosen paper
    void showPapers();
    void countNext();

    AnswerNote* answer_;
    NotebookTable* table_ = nullptr;
    FiguresModel* model_ = nullptr;
    QPushButton* preview_ = nullptr;
    QPushButton* print_ = nullptr;
    QComboBox* size_ = nullptr;
    QLabel* inAll_ = nullptr;
    std::vector<Paper> papers_;
    // Of the plan with every study, for one size of paper: the sheets of as many papers as are counted yet.
    std::vector<int> sheets_;
    std::shared_ptr<const plan::Plan> counted_;
    QPageSize::PageSizeId countedFor_ = QPageSize::A4;
};

}  // namespace fayline::app
