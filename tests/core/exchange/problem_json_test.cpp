// Problems and schedules: what is written reads back equal, and files that no cook would write are
// refused without harm.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "core/exchange/problem_json.h"
#include "tests/support/problem/random_problem.h"
#include "tests/support/problem/small_problem.h"

namespace suppertide {
namespace {

using test::Random;
using test::SmallProblem;

/// Ids and names may be any text.
std::string oddText(Random& random, std::string text)
{
    static const std::vector<std::string> odd{"\"", "\\", "\n", "\t", " ",    "“é”",
                                              "😀",  "/",  "{}", "[]", "\x01", ":"};
    for (std::int64_t i = random.between(0, 3); i > 0; --i) {
        text += odd[static_cast<std::size_t>(
            random.between(0, static_cast<std::int64_t>(odd.size()) - 1))];
    }
    return text;
}

template <typename Items>
void renameAll(Random& random, Items& items)
{
    for (auto& item : items) {
        item.id = oddText(random, item.id);
    }
}

Problem withOddNames(Problem problem, Random& random)
{
    problem.name = oddText(random, "");
    renameAll(random, problem.tasks);
    renameAll(random, problem.lags);
    renameAll(random, problem.counts);
    renameAll(random, problem.pools);
    for (Pool& pool : problem.pools) {
        renameAll(random, pool.units);
    }
    renameAll(random, problem.demands);
    renameAll(random, problem.cooks);
    renameAll(random, problem.ovens);
    renameAll(random, problem.ovenDemands);
    renameAll(random, problem.choices);
    for (Choice& choice : problem.choices) {
        renameAll(random, choice.options);
    }
    return problem;
}

/// A list of free times in a file has no empty ones.
Problem withoutEmptyTimes(Problem problem)
{
    for (Cook& cook : problem.cooks) {
        std::erase_if(cook.free, [](const Interval& free) { return free.empty(); });
    }
    return problem;
}

Schedule withClaims(const Problem& problem, Schedule schedule, Random& random)
{
    schedule.status = static_cast<ScheduleStatus>(random.between(0, 3));
    const bool isOptimal = schedule.status == ScheduleStatus::Optimal;
    if (isOptimal || schedule.status == ScheduleStatus::Feasible || random.oneIn(3)) {
        schedule.cost = random.between(0, 1'000'000'000'000'000'000);
    }
    if (isOptimal || random.oneIn(3)) {
        schedule.bound = schedule.cost.value_or(7);
    }
    if (schedule.status == ScheduleStatus::Infeasible && !problem.lags.empty()) {
        schedule.conflict = {"lag:" + problem.lags[LagIndex{0}].id,
                             "window:" + problem.tasks[TaskIndex{1}].id};
    }
    if (random.oneIn(3) && schedule.cooks[TaskIndex{0}].empty()) {
        schedule.namedWithoutCooks = {TaskIndex{0}};
    }
    return schedule;
}

TEST(ProblemJson, ReadsBackWhatItWrites)
{
    test::forEachSeed(500, [](Random& random) {
        const Problem problem = withoutEmptyTimes(withOddNames(test::anyProblem(random), random));
        const std::string text = writeProblem(problem);
        const auto read = readProblem(text);
        ASSERT_TRUE(read) << read.error().forCook << "\n" << text;
        EXPECT_EQ(*read, problem) << text;
        EXPECT_EQ(writeProblem(*read), text);
    });
}

TEST(ScheduleJson, ReadsBackWhatItWrites)
{
    test::forEachSeed(500, [](Random& random) {
        const Problem problem = withOddNames(test::anyProblem(random), random);
        const Schedule schedule = withClaims(problem, test::anySchedule(problem, random), random);
        const std::string text = writeSchedule(schedule, problem);
        const auto read = readSchedule(text, problem);
        ASSERT_TRUE(read) << read.error().forCook << "\n" << text;
        EXPECT_EQ(*read, schedule) << text;
        EXPECT_EQ(writeSchedule(*read, problem), text);
    });
}

TEST(ProblemJson, KeepsRatesToTheThousandth)
{
    for (const std::int64_t rate : std::initializer_list<std::int64_t>{
             1, 10, 333, 1'000, 3'125, 12'500, 999'999, 1'000'000'000'000}) {
        SmallProblem made(10);
        const OvenIndex oven = made.oven("o", 1);
        made.problem.ovens[oven].heatMilliCPerMin = rate;
        const auto read = readProblem(writeProblem(made.problem));
        if (rate > 1'000'000'000) {
            EXPECT_FALSE(read) << rate;
            continue;
        }
        ASSERT_TRUE(read) << read.error().forCook;
        EXPECT_EQ(read->ovens[oven].heatMilliCPerMin, rate);
    }
}

TEST(ProblemJson, LeavesOutWhatIsTheDefault)
{
    SmallProblem made(10);
    made.work("t", 5);
    made.cook("c");
    EXPECT_EQ(writeProblem(made.problem),
              "{\"format\": \"suppertide-problem\", \"version\": 1,\n"
              " \"name\": \"small\",\n"
              " \"horizon\": 10,\n"
              " \"tasks\": [\n"
              "  {\"id\":\"t\",\"duration\":5,\"hands\":{\"attention\":100}}],\n"
              " \"cooks\": [\n"
              "  {\"id\":\"c\"}]}\n");
}

TEST(ProblemJson, FillsInDefaults)
{
    const auto read = readProblem(R"({"format": "suppertide-problem", "version": 1, "horizon": 60,
        "tasks": [{"id": "t", "duration": 5, "hands": {"attention": 10}}],
        "lags": [{"id": "l", "from": ["t", "start"], "to": ["t", "end"]}],
        "counts": [{"id": "n", "capacity": 0}], "pools": [{"id": "p", "units": [{"id": "u"}]}],
        "demands": [{"id": "d", "from": ["t", "start"], "to": ["t", "end"], "count": "n"},
                    {"id": "e", "from": ["t", "start"], "to": ["t", "end"], "pool": "p"}],
        "cooks": [{"id": "c"}],
        "ovens": [{"id": "o", "shelves": 0, "min_c": 0, "max_c": 0, "start_c": 0, "ambient_c": 0,
                   "heat_c_per_min": 0.001, "cool_c_per_min": 1}],
        "oven_demands": [{"id": "x", "from": ["t", "start"], "to": ["t", "end"],
                          "accept": [-5, -5]}],
        "choices": [{"id": "m", "options": [{"id": "a"}]}],
        "costs": {"before": {"starts": {}, "rate": 0}}})");
    ASSERT_TRUE(read) << read.error().forCook;
    const Problem& problem = *read;
    const Task& task = problem.tasks[TaskIndex{0}];
    EXPECT_EQ(problem.name, "");
    EXPECT_EQ(task.window, interval(0, 60));
    EXPECT_EQ(task.hands, (Hands{Attention::percent(10), 1, std::nullopt}));
    EXPECT_FALSE(task.atTable);
    const Lag& lag = problem.lags[LagIndex{0}];
    EXPECT_EQ(lag.min, std::nullopt);
    EXPECT_EQ(lag.max, std::nullopt);
    EXPECT_EQ(lag.loss, 0);
    EXPECT_EQ(problem.demands[DemandIndex{0}].amount, 1);
    EXPECT_EQ(problem.demands[DemandIndex{1}].minSize, 0);
    EXPECT_EQ(problem.demands[DemandIndex{1}].units, std::nullopt);
    EXPECT_EQ(problem.pools[PoolIndex{0}].units[UnitIndex{0}].size, 0);
    EXPECT_EQ(problem.cooks[CookIndex{0}].free, std::vector{interval(0, 60)});
    EXPECT_EQ(problem.ovens[OvenIndex{0}].heatMilliCPerMin, 1);
    const OvenDemand& demand = problem.ovenDemands[OvenDemandIndex{0}];
    EXPECT_EQ(demand.shelves, 1);
    EXPECT_EQ(demand.prefer, std::nullopt);
    EXPECT_EQ(demand.ovens, std::nullopt);
    EXPECT_EQ(demand.group, std::nullopt);
    EXPECT_EQ(demand.mode, std::nullopt);
    EXPECT_EQ(problem.choices[ChoiceIndex{0}].options[OptionIndex{0}].cost, 0);
    EXPECT_EQ(problem.costs, Costs{});
}

TEST(ProblemJson, TakesWhatIsWellFormedButCannotBeMet)
{
    const auto read = readProblem(R"({"format": "suppertide-problem", "version": 1, "horizon": 60,
        "tasks": [{"id": "t", "duration": 90, "window": [7, 8],
                   "hands": {"attention": 10, "cooks": 9, "skill": "nobody's"}}],
        "lags": [{"id": "l", "from": ["t", "start"], "to": ["t", "end"], "min": 5, "max": -5}]})");
    ASSERT_TRUE(read) << read.error().forCook;
    EXPECT_EQ(read->tasks.size(), 1U);
}

std::string nested(const std::string& open, const std::string& close, int depth)
{
    std::string text;
    for (int i = 0; i < depth; ++i) {
        text += open;
    }
    text += "0";
    for (int i = 0; i < depth; ++i) {
        text += close;
    }
    return text;
}

TEST(ProblemJson, RefusesDeepNestingAtItsPlace)
{
    for (const int depth : {65, 1'000, 1'000'000}) {
        const auto lists = readProblem(nested("[", "]", depth));
        ASSERT_FALSE(lists);
        EXPECT_NE(lists.error().forCook.find("nested deeper than 64 levels"), std::string::npos)
            << lists.error().forCook;
        EXPECT_FALSE(readProblem(nested(R"({"a":)", "}", depth)));
    }
    const auto within = readProblem(R"({"tasks": )" + nested("[", "]", 100) + "}");
    ASSERT_FALSE(within);
    EXPECT_NE(within.error().forCook.find("tasks[0][0]"), std::string::npos)
        << within.error().forCook;
}

std::string sentenceOfHorizon(const std::string& number)
{
    const auto read =
        readProblem(R"({"format": "suppertide-problem", "version": 1, "horizon": )" + number + "}");
    return read ? "read without a word" : read.error().forCook;
}

TEST(ProblemJson, RefusesHugeNumbersWithoutHarm)
{
    for (const std::string number :
         {"1e-400", "99999999999999999999", "18446744073709551615", "9223372036854775808",
          "-9223372036854775809", "1.0000000001", "1e9", "1000000001"}) {
        EXPECT_NE(sentenceOfHorizon(number).find("horizon: "), std::string::npos)
            << sentenceOfHorizon(number);
    }
    for (const std::string number : {"1e400", "-1e400", "1E+999999999999999999999"}) {
        EXPECT_NE(sentenceOfHorizon(number).find("too large a number at line 1, column "),
                  std::string::npos)
            << sentenceOfHorizon(number);
    }
}

TEST(ProblemJson, RefusesAHugeText)
{
    const auto read = readProblem(std::string((16U << 20U) + 1, ' '));
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().kind, FailureKind::BadInput);
}

TEST(ProblemJson, NamesTheLineOfWhatIsNotJson)
{
    const auto failure = [](const std::string& text) { return readProblem(text).error().forCook; };
    EXPECT_EQ(failure("{\"format\": \"suppertide-problem\",\n \"version\" 1}"),
              "The problem cannot be read. This is not JSON at line 2, column 12. "
              "Correct it there.");
    EXPECT_EQ(failure("\xEF\xBB\xBF{}"),
              "The problem cannot be read. The text begins with a byte order mark. "
              "Save it as plain UTF-8.");
    EXPECT_EQ(failure(""), "The problem cannot be read. This is not JSON at line 1, column 1. "
                           "Correct it there.");
    EXPECT_EQ(failure("{} {}"), "The problem cannot be read. This is not JSON at line 1, "
                                "column 4. Correct it there.");
}

/// Cuts, doubles and garbles of a good text must fail or read; they must not crash.
TEST(ProblemJson, SurvivesGarbledText)
{
    test::forEachSeed(2000, [](Random& random) {
        const Problem problem = test::anyProblem(random);
        std::string text = writeProblem(problem);
        const auto anywhere = [&] {
            return static_cast<std::size_t>(
                random.between(0, static_cast<std::int64_t>(text.size()) - 1));
        };
        for (std::int64_t i = random.between(1, 3); i > 0; --i) {
            switch (random.between(0, 3)) {
            case 0:
                text.resize(anywhere() + 1);
                break;
            case 1:
                text[anywhere()] = static_cast<char>(random.between(0, 255));
                break;
            case 2:
                text.insert(anywhere(), text.substr(anywhere(), 20));
                break;
            default:
                text.erase(anywhere(), static_cast<std::size_t>(random.between(1, 10)));
            }
        }
        const auto read = readProblem(text);
        if (read) {
            EXPECT_TRUE(readProblem(writeProblem(*read)));
        } else {
            EXPECT_EQ(read.error().kind, FailureKind::BadInput);
        }
    });
}

TEST(ProblemJson, NamesTheFileThatIsNotThere)
{
    const auto problem = loadProblem("/no/such/file.json");
    ASSERT_FALSE(problem);
    EXPECT_EQ(problem.error().kind, FailureKind::NotFound);
    EXPECT_NE(problem.error().forCook.find("/no/such/file.json"), std::string::npos);
    EXPECT_FALSE(loadSchedule("/no/such/file.json", Problem{}));
}

TEST(ProblemJson, RefusesAFolder)
{
    EXPECT_FALSE(loadProblem(std::filesystem::temp_directory_path().string()));
}

} // namespace
} // namespace suppertide
