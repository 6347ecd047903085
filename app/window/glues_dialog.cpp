#include "app/window/glues_dialog.hpp"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>

#include "app/look/theme.hpp"
#include "app/panels/panel_scroll.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/units/day_reading.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

namespace {

constexpr std::size_t mostPoints = 3;  // that are typed here

// The pot lives of a glue, of which the first has keys of its own in the file.
std::vector<model::PotLife> pointsOf(const model::OwnAdhesive& own) {
    std::vector<model::PotLife> points{{own.potLife_s, own.potLifeAt_C, own.potLifeMass_kg, {}}};
    points.insert(points.end(), own.morePotLives.begin(), own.morePotLives.end());
    return points;
}

void putPoints(model::OwnAdhesive& own, const std::vector<model::PotLife>& points) {
    own.potLife_s = points.front().lasts_s;
    own.potLifeAt_C = points.front().at_C;
    own.potLifeMass_kg = points.front().mass_kg;
    own.morePotLives.assign(points.begin() + 1, points.end());
}

// An id that no glue has, from the name.
std::string freshId(const QString& name, const std::vector<model::OwnAdhesive>& glues) {
    QString id;
    for (const QChar letter : name.toLower())
        id += letter.isLetterOrNumber() && letter.unicode() < 128 ? letter : QChar(u'_');
    const auto taken = [&](const std::string& wanted) {
        return glue::findAdhesive(glue::builtInAdhesives(), wanted) ||
               std::any_of(glues.begin(), glues.end(), [&](const auto& one) { return one.id == wanted; });
    };
    std::string fresh = id.toStdString();
    for (int number = 2; taken(fresh); ++number) fresh = id.toStdString() + "_" + std::to_string(number);
    return fresh;
}

double positive(double value, const char* what) {
    if (value > 0) return value;
    throw units::InputError("", std::string(what) + " of nothing is none", "give a number above 0");
}

}  // namespace

GluesDialog::GluesDialog(const model::Boat& boat, QWidget* parent)
    : QDialog(parent), glues_(boat.adhesives), display_(boat.display) {
    setObjectName("gluesDialog");
    setWindowTitle(tr("Your own glues"));
    for (const model::Piece& piece : boat.pieces) inUse_.emplace_back(piece.glue.adhesive, piece.name);

    list_ = new QListWidget(this);
    list_->setObjectName("gluesList");
    list_->setAccessibleName(tr("Your own glues"));
    list_->setMaximumWidth(216);
    list_->setFrameShape(QFrame::NoFrame);
    QPushButton* add = wordButton(QStringLiteral("addGlue"), tr("Add a glue"), this);
    remove_ = wordButton(QStringLiteral("removeGlue"), tr("Remove it"), this);
    words_ = new QLabel(this);
    words_->setObjectName("gluesWords");
    words_->setWordWrap(true);
    words_->setTextFormat(Qt::PlainText);
    buttons_ = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);

    auto* scroll = new PanelScroll(this);
    form_ = new QWidget(scroll);
    makeFields(form_);
    scroll->setWidget(form_);

    auto* left = new QVBoxLayout;
    left->addWidget(list_, 1);
    left->addWidget(add);
    left->addWidget(remove_);
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(2 * gridStep, 2 * gridStep, 2 * gridStep, 2 * gridStep);
    grid->setSpacing(2 * gridStep);
    grid->addLayout(left, 0, 0);
    grid->addWidget(scroll, 0, 1);
    grid->addWidget(words_, 1, 0, 1, 2);
    grid->addWidget(buttons_, 2, 0, 1, 2);
    grid->setColumnStretch(1, 1);
    grid->setRowStretch(0, 1);
    resize(760, 640);

    connect(add, &QPushButton::clicked, this, &GluesDialog::addGlue);
    connect(remove_, &QPushButton::clicked, this, &GluesDialog::removeGlue);
    connect(list_, &QListWidget::currentRowChanged, this, &GluesDialog::showGlue);
    connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
    showList();
    list_->setCurrentRow(glues_.empty() ? -1 : 0);
    showGlue();
}

model::OwnAdhesive* GluesDialog::current() {
    const int row = list_->currentRow();
    return row < 0 || row >= math::countOf(glues_) ? nullptr : &glues_[row];
}

void GluesDialog::addField(QWidget* into, const char* object, const QString& name, const QString& hint,
                           std::function<QString(const model::OwnAdhesive&)> write,
                           std::function<void(model::OwnAdhesive&, const QString&)> read) {
    auto* grid = static_cast<QGridLayout*>(into->layout());
    const int row = grid->rowCount();
    auto field = std::make_unique<Field>();
    field->edit = new QLineEdit(into);
    field->edit->setObjectName(QLatin1String(object));
    field->edit->setAccessibleName(name);
    field->edit->setAccessibleDescription(hint);
    field->edit->setToolTip(hint);
    field->edit->setFont(tabularFont(field->edit->font()));
    auto* label = new QLabel(name, into);
    label->setBuddy(field->edit);
    label->setToolTip(hint);
    field->reason = new QLabel(into);
    field->reason->setObjectName(QLatin1String(object) + QStringLiteral("Reason"));
    field->reason->setWordWrap(true);
    field->reason->setTextFormat(Qt::PlainText);
    field->reason->setForegroundRole(QPalette::BrightText);
    field->reason->hide();
    grid->addWidget(label, row, 0);
    grid->addWidget(field->edit, row, 1);
    grid->addWidget(field->reason, row + 1, 0, 1, 2);
    field->write = std::move(write);
    field->read = std::move(read);
    Field& added = *field;
    fields_.push_back(std::move(field));
    connect(added.edit, &QLineEdit::textEdited, this, [this, &added] { readField(added); });
}

template <class Write, class Read>
void GluesDialog::addQuantity(QWidget* into, const char* object, const QString& name, const QString& hint,
                              double model::OwnAdhesive::*member, Write write, Read read) {
    addField(
        into, object, name, hint, [member, write](const model::OwnAdhesive& own) { return text(write(own.*member)); },
        [member, read](model::OwnAdhesive& own, const QString& written) { own.*member = read(text(written)); });
}

void GluesDialog::addParts(QWidget* into, const char* object, const QString& name, const QString& hint,
                           std::array<double, 2> model::OwnAdhesive::*member) {
    addField(
        into, object, name, hint,
        [member](const model::OwnAdhesive& own) {
            return text(units::writeNumber((own.*member)[0], 6) + " : " + units::writeNumber((own.*member)[1], 6));
        },
        [member](model::OwnAdhesive& own, const QString& written) {
            const QStringList parts = written.split(QLatin1Char(':'));
            if (parts.size() != 2)
                throw units::InputError("", "\"" + text(written) + "\" is not two numbers", "give them as 100 : 43");
            const double first = readNumber(parts[0]);
            const double second = readNumber(parts[1]);
            if (!(first > 0) || second < 0)
                throw units::InputError("", "a part of nothing cannot be mixed", "give both above 0, as 100 : 43");
            own.*member = {first, second};
        });
}

// "40 min, 25 C, 100 g"
void GluesDialog::addPoint(QWidget* into, std::size_t point) {
    addField(
        into,
        point == 0   ? "potLife1"
        : point == 1 ? "potLife2"
                     : "potLife3",
        point == 0   ? tr("Pot life")
        : point == 1 ? tr("... and another, if it says so")
                     : tr("... and a third"),
        tr("Time, temperature, amount: 40 min, 25 °C, 100 g. A second one narrows the range."),
        [point, this](const model::OwnAdhesive& own) {
            const std::vector<model::PotLife> points = pointsOf(own);
            if (point >= points.size()) return QString();
            const model::PotLife& one = points[point];
            return text(units::typedDuration(one.lasts_s) + ", " + units::typedTemperature(one.at_C, display_) + ", " +
                        units::typedSmallMass(one.mass_kg, display_));
        },
        [point, this](model::OwnAdhesive& own, const QString& written) {
            std::vector<model::PotLife> points = pointsOf(own);
            if (written.trimmed().isEmpty() && point > 0) {
                if (point < points.size()) points.erase(points.begin() + static_cast<std::ptrdiff_t>(point));
                return putPoints(own, points);
            }
            const QStringList parts = written.split(QLatin1Char(','));
            if (parts.size() != 3)
                throw units::InputError("", "\"" + text(written) + "\" is not time, temperature and mass",
                                        "give them with commas between: 40 min, 25 C, 100 g");
            model::PotLife one = point < points.size() ? points[point] : model::PotLife{};
            one.lasts_s = positive(units::readDuration(text(parts[0])), "a pot life");
            one.at_C = units::readTemperature(text(parts[1]), display_);
            one.mass_kg = positive(units::readSmallMass(text(parts[2]), display_), "a mass");
            if (point < points.size()) {
                points[point] = one;
            } else {
                points.push_back(one);
            }
            putPoints(own, points);
        });
}

void GluesDialog::makeFields(QWidget* into) {
    auto* grid = new QGridLayout(into);
    grid->setContentsMargins(0, 0, 2 * gridStep, 0);
    grid->setHorizontalSpacing(gridStep);
    grid->setVerticalSpacing(gridStep / 2);
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    using Own = model::OwnAdhesive;
    addField(
        into, "glueName", tr("Name"), {}, [](const Own& own) { return text(own.name); },
        [](Own& own, const QString& written) { own.name = text(written.trimmed()); });
    kind_ = new QComboBox(into);
    kind_->setObjectName("glueKind");
    kind_->setAccessibleName(tr("Kind"));
    kind_->setToolTip(tr("Epoxy heats itself in the pot; the others go off by the clock alone"));
    kind_->addItems({tr("epoxy"), tr("resorcinol"), tr("urea"), tr("polyurethane")});
    auto* kindName = new QLabel(tr("Kind"), into);
    kindName->setBuddy(kind_);
    const int row = grid->rowCount();
    grid->addWidget(kindName, row, 0);
    grid->addWidget(kind_, row, 1);
    connect(kind_, &QComboBox::activated, this, [this](int index) {
        if (Own* own = current()) own->kind = static_cast<model::AdhesiveKind>(index);
        judge();
    });
    addParts(into, "partsByWeight", tr("Parts by weight"), tr("First part : second; 1 : 0 for one part"),
             &Own::partsByWeight);
    addParts(into, "partsByVolume", tr("Parts by volume"), {}, &Own::partsByVolume);
    addParts(into, "densities", tr("Densities, kg/m3"), tr("Of both parts; water has 1000"), &Own::density_kg_m3);
    for (std::size_t point = 0; point < mostPoints; ++point) addPoint(into, point);
    const auto minutes = [](double time_s) { return units::typedDuration(time_s); };
    const auto readMinutes = [](const std::string& written) {
        return positive(units::readDuration(written), "a time");
    };
    const auto hours = [](double time_s) { return units::typedDuration(time_s, 3600); };
    const auto readHours = [](const std::string& written) {
        return positive(units::readDuration(written, 3600), "a time");
    };
    const auto air = [this](double air_C) { return units::typedTemperature(air_C, display_); };
    const auto readAir = [this](const std::string& written) { return units::readTemperature(written, display_); };
    addQuantity(into, "openTime", tr("Open time of a film"), tr("How long spread glue can wait for the clamps"),
                &Own::openTime_s, minutes, readMinutes);
    addQuantity(into, "openTimeAt", tr("... at"), {}, &Own::openTimeAt_C, air, readAir);
    addQuantity(into, "leastAir", tr("Use it above only"), {}, &Own::least_C, air, readAir);
    addQuantity(into, "handling", tr("Clamps off after"), tr("Handling time"), &Own::handling_s, hours, readHours);
    addQuantity(into, "fullCure", tr("Full strength after"), {}, &Own::fullCure_s, hours, readHours);
    addQuantity(into, "cureAt", tr("... both at"), {}, &Own::cureAt_C, air, readAir);
    addQuantity(
        into, "ownSpread", tr("Spread"), tr("As on the data sheet"), &Own::spread_kg_m2,
        [](double coat) { return units::typedCoat(coat); },
        [](const std::string& written) { return units::readCoat(written); });
    addField(
        into, "glueSource", tr("Where this comes from"), tr("Data sheet and its date; stands beside the numbers"),
        [](const Own& own) { return text(own.source); },
        [](Own& own, const QString& written) { own.source = text(written.trimmed()); });
    grid->setRowStretch(grid->rowCount(), 1);
}

void GluesDialog::showList() {
    const QSignalBlocker blocker(list_);
    const int row = list_->currentRow();
    list_->clear();
    for (const model::OwnAdhesive& own : glues_) list_->addItem(text(own.name.empty() ? own.id : own.name));
    list_->setCurrentRow(std::min(row, list_->count() - 1));
}

void GluesDialog::showGlue() {
    const model::OwnAdhesive* own = current();
    form_->setEnabled(own != nullptr);
    remove_->setEnabled(own != nullptr);
    for (const auto& field : fields_) {
        field->unread = false;
        field->reason->hide();
        field->edit->setText(own ? field->write(*own) : QString());
        field->edit->setCursorPosition(0);
    }
    kind_->setCurrentIndex(own ? static_cast<int>(own->kind) : -1);
    judge();
}

void GluesDialog::readField(Field& field) {
    model::OwnAdhesive* own = current();
    if (!own) return;
    try {
        field.read(*own, field.edit->text());
        field.unread = false;
    } catch (const units::InputError& error) {
        field.unread = true;
        field.reason->setText(why(error));
    }
    field.reason->setVisible(field.unread);
    if (QListWidgetItem* item = list_->currentItem()) item->setText(text(own->name.empty() ? own->id : own->name));
    judge();
}

// What the model makes of the glue, or why it makes nothing of it.
void GluesDialog::judge() {
    const bool unread = std::any_of(fields_.begin(), fields_.end(), [](const auto& field) { return field->unread; });
    buttons_->button(QDialogButtonBox::Ok)->setEnabled(!unread);
    list_->setEnabled(!unread);
    const model::OwnAdhesive* own = current();
    QString words = tr("None yet. Add one, and give what its data sheet says.");
    if (unread) {
        words = tr("The words beside a field say what it takes.");
    } else if (own) {
        try {
            words = text(plan::writeTexts(plan::ownGlueTexts(*own), display_));
        } catch (const units::InputError& error) {
            words = tr("This glue cannot be planned with: %1.").arg(why(error));
        }
    }
    words_->setText(words);
}

void GluesDialog::addGlue() {
    model::OwnAdhesive own;
    own.name = text(tr("My glue %1").arg(glues_.size() + 1));
    own.id = freshId(text(own.name), glues_);
    glues_.push_back(own);
    showList();
    list_->setCurrentRow(list_->count() - 1);
    showGlue();
    fields_.front()->edit->setFocus();  // its name
    fields_.front()->edit->selectAll();
}

void GluesDialog::removeGlue() {
    const model::OwnAdhesive* own = current();
    if (!own) return;
    const auto user =
        std::find_if(inUse_.begin(), inUse_.end(), [own](const auto& use) { return use.first == own->id; });
    if (user != inUse_.end()) {
        words_->setText(tr("%1 uses it: give that piece another glue first.").arg(text(user->second)));
        return;
    }
    glues_.erase(glues_.begin() + list_->currentRow());
    showList();
    showGlue();
}

}  // namespace fayline::app
