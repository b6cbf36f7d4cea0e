// What in an occasion cannot be, in a sentence that names its place.
#include <gmock/gmock.h>

#include <functional>
#include <limits>

#include "tests/core/occasion/suppers.h"

namespace suppertide {
namespace {

using test::entry;
using test::Supper;
using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::Field;
using testing::HasSubstr;
using testing::IsEmpty;

auto fault(const std::string& place, const std::string& words)
{
    return AllOf(Field("place", &OccasionFault::place, HasSubstr(place)),
                 Field("sentence", &OccasionFault::sentence, HasSubstr(words)));
}

std::vector<OccasionFault> after(const std::function<void(Occasion&)>& change)
{
    Supper supper;
    change(supper.occasion);
    return supper.faults();
}

TEST(OccasionFaults, AreNoneInASupper)
{
    EXPECT_THAT(Supper().faults(), IsEmpty());
}

TEST(OccasionFaults, NameWhatIsMissing)
{
    EXPECT_THAT(after([](Occasion& o) { o.name.clear(); }),
                ElementsAre(fault("occasion", "no name")));
    EXPECT_THAT(after([](Occasion& o) { o.courses.clear(); }),
                ElementsAre(fault("courses", "no courses")));
    EXPECT_THAT(after([](Occasion& o) { o.zone = "Atlantis/Capital"; }),
                ElementsAre(fault("time zone", "no time zone called “Atlantis/Capital”")));
    EXPECT_THAT(after([](Occasion& o) { o.courses[0].dishes[0].recipe = RecipeId{"pie"}; }),
                ElementsAre(fault("course “starter”, dish “pie”", "not in the library")));
}

TEST(OccasionFaults, AllowFromNoneToFiveHundredGuests)
{
    const auto withGuests = [](int count) {
        return after([count](Occasion& o) {
            o.guests.clear();
            for (int i = 0; i < count; ++i) {
                o.guests.push_back(test::guest("guest " + std::to_string(i)));
            }
        });
    };
    EXPECT_THAT(withGuests(0), IsEmpty());
    EXPECT_THAT(withGuests(1), IsEmpty());
    EXPECT_THAT(withGuests(500), IsEmpty());
    EXPECT_THAT(withGuests(501),
                ElementsAre(fault("guests", "There are 501 guests; 500 is the most")));
}

TEST(OccasionFaults, NameGuestsWhoEatNothingOrTooMuch)
{
    const auto eating = [](Portions portion) {
        return after([&portion](Occasion& o) { o.guests.at(0).portion = portion; });
    };
    EXPECT_THAT(eating(Portions{1, 12}), IsEmpty());
    EXPECT_THAT(eating(Portions{4}), IsEmpty());
    for (const Portions& portion :
         {Portions{0}, Portions{-1, 2}, Portions{49, 12}, Portions{1, 5}}) {
        EXPECT_THAT(eating(portion), ElementsAre(fault("guest", "more than 0 and at most 4")));
    }
}

TEST(OccasionFaults, NameCoursesOutOfOrder)
{
    EXPECT_THAT(after([](Occasion& o) {
                    o.courses[1].serving.clock = {18, 30};
                }),
                ElementsAre(fault("course “main”", "served at 18:30, before “starter” at 19:00")));
    EXPECT_THAT(after([](Occasion& o) { o.courses[1].serving = o.courses[0].serving; }), IsEmpty());
    EXPECT_THAT(after([](Occasion& o) { o.courses[1].serving.date = {2027, 6, 26}; }), IsEmpty());
    EXPECT_THAT(after([](Occasion& o) {
                    o.courses[1].serving.date = {2027, 6, 27};
                }),
                ElementsAre(fault("course “main”", "more than seven days")));
}

TEST(OccasionFaults, NameDaysAndTimesThatDoNotExist)
{
    EXPECT_THAT(after([](Occasion& o) {
                    o.courses[0].serving.date = {2027, 2, 29};
                }),
                Contains(fault("course “starter”", "no day 2027-02-29")));
    EXPECT_THAT(after([](Occasion& o) {
                    o.courses[1].serving.clock = {25, 0};
                }),
                ElementsAre(fault("course “main”", "25:00 is no time of a day")));
    EXPECT_THAT(after([](Occasion& o) {
                    o.courses[1].serving.clock = {20, 60};
                }),
                ElementsAre(fault("course “main”", "no time of a day")));
}

TEST(OccasionFaults, NamePortionsThatCannotBe)
{
    const auto withPortions = [](const Portions& portions) {
        return after([&](Occasion& o) { o.courses[1].dishes[2].mix[0].portions = portions; });
    };
    const std::string place = "course “main”, dish “potatoes”";
    EXPECT_THAT(withPortions(Portions{0}), IsEmpty());
    EXPECT_THAT(withPortions(Portions(7, 2)), IsEmpty());
    EXPECT_THAT(withPortions(Portions{500}), IsEmpty());
    EXPECT_THAT(withPortions(Portions{-1}),
                ElementsAre(fault(place, "-1 portions cannot be made")));
    EXPECT_THAT(withPortions(Portions{501}),
                ElementsAre(fault(place, "500 portions are the most")));
    EXPECT_THAT(withPortions(Portions(1, 13)),
                ElementsAre(fault(place, "1/13 portions cannot be")));
}

TEST(OccasionFaults, SayOfPortionsTooFineToAddThatTheyAre)
{
    constexpr std::int64_t huge = std::numeric_limits<std::int64_t>::max();
    const auto faults = after([](Occasion& o) {
        o.courses[1].dishes[2].mix = {entry("plain", Portions{1, huge}),
                                      entry("plain", Portions{1, huge - 2}),
                                      entry("plain", Portions{huge})};
    });
    EXPECT_THAT(faults, testing::SizeIs(3));
    EXPECT_THAT(faults, testing::Each(fault("dish “potatoes”", "cannot be shared out")));
}

TEST(OccasionFaults, NameWhatAMixSpeaksOfThatIsNotThere)
{
    EXPECT_THAT(after([](Occasion& o) { o.courses[0].dishes[0].mix[0].variant = VariantId{"x"}; }),
                ElementsAre(fault("dish “tart”", "no variant “x”")));
    EXPECT_THAT(after([](Occasion& o) { o.courses[0].dishes[0].mix[0].guests = {GuestId{"Zed"}}; }),
                ElementsAre(fault("dish “tart”", "meant for “Zed”, who is not among the guests")));
    EXPECT_THAT(after([](Occasion& o) { o.courses[0].dishes[0].cook = CookId{"zed"}; }),
                ElementsAre(fault("dish “tart”", "“zed”, who is no cook")));
    EXPECT_THAT(after([](Occasion& o) { o.courses[0].dishes[0].alternative = AlternativeId{"x"}; }),
                ElementsAre(fault("dish “tart”", "alternative “x”")));
}

TEST(OccasionFaults, NameAMethodThatIsNotOneOfItsChoice)
{
    Supper supper;
    supper.recipes[0].methods = {
        {MethodChoiceId{"how"}, "how", {{MethodId{"pan"}, "in a pan", 0, {}}}}};
    Dish& tart = supper.occasion.courses[0].dishes[0];
    tart.methods = {{MethodChoiceId{"how"}, MethodId{"pan"}}};
    EXPECT_THAT(supper.faults(), IsEmpty());
    tart.methods = {{MethodChoiceId{"how"}, MethodId{"grill"}}};
    EXPECT_THAT(supper.faults(), ElementsAre(fault("dish “tart”", "no method “grill”")));
    // A choice of one of its preparations, perhaps.
    tart.methods = {{MethodChoiceId{"dough"}, MethodId{"cold"}}};
    EXPECT_THAT(supper.faults(), IsEmpty());
}

TEST(OccasionFaults, NameIdsThatStandTwice)
{
    EXPECT_THAT(after([](Occasion& o) { o.guests.push_back(o.guests[0]); }),
                ElementsAre(fault("guest “Ada”", "an id of their own")));
    EXPECT_THAT(after([](Occasion& o) { o.courses[1].id = o.courses[0].id; }),
                ElementsAre(fault("course “main”", "an id of its own")));
    EXPECT_THAT(after([](Occasion& o) { o.courses[1].dishes[0].id = DishId{"tart"}; }),
                ElementsAre(fault("course “main”", "Two dishes have the id “tart”")));
}

TEST(OccasionFaults, NameJobsAndTripsThatCannotBe)
{
    const auto withJob = [](const std::function<void(HouseJob&)>& change) {
        return after([&](Occasion& o) {
            HouseJob job;
            job.id = HouseJobId{"table"};
            job.name = "Lay the table";
            job.earliest = {{2027, 6, 19}, {14, 0}};
            job.latest = {{2027, 6, 19}, {19, 0}};
            change(job);
            o.houseJobs = {job};
        });
    };
    const std::string place = "job “Lay the table”";
    EXPECT_THAT(withJob([](HouseJob&) {}), IsEmpty());
    EXPECT_THAT(withJob([](HouseJob& j) { std::swap(j.earliest, j.latest); }),
                ElementsAre(fault(place, "done by 2027-06-19T14:00, before it may begin")));
    EXPECT_THAT(withJob([](HouseJob& j) { j.duration = -1_min; }),
                ElementsAre(fault(place, "between 0 minutes and a day")));
    EXPECT_THAT(withJob([](HouseJob& j) { j.latest.clock.hour = 30; }),
                ElementsAre(fault(place, "not in the calendar")));
    EXPECT_THAT(withJob([](HouseJob& j) { j.latest.date.day = 31; }),
                ElementsAre(fault(place, "not in the calendar")));
    EXPECT_THAT(withJob([](HouseJob& j) { j.cook = CookId{"zed"}; }),
                ElementsAre(fault(place, "no cook")));
    ShoppingTrip trip;
    trip.id = HouseJobId{"market"};
    trip.name = "Market";
    trip.freshness = -1_min;
    trip.fridge = decilitres(-5);
    EXPECT_THAT(after([&](Occasion& o) { o.trips = {trip}; }),
                ElementsAre(fault("job “Market”", "keeps for 0 minutes or more"),
                            fault("job “Market”", "0 l of the fridge or more")));
}

TEST(OccasionFaults, NameHoursThatCannotBe)
{
    const auto withHours = [](const CivilDate& date, std::vector<Hours> hours) {
        return after([&](Occasion& o) { o.hours[CookId{"maren"}] = {{date, std::move(hours)}}; });
    };
    const CivilDate saturday{2027, 6, 19};
    EXPECT_THAT(withHours(saturday, {{{8, 0}, {24, 0}}}), IsEmpty());
    EXPECT_THAT(withHours(saturday, {}), IsEmpty());
    EXPECT_THAT(withHours(saturday, {{{9, 0}, {8, 0}}}),
                ElementsAre(fault("hours of “maren” on 2027-06-19", "end before they begin")));
    EXPECT_THAT(withHours(saturday, {{{8, 0}, {24, 30}}}),
                ElementsAre(fault("hours of “maren” on 2027-06-19", "no times of a day")));
    EXPECT_THAT(withHours({2027, 6, 31}, {}),
                ElementsAre(fault("hours of “maren” on 2027-06-31", "no such day")));
    EXPECT_THAT(after([](Occasion& o) { o.hours[CookId{"zed"}] = {}; }),
                ElementsAre(fault("hours", "“zed”, who is no cook")));
}

TEST(OccasionFaults, NamePreferencesOutOfBounds)
{
    EXPECT_THAT(after([](Occasion& o) { o.preferences.calm = 101; }),
                ElementsAre(fault("preferences", "between 0 and 100")));
    EXPECT_THAT(after([](Occasion& o) { o.preferences.calm = -1; }),
                ElementsAre(fault("preferences", "between 0 and 100")));
    EXPECT_THAT(after([](Occasion& o) { o.courses[0].atTable = -1_min; }),
                ElementsAre(fault("course “starter”", "Guests sit between")));
}

TEST(OccasionFaults, KeepNamesOfAnyKindAsTheyAre)
{
    for (const char* name : {"Ada's “first”", "🍰", "מנה ראשונה", "{}"}) {
        EXPECT_THAT(after([name](Occasion& o) {
                        o.courses[0].name = name;
                        o.courses[0].atTable = -1_min;
                    }),
                    ElementsAre(fault("course “" + std::string(name) + "”", "Guests sit")));
    }
}

} // namespace
} // namespace suppertide
