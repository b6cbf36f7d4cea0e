#include "core/exchange/line_scaling_json.h"
#include "core/exchange/thing_json.h"
#include "core/exchange/value_writing.h"

namespace suppertide {

namespace {

JsonValue guestToJson(const Guest& guest)
{
    JsonObject json;
    json.put("id", toJson(guest.id));
    json.putUnless(std::string(), "name", guest.name);
    json.putIfAny("diets", guest.diets);
    json.putIfAny("allergies", guest.allergies);
    json.putIfAny("risks", guest.risks);
    json.putUnless(Portions{1}, "portion", guest.portion);
    json.putIfAny("dislikes", guest.dislikes);
    return json.take();
}

JsonValue mixEntryToJson(const MixEntry& entry)
{
    JsonObject json;
    json.put("variant", toJson(entry.variant));
    json.putUnless(Portions{}, "portions", entry.portions);
    json.putIfAny("guests", entry.guests);
    return json.take();
}

const std::string& keyOf(const std::string& key)
{
    return key;
}

template <typename Tag>
const std::string& keyOf(const Id<Tag>& id)
{
    return id.text();
}

/// An object whose keys are ids.
template <typename Map, typename ValueJson>
void putMap(JsonObject& json, std::string_view key, const Map& map, const ValueJson& valueJson)
{
    if (!map.empty()) {
        JsonObject entries;
        for (const auto& [id, value] : map) {
            entries.put(keyOf(id), valueJson(value));
        }
        json.put(key, entries.take());
    }
}

template <typename Map>
void putMap(JsonObject& json, std::string_view key, const Map& map)
{
    putMap(json, key, map, [](const auto& value) { return toJson(value); });
}

JsonValue otherMouldToJson(const OtherMould& other)
{
    JsonObject json;
    json.put("mould", toJson(other.mould));
    json.putUnless(false, "keeps_amounts", other.keepsAmounts);
    return json.take();
}

JsonValue dishToJson(const Dish& dish)
{
    JsonObject json;
    json.put("id", toJson(dish.id));
    json.put("recipe", toJson(dish.recipe));
    json.putUnless(AlternativeId{}, "alternative", dish.alternative);
    json.putIfAny("mix", dish.mix, mixEntryToJson);
    json.putIfAny("cook", dish.cook);
    putMap(json, "methods", dish.methods);
    if (dish.mould) {
        json.put("other_mould", otherMouldToJson(*dish.mould));
    }
    return json.take();
}

JsonValue alternativeToJson(const Alternative& alternative)
{
    JsonObject json;
    json.put("id", toJson(alternative.id));
    json.putUnless(std::string(), "name", alternative.name);
    json.putUnless(false, "for_everybody", alternative.isForEverybody);
    return json.take();
}

JsonValue courseToJson(const Course& course)
{
    const Course usual;
    JsonObject json;
    json.put("id", toJson(course.id));
    json.putUnless(usual.name, "name", course.name);
    json.put("serving", toJson(course.serving));
    json.putUnless(usual.atTable, "at_table", course.atTable);
    json.putUnless(usual.isServingPinned, "is_serving_pinned", course.isServingPinned);
    json.putIfAny("alternatives", course.alternatives, alternativeToJson);
    json.putIfAny("dishes", course.dishes, dishToJson);
    return json.take();
}

JsonValue houseJobToJson(const HouseJob& job)
{
    const HouseJob usual;
    JsonObject json;
    json.put("id", toJson(job.id));
    json.putUnless(usual.name, "name", job.name);
    json.putUnless(usual.duration, "duration", job.duration);
    json.putUnless(usual.attention, "attention", job.attention);
    json.put("earliest", toJson(job.earliest));
    json.put("latest", toJson(job.latest));
    json.putIfAny("cook", job.cook);
    return json.take();
}

JsonValue tripToJson(const ShoppingTrip& trip)
{
    const ShoppingTrip usual;
    JsonObject json;
    json.put("id", toJson(trip.id));
    json.putUnless(usual.name, "name", trip.name);
    json.putUnless(usual.duration, "duration", trip.duration);
    json.put("earliest", toJson(trip.earliest));
    json.put("latest", toJson(trip.latest));
    json.putIfAny("for_dishes", trip.forDishes);
    json.putIfAny("freshness", trip.freshness);
    json.putUnless(usual.fridge, "fridge", trip.fridge);
    json.putIfAny("cook", trip.cook);
    return json.take();
}

JsonValue hoursOfDaysToJson(const std::vector<HoursOfDay>& days)
{
    JsonValue::List list;
    for (const HoursOfDay& ofDay : days) {
        JsonObject json;
        json.put("date", toJson(ofDay.date));
        json.putIfAny("hours", ofDay.hours);
        list.push_back(json.take());
    }
    return JsonValue{std::move(list)};
}

JsonValue listOfTexts(const auto& texts)
{
    JsonValue::List list;
    for (const std::string& text : texts) {
        list.push_back(toJson(text));
    }
    return JsonValue{std::move(list)};
}

JsonValue preferencesToJson(const Preferences& preferences)
{
    const Preferences usual;
    JsonObject json;
    json.putUnless(usual.calm, "calm", preferences.calm);
    json.putUnless(usual.fewOvenChanges, "few_oven_changes", preferences.fewOvenChanges);
    json.putUnless(usual.fewSessions, "few_sessions", preferences.fewSessions);
    json.putUnless(usual.stayClose, "stay_close", preferences.stayClose);
    json.putUnless(usual.caution, "caution", preferences.caution);
    json.putUnless(usual.rules, "rules", preferences.rules);
    return json.take();
}

JsonValue settingPinToJson(const OvenSettingPin& pin)
{
    JsonObject json;
    json.put("oven", toJson(pin.oven));
    json.put("from", toJson(pin.from));
    json.put("to", toJson(pin.to));
    json.put("set_c", toJson(pin.setC));
    return json.take();
}

JsonValue layoutToJson(const Layout& layout)
{
    JsonObject json;
    putMap(json, "starts", layout.starts);
    putMap(json, "options", layout.options);
    putMap(json, "cooks", layout.cooks,
           [](const std::vector<std::string>& cooks) { return listOfTexts(cooks); });
    putMap(json, "units", layout.units);
    putMap(json, "ovens", layout.ovens);
    if (!layout.pinned.empty()) {
        json.put("pinned", listOfTexts(layout.pinned));
    }
    json.putIfAny("oven_settings", layout.ovenSettings, settingPinToJson);
    if (!layout.washed.empty()) {
        json.put("washed", listOfTexts(layout.washed));
    }
    putMap(json, "planned_from", layout.plannedFrom);
    return json.take();
}

JsonValue stepReportToJson(const StepReport& report)
{
    JsonObject json;
    json.putIfAny("started", report.started);
    json.putIfAny("done", report.done);
    json.putIfAny("not_before", report.notBefore);
    json.putUnless(Minutes{0}, "longer", report.longer);
    json.putUnless(false, "left_out", report.isLeftOut);
    if (!report.cooks.empty()) {
        json.put("cooks", listOfTexts(report.cooks));
    }
    putMap(json, "units", report.units);
    putMap(json, "ovens", report.ovens);
    return json.take();
}

JsonValue ovenReadingToJson(const OvenReading& reading)
{
    JsonObject json;
    json.put("oven", toJson(reading.oven));
    json.put("at", toJson(reading.at));
    json.put("celsius", toJson(reading.celsius));
    return json.take();
}

JsonValue progressToJson(const Progress& progress)
{
    JsonObject json;
    putMap(json, "steps", progress.steps, stepReportToJson);
    json.putIfAny("ovens", progress.ovens, ovenReadingToJson);
    if (!progress.givenUp.empty()) {
        json.put("given_up", listOfTexts(progress.givenUp));
    }
    json.putUnless(Minutes{0}, "longer_hours", progress.longerHours);
    putMap(json, "cooks", progress.cooks,
           [](const std::vector<std::string>& cooks) { return listOfTexts(cooks); });
    return json.take();
}

JsonValue boughtToJson(const Bought& bought)
{
    JsonObject json;
    putMap(json, "lines", bought.lines);
    return json.take();
}

} // namespace

JsonValue toJson(const OccasionRecord& record)
{
    const Occasion usual;
    const Occasion& occasion = record.occasion;
    JsonObject json;
    json.put("id", toJson(occasion.id));
    json.putUnless(usual.name, "name", occasion.name);
    json.putUnless(usual.zone, "zone", occasion.zone);
    json.putUnless(usual.kitchen, "kitchen", occasion.kitchen);
    json.putIfAny("guests", occasion.guests, guestToJson);
    json.putIfAny("courses", occasion.courses, courseToJson);
    json.putIfAny("house_jobs", occasion.houseJobs, houseJobToJson);
    json.putIfAny("trips", occasion.trips, tripToJson);
    putMap(json, "hours", occasion.hours, hoursOfDaysToJson);
    if (!(occasion.preferences == usual.preferences)) {
        json.put("preferences", preferencesToJson(occasion.preferences));
    }
    json.putUnless(usual.note, "note", occasion.note);
    if (!(record.layout == Layout{})) {
        json.put("layout", layoutToJson(record.layout));
    }
    if (!record.progress.empty()) {
        json.put("progress", progressToJson(record.progress));
    }
    if (!record.bought.empty()) {
        json.put("bought", boughtToJson(record.bought));
    }
    return json.take();
}

} // namespace suppertide
