#include "core/menus/menu_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/base/contracts.h"
#include "core/menus/main_ingredients.h"
#include "core/plan/making.h"

namespace suppertide::menus {

namespace {

/// Main ingredients of all that is cooked of a mix.
std::vector<std::string> mainsOf(const CourseMix& mix, const RecipeTable& recipes,
                                 const IngredientBook& ingredients)
{
    std::set<std::string> mains;
    for (const Dish& dish : mix.dishes) {
        for (const MixEntry& entry : dish.mix) {
            const auto own =
                mainIngredients(*recipes.at(dish.recipe), entry.variant, recipes, ingredients);
            mains.insert(own.begin(), own.end());
        }
    }
    return {mains.begin(), mains.end()};
}

Failure tooMany(const Occasion& occasion)
{
    return {FailureKind::BadInput,
            fmt::format("“{}” has more than {} menus, more than can be compared. Take some "
                        "alternatives away, or say which are for everybody.",
                        occasion.name, mostMenus),
            occasion.id.text()};
}

void addEach(std::vector<GuestId>& guests, const GuestId& guest)
{
    if (std::ranges::find(guests, guest) == guests.end()) {
        guests.push_back(guest);
    }
}

} // namespace

Result<MenuTable> MenuTable::make(const PlanInput& input)
{
    const RecipeTable recipes = recipeTable(input);
    if (const auto faults = faultsOf(*input.occasion, *input.kitchen, recipes); !faults.empty()) {
        return Failure{FailureKind::BadInput,
                       fmt::format("The menus of “{}” cannot be compared. {}: {}",
                                   input.occasion->name, faults.front().place,
                                   faults.front().sentence),
                       faults.front().place};
    }
    MenuTable table;
    table.size_ = 1;
    for (const Course& course : input.occasion->courses) {
        table.size_ *= leadingAlternatives(course).size();
        if (table.size_ > mostMenus) {
            return tooMany(*input.occasion);
        }
    }
    for (const Course& course : input.occasion->courses) {
        const CourseOffer offer = offerOf(input, course);
        auto& mixes = table.mixes_.emplace_back();
        auto& mains = table.mains_.emplace_back();
        for (const AlternativeId& leading : offer.alternatives) {
            mixes.push_back(mixOf(input, offer, leading));
            mains.push_back(mainsOf(mixes.back(), recipes, input.ingredients));
        }
    }
    return table;
}

std::vector<const CourseMix*> MenuTable::menu(std::size_t number) const
{
    expects(number < size_, "a menu of the table");
    std::vector<const CourseMix*> result(mixes_.size());
    for (std::size_t course = mixes_.size(); course-- > 0;) {
        result[course] = &mixes_[course][number % mixes_[course].size()];
        number /= mixes_[course].size();
    }
    return result;
}

Occasion MenuTable::occasion(const Occasion& occasion, std::size_t number) const
{
    Occasion result = occasion;
    const std::vector<const CourseMix*> mixes = menu(number);
    for (std::size_t i = 0; i < mixes.size(); ++i) {
        result.courses[i] = withMix(std::move(result.courses[i]), *mixes[i]);
    }
    return result;
}

ComparedMenu MenuTable::unplanned(std::size_t number) const
{
    ComparedMenu result;
    result.number = number;
    std::map<std::string, std::vector<CourseId>> coursesOf;
    const std::vector<const CourseMix*> mixes = menu(number);
    for (std::size_t i = 0; i < mixes.size(); ++i) {
        const CourseMix& mix = *mixes[i];
        result.leading.push_back(mix.leading);
        for (const NotServed& each : mix.notServed) {
            addEach(result.notServed, each.guest);
        }
        for (const GuestId& guest : mix.unsure()) {
            addEach(result.unsure, guest);
        }
        result.extraSteps += mix.extraSteps;
        const auto which = static_cast<std::size_t>(&mix - mixes_[i].data());
        for (const std::string& ingredient : mains_[i][which]) {
            coursesOf[ingredient].push_back(mix.course);
        }
    }
    for (auto& [ingredient, courses] : coursesOf) {
        if (courses.size() > 1) {
            result.repeated.push_back({ingredient, std::move(courses)});
        }
    }
    return result;
}

std::optional<std::size_t> MenuTable::find(const std::vector<AlternativeId>& leading) const
{
    if (leading.size() != mixes_.size()) {
        return std::nullopt;
    }
    std::size_t number = 0;
    for (std::size_t course = 0; course < mixes_.size(); ++course) {
        const auto mix = std::ranges::find(mixes_[course], leading[course], &CourseMix::leading);
        if (mix == mixes_[course].end()) {
            return std::nullopt;
        }
        number =
            number * mixes_[course].size() + static_cast<std::size_t>(mix - mixes_[course].begin());
    }
    return number;
}

} // namespace suppertide::menus
