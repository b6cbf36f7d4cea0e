// What in a kitchen cannot be, in a sentence that names its place.
#include <gmock/gmock.h>

#include <functional>

#include "core/kitchen/kitchen.h"

namespace suppertide {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::Field;
using testing::HasSubstr;
using testing::IsEmpty;

Kitchen cottage()
{
    Kitchen kitchen;
    kitchen.id = KitchenId{"cottage"};
    kitchen.name = "Cottage";
    kitchen.ovens = {{.id = KitchenItemId{"oven"}, .name = "Oven"}};
    kitchen.burners = {{KitchenItemId{"left"}, "left", 18_cm, watts(1500)}};
    kitchen.appliances = {{KitchenItemId{"blender"}, "Blender", "blender"}};
    kitchen.vessels = {{KitchenItemId{"pan"}, "Pan", "wide pan", 4_l, 28_cm, 2}};
    kitchen.coldPlaces = {{KitchenItemId{"fridge"}, "Fridge", ColdKind::Fridge, 40_l}};
    kitchen.cooks = {{.id = CookId{"maren"}, .name = "Maren"}};
    return kitchen;
}

std::vector<KitchenFault> after(const std::function<void(Kitchen&)>& change)
{
    Kitchen kitchen = cottage();
    change(kitchen);
    return faultsOf(kitchen);
}

auto fault(const std::string& place, const std::string& words)
{
    return AllOf(Field("place", &KitchenFault::place, HasSubstr(place)),
                 Field("sentence", &KitchenFault::sentence, HasSubstr(words)));
}

std::vector<KitchenFault> withHours(std::vector<Hours> hours)
{
    return after([&](Kitchen& k) { k.cooks[0].usualHours = std::move(hours); });
}

TEST(KitchenFaults, AreNoneInACottage)
{
    EXPECT_THAT(faultsOf(cottage()), IsEmpty());
}

TEST(KitchenFaults, AreNoneWithoutOvensBurnersOrCooks)
{
    Kitchen bare;
    bare.id = KitchenId{"camp"};
    bare.name = "A fire on the beach";
    EXPECT_THAT(faultsOf(bare), IsEmpty());
}

TEST(KitchenFaults, NameWhatHasNoNameOrTheIdOfSomethingElse)
{
    EXPECT_THAT(after([](Kitchen& k) { k.name.clear(); }),
                ElementsAre(fault("kitchen", "no name")));
    EXPECT_THAT(after([](Kitchen& k) { k.ovens[0].name.clear(); }),
                ElementsAre(fault("oven “”", "no name")));
    // One list of ids for all things: a pin names them by it alone.
    EXPECT_THAT(after([](Kitchen& k) { k.burners[0].id = k.ovens[0].id; }),
                ElementsAre(fault("burner “left”", "the id “oven” already")));
    EXPECT_THAT(after([](Kitchen& k) { k.cooks.push_back(k.cooks[0]); }),
                ElementsAre(fault("cook “Maren”", "Two cooks have the id “maren”")));
}

TEST(KitchenFaults, NameOvensThatCannotBe)
{
    const auto withOven = [](const std::function<void(KitchenOven&)>& change) {
        return after([&](Kitchen& k) { change(k.ovens[0]); });
    };
    EXPECT_THAT(withOven([](KitchenOven& o) { o.shelves = 0; }),
                ElementsAre(fault("oven “Oven”", "1 and 20 shelves")));
    EXPECT_THAT(withOven([](KitchenOven& o) { o.low = 300_degC; }),
                ElementsAre(fault("oven “Oven”", "300 °C, is above its highest, 250 °C")));
    EXPECT_THAT(withOven([](KitchenOven& o) { o.high = 601_degC; }),
                ElementsAre(fault("oven “Oven”", "between 0 and 600 °C")));
    EXPECT_THAT(withOven([](KitchenOven& o) { o.heatMilliCPerMin = 0; }),
                ElementsAre(fault("oven “Oven”", "more than 0 °C a minute")));
    EXPECT_THAT(withOven([](KitchenOven& o) { o.coolMilliCPerMin = -1; }),
                ElementsAre(fault("oven “Oven”", "more than 0 °C a minute")));
    EXPECT_THAT(withOven([](KitchenOven& o) {
                    o.warming = {{14_min, 200_degC}, {14_min, 220_degC}};
                }),
                ElementsAre(fault("oven “Oven”", "each time later and hotter")));
    EXPECT_THAT(withOven([](KitchenOven& o) {
                    o.warming = {{7_min, 120_degC}, {14_min, 200_degC}, {30_min, 250_degC}};
                }),
                ElementsAre(fault("oven “Oven”", "once or twice")));
    EXPECT_THAT(withOven([](KitchenOven& o) {
                    o.warming = {{7_min, 120_degC}, {14_min, 200_degC}};
                }),
                IsEmpty());
}

TEST(KitchenFaults, NameThingsOfNoSizeOrKind)
{
    EXPECT_THAT(after([](Kitchen& k) { k.burners[0].size = {}; }),
                ElementsAre(fault("burner “left”", "more than 0 cm")));
    EXPECT_THAT(after([](Kitchen& k) { k.appliances[0].kind.clear(); }),
                ElementsAre(fault("appliance “Blender”", "what kind")));
    EXPECT_THAT(after([](Kitchen& k) { k.vessels[0].count = 0; }),
                ElementsAre(fault("vessel “Pan”", "between 1 and 500")));
    EXPECT_THAT(after([](Kitchen& k) { k.vessels[0].count = 1'000'000; }),
                ElementsAre(fault("vessel “Pan”", "between 1 and 500")));
    EXPECT_THAT(after([](Kitchen& k) { k.coldPlaces[0].room = decilitres(-1); }),
                ElementsAre(fault("cold place “Fridge”", "less than 0 l")));
    EXPECT_THAT(after([](Kitchen& k) { k.roomTemperature = 200_degC; }),
                ElementsAre(fault("kitchen", "between −20 and 60 °C")));
}

TEST(KitchenFaults, NameHoursThatOverlapOrAreOnNoClock)
{
    const std::string place = "cook “Maren”, hours";
    EXPECT_THAT(withHours({}), IsEmpty());
    EXPECT_THAT(withHours({{{0, 0}, {24, 0}}}), IsEmpty());
    EXPECT_THAT(withHours({{{8, 0}, {12, 0}}, {{12, 0}, {23, 0}, Presence::AtHome}}), IsEmpty());
    EXPECT_THAT(withHours({{{12, 0}, {8, 0}}}),
                ElementsAre(fault(place, "from 12:00 to 08:00 end before they begin")));
    EXPECT_THAT(withHours({{{8, 0}, {8, 0}}}), ElementsAre(fault(place, "end before they begin")));
    EXPECT_THAT(withHours({{{8, 0}, {13, 0}}, {{12, 0}, {14, 0}}}),
                ElementsAre(fault(place, "overlap the hours before")));
    EXPECT_THAT(withHours({{{8, 0}, {25, 0}}}), ElementsAre(fault(place, "no times of a day")));
    EXPECT_THAT(withHours({{{8, 75}, {12, 0}}}), ElementsAre(fault(place, "no times of a day")));
    EXPECT_THAT(withHours({{{-1, 0}, {12, 0}}}), ElementsAre(fault(place, "no times of a day")));
    EXPECT_THAT(withHours({{{8, 0}, {24, 1}}}), ElementsAre(fault(place, "no times of a day")));
}

TEST(KitchenFaults, KeepNamesOfAnyKindAsTheyAre)
{
    for (const char* name : {"Ada's “old” oven", "🔥", "תנור", "{0}"}) {
        const auto faults = after([name](Kitchen& k) {
            k.ovens[0].name = name;
            k.ovens[0].shelves = 0;
        });
        EXPECT_THAT(faults, Contains(fault("oven “" + std::string(name) + "”", "shelves")));
    }
}

} // namespace
} // namespace suppertide
