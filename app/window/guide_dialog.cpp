#include "app/window/guide_dialog.hpp"

#include <QDialogButtonBox>
#include <QFile>
#include <QHBoxLayout>
#include <QListWidget>
#include <QPointer>
#include <QTextBrowser>
#include <QTextDocument>
#include <QUrl>
#include <QVBoxLayout>
#include <algorithm>

#include "app/look/theme.hpp"
#include "core/math/count.hpp"

// Qt asks for this outside of every namespace.
static void bringGuide() {
    Q_INIT_RESOURCE(guide);
}

namespace fayline::app {

std::vector<GuideTopic> guideTopics() {
    return {{"offsets.md", QObject::tr("Bring offsets in, begin a piece")},
            {"springback.md", QObject::tr("Choose strips, allow for springback")},
            {"holding.md", QObject::tr("Hold the stack; keys in the drawing")},
            {"glue_and_day.md", QObject::tr("Mix glue, plan the day")},
            {"stock.md", QObject::tr("Cut strips from boards, buy wood")},
            {"clock.md", QObject::tr("Glue up by the clock")},
            {"comparing.md", QObject::tr("Compare two states, two pieces")},
            {"my_shed.md", QObject::tr("Keep your own tools and glues")},
            {"project_file.md", QObject::tr("The project file, key by key")},
            {"printed_plan.md", QObject::tr("The printed plan, key by key")}};
}

std::vector<Sample> samples() {
    return {{"marram.fayline", QObject::tr("Marram: four pieces")},
            {"marram_in_place.fayline", QObject::tr("A false stem glued in place")},
            {"marram_misread.fayline", QObject::tr("A stem with a misread offset")}};
}

QByteArray builtIn(const QString& folder, const QString& file) {
    bringGuide();
    QFile in(QStringLiteral(":/%1/%2").arg(folder, file));
    return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray();
}

GuideDialog::GuideDialog(QWidget* parent)
    : QDialog(parent), topics_(new QListWidget(this)), page_(new QTextBrowser(this)) {
    setObjectName("guideDialog");
    setWindowTitle(tr("How to ..."));
    topics_->setObjectName("guideTopics");
    topics_->setAccessibleName(tr("Topics"));
    topics_->setFixedWidth(32 * gridStep);
    for (const GuideTopic& topic : guideTopics()) topics_->addItem(topic.title);
    page_->setObjectName("guidePage");
    page_->setAccessibleName(tr("The guide"));
    page_->setOpenLinks(false);
    page_->setFrameShape(QFrame::NoFrame);
    auto* across = new QHBoxLayout;
    across->setSpacing(2 * gridStep);
    across->addWidget(topics_);
    across->addWidget(page_, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(2 * gridStep, 2 * gridStep, 2 * gridStep, 2 * gridStep);
    column->addLayout(across, 1);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(topics_, &QListWidget::currentRowChanged, this, [this](int row) {
        if (row < 0) return;
        // Read before it is shown: else each block of a long page lays out all that stand before it anew.
        auto* read = new QTextDocument(page_);
        read->setDefaultFont(page_->font());
        read->setMarkdown(QString::fromUtf8(builtIn("guide", guideTopics().at(size_t(row)).page)));
        const QPointer<QTextDocument> last = page_->document();
        page_->setDocument(read);
        delete last;  // where the page has not
        page_->moveCursor(QTextCursor::Start);
    });
    connect(page_, &QTextBrowser::anchorClicked, this, &GuideDialog::follow);
    resize(976, 640);
    topics_->setCurrentRow(0);
}

void GuideDialog::open(const QString& page) {
    const std::vector<GuideTopic> all = guideTopics();
    const auto found = std::ranges::find(all, page, &GuideTopic::page);
    if (found != all.end()) topics_->setCurrentRow(int(found - all.begin()));
    show();
    raise();
    activateWindow();
}

void GuideDialog::follow(const QUrl& link) {
    open(link.fileName());
}

}  // namespace fayline::app
