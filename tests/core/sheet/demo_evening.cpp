#include "tests/core/sheet/demo_evening.h"

#include <chrono>
#include <filesystem>
#include <stdexcept>

#include "core/exchange/exchange.h"
#include "core/plan/lay_out.h"
#include "core/propose/make_plan.h"

namespace suppertide::test {

namespace {

namespace fs = std::filesystem;

const LibraryState& demo()
{
    static const LibraryState state = [] {
        LibraryState all;
        for (const auto& entry :
             fs::recursive_directory_iterator(fs::path(SUPPERTIDE_SOURCE_DIR) / "demo-db")) {
            if (entry.path().extension() != ".json") {
                continue;
            }
            const auto content = readExchangeFile(entry.path());
            if (!content) {
                throw std::runtime_error(content.error().forCook);
            }
            all = imported(std::move(all), *content);
        }
        return all;
    }();
    return state;
}

PlanInput inputOf(const std::string& occasion)
{
    const OccasionRecord& record = *demo().occasions.at(OccasionId{occasion});
    PlanInput input;
    input.occasion = std::make_shared<const Occasion>(record.occasion);
    input.kitchen = demo().kitchens.at(record.occasion.kitchen);
    input.recipes = {demo().recipes.begin(), demo().recipes.end()};
    input.layout = std::make_shared<const Layout>(record.layout);
    return input;
}

} // namespace

DemoEvening laidOut(const std::string& occasion)
{
    DemoEvening evening{inputOf(occasion), nullptr};
    const auto formulation = formulate(evening.input);
    if (!formulation) {
        throw std::runtime_error(formulation.error().forCook);
    }
    evening.plan =
        judgePlan(*formulation, evening.input, layOut(**formulation, *evening.input.layout));
    return evening;
}

DemoEvening planned(const std::string& occasion)
{
    DemoEvening evening{inputOf(occasion), nullptr};
    PlanRequest request{evening.input, {}, 0};
    request.limits.wallClock = std::chrono::minutes(5);
    request.limits.steps = 20'000;
    const auto outcome = makePlan(request);
    if (!outcome) {
        throw std::runtime_error(outcome.error().forCook);
    }
    const auto* found = std::get_if<PlanFound>(&*outcome);
    if (found == nullptr) {
        throw std::runtime_error("no plan for " + occasion);
    }
    evening.plan = found->plan;
    return evening;
}

} // namespace suppertide::test
