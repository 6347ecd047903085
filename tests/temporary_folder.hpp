// A folder of a test's own, which is gone when the test is.
#pragma once

#include <filesystem>
#include <random>
#include <string>
#include <system_error>

namespace fayline::made {

class TemporaryFolder {
public:
    TemporaryFolder() {
        std::random_device random;
        do {
            path_ = std::filesystem::temp_directory_path() / ("fayline-test-" + std::to_string(random()));
        } while (!std::filesystem::create_directory(path_));  // false where there is one already
    }
    ~TemporaryFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    const std::filesystem::path& path() const { return path_; }
    std::filesystem::path file(const std::string& name) const { return path_ / name; }

private:
    std::filesystem::path path_;
};

}  // namespace fayline::made
