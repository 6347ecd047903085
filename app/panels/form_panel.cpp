#include "app/panels/form_panel.hpp"

#include <QDateTime>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/look/theme.hpp"
#include "app/panels/fields.hpp"
#include "app/panels/figures_model.hpp"
#include "app/panels/form_rows.hpp"
#include "app/panels/list_model.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "core/math/count.hpp"
#include "core/measure/input_error.hpp"
#include "core/measure/units.hpp"
#include "core/wood/air.hpp"

namespace fayline::app {

namespace {

// One reading of one glue-up.
struct ReadingPlace {
    std::size_t record = 0;
    std::size_t reading = 0;
};

std::optional<ReadingPlace> readingAt(const boat::Piece& piece, int row) {
    for (std::size_t i = 0; i < piece.record.size(); ++i) {
        const auto count = math::countOf(piece.record[i].letGo);
        if (row < count) return ReadingPlace{i, static_cast<std::size_t>(row)};
        row -= count;
    }
    return std::nullopt;
}

boat::LetGo& reading(boat::Piece& piece, int row) {
    const ReadingPlace place = readingAt(piece, row).value();
    return piece.record[place.record].letGo[place.reading];
}

const boat::LetGo& reading(const boat::Piece& piece, int row) {
    return reading(const_cast<boat::Piece&>(piece), row);  // only read
}

// "02 May": short, for a narrow column.
QString dayText(const std::string& when) {
    const QString written = text(when).left(10);
    const QDate day = QDate::fromString(written, Qt::ISODate);
    return day.isValid() ? QLocale::c().toString(day, QStringLiteral("dd MMM")) : written;
}

int readingsOf(const boat::Piece& piece) {
    int count = 0;
    for (const boat::Record& record : piece.record) count += math::countOf(record.letGo);
    return count;
}

}  // namespace

FormPanel::FormPanel(QWidget* parent)
    : SectionedPanel(parent),
      answer_(new AnswerNote(plan::Question::form, QStringLiteral("form"), this)),
      plot_(new AlongPlot(this)) {
    setObjectName(QStringLiteral("formPanel"));
    setAccessibleName(tr("Form"));
    plot_->setObjectName(QStringLiteral("plot"));
    plot_->setAccessibleName(tr("How far the form's edge lies from the wanted one, by length along the line"));

    makeOpenings();
    makeRule();
    makeInPlace();
    makeHome();
    makeFewer();
    makeFields();
    makePlaned();
    makeAir();
    makeMeasured();
    makeLearned();

    QVBoxLayout* layout = panelLayout(this);
    layout->addWidget(answer_);
    layout->addWidget(plot_);
    for (Section* section : sections_) layout->addWidget(section);
    layout->addStretch();
    tabInReadingOrder(this);
    connect(plot_, &AlongPlot::placeHovered, this, &Panel::placeHovered);
    connect(plot_, &AlongPlot::placeSelected, this, &Panel::placeSelected);
}

void FormPanel::makeInPlace() {
    auto* model = new FiguresModel(stressColumns(), this);
    NotebookTable* table = figuresTable("stressLeft", tr("What stays in the piece at its ends"), model,
                                        {{0, tr("start")},
                                         {1, QStringLiteral("123 lbf ft")},
                                         {2, QStringLiteral("0.00 MPa")},
                                         {3, QStringLiteral("12300 N")}},
                                        0);
    along_.push_back(table);
    inPlace_ = addSection(
        "stressHead", tr("What stays in it"), true, {table}, [model](const std::shared_ptr<const Shown>& shown) {
            if (!shown->plan || !shown->plan->form.stressLeft) return model->show({}, false);
            model->show(stressRows(*shown->plan->form.stressLeft, shown->plan->line.fair.line.length(), shown->display),
                        shown->outOfDate);
        });
}

void FormPanel::makeFields() {
    auto* fields = new Fields(this);
    fields->addTick(
        {QStringLiteral("letGo"), tr("The form lets the piece go"), QStringLiteral("form.let_go"),
         tr("Off: the piece stays on its form for good.")},
        [](const Shown& shown) { return shown.piece.form.letGo; },
        [](boat::Piece& piece, bool on, const Shown&) {
            piece.form.letGo = on;
            return on ? tr("Let the piece go") : tr("Keep the piece on its form");
        });
    fields->addTick(
        {QStringLiteral("allowsForSpringback"), tr("The form allows for springback"),
         QStringLiteral("form.allows_for_springback"),
         tr("Off: there is a form already, and it has the wanted line itself.")},
        [](const Shown& shown) { return shown.piece.form.allowsForSpringback; },
        [](boat::Piece& piece, bool on, const Shown&) {
            piece.form.allowsForSpringback = on;
            return on ? tr("Allow for springback") : tr("Do not allow for springback");
        });
    fields->addText(
        {QStringLiteral("springbackFactor"), tr("Springback, times the rule"), QStringLiteral("form.springback_factor"),
         tr("What your earlier pieces gave back, over what theory says. 1: theory as it is.")},
        [](const Shown& shown) { return text(measure::writeNumber(shown.piece.form.springbackFactor, 4)); },
        [](boat::Piece& piece, const QString& written, const Shown&) {
            piece.form.springbackFactor = readNumber(written);
            return tr("Take springback %1 times the rule").arg(written.trimmed());
        });
    fields->addText(
        {QStringLiteral("fixedAt"), tr("Form and line laid on each other at"), QStringLiteral("form.fixed_at_mm"),
         tr("There the form has place and direction of the wanted line. Empty: at the first pin, else where closing "
            "begins.")},
        [](const Shown& shown) {
            const std::optional<double>& at_m = shown.piece.form.fixedAt_m;
            return at_m ? writeLengthText(*at_m, shown.display) : QString();
        },
        [](boat::Piece& piece, const QString& written, const Shown& shown) {
            piece.form.fixedAt_m = readOptionalLength(written, shown.display);
            return tr("Lay form and line on each other");
        },
        tr("where closing begins"));
    connect(fields, &Fields::changeAsked, this, &Panel::changeAsked);
    addSection("formFieldsHead", tr("The form"), true, {fields},
               [fields](const std::shared_ptr<const Shown>& shown) { fields->show(shown); });
}

void FormPanel::makePlaned() {
    using Depth = double boat::Planed::*;
    const auto depth = [](Depth member) {
        return ListModel::Column{
            {},
            {},
            [member](const Shown& shown, int row) {
                return text(measure::writeThickness(shown.piece.stack.planedAfter[row].*member, shown.display));
            },
            [member](boat::Piece& piece, int row, const QString& written, const Shown& shown) {
                piece.stack.planedAfter[row].*member = readLengthText(written, shown.display);
            },
            false};
    };
    ListModel::Column at = depth(&boat::Planed::at_m);
    at.name = tr("Along the line");
    at.write = [](const Shown& shown, int row) {
        return writeLengthText(shown.piece.stack.planedAfter[row].at_m, shown.display);
    };
    ListModel::Column inside = depth(&boat::Planed::inside_m);
    inside.name = tr("Inside");
    inside.hint = tr("Taken off the face that lay on the form; even between two places, level beyond");
    ListModel::Column outside = depth(&boat::Planed::outside_m);
    outside.name = tr("Outside");
    outside.hint = tr("Taken off the outer face, sacrificial strips not counted");
    planed_ = new ListModel(
        {tr("planed place"), QStringLiteral("stack.planed_after"),
         [](const boat::Piece& piece) { return math::countOf(piece.stack.planedAfter); },
         [](const boat::Piece& a, int row, const boat::Piece& b, int other) {
             return a.stack.planedAfter[row] == b.stack.planedAfter[other];
         },
         [](const Shown& shown, int row) -> std::optional<double> { return shown.piece.stack.planedAfter[row].at_m; }},
        {at, inside, outside}, this);
    auto* unread = new Words(QStringLiteral("planedUnread"), true, this);
    NotebookTable* table = typedTable(
        "planed", tr("Planed after gluing"), planed_, unread,
        {{0, QStringLiteral("12-11-7+")}, {1, QStringLiteral("15/64 in")}, {2, QStringLiteral("15/64 in")}}, 0);
    along_.push_back(table);
    QWidget* buttons = rowTools(
        table, "addPlaned", tr("Add a planed place (Insert)"), "removePlaned", tr("Remove this place (Delete)"),
        [this] {
            planed_->change(tr("Plane after gluing"), [this](boat::Piece& piece) {
                double at_m = selected_m_.value_or(0);
                const auto taken = [&] {
                    return std::any_of(piece.stack.planedAfter.begin(), piece.stack.planedAfter.end(),
                                       [at_m](const boat::Planed& one) { return one.at_m == at_m; });
                };
                while (taken()) at_m += 0.1;
                boat::Planed one;
                one.at_m = at_m;
                one.outside_m = 0.001;
                piece.stack.planedAfter.push_back(one);
            });
        },
        [this, table] {
            const int row = table->currentIndex().row();
            if (row < 0) return;
            planed_->change(tr("Do not plane there"), [row](boat::Piece& piece) {
                piece.stack.planedAfter.erase(piece.stack.planedAfter.begin() + row);
            });
        });
    addSection("planedHead", tr("Planed after gluing"), false, {table, unread, buttons},
               [this](const std::shared_ptr<const Shown>& shown) { planed_->show(shown); });
}

void FormPanel::makeAir() {
    auto* part = new QWidget(this);
    auto* grid = new QGridLayout(part);
    grid->setContentsMargins(0, 0, 0, 0);
    const auto field = [&](const char* object, const QString& name, const QString& hint, int row) {
        auto* edit = new QLineEdit(part);
        edit->setObjectName(QLatin1String(object));
        edit->setAccessibleName(name);
        edit->setToolTip(hint);
        auto* label = new QLabel(name, part);
        label->setBuddy(edit);
        grid->addWidget(label, row, 0);
        grid->addWidget(edit, row, 1);
        connect(edit, &QLineEdit::textChanged, this, &FormPanel::showAir);
        return edit;
    };
    air_ = field("serviceAir", tr("Air where it will live"), tr("Mean temperature, in the units of the boat"), 0);
    humidity_ = field("serviceHumidity", tr("Its humidity, %"), tr("Relative humidity, 0 to 100"), 1);
    airWords_ = new SteadyWords(QStringLiteral("airWords"), this);
    QPushButton* use = wordButton(QStringLiteral("useAirMoisture"), tr("Take it as the service moisture"), this);
    connect(use, &QPushButton::clicked, this, [this] {
        if (!airMoisture_ || !shown_ || shown_->pieceIndex < 0) return;
        Change change{tr("Set the service moisture from the air"), {}, shown_->piece};
        change.after.stack.serviceMoisture = std::round(1000 * *airMoisture_) / 1000;
        emit changeAsked(change);
    });
    addSection("airHead", tr("Moisture from the air"), false, {part, airWords_, use},
               [this](const std::shared_ptr<const Shown>&) { showAir(); });
}

void FormPanel::showAir() {
    airMoisture_.reset();
    if (air_->text().trimmed().isEmpty() || humidity_->text().trimmed().isEmpty() || !shown_) {
        airWords_->say(tr("Give temperature and humidity for the moisture that wood comes to there."));
        return;
    }
    try {
        const double typed = readNumber(air_->text());
        const bool fahrenheit = shown_->display.temperatures == measure::TemperatureUnit::fahrenheit;
        const double air_C = fahrenheit ? measure::fromFahrenheit(typed) : typed;
        airMoisture_ = wood::equilibriumMoisture(air_C, readShare(humidity_->text()));
        airWords_->say(tr("Wood comes to %1 there, give or take one in a hundred (Wood Handbook eq. 4-5, P*).")
                           .arg(text(measure::writeShare(*airMoisture_, 3))));
    } catch (const measure::InputError& error) {
        airWords_->say(why(error));
    }
}

void FormPanel::makeMeasured() {
    using Length = double boat::LetGo::*;
    const auto length = [](const QString& name, const QString& hint, Length member) {
        return ListModel::Column{name, hint,
                                 [member](const Shown& shown, int row) {
                                     return writeLengthText(reading(shown.piece, row).*member, shown.display);
                                 },
                                 [member](boat::Piece& piece, int row, const QString& written, const Shown& shown) {
                                     reading(piece, row).*member = readLengthText(written, shown.display);
                                 },
                                 false};
    };
    const ListModel::Column glued{tr("Glued"), tr("Day of the glue-up"),
                                  [](const Shown& shown, int row) {
                                      const ReadingPlace place = readingAt(shown.piece, row).value();
                                      return dayText(shown.piece.record[place.record].when);
                                  },
                                  nullptr, true};
    const ListModel::Column after{tr("After, h"), tr("Hours since it was let go: 0 at once, then after some days"),
                                  [](const Shown& shown, int row) {
                                      return text(measure::writeNumber(reading(shown.piece, row).after_s / 3600));
                                  },
                                  [](boat::Piece& piece, int row, const QString& written, const Shown&) {
                                      reading(piece, row).after_s = 3600 * readNumber(written);
                                  },
                                  false};
    measured_ = new ListModel(
        {tr("reading"), QStringLiteral("record"), readingsOf,
         [](const boat::Piece& a, int row, const boat::Piece& b, int other) {
             return reading(a, row) == reading(b, other);
         },
         nullptr},
        {glued, after,
         length(tr("On form"), tr("The chord from end to end, straight, on the form"), &boat::LetGo::chordForm_m),
         length(tr("Chord"), tr("The same of the piece, let go"), &boat::LetGo::chordPiece_m),
         length(tr("Rise"), tr("Greatest height of the piece over that chord; 0: not measured"),
                &boat::LetGo::risePiece_m)},
        this);
    auto* unread = new Words(QStringLiteral("readingsUnread"), true, this);
    NotebookTable* table = typedTable("readings", tr("Measured when let go"), measured_, unread,
                                      {{0, QStringLiteral("02 May")},
                                       {1, QStringLiteral("2400")},
                                       {2, QStringLiteral("12-11-7+")},
                                       {3, QStringLiteral("12-11-7+")},
                                       {4, QStringLiteral("12-11-7+")}},
                                      0);
    QWidget* buttons = rowTools(
        table, "addReading", tr("Add a reading (Insert)"), "removeReading", tr("Remove this reading (Delete)"),
        [this] {
            measured_->change(tr("Add a reading"), [this](boat::Piece& piece) {
                if (piece.record.empty()) {
                    boat::Record record;
                    record.when = text(QDateTime::currentDateTime().toString(QStringLiteral("yyyy-MM-ddTHH:mm")));
                    piece.record.push_back(record);
                }
                boat::LetGo letGo;
                if (shown_->plan && !shown_->plan->form.parts.empty()) {
                    const stack::Opening& opens = shown_->plan->form.parts.front().opens;
                    letGo.chordForm_m = opens.chordFrom_m;
                    letGo.chordPiece_m = opens.chordTo_m;
                }
                boat::Record& record = piece.record.back();
                if (!record.on) record.on = stack::measuredOn(piece);
                record.letGo.push_back(letGo);
            });
        },
        [this, table] {
            const int row = table->currentIndex().row();
            if (row < 0) return;
            measured_->change(tr("Remove a reading"), [row](boat::Piece& piece) {
                const std::optional<ReadingPlace> place = readingAt(piece, row);
                if (!place) return;
                std::vector<boat::LetGo>& letGo = piece.record[place->record].letGo;
                letGo.erase(letGo.begin() + std::ptrdiff_t(place->reading));
            });
        });
    addSection("readingsHead", tr("Measured when let go"), false, {table, unread, buttons},
               [this](const std::shared_ptr<const Shown>& shown) { measured_->show(shown); });
}

void FormPanel::makeLearned() {
    auto* words = new SteadyWords(QStringLiteral("learnedWords"), this);
    auto* model = new FiguresModel(learnedColumns(), this);
    NotebookTable* table = figuresTable(
        "learned", tr("Springback of earlier pieces"), model,
        {{0, tr("Piece")}, {1, QStringLiteral("20 days")}, {2, tr("Gave back")}, {3, tr("Times the rule")}}, 0);
    QPushButton* use = wordButton(QStringLiteral("useFactor"), tr("Take their factor for this form"), this);
    connect(use, &QPushButton::clicked, this, &FormPanel::useFactor);
    Section* section = addSection("learnedHead", tr("What earlier pieces say"), false, {words, table, use}, nullptr);
    section->setShow([this, words, model, use, section](const std::shared_ptr<const Shown>& shown) {
        noteStudy(section, plan::Study::learned);
        const plan::Plan* known = studied(plan::Study::learned);
        const bool any = known && known->learned;
        words->say(!known ? tr("Being worked out.")
                   : any  ? text(known->learned->howFar)
                          : tr("No piece of this boat was measured when it was let go."));
        model->show(any ? learnedRows(*known->learned, shown->display) : std::vector<FigureRow>(),
                    studyIsOld(plan::Study::learned));
        use->setEnabled(any && known->learned->factor.has_value());
    });
}

void FormPanel::useFactor() {
    const plan::Plan* known = studied(plan::Study::learned);
    if (!known || !known->learned || !known->learned->factor || !shown_ || shown_->pieceIndex < 0) return;
    Change change{tr("Take the springback of earlier pieces"), {}, shown_->piece};
    change.after.form.springbackFactor = std::round(100 * *known->learned->factor) / 100;
    emit changeAsked(change);
}

void FormPanel::show(const Shown& shown) {
    takeShown(shown);
    answer_->show(*shown_);
    showPlot();
    const bool stays = shown_->pieceIndex >= 0 && shown_->plan && shown_->plan->form.stressLeft.has_value();
    if (inPlace_->isHidden() == stays) inPlace_->setVisible(stays);
    for (Section* section : sections_) section->show(shown_);
}

void FormPanel::showPlot() {
    std::optional<AlongPlot::Picture> picture = formPicture(shown_);
    if (plot_->isHidden() == picture.has_value()) plot_->setVisible(picture.has_value());
    if (picture) plot_->setPicture(std::move(*picture));
}

void FormPanel::lightPlace(std::optional<double> at_m) {
    plot_->lightPlace(at_m);
    for (NotebookTable* table : along_) table->lightPlace(at_m);
}

void FormPanel::selectPlace(std::optional<double> at_m) {
    selected_m_ = at_m;
    plot_->selectPlace(at_m);
}

}  // namespace fayline::app
