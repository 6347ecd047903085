// Includes point one way: each folder includes only from those that the table names, its own files among them. The core
// knows no Qt.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>

namespace {

using Folders = std::set<std::string>;

// What each folder may include, beside itself.
const std::map<std::string, Folders>& allowed() {
    static const Folders model{"core/units", "core/model"};
    static const std::map<std::string, Folders> table = [] {
        std::map<std::string, Folders> all;
        const auto add = [&](const std::string& folder, Folders more, const Folders& base = {}) {
            more.insert(base.begin(), base.end());
            all[folder] = std::move(more);
        };
        add("core/math", {});
        add("core/units", {});
        add("core/model", {"core/units"});
        add("core/io", {}, model);
        add("core/line", {"core/math"}, model);
        add("core/wood", {"core/math", "core/io"}, model);
        add("core/glue", {"core/math", "core/io", "core/wood"}, model);
        add("core/schedule", {"core/math", "core/units"});
        add("core/stock", {"core/math", "core/units"});
        add("core/laminate", {"core/math", "core/line", "core/wood"}, model);
        add("core/laminate/springback", {"core/laminate"}, all["core/laminate"]);
        add("core/contact", {"core/math", "core/units"});
        add("core/holding", {"core/contact", "core/laminate", "core/laminate/springback"}, all["core/laminate"]);
        add("core/holding/propose", {"core/holding"}, all["core/holding"]);
        add("core/holding/props", {"core/holding"}, all["core/holding"]);
        Folders below{"core/plan", "core/plan/day", "core/plan/findings", "core/plan/study"};
        for (const auto& [folder, from] : all) below.insert(folder);
        below.erase("core/io");
        for (const char* plan : {"core/plan", "core/plan/day", "core/plan/findings", "core/plan/study"})
            add(plan, {}, below);
        add("core/export", {}, below);
        below.insert({"core/export", "core/io"});
        add("app/look", {}, below);
        for (const char* views : {"app/formview", "app/panels", "app/paper", "app/clock"})
            add(views, {"app/look"}, below);
        add("app/window", {"app/look", "app/formview", "app/panels", "app/paper", "app/clock"}, below);
        return all;
    }();
    return table;
}

struct Include {
    std::string line;
    std::string folder;  // empty: no folder of the project
};

std::vector<Include> includesOf(const std::filesystem::path& file) {
    static const std::regex form(R"re(^\s*#include\s+[<"]([^>"]+)[>"])re");
    std::vector<Include> includes;
    std::ifstream in(file);
    for (std::string line; std::getline(in, line);) {
        std::smatch match;
        if (!std::regex_search(line, match, form)) continue;
        const std::string what = match[1];
        const bool ours = what.starts_with("core/") || what.starts_with("app/");
        includes.push_back({what, ours ? std::filesystem::path(what).parent_path().string() : std::string()});
    }
    return includes;
}

TEST(Includes, PointOneWay) {
    const std::filesystem::path root(FAYLINE_SOURCE);
    std::size_t files = 0;
    for (const char* top : {"core", "app"}) {
        for (const auto& entry : std::filesystem::recursive_directory_iterator(root / top)) {
            const std::string ending = entry.path().extension();
            if (ending != ".hpp" && ending != ".cpp") continue;
            const std::string folder = std::filesystem::relative(entry.path(), root).parent_path();
            if (folder == "app") continue;  // the program's main
            ++files;
            const auto row = allowed().find(folder);
            ASSERT_NE(row, allowed().end()) << folder << " has no row in the table";
            for (const Include& include : includesOf(entry.path())) {
                const bool fine =
                    include.folder.empty() || include.folder == folder || row->second.contains(include.folder);
                EXPECT_TRUE(fine) << entry.path() << " includes " << include.line;
                if (folder.starts_with("core")) {
                    EXPECT_FALSE(include.folder.starts_with("app")) << entry.path() << " includes " << include.line;
                    EXPECT_FALSE(include.line.starts_with("Q") && std::isupper(include.line[1])) << entry.path();
                }
            }
        }
    }
    EXPECT_GT(files, 300u);
}

// The table itself has no way round.
TEST(Includes, TheTableHasNoCircle) {
    for (const auto& [folder, from] : allowed()) {
        for (const std::string& other : from) {
            if (folder.starts_with("core/plan") && other.starts_with("core/plan"))
                continue;  // one room with four doors
            const auto back = allowed().find(other);
            if (back == allowed().end() || other == folder) continue;
            EXPECT_FALSE(back->second.contains(folder)) << folder << " and " << other << " include each other";
        }
    }
}

}  // namespace
