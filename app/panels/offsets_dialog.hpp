// Offsets to take: what was pasted or opened, shown as it was read before anything changes.
//
// Objects by name: "offsetsDialog"; "asRead" (table), "use0", "use1" ... (combo boxes over its columns), "unit",
// "grid", "centreLine" (combo boxes), "otherHalf", "leaveOut" (boxes to tick), "replacePoints", "addPoints" (radio
// buttons), "notUnderstood", "unusualLength", "outcome" (labels), "take" (button)
#pragma once

#include <QDialog>
#include <vector>

#include "core/io/offsets_table.hpp"
#include "core/units/display.hpp"

class QBoxLayout;
class QCheckBox;
class QComboBox;
class QGridLayout;
class QLabel;
class QPushButton;
class QRadioButton;

namespace fayline::app {

class FiguresModel;
class NotebookTable;
class Words;

// The line that offsets are taken into.
struct TakenInto {
    std::vector<model::Point> points;
    units::Display display;
    bool adds = false;  // what is proposed; an untouched sample is replaced in any case
};

class OffsetsDialog : public QDialog {
    Q_OBJECT
public:
    // `from`: where they come from, for the title: "marram_stem.csv". `table` has rows.
    OffsetsDialog(const QString& from, io::OffsetsTable table, TakenInto into, QWidget* parent = nullptr);

    const std::vector<model::Point>& points() const { return points_; }  // all points that the line then has
    int taken() const { return taken_; }                                 // how many of them are new

private:
    QWidget* makeTable();
    void makeChoices(QBoxLayout* under);
    void use(int column, int chosen);
    void showUnits();  // what the numbers may be in, the likeliest chosen
    void read();
    void showRows(const std::vector<io::UnreadCell>& unread);
    void showUnread(const std::vector<io::UnreadCell>& unread);
    void tell();
    QString said(double length_m) const;

    io::OffsetsTable table_;
    TakenInto into_;
    std::vector<io::UnitReading> readings_;
    std::vector<model::Point> given_;   // as they were read
    std::vector<model::Point> points_;  // and as they are taken
    int taken_ = 0;

    FiguresModel* model_ = nullptr;
    NotebookTable* asRead_ = nullptr;
    std::vector<QComboBox*> uses_;
    QComboBox* unit_ = nullptr;
    QComboBox* grid_ = nullptr;
    QCheckBox* otherHalf_ = nullptr;
    QComboBox* centreLine_ = nullptr;
    QRadioButton* add_ = nullptr;
    QCheckBox* leaveOut_ = nullptr;
    Words* notUnderstood_ = nullptr;
    Words* unusualLength_ = nullptr;
    QLabel* outcome_ = nullptr;
    QPushButton* take_ = nullptr;
};

// Asks what of `text` to take and calls `take` with the dialog when it is; false, and nothing asked, where the text
// holds nothing. The dialog goes when it is closed. Throws InputError as io::readTable does.
template <class Take>
bool askOffsets(const QString& from, const QString& text, const TakenInto& into, QWidget* parent, Take take) {
    io::OffsetsTable table = io::readTable(text.toStdString());
    if (table.rows.empty()) return false;
    auto* dialog = new OffsetsDialog(from, std::move(table), into, parent);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    QObject::connect(dialog, &QDialog::accepted, parent, [dialog, take] { take(*dialog); });
    dialog->open();
    return true;
}

}  // namespace fayline::app
