// The papers of the present piece: what each is for, the size they are laid out for, and the ways to the printer, to a
// look before it and into PDF files. The window's own actions do all of it.
//
// Objects by name: "paperPanel"; "answer", "reason" (labels), "papers" (table), "previewPaper", "printPaper",
// "saveAllPapers" (buttons), "paperSize" (combo box).
#pragma once

#include <vector>

#include "app/panels/sectioned_panel.hpp"
#include "app/paper/papers.hpp"

class QComboBox;
class QPushButton;

namespace fayline::app {

class AnswerNote;

QString paperSizeName(QPageSize::PageSizeId size);  // "A4, 210 x 297 mm"

class PaperPanel : public SectionedPanel {
    Q_OBJECT
public:
    explicit PaperPanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* makeButtons();
    QWidget* makeSize();
    void ask(const QString& action);  // of the chosen paper

    AnswerNote* answer_;
    NotebookTable* table_ = nullptr;
    FiguresModel* model_ = nullptr;
    QPushButton* preview_ = nullptr;
    QPushButton* print_ = nullptr;
    QComboBox* size_ = nullptr;
    std::vector<Paper> papers_;
};

}  // namespace fayline::app
