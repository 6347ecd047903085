// The program: a window, or an answer on standard output that needs no display.
#include <QApplication>
#include <QDir>
#include <QFile>
#include <QSettings>
#include <QTimer>
#include <algorithm>
#include <cstdio>
#include <string>
#include <vector>

#include "app/look/icons.hpp"
#include "app/look/theme.hpp"
#include "app/paper/papers.hpp"
#include "app/window/main_window.hpp"
#include "core/export/print.hpp"
#include "core/glue/library_errors.hpp"
#include "core/io/file.hpp"

using namespace fayline;

namespace {

constexpr int wrong = 2;  // exit code for a file or option that will not do

constexpr const char* helpText =
    "Fayline plans glue-ups of curved timbers from thin strips.\n"
    "\n"
    "fayline [FILE]                     the window, with FILE open\n"
    "fayline --plan FILE                the plan of every piece as JSON on standard output\n"
    "fayline --plan-schema              what may stand in that JSON, as a JSON Schema\n"
    "fayline --summary FILE             the same in a few lines for a person; with --all every finding\n"
    "fayline --papers FILE --into DIR   every paper of every piece as PDF into DIR; prints their names\n"
    "fayline --help                     this text\n"
    "fayline --version                  the version\n"
    "\n"
    "Exit code 2 with one line on standard error for a file that cannot be read or is wrong.\n"
    "Only the window needs a display.\n";

enum class Task { window, plan, planSchema, summary, papers, help, version };

struct Asked {
    Task task = Task::window;
    std::string file;
    std::string into;
    bool all = false;  // of a summary: every finding, with why and where its limit comes from
};

// Text for a terminal: what a file names itself brings no control characters there but ends of lines.
std::string plain(std::string words) {
    const auto controls = [](char c) { return (static_cast<unsigned char>(c) < 0x20 && c != '\n') || c == 0x7f; };
    std::ranges::replace_if(words, controls, '?');
    for (size_t i = 0; (i = words.find("\xc2", i)) != std::string::npos; i += 2) {  // U+0080 to U+009F
        if (i + 1 < words.size() && static_cast<unsigned char>(words[i + 1]) < 0xa0) words.replace(i, 2, "??");
    }
    return words;
}

// One line of at most 300 characters on standard error.
int refuse(const std::string& why) {
    constexpr size_t longest = 300;
    std::string line = plain(why);
    std::ranges::replace(line, '\n', ' ');
    if (line.size() > longest) {
        size_t end = longest - 3;
        while (end > 0 && (static_cast<unsigned char>(line[end]) & 0xc0) == 0x80) --end;  // no letter is cut in two
        line.replace(end, std::string::npos, "...");
    }
    std::fprintf(stderr, "fayline: %s\n", line.c_str());
    return wrong;
}

// What the arguments ask for; throws std::runtime_error with a line for the user.
Asked readArguments(const std::vector<std::string>& arguments) {
    Asked asked;
    bool options = true;
    bool tasked = false;
    const auto takes = [&](Task task) {
        if (tasked) throw std::runtime_error("one thing at a time; fayline --help says what can be asked for");
        tasked = true;
        asked.task = task;
    };
    for (size_t i = 0; i < arguments.size(); ++i) {
        const std::string& argument = arguments[i];
        const auto value = [&](const char* what) {
            if (i + 1 == arguments.size()) throw std::runtime_error(argument + " wants " + what + " after it");
            return arguments[++i];
        };
        if (options && argument == "--") {
            options = false;
        } else if (options && argument == "--plan") {
            takes(Task::plan);
            asked.file = value("a file");
        } else if (options && argument == "--plan-schema") {
            takes(Task::planSchema);
        } else if (options && argument == "--summary") {
            takes(Task::summary);
            asked.file = value("a file");
        } else if (options && argument == "--papers") {
            takes(Task::papers);
            asked.file = value("a file");
        } else if (options && argument == "--all") {
            asked.all = true;
        } else if (options && argument == "--into") {
            asked.into = value("a folder");
        } else if (options && (argument == "--help" || argument == "-h")) {
            takes(Task::help);
        } else if (options && argument == "--version") {
            takes(Task::version);
        } else if (options && argument.size() > 1 && argument[0] == '-') {
            throw std::runtime_error(argument + " is not an option; fayline --help lists them");
        } else if (asked.file.empty()) {
            asked.file = argument;
        } else {
            throw std::runtime_error("one boat at a time: " + argument + " is one file too many");
        }
    }
    if (asked.task == Task::papers && asked.into.empty()) throw std::runtime_error("--papers wants --into DIR as well");
    if (asked.task != Task::summary && asked.all) throw std::runtime_error("--all goes with --summary only");
    if (asked.task != Task::papers && !asked.into.empty()) throw std::runtime_error("--into goes with --papers only");
    return asked;
}

// Standard output gets all or the program says that it did not.
int print(const std::string& text) {
    if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size() || std::fflush(stdout) != 0) {
        return refuse("standard output cannot be written");
    }
    return 0;
}

void nameProgram() {
    QCoreApplication::setApplicationName("fayline");
    QCoreApplication::setOrganizationName("fayline");
    QCoreApplication::setApplicationVersion(FAYLINE_VERSION);
    QGuiApplication::setDesktopFileName("fayline");
}

bool displayIsNamed() {
    return !qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM") || !qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY") ||
           !qEnvironmentVariableIsEmpty("DISPLAY");
}

int writePapers(const Asked& asked, int argc, char** argv) {
    // The boat is read first, so that a bad file costs nothing.
    const model::Boat boat = io::loadBoat(std::filesystem::path(asked.file));
    qputenv("QT_QPA_PLATFORM", "offscreen");  // fonts and painting, no display
    // What Qt would say of the desktop that is not there is no concern of whoever reads standard error.
    qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString&) {});
    const QGuiApplication application(argc, argv);
    nameProgram();
    const QString into = QFile::decodeName(asked.into.c_str());
    if (QFile::encodeName(into) != asked.into.c_str()) {
        return refuse("the folder's name " + asked.into + " is not written in UTF-8; give --into another folder");
    }
    std::string names;
    for (const QString& name : app::writePapers(boat, into, app::defaultPageLayout())) {
        names += name.toStdString() + "\n";
    }
    return print(names);
}

constexpr const char* noDisplay = "there is no display for the window; --plan, --summary and --papers need none";

// Qt ends the program itself when it finds no display: then one line of ours, not its own.
void sayNoDisplay(QtMsgType type, const QMessageLogContext&, const QString&) {
    if (type == QtFatalMsg) std::_Exit(refuse(noDisplay));
}

app::Ground rememberedGround() {
    const QString word = QSettings().value("ground", "desktop").toString();
    return word == "paper" ? app::Ground::paper : word == "slate" ? app::Ground::slate : app::Ground::desktop;
}

int openWindow(const Asked& asked, int argc, char** argv) {
    if (!displayIsNamed()) return refuse(noDisplay);
    const QtMessageHandler usual = qInstallMessageHandler(sayNoDisplay);
    QApplication application(argc, argv);
    qInstallMessageHandler(usual);
    nameProgram();
    app::applyGround(rememberedGround());
    QApplication::setWindowIcon(app::programIcon());
    app::MainWindow window;
    window.show();
    QTimer::singleShot(0, &window, [&window, &asked] {
        if (!asked.file.empty()) window.openFile(QString::fromLocal8Bit(asked.file));
        window.offerLeftBehind();
        window.offerLeftDay();
        window.tellOfShed();
    });
    return QApplication::exec();
}

int run(const Asked& asked, int argc, char** argv) {
    switch (asked.task) {
        case Task::help:
            return print(helpText);
        case Task::planSchema:
            return print(plan::printedPlanSchema());
        case Task::version:
            return print("fayline " FAYLINE_VERSION "\n");
        case Task::plan:
            return print(plan::printPlans(io::loadBoat(std::filesystem::path(asked.file))));
        case Task::summary:
            return print(plain(plan::summarizePlans(io::loadBoat(std::filesystem::path(asked.file)), asked.all)));
        case Task::papers:
            return writePapers(asked, argc, argv);
        case Task::window:
            break;
    }
    return openWindow(asked, argc, argv);
}

}  // namespace

int main(int argc, char** argv) {
    glue::letLibraryReturnErrors();  // before any thread
    try {
        return run(readArguments({argv + 1, argv + argc}), argc, argv);
    } catch (const std::exception& error) {
        return refuse(error.what());
    }
}
