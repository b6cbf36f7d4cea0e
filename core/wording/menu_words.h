// MenuWords: compared menus in a cook's words: their names, figures with units, whom they do not
// suit and what would help. For tables on screen, on a terminal and in files.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "core/menus/figure.h"

namespace suppertide {

/// "Hands-on", "Oven changes": a column's heading.
[[nodiscard]] std::string_view headingOf(menus::Figure figure);
/// What the figure says, in a sentence.
[[nodiscard]] std::string_view meaningOf(menus::Figure figure);
/// With its unit: "3 h 10", "4", "1.9 kWh", "42.50"; a dash where it is not known.
[[nodiscard]] std::string figureText(menus::Figure figure, std::optional<std::int64_t> value);
/// "yes", "no", "not settled".
[[nodiscard]] std::string_view nameOf(menus::Cookable cookable);

/// The alternative's name; its id where it has none; the course's where it has no alternatives.
[[nodiscard]] std::string alternativeName(const Course& course, const AlternativeId& alternative);
/// "Pea and mint soup, Mushroom, Side of salmon, Rhubarb pavlova".
[[nodiscard]] std::string menuName(const Occasion& occasion, const menus::ComparedMenu& menu);
/// "everybody", "nothing safe for Dov", "not all is known for Bea and Fay".
[[nodiscard]] std::string whomItSuits(const Occasion& occasion, const menus::ComparedMenu& menu);
/// "salmon in tartlets and main"; empty if nothing is repeated.
[[nodiscard]] std::string repeatedText(const Occasion& occasion, const menus::ComparedMenu& menu);
/// "egg yolks from the pavlova for the tartlets"; empty if nothing that is left is used.
[[nodiscard]] std::string leftUsedText(const menus::ComparedMenu& menu);

/// “Dov gets nothing in the main: no dish suits.” and, if there is a way, “The stuffed squash
/// would, with butter replaced by oil (as in “vegan”).”
[[nodiscard]] std::string notServedSentence(const Occasion& occasion, const Course& course,
                                            const std::map<RecipeId, const Recipe*>& recipes,
                                            const menus::NotServed& guest);

/// All of it for other programs: comma-separated with a heading, numbers without units, by RFC
/// 4180.
[[nodiscard]] std::string menusAsCsv(const Occasion& occasion,
                                     const std::vector<menus::ComparedMenu>& menus);

} // namespace suppertide
