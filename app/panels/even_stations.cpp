#include "app/panels/even_stations.hpp"

#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>
#include <algorithm>

#include "app/look/icons.hpp"
#include "app/look/names.hpp"
#include "app/look/theme.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/stations_model.hpp"
#include "core/model/hold_traits.hpp"

namespace fayline::app {

EvenStations::EvenStations(StationsModel* stations, QWidget* parent)
    : QWidget(parent), stations_(stations), reason_(new Words(QStringLiteral("evenReason"), true, this)) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(gridStep);
    grid->setVerticalSpacing(gridStep / 2);
    const auto addEdit = [&](const char* object, const QString& name, const QString& hint, int row) {
        auto* edit = new QLineEdit(this);
        edit->setObjectName(QLatin1String(object));
        edit->setAccessibleName(name);
        edit->setAccessibleDescription(hint);
        edit->setToolTip(hint);
        edit->setFont(tabularFont(edit->font()));
        addLabelled(grid, row, name, edit);
        connect(edit, &QLineEdit::returnPressed, this, &EvenStations::setOut);
        return edit;
    };
    from_ = addEdit("evenFrom", tr("From"), tr("Along the line from its first point"), 0);
    to_ = addEdit("evenTo", tr("To"), tr("Along the line from its first point"), 1);
    spacing_ = addEdit("evenSpacing", tr("Apart, at most"),
                       tr("The stations are spread evenly, no further apart than this"), 2);
    kind_ = new QComboBox(this);
    kind_->setObjectName(QStringLiteral("evenKind"));
    kind_->setAccessibleName(tr("Held by"));
    for (const model::HoldTraits& traits : model::holdTraits)
        kind_->addItem(holdIcon(traits.kind), holdName(traits.kind));
    addLabelled(grid, 3, tr("Held by"), kind_);
    QPushButton* go = wordButton(QStringLiteral("setOutEvenly"), tr("Set out evenly"), this);
    go->setToolTip(tr("Fixed stations stay, all others give way to the new ones"));
    grid->addWidget(go, 4, 1);
    grid->addWidget(reason_, 5, 0, 1, 2);
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    connect(go, &QPushButton::clicked, this, &EvenStations::setOut);
}

void EvenStations::setOut() {
    if (!shown_ || shown_->pieceIndex < 0) return;
    const auto read = [this](QLineEdit* edit) {
        try {
            return readLengthText(edit->text(), shown_->display);
        } catch (const units::InputError& error) {
            throw units::InputError("", text(edit->accessibleName()) + ": " + error.wrong(), error.accepted());
        }
    };
    try {
        const double from_m = read(from_);
        const double to_m = read(to_);
        const double spacing_m = read(spacing_);
        const model::HoldKind kind =
            model::holdTraits[static_cast<std::size_t>(std::max(kind_->currentIndex(), 0))].kind;
        reason_->say({});
        stations_->setOutEvenly(from_m, to_m, spacing_m, kind);
    } catch (const units::InputError& error) {
        reason_->say(why(error));
    }
}

void EvenStations::show(const std::shared_ptr<const Shown>& shown) {
    const bool another = !shown_ || !shown_->samePieceAs(*shown) || shown_->display.lengths != shown->display.lengths;
    shown_ = shown;
    if (another) {
        reason_->say({});
        for (QLineEdit* edit : {from_, to_, spacing_}) edit->setModified(false);
    }
    if (shown_->pieceIndex < 0) return;
    const auto fill = [this](QLineEdit* edit, double length_m) {
        const QString written = writeLengthText(length_m, shown_->display);
        if (!edit->isModified() && edit->text() != written) edit->setText(written);
    };
    constexpr double firstTry_m = 0.15;
    const bool metric = shown_->display.lengths == units::LengthNotation::millimetres;
    fill(from_, 0);
    fill(spacing_, metric ? firstTry_m : 6 * units::inch_m);
    if (shown_->plan) fill(to_, shown_->plan->line.fair.line.length());
}

}  // namespace fayline::app
