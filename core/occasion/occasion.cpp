#include "core/occasion/occasion.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/recipe/temperature_methods.h"

namespace suppertide {

namespace {

constexpr std::size_t mostGuests = 500;
constexpr int mostDays = 7;
// As in a recipe: parts that a cook would share out.
constexpr std::int64_t finestPortion = 12;
const Portions mostOfOneGuest{4};

bool isOnClock(const ClockTime& clock)
{
    return clock.hour >= 0 && clock.hour < 24 && clock.minute >= 0 && clock.minute < 60;
}

bool isInCalendar(const CivilTime& time)
{
    return isValid(time.date) && isOnClock(time.clock);
}

constexpr std::int64_t mostBatches = 500;

/// Calls body(step) for each step of the recipe, whichever variant and method it belongs to.
template <typename Body>
void forEachStep(const Recipe& recipe, const Body& body)
{
    std::ranges::for_each(recipe.common.steps, body);
    for (const Variant& variant : recipe.variants) {
        std::ranges::for_each(variant.adds.steps, body);
    }
    for (const MethodChoice& choice : recipe.methods) {
        for (const Method& method : choice.methods) {
            std::ranges::for_each(method.part.steps, body);
        }
    }
}

class FaultFinder
{
public:
    FaultFinder(const Occasion& occasion, const Kitchen& kitchen,
                const std::map<RecipeId, const Recipe*>& recipes,
                std::vector<OccasionFault>& faults)
        : occasion_(occasion), kitchen_(kitchen), recipes_(recipes), faults_(faults)
    {}

    void find()
    {
        checkFrame();
        checkGuests();
        checkCourses();
        checkJobs();
        checkHours();
    }

private:
    void say(std::string place, std::string sentence)
    {
        faults_.push_back({std::move(place), std::move(sentence)});
    }

    [[nodiscard]] bool isCook(const CookId& cook) const
    {
        return std::ranges::find(kitchen_.cooks, cook, &KitchenCook::id) != kitchen_.cooks.end();
    }

    [[nodiscard]] bool isDish(const DishId& dish) const
    {
        return std::ranges::any_of(occasion_.courses, [&](const Course& course) {
            return std::ranges::find(course.dishes, dish, &Dish::id) != course.dishes.end();
        });
    }

    void checkCook(const std::optional<CookId>& cook, const std::string& place)
    {
        if (cook && !isCook(*cook)) {
            say(place,
                fmt::format("It is given to “{}”, who is no cook of this kitchen.", cook->text()));
        }
    }

    void checkFrame()
    {
        if (occasion_.id.empty() || occasion_.name.empty()) {
            say("occasion", "The occasion has no name. Give it one.");
        }
        if (const auto zone = TimeZone::find(occasion_.zone); !zone) {
            say("time zone", zone.error().forCook);
        }
        if (occasion_.courses.empty()) {
            say("courses", "There are no courses. Add one with its serving time.");
        }
        if (occasion_.preferences.calm < 0 || occasion_.preferences.calm > 100) {
            say("preferences", "Calm lies between 0 and 100.");
        }
    }

    void checkGuests()
    {
        if (occasion_.guests.size() > mostGuests) {
            say("guests", fmt::format("There are {} guests; {} is the most.",
                                      occasion_.guests.size(), mostGuests));
        }
        std::set<GuestId> seen;
        for (const Guest& guest : occasion_.guests) {
            if (guest.id.empty() || !seen.insert(guest.id).second) {
                say("guest “" + guest.name + "”", "Each guest has an id of their own.");
            }
            if (guest.portion <= Portions{0} || guest.portion > mostOfOneGuest ||
                finestPortion % guest.portion.denominator() != 0) {
                say("guest “" + guest.name + "”",
                    fmt::format("A guest eats more than 0 and at most {} portions of a dish, in "
                                "parts like 1/2; here it is {}.",
                                mostOfOneGuest.text(), guest.portion.text()));
            }
        }
    }

    void checkCourses()
    {
        const Course* previous = nullptr;
        std::set<CourseId> seen;
        std::set<DishId> dishes;
        for (const Course& course : occasion_.courses) {
            const std::string place = "course “" + course.name + "”";
            if (course.id.empty() || !seen.insert(course.id).second) {
                say(place, "Each course has an id of its own.");
            }
            if (!isValid(course.serving.date)) {
                say(place,
                    fmt::format("There is no day {} in the calendar.", toIso(course.serving.date)));
            } else if (!isOnClock(course.serving.clock)) {
                say(place, fmt::format("{} is no time of a day. Write it like 19:30.",
                                       toIso(course.serving.clock)));
            } else if (previous != nullptr && isValid(previous->serving.date)) {
                checkOrder(*previous, course, place);
            }
            if (course.atTable < Minutes{0} || course.atTable > Minutes{24 * 60}) {
                say(place, "Guests sit between 0 minutes and a day over a course.");
            }
            std::set<AlternativeId> alternatives;
            for (const Alternative& alternative : course.alternatives) {
                if (alternative.id.empty() || !alternatives.insert(alternative.id).second) {
                    say(place,
                        fmt::format("Two alternatives have the id “{}”.", alternative.id.text()));
                }
            }
            for (const Dish& dish : course.dishes) {
                if (dish.id.empty() || !dishes.insert(dish.id).second) {
                    say(place, fmt::format("Two dishes have the id “{}”.", dish.id.text()));
                }
                checkDish(dish, course);
            }
            previous = &course;
        }
    }

    void checkOrder(const Course& previous, const Course& course, const std::string& place)
    {
        if (course.serving < previous.serving) {
            say(place, fmt::format("It is served at {}, before “{}” at {}. Put the courses in the "
                                   "order in which they are served.",
                                   toIso(course.serving.clock), previous.name,
                                   toIso(previous.serving.clock)));
        } else if (daysBetween(occasion_.courses.front().serving.date, course.serving.date) >
                   mostDays) {
            say(place, "It is served more than seven days after the first course.");
        }
    }

    void checkDish(const Dish& dish, const Course& course)
    {
        const auto recipe = recipes_.find(dish.recipe);
        const std::string name =
            recipe == recipes_.end() ? dish.recipe.text() : recipe->second->name;
        const std::string place = "course “" + course.name + "”, dish “" + name + "”";
        if (recipe == recipes_.end()) {
            say(place, "Its recipe is not in the library. Import it, or take the dish away.");
            return;
        }
        if (!dish.alternative.empty() &&
            std::ranges::find(course.alternatives, dish.alternative, &Alternative::id) ==
                course.alternatives.end()) {
            say(place, fmt::format("Its alternative “{}” is not one of the course.",
                                   dish.alternative.text()));
        }
        checkCook(dish.cook, place);
        checkMethods(dish, *recipe->second, place);
        checkMould(dish, *recipe->second, place);
        bool canBeAdded = true;
        for (const MixEntry& entry : dish.mix) {
            checkEntry(entry, *recipe->second, place);
            canBeAdded = canBeAdded && isPlain(entry.portions);
        }
        const Portions most{static_cast<std::int64_t>(mostGuests)};
        if (canBeAdded && portionsOf(dish) > most) {
            say(place, fmt::format("{} portions are the most of one dish.", mostGuests));
        }
        forEachStep(*recipe->second, [&](const Step& step) {
            if (canBeAdded && step.portionsPerBatch && *step.portionsPerBatch > Portions{0} &&
                portionsOf(dish) > *step.portionsPerBatch * Rational{mostBatches}) {
                say(place,
                    fmt::format("“{}” would be done in more than {} batches. Let a batch "
                                "hold more portions.",
                                step.text.empty() ? step.id.text() : step.text, mostBatches));
            }
        });
    }

    /// Neither out of all bounds nor finer than a twelfth: such numbers can be added up.
    static bool isPlain(const Portions& portions)
    {
        const Portions bound{1'000'000};
        return portions.denominator() <= finestPortion && portions < bound &&
               Portions{0} - bound < portions;
    }

    void checkMould(const Dish& dish, const Recipe& recipe, const std::string& place)
    {
        if (!dish.mould) {
            return;
        }
        const auto own = mouldOf(recipe);
        if (!own) {
            say(place, "Its recipe names no tin or mould that another could stand for. Say at its "
                       "ingredients which one they fill, like “mould round 24 cm”, or take the "
                       "other tin away.");
        } else if (!isPossible(dish.mould->mould)) {
            say(place, "A tin or mould has sides of 1 to 150 cm.");
        } else if (isPossible(*own)) {
            const Rational larger = areaRatio(dish.mould->mould, *own);
            constexpr std::int64_t mostTimes = 4; // as deep; beyond it no rule of time holds
            if (dish.mould->keepsAmounts &&
                (larger > Rational{mostTimes} || larger * Rational{mostTimes} < Rational{1})) {
                say(place,
                    fmt::format("The same amounts would be more than {} times as deep, or as "
                                "shallow, in {} as in {}. Take a tin nearer to it in size, "
                                "or fill it as deep as the recipe's.",
                                mostTimes, nameOf(dish.mould->mould), nameOf(*own)));
            }
        }
    }

    /// A choice that the recipe does not have may be one of its preparations'.
    void checkMethods(const Dish& dish, const Recipe& recipe, const std::string& place)
    {
        for (const auto& [id, taken] : dish.methods) {
            const std::vector<MethodChoice> choices = choicesOf(recipe);
            const auto choice = std::ranges::find(choices, id, &MethodChoice::id);
            if (choice != choices.end() &&
                std::ranges::find(choice->methods, taken, &Method::id) == choice->methods.end()) {
                say(place, fmt::format("The recipe has no method “{}”. Choose one of its methods.",
                                       taken.text()));
            }
        }
    }

    void checkEntry(const MixEntry& entry, const Recipe& recipe, const std::string& place)
    {
        if (std::ranges::find(recipe.variants, entry.variant, &Variant::id) ==
            recipe.variants.end()) {
            say(place, fmt::format("The recipe has no variant “{}”.", entry.variant.text()));
        }
        if (entry.portions < Portions{0}) {
            say(place,
                fmt::format("{} portions cannot be made. Give 0 or more.", entry.portions.text()));
        } else if (!isPlain(entry.portions)) {
            say(place, fmt::format("{} portions cannot be shared out. Give at most {}, in twelfths "
                                   "at the finest.",
                                   entry.portions.text(), mostGuests));
        }
        for (const GuestId& guest : entry.guests) {
            if (std::ranges::find(occasion_.guests, guest, &Guest::id) == occasion_.guests.end()) {
                say(place, fmt::format("It is meant for “{}”, who is not among the guests.",
                                       guest.text()));
            }
        }
    }

    void checkJobs()
    {
        std::set<HouseJobId> seen;
        const auto check = [&](const HouseJobId& id, const std::string& name, Minutes duration,
                               const CivilTime& earliest, const CivilTime& latest,
                               const std::optional<CookId>& cook) {
            const std::string place = "job “" + name + "”";
            if (id.empty() || !seen.insert(id).second) {
                say(place, "Each job has an id of its own.");
            }
            if (duration < Minutes{0} || duration > Minutes{24 * 60}) {
                say(place, "It takes between 0 minutes and a day.");
            }
            if (!isInCalendar(earliest) || !isInCalendar(latest)) {
                say(place, "Its days or times are not in the calendar.");
            } else if (latest < earliest) {
                say(place, fmt::format("It must be done by {}, before it may begin at {}.",
                                       toIso(latest), toIso(earliest)));
            }
            checkCook(cook, place);
        };
        for (const HouseJob& job : occasion_.houseJobs) {
            check(job.id, job.name, job.duration, job.earliest, job.latest, job.cook);
        }
        for (const ShoppingTrip& trip : occasion_.trips) {
            check(trip.id, trip.name, trip.duration, trip.earliest, trip.latest, trip.cook);
            if (trip.freshness && *trip.freshness < Minutes{0}) {
                say("job “" + trip.name + "”", "What it buys keeps for 0 minutes or more.");
            }
            if (trip.fridge < Litres{}) {
                say("job “" + trip.name + "”", "What it buys takes 0 l of the fridge or more.");
            }
            for (const DishId& dish : trip.forDishes) {
                if (!isDish(dish)) {
                    say("job “" + trip.name + "”",
                        fmt::format("It buys for the dish “{}”, which is not there.", dish.text()));
                }
            }
        }
    }

    void checkHours()
    {
        for (const auto& [cook, days] : occasion_.hours) {
            if (!isCook(cook)) {
                say("hours", fmt::format("They are those of “{}”, who is no cook of this kitchen.",
                                         cook.text()));
            }
            for (const HoursOfDay& day : days) {
                checkDay(day, fmt::format("hours of “{}” on {}", cook.text(), toIso(day.date)));
            }
        }
    }

    void checkDay(const HoursOfDay& day, const std::string& place)
    {
        if (!isValid(day.date)) {
            say(place, "There is no such day in the calendar.");
        }
        constexpr ClockTime midnight{24, 0};
        ClockTime last{0, 0};
        for (const Hours& each : day.hours) {
            const bool isOnClocks =
                isOnClock(each.from) && (isOnClock(each.to) || each.to == midnight);
            if (!isOnClocks) {
                say(place, fmt::format("{} to {} are no times of a day.", toIso(each.from),
                                       toIso(each.to)));
            } else if (each.to <= each.from || each.from < last) {
                say(place, "They end before they begin, or overlap.");
            }
            last = each.to;
        }
    }

    const Occasion& occasion_;
    const Kitchen& kitchen_;
    const std::map<RecipeId, const Recipe*>& recipes_;
    std::vector<OccasionFault>& faults_;
};

} // namespace

std::vector<Substance> avoidedBy(const Guest& guest)
{
    std::set<Substance> result(guest.allergies.begin(), guest.allergies.end());
    for (const Diet diet : guest.diets) {
        const std::vector<Substance> avoided = avoidedBy(diet);
        result.insert(avoided.begin(), avoided.end());
    }
    return {result.begin(), result.end()};
}

Portions portionsOf(const Dish& dish)
{
    Portions total{0};
    for (const MixEntry& entry : dish.mix) {
        total = total + entry.portions;
    }
    return total;
}

std::vector<OccasionFault> faultsOf(const Occasion& occasion, const Kitchen& kitchen,
                                    const std::map<RecipeId, const Recipe*>& recipes)
{
    std::vector<OccasionFault> faults;
    FaultFinder(occasion, kitchen, recipes, faults).find();
    return faults;
}

} // namespace suppertide
