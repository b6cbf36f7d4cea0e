#include "ui/models/row_path.h"

#include <algorithm>

namespace suppertide::ui {

RowPath::RowPath(std::string_view text)
{
    while (!text.empty()) {
        const auto slash = std::min(text.find('/'), text.size());
        const std::string_view part = text.substr(0, slash);
        const auto colon = std::min(part.find(':'), part.size());
        parts_.emplace_back(part.substr(0, colon), part.substr(std::min(colon + 1, part.size())));
        text.remove_prefix(std::min(slash + 1, text.size()));
    }
}

std::string RowPath::kind() const
{
    return parts_.empty() ? std::string() : parts_.back().first;
}

std::string RowPath::id() const
{
    return parts_.empty() ? std::string() : parts_.back().second;
}

std::string RowPath::idOf(std::string_view kind) const
{
    const auto there = std::find_if(parts_.begin(), parts_.end(),
                                    [&](const auto& part) { return part.first == kind; });
    return there == parts_.end() ? std::string() : there->second;
}

RowPath RowPath::with(std::string kind, std::string id) const
{
    RowPath longer = *this;
    longer.parts_.emplace_back(std::move(kind), std::move(id));
    return longer;
}

RowPath RowPath::parent() const
{
    RowPath shorter = *this;
    if (!shorter.parts_.empty()) {
        shorter.parts_.pop_back();
    }
    return shorter;
}

std::string RowPath::text() const
{
    std::string text;
    for (const auto& [kind, id] : parts_) {
        text += (text.empty() ? "" : "/") + kind + (id.empty() ? "" : ":" + id);
    }
    return text;
}

} // namespace suppertide::ui
