#include "core/store/thing_rows.h"

#include <fmt/format.h>

#include "core/exchange/exchange.h"

namespace suppertide {

namespace {

template <typename Thing>
Result<Thing> parsed(const std::string& body);

template <>
Result<Recipe> parsed(const std::string& body)
{
    return readRecipe(body);
}

template <>
Result<Kitchen> parsed(const std::string& body)
{
    return readKitchen(body);
}

template <>
Result<OccasionRecord> parsed(const std::string& body)
{
    return readOccasion(body);
}

template <>
Result<Larder> parsed(const std::string& body)
{
    return readLarder(body);
}

template <typename Thing>
Result<std::string> checkedText(const Thing& thing, const std::string& name, std::string body)
{
    const auto again = parsed<Thing>(body);
    if (again && *again == thing) {
        return body;
    }
    return Failure{FailureKind::BadInput,
                   fmt::format("The {} “{}” holds something that cannot be kept: {}. Nothing was "
                               "changed. Undo it, or write it differently.",
                               tableOf<Thing>.kind, name,
                               again ? "a text that is no text" : again.error().forCook),
                   body.substr(0, 500)};
}

} // namespace

Result<std::string> textOf(const Recipe& recipe)
{
    return checkedText(recipe, recipe.name, writeRecipe(recipe));
}

Result<std::string> textOf(const Kitchen& kitchen)
{
    return checkedText(kitchen, kitchen.name, writeKitchen(kitchen));
}

Result<std::string> textOf(const OccasionRecord& record)
{
    return checkedText(record, record.occasion.name, writeOccasion(record));
}

Result<std::string> textOf(const Larder& larder)
{
    return checkedText(larder, "at home", writeLarder(larder));
}

template <typename Thing>
Result<std::shared_ptr<const Thing>> ThingReader<Thing>::read(const std::string& body)
{
    std::weak_ptr<const Thing>& known = known_[body];
    if (auto thing = known.lock()) {
        return thing;
    }
    auto read = parsed<Thing>(body);
    if (!read) {
        return read.error();
    }
    auto thing = std::make_shared<const Thing>(std::move(*read));
    known = thing;
    return thing;
}

template class ThingReader<Recipe>;
template class ThingReader<Kitchen>;
template class ThingReader<OccasionRecord>;
template class ThingReader<Larder>;

} // namespace suppertide
