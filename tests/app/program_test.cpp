// The built program from a shell: answers on standard output, refusals in one line, no display but for the window.
#include <QDir>
#include <QFile>
#include <QProcess>
#include <QTemporaryDir>
#include <QTest>
#include <nlohmann/json.hpp>

#include "tests/app/patience.hpp"

namespace {

struct Ran {
    int code = -1;
    QByteArray out;
    QByteArray err;
};

// Without any display, and with a home of its own.
Ran run(const QStringList& arguments, const QString& home = QDir::tempPath()) {
    QProcess program;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}) environment.remove(name);
    environment.insert("XDG_CONFIG_HOME", home + "/config");
    environment.insert("XDG_DATA_HOME", home + "/data");
    program.setProcessEnvironment(environment);
    program.start(FAYLINE_PROGRAM, arguments);
    if (!program.waitForFinished(fayline::test::patience_ms) || program.exitStatus() != QProcess::NormalExit) return {};
    return {program.exitCode(), program.readAllStandardOutput(), program.readAllStandardError()};
}

bool isOneLine(const QByteArray& text) {
    return text.count('\n') == 1 && text.endsWith('\n') && text.size() > 12;
}

bool write(const QString& path, const QByteArray& text) {
    QFile file(path);
    return file.open(QIODevice::WriteOnly) && file.write(text) == text.size();
}

QStringList samples() {
    QStringList paths;
    for (const QFileInfo& info : QDir(FAYLINE_SAMPLES).entryInfoList({"*.fayline"})) paths << info.filePath();
    return paths;
}

// The sample that is planned soonest.
const QString small = FAYLINE_SAMPLES "/minimal.fayline";

// The windowed program on the offscreen platform, told what to do from outside by signals alone.
QProcessEnvironment offscreen(const QString& home) {
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert("QT_QPA_PLATFORM", "offscreen");
    environment.insert("XDG_CONFIG_HOME", home + "/config");
    environment.insert("XDG_DATA_HOME", home + "/data");
    return environment;
}

}  // namespace

class ProgramTest : public QObject {
    Q_OBJECT

private slots:
    void plansEverySample() {
        QVERIFY(samples().size() >= 3);
        for (const QString& sample : samples()) {
            const Ran ran = run({"--plan", sample});
            QVERIFY2(ran.code == 0, qPrintable(sample + ": " + ran.err));
            QVERIFY(ran.err.isEmpty());
            const auto plan = nlohmann::json::parse(ran.out.toStdString());
            QCOMPARE(plan.at("fayline_plan").get<int>(), 1);
            QVERIFY(!plan.at("pieces").empty());
            for (const auto& piece : plan.at("pieces")) {
                QVERIFY(piece.at("line").at("length_mm").get<double>() > 0);
                QVERIFY(!piece.at("stack").at("strips").empty());
            }
            QCOMPARE(run({"--plan", sample}).out, ran.out);  // the same input gives the same bits
        }
    }

    void summarizesEverySample() {
        for (const QString& sample : samples()) {
            const Ran ran = run({"--summary", sample});
            QCOMPARE(ran.code, 0);
            QVERIFY(ran.out.count('\n') > 3);
            QVERIFY(run({"--summary", sample, "--all"}).out.size() > ran.out.size());
        }
    }

    void writesPapersWithoutADisplay() {
        const QTemporaryDir folder;
        const QString into = folder.filePath("papers/of/the/boat");
        const Ran ran = run({"--papers", samples().constFirst(), "--into", into});
        QVERIFY2(ran.code == 0, ran.err);
        const QList<QByteArray> names = ran.out.trimmed().split('\n');
        QVERIFY(names.size() >= 4);
        for (const QByteArray& name : names) {
            const QString path = QDir(into).filePath(QString::fromUtf8(name));  // absolute names stay
            QFile file(path);
            QVERIFY2(file.open(QIODevice::ReadOnly), qPrintable(path));
            QVERIFY(file.read(5) == "%PDF-");
        }
    }

    void refusesABadFileInOneLine_data() {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QString>("says");
        QTest::newRow("no JSON") << QByteArray("2-3-4\n\n\n") << "";
        QTest::newRow("newer") << QByteArray("{\"fayline\": 2}") << "fayline";
        QTest::newRow("no points") << QByteArray(R"({"fayline": 1, "pieces": [{"name": "Stem"}]})") << "pieces[0].line";
        QTest::newRow("thickness") << QByteArray(R"({"fayline": 1, "pieces": [{"name": "Stem", "line": {"points":
            [{"x_mm": 0, "y_mm": 0}, {"x_mm": 500, "y_mm": 100}, {"x_mm": 1000, "y_mm": 0}]},
            "stack": {"strips": [{"thickness_mm": -6}]}}]})")
                                   << "pieces[0].stack.strips[0].thickness_mm";
        QTest::newRow("doubled point") << QByteArray(R"({"fayline": 1, "pieces": [{"name": "Stem", "line": {"points":
            [{"x_mm": 0, "y_mm": 0}, {"x_mm": 0, "y_mm": 0}, {"x_mm": 1000, "y_mm": 0}]}}]})")
                                       << "pieces[0].line.points";
        QTest::newRow("line break in a name")
            << QByteArray("{\"fayline\": 1, \"pieces\": [{\"name\": \"a\\nb\", \"line\": 3}]}") << "pieces[0].line";
    }
    void refusesABadFileInOneLine() {
        QFETCH(QByteArray, text);
        QFETCH(QString, says);
        const QTemporaryDir folder;
        const QString path = folder.filePath("bad.fayline");
        QVERIFY(write(path, text));
        for (const QStringList& arguments :
             {QStringList{"--plan", path}, {"--summary", path}, {"--papers", path, "--into", folder.filePath("out")}}) {
            const Ran ran = run(arguments);
            QCOMPARE(ran.code, 2);
            QVERIFY2(isOneLine(ran.err), ran.err);
            QVERIFY2(ran.err.contains(says.toUtf8()), ran.err);
            QVERIFY(ran.out.isEmpty());
        }
    }

    void whatAFileNamesBringsNoControlsToATerminal() {
        const QTemporaryDir folder;
        QFile sample(small);
        QVERIFY(sample.open(QIODevice::ReadOnly));
        QByteArray text = sample.readAll();
        const qsizetype name = text.indexOf("\"name\": \"") + 9;
        QVERIFY(name > 9);
        text.insert(name, "\\u001b[31mred\\u0085\\u007f\u00a0");
        QVERIFY(write(folder.filePath("red.fayline"), text));
        const Ran ran = run({"--summary", folder.filePath("red.fayline"), "--all"});
        QCOMPARE(ran.code, 0);
        QVERIFY2(ran.out.contains("?[31mred???\u00a0"), ran.out);
        for (const char c : ran.out) QVERIFY(c == '\n' || static_cast<unsigned char>(c) >= 0x20);

        // Nor does a refusal, which stays short.
        const Ran refused = run({"--plan", "/no/\x1b[31m" + QString(3000, QChar(0xe9))});
        QCOMPARE(refused.code, 2);
        QVERIFY2(isOneLine(refused.err), refused.err);
        QVERIFY(refused.err.size() <= qsizetype(sizeof "fayline: ") + 300);
        QVERIFY(!refused.err.contains('\x1b'));
        QVERIFY(QString::fromUtf8(refused.err).toUtf8() == refused.err);
    }

    void refusesAFolderWhoseNameIsNoText() {
        const QTemporaryDir folder;
        QProcess shell;
        shell.start("sh", {"-c", R"sh(exec "$0" --papers "$1" --into "$2/$(printf 'a\377')" 2>&1)sh", FAYLINE_PROGRAM,
                           small, folder.path()});
        QVERIFY(shell.waitForFinished(fayline::test::patience_ms));
        const QByteArray said = shell.readAllStandardOutput();
        QCOMPARE(shell.exitCode(), 2);
        QVERIFY2(isOneLine(said) && said.contains("UTF-8"), said);
        QVERIFY(QDir(folder.path()).isEmpty());
    }

    void refusesWrongOptionsInOneLine_data() {
        QTest::addColumn<QStringList>("arguments");
        QTest::newRow("unknown") << QStringList{"--plans", "a"};
        QTest::newRow("short") << QStringList{"-x"};
        QTest::newRow("no file") << QStringList{"--plan"};
        QTest::newRow("no folder") << QStringList{"--papers", "a"};
        QTest::newRow("folder without papers") << QStringList{"--into", "b"};
        QTest::newRow("two things") << QStringList{"--plan", "a", "--summary", "a"};
        QTest::newRow("two files") << QStringList{"a", "b"};
        QTest::newRow("missing file") << QStringList{"--plan", "/no/such.fayline"};
        QTest::newRow("a folder") << QStringList{"--plan", QDir::tempPath()};
    }
    void refusesWrongOptionsInOneLine() {
        QFETCH(QStringList, arguments);
        const Ran ran = run(arguments);
        QCOMPARE(ran.code, 2);
        QVERIFY2(isOneLine(ran.err), ran.err);
        QVERIFY(ran.out.isEmpty());
    }

    void saysWhatItCanDo() {
        const Ran help = run({"--help"});
        QCOMPARE(help.code, 0);
        for (const char* option : {"--plan", "--plan-schema", "--summary", "--papers", "--into", "--version"}) {
            QVERIFY(help.out.contains(option));
        }
        const Ran schema = run({"--plan-schema"});
        QCOMPARE(schema.code, 0);
        QVERIFY(nlohmann::json::parse(schema.out.toStdString()).at("properties").contains("pieces"));
        const Ran version = run({"--version"});
        QCOMPARE(version.code, 0);
        QVERIFY(version.out.startsWith("fayline "));
    }

    void saysInOneLineThatThereIsNoDisplay() {
        const Ran none = run({});
        QCOMPARE(none.code, 2);
        QVERIFY2(isOneLine(none.err) && none.err.contains("display"), none.err);

        QProcess program;
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.remove("WAYLAND_DISPLAY");
        environment.remove("QT_QPA_PLATFORM");
        environment.insert("DISPLAY", ":4711");  // named, but nobody is there
        program.setProcessEnvironment(environment);
        program.start(FAYLINE_PROGRAM, QStringList());
        QVERIFY(program.waitForFinished(fayline::test::patience_ms));
        QCOMPARE(program.exitStatus(), QProcess::NormalExit);
        QCOMPARE(program.exitCode(), 2);
        const QByteArray err = program.readAllStandardError();
        QVERIFY2(isOneLine(err) && err.contains("display"), err);
    }

    void tellsWhenStandardOutputIsFull() {
        QProcess program;
        program.setStandardOutputFile("/dev/full");
        program.start(FAYLINE_PROGRAM, {"--plan", small});
        QVERIFY(program.waitForFinished(fayline::test::patience_ms));
        QCOMPARE(program.exitCode(), 2);
    }

    void opensItsWindowAndEndsWhenTold() {
        const QTemporaryDir home;
        QProcess program;
        program.setProcessEnvironment(offscreen(home.path()));
        program.start(FAYLINE_PROGRAM, {small});
        QVERIFY(program.waitForStarted(fayline::test::patience_ms));
        // It remembers what it has opened.
        const auto hasOpened = [&home] {
            QFile settings(home.filePath("config/fayline/fayline.conf"));
            return settings.open(QIODevice::ReadOnly) && settings.readAll().contains("minimal.fayline");
        };
        SOON_VERIFY(program.state() != QProcess::Running || hasOpened());
        QVERIFY2(program.state() == QProcess::Running, program.readAllStandardError());
        program.terminate();
        QVERIFY(program.waitForFinished(fayline::test::patience_ms));
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QCoreApplication, ProgramTest>(argc, argv);
}
#include "program_test.moc"
