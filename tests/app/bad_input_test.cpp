// What a person may hand to the command line that cannot be: libraries that are none, evenings that
// contradict themselves, numbers and texts out of all reason. A sentence comes back, never a crash.
#include <gmock/gmock.h>
#include <nlohmann/json.hpp>
#include <sqlite3.h>

#include <cstdlib>
#include <iostream>

#include "tests/app/bad_evening.h"
#include "tests/support/broken/broken_json.h"
#include "tests/support/for_each_seed.h"

namespace suppertide::app {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using testing::AnyOf;
using testing::HasSubstr;

class BadLibrary : public Verbs
{
protected:
    /// Each verb that opens a library refuses this one, in a sentence that names it and says `why`,
    /// and leaves it as it is.
    void expectRefused(const fs::path& library, const std::string& why)
    {
        const bool isFile = fs::is_regular_file(library);
        const std::string before = isFile ? bytesOf(library) : "";
        const std::string recipe =
            (fs::path(SUPPERTIDE_SOURCE_DIR) / "demo-db/recipes/soda-bread.json").string();
        const std::vector<std::vector<std::string>> commands{
            {"check", lunch},
            {"plan", lunch},
            {"print", lunch},
            {"import", recipe},
            {"export", "--out", file("out.json").string()}};
        for (std::vector<std::string> words : commands) {
            words.insert(words.end(), {"--library", library.string()});
            EXPECT_EQ(run(words), Exit::BadInput) << words.front();
            EXPECT_THAT(err_.str(), HasSubstr(library.filename().string())) << words.front();
            EXPECT_THAT(err_.str(), HasSubstr(why)) << words.front();
            EXPECT_EQ(out_.str(), "") << words.front();
        }
        EXPECT_FALSE(fs::exists(file("out.json")));
        if (isFile) {
            EXPECT_EQ(bytesOf(library), before);
        }
    }

    /// A library of the demo, closed.
    fs::path madeLibrary()
    {
        importDemo();
        return file("suppertide") / "library.suppertide";
    }
};

TEST_F(BadLibrary, IsAFolder)
{
    fs::create_directory(file("folder.suppertide"));
    expectRefused(file("folder.suppertide"), "not a library of Suppertide");
}

TEST_F(BadLibrary, IsNotThere)
{
    expectRefused(file("none.suppertide"), "There is no");
}

TEST_F(BadLibrary, IsNoise)
{
    test::Random random(7);
    std::string bytes(40'000, '\0');
    for (char& byte : bytes) {
        byte = static_cast<char>(random.between(-128, 127));
    }
    write(file("noise.suppertide"), bytes);
    expectRefused(file("noise.suppertide"), "not a library of Suppertide");
}

TEST_F(BadLibrary, IsEmpty)
{
    write(file("empty.suppertide"), "");
    expectRefused(file("empty.suppertide"), "");
}

TEST_F(BadLibrary, IsCutShort)
{
    const std::string whole = bytesOf(madeLibrary());
    ASSERT_GT(whole.size(), 20'000U);
    for (const std::size_t size : {50UL, 100UL, 5'000UL, whole.size() / 2, whole.size() - 4096}) {
        write(file("cut.suppertide"), whole.substr(0, size));
        expectRefused(file("cut.suppertide"), "library");
    }
}

TEST_F(BadLibrary, IsOfALaterVersion)
{
    const fs::path library = madeLibrary();
    sqlite3* database = nullptr;
    ASSERT_EQ(sqlite3_open(library.c_str(), &database), SQLITE_OK);
    ASSERT_EQ(sqlite3_exec(database, "PRAGMA user_version = 99", nullptr, nullptr, nullptr),
              SQLITE_OK);
    sqlite3_close(database);
    expectRefused(library, "later version of Suppertide");
}

TEST_F(BadLibrary, IsClosedToTheUser)
{
    const fs::path library = madeLibrary();
    fs::permissions(library, fs::perms::none);
    constexpr uid_t nobody = 65534; // by convention
    const bool isRoot = ::geteuid() == 0;
    if (isRoot) {
        fs::permissions(library.parent_path(), fs::perms::all);
        ASSERT_EQ(::seteuid(nobody), 0);
    }
    const Exit exit = run({"check", lunch, "--library", library.string()});
    if (isRoot) {
        ASSERT_EQ(::seteuid(0), 0);
    }
    EXPECT_EQ(exit, Exit::BadInput);
    EXPECT_THAT(err_.str(), HasSubstr("library.suppertide"));
    EXPECT_THAT(err_.str(), HasSubstr("closed to you"));
}

TEST_F(BadEvening, HasStepsThatWaitForEachOther)
{
    json& steps = recipe("roast-chicken")["steps"];
    ASSERT_GE(steps.size(), 2U);
    steps[0]["after"] = {steps[1]["id"]};
    steps[1]["after"] = {steps[0]["id"]};
    expectRefused("waits", "in a circle");
}

TEST_F(BadEvening, HasAVeryLongChainOfSteps)
{
    json steps = json::array();
    for (int i = 0; i < 100'000; ++i) {
        steps.push_back({{"id", "s" + std::to_string(i)}});
    }
    steps[0]["after"] = {"s99999"};
    recipe("roast-chicken")["steps"] = std::move(steps);
    expectRefused("(roast-chicken)", "100000 steps");
}

TEST_F(BadEvening, HasRecipesMadeFromEachOther)
{
    recipe("roast-chicken")["lines"].push_back(
        {{"id", "again"}, {"ingredient", "frittata"}, {"preparation", "herb-frittata"}});
    recipe("herb-frittata")["lines"].push_back(
        {{"id", "again"}, {"ingredient", "chicken"}, {"preparation", "roast-chicken"}});
    expectRefused("line “frittata”", "in turn");
}

TEST_F(BadEvening, HasAPreparationThatIsNotThere)
{
    recipe("roast-chicken")["lines"].push_back(
        {{"id", "gravy"}, {"ingredient", "gravy"}, {"preparation", "hidden-gravy"}});
    expectRefused("line “gravy”", "“hidden-gravy” is not in the library");
}

TEST_F(BadEvening, HasDurationsThatCannotBe)
{
    for (const json& wrong : {json(-5), json(-1'000'000), json(2'000'000), json(0.5), json("soon"),
                              json({30, 20, 10}), json({1, 2}), json(11 * 24 * 60)}) {
        const json before = evening_;
        recipe("roast-chicken")["steps"][0]["duration"] = wrong;
        expectRefused("(roast-chicken)", "");
        EXPECT_THAT(err_.str() + out_.str(), testing::Not(HasSubstr("defect")));
        evening_ = before;
    }
}

TEST_F(BadEvening, HasNoOvens)
{
    kitchen()["ovens"] = json::array();
    EXPECT_EQ(runOn(evening_), Exit::Clashes) << err_.str();
    EXPECT_THAT(out_.str(), HasSubstr("oven"));
    EXPECT_EQ(runOn(evening_, {"plan", "--seconds", "1"}), Exit::NoPlanInTime) << out_.str();
    EXPECT_THAT(err_.str(), HasSubstr("oven"));
    EXPECT_EQ(runOn(evening_, {"print"}), Exit::Done) << err_.str();
}

TEST_F(BadEvening, HasNothingInTheKitchenAndNobodyWhoCooks)
{
    kitchen() = {{"id", kitchen()["id"]}, {"name", "Empty room"}};
    for (const char* given : {"house_jobs", "trips", "hours"}) { // to cooks
        evening_["occasions"][0].erase(given);
    }
    EXPECT_EQ(runOn(evening_), Exit::Clashes) << err_.str();
    EXPECT_EQ(runOn(evening_, {"plan", "--seconds", "1"}), Exit::NoPlanInTime) << out_.str();
    EXPECT_NE(err_.str(), "");
    EXPECT_EQ(runOn(evening_, {"print"}), Exit::Done) << err_.str();
}

TEST_F(BadEvening, IsServedOutOfOrder)
{
    course(1)["serving"] = "2027-07-11T12:00";
    expectRefused("course “Dessert”", "before “Main”");
}

TEST_F(BadEvening, IsServedLongAgoOrInTheFarFuture)
{
    const struct
    {
        const char* year;
        bool isPast;
    } cases[] = {{"0001", true}, {"1583", true}, {"1969", true}, {"2026", true}, {"9999", false}};
    for (const auto& each : cases) {
        course(0)["serving"] = std::string(each.year) + "-07-11T13:00";
        course(1)["serving"] = std::string(each.year) + "-07-11T13:55";
        EXPECT_THAT(runOn(evening_), AnyOf(Exit::Done, Exit::Clashes)) << each.year << err_.str();
        EXPECT_EQ(out_.str().find("in the past") != std::string::npos, each.isPast) << each.year;
        EXPECT_EQ(runOn(evening_, {"print"}), Exit::Done) << err_.str();
    }
}

TEST_F(BadEvening, IsServedOnADayThatIsNot)
{
    for (const char* day :
         {"2027-02-29T13:00", "2027-13-01T13:00", "2027-07-11T25:00", "tomorrow"}) {
        course(0)["serving"] = day;
        expectRefused("courses[0]", day);
    }
}

json guests(int count)
{
    json all = json::array();
    for (int i = 0; i < count; ++i) {
        all.push_back({{"id", "g" + std::to_string(i)}, {"name", "Guest " + std::to_string(i)}});
    }
    return all;
}

TEST_F(BadEvening, HasNoGuestsOrFiveHundred)
{
    for (std::size_t number : {0U, 1U}) {
        for (json& dish : course(number)["dishes"]) {
            for (json& entry : dish["mix"]) {
                entry.erase("guests");
            }
        }
    }
    evening_["occasions"][0]["guests"] = guests(0);
    EXPECT_THAT(runOn(evening_), AnyOf(Exit::Done, Exit::Clashes)) << err_.str();
    EXPECT_EQ(runOn(evening_, {"print"}), Exit::Done) << err_.str();
    evening_["occasions"][0]["guests"] = guests(500);
    for (json& dish : course(0)["dishes"]) {
        dish["mix"][0]["portions"] = 500;
    }
    EXPECT_EQ(runOn(evening_), Exit::Clashes) << err_.str();
    EXPECT_EQ(runOn(evening_, {"print"}), Exit::Done) << err_.str();
    evening_["occasions"][0]["guests"] = guests(501);
    expectRefused("guests", "500 is the most");
}

TEST_F(BadEvening, AsksForBatchesBeyondCount)
{
    recipe("roast-chicken")["steps"][0]["portions_per_batch"] = 0.001;
    expectRefused("course “Main”", "batches");
}

TEST_F(BadEvening, AddsUpPortionsOfManyFractions)
{
    json& mix = course(0)["dishes"][0]["mix"];
    const json one = mix[0];
    mix = json::array();
    for (const int below : {997, 991, 983, 977, 971, 967, 953, 947}) {
        json entry = one;
        entry["portions"] = "1/" + std::to_string(below);
        mix.push_back(entry);
    }
    expectRefused("portions", "1/997");
}

TEST_F(BadEvening, HasNamesWithMarksPicturesAndLettersFromRightToLeft)
{
    const std::string name =
        "“Aunt” 'Bo's' \"best\" <b>&amp;</b> %s {} 🍲👩‍🍳 \u200Fעוגת "
        "גבינה\u200E $(rm) \\";
    evening_["occasions"][0]["name"] = name;
    course(0)["name"] = name;
    evening_["occasions"][0]["guests"][0]["name"] = name;
    kitchen()["cooks"][0]["name"] = name;
    kitchen()["ovens"][0]["name"] = name;
    recipe("roast-chicken")["name"] = name;
    recipe("roast-chicken")["steps"][0]["text"] = name;
    EXPECT_THAT(runOn(evening_), AnyOf(Exit::Done, Exit::Clashes)) << err_.str();
    EXPECT_EQ(runOn(evening_, {"print"}), Exit::Done) << err_.str();
    EXPECT_THAT(out_.str(), HasSubstr(name));
    const std::string pdf = file("odd \"name\" 🍲.pdf").string();
    EXPECT_EQ(runOn(evening_, {"print", "--pdf", pdf}), Exit::Done) << err_.str();
    EXPECT_EQ(bytesOf(pdf).substr(0, 5), "%PDF-");
    EXPECT_EQ(runOn(evening_, {"import"}), Exit::Done) << err_.str();
    const std::string kept = file("kept.json").string();
    EXPECT_EQ(run({"export", name, "--out", kept}), Exit::Done) << err_.str();
    EXPECT_EQ(json::parse(bytesOf(kept))["occasions"][0]["name"], name);
}

/// How many of the spoilt evenings are tried; SUPPERTIDE_BAD_EVENINGS says otherwise.
std::size_t triesWanted()
{
    const char* wanted = std::getenv("SUPPERTIDE_BAD_EVENINGS"); // NOLINT(concurrency-mt-unsafe)
    return wanted == nullptr ? 300 : std::stoul(wanted);
}

TEST_F(BadEvening, IsSpoiltAnywhere)
{
    std::vector<std::pair<test::JsonSpot, const test::Spoiling*>> tries;
    for (const test::JsonSpot& spot : test::spotOfEachForm(evening_)) {
        for (const test::Spoiling& spoiling : test::spoilings()) {
            tries.emplace_back(spot, &spoiling);
        }
    }
    test::Random random(11);
    std::ranges::shuffle(tries, random.engine());
    tries.resize(std::min(tries.size(), triesWanted()));
    int refused = 0;
    for (const auto& [spot, spoiling] : tries) {
        json spoilt = evening_;
        if (!spoiling->apply(spoilt, spot.pointer)) {
            continue;
        }
        const std::string what = spoiling->name + " at " + spot.pointer.to_string();
        SCOPED_TRACE(what);
        const Exit exit = runOn(spoilt);
        if (exit == Exit::BadInput) {
            ++refused;
            EXPECT_NE(err_.str(), "");
        } else {
            EXPECT_EQ(err_.str(), "");
            EXPECT_EQ(runOn(spoilt, {"print"}), Exit::Done) << err_.str();
        }
    }
    std::cout << tries.size() << " evenings, " << refused << " refused\n";
    EXPECT_GT(refused, static_cast<int>(tries.size()) / 2);
}

} // namespace
} // namespace suppertide::app
