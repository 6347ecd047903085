#include "core/schedule/day_log.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <time.h>

#include <array>
#include <bit>
#include <cerrno>
#include <charconv>
#include <cstdint>
#include <cstdio>
#include <fstream>
#include <optional>
#include <sstream>
#include <system_error>

#include "core/units/day_text.hpp"
#include "core/units/input_error.hpp"

namespace fayline::schedule {

using units::InputError;

namespace {

constexpr std::string_view firstWord = "fayline_day_1";
constexpr double wallMayDiffer_s = 60;

std::uint32_t shifted(std::uint32_t value) {
    for (int bit = 0; bit < 8; ++bit) value = (value >> 1) ^ ((value & 1u) ? 0xEDB88320u : 0u);
    return value;
}

// The usual 32-bit cyclic redundancy check (polynomial 0xEDB88320 reflected).
std::uint32_t checksum(std::string_view text) {
    std::uint32_t value = 0xFFFFFFFFu;
    for (const char c : text) {
        value = shifted(value ^ static_cast<unsigned char>(c));
    }
    return ~value;
}

std::string number(double value) {
    std::array<char, 40> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value).ptr;
    return {text.data(), end};
}

// With its checksum in front and its end behind.
std::string lineOf(const std::string& words) {
    std::array<char, 16> sum{};
    std::snprintf(sum.data(), sum.size(), "%08x ", checksum(words));
    return sum.data() + words + "\n";
}

std::string escaped(std::string_view text) {
    std::string one;
    for (const char c : text) {
        if (c == '\\') {
            one += "\\\\";
        } else if (c == '\n') {
            one += "\\n";
        } else {
            one += c;
        }
    }
    return one;
}

std::string unescaped(std::string_view text) {
    std::string one;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '\\' && i + 1 < text.size()) {
            ++i;
            one += text[i] == 'n' ? '\n' : text[i];
        } else {
            one += text[i];
        }
    }
    return one;
}

// What stands behind a line's checksum; nothing where that does not fit.
std::optional<std::string_view> wordsOf(std::string_view line) {
    constexpr std::size_t digits = 8;
    if (line.size() < digits + 1 || line[digits] != ' ') return std::nullopt;
    std::uint32_t sum = 0;
    const auto read = std::from_chars(line.data(), line.data() + digits, sum, 16);
    if (read.ec != std::errc() || read.ptr != line.data() + digits) return std::nullopt;
    const std::string_view words = line.substr(digits + 1);
    return checksum(words) == sum ? std::optional(words) : std::nullopt;
}

// The words of a line in which one bit is wrong. A wrong bit changes the checksum by a pattern of its place alone
// (the check is linear), so the place follows from what the checksum is off by; or the wrong bit lies in the checksum
// as it is written. A line that is damaged otherwise looks like this one time in 2^32 for each of its bits.
std::optional<std::string> mendedWords(std::string_view line) {
    constexpr std::size_t front = 9;
    if (line.size() < front) return std::nullopt;
    std::string words(line.substr(front));
    const std::string right = lineOf(words).substr(0, front);
    int wrongBits = 0;
    for (std::size_t i = 0; i < front; ++i) {
        wrongBits += std::popcount(
            static_cast<unsigned char>(static_cast<unsigned char>(right[i]) ^ static_cast<unsigned char>(line[i])));
    }
    if (wrongBits == 1) return words;
    std::uint32_t said = 0;
    const auto read = std::from_chars(line.data(), line.data() + front - 1, said, 16);
    if (read.ec != std::errc() || read.ptr != line.data() + front - 1 || line[front - 1] != ' ') return std::nullopt;
    const std::uint32_t off = said ^ checksum(words);
    std::array<std::uint32_t, 8> patterns{};
    for (unsigned bit = 0; bit < 8; ++bit) patterns[bit] = shifted(1u << bit);
    for (std::size_t i = words.size(); i-- > 0;) {
        for (unsigned bit = 0; bit < 8; ++bit) {
            if (patterns[bit] == off) {
                words[i] = static_cast<char>(static_cast<unsigned char>(words[i]) ^ (1u << bit));
                return words;
            }
            patterns[bit] = shifted(patterns[bit]);
        }
    }
    return std::nullopt;
}

std::string writeEvent(const Event& event, const Clocks& clocks) {
    return std::string(eventWord(event.kind)) + " " + number(event.at_s) + " " + clocks.boot + " " +
           number(clocks.up_s) + " " + number(clocks.wall_s) + " " + std::to_string(event.task) + " " +
           std::to_string(event.strip) + " " + number(event.air_C);
}

std::optional<LogLine> readEvent(std::string_view words) {
    std::istringstream text{std::string(words)};
    std::string kind;
    std::string at;
    std::string up;
    std::string wall;
    std::string air;
    LogLine line;
    text >> kind >> at >> line.clocks.boot >> up >> wall >> line.event.task >> line.event.strip >> air;
    const std::optional<EventKind> known = eventOfWord(kind);
    if (!text || !known) return std::nullopt;
    line.event.kind = *known;
    const auto take = [](const std::string& from, double& into) {
        return std::from_chars(from.data(), from.data() + from.size(), into).ec == std::errc();
    };
    if (!take(at, line.event.at_s) || !take(up, line.clocks.up_s) || !take(wall, line.clocks.wall_s) ||
        !take(air, line.event.air_C)) {
        return std::nullopt;
    }
    return line;
}

[[noreturn]] void refuse(const std::filesystem::path& path, const char* what, int error) {
    throw InputError(
        "", "the day's log " + path.string() + " could not be " + what + ": " + std::generic_category().message(error),
        "make room on the disk and see that you may write there");
}

double secondsOf(clockid_t clock) {
    timespec time{};
    ::clock_gettime(clock, &time);
    return static_cast<double>(time.tv_sec) + 1e-9 * static_cast<double>(time.tv_nsec);
}

// The file's name reaches the disk only with its folder.
void flushFolder(const std::filesystem::path& path) {
    const std::filesystem::path folder = path.has_parent_path() ? path.parent_path() : ".";
    const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0) return;
    ::fsync(descriptor);
    ::close(descriptor);
}

std::string textOf(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    if (!file) refuse(path, "read", errno ? errno : ENOENT);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

}  // namespace

Clocks readClocks() {
    Clocks clocks;
    std::ifstream("/proc/sys/kernel/random/boot_id") >> clocks.boot;
    if (clocks.boot.empty()) clocks.boot = "unknown";
    clocks.up_s = secondsOf(CLOCK_BOOTTIME);
    clocks.wall_s = secondsOf(CLOCK_REALTIME);
    return clocks;
}

DayLog readDayLog(std::string_view text) {
    DayLog log;
    int badInARow = 0;
    bool first = true;
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        const bool whole = end != std::string_view::npos;
        const std::string_view line = text.substr(0, end);
        text = whole ? text.substr(end + 1) : std::string_view();
        const std::optional<std::string_view> words = whole ? wordsOf(line) : std::nullopt;
        if (first) {
            first = false;
            const std::optional<std::string> mended = words ? std::nullopt : mendedWords(line);
            const std::string_view of = words ? *words : mended ? std::string_view(*mended) : std::string_view();
            log.aboutLost = !of.starts_with(firstWord);
            log.aboutMended = mended.has_value() && !log.aboutLost;
            if (!log.aboutLost) log.about = unescaped(of.substr(std::min(of.size(), firstWord.size() + 1)));
            continue;
        }
        const std::optional<LogLine> read = words ? readEvent(*words) : std::nullopt;
        if (!read) {
            ++badInARow;
            continue;
        }
        log.damaged += badInARow;
        badInARow = 0;
        log.lines.push_back(*read);
    }
    if (first) {
        throw InputError("", "this log of a day is empty", "give a log that the clock has written");
    }
    if (log.aboutLost && log.lines.empty()) {
        throw InputError("", "this is not the log of a day", "give a log that the clock has written");
    }
    // Only the last can have been torn by the end of the program.
    log.torn = badInARow > 0;
    if (badInARow > 1) log.damaged += badInARow - 1;
    return log;
}

DayLog loadDayLog(const std::filesystem::path& path) {
    return readDayLog(textOf(path));
}

DayTime dayTimeAt(const LogLine& last, const Clocks& now) {
    if (now.boot == last.clocks.boot && now.boot != "unknown" && now.up_s >= last.clocks.up_s) {
        return {last.event.at_s + now.up_s - last.clocks.up_s, ""};
    }
    const double byWall_s = now.wall_s - last.clocks.wall_s;
    DayTime time{last.event.at_s + std::max(byWall_s, now.up_s), ""};
    if (byWall_s < 0) {
        time.said = "The wall clock stands " + units::writeDuration(-byWall_s) +
                    " before the last entry of the day: it was set back, or lost its time with the power. The machine "
                    "has run for " +
                    units::writeDuration(now.up_s) +
                    " since it was started, and so much is counted; the true time may be longer. Look at the glue "
                    "before you trust it.";
    } else if (byWall_s < now.up_s - wallMayDiffer_s) {
        time.said = "The wall clock says that " + units::writeDuration(byWall_s) +
                    " have passed since the last entry of the day, but the machine has run for " +
                    units::writeDuration(now.up_s) + " already; so much is counted.";
    } else {
        time.said = "The machine was started anew: by the wall clock " + units::writeDuration(byWall_s) +
                    " have passed since the last entry of the day.";
    }
    return time;
}

double wallMovedSince(const LogLine& line, const Clocks& now) {
    if (now.boot != line.clocks.boot) return 0;
    return (now.wall_s - line.clocks.wall_s) - (now.up_s - line.clocks.up_s);
}

DayLogWriter DayLogWriter::begin(const std::filesystem::path& path, std::string_view about, const Clocks& clocks,
                                 Flush flush) {
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_APPEND | O_CLOEXEC, 0600);
    if (file < 0) refuse(path, "written", errno);
    DayLogWriter writer(path, file, flush);
    try {
        writer.write(lineOf(std::string(firstWord) + " " + escaped(about)));
        writer.append({EventKind::started, 0}, clocks);
    } catch (const InputError&) {
        ::unlink(path.c_str());  // of a day that was not begun nothing stays
        throw;
    }
    flushFolder(path);
    return writer;
}

DayLogWriter DayLogWriter::goOn(const std::filesystem::path& path, Flush flush) {
    const std::string text = textOf(path);
    const DayLog log = readDayLog(text);
    const int file = ::open(path.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC);
    if (file < 0) refuse(path, "written", errno);
    DayLogWriter writer(path, file, flush);
    // A torn line would swallow the next one.
    const std::size_t whole = text.rfind('\n') + 1;
    if (log.torn && whole < text.size() && (::ftruncate(file, static_cast<off_t>(whole)) != 0 || ::fsync(file) != 0)) {
        refuse(path, "mended", errno);
    }
    return writer;
}

DayLogWriter::DayLogWriter(DayLogWriter&& other) noexcept
    : path_(std::move(other.path_)), file_(other.file_), flush_(other.flush_) {
    other.file_ = -1;
}

DayLogWriter& DayLogWriter::operator=(DayLogWriter&& other) noexcept {
    std::swap(path_, other.path_);
    std::swap(file_, other.file_);
    std::swap(flush_, other.flush_);
    return *this;
}

DayLogWriter::~DayLogWriter() {
    if (file_ >= 0) ::close(file_);
}

void DayLogWriter::append(const Event& event, const Clocks& clocks) {
    write(lineOf(writeEvent(event, clocks)));
}

void DayLogWriter::write(const std::string& line) {
    struct stat before {};
    if (::fstat(file_, &before) != 0) refuse(path_, "written", errno);
    // Whoever reads it finds lines only that were acknowledged.
    const auto takeBack = [&](const char* what, int error) {
        if (::ftruncate(file_, before.st_size) != 0) refuse(path_, "mended", errno);
        refuse(path_, what, error);
    };
    std::string_view left = line;
    while (!left.empty()) {
        const ssize_t written = ::write(file_, left.data(), left.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) takeBack("written", errno);
        left.remove_prefix(static_cast<std::size_t>(written));
    }
    if (flush_(file_) != 0) takeBack("flushed to the disk", errno);
}

}  // namespace fayline::schedule
