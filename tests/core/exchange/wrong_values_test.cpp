// Every place of the demo's files spoilt in every way, one at a time: the reader refuses what the
// schema refuses, names the place, never stumbles, and what it takes it writes and reads again.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <set>

#include "core/exchange/exchange.h"
#include "tests/core/exchange/schema_judge.h"
#include "tests/support/broken/broken_json.h"

namespace suppertide {

namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using test::JsonSpot;
using test::Spoiling;

/// The demo's files; an occasion together with all recipes and kitchens, so that it is judged too.
json wholeDemo()
{
    json whole{{"format", "suppertide-exchange"}, {"version", 1}};
    std::vector<fs::path> files;
    for (const auto& entry :
         fs::recursive_directory_iterator(fs::path(SUPPERTIDE_SOURCE_DIR) / "demo-db")) {
        if (entry.path().extension() == ".json") {
            files.push_back(entry.path());
        }
    }
    std::ranges::sort(files);
    for (const fs::path& file : files) {
        const json document = test::readJson(file);
        for (const char* list : {"recipes", "kitchens", "occasions"}) {
            if (document.contains(list)) {
                for (const json& thing : document[list]) {
                    whole[list].push_back(thing);
                }
            }
        }
    }
    return whole;
}

/// As little of a recipe as an occasion needs to be judged by.
json shortened(const json& recipe)
{
    json result{{"id", recipe["id"]}, {"name", recipe["name"]}, {"variants", json::array()}};
    for (const json& variant : recipe["variants"]) {
        result["variants"].push_back({{"id", variant["id"]}, {"name", variant["name"]}});
    }
    return result;
}

/// The document with only the thing that holds the spot, and what that is judged by: as small as
/// can be, since all of it is read again for each way of spoiling.
json alone(const json& whole, json::json_pointer& at)
{
    std::vector<std::string> steps;
    for (json::json_pointer rest = at; !rest.empty(); rest.pop_back()) {
        steps.insert(steps.begin(), rest.back());
    }
    if (steps.size() < 2) {
        return whole;
    }
    json document{{"format", whole["format"]}, {"version", whole["version"]}};
    document[steps[0]] = json::array({whole[steps[0]][std::stoul(steps[1])]});
    if (steps[0] == "occasions") {
        document["kitchens"] = whole["kitchens"];
        for (const json& recipe : whole["recipes"]) {
            document["recipes"].push_back(shortened(recipe));
        }
    }
    json::json_pointer moved = json::json_pointer("") / steps[0] / std::size_t{0};
    for (std::size_t i = 2; i < steps.size(); ++i) {
        moved /= steps[i];
    }
    at = moved;
    return document;
}

bool namesAPlace(const std::string& sentence)
{
    return std::ranges::any_of(
        std::vector<std::string>{"recipes[", "kitchens[", "occasions[", "format", "version",
                                 "recipes:", "kitchens:", "occasions:", "unheard-of",
                                 "expected an object", "later version", "nested deeper"},
        [&](const std::string& place) { return sentence.find(place) != std::string::npos; });
}

TEST(WrongValues, AreRefusedWithTheirPlaceWhereverTheyStand)
{
    const json whole = wholeDemo();
    const std::vector<JsonSpot> spots = test::spotOfEachForm(whole);
    int refused = 0;
    int taken = 0;
    for (const JsonSpot& spot : spots) {
        json::json_pointer at = spot.pointer;
        const json document = alone(whole, at);
        for (const Spoiling& spoiling : test::spoilings()) {
            json spoilt = document;
            if (!spoiling.apply(spoilt, at)) {
                continue;
            }
            const std::string what =
                fmt::format("{} at {}", spoiling.name, spot.pointer.to_string());
            const auto read = readExchange(spoilt.dump(), "supper.json");
            if (read) {
                ++taken;
                EXPECT_EQ(test::complaintOf(spoilt), "") << what;
                const auto again = readExchange(writeExchange(*read), "again.json");
                ASSERT_TRUE(again) << what << "\n" << again.error().forCook;
                EXPECT_EQ(*again, *read) << what;
            } else {
                ++refused;
                const std::string& sentence = read.error().forCook;
                EXPECT_NE(sentence.find("“supper.json”"), std::string::npos) << what << sentence;
                EXPECT_TRUE(namesAPlace(sentence)) << what << "\n" << sentence;
            }
        }
    }
    std::cout << spots.size() << " places, " << refused << " refused, " << taken << " taken\n";
    EXPECT_GT(spots.size(), 150U);
    EXPECT_GT(refused, 10 * static_cast<int>(spots.size()));
}

/// Whether all items of the lists of this form are things with ids.
bool isListOfThings(const json& whole, const JsonSpot& spot)
{
    const json& item = whole.at(spot.pointer);
    return item.is_object() && item.contains("id");
}

TEST(WrongValues, NoIdStandsTwiceInAnyList)
{
    const json whole = wholeDemo();
    int lists = 0;
    for (const JsonSpot& spot : test::spotOfEachForm(whole)) {
        if (!spot.form.ends_with("/*") || !isListOfThings(whole, spot)) {
            continue;
        }
        json::json_pointer at = spot.pointer;
        json spoilt = alone(whole, at);
        json& list = spoilt.at(at.parent_pointer());
        const json copy = spoilt.at(at);
        list.push_back(copy);
        const auto read = readExchange(spoilt.dump(), "supper.json");
        EXPECT_FALSE(read) << spot.pointer;
        ++lists;
    }
    EXPECT_GT(lists, 20);
}

/// References whose other end must be in the same file, and what they are replaced by. What a
/// layout speaks of may be gone already; a recipe may be in the library (checkFit).
struct Reference
{
    std::string form; // as JsonSpot has it, without the list that it stands in
    json by;
};

TEST(WrongValues, NoReferenceDangles)
{
    const json whole = wholeDemo();
    const std::vector<JsonSpot> spots = test::spotsOf(whole);
    const std::vector<Reference> references{
        {"/steps/*/after/*", "nobody"},         {"/steps/*/lines/*", "nobody"},
        {"/waits/*/from", "nobody.end"},        {"/waits/*/to", "nobody.start"},
        {"/spans/*/from", "nobody.end"},        {"/spans/*/to", "nobody.start"},
        {"/dishes/*/alternative", "nobody"},    {"/dishes/*/cook", "nobody"},
        {"/dishes/*/mix/*/variant", "nobody"},  {"/dishes/*/mix/*/guests/*", "nobody"},
        {"/house_jobs/*/cook", "nobody"},       {"/trips/*/cook", "nobody"},
        {"/trips/*/for_dishes/*", "nobody"},    {"/variants/*/drop_lines/*", "nobody"},
        {"/variants/*/drop_steps/*", "nobody"}, {"/variants/*/drop_waits/*", "nobody"},
    };
    for (const Reference& reference : references) {
        const auto spot = std::ranges::find_if(
            spots, [&](const JsonSpot& each) { return each.form.ends_with(reference.form); });
        if (spot == spots.end()) {
            std::cout << reference.form << " does not occur in the demo\n";
            continue;
        }
        json::json_pointer at = spot->pointer;
        json spoilt = alone(whole, at);
        spoilt.at(at) = reference.by;
        const auto read = readExchange(spoilt.dump(), "supper.json");
        if (read) {
            ADD_FAILURE() << "taken: " << spot->pointer;
            continue;
        }
        EXPECT_NE(read.error().forCook.find("nobody"), std::string::npos) << spot->pointer << "\n"
                                                                          << read.error().forCook;
    }
}

} // namespace

} // namespace suppertide
