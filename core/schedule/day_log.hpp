// The log of a day: a file that events are added to as they are said, so that a crash or a power cut loses none.
//
// A line of text each, with a checksum; the first says what the day is about. A line counts once it is flushed to the
// disk: append() returns then, and an event is shown as taken only after that. On reading, a last line that is torn is
// passed over; a damaged line before others is passed over too and told.
//
// Each line has three clocks: seconds of the day, seconds since the machine started (they go on while it sleeps and
// never jump) with the name of that start, and the wall clock. After a crash the second says how long it is since;
// after a power cut only the wall clock does, and where that stands before the last line, that is told.
// Linux and POSIX.
#pragma once

#include <unistd.h>

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "core/schedule/day.hpp"

namespace fayline::schedule {

// The machine's clocks.
struct Clocks {
    std::string boot;   // a name that each start of the machine has for itself
    double up_s = 0;    // since then, asleep or not
    double wall_s = 0;  // since 1970
};
Clocks readClocks();

struct LogLine {
    Event event;
    Clocks clocks;
};

struct DayLog {
    std::string about;         // what append's caller gave when the log was begun; empty where that is lost
    bool aboutMended = false;  // one wrong bit of the first line was found by its checksum and put right
    bool aboutLost = false;    // the first line cannot be read; the events can
    std::vector<LogLine> lines;
    int damaged = 0;    // lines of events that could not be read, but for a torn last one
    bool torn = false;  // the last line was not written whole
};

// The text of a log as it stands on the disk. Throws InputError for what is no log: neither its first line nor any
// event can be read.
DayLog readDayLog(std::string_view text);
DayLog loadDayLog(const std::filesystem::path& path);

// The day's time at `now`, from the last line that was written.
struct DayTime {
    double at_s = 0;
    std::string said;  // what the user should know of it in a full sentence; empty: nothing
};
//   (1) on the same start of the machine: exact
//   (2) after another start: by the wall clock, but no less than the machine has been up
DayTime dayTimeAt(const LogLine& last, const Clocks& now);

// How far the wall clock has been moved since the line was written, on the same start; 0 after another.
double wallMovedSince(const LogLine& line, const Clocks& now);

// A log open for adding to; nobody else may have it open.
class DayLogWriter {
public:
    // Brings what was written to the disk: 0, or -1 with errno. The system's own but in tests.
    using Flush = int (*)(int file);

    // A new log at `path`, which must not be there yet, that says what the day is `about` (any text).
    // Throws InputError with an empty path when it cannot be written.
    static DayLogWriter begin(const std::filesystem::path& path, std::string_view about, const Clocks& clocks,
                              Flush flush = ::fdatasync);
    // One that is there: what is torn at its end is taken off. Throws likewise.
    static DayLogWriter goOn(const std::filesystem::path& path, Flush flush = ::fdatasync);

    DayLogWriter(DayLogWriter&& other) noexcept;
    DayLogWriter& operator=(DayLogWriter&& other) noexcept;
    ~DayLogWriter();

    // On the disk when it returns. Throws InputError when that fails; the file is then as it was before.
    void append(const Event& event, const Clocks& clocks);

private:
    DayLogWriter(std::filesystem::path path, int file, Flush flush)
        : path_(std::move(path)), file_(file), flush_(flush) {}
    void write(const std::string& line);

    std::filesystem::path path_;
    int file_ = -1;
    Flush flush_;
};

}  // namespace fayline::schedule
