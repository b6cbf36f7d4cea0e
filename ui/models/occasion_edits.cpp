#include "ui/models/occasion_edits.h"

#include <algorithm>
#include <set>

namespace suppertide::ui {

namespace {

bool isDishTaken(const Occasion& occasion, const std::string& id)
{
    return findDish(occasion, DishId{id}) != nullptr;
}

void shift(CivilTime& time, int days)
{
    time.date = addDays(time.date, days);
}

CivilTime later(CivilTime time, int minutes)
{
    // Half an hour on the clock on the wall; past midnight it is the next day.
    const int minute = time.clock.hour * 60 + time.clock.minute + minutes;
    constexpr int day = 24 * 60;
    return {addDays(time.date, minute / day), {minute % day / 60, minute % 60}};
}

Kitchen plainKitchen()
{
    Kitchen kitchen;
    kitchen.id = KitchenId{"kitchen"};
    kitchen.name = "My kitchen";
    kitchen.ovens.push_back({KitchenItemId{"oven"}, "Oven"});
    const std::array<std::pair<const char*, int>, 4> burners{
        {{"front left", 21}, {"front right", 18}, {"back left", 18}, {"back right", 14}}};
    for (const auto& [name, size] : burners) {
        Burner burner;
        burner.id = KitchenItemId{freshId(name, [](const std::string& /*id*/) { return false; })};
        burner.name = name;
        burner.size = centimetres(size);
        burner.power = watts(1800);
        kitchen.burners.push_back(burner);
    }
    kitchen.coldPlaces.push_back({KitchenItemId{"fridge"}, "Fridge", ColdKind::Fridge, litres(40)});
    KitchenCook cook;
    cook.id = CookId{"cook"};
    cook.name = "Cook";
    kitchen.cooks.push_back(cook);
    return kitchen;
}

} // namespace

const Course* findCourse(const Occasion& occasion, const DishId& dish)
{
    for (const Course& course : occasion.courses) {
        if (findIn(course.dishes, dish) != nullptr) {
            return &course;
        }
    }
    return nullptr;
}

const Dish* findDish(const Occasion& occasion, const DishId& dish)
{
    const Course* course = findCourse(occasion, dish);
    return course == nullptr ? nullptr : findIn(course->dishes, dish);
}

Dish* findDish(Occasion& occasion, const DishId& dish)
{
    for (Course& course : occasion.courses) {
        if (Dish* found = findIn(course.dishes, dish)) {
            return found;
        }
    }
    return nullptr;
}

Portions portionsWanted(const Occasion& occasion, const Course& course, const Recipe& recipe)
{
    if (occasion.guests.empty()) {
        return recipe.portions;
    }
    const Portions guests{static_cast<std::int64_t>(occasion.guests.size())};
    Portions served;
    for (const Dish& dish : course.dishes) {
        served = std::max(served, portionsOf(dish)); // a side feeds nobody anew
    }
    return served < guests && served > Portions{0} ? guests - served : guests;
}

WithDish withDishAdded(Occasion occasion, const CourseId& courseId, const Recipe& recipe,
                       const VariantId& variant, const Portions& portions)
{
    Course* course = findIn(occasion.courses, courseId);
    expects(course != nullptr, "a course of the occasion");
    const auto same = std::find_if(course->dishes.begin(), course->dishes.end(),
                                   [&](const Dish& dish) { return dish.recipe == recipe.id; });
    if (same != course->dishes.end()) {
        const DishId id = same->id;
        return {withPortions(std::move(occasion), id, variant, portions), id};
    }
    if (course->alternatives.empty()) {
        course->alternatives.push_back({AlternativeId{"main"}, course->name});
    }
    Dish dish;
    dish.id = DishId{freshId(recipe.id.text(),
                             [&](const std::string& id) { return isDishTaken(occasion, id); })};
    dish.recipe = recipe.id;
    dish.alternative = course->alternatives.front().id;
    dish.mix.push_back({variant, portions, {}});
    course->dishes.push_back(dish);
    return {std::move(occasion), dish.id};
}

LibraryState withCookForgotten(LibraryState library, const KitchenId& kitchen, const CookId& cook)
{
    const auto forget = [&cook](std::optional<CookId>& named) {
        if (named == cook) {
            named.reset();
        }
    };
    for (auto& [id, record] : library.occasions) {
        if (record->occasion.kitchen != kitchen) {
            continue;
        }
        OccasionRecord next = *record;
        next.occasion.hours.erase(cook);
        for (auto& [task, named] : next.layout.cooks) {
            std::erase(named, cook.text());
        }
        std::erase_if(next.layout.cooks, [](const auto& named) { return named.second.empty(); });
        for (HouseJob& job : next.occasion.houseJobs) {
            forget(job.cook);
        }
        for (ShoppingTrip& trip : next.occasion.trips) {
            forget(trip.cook);
        }
        for (Course& course : next.occasion.courses) {
            for (Dish& dish : course.dishes) {
                forget(dish.cook);
            }
        }
        record = std::make_shared<const OccasionRecord>(std::move(next));
    }
    return library;
}

Occasion withDishRemoved(Occasion occasion, const DishId& dish)
{
    for (Course& course : occasion.courses) {
        eraseFrom(course.dishes, dish);
    }
    for (ShoppingTrip& trip : occasion.trips) {
        std::erase(trip.forDishes, dish);
    }
    return occasion;
}

Occasion withPortions(Occasion occasion, const DishId& dishId, const VariantId& variant,
                      const Portions& portions)
{
    Dish* dish = findDish(occasion, dishId);
    expects(dish != nullptr, "a dish of the occasion");
    const auto entry = std::find_if(dish->mix.begin(), dish->mix.end(),
                                    [&](const MixEntry& mix) { return mix.variant == variant; });
    if (portions == Portions{0}) {
        if (entry != dish->mix.end()) {
            dish->mix.erase(entry);
        }
    } else if (entry == dish->mix.end()) {
        dish->mix.push_back({variant, portions, {}});
    } else {
        entry->portions = portions;
    }
    return occasion;
}

std::optional<CivilDate> dateOf(const Occasion& occasion)
{
    return occasion.courses.empty() ? std::nullopt
                                    : std::optional(occasion.courses.front().serving.date);
}

Occasion movedTo(Occasion occasion, const CivilDate& date)
{
    const auto now = dateOf(occasion);
    if (!now) {
        return occasion;
    }
    const int days = daysBetween(*now, date);
    for (Course& course : occasion.courses) {
        shift(course.serving, days);
    }
    for (HouseJob& job : occasion.houseJobs) {
        shift(job.earliest, days);
        shift(job.latest, days);
    }
    for (ShoppingTrip& trip : occasion.trips) {
        shift(trip.earliest, days);
        shift(trip.latest, days);
    }
    for (auto& [cook, hours] : occasion.hours) {
        for (HoursOfDay& day : hours) {
            day.date = addDays(day.date, days);
        }
    }
    return occasion;
}

Occasion withCourseAdded(Occasion occasion, const std::string& name, const CivilDate& date)
{
    Course course;
    course.id = freshIdIn(occasion.courses, name);
    course.name = name;
    course.serving = occasion.courses.empty() ? CivilTime{date, {19, 30}}
                                              : later(occasion.courses.back().serving, 30);
    course.alternatives.push_back({AlternativeId{"main"}, name});
    occasion.courses.push_back(std::move(course));
    return occasion;
}

Occasion sorted(Occasion occasion)
{
    std::stable_sort(occasion.courses.begin(), occasion.courses.end(),
                     [](const Course& a, const Course& b) { return a.serving < b.serving; });
    return occasion;
}

LibraryState withNewOccasion(const LibraryState& library, const std::string& name,
                             const CivilDate& date)
{
    LibraryState next = library;
    if (next.kitchens.empty()) {
        next = withKitchen(next, plainKitchen());
    }
    const OccasionPtr before = openOccasion(library);
    OccasionRecord record;
    record.occasion.id = OccasionId{freshId(
        name, [&](const std::string& id) { return next.occasions.contains(OccasionId{id}); })};
    record.occasion.name = name;
    record.occasion.kitchen = before && next.kitchens.contains(before->occasion.kitchen)
                                  ? before->occasion.kitchen
                                  : next.kitchens.begin()->first;
    if (before) {
        record.occasion.zone = before->occasion.zone;
    }
    record.occasion = withCourseAdded(std::move(record.occasion), "Main", date);
    next.open = record.occasion.id;
    const OccasionId id = record.occasion.id;
    next.occasions[id] = std::make_shared<const OccasionRecord>(std::move(record));
    return next;
}

LibraryState withOccasionCopied(const LibraryState& library)
{
    const OccasionPtr open = openOccasion(library);
    expects(open != nullptr, "an open occasion");
    LibraryState next = library;
    OccasionRecord copy = *open;
    copy.occasion.id = OccasionId{freshId(open->occasion.id.text(), [&](const std::string& id) {
        return next.occasions.contains(OccasionId{id});
    })};
    copy.occasion.name += " (copy)";
    const OccasionId id = copy.occasion.id;
    next.open = id;
    next.occasions[id] = std::make_shared<const OccasionRecord>(std::move(copy));
    return next;
}

LibraryState withOccasionRemoved(const LibraryState& library, const OccasionId& id)
{
    LibraryState next = library;
    next.occasions.erase(id);
    if (next.open == id) {
        next.open.reset();
        if (!next.occasions.empty()) {
            next.open = next.occasions.begin()->first;
        }
    }
    return next;
}

LibraryState withOpened(const LibraryState& library, const OccasionId& id)
{
    LibraryState next = library;
    next.open = id;
    return next;
}

} // namespace suppertide::ui
