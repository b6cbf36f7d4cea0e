// What is bought on which trip: early if it keeps, in time for its first use.
#include <gmock/gmock.h>

#include "tests/core/shopping/shop_supper.h"

namespace suppertide::shopping {

namespace {

using test::amount;
using test::asking;
using test::asks;
using test::ShopSupper;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

ShoppingTrip trip(const std::string& id, unsigned day, int hour)
{
    ShoppingTrip trip;
    trip.id = HouseJobId{id};
    trip.name = id;
    trip.earliest = {{2027, 6, day}, {hour - 2, 0}};
    trip.latest = {{2027, 6, day}, {hour, 0}};
    return trip;
}

/// The supper is on Saturday 19 June at 19:30.
ShopSupper fishSupper(std::optional<int> keepsDays)
{
    ShopSupper supper;
    supper.know("skerry fish").keepsDays = keepsDays;
    supper.serve(asking("Fish pie", {asks("skerry fish", amount(500, Unit::Gram))}));
    supper.occasion.trips = {trip("friday", 18, 18), trip("thursday", 17, 18)};
    return supper;
}

std::string tripOf(const ShopSupper& supper, const std::string& key)
{
    const auto line = supper.line(key);
    return line.trip ? supper.list().trips.at(*line.trip).name : "none";
}

TEST(TripSplit, BuysEarlyWhatKeepsAndLateWhatDoesNot)
{
    EXPECT_EQ(tripOf(fishSupper(8), "skerry fish"), "thursday");
    EXPECT_EQ(tripOf(fishSupper(7), "skerry fish"), "friday");
    EXPECT_EQ(tripOf(fishSupper(1), "skerry fish"), "friday");
    EXPECT_EQ(tripOf(fishSupper(std::nullopt), "skerry fish"), "thursday");
    EXPECT_THAT(fishSupper(1).line("skerry fish").notes, IsEmpty());
}

TEST(TripSplit, BuysAsLateAsItCanWhatKeepsForNoTrip)
{
    const ShopSupper supper = fishSupper(0);
    EXPECT_EQ(tripOf(supper, "skerry fish"), "friday");
    EXPECT_THAT(supper.line("skerry fish").notes,
                Contains("It keeps about 0 days and is wanted 1 day after “friday”: go later, or "
                         "take care that it is fresh."));
}

TEST(TripSplit, HoldsToTheFreshnessThatATripIsSaidToHave)
{
    ShopSupper supper = fishSupper(30);
    supper.occasion.trips[1].freshness = Minutes{24 * 60};
    EXPECT_EQ(tripOf(supper, "skerry fish"), "friday");
}

TEST(TripSplit, PrefersTheTripThatIsForTheDish)
{
    ShopSupper supper = fishSupper(30);
    supper.serve(asking("Bread", {asks("flour", amount(500, Unit::Gram))}));
    supper.occasion.trips[1].forDishes = {DishId{"bread"}};
    EXPECT_EQ(tripOf(supper, "skerry fish"), "friday");
    EXPECT_EQ(tripOf(supper, "flour"), "thursday");
}

TEST(TripSplit, SaysWhatIsNeededBeforeAnybodyGoes)
{
    ShopSupper supper = fishSupper(30);
    supper.occasion.trips = {trip("sunday", 20, 18)};
    EXPECT_THAT(supper.line("skerry fish").notes,
                Contains(HasSubstr("It is needed on Saturday 19 June at 19:30, before anybody goes "
                                   "shopping")));
}

TEST(TripSplit, GoesByThePlanWhereThereIsOne)
{
    ShopSupper supper = fishSupper(30);
    supper.put("fish-pie/*/mix-fish-pie", 12);
    supper.layout.starts.at("fish-pie/*/mix-fish-pie") = supper.instant(10, 0, -1);
    supper.occasion.trips = {trip("saturday", 19, 12), trip("early", 17, 18)};
    supper.plan = supper.laidOut();
    EXPECT_EQ(supper.line("skerry fish").firstUse, supper.instant(10, 0, -1));
    EXPECT_EQ(tripOf(supper, "skerry fish"), "early");
}

TEST(TripSplit, ProposesAWeekBeforeAndTheDayBefore)
{
    ShopSupper supper = fishSupper(1);
    supper.know("flour").keepsDays = 200;
    supper.serve(asking("Bread", {asks("flour", amount(500, Unit::Gram)),
                                  asks("sandwort", amount(5, Unit::Gram))}));
    supper.occasion.trips.clear();
    const ShoppingList list = supper.list();
    ASSERT_EQ(list.trips.size(), 2U);
    EXPECT_EQ(list.trips[0].latest.date, (CivilDate{2027, 6, 12}));
    EXPECT_EQ(tripOf(supper, "flour"), "A week before");
    EXPECT_EQ(tripOf(supper, "skerry fish"), "The day before");
    EXPECT_EQ(tripOf(supper, "sandwort"), "The day before");
}

} // namespace

} // namespace suppertide::shopping
