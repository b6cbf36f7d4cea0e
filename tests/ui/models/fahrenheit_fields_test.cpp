#include <gtest/gtest.h>

#include <algorithm>

#include "ui/models/fahrenheit_fields.h"
#include "ui/models/kitchen_forms.h"
#include "ui/models/physical_fields.h"
#include "ui/models/recipe_forms.h"

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

TEST(FahrenheitFields, TakeABareFigureAsOneOfTheirs)
{
    EXPECT_EQ(withFahrenheit("160"), "160 °F");
    EXPECT_EQ(withFahrenheit("160°"), "160 °F");
    EXPECT_EQ(withFahrenheit("71 °C"), "71 °C");
    EXPECT_EQ(withFahrenheit("14 min to 392, 7 min to 120 °C"),
              "14 min to 392 °F, 7 min to 120 °C");
    EXPECT_EQ(withFahrenheit(""), "");
    EXPECT_EQ(withFahrenheit("soon"), "soon");
}

Field named(const std::vector<Field>& fields, const std::string& key)
{
    const auto found = std::ranges::find(fields, key, &Field::key);
    return found == fields.end() ? Field{} : *found;
}

/// Whatever a line shows in °F is read again as what it was, to the tenth of a degree that whole
/// degrees Fahrenheit leave open.
TEST(FahrenheitFields, ReadLinesAgainAsTheyAreShown)
{
    KitchenOven oven;
    oven.warming = {{Minutes{7}, Celsius::degrees(120)}, {Minutes{14}, Celsius::degrees(200)}};
    oven.heatMilliCPerMin = 12'500;
    const std::vector<Field> fields = kitchen::ovenForm(oven).fields();
    const Field warming = inFahrenheit(named(fields, "warming"));
    EXPECT_EQ(std::get<std::string>(warming.value), "7 min to 248 °F, 14 min to 392 °F");
    EXPECT_TRUE(warming.help.contains(u"°F")) << warming.help.toStdString();
    EXPECT_FALSE(warming.help.contains(u"°C"));
    EXPECT_EQ(
        kitchen::ovenForm(oven).with("warming", fromFahrenheit(warming, warming.value)).value(),
        oven);
    const Field heating = inFahrenheit(named(fields, "heats"));
    EXPECT_EQ(std::get<std::string>(heating.value), "22.5 °F");
    EXPECT_EQ(
        kitchen::ovenForm(oven).with("heats", fromFahrenheit(heating, std::string("22.5"))).value(),
        oven);
}

TEST(FahrenheitFields, AreThereForEveryLineThatTellsOfDegrees)
{
    ColdPlace fridge;
    fridge.temperature = Celsius::degrees(5);
    const Field measured = named(kitchen::coldForm(fridge).fields(), "temperature");
    EXPECT_EQ(std::get<std::string>(inFahrenheit(measured).value), "41 °F");
    EXPECT_EQ(kitchen::coldForm(fridge)
                  .with("temperature", fromFahrenheit(measured, std::string("41")))
                  ->temperature,
              Celsius::degrees(5));
    EXPECT_FALSE(kitchen::coldForm(fridge)
                     .with("temperature", fromFahrenheit(measured, std::string("100")))
                     .has_value());
    FoodTreatment treatment;
    treatment.to = Celsius::degrees(71);
    const Field middle = named(recipe::treatmentForm(treatment, {}).fields(), "to");
    EXPECT_EQ(std::get<std::string>(inFahrenheit(middle).value), "160 °F");
    EXPECT_EQ(recipe::treatmentForm(treatment, {})
                  .with("to", fromFahrenheit(middle, std::string("160")))
                  ->to,
              Celsius::tenths(711));
    EXPECT_EQ(
        recipe::treatmentForm(treatment, {}).with("to", fromFahrenheit(middle, std::string()))->to,
        std::nullopt);
}

TEST(FahrenheitFields, LeaveOtherFieldsAsTheyAre)
{
    Field shelves = FieldList<Thing>::plain("shelves", QStringLiteral("Shelves"), FieldKind::Whole,
                                            std::int64_t{2});
    EXPECT_EQ(inFahrenheit(shelves), shelves);
}

} // namespace
} // namespace suppertide::ui
