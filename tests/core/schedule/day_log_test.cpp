// The log of a day: killed at random moments, torn at every byte, started on another day.
#include "core/schedule/day_log.hpp"

#include <gtest/gtest.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>
#include <random>
#include <sstream>
#include <thread>

#include "core/math/count.hpp"
#include "core/units/input_error.hpp"
#include "tests/temporary_folder.hpp"

namespace fayline::schedule {
namespace day_log_test {

using made::TemporaryFolder;

std::string read(const std::filesystem::path& path) {
    std::ostringstream text;
    text << std::ifstream(path, std::ios::binary).rdbuf();
    return text.str();
}

void write(const std::filesystem::path& path, const std::string& text) {
    std::ofstream(path, std::ios::binary) << text;
}

const Clocks morning{"first-start", 1000, 1.79e9};

// The n-th event of a made day, so that whoever reads it knows what it must be.
Event eventOf(int n) {
    return {.kind = n % 7 == 3   ? EventKind::airTyped
                    : n % 5 == 4 ? EventKind::undone
                                 : EventKind::done,
            .at_s = 0.1 + n * 1.7,
            .task = n,
            .air_C = n % 7 == 3 ? 15 + 0.1 * n : 0};
}

TEST(DayLog, WhatIsWrittenComesBackToTheBit) {
    const TemporaryFolder folder;
    const std::string about = "{\n  \"fayline\": 1, \"name\": \"Stem \\\\ \\n\"\n}\n";
    {
        DayLogWriter writer = DayLogWriter::begin(folder.file("a"), about, morning);
        for (int n = 0; n < 50; ++n) writer.append(eventOf(n), {morning.boot, 1000 + n / 3.0, 1.79e9 + n / 3.0});
    }
    const DayLog log = loadDayLog(folder.file("a"));
    EXPECT_EQ(log.about, about);
    EXPECT_FALSE(log.torn);
    EXPECT_EQ(log.damaged, 0);
    ASSERT_EQ(log.lines.size(), 51u);
    EXPECT_EQ(log.lines[0].event, (Event{EventKind::started, 0}));
    for (int n = 0; n < 50; ++n) {
        EXPECT_EQ(log.lines[n + 1].event, eventOf(n));
        EXPECT_EQ(log.lines[n + 1].clocks.wall_s, 1.79e9 + n / 3.0);
    }
}

// The child writes and acknowledges event after event through a pipe until it is killed; what came through the pipe
// must be in the log, in order, and the day's time go on as if nothing had happened.
TEST(DayLog, KilledAtRandomMomentsItLosesNothingThatWasAcknowledged) {
    const TemporaryFolder folder;
    std::mt19937 random(7);
    std::uniform_int_distribution<int> waitsFor(0, 6);  // so many are acknowledged, then a little longer
    std::uniform_int_distribution<int> microseconds(0, 4'000);
    int acknowledgedInAll = 0;
    for (int round = 0; round < 200; ++round) {
        const std::filesystem::path path = folder.file(std::to_string(round));
        DayLogWriter::begin(path, "about", readClocks());
        const double zero_s = loadDayLog(path).lines[0].clocks.up_s;
        int ends[2];
        ASSERT_EQ(::pipe(ends), 0);
        const pid_t child = ::fork();
        ASSERT_GE(child, 0);
        if (child == 0) {
            ::close(ends[0]);
            try {
                DayLogWriter writer = DayLogWriter::goOn(path);
                for (int n = 0;; ++n) {
                    Event event = eventOf(n);
                    const Clocks clocks = readClocks();
                    event.at_s = clocks.up_s - zero_s;
                    writer.append(event, clocks);
                    if (::write(ends[1], &n, sizeof n) != sizeof n) break;
                }
            } catch (...) {
            }
            ::_exit(1);
        }
        ::close(ends[1]);
        int acknowledged = -1;
        const auto hear = [&] { return ::read(ends[0], &acknowledged, sizeof acknowledged) == sizeof acknowledged; };
        for (int left = waitsFor(random); left > 0 && hear();) --left;
        std::this_thread::sleep_for(std::chrono::microseconds(microseconds(random)));
        ::kill(child, SIGKILL);
        ::waitpid(child, nullptr, 0);
        while (hear()) {
        }
        ::close(ends[0]);

        const DayLog log = loadDayLog(path);
        ASSERT_GE(math::countOf(log.lines), acknowledged + 2);
        ASSERT_EQ(log.damaged, 0);
        for (int n = 0; n + 1 < math::countOf(log.lines); ++n) {
            ASSERT_EQ(log.lines[n + 1].event.task, n);
        }
        const Clocks now = readClocks();
        const DayTime time = dayTimeAt(log.lines.back(), now);
        ASSERT_NEAR(time.at_s, now.up_s - zero_s, 1e-6);
        ASSERT_EQ(time.said, "");
        // It goes on from there.
        DayLogWriter::goOn(path).append({EventKind::stopped, time.at_s}, now);
        ASSERT_EQ(loadDayLog(path).lines.back().event.kind, EventKind::stopped);
        acknowledgedInAll += acknowledged + 1;
    }
    EXPECT_GT(acknowledgedInAll, 200);  // else they were killed before they wrote anything
}

TEST(DayLog, TornAnywhereInItsLastLineTheRestStandsAndItGoesOn) {
    const TemporaryFolder folder;
    const std::filesystem::path path = folder.file("a");
    {
        DayLogWriter writer = DayLogWriter::begin(path, "about", morning);
        for (int n = 0; n < 3; ++n) writer.append(eventOf(n), morning);
    }
    const std::string whole = read(path);
    const std::size_t lastLine = whole.rfind('\n', whole.size() - 2) + 1;
    for (std::size_t size = lastLine; size < whole.size(); ++size) {
        write(path, whole.substr(0, size));
        const DayLog log = loadDayLog(path);
        ASSERT_EQ(log.lines.size(), 3u) << size;
        ASSERT_EQ(log.torn, size > lastLine) << size;
        ASSERT_EQ(log.damaged, 0) << size;
        DayLogWriter::goOn(path).append(eventOf(9), morning);
        const DayLog after = loadDayLog(path);
        ASSERT_EQ(after.lines.size(), 4u) << size;
        ASSERT_FALSE(after.torn);
        ASSERT_EQ(after.lines.back().event, eventOf(9));
    }
}

TEST(DayLog, AnyByteThatIsChangedCostsItsOwnLineOnly) {
    const TemporaryFolder folder;
    const std::filesystem::path path = folder.file("a");
    {
        DayLogWriter writer = DayLogWriter::begin(path, "about", morning);
        for (int n = 0; n < 4; ++n) writer.append(eventOf(n), morning);
    }
    const std::string whole = read(path);
    const std::size_t from = whole.find('\n', whole.find('\n') + 1) + 1;  // the event after "started"
    const std::size_t to = whole.find('\n', from);
    for (std::size_t i = from; i < to; ++i) {
        std::string bad = whole;
        bad[i] = static_cast<char>(bad[i] ^ 0x04);
        const DayLog log = readDayLog(bad);
        ASSERT_EQ(log.lines.size(), 4u) << i;
        ASSERT_EQ(log.damaged, 1) << i;
        ASSERT_FALSE(log.torn);
        ASSERT_EQ(log.lines[1].event, eventOf(1));
    }
}

TEST(DayLog, OnAFullDiskItSaysSoAndKeepsWholeLinesOnly) {
    const TemporaryFolder folder;
    const std::filesystem::path path = folder.file("a");
    DayLogWriter writer = DayLogWriter::begin(path, "about", morning);
    writer.append(eventOf(0), morning);
    const std::string before = read(path);
    // No more than ten bytes more may be written, as on a disk that fills up in the middle of a line.
    rlimit old{};
    ASSERT_EQ(::getrlimit(RLIMIT_FSIZE, &old), 0);
    const auto signal = ::signal(SIGXFSZ, SIG_IGN);
    const rlimit little{before.size() + 10, old.rlim_max};
    ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &little), 0);
    EXPECT_THROW(writer.append(eventOf(1), morning), units::InputError);
    ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &old), 0);
    ::signal(SIGXFSZ, signal);
    EXPECT_EQ(read(path), before);
    writer.append(eventOf(2), morning);
    EXPECT_EQ(loadDayLog(path).lines.back().event, eventOf(2));
}

int failingFlush(int) {
    errno = EIO;
    return -1;
}

TEST(DayLog, WhatCouldNotBeFlushedDoesNotStayInTheFile) {
    const TemporaryFolder folder;
    const std::filesystem::path path = folder.file("a");
    DayLogWriter::begin(path, "about", morning).append(eventOf(0), morning);
    const std::string before = read(path);
    DayLogWriter failing = DayLogWriter::goOn(path, failingFlush);
    EXPECT_THROW(failing.append(eventOf(1), morning), units::InputError);
    EXPECT_EQ(read(path), before);
    // A day whose first line never reached the disk was not begun.
    EXPECT_THROW(DayLogWriter::begin(folder.file("b"), "about", morning, failingFlush), units::InputError);
    EXPECT_FALSE(std::filesystem::exists(folder.file("b")));
}

TEST(DayLog, OneWrongBitOfTheFirstLineIsFoundAndPutRight) {
    const TemporaryFolder folder;
    const std::filesystem::path path = folder.file("a");
    const std::string about = "{\"boat\": \"Marram\", \"piece\": \"Stem\"}";
    DayLogWriter::begin(path, about, morning).append(eventOf(0), morning);
    const std::string whole = read(path);
    EXPECT_FALSE(readDayLog(whole).aboutMended);
    const std::size_t end = whole.find('\n');
    for (std::size_t i = 0; i < end; ++i) {
        for (unsigned bit = 0; bit < 8; ++bit) {
            std::string bad = whole;
            bad[i] = static_cast<char>(static_cast<unsigned char>(bad[i]) ^ (1u << bit));
            if (bad[i] == '\n') continue;  // a line that ends early is another damage
            const DayLog log = readDayLog(bad);
            ASSERT_EQ(log.about, about) << i << " " << bit;
            ASSERT_FALSE(log.aboutLost);
            ASSERT_EQ(log.lines.size(), 2u);
        }
    }
}

TEST(DayLog, OfADayWhoseFirstLineIsLostTheEventsAreSaved) {
    const TemporaryFolder folder;
    const std::filesystem::path path = folder.file("a");
    DayLogWriter::begin(path, "about this day", morning).append(eventOf(0), morning);
    std::string bad = read(path);
    bad.replace(bad.find("about"), 5, "xxxxx");
    const DayLog log = readDayLog(bad);
    EXPECT_TRUE(log.aboutLost);
    EXPECT_EQ(log.about, "");
    ASSERT_EQ(log.lines.size(), 2u);
    EXPECT_EQ(log.lines[1].event, eventOf(0));
}

TEST(DayLog, WhatIsNoLogIsRefusedInWords) {
    for (const char* text : {"", "\n", "nonsense\n", "{\"fayline\": 1}\n"}) {
        EXPECT_THROW(readDayLog(text), units::InputError) << text;
    }
    const TemporaryFolder folder;
    EXPECT_THROW(loadDayLog(folder.file("nowhere")), units::InputError);
    EXPECT_THROW(DayLogWriter::begin(folder.file("no") / "folder", "", morning), units::InputError);
    DayLogWriter::begin(folder.file("a"), "", morning);
    EXPECT_THROW(DayLogWriter::begin(folder.file("a"), "", morning), units::InputError);  // never written over
}

TEST(DayLog, AfterACrashTheSameStartOfTheMachineSaysTheTime) {
    const LogLine last{{EventKind::done, 600, 3}, {"start", 5000, 1.79e9}};
    // The wall clock was set back by an hour meanwhile: it takes no part.
    const DayTime time = dayTimeAt(last, {"start", 5120, 1.79e9 + 120 - 3600});
    EXPECT_DOUBLE_EQ(time.at_s, 720);
    EXPECT_EQ(time.said, "");
    EXPECT_DOUBLE_EQ(wallMovedSince(last, {"start", 5120, 1.79e9 + 120 - 3600}), -3600);
}

TEST(DayLog, AfterAPowerCutTheWallClockSaysTheTimeAndThatIsTold) {
    const LogLine last{{EventKind::done, 600, 3}, {"start", 5000, 1.79e9}};
    const DayTime time = dayTimeAt(last, {"other", 40, 1.79e9 + 300});
    EXPECT_DOUBLE_EQ(time.at_s, 900);
    EXPECT_NE(time.said.find("started anew"), std::string::npos) << time.said;
    EXPECT_DOUBLE_EQ(wallMovedSince(last, {"other", 40, 1.79e9 + 300}), 0);
}

TEST(DayLog, AWallClockThatWasSetBackIsToldAndTheTimeSinceTheStartCounts) {
    const LogLine last{{EventKind::done, 600, 3}, {"start", 5000, 1.79e9}};
    const DayTime time = dayTimeAt(last, {"other", 240, 1.79e9 - 7200});
    EXPECT_DOUBLE_EQ(time.at_s, 600 + 240);
    EXPECT_NE(time.said.find("stands 2 h before the last entry"), std::string::npos) << time.said;
    const DayTime less = dayTimeAt(last, {"other", 240, 1.79e9 + 10});
    EXPECT_DOUBLE_EQ(less.at_s, 600 + 240);
    EXPECT_NE(less.said.find("machine has run for 4 min"), std::string::npos) << less.said;
}

TEST(DayLog, TheMachinesClocksGoOn) {
    const Clocks one = readClocks();
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
    const Clocks other = readClocks();
    EXPECT_EQ(one.boot, other.boot);
    EXPECT_FALSE(one.boot.empty());
    EXPECT_GE(other.up_s - one.up_s, 0.019);
    EXPECT_GT(one.wall_s, 1.5e9);
}

}  // namespace day_log_test
}  // namespace fayline::schedule
