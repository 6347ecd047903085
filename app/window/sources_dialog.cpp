#include "app/window/sources_dialog.hpp"

#include <QCoreApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QStyledItemDelegate>
#include <QTableWidget>
#include <QVBoxLayout>

#include "app/look/text.hpp"
#include "app/look/theme.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

namespace {

struct Row {
    QString what;
    QString value;
    units::Source source;
};

void addWood(std::vector<Row>& rows, const wood::Species& species, const units::Display& display) {
    const QString name = text(species.name);
    const auto add = [&](const QString& what, const QString& value, const units::Source& source) {
        rows.push_back({name + ", " + what, value, source});
    };
    const auto share = [](double value) { return text(units::writeShare(value)); };
    add(QObject::tr("specific gravity"), text(units::writeNumber(species.sg.value)), species.sg.source);
    add(QObject::tr("modulus of rupture"), text(units::writeStress(species.mor_Pa.value, display)),
        species.mor_Pa.source);
    add(QObject::tr("modulus of elasticity, as tabulated"), text(units::writeStress(species.moe_Pa.value, display)),
        species.moe_Pa.source);
    const auto stress = [&](const QString& what, const std::optional<units::Cited>& cited) {
        if (cited) add(what, text(units::writeStress(cited->value, display)), cited->source);
    };
    stress(QObject::tr("compression along the grain"), species.compressionAlong_Pa);
    stress(QObject::tr("compression across the grain"), species.compressionAcross_Pa);
    stress(QObject::tr("shear along the grain"), species.shear_Pa);
    if (species.shrinkRadial)
        add(QObject::tr("shrinkage, radial"), share(species.shrinkRadial->value), species.shrinkRadial->source);
    if (species.shrinkTangential) {
        add(QObject::tr("shrinkage, tangential"), share(species.shrinkTangential->value),
            species.shrinkTangential->source);
    }
}

// The woods of the piece first, then what its plan rests on, then all other woods.
std::vector<Row> rowsOf(const Shown& shown) {
    std::vector<Row> rows;
    std::vector<QString> used;
    if (shown.plan) {
        for (const laminate::Strip& strip : shown.plan->stack.strips) {
            const wood::Species* species = wood::findSpecies(shown.species, strip.species);
            if (!species || std::ranges::find(used, text(strip.species)) != used.end()) continue;
            used.push_back(text(strip.species));
            rows.push_back({QObject::tr("Breaking strain of the strips of %1").arg(text(species->name)),
                            text(units::writeShare(strip.breakingStrain)), strip.breakingSource});
            rows.push_back({QObject::tr("Modulus of the strips of %1").arg(text(species->name)),
                            text(units::writeStress(strip.modulus_Pa, shown.display)), strip.modulusSource});
        }
        for (const plan::Finding& finding : shown.plan->findings) {
            rows.push_back({text(plan::textOf(finding, shown.display)), QString(), finding.source});
        }
    }
    for (const bool wanted : {true, false}) {
        for (const wood::Species& species : shown.species) {
            if ((std::ranges::find(used, text(species.id)) != used.end()) == wanted)
                addWood(rows, species, shown.display);
        }
    }
    return rows;
}

constexpr int padding = 4;  // pixels within a cell

// A style sheet adds its padding to rows that were measured as if words could run over the cell's whole width.
class PaddedCells : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        QStyleOptionViewItem within = option;
        within.rect.setWidth(option.rect.width() - 2 * padding);
        return QStyledItemDelegate::sizeHint(within, index);
    }
};

QLabel* paragraph(const QString& words, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    return label;
}

QVBoxLayout* column(QDialog& dialog) {
    auto* made = new QVBoxLayout(&dialog);
    made->setContentsMargins(3 * gridStep, 2 * gridStep, 3 * gridStep, 2 * gridStep);
    made->setSpacing(gridStep);
    return made;
}

void addClose(QDialog& dialog, QVBoxLayout* column) {
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, &dialog);
    QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    column->addWidget(buttons);
}

}  // namespace

void showSources(QWidget* parent, const Shown& shown) {
    QDialog dialog(parent);
    dialog.setObjectName("sourcesDialog");
    dialog.setWindowTitle(QObject::tr("Where the numbers come from"));
    auto* under = column(dialog);
    under->addWidget(paragraph(
        QObject::tr(
            "Every value of a table or model, with its source and how it was read there. Values of woods are means "
            "of small clear specimens: your boards differ, and a measured value is better."),
        &dialog));

    const std::vector<Row> rows = rowsOf(shown);
    auto* table = new QTableWidget(math::countOf(rows), 4, &dialog);
    table->setObjectName("sourcesTable");
    table->setAccessibleName(QObject::tr("Values with their sources"));
    table->setHorizontalHeaderLabels(
        {QObject::tr("What"), QObject::tr("Value"), QObject::tr("Source"), QObject::tr("How it was read")});
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setShowGrid(false);
    table->setStyleSheet(
        QStringLiteral("QTableWidget::item { border-bottom: 1px solid %1; padding: %4px; }"
                       "QTableWidget::item:selected { color: %2; background: %3; }")
            .arg(theme().rule.name(), theme().ground.name(), theme().accent.name(), QString::number(padding)));
    table->setItemDelegate(new PaddedCells(table));
    table->setFrameShape(QFrame::NoFrame);
    table->setWordWrap(true);
    table->verticalHeader()->hide();
    table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft);
    for (int i = 0; i < math::countOf(rows); ++i) {
        const Row& row = rows[i];
        const QStringList cells{row.what, row.value, text(row.source.text), text(units::markMeaning(row.source.mark))};
        for (int c = 0; c < 4; ++c) {
            auto* item = new QTableWidgetItem(cells[c]);
            item->setToolTip(cells[c]);
            table->setItem(i, c, item);
        }
        table->item(i, 1)->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    }
    table->setColumnWidth(0, 344);
    table->setColumnWidth(1, 96);
    table->setColumnWidth(2, 264);
    table->horizontalHeader()->setStretchLastSection(true);
    table->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    under->addWidget(table, 1);
    addClose(dialog, under);
    dialog.resize(976, 640);
    dialog.exec();
}

void showAbout(QWidget* parent) {
    QDialog dialog(parent);
    dialog.setObjectName("aboutDialog");
    dialog.setWindowTitle(QObject::tr("About Fayline"));
    auto* under = column(dialog);
    auto* title = new QLabel(QObject::tr("Fayline %1").arg(QCoreApplication::applicationVersion()), &dialog);
    title->setFont(textFont(TextSize::title));
    under->addWidget(title);
    under->addWidget(paragraph(
        QObject::tr(
            "Plans glue-ups of curved timbers from thin strips. To fay is to fit two timbers together without a gap."),
        &dialog));
    auto* cautions = new QLabel(QObject::tr("Cautions"), &dialog);
    cautions->setFont(textFont(TextSize::title));
    under->addWidget(cautions);
    for (const QString& words :
         {QObject::tr(
              "Local rules and licensed practice come first. A piece that carries rig, engine or people wants a "
              "designer or surveyor."),
          QObject::tr("A bent stack stores energy and whips when it comes loose or breaks: stand clear of its ends, "
                      "and wear eye protection."),
          QObject::tr("Jacks and props are no place for a hand or a head. Block the boat before anyone is under it."),
          QObject::tr("Resin and hardener sensitise; a full pot can smoke and boil; solvents burn; rags heat; wood "
                      "dust harms. Follow the maker's data sheet."),
          QObject::tr("The answers are estimates from published means. Try a dry fit before glue is mixed.")}) {
        under->addWidget(paragraph(words, &dialog));
    }
    auto* licence = new QLabel(QObject::tr("Licence"), &dialog);
    licence->setFont(textFont(TextSize::title));
    under->addWidget(licence);
    under->addWidget(paragraph(
        QObject::tr(
            "Free software under the GNU General Public License, version 3 or any later version. It comes without "
            "any warranty, not even that it is fit for a purpose."),
        &dialog));
    under->addStretch(1);
    addClose(dialog, under);
    dialog.setFixedWidth(560);
    dialog.exec();
}

}  // namespace fayline::app
