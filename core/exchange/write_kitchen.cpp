#include "core/exchange/decimal.h"
#include "core/exchange/thing_json.h"
#include "core/exchange/value_writing.h"

namespace suppertide {

namespace {

void putRateUnless(std::int64_t usual, JsonObject& json, std::string_view key,
                   std::int64_t milliCPerMin)
{
    if (milliCPerMin != usual) {
        json.put(key, milliCPerMin % 1000 == 0
                          ? JsonValue{milliCPerMin / 1000}
                          : JsonValue{JsonDecimal{decimalText(milliCPerMin, 3)}});
    }
}

JsonValue warmingToJson(const OvenWarming& warming)
{
    JsonObject json;
    json.put("after", toJson(warming.after));
    json.put("shown", toJson(warming.shown));
    return json.take();
}

JsonValue ovenToJson(const KitchenOven& oven)
{
    const KitchenOven usual;
    JsonObject json;
    json.put("id", toJson(oven.id));
    json.putUnless(usual.name, "name", oven.name);
    json.putUnless(usual.shelves, "shelves", oven.shelves);
    json.putUnless(usual.low, "low", oven.low);
    json.putUnless(usual.high, "high", oven.high);
    json.putUnless(usual.hasFan, "has_fan", oven.hasFan);
    json.putUnless(usual.hasGrill, "has_grill", oven.hasGrill);
    putRateUnless(usual.heatMilliCPerMin, json, "heat_c_per_min", oven.heatMilliCPerMin);
    putRateUnless(usual.coolMilliCPerMin, json, "cool_c_per_min", oven.coolMilliCPerMin);
    json.putIfAny("warming", oven.warming, warmingToJson);
    return json.take();
}

JsonValue burnerToJson(const Burner& burner)
{
    const Burner usual;
    JsonObject json;
    json.put("id", toJson(burner.id));
    json.putUnless(usual.name, "name", burner.name);
    json.putUnless(usual.size, "size", burner.size);
    json.putUnless(usual.power, "power", burner.power);
    json.putUnless(usual.kind, "kind", burner.kind);
    return json.take();
}

JsonValue applianceToJson(const Appliance& appliance)
{
    JsonObject json;
    json.put("id", toJson(appliance.id));
    json.putUnless(std::string(), "name", appliance.name);
    json.putUnless(std::string(), "kind", appliance.kind);
    json.putIfAny("holds", appliance.holds);
    return json.take();
}

JsonValue vesselToJson(const Vessel& vessel)
{
    const Vessel usual;
    JsonObject json;
    json.put("id", toJson(vessel.id));
    json.putUnless(usual.name, "name", vessel.name);
    json.putUnless(usual.kind, "kind", vessel.kind);
    json.putUnless(usual.volume, "volume", vessel.volume);
    json.putUnless(usual.diameter, "diameter", vessel.diameter);
    json.putUnless(usual.count, "count", vessel.count);
    return json.take();
}

JsonValue coldPlaceToJson(const ColdPlace& place)
{
    const ColdPlace usual;
    JsonObject json;
    json.put("id", toJson(place.id));
    json.putUnless(usual.name, "name", place.name);
    json.putUnless(usual.kind, "kind", place.kind);
    json.putUnless(usual.room, "room", place.room);
    json.putIfAny("temperature", place.temperature);
    return json.take();
}

JsonValue cookToJson(const KitchenCook& cook)
{
    const KitchenCook usual;
    JsonObject json;
    json.put("id", toJson(cook.id));
    json.putUnless(usual.name, "name", cook.name);
    json.putUnless(usual.isHost, "is_host", cook.isHost);
    json.putIfAny("skills", cook.skills);
    if (cook.usualHours != usual.usualHours) {
        json.putList("usual_hours", cook.usualHours,
                     [](const Hours& hours) { return toJson(hours); });
    }
    return json.take();
}

JsonValue timeTakenToJson(const TimeTaken& time)
{
    JsonObject json;
    json.put("id", toJson(time.id));
    json.putUnless(std::string(), "name", time.name);
    json.put("on", toJson(time.on));
    json.put("date", toJson(time.date));
    json.put("computed", toJson(time.computed));
    json.put("taken", toJson(time.taken));
    return json.take();
}

} // namespace

JsonValue toJson(const Hours& hours)
{
    JsonObject json;
    json.put("from", toJson(hours.from));
    json.put("to", toJson(hours.to));
    json.putUnless(Hours{}.presence, "presence", hours.presence);
    return json.take();
}

JsonValue toJson(const Kitchen& kitchen)
{
    const Kitchen usual;
    JsonObject json;
    json.put("id", toJson(kitchen.id));
    json.putUnless(usual.name, "name", kitchen.name);
    json.putIfAny("ovens", kitchen.ovens, ovenToJson);
    json.putIfAny("burners", kitchen.burners, burnerToJson);
    json.putIfAny("appliances", kitchen.appliances, applianceToJson);
    json.putIfAny("vessels", kitchen.vessels, vesselToJson);
    json.putIfAny("cold_places", kitchen.coldPlaces, coldPlaceToJson);
    json.putIfAny("cooks", kitchen.cooks, cookToJson);
    json.putUnless(usual.roomTemperature, "room_temperature", kitchen.roomTemperature);
    json.putUnless(usual.altitudeMetres, "altitude", kitchen.altitudeMetres);
    json.putIfAny("times_taken", kitchen.timesTaken, timeTakenToJson);
    return json.take();
}

} // namespace suppertide
