// How recipes, kitchens, occasions and the larder stand in rows: the table of each kind, its words,
// and its text both ways. Nothing is written that would not read back equal.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>

#include "core/base/result.h"
#include "core/library/library.h"

namespace suppertide {

/// `kind` is also the word in change_parts.
struct ThingTable
{
    std::string_view kind;
    std::string_view table;
};

template <typename Thing>
inline constexpr ThingTable tableOf{};
template <>
inline constexpr ThingTable tableOf<Recipe>{"recipe", "recipes"};
template <>
inline constexpr ThingTable tableOf<Kitchen>{"kitchen", "kitchens"};
template <>
inline constexpr ThingTable tableOf<OccasionRecord>{"occasion", "occasions"};
template <>
inline constexpr ThingTable tableOf<Larder>{"larder", "larders"};

/// BadInput if the thing holds what cannot be kept (an id of two lines, an amount in
/// hundred-thousandths), so that it would read back as something else.
[[nodiscard]] Result<std::string> textOf(const Recipe& recipe);
[[nodiscard]] Result<std::string> textOf(const Kitchen& kitchen);
[[nodiscard]] Result<std::string> textOf(const OccasionRecord& record);
[[nodiscard]] Result<std::string> textOf(const Larder& larder);

/// Reads bodies, each different one once: the history shares things with the state and with itself.
template <typename Thing>
class ThingReader
{
public:
    /// BadInput if the text is damaged.
    [[nodiscard]] Result<std::shared_ptr<const Thing>> read(const std::string& body);

private:
    std::unordered_map<std::string, std::weak_ptr<const Thing>> known_;
};

} // namespace suppertide
