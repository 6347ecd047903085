#include "app/window/trials_dialog.hpp"

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/look/theme.hpp"
#include "app/panels/figures_model.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/searched_choice.hpp"
#include "app/panels/ways.hpp"
#include "core/io/file.hpp"
#include "core/math/count.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/trials.hpp"
#include "core/units/force.hpp"
#include "core/units/input_error.hpp"
#include "core/units/units.hpp"

namespace fayline::app {

namespace {

QLabel* paragraph(const char* object, const QString& words, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setObjectName(object);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    return label;
}

QString thick(double length_m, const units::Display& units) {
    return text(units::writeThickness(length_m, units));
}

QString massText(double mass_kg, const units::Display& units) {
    constexpr int figures = 5;
    if (units.weights == units::WeightUnit::gram) return text(units::writeNumber(mass_kg, figures)) + " kg";
    return text(units::writeNumber(mass_kg / units::pound_kg, figures)) + " lb";
}

// What stands in the fields of a trial, in their order.
std::vector<QString> written(const model::Trial& trial, const units::Display& units) {
    return {text(trial.when),
            thick(trial.span_m, units),
            thick(trial.width_m, units),
            thick(trial.thickness_m, units),
            massText(trial.weight_kg, units),
            thick(trial.sag_m, units),
            thick(trial.readTo_m, units),
            writeShareText(trial.moisture)};
}

QString nameOf(const std::vector<wood::Species>& species, const std::string& id) {
    const wood::Species* wood = wood::findSpecies(species, id);
    return text(wood ? wood->name : id);
}

FigureCell cell(const QString& words) {
    FigureCell made;
    made.text = words;
    return made;
}

FigureRow rowOf(const model::Trial& trial, const std::vector<wood::Species>& species, const units::Display& display) {
    const plan::TrialReported reported = plan::tellTrial(trial, species, display);
    FigureRow row;
    const std::vector<QString> figures = written(trial, display);
    row.cells = {cell(figures[0].left(10)), cell(nameOf(species, trial.species)),
                 cell(figures[1]),          cell(figures[2]),
                 cell(figures[3]),          cell(figures[4]),
                 cell(figures[5]),          cell(figures[7])};
    if (!reported.result) {
        FigureCell none = cell(QObject::tr("says nothing"));
        none.severity = int(plan::Severity::caution);
        row.cells.push_back(none);
        row.cells.push_back({});
        row.cells.push_back({});
        return row;
    }
    const wood::TrialResult& result = *reported.result;
    row.cells.push_back(
        cell(trial.broke ? QObject::tr("broke") : text(units::writeStress(result.modulus_Pa, display))));
    row.cells.push_back(cell(trial.broke ? QString() : text(units::writeStress(result.modulusError_Pa, display))));
    row.cells.push_back(cell(text(units::writeShare(result.strain))));
    return row;
}

}  // namespace

TrialsDialog::TrialsDialog(Document& document, QWidget* parent) : QDialog(parent), document_(document) {
    setObjectName("trialsDialog");
    setWindowTitle(tr("Measure your own wood"));
    auto* under = new QVBoxLayout(this);
    under->setContentsMargins(3 * gridStep, 2 * gridStep, 3 * gridStep, 2 * gridStep);
    under->setSpacing(gridStep);
    under->addWidget(paragraph("trialMethod", text(plan::trialMethodText()), this));
    under->addWidget(paragraph("trialCaution", text(plan::trialCautionText()), this));
    makeTable();
    under->addWidget(table_);
    together_ = new Words("woodsTogether", false, this);
    under->addWidget(together_);
    under->addWidget(makeForm());
    under->addStretch(1);
    under->addWidget(makeButtons());

    for (const bool back : {true, false}) {
        QAction* action = back ? document_.undoStack().createUndoAction(this, tr("&Undo"))
                               : document_.undoStack().createRedoAction(this, tr("&Redo"));
        action->setShortcut(back ? QKeySequence::Undo : QKeySequence::Redo);
        addAction(action);
    }
    connect(&document_, &Document::boatChanged, this, &TrialsDialog::showBoat);
    connect(&document_, &Document::pieceChanged, this, &TrialsDialog::showBoat);
    resize(1040, 680);
    showBoat();
    showForm();
}

void TrialsDialog::makeTable() {
    model_ = new FiguresModel({{tr("Date"), {}, {}, true},
                               {tr("Wood"), {}, {}, true},
                               {tr("Span")},
                               {tr("Width")},
                               {tr("Thickness")},
                               {tr("Weight")},
                               {tr("Sag")},
                               {tr("Moisture")},
                               {tr("Modulus")},
                               {tr("range"), {}, tr("One standard deviation, from reading")},
                               {tr("Strain"), {}, tr("At the surface in the middle, under the weight")}},
                              this);
    table_ = new NotebookTable(this);
    table_->setObjectName("trials");
    table_->setAccessibleName(tr("Trials of your own wood"));
    table_->setModel(model_);
    table_->setMostRows(6);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setColumns({{0, "2026-05-02"},
                        {1, "Douglas-fir, coast"},
                        {2, "1000.00 mm"},
                        {3, "100.00 mm"},
                        {4, "100.00 mm"},
                        {5, "10.00 kg"},
                        {6, "100.00 mm"},
                        {7, "12.5 %"},
                        {8, "says nothing  "},
                        {9, "1450000 psi"},
                        {10, "0.55 %"}},
                       1);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this](const QModelIndex& now) {
        if (!showing_) choose(now.row());
    });
    connect(table_, &NotebookTable::removeAsked, this, &TrialsDialog::remove);
}

QLineEdit* TrialsDialog::field(QGridLayout* grid, int row, int column, const char* object, const QString& name,
                               const QString& hint) {
    auto* edit = new QLineEdit(this);
    edit->setObjectName(object);
    edit->setAccessibleName(name);
    edit->setAccessibleDescription(hint);
    edit->setToolTip(hint);
    auto* label = new QLabel(name, this);
    label->setBuddy(edit);
    grid->addWidget(label, row, column);
    grid->addWidget(edit, row, column + 1);
    connect(edit, &QLineEdit::textEdited, this, &TrialsDialog::tell);
    return edit;
}

QWidget* TrialsDialog::makeForm() {
    auto* form = new QWidget(this);
    auto* under = new QVBoxLayout(form);
    under->setContentsMargins(0, gridStep, 0, 0);
    under->setSpacing(gridStep);
    heading_ = new Heading(tr("A new trial"), form);
    under->addWidget(heading_);
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(gridStep);
    grid->setVerticalSpacing(gridStep / 2);
    wood_ = new SearchedChoice(form);
    wood_->setObjectName("trialWood");
    wood_->setAccessibleName(tr("Wood"));
    auto* woodLabel = new QLabel(tr("Wood"), form);
    woodLabel->setBuddy(wood_);
    grid->addWidget(woodLabel, 0, 0);
    grid->addWidget(wood_, 0, 1);
    connect(wood_, &QComboBox::activated, this, &TrialsDialog::tell);
    texts_[span] = field(grid, 1, 0, "trialSpan", tr("Span"), tr("Between the two supports"));
    texts_[width] = field(grid, 2, 0, "trialWidth", tr("Width"), tr("Of the strip, as it lies"));
    texts_[thickness] = field(grid, 3, 0, "trialThickness", tr("Thickness"),
                              tr("It counts three times: measure it with a caliper, at several places"));
    texts_[weight] = field(grid, 0, 2, "trialWeight", tr("Weight"), tr("Set on the middle: 2.5 kg, 5 lb"));
    texts_[sag] = field(grid, 1, 2, "trialSag", tr("Sag"), tr("By which the weight alone lowered the middle"));
    texts_[readTo] = field(grid, 2, 2, "trialReadTo", tr("Read to"), tr("How finely the sag was read"));
    texts_[moisture] = field(grid, 3, 2, "trialMoisture", tr("Moisture"), tr("Of the strip when it was tried"));
    texts_[when] = field(grid, 0, 4, "trialWhen", tr("Date"), tr("Such as 2026-05-02; may be left empty"));
    broke_ = new QCheckBox(tr("It broke under this weight"), form);
    broke_->setObjectName("trialBroke");
    broke_->setAccessibleName(broke_->text());
    connect(broke_, &QCheckBox::clicked, this, &TrialsDialog::tell);
    grid->addWidget(broke_, 1, 4, 1, 2);
    notes_ = field(grid, 2, 4, "trialNotes", tr("Notes"), tr("Which board, which way the rings lie"));
    for (const int column : {1, 3, 5}) grid->setColumnStretch(column, 1);
    under->addLayout(grid);
    says_ = paragraph("trialSays", {}, form);
    under->addWidget(says_);
    wrong_ = new Words("trialWrong", true, form);
    under->addWidget(wrong_);
    return form;
}

QWidget* TrialsDialog::makeButtons() {
    auto* row = new QWidget(this);
    auto* across = new QHBoxLayout(row);
    across->setContentsMargins(0, 0, 0, 0);
    across->setSpacing(gridStep);
    const auto button = [&](const char* object, const QString& words, void (TrialsDialog::*run)()) {
        QPushButton* made = wordButton(object, words, row);
        connect(made, &QPushButton::clicked, this, run);
        across->addWidget(made);
        return made;
    };
    keep_ = button("keepTrial", tr("Keep this trial"), &TrialsDialog::keep);
    new_ = wordButton("newTrial", tr("New trial"), row);
    connect(new_, &QPushButton::clicked, this, [this] { choose(-1); });
    across->addWidget(new_);
    remove_ = button("removeTrial", tr("Remove"), &TrialsDialog::remove);
    across->addSpacing(2 * gridStep);
    giveModulus_ = wordButton("giveModulus", tr("Give the modulus to the strips"), row);
    connect(giveModulus_, &QPushButton::clicked, this, [this] { give(false); });
    giveBreaking_ = wordButton("giveBreaking", tr("Give the breaking strain to the strips"), row);
    connect(giveBreaking_, &QPushButton::clicked, this, [this] { give(true); });
    across->addWidget(giveModulus_);
    across->addWidget(giveBreaking_);
    across->addStretch(1);
    auto* close = new QDialogButtonBox(QDialogButtonBox::Close, row);
    connect(close, &QDialogButtonBox::rejected, this, &QDialog::reject);
    for (QAbstractButton* each : close->buttons()) static_cast<QPushButton*>(each)->setAutoDefault(false);
    across->addWidget(close);
    return row;
}

const model::Piece* TrialsDialog::piece() const {
    const int index = document_.currentPiece();
    return index < 0 ? nullptr : &document_.boat().pieces[index];
}

void TrialsDialog::showBoat() {
    const model::Boat& boat = document_.boat();
    const plan::Shop shop = plan::shopOf(boat);
    species_ = shop.species;
    measured_ = shop.measured;
    showing_ = true;
    std::vector<FigureRow> rows;
    for (const model::Trial& trial : boat.trials) rows.push_back(rowOf(trial, species_, boat.display));
    model_->show(std::move(rows));
    QStringList woods;
    for (const wood::WoodMeasured& wood : measured_) woods << text(plan::measuredText(wood, species_, boat.display));
    together_->say(woods.join('\n'));

    const QString before = wood_->currentData().toString();
    wood_->setGroups(woodGroups(species_));
    for (const wood::Species& species : species_) {
        const int at = wood_->findText(text(species.name));
        if (!wood_->itemData(at).isValid()) wood_->setItemData(at, text(species.id));
    }
    chooseWood(before);
    showing_ = false;
    // The trial that is shown may have been undone; what is typed of a new one stays.
    if (chosen_ >= math::countOf(boat.trials)) return choose(-1);
    if (chosen_ >= 0 && base() != filledWith_) return showForm();
    tell();
}

void TrialsDialog::chooseWood(const QString& id) {
    if (!id.isEmpty() && wood_->findData(id) < 0) wood_->addItem(id, id);
    wood_->setCurrentIndex(std::max(1, int(wood_->findData(id))));  // 0 is the name of a group
}

model::Trial TrialsDialog::base() const {
    const std::vector<model::Trial>& trials = document_.boat().trials;
    if (chosen_ >= 0 && chosen_ < math::countOf(trials)) return trials[chosen_];
    model::Trial fresh;
    if (piece() && !piece()->stack.strips.empty()) fresh.species = piece()->stack.strips.front().species;
    return fresh;
}

void TrialsDialog::choose(int row) {
    chosen_ = row;
    if (row < 0) {
        showing_ = true;
        table_->clearSelection();
        table_->setCurrentIndex({});
        showing_ = false;
    }
    showForm();
    if (row < 0 && isVisible()) texts_[span]->setFocus();
}

void TrialsDialog::showForm() {
    const model::Trial trial = base();
    const std::vector<QString> figures = written(trial, document_.boat().display);
    for (int i = 0; i < fields; ++i) {
        // Nothing that was not measured stands in a new trial but what is so nearly always.
        const bool begins = chosen_ >= 0 || i == readTo || i == moisture;
        texts_[i]->setText(begins ? figures[i] : QString());
    }
    filledWith_ = trial;
    chooseWood(text(trial.species));
    broke_->setChecked(trial.broke);
    notes_->setText(text(trial.notes));
    heading_->setText(chosen_ < 0 ? tr("A new trial") : tr("Trial %1").arg(chosen_ + 1));
    keep_->setText(chosen_ < 0 ? tr("Keep this trial") : tr("Change this trial"));
    keep_->setAccessibleName(keep_->text());
    tell();
}

bool TrialsDialog::anyEmpty() const {
    for (const Which each : {span, width, thickness, weight, sag}) {
        if (texts_[each]->text().trimmed().isEmpty()) return true;
    }
    return false;
}

std::string TrialsDialog::woodOfForm() const {
    return text(wood_->currentData().toString());
}

model::Trial TrialsDialog::typed() const {
    const units::Display& units = document_.boat().display;
    model::Trial trial = base();
    const std::vector<QString> before = written(trial, units);
    const auto read = [&](Which which, const char* key, auto put) {
        const QString words = texts_[which]->text().trimmed();
        // What was not touched keeps every figure that it was given with.
        if (chosen_ >= 0 && words == before[which]) return;
        try {
            put(words);
        } catch (const units::InputError& error) {
            throw units::InputError(key, error.wrong(), error.accepted());
        }
    };
    const auto length = [&](double& length_m) {
        return [&length_m, &units](const QString& words) { length_m = readLengthText(words, units); };
    };
    read(span, "span_mm", length(trial.span_m));
    read(width, "width_mm", length(trial.width_m));
    read(thickness, "thickness_mm", length(trial.thickness_m));
    read(weight, "weight_kg", [&](const QString& words) { trial.weight_kg = units::readMass(text(words), units); });
    read(sag, "sag_mm", length(trial.sag_m));
    read(readTo, "read_to_mm", length(trial.readTo_m));
    read(moisture, "moisture_pct", [&](const QString& words) { trial.moisture = readShare(words); });
    trial.when = text(texts_[when]->text().trimmed());
    trial.species = woodOfForm();
    trial.broke = broke_->isChecked();
    trial.notes = text(notes_->text().trimmed());
    return trial;
}

void TrialsDialog::tell() {
    if (showing_) return;
    QString says;
    QString wrong;
    bool good = false;
    if (anyEmpty()) {
        says = tr("Give span, width, thickness, weight and sag to see the result here.");
    } else {
        try {
            const model::Trial trial = typed();
            // What a file could not hold is refused here, in the words of the file's reader.
            model::Boat with;
            with.trials.push_back(trial);
            const plan::TrialReported reported = plan::tellTrial(trial, species_, document_.boat().display);
            good = reported.result.has_value();
            (good ? says : wrong) = text(reported.sentence);
            if (good) io::readBoat(io::writeBoat(with));
        } catch (const units::InputError& error) {
            good = false;
            says.clear();
            wrong = why(error);
        }
    }
    says_->setText(says);
    says_->setVisible(!says.isEmpty());
    wrong_->say(wrong);
    keep_->setEnabled(good);
    remove_->setEnabled(chosen_ >= 0);
    new_->setEnabled(chosen_ >= 0 || !anyEmpty());
    const wood::WoodMeasured* measured = measuredOfForm();
    const bool used = piece() && std::ranges::any_of(piece()->stack.strips, [this](const model::Strips& strips) {
                          return strips.species == woodOfForm();
                      });
    giveModulus_->setEnabled(used && measured && measured->modulus_Pa);
    giveBreaking_->setEnabled(used && measured && measured->breakingStrain);
    const QString whose = piece() ? text(piece()->name) : QString();
    const QString hint = used ? tr("To the strips of this wood in %1").arg(whose)
                              : tr("The piece that is shown has no strips of this wood");
    giveModulus_->setToolTip(hint);
    giveBreaking_->setToolTip(hint);
}

const wood::WoodMeasured* TrialsDialog::measuredOfForm() const {
    const auto found =
        std::ranges::find_if(measured_, [this](const wood::WoodMeasured& m) { return m.species == woodOfForm(); });
    return found == measured_.end() ? nullptr : &*found;
}

void TrialsDialog::keep() {
    model::Boat after = document_.boat();
    const model::Trial trial = typed();
    const bool fresh = chosen_ < 0;
    if (fresh) {
        after.trials.push_back(trial);
    } else {
        after.trials[chosen_] = trial;
    }
    document_.changeBoat(
        fresh ? tr("Keep a trial of %1").arg(nameOf(species_, trial.species)) : tr("Change trial %1").arg(chosen_ + 1),
        {}, after);
    choose(fresh ? -1 : chosen_);
}

void TrialsDialog::remove() {
    if (chosen_ < 0) return;
    model::Boat after = document_.boat();
    after.trials.erase(after.trials.begin() + chosen_);
    const QString name = tr("Remove trial %1").arg(chosen_ + 1);
    choose(-1);
    document_.changeBoat(name, {}, after);
}

void TrialsDialog::give(bool breaking) {
    const wood::WoodMeasured* measured = measuredOfForm();
    if (!measured || !piece()) return;
    Change change;
    change.name = breaking ? tr("Give the measured breaking strain to the strips")
                           : tr("Give the measured modulus to the strips");
    change.after = *piece();
    model::Stack& stack = change.after.stack;
    stack = breaking ? plan::withMeasuredBreaking(stack, *measured, species_)
                     : plan::withMeasuredModulus(stack, *measured, species_);
    document_.changePiece(document_.currentPiece(), change);
}

}  // namespace fayline::app
