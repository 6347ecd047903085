#include "app/window/shed_dialog.hpp"

#include <QDialogButtonBox>
#include <QDir>
#include <QFileDialog>
#include <QGridLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSettings>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "app/look/text.hpp"
#include "app/look/theme.hpp"
#include "app/panels/panel_scroll.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/shed_line.hpp"
#include "app/window/document.hpp"
#include "app/window/glues_dialog.hpp"
#include "app/window/shed_store.hpp"
#include "app/window/shed_words.hpp"

namespace fayline::app {

namespace {

QString shedFilter() {
    return QObject::tr("My shed (*.fayline-shed);;All files (*)");
}

}  // namespace

ShedDialog::ShedDialog(ShedStore& store, Document& document, QWidget* parent)
    : QDialog(parent),
      store_(store),
      document_(document),
      list_(new QListWidget(this)),
      words_(new QLabel(this)),
      take_(wordButton(QStringLiteral("takeIntoShed"), {}, this)),
      use_(wordButton(QStringLiteral("useFromShed"), {}, this)),
      remove_(wordButton(QStringLiteral("removeFromShed"), tr("Remove from my shed"), this)),
      edit_(wordButton(QStringLiteral("editShedGlues"), tr("Change glues..."), this)),
      undo_(wordButton(QStringLiteral("undoShed"), tr("Undo last change"), this)),
      trouble_(new Words(QStringLiteral("shedTrouble"), true, this)) {
    setObjectName("shedDialog");
    setWindowTitle(tr("My shed"));
    list_->setObjectName("shedParts");
    list_->setAccessibleName(tr("What is in my shed"));
    list_->setFrameShape(QFrame::NoFrame);
    list_->setFixedWidth(27 * gridStep);
    list_->setSpacing(gridStep / 4);
    words_->setObjectName("shedWords");
    words_->setWordWrap(true);
    words_->setTextFormat(Qt::PlainText);
    words_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    words_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    auto* scroll = new PanelScroll(this);
    scroll->setWidget(words_);

    auto* about =
        new QLabel(tr("New boats and pieces begin with this; those that are there keep what they have."), this);
    auto* where = new QLabel(tr("File: %1").arg(QDir::toNativeSeparators(store.fileName())), this);
    where->setObjectName("shedFile");
    where->setTextInteractionFlags(Qt::TextSelectableByMouse);
    for (QLabel* label : {about, where}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
    }

    auto* side = new QVBoxLayout;
    side->addWidget(scroll, 1);
    auto* row = new QGridLayout;
    row->addWidget(take_, 0, 0);
    row->addWidget(use_, 0, 1);
    row->addWidget(remove_, 1, 0);
    row->addWidget(edit_, 1, 1);
    side->addLayout(row);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    QPushButton* import = wordButton(QStringLiteral("importShed"), tr("Import..."), this);
    QPushButton* exported = wordButton(QStringLiteral("exportShed"), tr("Export..."), this);
    for (QPushButton* button : {import, exported, undo_}) buttons->addButton(button, QDialogButtonBox::ActionRole);
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(2 * gridStep, 2 * gridStep, 2 * gridStep, 2 * gridStep);
    grid->setSpacing(2 * gridStep);
    grid->addWidget(about, 0, 0, 1, 2);
    grid->addWidget(list_, 1, 0);
    grid->addLayout(side, 1, 1);
    grid->addWidget(trouble_, 2, 0, 1, 2);
    grid->addWidget(where, 3, 0, 1, 2);
    grid->addWidget(buttons, 4, 0, 1, 2);
    grid->setColumnStretch(1, 1);
    grid->setRowStretch(1, 1);
    resize(680, 480);

    for (const model::ShedPart part : model::allShedParts()) {
        auto* item = new QListWidgetItem(list_);
        item->setData(Qt::UserRole, int(part));
    }
    connectAll();
    list_->setCurrentRow(0);
    showParts();
}

void ShedDialog::connectAll() {
    connect(list_, &QListWidget::currentRowChanged, this, &ShedDialog::showPart);
    // A click beside the rows leaves the one that is shown chosen.
    connect(list_, &QListWidget::itemSelectionChanged, this, [this] {
        if (QListWidgetItem* item = list_->currentItem()) item->setSelected(true);
    });
    connect(take_, &QPushButton::clicked, this, &ShedDialog::take);
    connect(use_, &QPushButton::clicked, this, &ShedDialog::use);
    connect(remove_, &QPushButton::clicked, this,
            [this] { trying([this] { store_.change([this](model::Shed& shed) { model::drop(shed, part()); }); }); });
    connect(edit_, &QPushButton::clicked, this, &ShedDialog::editGlues);
    connect(undo_, &QPushButton::clicked, this, [this] { trying([this] { store_.undo(); }); });
    connect(findChild<QPushButton*>("importShed"), &QPushButton::clicked, this, &ShedDialog::askAndImport);
    connect(findChild<QPushButton*>("exportShed"), &QPushButton::clicked, this, &ShedDialog::askAndExport);
    connect(findChild<QDialogButtonBox*>(), &QDialogButtonBox::rejected, this, &QDialog::reject);
}

model::ShedPart ShedDialog::part() const {
    return model::ShedPart(list_->currentItem()->data(Qt::UserRole).toInt());
}

const model::Piece* ShedDialog::piece() const {
    const int index = document_.currentPiece();
    return index < 0 ? nullptr : &document_.boat().pieces[index];
}

void ShedDialog::showParts() {
    for (int row = 0; row < list_->count(); ++row) {
        QListWidgetItem* item = list_->item(row);
        const auto of = model::ShedPart(item->data(Qt::UserRole).toInt());
        const bool there = store_.shed() && model::has(*store_.shed(), of);
        item->setText(there ? shedPartName(of) : tr("%1 (none)").arg(shedPartName(of)));
    }
    undo_->setEnabled(store_.canUndo());
    showPart();
}

void ShedDialog::showPart() {
    const bool ofPiece = model::isOfPiece(part());
    const auto shed = store_.shed() ? store_.shed() : std::make_shared<const model::Shed>();
    const model::Boat& boat = document_.boat();
    const bool there = model::has(*shed, part());
    const bool used = there && ofPiece && piece() && model::isUsed(*shed, part(), *piece());
    take_->setText(ofPiece ? tr("Take from this piece") : tr("Take from this boat"));
    use_->setText(ofPiece ? tr("Use in this piece") : tr("Use in this boat"));
    const model::Piece none;
    model::Shed taken = *shed;
    model::keep(taken, part(), boat, piece() ? *piece() : none);
    const bool more = (piece() || !ofPiece) && taken != *shed;
    QString words = shedWords(*shed, part(), boat.display).join('\n');
    if (used) words += tr("\n\nThis piece has the same.");
    if (!there)
        words = !more     ? tr("Nothing yet, and none in this boat.")
                : ofPiece ? tr("Nothing yet. Take what this piece has.")
                          : tr("Nothing yet. Take what this boat has.");
    words_->setText(words);
    take_->setEnabled(more);
    use_->setEnabled(ofPiece                            ? there && piece() && !used
                     : part() == model::ShedPart::units ? there && !(boat.display == shed->display->display)
                                                        : model::lacking(boat, part(), *shed).any());
    remove_->setEnabled(there);
    edit_->setVisible(part() == model::ShedPart::glues);
}

void ShedDialog::trying(const std::function<void()>& what) {
    QString trouble;
    try {
        what();
    } catch (const std::exception& error) {
        trouble = QString::fromUtf8(error.what());
    }
    if (const auto problem = store_.takeProblem()) trouble += problem->what + "\n" + problem->why;
    trouble_->say(trouble);
    showParts();
}

void ShedDialog::take() {
    trying([this] {
        const model::Piece none;
        store_.change(
            [&](model::Shed& shed) { model::keep(shed, part(), document_.boat(), piece() ? *piece() : none); });
    });
}

// One step of the document.
void ShedDialog::use() {
    const model::Shed& shed = *store_.shed();
    const QString name = tr("Use my shed's: %1").arg(shedPartName(part()));
    if (model::isOfPiece(part())) {
        model::Piece after = *piece();
        model::use(shed, part(), after);
        document_.changePiece(document_.currentPiece(), {name, {}, after});
    } else {
        model::Boat after = document_.boat();
        if (part() == model::ShedPart::units) after.display = shed.display->display;
        model::bring(after, model::lacking(after, part(), shed));
        document_.changeBoat(name, {}, after);
    }
    showParts();
}

void ShedDialog::editGlues() {
    model::Boat glues;
    glues.display = document_.boat().display;
    if (store_.shed()) glues.adhesives = store_.shed()->adhesives;
    GluesDialog dialog(glues, this);
    if (dialog.exec() != QDialog::Accepted) return;
    trying([&] { store_.change([&](model::Shed& shed) { shed.adhesives = dialog.glues(); }); });
}

void ShedDialog::askAndImport() {
    const QString folder = QSettings().value("folder").toString();
    const QString fileName = QFileDialog::getOpenFileName(this, tr("Import a shed"), folder, shedFilter());
    if (!fileName.isEmpty()) trying([&] { store_.importFrom(fileName); });
}

void ShedDialog::askAndExport() {
    const QString folder = QSettings().value("folder", QDir::homePath()).toString();
    QFileDialog dialog(this, tr("Export my shed"), folder, shedFilter());
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix("fayline-shed");
    dialog.selectFile("my_shed.fayline-shed");
    if (dialog.exec() == QDialog::Accepted) trying([&] { store_.exportTo(dialog.selectedFiles().constFirst()); });
}

}  // namespace fayline::app

#include "moc_shed_dialog.cpp"
