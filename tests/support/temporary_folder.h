// TemporaryFolder: a folder of a test's own, gone with all in it when the test is over.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <system_error>

namespace suppertide::test {

class TemporaryFolder
{
public:
    /// Throws std::runtime_error if none can be made in `base`.
    explicit TemporaryFolder(
        const std::filesystem::path& base = std::filesystem::temp_directory_path())
    {
        // mkdtemp(3) wants its name to end so, and fills it in.
        std::string name = (base / "suppertide-").string() + std::string(6, 'X');
        if (::mkdtemp(name.data()) == nullptr) {
            throw std::runtime_error("no folder can be made in " + base.string());
        }
        path_ = name;
    }
    ~TemporaryFolder()
    {
        std::error_code error;
        std::filesystem::permissions(path_, std::filesystem::perms::owner_all, error);
        std::filesystem::remove_all(path_, error);
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;
    TemporaryFolder(TemporaryFolder&&) = delete;
    TemporaryFolder& operator=(TemporaryFolder&&) = delete;

    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

} // namespace suppertide::test
