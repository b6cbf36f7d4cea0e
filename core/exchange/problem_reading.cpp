#include "core/exchange/problem_reading.h"

#include <fmt/format.h>

#include <limits>

namespace suppertide {

void readHeader(JsonFields& top, std::string_view format)
{
    const JsonCursor name = top.required("format");
    if (name.anyText() != format) {
        name.fault(fmt::format("expected “{}”", format));
    }
    const JsonCursor version = top.required("version");
    if (version.whole(0, std::numeric_limits<std::int64_t>::max()) != 1) {
        version.fault("expected version 1");
    }
}

Failure unreadable(std::string_view what, std::string_view fault)
{
    return {FailureKind::BadInput,
            fmt::format("The {} cannot be read. {}. Correct it there and try again.", what, fault),
            {}};
}

Failure unreadable(std::string_view what, const Failure& notJson)
{
    return {notJson.kind, fmt::format("The {} cannot be read. {}", what, notJson.forCook),
            notJson.forLog};
}

} // namespace suppertide
