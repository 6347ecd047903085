// Files on the disk: whole or not at all.
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "core/io/file.hpp"
#include "core/model/new_piece.hpp"
#include "tests/refusal.hpp"
#include "tests/temporary_folder.hpp"

namespace fayline::io {

using namespace model;
namespace disk_test {

namespace fs = std::filesystem;

class Disk : public testing::Test {
protected:
    static Boat boatNamed(const std::string& name) {
        Boat boat;
        boat.name = name;
        boat.pieces.push_back(newPiece("Stem"));
        boat.pieces[0].id = "p1";
        return boat;
    }
    static std::string textOf(const fs::path& path) {
        std::ifstream file(path);
        std::stringstream text;
        text << file.rdbuf();
        return text.str();
    }
    // The names in the folder, so that litter shows.
    std::string listing() const {
        std::set<std::string> names;
        for (const auto& entry : fs::directory_iterator(folder)) names.insert(entry.path().filename());
        std::string list;
        for (const std::string& name : names) list += name + " ";
        return list;
    }
    static std::string errorOfSaving(const Boat& boat, const fs::path& path) {
        return made::refusalText([&] { saveBoat(boat, path); });
    }

    const made::TemporaryFolder made_;
    const fs::path& folder = made_.path();
};

TEST_F(Disk, WhatIsSavedIsLoaded) {
    const fs::path path = folder / "a boat.fayline";
    saveBoat(boatNamed("One"), path);
    EXPECT_EQ(loadBoat(path), boatNamed("One"));
    saveBoat(boatNamed("Two"), path);
    EXPECT_EQ(loadBoat(path), boatNamed("Two"));
    EXPECT_EQ(listing(), "a boat.fayline ");
}

TEST_F(Disk, ANameWithoutAFolderIsSavedHere) {
    const fs::path before = fs::current_path();
    fs::current_path(folder);
    saveBoat(boatNamed("One"), "boat.fayline");
    fs::current_path(before);
    EXPECT_EQ(listing(), "boat.fayline ");
}

TEST_F(Disk, PermissionsAreKeptAndNewFilesFollowTheUsersMask) {
    const fs::path path = folder / "boat.fayline";
    const mode_t mask = ::umask(027);
    saveBoat(boatNamed("One"), path);
    ::umask(mask);
    struct stat file {};
    ASSERT_EQ(::stat(path.c_str(), &file), 0);
    EXPECT_EQ(file.st_mode & 07777, 0640u);
    ASSERT_EQ(::chmod(path.c_str(), 0604), 0);
    saveBoat(boatNamed("Two"), path);
    ASSERT_EQ(::stat(path.c_str(), &file), 0);
    EXPECT_EQ(file.st_mode & 07777, 0604u);
}

TEST_F(Disk, ALinkIsFollowedAndStaysALink) {
    fs::create_directories(folder / "far");
    fs::create_symlink("far/boat.fayline", folder / "near.fayline");  // leads to nothing yet
    saveBoat(boatNamed("One"), folder / "near.fayline");
    EXPECT_TRUE(fs::is_symlink(folder / "near.fayline"));
    EXPECT_EQ(loadBoat(folder / "far/boat.fayline"), boatNamed("One"));
    saveBoat(boatNamed("Two"), folder / "near.fayline");
    EXPECT_TRUE(fs::is_symlink(folder / "near.fayline"));
    EXPECT_EQ(loadBoat(folder / "far/boat.fayline"), boatNamed("Two"));

    fs::create_symlink("b.fayline", folder / "a.fayline");
    fs::create_symlink("a.fayline", folder / "b.fayline");
    EXPECT_NE(errorOfSaving(boatNamed("One"), folder / "a.fayline"), "nothing") << "links in a ring";
}

TEST_F(Disk, AFullDiskLeavesTheOldFileAndNoLitter) {
    const fs::path path = folder / "boat.fayline";
    saveBoat(boatNamed("One"), path);
    const std::string before = textOf(path);

    // A limit on the size of files stands in for a full disk: the write stops half way.
    rlimit old{};
    ASSERT_EQ(::getrlimit(RLIMIT_FSIZE, &old), 0);
    const auto handler = std::signal(SIGXFSZ, SIG_IGN);
    rlimit small = old;
    small.rlim_cur = 100;
    ::setrlimit(RLIMIT_FSIZE, &small);
    const std::string error = errorOfSaving(boatNamed("Two"), path);
    ::setrlimit(RLIMIT_FSIZE, &old);
    std::signal(SIGXFSZ, handler);

    EXPECT_EQ(error, path.string() + " could not be saved: File too large; make room on the disk, or save elsewhere");
    EXPECT_EQ(textOf(path), before);
    EXPECT_EQ(listing(), "boat.fayline ");
}

TEST_F(Disk, WhatADeadProgramLeftBesideTheFileGoesAfterADay) {
    const long dead = [] {
        const pid_t child = ::fork();
        if (child == 0) ::_exit(0);
        ::waitpid(child, nullptr, 0);
        return long(child);
    }();
    const std::string left = ".fayline-" + std::to_string(dead) + "-0";
    const std::string fresh = ".fayline-" + std::to_string(dead) + "-1";
    const std::string running = ".fayline-" + std::to_string(::getpid()) + "-7";
    const std::string another = left + ".old";
    for (const std::string& name : {left, fresh, running, another}) {
        std::ofstream(folder / name) << "half of a boat";
        if (name != fresh)
            fs::last_write_time(folder / name, fs::file_time_type::clock::now() - std::chrono::hours(25));
    }
    saveBoat(boatNamed("One"), folder / "boat.fayline");
    EXPECT_FALSE(fs::exists(folder / left));
    for (const std::string& name : {fresh, running, another, std::string("boat.fayline")})
        EXPECT_TRUE(fs::exists(folder / name)) << name;
}

TEST_F(Disk, AFolderThatIsNoneOrMissingIsAnError) {
    std::ofstream(folder / "file") << "x";
    EXPECT_EQ(errorOfSaving(boatNamed("One"), folder / "file" / "boat.fayline"),
              (folder / "file" / "boat.fayline").string() +
                  " could not be saved: Not a directory; save into a folder that exists");
    EXPECT_EQ(errorOfSaving(boatNamed("One"), folder / "none" / "boat.fayline"),
              (folder / "none" / "boat.fayline").string() +
                  " could not be saved: No such file or directory; save into a folder that exists");
    EXPECT_EQ(errorOfSaving(boatNamed("One"), folder),
              folder.string() + " could not be saved: it is not an ordinary file; save elsewhere");
    EXPECT_EQ(errorOfSaving(boatNamed("One"), "/dev/full"),
              "/dev/full could not be saved: it is not an ordinary file; save elsewhere");
    EXPECT_EQ(errorOfSaving(boatNamed("One"), "/proc/boat.fayline").substr(0, 39),
              "/proc/boat.fayline could not be saved: ");
    EXPECT_EQ(listing(), "file ");
}

TEST_F(Disk, WhatCouldNotBeReadAgainIsNotSaved) {
    const fs::path path = folder / "boat.fayline";
    saveBoat(boatNamed("One"), path);
    Boat boat = boatNamed("Two");
    boat.pieces[0].stack.strips[0].thickness_m = -0.006;
    EXPECT_EQ(errorOfSaving(boat, path),
              "pieces[0].stack.strips[0].thickness_mm: -6 is not a thickness; give a number above 0");
    EXPECT_EQ(loadBoat(path), boatNamed("One"));
    EXPECT_EQ(listing(), "boat.fayline ");
}

TEST_F(Disk, AFileThatCannotBeReadIsAnErrorWithItsName) {
    const auto errorOfLoading = [](const fs::path& path) -> std::string {
        return made::refusalText([&] { loadBoat(path); });
    };
    EXPECT_EQ(errorOfLoading(folder / "none"), (folder / "none").string() +
                                                   " could not be read: No such file or directory; "
                                                   "give a project file that you may read");
    EXPECT_EQ(errorOfLoading(folder),
              folder.string() + " could not be read: Is a directory; give a project file that you may read");
    std::ofstream(folder / "large").close();
    fs::resize_file(folder / "large", 65 * 1024 * 1024);
    EXPECT_EQ(errorOfLoading(folder / "large"),
              (folder / "large").string() + " is larger than a project file ever is; give a file of at most 64 MB");
    ASSERT_EQ(::mkfifo((folder / "pipe").c_str(), 0666), 0);
    for (const fs::path& path : {fs::path("/dev/zero"), folder / "pipe"})  // nobody writes into the pipe
        EXPECT_EQ(
            errorOfLoading(path),
            path.string() + " could not be read: it is not an ordinary file; give a project file that you may read");
    std::ofstream(folder / "empty").close();
    EXPECT_EQ(errorOfLoading(folder / "empty"),
              "line 1, column 1: the text ends too early; give a project file, which begins with {");
}

// A clock in the file knows no half seconds.
TEST_F(Disk, WhatWouldBeReadBackAsAnotherBoatIsNotSaved) {
    Boat boat = boatNamed("Marram");
    saveBoat(boat, folder / "boat.fayline");
    const std::string before = textOf(folder / "boat.fayline");
    boat.pieces[0].crew.startAt_s += 0.5;
    EXPECT_EQ(errorOfSaving(boat, folder / "boat.fayline"),
              "pieces[0].crew: a value here would be read back as another than it is; undo the last change to it; the "
              "file was left as it was");
    EXPECT_EQ(textOf(folder / "boat.fayline"), before);
}

}  // namespace disk_test
}  // namespace fayline::io
