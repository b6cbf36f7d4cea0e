#include "app/text_file.h"

#include <fmt/format.h>

#include <cerrno>
#include <fstream>
#include <system_error>

namespace suppertide::app {

Result<void> writeText(const std::string& text, const std::filesystem::path& file)
{
    std::ofstream stream(file, std::ios::binary);
    stream << text;
    stream.close();
    if (stream.fail()) {
        const std::string reason = std::generic_category().message(errno);
        return Failure{FailureKind::Io,
                       fmt::format("“{}” could not be written: {}. Choose another folder or name.",
                                   file.string(), reason),
                       reason};
    }
    return {};
}

} // namespace suppertide::app
