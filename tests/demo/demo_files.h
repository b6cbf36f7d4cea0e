// The demo's files as values, read once, and figures of its recipes in grams.
#pragma once

#include <filesystem>
#include <functional>
#include <initializer_list>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/exchange/exchange.h"
#include "core/plan/formulation.h"

namespace suppertide::demo {

[[nodiscard]] std::filesystem::path folder();
[[nodiscard]] std::vector<std::filesystem::path> filesIn(std::string_view subfolder);

/// All files together. Throws, with the reader's words, if one of them cannot be read.
[[nodiscard]] const ExchangeContent& content();

[[nodiscard]] const Recipe& recipe(std::string_view id);
[[nodiscard]] const Kitchen& kitchen(std::string_view id);
[[nodiscard]] const OccasionRecord& occasion(std::string_view id);
[[nodiscard]] const Course& course(const Occasion& occasion, std::string_view id);
[[nodiscard]] const std::map<RecipeId, const Recipe*>& recipes();

/// To be planned in its kitchen with all of the demo's recipes.
[[nodiscard]] PlanInput inputOf(Occasion occasion, Layout layout = {});
/// With what has been laid out of it.
[[nodiscard]] PlanInput inputOf(std::string_view occasion);

[[nodiscard]] ResolvedRecipe resolved(std::string_view recipe, std::string_view variant);
/// The recipe's usual variant: its first.
[[nodiscard]] ResolvedRecipe usual(std::string_view recipe);

/// Common part and methods together: what a variant may make one do.
[[nodiscard]] std::vector<Step> allSteps(const ResolvedRecipe& recipe);
[[nodiscard]] std::vector<Wait> allWaits(const ResolvedRecipe& recipe);

[[nodiscard]] const Step& step(const std::vector<Step>& steps, std::string_view id);
[[nodiscard]] const Wait& wait(const std::vector<Wait>& waits, std::string_view id);

/// The mass of a line; a millilitre counts as a gram. Eggs by their parts and lemons by their
/// juice; other whole things count as nothing.
[[nodiscard]] double massOf(const IngredientLine& line);
/// The mass of the named lines, or of all if none is named.
[[nodiscard]] double massOf(const ResolvedRecipe& recipe,
                            std::initializer_list<std::string_view> lines = {});

} // namespace suppertide::demo
