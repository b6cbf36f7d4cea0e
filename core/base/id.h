// Id<Tag>: the name by which a recipe, step, guest … is referred to. Readable text ("roast-roots"),
// unique in its list; two kinds of id never convert into each other.
#pragma once

#include <compare>
#include <functional>
#include <string>
#include <utility>

namespace suppertide {

template <typename Tag>
class Id
{
public:
    Id() = default;
    explicit Id(std::string text) : text_(std::move(text)) {}

    [[nodiscard]] const std::string& text() const noexcept { return text_; }
    [[nodiscard]] bool empty() const noexcept { return text_.empty(); }

    friend bool operator==(const Id&, const Id&) = default;
    friend std::strong_ordering operator<=>(const Id& a, const Id& b)
    {
        return a.text_.compare(b.text_) <=> 0;
    }

private:
    std::string text_;
};

} // namespace suppertide

template <typename Tag>
struct std::hash<suppertide::Id<Tag>>
{
    std::size_t operator()(const suppertide::Id<Tag>& id) const noexcept
    {
        return std::hash<std::string>{}(id.text());
    }
};
