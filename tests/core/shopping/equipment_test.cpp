// The list of equipment counts what is in use at once, and mise en place follows the plan.
#include <gmock/gmock.h>

#include "core/shopping/equipment.h"
#include "tests/core/shopping/shop_supper.h"

namespace suppertide::shopping {

namespace {

using test::amount;
using test::asking;
using test::asks;
using test::ShopSupper;
using testing::IsEmpty;

const EquipmentLine& lineOf(const EquipmentList& list, const std::string& name)
{
    const auto found = std::ranges::find(list.lines, name, &EquipmentLine::name);
    if (found == list.lines.end()) {
        throw std::out_of_range(name);
    }
    return *found;
}

/// Two dishes that want the one wide pan for half an hour each.
ShopSupper twoPans()
{
    ShopSupper supper;
    for (const char* name : {"Leeks", "Beans"}) {
        Recipe dish = asking(name, {asks(name, amount(500, Unit::Gram))});
        dish.common.steps[0].duration = {Minutes{30}, Minutes{30}, Minutes{30}};
        dish.common.steps[0].uses = {VesselUse{"wide pan", 2_l, 1, Minutes{0}}};
        supper.serve(std::move(dish));
    }
    return supper;
}

TEST(Equipment, IsTooLittleWhereTwoWantOneThingAtOnce)
{
    ShopSupper supper = twoPans();
    supper.put("leeks/*/mix-leeks", 18, 0);
    supper.put("beans/*/mix-beans", 18, 29);
    const EquipmentList list = equipmentOf(*supper.laidOut());
    const EquipmentLine& pan = lineOf(list, "wide pan");
    EXPECT_EQ(pan.atOnce, 2);
    EXPECT_EQ(pan.there, 1);
    EXPECT_TRUE(pan.isTooFew());
    EXPECT_EQ(pan.uses.size(), 2U);
    EXPECT_EQ(list.lines.front().name, "wide pan");
}

TEST(Equipment, IsEnoughWhereOneFollowsTheOther)
{
    ShopSupper supper = twoPans();
    supper.put("leeks/*/mix-leeks", 18, 0);
    supper.put("beans/*/mix-beans", 18, 30);
    const EquipmentList list = equipmentOf(*supper.laidOut());
    EXPECT_EQ(lineOf(list, "wide pan").atOnce, 1);
    EXPECT_FALSE(lineOf(list, "wide pan").isTooFew());
    EXPECT_THAT(list.probes, IsEmpty());
}

TEST(MiseEnPlace, FollowsThePlanStepByStep)
{
    ShopSupper supper = twoPans();
    supper.put("leeks/*/mix-leeks", 18, 30);
    supper.put("beans/*/mix-beans", 18, 0);
    const std::vector<MiseEnPlace> places = miseEnPlaceOf(*supper.laidOut());
    ASSERT_EQ(places.size(), 2U);
    EXPECT_EQ(places[0].dish, "Beans");
    EXPECT_EQ(places[0].step, "Mix Beans");
    ASSERT_EQ(places[0].lines.size(), 1U);
    EXPECT_EQ(places[0].lines[0].amount, amount(500, Unit::Gram));
    EXPECT_EQ(places[1].dish, "Leeks");
}

} // namespace

} // namespace suppertide::shopping
