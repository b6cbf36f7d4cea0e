// FileLock: who writes a library is alone. A file beside the library is held by flock, which the
// system frees when the program ends, however it ends; it names its holder. No SQLite here.
#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <variant>

namespace suppertide {

class FileLock
{
public:
    FileLock(const FileLock&) = delete;
    FileLock& operator=(const FileLock&) = delete;
    FileLock(FileLock&&) = delete;
    FileLock& operator=(FileLock&&) = delete;
    /// Takes the file away and lets go.
    ~FileLock();

    /// Another program has it; in words ("Suppertide (process 4711 on skerry)").
    struct Held
    {
        std::string holder;
    };
    /// The file cannot be made: the folder may only be read.
    struct NotAllowed
    {
        std::string reason;
    };
    using Attempt = std::variant<std::unique_ptr<FileLock>, Held, NotAllowed>;

    /// Does not wait.
    [[nodiscard]] static Attempt tryToHold(const std::filesystem::path& library);

private:
    FileLock(std::filesystem::path file, int descriptor);

    std::filesystem::path file_;
    int descriptor_;
};

} // namespace suppertide
