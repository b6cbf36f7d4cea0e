#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

#include "core/exchange/exchange.h"
#include "core/exchange/json_value.h"

namespace suppertide {

namespace fs = std::filesystem;

namespace {

Failure notWritten(const fs::path& file, int error)
{
    const std::string reason = std::generic_category().message(error);
    return {FailureKind::Io,
            fmt::format("“{}” could not be written: {}. Nothing was changed. {}", file.string(),
                        reason,
                        error == ENOSPC ? "Make room on the disk, then try again."
                                        : "Choose another folder, then try again."),
            reason};
}

/// A file beside another that is to take its place: with its permissions, if it is there. Closed,
/// and removed unless it was put in place.
class NewFile
{
public:
    explicit NewFile(const fs::path& beside)
        : name_(fmt::format("{}.{}.new", beside.string(), ::getpid()))
    {
        // NOLINTNEXTLINE(cppcoreguidelines-pro-type-vararg): that is how open is declared
        descriptor_ = ::open(name_.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666);
        struct stat there
        {};
        if (isOpen() && ::stat(beside.c_str(), &there) == 0) {
            // If that is not allowed, the file keeps what the user's own new files have.
            static_cast<void>(::fchmod(descriptor_, there.st_mode & 07777U));
        }
    }
    NewFile(const NewFile&) = delete;
    NewFile& operator=(const NewFile&) = delete;
    NewFile(NewFile&&) = delete;
    NewFile& operator=(NewFile&&) = delete;
    ~NewFile()
    {
        if (descriptor_ >= 0) {
            ::close(descriptor_);
            ::unlink(name_.c_str());
        }
    }

    [[nodiscard]] bool isOpen() const { return descriptor_ >= 0; }

    /// Each of these gives whether it worked; if not, errno says why.
    [[nodiscard]] bool write(std::string_view text) const
    {
        while (!text.empty()) {
            const ssize_t count = ::write(descriptor_, text.data(), text.size());
            if (count < 0 && errno != EINTR) {
                return false;
            }
            text.remove_prefix(count > 0 ? static_cast<std::size_t>(count) : 0);
        }
        return true;
    }
    /// On disk, and then in the place of `file`.
    [[nodiscard]] bool putInPlaceOf(const fs::path& file)
    {
        if (::fsync(descriptor_) != 0 || ::rename(name_.c_str(), file.c_str()) != 0) {
            return false;
        }
        ::close(descriptor_);
        descriptor_ = -1;
        return true;
    }

private:
    std::string name_;
    int descriptor_ = -1;
};

} // namespace

Result<ExchangeContent> readExchangeFile(const fs::path& file)
{
    auto text = readTextFile(file.string());
    if (!text) {
        return text.error();
    }
    return readExchange(*text, file.filename().string());
}

Result<void> writeExchangeFile(const ExchangeContent& content, const fs::path& file)
{
    const std::string text = writeExchange(content);
    std::error_code error;
    // The file that a link points to is replaced, not the link.
    const fs::path target = fs::is_symlink(file, error) ? fs::weakly_canonical(file, error) : file;
    NewFile made(target);
    if (!made.isOpen() || !made.write(text) || !made.putInPlaceOf(target)) {
        return notWritten(file, errno);
    }
    return {};
}

} // namespace suppertide
