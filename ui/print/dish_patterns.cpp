#include "ui/print/dish_patterns.h"

#include <algorithm>
#include <limits>

#include "ui/theme/palette.h"

namespace suppertide::ui {

namespace {

struct Met
{
    int course;
    DishId dish;
    std::string name;
};

std::map<CourseId, int> numbersOfCourses(const PerHourPlan& plan)
{
    std::map<CourseId, int> numbers;
    for (const SheetDay& day : plan.days) {
        for (const SheetHour& hour : day.hours) {
            for (const SheetServing& serving : hour.servings) {
                numbers.emplace(serving.course, serving.number);
            }
        }
    }
    return numbers;
}

std::vector<Met> dishesMet(const PerHourPlan& plan)
{
    const std::map<CourseId, int> numbers = numbersOfCourses(plan);
    std::vector<Met> met;
    for (const TaskSource& source : plan.plan->formulation->tasks) {
        if (!source.dish) {
            continue;
        }
        const auto number = source.course ? numbers.find(*source.course) : numbers.end();
        met.push_back({number == numbers.end() ? std::numeric_limits<int>::max() : number->second,
                       *source.dish, source.dishName});
    }
    std::stable_sort(met.begin(), met.end(),
                     [](const Met& a, const Met& b) { return a.course < b.course; });
    return met;
}

} // namespace

DishPatterns::DishPatterns(const PerHourPlan& plan, const std::map<DishId, int>& looks)
    : looks_(looks)
{
    int next = 0;
    for (const auto& [dish, look] : looks_) {
        next = std::max(next, look + 1);
    }
    for (const Met& met : dishesMet(plan)) {
        if (names_.emplace(met.dish, met.name).second) {
            dishes_.push_back(met.dish);
            if (looks_.emplace(met.dish, next).second) {
                ++next;
            }
        }
    }
}

std::optional<Pattern> DishPatterns::find(const std::optional<DishId>& dish) const
{
    const auto look = dish ? looks_.find(*dish) : looks_.end();
    if (look == looks_.end()) {
        return std::nullopt;
    }
    return paletteFor(Appearance::Light).dish(look->second).pattern;
}

std::string DishPatterns::nameOf(const DishId& dish) const
{
    const auto name = names_.find(dish);
    return name == names_.end() ? std::string{} : name->second;
}

} // namespace suppertide::ui
