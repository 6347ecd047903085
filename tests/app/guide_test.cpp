// Help: every page of the guide opens by its topic, and every sample as a boat that was never saved.
#include <QDir>
#include <QListWidget>
#include <QSettings>
#include <QTest>
#include <QTextBlock>
#include <QTextBrowser>
#include <set>

#include "app/window/guide_dialog.hpp"
#include "core/io/file.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

class GuideTest : public QObject {
    Q_OBJECT

public:
    static void initMain() { useHomeOfItsOwn(); }

private slots:
    void init() { QSettings().clear(); }

    void everyPageIsATopicAndEveryTopicOpens() {
        std::set<QString> pages;
        for (const QString& page : QDir(QString(FAYLINE_SAMPLES) + "/../resources/guide").entryList({"*.md"}))
            pages.insert(page);
        Bench bench;
        bench.action("guide")->trigger();
        auto* dialog = bench.find<GuideDialog>();
        QVERIFY(dialog && dialog->isVisible());
        auto* topics = dialog->findChild<QListWidget*>("guideTopics");
        auto* page = dialog->findChild<QTextBrowser*>("guidePage");
        QCOMPARE(topics->count(), int(pages.size()));
        std::set<QString> seen;
        for (int i = 0; i < topics->count(); ++i) {
            const QString file = guideTopics()[size_t(i)].page;
            QVERIFY2(pages.contains(file), qPrintable(file));
            topics->setCurrentRow(i);
            // Its first line is its heading, and no sign of the markup is left in it.
            QFile in(QString(FAYLINE_SAMPLES) + "/../resources/guide/" + file);
            QVERIFY(in.open(QIODevice::ReadOnly));
            const QString heading = QString::fromUtf8(in.readLine()).mid(2).trimmed();
            QCOMPARE(page->document()->firstBlock().text(), heading);
            QVERIFY(page->toPlainText().size() > 500);
            seen.insert(heading);
        }
        QCOMPARE(seen.size(), pages.size());
    }

    void aLinkInAPageOpensItsTopic() {
        Bench bench;
        bench.action("guide")->trigger();
        auto* dialog = bench.find<GuideDialog>();
        emit dialog->findChild<QTextBrowser*>("guidePage")->anchorClicked(QUrl("my_shed.md"));
        QVERIFY(dialog->findChild<QTextBrowser*>("guidePage")->toPlainText().startsWith("My shed"));
    }

    void everySampleOpensAsABoatThatWasNeverSaved() {
        Bench bench{QString()};
        QCOMPARE(samples().size(), 3u);
        for (const Sample& sample : samples()) {
            bench.action("sample_" + QString(sample.file).remove(".fayline"))->trigger();
            QVERIFY(bench.settle());
            const model::Boat file = io::loadBoat((QString(FAYLINE_SAMPLES) + "/" + sample.file).toStdString());
            QCOMPARE(bench.document().boat().pieces.size(), file.pieces.size());
            QVERIFY(bench.piece().line == file.pieces[0].line);
            QVERIFY(bench.piece().holding == file.pieces[0].holding);
            QVERIFY(bench.document().boat().display == file.display);
            QVERIFY(bench.document().fileName().isEmpty());
            QVERIFY(!bench.window.isWindowModified());
        }
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, GuideTest>(argc, argv);
}
#include "guide_test.moc"
