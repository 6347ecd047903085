// A disk without room: as long as one of these lives no file of this program grows, as on a full disk.
#pragma once

#include <sys/resource.h>

#include <csignal>

namespace fayline::test {

class FullDisk {
public:
    FullDisk() {
        before_ = std::signal(SIGXFSZ, SIG_IGN);  // the write fails instead
        getrlimit(RLIMIT_FSIZE, &room_);
        const rlimit none{0, room_.rlim_max};
        setrlimit(RLIMIT_FSIZE, &none);
    }
    ~FullDisk() {
        setrlimit(RLIMIT_FSIZE, &room_);
        std::signal(SIGXFSZ, before_);
    }
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;

private:
    rlimit room_{};
    void (*before_)(int) = nullptr;
};

}  // namespace fayline::test
