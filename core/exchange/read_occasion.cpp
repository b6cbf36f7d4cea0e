#include "core/exchange/line_scaling_json.h"
#include "core/exchange/thing_json.h"
#include "core/exchange/value_reading.h"

namespace suppertide {

namespace {

Guest readGuest(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Guest guest;
        takeOwnId(fields, guest.id);
        take(fields, "name", guest.name, readText);
        takeList(fields, "diets", guest.diets, readDiet);
        takeList(fields, "allergies", guest.allergies, readSubstance);
        takeList(fields, "risks", guest.risks, readRiskGroup);
        take(fields, "portion", guest.portion, readPortions);
        takeList(fields, "dislikes", guest.dislikes, readText);
        return guest;
    });
}

MixEntry readMixEntry(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        MixEntry entry;
        entry.variant = readId<VariantId>(fields.required("variant"));
        take(fields, "portions", entry.portions, readPortions);
        takeList(fields, "guests", entry.guests, readId<GuestId>);
        return entry;
    });
}

/// An object whose keys are ids.
template <typename Map, typename Read>
void takeMap(JsonFields& fields, std::string_view key, Map& map, const Read& read)
{
    if (const auto at = fields.optional(key)) {
        at->forEachEntry([&](const std::string& name, const JsonCursor& value) {
            if (name.empty()) {
                at->fault("a key here is an id; one is empty");
            }
            map.emplace(typename Map::key_type{name}, read(value));
        });
    }
}

OtherMould readOtherMould(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        OtherMould other;
        other.mould = readMould(fields.required("mould"));
        take(fields, "keeps_amounts", other.keepsAmounts, readBool);
        return other;
    });
}

Dish readDish(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Dish dish;
        takeOwnId(fields, dish.id);
        dish.recipe = readId<RecipeId>(fields.required("recipe"));
        take(fields, "alternative", dish.alternative, readId<AlternativeId>);
        takeList(fields, "mix", dish.mix, readMixEntry);
        take(fields, "cook", dish.cook, readId<CookId>);
        takeMap(fields, "methods", dish.methods, readId<MethodId>);
        take(fields, "other_mould", dish.mould, readOtherMould);
        return dish;
    });
}

Alternative readAlternative(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Alternative alternative;
        takeOwnId(fields, alternative.id);
        take(fields, "name", alternative.name, readText);
        take(fields, "for_everybody", alternative.isForEverybody, readBool);
        return alternative;
    });
}

Course readCourse(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Course course;
        takeOwnId(fields, course.id);
        take(fields, "name", course.name, readText);
        course.serving = readCivil(fields.required("serving"));
        take(fields, "at_table", course.atTable, readMinutes);
        take(fields, "is_serving_pinned", course.isServingPinned, readBool);
        takeList(fields, "alternatives", course.alternatives, readAlternative);
        takeList(fields, "dishes", course.dishes, readDish);
        return course;
    });
}

HouseJob readHouseJob(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        HouseJob job;
        takeOwnId(fields, job.id);
        take(fields, "name", job.name, readText);
        take(fields, "duration", job.duration, readMinutes);
        take(fields, "attention", job.attention, readAttention);
        job.earliest = readCivil(fields.required("earliest"));
        job.latest = readCivil(fields.required("latest"));
        take(fields, "cook", job.cook, readId<CookId>);
        return job;
    });
}

ShoppingTrip readTrip(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        ShoppingTrip trip;
        takeOwnId(fields, trip.id);
        take(fields, "name", trip.name, readText);
        take(fields, "duration", trip.duration, readMinutes);
        trip.earliest = readCivil(fields.required("earliest"));
        trip.latest = readCivil(fields.required("latest"));
        takeList(fields, "for_dishes", trip.forDishes, readId<DishId>);
        take(fields, "freshness", trip.freshness, readMinutes);
        take(fields, "fridge", trip.fridge, readLitres);
        take(fields, "cook", trip.cook, readId<CookId>);
        return trip;
    });
}

HoursOfDay readHoursOfDay(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        HoursOfDay ofDay;
        ofDay.date = readDate(fields.required("date"));
        takeList(fields, "hours", ofDay.hours, readHoursAt);
        return ofDay;
    });
}

Preferences readPreferences(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Preferences preferences;
        take(fields, "calm", preferences.calm,
             [](const JsonCursor& calm) { return static_cast<int>(calm.whole(0, 100)); });
        take(fields, "few_oven_changes", preferences.fewOvenChanges, readEnum<Wish>);
        take(fields, "few_sessions", preferences.fewSessions, readEnum<Wish>);
        take(fields, "stay_close", preferences.stayClose, readEnum<Wish>);
        take(fields, "caution", preferences.caution, readEnum<CautionLevel>);
        take(fields, "rules", preferences.rules, readEnum<safety::RuleBook>);
        return preferences;
    });
}

OvenSettingPin readSettingPin(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        OvenSettingPin pin;
        pin.oven = readIdText(fields.required("oven"));
        pin.from = readInstant(fields.required("from"));
        pin.to = readInstant(fields.required("to"));
        pin.setC = static_cast<int>(fields.required("set_c").whole(0, 600));
        return pin;
    });
}

Layout readLayout(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Layout layout;
        takeMap(fields, "starts", layout.starts, readInstant);
        takeMap(fields, "options", layout.options, readIdText);
        takeMap(fields, "cooks", layout.cooks,
                [](const JsonCursor& cooks) { return readList(cooks, readIdText); });
        takeMap(fields, "units", layout.units, readIdText);
        takeMap(fields, "ovens", layout.ovens, readIdText);
        if (const auto pinned = fields.optional("pinned")) {
            pinned->forEachItem(
                [&layout](const JsonCursor& id) { layout.pinned.insert(readIdText(id)); });
        }
        takeList(fields, "oven_settings", layout.ovenSettings, readSettingPin);
        if (const auto washed = fields.optional("washed")) {
            washed->forEachItem(
                [&layout](const JsonCursor& id) { layout.washed.insert(readIdText(id)); });
        }
        takeMap(fields, "planned_from", layout.plannedFrom, readIdText);
        return layout;
    });
}

StepReport readStepReport(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        StepReport report;
        take(fields, "started", report.started, readInstant);
        take(fields, "done", report.done, readInstant);
        take(fields, "not_before", report.notBefore, readInstant);
        take(fields, "longer", report.longer, readMinutes);
        take(fields, "left_out", report.isLeftOut, readBool);
        takeList(fields, "cooks", report.cooks, readIdText);
        takeMap(fields, "units", report.units, readIdText);
        takeMap(fields, "ovens", report.ovens, readIdText);
        return report;
    });
}

OvenReading readOvenReading(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        OvenReading reading;
        reading.oven = readIdText(fields.required("oven"));
        reading.at = readInstant(fields.required("at"));
        reading.celsius = static_cast<int>(fields.required("celsius").whole(-50, 600));
        return reading;
    });
}

Progress readProgress(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Progress progress;
        takeMap(fields, "steps", progress.steps, readStepReport);
        takeList(fields, "ovens", progress.ovens, readOvenReading);
        if (const auto givenUp = fields.optional("given_up")) {
            givenUp->forEachItem(
                [&progress](const JsonCursor& name) { progress.givenUp.insert(readIdText(name)); });
        }
        take(fields, "longer_hours", progress.longerHours, readMinutes);
        takeMap(fields, "cooks", progress.cooks,
                [](const JsonCursor& cooks) { return readList(cooks, readIdText); });
        return progress;
    });
}

Bought readBought(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Bought bought;
        takeMap(fields, "lines", bought.lines, readAmount);
        return bought;
    });
}

} // namespace

OccasionRecord readOccasionAt(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        OccasionRecord record;
        Occasion& occasion = record.occasion;
        takeOwnId(fields, occasion.id);
        take(fields, "name", occasion.name, readText);
        take(fields, "zone", occasion.zone, readText);
        take(fields, "kitchen", occasion.kitchen, readId<KitchenId>);
        takeList(fields, "guests", occasion.guests, readGuest);
        takeList(fields, "courses", occasion.courses, readCourse);
        takeList(fields, "house_jobs", occasion.houseJobs, readHouseJob);
        takeList(fields, "trips", occasion.trips, readTrip);
        takeMap(fields, "hours", occasion.hours,
                [](const JsonCursor& days) { return readList(days, readHoursOfDay); });
        take(fields, "preferences", occasion.preferences, readPreferences);
        take(fields, "note", occasion.note, readText);
        take(fields, "layout", record.layout, readLayout);
        take(fields, "progress", record.progress, readProgress);
        take(fields, "bought", record.bought, readBought);
        return record;
    });
}

} // namespace suppertide
