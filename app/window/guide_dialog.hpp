// The guide by topics, and the sample boats: both are built into the program.
#pragma once

#include <QDialog>
#include <QString>
#include <vector>

class QListWidget;
class QTextBrowser;
class QUrl;

namespace fayline::app {

// What can be looked up, in the order of the job: a page of resources/guide and what it tells.
struct GuideTopic {
    QString page;  // "offsets.md"
    QString title;
};
std::vector<GuideTopic> guideTopics();

struct Sample {
    QString file;  // "marram.fayline"
    QString title;
};
std::vector<Sample> samples();

// The text of a page or sample as it was built in; folder is "guide" or "samples".
QByteArray builtIn(const QString& folder, const QString& file);

class GuideDialog : public QDialog {
    Q_OBJECT
public:
    explicit GuideDialog(QWidget* parent);
    void open(const QString& page);

private:
    void follow(const QUrl& link);

    QListWidget* topics_;
    QTextBrowser* page_;
};

}  // namespace fayline::app
