// Exchange: our JSON for everything (recipes, kitchens, occasions with their layouts, the larder),
// described by resources/schema/suppertide-exchange.schema.json. Import names the place of every
// error and takes all or nothing; export then import gives the same values.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/library/library.h"

namespace suppertide {

/// What a file holds, each list sorted by id.
struct ExchangeContent
{
    std::vector<Recipe> recipes;
    std::vector<Kitchen> kitchens;
    std::vector<OccasionRecord> occasions;
    std::optional<Larder> larder;

    friend bool operator==(const ExchangeContent&, const ExchangeContent&) = default;
};

/// Faults of form and of meaning (faultsOf recipe, kitchen, and of an occasion if all that it names
/// is in the text); `forCook` has one line an error, "recipes[2] (roast-roots).steps[1].duration:
/// …", the first 20 of them. `name` is the file's, for the message. TooNew: of a later version.
[[nodiscard]] Result<ExchangeContent> readExchange(std::string_view json, std::string_view name);
[[nodiscard]] Result<ExchangeContent> readExchangeFile(const std::filesystem::path& file);

[[nodiscard]] std::string writeExchange(const ExchangeContent& content);
/// Written beside the file first and then put in its place, so that no half file is left.
[[nodiscard]] Result<void> writeExchangeFile(const ExchangeContent& content,
                                             const std::filesystem::path& file);

/// The content as a change to a state: what has the id of something there, or in the larder the
/// name, replaces it.
[[nodiscard]] LibraryState imported(LibraryState state, const ExchangeContent& content);
/// Whether the content fits together with what else is in `state`. A file may hold an occasion
/// without its kitchen or recipes, or a recipe without its preparations, whose meaning can only be
/// judged here. BadInput with a line a fault, as from readExchange.
[[nodiscard]] Result<void> checkFit(const LibraryState& state, const ExchangeContent& content);

/// Single things, for the store's rows, on one line. Their meaning is not judged: a recipe that is
/// being written may lack its name, and is kept all the same.
[[nodiscard]] std::string writeRecipe(const Recipe& recipe);
[[nodiscard]] std::string writeKitchen(const Kitchen& kitchen);
[[nodiscard]] std::string writeOccasion(const OccasionRecord& record);
[[nodiscard]] std::string writeLarder(const Larder& larder);
[[nodiscard]] Result<Recipe> readRecipe(std::string_view json);
[[nodiscard]] Result<Kitchen> readKitchen(std::string_view json);
[[nodiscard]] Result<OccasionRecord> readOccasion(std::string_view json);
[[nodiscard]] Result<Larder> readLarder(std::string_view json);

} // namespace suppertide
