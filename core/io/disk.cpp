// Project files on the disk.
#include <fcntl.h>
#include <signal.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cstdio>
#include <system_error>

#include "core/io/file.hpp"
#include "core/io/shed_file.hpp"
#include "core/model/together.hpp"

namespace fayline::io {

using namespace model;

using units::InputError;

namespace {

constexpr std::size_t mostBytes = 64 * 1024 * 1024;

std::string remedyFor(int error) {
    switch (error) {
        case ENOSPC:
        case EDQUOT:
        case EFBIG:
            return "make room on the disk, or save elsewhere";
        case EACCES:
        case EPERM:
        case EROFS:
            return "save where you may write";
        case ENOENT:
        case ENOTDIR:
            return "save into a folder that exists";
        default:
            return "save elsewhere";
    }
}

std::string reason(int error) {
    return std::generic_category().message(error);
}

[[noreturn]] void refuseToSave(const std::filesystem::path& path, int error) {
    throw InputError("", path.string() + " could not be saved: " + reason(error), remedyFor(error));
}

[[noreturn]] void refuseToRead(const std::filesystem::path& path, int error, const std::string& whatFile) {
    throw InputError("", path.string() + " could not be read: " + reason(error),
                     "give " + whatFile + " that you may read");
}

// An open file, closed and, until it is kept, deleted again.
class FileAside {
public:
    // Created beside `target`, under a name that no other program uses.
    explicit FileAside(const std::filesystem::path& target) : target_(target) {
        for (int i = 0; i < 1000; ++i) {
            name_ = target.parent_path() / (".fayline-" + std::to_string(::getpid()) + "-" + std::to_string(i));
            file_ = ::open(name_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
            if (file_ >= 0 || errno != EEXIST) break;
        }
        if (file_ < 0) refuseToSave(target, errno);
    }
    ~FileAside() {
        if (file_ >= 0) ::close(file_);
        if (!kept_) ::unlink(name_.c_str());
    }
    FileAside(const FileAside&) = delete;
    FileAside& operator=(const FileAside&) = delete;

    void takeAfter(const struct stat& old) {
        // The owner can be kept by root alone; the permissions always. Owner first, which may take bits away.
        [[maybe_unused]] const int owner = ::fchown(file_, old.st_uid, old.st_gid);
        check(::fchmod(file_, old.st_mode & 07777));
    }

    void write(std::string_view text) {
        while (!text.empty()) {
            const ssize_t written = ::write(file_, text.data(), text.size());
            if (written < 0 && errno == EINTR) continue;
            check(written < 0 ? -1 : 0);
            text.remove_prefix(std::size_t(written));
        }
    }

    void moveIntoPlace() {
        check(::fsync(file_));
        const int file = file_;
        file_ = -1;
        check(::close(file));
        check(::rename(name_.c_str(), target_.c_str()));
        kept_ = true;
    }

private:
    void check(int result) const {
        if (result != 0) refuseToSave(target_, errno);
    }

    std::filesystem::path target_;
    std::filesystem::path name_;
    int file_ = -1;
    bool kept_ = false;
};

// The name itself reaches the disk only with its folder. Not every file system can; the file is in place anyhow.
void flushFolder(const std::filesystem::path& folder) {
    const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0) return;
    ::fsync(descriptor);
    ::close(descriptor);
}

// Takes away what a program that was ended while it saved has left beside the file. Of another machine's program, which
// a shared folder may have at work, the process is not known here: a day passes first.
void removeLeftAside(const std::filesystem::path& folder) {
    constexpr auto settled = std::chrono::hours(24);
    const auto now = std::filesystem::file_time_type::clock::now();
    std::error_code error;
    for (const auto& entry : std::filesystem::directory_iterator(folder, error)) {
        long process = 0;
        int number = 0;
        int read = 0;
        const std::string name = entry.path().filename();
        if (std::sscanf(name.c_str(), ".fayline-%ld-%d%n", &process, &number, &read) != 2 ||
            name.size() != std::size_t(read) || process <= 0)
            continue;
        const auto written = entry.last_write_time(error);
        if (error || now - written < settled || ::kill(pid_t(process), 0) == 0 || errno != ESRCH) continue;
        std::filesystem::remove(entry.path(), error);
    }
}

// Where `path` leads when it is a symbolic link, to a file that may not be there yet.
std::filesystem::path followed(std::filesystem::path path) {
    constexpr int mostLinks = 40;
    std::error_code error;
    for (int i = 0; i < mostLinks && std::filesystem::is_symlink(path, error); ++i) {
        const auto to = std::filesystem::read_symlink(path, error);
        if (error) refuseToSave(path, error.value());
        path = to.is_absolute() ? to : path.parent_path() / to;
    }
    if (std::filesystem::is_symlink(path, error)) refuseToSave(path, ELOOP);
    if (!path.has_parent_path()) path = "." / path;
    return path;
}

void saveText(std::string_view text, const std::filesystem::path& path) {
    const std::filesystem::path target = followed(path);
    struct stat old {};
    const bool exists = ::stat(target.c_str(), &old) == 0;
    if (exists && !S_ISREG(old.st_mode))
        throw InputError("", target.string() + " could not be saved: it is not an ordinary file", "save elsewhere");
    if (exists && ::access(target.c_str(), W_OK) != 0) refuseToSave(target, errno);

    FileAside aside(target);
    if (exists) aside.takeAfter(old);
    aside.write(text);
    aside.moveIntoPlace();
    flushFolder(target.parent_path());
    removeLeftAside(target.parent_path());
}

// Throws InputError with the first place at which the boat read back is another than the one written.
void compare(Boat written, const Boat& read) {
    giveMissingIds(written);
    if (read == written) return;
    std::string path;
    for (std::size_t i = 0; i < std::min(written.pieces.size(), read.pieces.size()) && path.empty(); ++i) {
        const Piece& here = written.pieces[i];
        const Piece& there = read.pieces[i];
        if (here == there) continue;
        path = "pieces[" + std::to_string(i) + "]";
        path += here.line != there.line         ? ".line"
                : here.stack != there.stack     ? ".stack"
                : here.form != there.form       ? ".form"
                : here.holding != there.holding ? ".holding"
                : here.glue != there.glue       ? ".glue"
                : here.crew != there.crew       ? ".crew"
                : here.stock != there.stock     ? ".stock"
                : here.record != there.record   ? ".record"
                                                : "";
    }
    throw InputError(path, "a value here would be read back as another than it is",
                     "undo the last change to it; the file was left as it was");
}

}  // namespace

std::optional<std::string> loadText(const std::filesystem::path& path, const std::string& whatFile) {
    const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);  // a pipe is not waited for
    if (file < 0 && errno == ENOENT) return std::nullopt;
    if (file < 0) refuseToRead(path, errno, whatFile);
    struct stat found {};
    if (::fstat(file, &found) == 0 && !S_ISREG(found.st_mode)) {
        ::close(file);
        if (S_ISDIR(found.st_mode)) refuseToRead(path, EISDIR, whatFile);
        throw InputError("", path.string() + " could not be read: it is not an ordinary file",
                         "give " + whatFile + " that you may read");
    }
    std::string text;
    char block[1 << 16];
    for (;;) {
        const ssize_t count = ::read(file, block, sizeof block);
        if (count < 0 && errno == EINTR) continue;
        const int error = count < 0 ? errno : 0;
        if (count > 0) text.append(block, std::size_t(count));
        if (count > 0 && text.size() <= mostBytes) continue;
        ::close(file);
        if (error) refuseToRead(path, error, whatFile);
        break;
    }
    if (text.size() > mostBytes)
        throw InputError("", path.string() + " is larger than " + whatFile + " ever is",
                         "give a file of at most 64 MB");
    return text;
}

Boat loadBoat(const std::filesystem::path& path) {
    const std::string whatFile = "a project file";
    const std::optional<std::string> text = loadText(path, whatFile);
    if (!text) refuseToRead(path, ENOENT, whatFile);
    return readBoat(*text);
}

void saveBoat(const Boat& boat, const std::filesystem::path& path) {
    const std::string text = writeBoat(boat);
    compare(boat, readBoat(text));
    saveText(text, path);
}

void saveShed(const Shed& shed, const std::filesystem::path& path) {
    const std::string text = writeShed(shed);
    if (readShed(text) != shed)
        throw InputError("", "a value of the shed would be read back as another than it is",
                         "undo the last change to it; the file was left as it was");
    saveText(text, path);
}

}  // namespace fayline::io
