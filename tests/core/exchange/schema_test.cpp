// Our JSON Schema against a validator that knows nothing of us: what we write is valid, and what is
// broken is refused by the schema and by our reader alike.
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <set>

#include "core/exchange/enum_names.h"
#include "core/exchange/exchange.h"
#include "tests/core/exchange/schema_judge.h"
#include "tests/support/content/any_content.h"

namespace suppertide {

namespace {

using nlohmann::json;
using test::complaintOf;
using test::readJson;
using test::schemaText;

TEST(ExchangeSchema, AcceptsWhatWeWrite)
{
    test::forEachSeed(100, [](test::Random& random) {
        const json document = json::parse(writeExchange(test::anyContent(random)));
        EXPECT_EQ(complaintOf(document), "") << document.dump(2);
    });
}

TEST(ExchangeSchema, AcceptsTheDemo)
{
    const auto folder = std::filesystem::path(SUPPERTIDE_SOURCE_DIR) / "demo-db";
    int files = 0;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        if (entry.path().extension() == ".json") {
            EXPECT_EQ(complaintOf(readJson(entry.path())), "") << entry.path();
            ++files;
        }
    }
    EXPECT_GT(files, 0);
}

/// The words of an enumeration somewhere in the schema.
std::set<std::string> wordsAt(const char* pointer)
{
    return schemaText().at(json::json_pointer(pointer)).get<std::set<std::string>>();
}

template <typename E>
std::set<std::string> wordsOf()
{
    std::set<std::string> words;
    for (const auto& [value, word] : enumNames<E>) {
        words.emplace(word);
    }
    return words;
}

TEST(ExchangeSchema, KnowsTheSameWordsAsTheReader)
{
    std::set<std::string> substances;
    for (const Substance substance : allSubstances) {
        substances.emplace(nameOf(substance));
    }
    EXPECT_EQ(wordsAt("/definitions/substance/enum"), substances);
    std::set<std::string> diets;
    for (const Diet diet : allDiets) {
        diets.emplace(nameOf(diet));
    }
    EXPECT_EQ(wordsAt("/definitions/diet/enum"), diets);
    EXPECT_EQ(wordsAt("/definitions/scaling/enum"), wordsOf<Scaling>());
    EXPECT_EQ(wordsAt("/definitions/line/properties/part/enum"), wordsOf<IngredientPart>());
    EXPECT_EQ(wordsAt("/definitions/step/properties/cautions/items/enum"), wordsOf<Caution>());
    EXPECT_EQ(wordsAt("/definitions/keep/properties/place/enum"), wordsOf<KeepPlace>());
    EXPECT_EQ(wordsAt("/definitions/keep/properties/warm_by/enum"), wordsOf<WarmBy>());
    EXPECT_EQ(wordsAt("/definitions/oven_use/properties/mode/enum"), wordsOf<OvenMode>());
    EXPECT_EQ(wordsAt("/definitions/recipe/properties/kind/enum"), wordsOf<RecipeKind>());
    EXPECT_EQ(wordsAt("/definitions/cold_place/properties/kind/enum"), wordsOf<ColdKind>());
    EXPECT_EQ(wordsAt("/definitions/hours/properties/presence/enum"), wordsOf<Presence>());
    EXPECT_EQ(wordsAt("/definitions/preferences/properties/caution/enum"), wordsOf<CautionLevel>());
    EXPECT_EQ(wordsAt("/definitions/wish/enum"), wordsOf<Wish>());
}

/// All values of a document, with the key of each (of its list, for an item).
struct Spot
{
    json::json_pointer pointer;
    std::string key;
};

void collect(const json& value, const json::json_pointer& pointer, const std::string& key,
             std::vector<Spot>& spots)
{
    spots.push_back({pointer, key});
    if (value.is_object()) {
        for (const auto& [name, member] : value.items()) {
            collect(member, pointer / name, name, spots);
        }
    } else if (value.is_array()) {
        for (std::size_t i = 0; i < value.size(); ++i) {
            collect(value[i], pointer / i, "", spots);
        }
    }
}

/// Breaks the document in a way that no reading of the format allows. Empty if it cannot be broken
/// at this spot in this way.
std::optional<json> brokenAt(json document, const Spot& spot, std::int64_t how)
{
    static const std::set<std::string> worded{
        "part",     "scaling",  "place",  "warm_by", "mode",   "presence", "caution",
        "amount",   "serving",  "latest", "from",    "to",     "earliest", "date",
        "duration", "at_table", "yields", "format",  "version"};
    json& value = document.at(spot.pointer);
    switch (how) {
    case 0:
        value = nullptr;
        return document;
    case 1:
        value = value.is_boolean() ? json(7) : json(true);
        return document;
    case 2:
        if (!value.is_object()) {
            return std::nullopt;
        }
        value["sugar"] = 1; // unknown, or for an object whose keys are ids no id or time or list
        return document;
    case 3:
        if (!value.is_object() || !value.contains("id")) {
            return std::nullopt;
        }
        value.erase("id");
        return document;
    case 4:
        if (!value.is_string() || !worded.contains(spot.key)) {
            return std::nullopt;
        }
        value = value.get<std::string>() + "!";
        return document;
    case 5:
        if (!value.is_number()) {
            return std::nullopt;
        }
        value = -1'000'000;
        return document;
    default:
        value = json::array({json::array()});
        return document;
    }
}

TEST(ExchangeSchema, RefusesWhatIsBrokenAnywhereAsTheReaderDoes)
{
    int broken = 0;
    test::forEachSeed(450, [&broken](test::Random& random) {
        const json whole = json::parse(writeExchange(test::anyContent(random)));
        std::vector<Spot> spots;
        collect(whole, json::json_pointer(""), "", spots);
        const Spot& spot = spots[static_cast<std::size_t>(
            random.between(0, static_cast<std::int64_t>(spots.size()) - 1))];
        const std::int64_t how = random.between(0, 6);
        const auto document = brokenAt(whole, spot, how);
        if (!document) {
            return;
        }
        ++broken;
        EXPECT_NE(complaintOf(*document), "") << spot.pointer << " way " << how;
        const auto read = readExchange(document->dump(), "broken.json");
        ASSERT_FALSE(read) << spot.pointer << " way " << how << "\n" << document->dump(2);
        const std::string& sentence = read.error().forCook;
        EXPECT_NE(sentence.find("“broken.json”"), std::string::npos) << sentence;
        if (how == 0 && !spot.key.empty()) {
            EXPECT_NE(sentence.find(spot.key), std::string::npos) << sentence;
        }
    });
    EXPECT_GT(broken, 200);
}

} // namespace

} // namespace suppertide
