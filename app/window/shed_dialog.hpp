// What is in the user's shed, part by part in plain words, where its file lies, and how a part comes in and goes out.
#pragma once

#include <QDialog>
#include <functional>

#include "core/model/shed.hpp"

class QLabel;
class QListWidget;
class QPushButton;

namespace fayline::app {

class Document;
class ShedStore;
class Words;

// Every change is made at once, in the file of the shed or as a step of the document, and can be undone there.
class ShedDialog : public QDialog {
    Q_OBJECT
public:
    ShedDialog(ShedStore& store, Document& document, QWidget* parent = nullptr);

private:
    void connectAll();
    void showParts();
    void showPart();
    model::ShedPart part() const;
    const model::Piece* piece() const;  // null: the boat has none
    void take();
    void use();
    void editGlues();
    void askAndImport();
    void askAndExport();
    void trying(const std::function<void()>& what);  // why it failed is told in the words below

    ShedStore& store_;
    Document& document_;
    QListWidget* list_;
    QLabel* words_;
    QPushButton* take_;
    QPushButton* use_;
    QPushButton* remove_;
    QPushButton* edit_;
    QPushButton* undo_;
    Words* trouble_;
};

}  // namespace fayline::app
