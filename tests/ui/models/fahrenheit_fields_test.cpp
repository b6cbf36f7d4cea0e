#include <gtest/gtest.h>

#include "ui/models/fahrenheit_fields.h"
#include "ui/models/physical_fields.h"

namespace suppertide::ui {
namespace {

struct Thing
{
    Celsius heat = Celsius::degrees(180);
};

FieldList<Thing> formOf(const Thing& thing)
{
    FieldList<Thing> form(thing);
    addCelsius<Thing>(form, "heat", QStringLiteral("Heat"), thing.heat,
                      [](Thing& next, Celsius value) { next.heat = value; });
    return form;
}

TEST(FahrenheitFields, ShowAgainWhatWasEntered)
{
    Thing thing;
    for (std::int64_t entered = -40; entered <= 1112; ++entered) {
        const auto next = formOf(thing).with("heat", fromFahrenheit(entered));
        ASSERT_TRUE(next);
        thing = *next;
        const Field shown = inFahrenheit(formOf(thing).fields().front());
        EXPECT_EQ(std::get<std::int64_t>(shown.value), entered);
    }
}

TEST(FahrenheitFields, HaveTheirUnitAndRange)
{
    const Field celsius = formOf({}).fields().front();
    const Field shown = inFahrenheit(celsius);
    EXPECT_EQ(std::get<std::int64_t>(shown.value), 356);
    EXPECT_EQ(shown.unit, QStringLiteral("°F"));
    EXPECT_EQ(shown.least, -40);
    EXPECT_EQ(shown.most, 1112);
    EXPECT_EQ(formOf({}).with("heat", std::int64_t{200})->heat, Celsius::degrees(200));
}

TEST(FahrenheitFields, LeaveOtherFieldsAsTheyAre)
{
    Field shelves = FieldList<Thing>::plain("shelves", QStringLiteral("Shelves"), FieldKind::Whole,
                                            std::int64_t{2});
    EXPECT_EQ(inFahrenheit(shelves), shelves);
}

} // namespace
} // namespace suppertide::ui
