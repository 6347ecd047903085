#include "app/window/new_piece_dialog.hpp"

#include <QApplication>
#include <QCheckBox>
#include <QClipboard>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "app/look/text.hpp"
#include "app/look/theme.hpp"
#include "app/panels/offsets_dialog.hpp"
#include "app/panels/offsets_text.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "core/math/count.hpp"
#include "core/model/new_piece.hpp"
#include "core/model/offsets.hpp"
#include "core/units/input_error.hpp"
#include "core/units/overall.hpp"

namespace fayline::app {

namespace {

QFormLayout* pageForm(QWidget* page) {
    auto* form = new QFormLayout(page);
    form->setContentsMargins(0, 0, 0, 0);
    form->setHorizontalSpacing(gridStep);
    form->setVerticalSpacing(gridStep / 2);
    return form;
}

// What `read` gives; what is wrong is wrong with the field `object`.
template <class Read>
auto atField(const char* object, Read read) {
    try {
        return read();
    } catch (const units::InputError& error) {
        throw units::InputError(object, error.wrong(), error.accepted());
    }
}

// The same of an arc, whose errors name what they are about.
template <class Make>
model::Arc arcAtField(const char* chordObject, const char* otherObject, Make make) {
    try {
        return make();
    } catch (const units::InputError& error) {
        throw units::InputError(error.path() == "chord" ? chordObject : otherObject, error.wrong(), error.accepted());
    }
}

}  // namespace

NewPieceDialog::NewPieceDialog(const model::Boat& boat, const QString& name, bool boatToo, QWidget* parent)
    : QDialog(parent), boat_(boat) {
    setObjectName("newPieceDialog");
    setWindowTitle(boatToo ? tr("New boat") : tr("New piece"));
    auto* under = new QVBoxLayout(this);
    under->setContentsMargins(2 * gridStep, 2 * gridStep, 2 * gridStep, 2 * gridStep);
    under->setSpacing(gridStep);
    auto* top = new QWidget(this);
    QFormLayout* form = pageForm(top);
    const auto text = [&](const char* object, const QString& label, const QString& begins) {
        auto* edit = new QLineEdit(begins, top);
        edit->setObjectName(object);
        edit->selectAll();
        form->addRow(label, edit);
        return edit;
    };
    if (boatToo) boatName_ = text("boatName", tr("Name of the &boat"), {});
    name_ = text("pieceName", boatToo ? tr("&First piece") : tr("&Name"), name);
    kind_ = new QComboBox(top);
    kind_->setObjectName("pieceKind");
    kind_->addItems({tr("offsets, measured or lofted"), tr("beam with a round"), tr("arc of a circle")});
    if (!boat_.pieces.empty()) kind_->addItem(tr("copy of another piece"));
    form->addRow(tr("&Shape"), kind_);
    under->addWidget(top);
    pages_ = new QStackedWidget(this);
    for (QWidget* page : {makeOffsets(), makeBeam(), makeArc()}) pages_->addWidget(page);
    if (!boat_.pieces.empty()) pages_->addWidget(makeCopy());
    under->addWidget(pages_);
    comesOut_ = new QLabel(this);
    comesOut_->setObjectName("comesOut");
    comesOut_->setTextFormat(Qt::PlainText);
    comesOut_->setWordWrap(true);
    under->addWidget(comesOut_);
    under->addStretch();
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    add_ = buttons->addButton(boatToo ? tr("&Start") : tr("&Add"), QDialogButtonBox::AcceptRole);
    add_->setObjectName("addNew");
    add_->setDefault(true);
    under->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(kind_, &QComboBox::currentIndexChanged, pages_, &QStackedWidget::setCurrentIndex);
    connect(kind_, &QComboBox::currentIndexChanged, this, &NewPieceDialog::judge);
    connect(name_, &QLineEdit::textEdited, this, &NewPieceDialog::judge);
    // The fields of every page stand under each other.
    int widest = 0;
    for (const QFormLayout* each : findChildren<QFormLayout*>())
        for (int row = 0; row < each->rowCount(); ++row)
            if (const auto* label = each->itemAt(row, QFormLayout::LabelRole))
                widest = std::max(widest, label->sizeHint().width());
    for (const QFormLayout* each : findChildren<QFormLayout*>())
        for (int row = 0; row < each->rowCount(); ++row)
            if (const auto* label = each->itemAt(row, QFormLayout::LabelRole)) label->widget()->setMinimumWidth(widest);
    setMinimumWidth(420);
    judge();
}

QString NewPieceDialog::boatName() const {
    return boatName_ ? boatName_->text().trimmed() : QString();
}

NewPieceDialog::Kind NewPieceDialog::kind() const {
    return static_cast<Kind>(kind_->currentIndex());
}

QLineEdit* NewPieceDialog::field(QFormLayout* form, const char* object, const QString& name, const QString& hint,
                                 const QString& begins) {
    auto* edit = new QLineEdit(begins, form->parentWidget());
    edit->setObjectName(object);
    edit->setFont(tabularFont(edit->font()));
    edit->setAccessibleDescription(hint);
    edit->setToolTip(hint);
    form->addRow(name, edit);
    auto* reason = new Words(QLatin1String(object) + QStringLiteral("Reason"), true, form->parentWidget());
    reasons_[QLatin1String(object)] = reason;
    form->addRow(reason);
    connect(edit, &QLineEdit::textEdited, this, &NewPieceDialog::judge);
    return edit;
}

QWidget* NewPieceDialog::makeOffsets() {
    auto* page = new QWidget(this);
    auto* under = new QVBoxLayout(page);
    under->setContentsMargins(0, 0, 0, 0);
    auto* words = new Words("typedLater", false, page);
    words->say(tr("Type them into the table afterwards, or take them from a spreadsheet or file now."));
    under->addWidget(words);
    auto* across = new QHBoxLayout;
    across->setSpacing(gridStep);
    QPushButton* paste = wordButton("pasteNew", tr("&Paste"), page);
    QPushButton* open = wordButton("openNew", tr("&Open a file..."), page);
    for (QPushButton* button : {paste, open}) {
        button->setAutoDefault(false);
        across->addWidget(button);
    }
    across->addStretch();
    under->addLayout(across);
    unread_ = new Words("offsetsReason", true, page);
    under->addWidget(unread_);
    under->addStretch();
    connect(paste, &QPushButton::clicked, this,
            [this] { takeOffsets(tr("what was copied"), QApplication::clipboard()->text()); });
    connect(open, &QPushButton::clicked, this, &NewPieceDialog::openFile);
    return page;
}

void NewPieceDialog::openFile() {
    const QString fileName =
        QFileDialog::getOpenFileName(this, tr("Open offsets"), QSettings().value("folder").toString(), offsetsFilter());
    if (fileName.isEmpty()) return;
    try {
        takeOffsets(QFileInfo(fileName).fileName(), readOffsetsFile(fileName));
    } catch (const units::InputError& error) {
        unread_->say(why(error));
    }
}

bool NewPieceDialog::takeOffsets(const QString& from, const QString& written) {
    const TakenInto into{{}, boat_.display};
    QString nothing = tr("There is nothing to read in %1.").arg(from);
    try {
        const bool any = askOffsets(from, written, into, this, [this](const OffsetsDialog& dialog) {
            points_ = dialog.points();
            judge();
        });
        if (any) nothing.clear();
    } catch (const units::InputError& error) {
        nothing = why(error);
    }
    unread_->say(nothing);
    return nothing.isEmpty();
}

QWidget* NewPieceDialog::makeBeam() {
    auto* page = new QWidget(this);
    QFormLayout* form = pageForm(page);
    const bool metric = boat_.display.lengths == units::LengthNotation::millimetres;
    field(form, "beamLength", tr("&Length"), tr("Between its ends"), metric ? "2400 mm" : "8-0-0");
    field(form, "beamRound", tr("&Round-up"), tr("Of the upper face in the middle: a length, or percent of the length"),
          "4 %");
    return page;
}

QWidget* NewPieceDialog::makeArc() {
    auto* page = new QWidget(this);
    QFormLayout* form = pageForm(page);
    const bool metric = boat_.display.lengths == units::LengthNotation::millimetres;
    field(form, "arcChord", tr("&Chord"), tr("Straight between its ends"), metric ? "1200 mm" : "4-0-0");
    arcBy_ = new QComboBox(page);
    arcBy_->setObjectName("arcBy");
    arcBy_->addItems({tr("rise"), tr("radius")});
    form->addRow(tr("Gi&ven by"), arcBy_);
    QLineEdit* value =
        field(form, "arcValue", tr("&Rise"), tr("Of the middle over the chord"), metric ? "150 mm" : "0-6-0");
    connect(arcBy_, &QComboBox::activated, this, [this, form, value](int by) {
        // The same arc, told the other way.
        try {
            const double chord_m = length("arcChord");
            const double value_m = length("arcValue");
            const model::Arc now = by == 1 ? model::arcOfRise(chord_m, value_m) : model::arcOfRadius(chord_m, value_m);
            value->setText(text(units::writeLength(by == 1 ? now.radius_m() : now.rise_m, boat_.display)));
        } catch (const units::InputError&) {
            value->clear();
        }
        static_cast<QLabel*>(form->labelForField(value))->setText(by == 1 ? tr("&Radius") : tr("&Rise"));
        judge();
    });
    return page;
}

QWidget* NewPieceDialog::makeCopy() {
    auto* page = new QWidget(this);
    QFormLayout* form = pageForm(page);
    copied_ = new QComboBox(page);
    copied_->setObjectName("copied");
    for (const model::Piece& piece : boat_.pieces) copied_->addItem(text(piece.name));
    form->addRow(tr("&Of"), copied_);
    endForEnd_ = new QCheckBox(tr("Mirrored &end for end"), page);
    endForEnd_->setObjectName("endForEnd");
    upsideDown_ = new QCheckBox(tr("Mirrored &up and down"), page);
    upsideDown_->setObjectName("upsideDown");
    for (QCheckBox* box : {endForEnd_, upsideDown_}) {
        form->addRow(box);
        connect(box, &QCheckBox::toggled, this, &NewPieceDialog::judge);
    }
    field(form, "scale", tr("S&ize"), tr("Percent of the piece; strips keep their thickness"), "100 %");
    connect(copied_, &QComboBox::activated, this, &NewPieceDialog::judge);
    return page;
}

double NewPieceDialog::length(const char* object) const {
    const QString written = findChild<QLineEdit*>(object)->text();
    return atField(object, [&] { return readLengthText(written, boat_.display); });
}

QString NewPieceDialog::said(double length_m) const {
    return text(units::writeOverall(length_m, boat_.display.lengths));
}

// Makes the piece and gives what it is in words. Throws InputError with the object's name of a field as its path.
QString NewPieceDialog::make() {
    piece_ = model::newPiece(text(name_->text().trimmed()), boat_.display);
    switch (kind()) {
        case offsets: {
            if (points_.empty()) return tr("Three points to begin with.");
            piece_.line.points = points_;
            return tr("%1 points, %2 long.").arg(points_.size()).arg(said(model::lengthThrough(points_)));
        }
        case beam: {
            const double length_m = length("beamLength");
            const QString written = findChild<QLineEdit*>("beamRound")->text();
            const double round_m = written.contains('%')
                                       ? atField("beamRound", [&] { return readShare(written); }) * length_m
                                       : length("beamRound");
            const model::Arc round =
                arcAtField("beamLength", "beamRound", [&] { return model::arcOfRise(length_m, round_m); });
            piece_.line = model::beamLine(piece_.line, length_m, round_m);
            return tr("Rises %1 in the middle: an arc of radius %2, %3 long.")
                .arg(said(round_m), said(round.radius_m()), said(round.length_m()));
        }
        case arc: {
            const double chord_m = length("arcChord");
            const double value_m = length("arcValue");
            const model::Arc made = arcAtField("arcChord", "arcValue", [&] {
                return arcBy_->currentIndex() == 0 ? model::arcOfRise(chord_m, value_m)
                                                   : model::arcOfRadius(chord_m, value_m);
            });
            piece_.line.points = model::arcPoints(made);
            return (arcBy_->currentIndex() == 0 ? tr("Radius %1, %2 long.").arg(said(made.radius_m()))
                                                : tr("Rise %1, %2 long.").arg(said(made.rise_m)))
                .arg(said(made.length_m()));
        }
        case copy: {
            const QString written = findChild<QLineEdit*>("scale")->text();
            const double scale = atField("scale", [&] {
                const double share = readShare(written);
                if (!(share > 0)) throw units::InputError("", "nothing is left of the piece", "give a percent above 0");
                return share;
            });
            const std::string name = piece_.name;
            piece_ = model::copyOf(boat_.pieces[copied_->currentIndex()],
                                   {endForEnd_->isChecked(), upsideDown_->isChecked(), scale});
            piece_.name = name;
            return tr("%1 points, %2 long, with strips, holding and glue.")
                .arg(piece_.line.points.size())
                .arg(said(model::lengthThrough(piece_.line.points)));
        }
    }
    return {};
}

void NewPieceDialog::judge() {
    for (const auto& [object, reason] : reasons_) reason->say({});
    QString words;
    bool made = false;
    try {
        words = make();
        refuseImpossible({}, piece_);
        made = true;
    } catch (const units::InputError& error) {
        const auto reason = reasons_.find(text(error.path()));
        reason != reasons_.end() ? reason->second->say(why(error)) : void(words = why(error));
    }
    if (made && piece_.name.empty()) words = tr("A piece needs a name.");
    comesOut_->setText(words);
    add_->setEnabled(made && !piece_.name.empty());
    if (isVisible()) growToFit(this);
}

}  // namespace fayline::app
