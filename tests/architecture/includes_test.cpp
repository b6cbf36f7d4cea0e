// Reads every #include "core/…" and "ui/…" of the tree and compares it with allowed.txt, so that
// the arrows between folders point one way. Also: no system clock outside core/base, and no Qt in
// core.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;
using Table = std::map<std::string, std::set<std::string>>;

const fs::path root = SUPPERTIDE_SOURCE_DIR;

Table readTable()
{
    std::ifstream file(root / "tests/architecture/allowed.txt");
    Table table;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.front() == '#') {
            continue;
        }
        const auto colon = line.find(':');
        auto& allowed = table[line.substr(0, colon)];
        std::istringstream rest(colon == std::string::npos ? "" : line.substr(colon + 1));
        for (std::string folder; rest >> folder;) {
            allowed.insert(folder);
        }
    }
    return table;
}

/// Adds what the neighbours may include, until nothing more comes.
void closeOver(Table& table)
{
    for (bool grew = true; grew;) {
        grew = false;
        for (auto& [folder, allowed] : table) {
            const std::set<std::string> direct = allowed;
            for (const std::string& neighbour : direct) {
                for (const std::string& further : table[neighbour]) {
                    grew = allowed.insert(further).second || grew;
                }
            }
        }
    }
}

/// The longest folder of the table that the path lies in; its own folder if there is none.
std::string folderOf(const std::string& path, const Table& table)
{
    std::string best;
    for (const auto& [folder, allowed] : table) {
        if (path.starts_with(folder + "/") && folder.size() > best.size()) {
            best = folder;
        }
    }
    return best.empty() ? fs::path(path).parent_path().string() : best;
}

std::vector<fs::path> sourcesUnder(const char* top)
{
    std::vector<fs::path> result;
    for (const auto& entry : fs::recursive_directory_iterator(root / top)) {
        if (entry.path().extension() == ".h" || entry.path().extension() == ".cpp") {
            result.push_back(entry.path());
        }
    }
    return result;
}

std::string contentOf(const fs::path& file)
{
    std::ifstream stream(file);
    std::stringstream text;
    text << stream.rdbuf();
    return text.str();
}

TEST(Architecture, EveryIncludeIsAllowedByTheTable)
{
    Table table = readTable();
    ASSERT_FALSE(table.empty());
    closeOver(table);
    const std::regex include(R"re(#include "((core|ui|app)/[^"]+)")re");
    std::size_t seen = 0;
    for (const char* top : {"core", "ui"}) {
        for (const fs::path& file : sourcesUnder(top)) {
            const std::string path = fs::relative(file, root).string();
            const std::string from = folderOf(path, table);
            ASSERT_TRUE(table.contains(from)) << path << " lies in a folder that allowed.txt lacks";
            const std::string text = contentOf(file);
            for (std::sregex_iterator hit(text.begin(), text.end(), include), end; hit != end;
                 ++hit) {
                const std::string to = folderOf((*hit)[1], table);
                EXPECT_TRUE(to == from || table.at(from).contains(to))
                    << path << " includes " << (*hit)[1] << ": " << from << " may not include "
                    << to;
                ++seen;
            }
        }
    }
    EXPECT_GT(seen, 50U);
}

TEST(Architecture, OnlyBaseAsksTheSystemWhatTimeItIs)
{
    for (const char* top : {"core", "ui", "app"}) {
        for (const fs::path& file : sourcesUnder(top)) {
            const std::string path = fs::relative(file, root).string();
            if (!path.starts_with("core/base/")) {
                EXPECT_EQ(contentOf(file).find("system_clock::now"), std::string::npos) << path;
            }
        }
    }
}

TEST(Architecture, CoreKnowsNoQt)
{
    const std::regex qt(R"re(#include *[<"]Q[A-Z])re");
    for (const fs::path& file : sourcesUnder("core")) {
        EXPECT_FALSE(std::regex_search(contentOf(file), qt)) << file;
    }
}

} // namespace
