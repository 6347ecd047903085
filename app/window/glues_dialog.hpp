// The boat's own glues: what their data sheets say, with the pot lives that the model is fitted to.
#pragma once

#include <QDialog>
#include <array>
#include <functional>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "core/model/boat.hpp"
#include "core/units/display.hpp"

class QComboBox;
class QDialogButtonBox;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace fayline::app {

// A copy of a list of glues, to be changed. Texts that cannot be read are told beside their field and keep the dialog
// from being accepted; the glue keeps its last value meanwhile.
class GluesDialog : public QDialog {
    Q_OBJECT
public:
    // A glue that a piece of the boat is glued with is not removed.
    GluesDialog(const model::Boat& boat, QWidget* parent = nullptr);

    const std::vector<model::OwnAdhesive>& glues() const { return glues_; }

private:
    struct Field {
        QLineEdit* edit;
        QLabel* reason;
        std::function<QString(const model::OwnAdhesive&)> write;
        std::function<void(model::OwnAdhesive&, const QString&)> read;
        bool unread = false;
    };
    void makeFields(QWidget* into);
    void addField(QWidget* into, const char* object, const QString& name, const QString& hint,
                  std::function<QString(const model::OwnAdhesive&)> write,
                  std::function<void(model::OwnAdhesive&, const QString&)> read);
    template <class Write, class Read>
    void addQuantity(QWidget* into, const char* object, const QString& name, const QString& hint,
                     double model::OwnAdhesive::*member, Write write, Read read);
    void addParts(QWidget* into, const char* object, const QString& name, const QString& hint,
                  std::array<double, 2> model::OwnAdhesive::*member);
    void addPoint(QWidget* into, std::size_t point);

    void addGlue();
    void removeGlue();
    void showList();
    void showGlue();
    void readField(Field& field);
    void judge();
    model::OwnAdhesive* current();

    std::vector<model::OwnAdhesive> glues_;
    std::vector<std::pair<std::string, std::string>> inUse_;  // id of the glue, name of the piece
    units::Display display_;
    std::vector<std::unique_ptr<Field>> fields_;
    QListWidget* list_;
    QPushButton* remove_ = nullptr;
    QComboBox* kind_;
    QWidget* form_;
    QLabel* words_;
    QDialogButtonBox* buttons_;
};

}  // namespace fayline::app
