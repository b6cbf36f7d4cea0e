#include "core/store/file_lock.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <string_view>
#include <system_error>
#include <utility>

namespace suppertide {

namespace fs = std::filesystem;

namespace {

std::string hostName()
{
    std::array<char, 256> name{};
    return ::gethostname(name.data(), name.size() - 1) == 0 ? name.data() : "this computer";
}

/// Whether the open file still stands under its name; its last holder may have taken it away
/// between our opening and our holding it.
bool isStillThere(int descriptor, const fs::path& file)
{
    struct stat held
    {};
    struct stat there
    {};
    return ::fstat(descriptor, &held) == 0 && ::stat(file.c_str(), &there) == 0 &&
           held.st_ino == there.st_ino && held.st_dev == there.st_dev;
}

std::string holderIn(int descriptor)
{
    std::array<char, 300> text{};
    const ssize_t size = ::pread(descriptor, text.data(), text.size(), 0);
    const std::string_view line(text.data(), size > 0 ? static_cast<std::size_t>(size) : 0);
    const std::size_t space = line.find(' ');
    if (space == std::string_view::npos) {
        return "Another program"; // it has not written its name yet
    }
    return fmt::format("Suppertide (process {} on {})", line.substr(0, space),
                       line.substr(space + 1));
}

void writeHolder(int descriptor)
{
    const std::string line = fmt::format("{} {}", ::getpid(), hostName());
    // Only a courtesy to the next one: who cannot read it says "another program".
    if (::ftruncate(descriptor, 0) == 0) {
        static_cast<void>(::pwrite(descriptor, line.data(), line.size(), 0) != 0);
    }
}

} // namespace

FileLock::FileLock(fs::path file, int descriptor) : file_(std::move(file)), descriptor_(descriptor)
{}

FileLock::~FileLock()
{
    ::unlink(file_.c_str());
    ::close(descriptor_);
}

FileLock::Attempt FileLock::tryToHold(const fs::path& library)
{
    const fs::path file = library.string() + ".lock";
    while (true) {
        // NOLINTNEXTLINE(cppcoreguidelines-pro-type-vararg): that is how open is declared
        const int descriptor = ::open(file.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
        if (descriptor < 0) {
            return NotAllowed{std::generic_category().message(errno)};
        }
        if (::flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
            const int error = errno;
            Attempt result = error == EWOULDBLOCK
                                 ? Attempt{Held{holderIn(descriptor)}}
                                 : Attempt{NotAllowed{std::generic_category().message(error)}};
            ::close(descriptor);
            return result;
        }
        if (isStillThere(descriptor, file)) {
            writeHolder(descriptor);
            return std::unique_ptr<FileLock>(new FileLock(file, descriptor));
        }
        ::close(descriptor);
    }
}

} // namespace suppertide
