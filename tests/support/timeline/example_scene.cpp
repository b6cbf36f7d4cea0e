#include "tests/support/timeline/example_scene.h"

#include <algorithm>
#include <utility>

namespace suppertide::ui::test {

namespace {

enum DishIndex : std::size_t
{
    Soup,
    Tartlets,
    Shoulder,
    Gratin,
    Roots,
    Pavlova,
    Squash
};

PlanCalendar calendar()
{
    // Midnight before Wednesday 16 June 2027 by the clock of London, an hour ahead of UTC then.
    return {parseInstant("2027-06-15T23:00Z").value(), TimeZone::find("Europe/London").value()};
}

std::vector<DayHeading> days()
{
    return {{at(Day::Wednesday, 0), "Wednesday 16 June", "Wed 16"},
            {at(Day::Thursday, 0), "Thursday 17 June", "Thu 17"},
            {at(Day::Friday, 0), "Friday 18 June", "Fri 18"},
            {at(Day::Saturday, 0), "Saturday 19 June", "Sat 19"}};
}

SceneLane lane(std::string id, std::string name, std::string note, LaneKind kind, int group)
{
    return {std::move(id), std::move(name), std::move(note), std::move(kind), group, std::nullopt};
}

OvenLane bigOven()
{
    OvenLane oven;
    oven.shelves = 2;
    oven.curve = {{at(Day::Wednesday, 0), 20_degC},      {at(Day::Friday, 20, 40), 20_degC},
                  {at(Day::Friday, 20, 50), 120_degC},   {at(Day::Friday, 22, 5), 120_degC},
                  {at(Day::Friday, 22, 38), 20_degC},    {at(Day::Saturday, 15, 42), 20_degC},
                  {at(Day::Saturday, 15, 55), 150_degC}, {at(Day::Saturday, 20, 20), 150_degC},
                  {at(Day::Saturday, 21, 3), 20_degC},   {at(Day::Saturday, 24, 0), 20_degC}};
    oven.settings = {{{at(Day::Friday, 20, 40), at(Day::Friday, 22, 5)}, 120_degC, false},
                     {{at(Day::Friday, 22, 5), at(Day::Saturday, 15, 42)}, std::nullopt, false},
                     {{at(Day::Saturday, 15, 42), at(Day::Saturday, 20, 20)}, 150_degC, false},
                     {{at(Day::Saturday, 20, 20), at(Day::Saturday, 24)}, std::nullopt, false}};
    oven.asked = {{{{at(Day::Saturday, 19, 33), 150_degC},
                    {at(Day::Saturday, 19, 40), 220_degC},
                    {at(Day::Saturday, 20, 20), 220_degC},
                    {at(Day::Saturday, 20, 20), 150_degC}},
                   "roots ask 220°",
                   false}};
    return oven;
}

OvenLane smallOven()
{
    OvenLane oven;
    oven.curve = {{at(Day::Wednesday, 0), 20_degC},     {at(Day::Saturday, 10, 48), 20_degC},
                  {at(Day::Saturday, 11, 0), 190_degC}, {at(Day::Saturday, 11, 25), 190_degC},
                  {at(Day::Saturday, 12, 10), 20_degC}, {at(Day::Saturday, 24, 0), 20_degC}};
    oven.settings = {{{at(Day::Saturday, 10, 48), at(Day::Saturday, 11, 25)}, 190_degC, false},
                     {{at(Day::Saturday, 11, 25), at(Day::Saturday, 24)}, std::nullopt, false}};
    return oven;
}

ColdLane fridge()
{
    ColdLane cold;
    cold.capacity = 40_l;
    cold.level = {{at(Day::Wednesday, 0), 8_l, "butter and eggs 8 litres"},
                  {at(Day::Thursday, 18), 12_l, "fish 4 litres, butter and eggs 8 litres"},
                  {at(Day::Friday, 21, 20), 14_l, "shoulder 6 litres, butter and eggs 8 litres"},
                  {at(Day::Friday, 22, 10), 20_l, "stock 6 litres, shoulder 6 litres, eggs 8"},
                  {at(Day::Saturday, 11, 0), 28_l, "soup 8 litres, stock 6, shoulder 6, eggs 8"},
                  {at(Day::Saturday, 15, 30), 22_l, "soup 8 litres, stock 6, eggs 8"},
                  {at(Day::Saturday, 16, 40), 16_l, "soup 8 litres, eggs 8"},
                  {at(Day::Saturday, 19, 20), 6_l, "eggs 6 litres"},
                  {at(Day::Saturday, 21, 5), 3_l, "eggs 3 litres"}};
    return cold;
}

CookLane cook(std::vector<Interval> free)
{
    CookLane result;
    result.free = std::move(free);
    result.atHome = {{at(Day::Wednesday, 0), at(Day::Wednesday, 8)},
                     {at(Day::Friday, 23), at(Day::Saturday, 8)}};
    result.table = {{at(Day::Saturday, 19, 30), at(Day::Saturday, 19, 50)},
                    {at(Day::Saturday, 19, 56), at(Day::Saturday, 20, 5)},
                    {at(Day::Saturday, 20, 31), at(Day::Saturday, 20, 50)},
                    {at(Day::Saturday, 21, 21), at(Day::Saturday, 22, 0)}};
    return result;
}

std::vector<SceneLane> lanes()
{
    std::vector<SceneLane> all{lane("oven", "Oven", "2 shelves", bigOven(), 0),
                               lane("grill", "Oven-grill", "1 shelf", smallOven(), 1),
                               lane("b1", "Burners", "", BurnerLane{21_cm, 0, 4}, 2),
                               lane("b2", "Burners", "", BurnerLane{18_cm, 1, 4}, 2),
                               lane("b3", "Burners", "", BurnerLane{18_cm, 2, 4}, 2),
                               lane("b4", "Burners", "", BurnerLane{14_cm, 3, 4}, 2),
                               lane("blender", "Blender", "", ApplianceLane{}, 3),
                               lane("mixer", "Stand mixer", "", ApplianceLane{}, 3),
                               lane("pan", "Wide pan", "", VesselLane{}, 3),
                               lane("maren", "Maren", "host",
                                    cook({{at(Day::Wednesday, 8), at(Day::Friday, 23)},
                                          {at(Day::Saturday, 8), at(Day::Saturday, 24)}}),
                                    4),
                               lane("jory", "Jory", "from 16:00",
                                    cook({{at(Day::Saturday, 16), at(Day::Saturday, 24)}}), 5),
                               lane("fridge", "Cold space", "fridge, 40 litres", fridge(), 6)};
    std::get<CookLane>(all[10].kind).atHome.clear();
    return all;
}

struct Where
{
    std::vector<Placement> places;
    Where(std::initializer_list<const char*> names)
    {
        for (const char* name : names) {
            places.push_back({name, 0, 1});
        }
    }
};

SceneBlock block(std::string id, std::optional<std::size_t> dish, std::string verb,
                 std::string object, PlanTime start, Minutes likely, int attention,
                 const Where& where)
{
    SceneBlock made;
    made.id = std::move(id);
    made.dish = dish;
    made.verb = std::move(verb);
    made.object = std::move(object);
    made.start = start;
    made.likely = likely;
    made.least = likely - std::min(Minutes{6}, likely / 8);
    made.most = likely + std::min(Minutes{8}, likely / 6);
    made.attention = Attention::percent(attention);
    made.places = where.places;
    return made;
}

void addDaysBefore(std::vector<SceneBlock>& blocks)
{
    blocks.push_back(block("order-fish", std::nullopt, "Order", "fish", at(Day::Wednesday, 18),
                           30_min, 80, {"maren"}));
    blocks.push_back(
        block("shop", std::nullopt, "Shop", "", at(Day::Thursday, 17), 60_min, 100, {"maren"}));
    blocks.push_back(block("stock", Shoulder, "Stock", "", at(Day::Friday, 20, 10), 90_min, 10,
                           {"b1", "maren"}));
    blocks.push_back(
        block("whisk", Pavlova, "Whisk", "whites", at(Day::Friday, 20, 15), 35_min, 80, {"maren"}));
    blocks.push_back(block("whisk-mixer", Pavlova, "Whisk", "whites", at(Day::Friday, 20, 15),
                           25_min, 80, {"mixer"}));
    blocks.push_back(
        block("rub", Tartlets, "Rub", "butter", at(Day::Friday, 20, 55), 25_min, 80, {"maren"}));
    SceneBlock meringue = block("meringue", Pavlova, "Bake", "meringue", at(Day::Friday, 20, 50),
                                75_min, 0, {"oven"});
    meringue.isPinned = true;
    blocks.push_back(meringue);
    blocks.push_back(
        block("dry", Pavlova, "Dry", "", at(Day::Friday, 22, 5), 565_min, 0, {"oven"}));
}

void addMorning(std::vector<SceneBlock>& blocks)
{
    blocks.push_back(
        block("beets", Soup, "Beets", "", at(Day::Saturday, 10, 5), 45_min, 10, {"b2", "maren"}));
    blocks.push_back(block("stew-rhubarb", Pavlova, "Stew", "rhubarb", at(Day::Saturday, 10, 10),
                           20_min, 10, {"b3", "maren"}));
    blocks.push_back(
        block("roll", Tartlets, "Roll", "", at(Day::Saturday, 10, 32), 18_min, 80, {"maren"}));
    blocks.push_back(block("blend", Soup, "Blend", "soup", at(Day::Saturday, 10, 50), 10_min, 80,
                           {"blender", "maren"}));
    blocks.push_back(block("bake-cases", Tartlets, "Bake", "cases", at(Day::Saturday, 11, 0),
                           25_min, 10, {"grill", "maren"}));
}

void addEvening(std::vector<SceneBlock>& blocks)
{
    blocks.push_back(block("sear", Shoulder, "Sear", "shoulder", at(Day::Saturday, 15, 30), 25_min,
                           80, {"b1", "pan", "maren"}));
    SceneBlock braise = block("braise", Shoulder, "Braise", "shoulder", at(Day::Saturday, 15, 55),
                              215_min, 0, {"oven"});
    braise.slack = Interval{at(Day::Saturday, 15, 45), at(Day::Saturday, 16, 5)};
    braise.slackWords = "10 min earlier, 10 later";
    blocks.push_back(braise);
    SceneBlock gratin = block("bake-gratin", Gratin, "Bake", "gratin", at(Day::Saturday, 18, 50),
                              90_min, 0, {"oven"});
    gratin.places.front().row = 1;
    blocks.push_back(gratin);
    blocks.push_back(
        block("roast-roots", Roots, "Roots", "", at(Day::Saturday, 19, 40), 40_min, 0, {"oven"}));
    blocks.push_back(block("cream", Tartlets, "Trout", "cream", at(Day::Saturday, 16, 15), 25_min,
                           80, {"maren"}));
    blocks.push_back(
        block("peel", Roots, "Peel", "roots", at(Day::Saturday, 17, 20), 30_min, 80, {"jory"}));
    blocks.push_back(block("slice", Gratin, "Slice", "potatoes", at(Day::Saturday, 18, 5), 45_min,
                           80, {"jory"}));
    blocks.push_back(
        block("fry", Tartlets, "Fry", "", at(Day::Saturday, 19, 0), 12_min, 80, {"b2", "maren"}));
    blocks.push_back(block("plate-soup", Soup, "Plate", "soup", at(Day::Saturday, 19, 16), 14_min,
                           80, {"jory"}));
    blocks.push_back(block("fill", Tartlets, "Fill", "tartlets", at(Day::Saturday, 19, 40), 14_min,
                           80, {"jory"}));
    blocks.push_back(block("sauce", Shoulder, "Sauce", "", at(Day::Saturday, 20, 5), 20_min, 10,
                           {"b1", "pan", "maren"}));
    blocks.push_back(
        block("carve", Shoulder, "Carve", "", at(Day::Saturday, 20, 25), 5_min, 100, {"maren"}));
    blocks.push_back(block("plate-main", Shoulder, "Plate", "main", at(Day::Saturday, 20, 20),
                           10_min, 80, {"jory"}));
    blocks.push_back(block("whip", Pavlova, "Whip", "cream", at(Day::Saturday, 20, 50), 10_min, 80,
                           {"mixer", "maren"}));
    blocks.push_back(block("dress", Pavlova, "Dress", "pavlova", at(Day::Saturday, 21, 5), 15_min,
                           80, {"maren"}));
}

std::vector<SceneWait> waits()
{
    SceneWait cream{"trout-cream",
                    "cream",
                    "fill",
                    {at(Day::Saturday, 16, 40), at(Day::Saturday, 19, 40)},
                    Minutes{0},
                    120_min,
                    "trout cream out: most 2 h",
                    "counter",
                    false,
                    2};
    return {{"soup-chills",
             "blend",
             "plate-soup",
             {at(Day::Saturday, 11, 0), at(Day::Saturday, 19, 16)},
             240_min,
             Minutes{2880},
             "soup chills: least 4 h, most 2 days",
             "fridge",
             false,
             std::nullopt},
            {"rhubarb-cools",
             "stew-rhubarb",
             "dress",
             {at(Day::Saturday, 10, 30), at(Day::Saturday, 21, 5)},
             60_min,
             Minutes{1440},
             "rhubarb cools: least 1 h",
             "counter",
             false,
             std::nullopt},
            {"dough-rests",
             "rub",
             "roll",
             {at(Day::Friday, 21, 20), at(Day::Saturday, 10, 32)},
             60_min,
             Minutes{4320},
             "dough rests: least 1 h",
             "fridge",
             false,
             std::nullopt},
            {"roast-rests",
             "braise",
             "carve",
             {at(Day::Saturday, 19, 30), at(Day::Saturday, 20, 25)},
             20_min,
             70_min,
             "rests 20–70",
             "warm",
             false,
             std::nullopt},
            cream};
}

std::vector<SceneClash> clashes()
{
    const Interval both{at(Day::Saturday, 19, 40), at(Day::Saturday, 20, 20)};
    return {
        {1,
         ClashSeverity::Impossible,
         "Gratin wants 150°, roots want 220°, in the one oven",
         {{"oven", "bake-gratin", both, std::nullopt},
          {"oven", "roast-roots", both, DegreeRange{150_degC, 220_degC}}}},
        {2,
         ClashSeverity::Unsafe,
         "Trout cream would stand warm for 3 h; 2 h is the most",
         {{"jory", "fill", {at(Day::Saturday, 19, 40), at(Day::Saturday, 19, 54)}, std::nullopt}}},
        {3,
         ClashSeverity::Undesirable,
         "The mixer runs while guests are at table",
         {{"mixer", "whip", {}, std::nullopt}, {"maren", "whip", {}, std::nullopt}}}};
}

SceneBlock ghost(std::string id, std::string verb, PlanTime start, Minutes length, int attention,
                 const Where& where, Minutes countdown)
{
    SceneBlock made =
        block(std::move(id), Squash, std::move(verb), "", start, length, attention, where);
    made.ghost = Ghost{countdown};
    return made;
}

void addDrag(Scene& scene)
{
    scene.blocks.push_back(
        ghost("g-stuff", "Stuff", at(Day::Saturday, 18, 20), 22_min, 80, {"maren"}, 130_min));
    scene.blocks.push_back(
        ghost("g-fry", "Fry", at(Day::Saturday, 18, 45), 24_min, 10, {"b3"}, 105_min));
    scene.blocks.push_back(
        ghost("g-bake", "Bake", at(Day::Saturday, 19, 25), 50_min, 0, {"grill"}, 65_min));
    scene.threads = {{"g-bake", "", 3}, {"g-fry", "g-bake", 0}, {"g-stuff", "g-fry", 0}};
    scene.allowed = {{"grill",
                      {at(Day::Saturday, 17, 10), at(Day::Saturday, 20, 20)},
                      "may bake 17:10 to 20:20",
                      "everything else still holds"}};
    std::get<OvenLane>(scene.lanes[1].kind).asked = {{{{at(Day::Saturday, 19, 14), 20_degC},
                                                       {at(Day::Saturday, 19, 25), 180_degC},
                                                       {at(Day::Saturday, 20, 15), 180_degC},
                                                       {at(Day::Saturday, 20, 45), 40_degC}},
                                                      "180°",
                                                      true}};
    scene.lanes[5].refusal = "too small for a 24 cm pan";
    scene.lanes[6].refusal = "nothing to blend";
    scene.lanes[7].refusal = "nothing to whip";
    scene.card = DragCard{
        at(Day::Saturday, 20, 30), 6, "Stuffed squash", "2 portions, 3 Main", "no new clash", true};
}

} // namespace

PlanTime at(Day day, int hour, int minute)
{
    return planTime(static_cast<std::int64_t>(day) * 1440 + hour * 60 + minute);
}

Scene emptyScene()
{
    Scene scene;
    scene.calendar = calendar();
    scene.horizon = {at(Day::Wednesday, 0), at(Day::Saturday, 24)};
    scene.days = days();
    scene.dishes = {{0, "Chilled beetroot soup"}, {1, "Tartlets"},    {2, "Braised shoulder"},
                    {3, "Potato gratin"},         {4, "Roast roots"}, {5, "Rhubarb pavlova"},
                    {6, "Stuffed squash"}};
    scene.lanes = lanes();
    for (SceneLane& each : scene.lanes) {
        if (auto* oven = std::get_if<OvenLane>(&each.kind)) {
            oven->curve.clear();
            oven->settings.clear();
            oven->asked.clear();
        }
    }
    scene.servings = {{1, "Soup", at(Day::Saturday, 19, 30), false},
                      {2, "Tartlets", at(Day::Saturday, 19, 55), false},
                      {3, "Main", at(Day::Saturday, 20, 30), false},
                      {4, "Pavlova", at(Day::Saturday, 21, 20), false}};
    return scene;
}

Scene exampleScene()
{
    return exampleScene(false);
}

Scene exampleScene(bool withDrag)
{
    Scene scene = emptyScene();
    scene.lanes = lanes();
    addDaysBefore(scene.blocks);
    addMorning(scene.blocks);
    addEvening(scene.blocks);
    scene.waits = waits();
    scene.spans = {{"wide-pan",
                    "pan",
                    Shoulder,
                    {at(Day::Saturday, 15, 55), at(Day::Saturday, 20, 5)},
                    "pan held from sear to sauce, 4 h 10"}};
    scene.clashes = clashes();
    for (ClashPlace& place : scene.clashes.back().places) {
        place.when = {at(Day::Saturday, 20, 50), at(Day::Saturday, 21, 0)};
    }
    scene.now = at(Day::Friday, 20, 42);
    if (withDrag) {
        addDrag(scene);
    }
    return scene;
}

Scene crowdedScene(int count)
{
    Scene scene = exampleScene();
    const std::vector<Where> places{{"oven"}, {"grill"}, {"b1", "maren"},      {"b2", "jory"},
                                    {"b3"},   {"b4"},    {"blender", "maren"}, {"mixer"},
                                    {"pan"},  {"jory"}};
    // A fixed walk through lanes and minutes: evenly crowded, and alike in every run.
    for (int i = 0; static_cast<int>(scene.blocks.size()) < count; ++i) {
        const PlanTime start = at(Day::Saturday, 14, 0) + Minutes{(i * 37) % 480};
        SceneBlock made =
            block("crowd-" + std::to_string(i), static_cast<std::size_t>(i % 7), "Stir",
                  "pot " + std::to_string(i), start, Minutes{10 + (i * 13) % 50}, (i * 29) % 101,
                  places[static_cast<std::size_t>(i) % places.size()]);
        made.places.front().row = i % 2;
        scene.blocks.push_back(std::move(made));
    }
    return scene;
}

} // namespace suppertide::ui::test
