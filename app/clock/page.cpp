#include "app/clock/page.hpp"

#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "app/look/theme.hpp"
#include "core/units/units.hpp"

namespace fayline::app {

namespace {

QVBoxLayout* columnOf(QWidget* page) {
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(3 * gridStep, 2 * gridStep, 3 * gridStep, 2 * gridStep);
    column->setSpacing(gridStep);
    return column;
}

constexpr double coldest_C = -20;  // nobody glues outside of these
constexpr double warmest_C = 50;

}  // namespace

QuestionPage::QuestionPage(QWidget* parent)
    : Page(parent), question_(new BigText(22, 64)), explained_(new BigText(16, 36)), keys_(new KeyRow) {
    setObjectName("clockQuestion");
    question_->setBold(true);
    auto* column = columnOf(this);
    column->addWidget(question_, 3);
    column->addWidget(explained_, 4);
    column->addWidget(keys_);
}

void QuestionPage::ask(const QString& question, const QString& explained, std::vector<Answer> answers) {
    question_->setText(question);
    explained_->setText(explained);
    keys_->clear();
    answers_ = std::move(answers);
    for (const Answer& answer : answers_) {
        BigKey* key = keys_->add(answer.name, answer.word, answer.keyText);
        key->setMain(answer.main);
        connect(key, &QAbstractButton::clicked, this, answer.run);
        key->show();
    }
}

bool QuestionPage::press(const QKeyEvent& key) {
    for (const Answer& answer : answers_) {
        if (std::ranges::find(answer.keys, key.key()) == answer.keys.end()) continue;
        const auto run = answer.run;  // it may ask another question, which takes this one's place
        run();
        return true;
    }
    return false;
}

AirPage::AirPage(QWidget* parent)
    : Page(parent), question_(new BigText(22, 48)), value_(new BigText(48, 200)), explained_(new BigText(16, 32)) {
    setObjectName("clockAir");
    question_->setText(tr("How warm is the air at the glue?"));
    value_->setObjectName("clockAirValue");
    value_->setBold(true);
    auto* keys = new KeyRow;
    const auto add = [&](const char* name, const QString& word, const QString& key, auto run) {
        BigKey* made = keys->add(name, word, key);
        connect(made, &QAbstractButton::clicked, this, run);
        return made;
    };
    add("airColder", tr("Colder"), tr("Down"), [this] { step(-0.5); });
    add("airWarmer", tr("Warmer"), tr("Up"), [this] { step(0.5); });
    take_ = add("airTake", tr("Use it"), tr("Enter"), [this] {
        if (isAir()) emit taken(air_C());
    });
    take_->setMain(true);
    add("airLeave", tr("As before"), tr("Esc"), [this] { emit left(); });
    auto* column = columnOf(this);
    column->addWidget(question_, 2);
    column->addWidget(value_, 4);
    column->addWidget(explained_, 4);
    column->addWidget(keys);
}

void AirPage::ask(double air_C, const units::Display& display, std::function<QString(double)> explain) {
    explain_ = std::move(explain);
    fahrenheit_ = display.temperatures == units::TemperatureUnit::fahrenheit;
    const double shown = fahrenheit_ ? units::toFahrenheit(air_C) : air_C;
    fresh_ = true;
    type(QString::number(std::round(10 * shown) / 10));
}

bool AirPage::isAir() const {
    bool read = false;
    typed_.toDouble(&read);
    return read && air_C() >= coldest_C && air_C() <= warmest_C;
}

double AirPage::air_C() const {
    const double shown = typed_.toDouble();
    return fahrenheit_ ? units::fromFahrenheit(shown) : shown;
}

void AirPage::step(double by) {
    if (!isAir()) return;
    fresh_ = true;
    type(QString::number(typed_.toDouble() + (fahrenheit_ ? 2 * by : by)));
}

void AirPage::type(const QString& typed) {
    typed_ = typed;
    show();
}

void AirPage::show() {
    value_->setText(QStringLiteral("%1 °%2").arg(typed_, fahrenheit_ ? "F" : "C"));
    take_->setEnabled(isAir());
    explained_->setText(isAir() ? explain_(air_C())
                                : tr("Give the temperature of the shed's thermometer as a number."));
}

bool AirPage::press(const QKeyEvent& key) {
    const QString text = key.text();
    switch (key.key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (isAir()) emit taken(air_C());
            return true;
        case Qt::Key_Escape:
            emit left();
            return true;
        case Qt::Key_Up:
        case Qt::Key_Plus:
            step(0.5);
            return true;
        case Qt::Key_Down:
            step(-0.5);
            return true;
        case Qt::Key_Backspace:
            fresh_ = false;
            type(typed_.chopped(typed_.isEmpty() ? 0 : 1));
            return true;
        default:
            break;
    }
    constexpr int longest = 6;
    if (text.size() != 1 || !QStringLiteral("0123456789.,-").contains(text) || typed_.size() > longest) return false;
    const QString before = fresh_ ? QString() : typed_;
    fresh_ = false;
    type(before + (text == "," ? QStringLiteral(".") : text));
    return true;
}

}  // namespace fayline::app

#include "moc_page.cpp"
