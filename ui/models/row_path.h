// RowPath: what an outline's row stands for, as text that outlives changes: "course:soup/dish:d1".
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace suppertide::ui {

class RowPath
{
public:
    RowPath() = default;
    explicit RowPath(std::string_view text);

    /// Of the last part: "dish"; empty for an empty path.
    [[nodiscard]] std::string kind() const;
    /// Of the last part.
    [[nodiscard]] std::string id() const;
    /// The id of the part of that kind; empty if it has none.
    [[nodiscard]] std::string idOf(std::string_view kind) const;
    [[nodiscard]] bool has(std::string_view kind) const { return !idOf(kind).empty(); }
    [[nodiscard]] std::size_t size() const { return parts_.size(); }
    [[nodiscard]] RowPath with(std::string kind, std::string id) const;
    /// Without the last part.
    [[nodiscard]] RowPath parent() const;
    [[nodiscard]] std::string text() const;

private:
    std::vector<std::pair<std::string, std::string>> parts_;
};

} // namespace suppertide::ui
