// Compares the menus of an occasion from exchange files, with prices, and says how long it took and
// how much memory it needed; with --menus N the occasion is first given more alternatives, so that
// it has N menus or a few more; with --stop-after MS it is stopped and told how soon it ended:
// compare_evening [--menus N] [--threads T] [--seconds S] [--stop-after MS] OCCASION FILE…
#include <fmt/format.h>
#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <iostream>
#include <optional>
#include <span>
#include <string>
#include <thread>

#include "core/exchange/exchange.h"
#include "core/larder/ingredient_book.h"
#include "core/menus/compare.h"
#include "core/shopping/menu_price.h"
#include "tests/bench/bench_input.h"

namespace suppertide {

namespace {

using SteadyClock = std::chrono::steady_clock;
using Milliseconds = std::chrono::duration<double, std::milli>;

struct Wanted
{
    std::string occasion;
    std::size_t menus = 0;
    int threads = 2;
    int seconds = 600;
    std::optional<int> stopAfter; // milliseconds
    std::vector<std::string> files;
};

Wanted wantedFrom(std::span<char*> words)
{
    Wanted wanted;
    for (std::size_t i = 1; i < words.size(); ++i) {
        const std::string word = words[i];
        const bool hasValue = i + 1 < words.size();
        if (word == "--menus" && hasValue) {
            wanted.menus = static_cast<std::size_t>(std::atoll(words[++i]));
        } else if (word == "--threads" && hasValue) {
            wanted.threads = std::atoi(words[++i]);
        } else if (word == "--seconds" && hasValue) {
            wanted.seconds = std::atoi(words[++i]);
        } else if (word == "--stop-after" && hasValue) {
            wanted.stopAfter = std::atoi(words[++i]);
        } else if (wanted.occasion.empty()) {
            wanted.occasion = word;
        } else {
            wanted.files.push_back(word);
        }
    }
    return wanted;
}

/// Another recipe like this one: every step that takes ten minutes or more takes a little longer.
std::shared_ptr<const Recipe> another(const Recipe& recipe, int number)
{
    Recipe made = recipe;
    made.id = RecipeId{fmt::format("{}-{}", recipe.id.text(), number)};
    made.name = fmt::format("{} {}", recipe.name, number);
    const auto lengthen = [number](RecipePart& part) {
        for (Step& step : part.steps) {
            if (step.duration.least >= Minutes{10} && step.uses.empty()) {
                const Minutes more{number % 5};
                step.duration.likely += more;
                step.duration.most += more;
            }
        }
    };
    lengthen(made.common);
    for (Variant& variant : made.variants) {
        lengthen(variant.adds);
    }
    return std::make_shared<const Recipe>(std::move(made));
}

/// The course with one more alternative, made after the `model`-th of its own.
void addAlternative(Course& course, std::size_t model, int number, PlanInput& input)
{
    Alternative alternative = course.alternatives[model];
    const AlternativeId likeIt = alternative.id;
    alternative.id = AlternativeId{fmt::format("{}-{}", likeIt.text(), number)};
    alternative.name = fmt::format("{} {}", alternative.name, number);
    const std::size_t count = course.dishes.size();
    for (std::size_t i = 0; i < count; ++i) {
        if (course.dishes[i].alternative != likeIt) {
            continue;
        }
        Dish dish = course.dishes[i];
        dish.id = DishId{fmt::format("{}-{}", dish.id.text(), number)};
        dish.alternative = alternative.id;
        dish.mix.clear();
        const auto recipe = another(*input.recipes.at(dish.recipe), number);
        dish.recipe = recipe->id;
        input.recipes.emplace(recipe->id, recipe);
        course.dishes.push_back(std::move(dish));
    }
    course.alternatives.push_back(std::move(alternative));
}

std::size_t menusOf(const Occasion& occasion)
{
    std::size_t count = 1;
    for (const Course& course : occasion.courses) {
        count *= menus::leadingAlternatives(course).size();
    }
    return count;
}

/// Courses take turns in being given one more, the one with fewest first.
PlanInput withMenus(PlanInput input, std::size_t wanted)
{
    Occasion occasion = *input.occasion;
    std::vector<std::size_t> own;
    for (const Course& course : occasion.courses) {
        own.push_back(menus::leadingAlternatives(course).size());
    }
    while (menusOf(occasion) < wanted) {
        const auto fewest = std::ranges::min_element(occasion.courses, {}, [](const Course& each) {
            return menus::leadingAlternatives(each).size();
        });
        const auto index = static_cast<std::size_t>(fewest - occasion.courses.begin());
        const std::vector<AlternativeId> leading = menus::leadingAlternatives(*fewest);
        const AlternativeId like = leading[leading.size() % own[index]];
        const auto model = std::ranges::find(fewest->alternatives, like, &Alternative::id);
        addAlternative(*fewest, static_cast<std::size_t>(model - fewest->alternatives.begin()),
                       static_cast<int>(leading.size()) + 1, input);
    }
    input.occasion = std::make_shared<const Occasion>(std::move(occasion));
    return input;
}

void show(const menus::Comparison& comparison)
{
    const auto count = [&comparison](menus::Cookable cookable) {
        return std::ranges::count(comparison.menus, cookable, &menus::ComparedMenu::cookable);
    };
    const auto priced = std::ranges::count_if(
        comparison.menus, [](const auto& menu) { return menu.price.has_value(); });
    std::cout << fmt::format("{} menus: {} can be cooked, {} cannot, {} not settled; {} priced{}\n",
                             comparison.menus.size(), count(menus::Cookable::Yes),
                             count(menus::Cookable::No), count(menus::Cookable::NotSettled), priced,
                             comparison.isStopped ? "; stopped" : "");
}

/// When a milestone was first passed, since the beginning.
struct Milestones
{
    std::optional<Milliseconds> begun;
    std::optional<Milliseconds> eachOnce;
};

int run(const Wanted& wanted)
{
    const auto state = bench::stateFrom(wanted.files);
    if (!state) {
        std::cerr << state.error().forCook << "\n";
        return 2;
    }
    PlanInput input = bench::inputFrom(*state, wanted.occasion);
    input.ingredients = ingredientBook(larderOf(*state));
    input = withMenus(std::move(input), wanted.menus);
    menus::CompareRequest request{input, {}, {}, 0};
    request.limits.wallClock = std::chrono::seconds(wanted.seconds);
    request.limits.threads = wanted.threads;
    request.price = shopping::priceOfMenus(larderOf(*state));

    std::stop_source stop;
    SteadyClock::time_point stoppedAt;
    std::jthread stopper;
    const auto begin = SteadyClock::now();
    if (wanted.stopAfter) {
        stopper = std::jthread([&] {
            std::this_thread::sleep_for(std::chrono::milliseconds(*wanted.stopAfter));
            stoppedAt = SteadyClock::now();
            stop.request_stop();
        });
    }
    Milestones passed;
    const auto comparison =
        menus::compareMenus(request, stop.get_token(), [&](const menus::CompareProgress& progress) {
            const Milliseconds now = SteadyClock::now() - begin;
            if (progress.begun != nullptr) {
                passed.begun = now;
            } else if (!passed.eachOnce && progress.done >= progress.toDo / 4) {
                passed.eachOnce = now;
            }
        });
    const auto end = SteadyClock::now();
    if (!comparison) {
        std::cerr << comparison.error().forCook << "\n";
        return 2;
    }
    show(*comparison);
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    std::cout << fmt::format(
        "begun after {:.0f} ms, each looked at once after {:.0f} ms, all after {:.0f} ms; "
        "{} MB at most\n",
        passed.begun.value_or(Milliseconds{0}).count(),
        passed.eachOnce.value_or(Milliseconds{0}).count(), Milliseconds(end - begin).count(),
        used.ru_maxrss / 1024);
    if (wanted.stopAfter) {
        stopper.join();
        std::cout << fmt::format("ended {:.0f} ms after it was stopped\n",
                                 Milliseconds(end - stoppedAt).count());
    }
    return 0;
}

} // namespace

} // namespace suppertide

int main(int argc, char** argv)
{
    return suppertide::run(suppertide::wantedFrom(std::span(argv, static_cast<std::size_t>(argc))));
}
