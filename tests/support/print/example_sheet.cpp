#include "tests/support/print/example_sheet.h"

namespace suppertide::ui::test {

namespace {

constexpr CivilDate friday{2027, 6, 18};
constexpr CivilDate saturday{2027, 6, 19};

On fri(int hour, int minute)
{
    return {friday, hour, minute};
}

On sat(int hour, int minute)
{
    return {saturday, hour, minute};
}

struct Supper
{
    SheetBuilder sheet{friday};
    CookIndex maren = sheet.cook("Maren");
    CookIndex jory = sheet.cook("Jory", sat(16, 0));
    OvenIndex oven = sheet.oven("Oven", 2, 250);
    OvenIndex grill = sheet.oven("Grill", 1, 230);
    DishId soup = sheet.dish("soup", "Chilled beetroot soup", 1);
    DishId tartlets = sheet.dish("tartlets", "Smoked-trout tartlets", 2);
    DishId shoulder = sheet.dish("shoulder", "Braised shoulder", 3);
    DishId gratin = sheet.dish("gratin", "Potato gratin", 3);
    DishId squash = sheet.dish("squash", "Stuffed squash", 3);
    DishId roots = sheet.dish("roots", "Roast roots", 3);
    DishId pavlova = sheet.dish("pavlova", "Rhubarb pavlova", 4);
};

void addFriday(Supper& at)
{
    SheetBuilder& sheet = at.sheet;
    sheet.step(fri(17, 0), 60_min, undivided, {"Maren"}, std::nullopt,
               {"Shop for the weekend", "market and greengrocer · 1 h", {}});
    sheet.step(fri(20, 15), 35_min, handsOn, {"Maren"}, at.pavlova,
               {"Whisk the meringue",
                "stand mixer · 35 min",
                {"6 egg whites", "330 g caster sugar", "1 tsp vinegar"}});
    sheet.turn(at.oven, fri(20, 40), 120, "Oven to 120 °C; hot at 20:50 for the meringue");
    sheet.step(fri(20, 50), 5_min, handsOn, {"Maren"}, at.pavlova,
               {"Meringue in the oven", "middle shelf · 1 h 15, then dries in the oven", {}});
    sheet.bake(at.oven, fri(20, 50), fri(22, 5), at.pavlova);
    sheet.turn(at.oven, fri(22, 5), std::nullopt, "Oven off; the meringue stays in");
    sheet.note(fri(22, 5), "Leave the meringue in: nobody opens the oven before morning.",
               {"Maren"});
}

void addAfternoon(Supper& at)
{
    SheetBuilder& sheet = at.sheet;
    sheet.fetch(sat(15, 0), "Shoulder out of the fridge", {"Maren"});
    sheet.step(sat(15, 30), 22_min, handsOn, {"Maren"}, at.shoulder,
               {"Sear the shoulder",
                "front left, high · 22 min",
                {"1 lamb shoulder, 2.2 kg", "30 ml oil"}});
    sheet.turn(at.oven, sat(15, 42), 150, "Oven to 150 °C; hot at 15:55 for the shoulder");
    sheet.step(sat(15, 55), 3_min, handsOn, {"Maren"}, at.shoulder,
               {"Shoulder in oven", "lower shelf · to 19:30", {}});
    sheet.bake(at.oven, sat(15, 55), sat(19, 30), at.shoulder);
    sheet.step(sat(16, 12), 28_min, handsOn, {"Maren"}, at.tartlets,
               {"Trout cream", "28 min", {"300 g smoked trout", "200 g soured cream", "1 lemon"}});
    sheet.note(sat(16, 45), "In the fridge by 16:45; warm 2 h at the most", {"Maren"});
    sheet.step(
        sat(17, 20), 30_min, handsOn, {"Jory"}, at.roots,
        {"Peel the roots", "finger thick · 30 min", {"1.2 kg roots"}, "then dry, at most 2 h"});
    sheet.step(sat(17, 25), 22_min, handsOn, {"Maren"}, at.squash,
               {"Cut the squash", "scoop, salt · 22 min", {"1 squash"}});
    sheet.step(sat(17, 50), 25_min, keepAnEye, {"Maren"}, at.squash,
               {"Fry the filling", "front right · 25 min", {}});
    sheet.step(sat(18, 5), 45_min, handsOn, {"Jory"}, at.gratin,
               {"Slice the potatoes, layer the gratin",
                "2 mm thick · 45 min",
                {"1.2 kg potatoes", "600 ml cream", "1 clove garlic"}});
    sheet.step(sat(18, 17), 13_min, handsOn, {"Maren"}, at.squash,
               {"Fill the squash", "13 min", {}});
    sheet.turn(at.grill, sat(18, 19), 180, "Grill to 180 °C; hot at 18:30 for the squash");
    sheet.step(sat(18, 30), 50_min, unattended, {"Maren"}, at.squash,
               {"Squash in grill", "50 min · out 19:20", {}});
    sheet.bake(at.grill, sat(18, 30), sat(19, 20), at.squash);
    sheet.step(sat(18, 50), 90_min, unattended, {"Jory"}, at.gratin,
               {"Gratin in oven", "upper shelf · out 20:20", {}});
    sheet.bake(at.oven, sat(18, 50), sat(20, 20), at.gratin);
}

void addFirstCourses(Supper& at)
{
    SheetBuilder& sheet = at.sheet;
    sheet.step(sat(19, 0), 12_min, handsOn, {"Maren"}, at.tartlets,
               {"Fry the mushrooms", "back left · 12 min", {"250 g mushrooms", "20 g butter"}});
    sheet.note(sat(19, 0), "Hot fat: dry the mushrooms first, a lid at hand.", {"Maren"});
    sheet.fetch(sat(19, 10), "Soup out of the fridge", {"Jory"});
    sheet.step(sat(19, 14), 10_min, handsOn, {"Maren"}, at.pavlova,
               {"Whip the cream", "mixer, fridge · 10 min", {"400 ml cream"}});
    sheet.step(sat(19, 16), 14_min, handsOn, {"Jory"}, at.soup,
               {"Ladle the soup", "8 plates · 14 min", {}});
    sheet.note(sat(19, 16), "Fay: no tree nuts. Bea: no gluten.", {"Jory"}, SheetNoteKind::Guests);
    sheet.step(sat(19, 20), 3_min, unattended, {"Maren"}, at.squash,
               {"Squash out", "keep warm, most 70 min", {}});
    sheet.serving(1, sat(19, 30), "Serve soup", {"8 with buttermilk"});
    sheet.table(at.maren, sat(19, 30), sat(19, 50));
    sheet.step(sat(19, 30), 3_min, unattended, {"Jory"}, at.shoulder,
               {"Shoulder out", "rests 20 to 70 min", {}});
    sheet.turn(at.grill, sat(19, 30), 220, "Grill to 220 °C; hot at 19:38 for the roots");
    sheet.step(sat(19, 38), 42_min, unattended, {"Jory"}, at.roots,
               {"Roots in grill", "42 min · out 20:20", {}});
    sheet.bake(at.grill, sat(19, 38), sat(20, 20), at.roots);
    sheet.step(sat(19, 40), 14_min, handsOn, {"Jory"}, at.tartlets,
               {"Fill the tartlets", "14 min", {}});
    sheet.serving(2, sat(19, 55), "Serve tartlets", {"6 smoked trout, 2 mushroom (Bea, Dov)"});
}

void addLastCourses(Supper& at)
{
    SheetBuilder& sheet = at.sheet;
    sheet.step(sat(20, 5), 20_min, keepAnEye, {"Maren"}, at.shoulder,
               {"Reduce the sauce", "wide pan · 20 min", {"500 ml stock"}});
    sheet.turn(at.oven, sat(20, 20), std::nullopt, "Oven off after the gratin");
    sheet.turn(at.grill, sat(20, 20), std::nullopt, "Grill off after the roots");
    sheet.step(sat(20, 20), 2_min, unattended, {"Jory"}, at.gratin,
               {"Gratin and roots out", "oven and grill off", {}});
    sheet.step(sat(20, 20), 10_min, handsOn, {"Jory"}, at.shoulder,
               {"Plate the main", "8 plates · 10 min", {}});
    sheet.step(sat(20, 25), 5_min, undivided, {"Maren"}, at.shoulder,
               {"Carve", "undivided · 5 min", {}});
    sheet.serving(3, sat(20, 30), "Serve main",
                  {"7 shoulder, 1 squash (Dov)", "8 gratin", "8 roots"});
    sheet.table(at.maren, sat(20, 30), sat(21, 3));
    sheet.table(at.jory, sat(20, 30), sat(21, 20));
    sheet.step(sat(21, 5), 15_min, handsOn, {"Maren", "Jory"}, at.pavlova,
               {"Top the pavlova", "15 min", {"400 g rhubarb"}});
    sheet.serving(4, sat(21, 20), "Serve pavlova", {"7 almond, 1 without nuts (Fay)"});
}

Supper supper()
{
    Supper at;
    at.sheet.words.title = "Midsummer supper at Skerry Light";
    at.sheet.words.subtitle = "Per-hour plan, eight at table, Skerry Light kitchen";
    at.sheet.words.cautions = {"Rhubarb leaves are poisonous: use the stalks only.",
                               "Soup and set cream stay below 5 °C until they are served."};
    addFriday(at);
    addAfternoon(at);
    addFirstCourses(at);
    addLastCourses(at);
    return at;
}

} // namespace

PerHourPlan exampleSheet()
{
    return supper().sheet.build();
}

PerHourPlan crowdedSheet()
{
    Supper at = supper();
    const CookIndex wenna = at.sheet.cook("Wenna");
    at.sheet.step(sat(18, 30), 25_min, handsOn, {"Wenna"}, std::nullopt,
                  {"Lay the table", "25 min", {}});
    at.sheet.table(wenna, sat(19, 30), sat(21, 0));
    at.sheet.words.clashes = {
        "From 19:33 to 20:20 the oven is wanted at 150 °C by the gratin and at 220 °C by the roast "
        "roots.",
        "The trout cream would stand warm for 3 h; 2 h is the most."};
    return at.sheet.build();
}

PerHourPlan wordySheet()
{
    SheetBuilder sheet{saturday};
    const std::string name(200, 'W');
    std::string words;
    for (int i = 0; i < 400; ++i) {
        words += "word ";
    }
    sheet.words.title = words;
    sheet.words.subtitle = words;
    sheet.words.clashes = {words};
    sheet.words.cautions = {words};
    sheet.cook(name);
    sheet.cook("Jory", sat(18, 20));
    for (int i = 0; i < 3; ++i) {
        sheet.oven("Bread oven", 1, 300);
    }
    const OvenIndex oven = sheet.oven(name, 2, 250);
    const DishId dish = sheet.dish("d", name, 1);
    sheet.turn(oven, sat(18, 10), 200, words);
    sheet.turn(oven, sat(18, 12), 220, words);
    sheet.turn(OvenIndex{0}, sat(18, 12), 220, words);
    sheet.turn(OvenIndex{1}, sat(18, 12), 220, words);
    sheet.turn(OvenIndex{2}, sat(18, 12), 220, words);
    sheet.bake(oven, sat(18, 10), sat(19, 10), dish);
    sheet.step(sat(18, 10), 20_min, handsOn, {name}, dish,
               {words, words, {words, name, words}, words});
    sheet.note(sat(18, 10), words + name, {});
    sheet.fetch(sat(18, 10), name, {"Jory"});
    sheet.table(CookIndex{1}, sat(18, 40), sat(19, 0));
    sheet.serving(1, sat(18, 40), words, {words, name});
    return sheet.build();
}

} // namespace suppertide::ui::test
