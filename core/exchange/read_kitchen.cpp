#include "core/exchange/thing_json.h"
#include "core/exchange/value_reading.h"

namespace suppertide {

namespace {

/// °C a minute with up to three decimals.
std::int64_t readRate(const JsonCursor& at)
{
    return at.decimal(3, 0, 1'000'000);
}

OvenWarming readWarming(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        OvenWarming warming;
        warming.after = readMinutes(fields.required("after"));
        warming.shown = readCelsius(fields.required("shown"));
        return warming;
    });
}

KitchenOven readOven(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        KitchenOven oven;
        takeOwnId(fields, oven.id);
        take(fields, "name", oven.name, readText);
        take(fields, "shelves", oven.shelves, readCount);
        take(fields, "low", oven.low, readCelsius);
        take(fields, "high", oven.high, readCelsius);
        take(fields, "has_fan", oven.hasFan, readBool);
        take(fields, "has_grill", oven.hasGrill, readBool);
        take(fields, "heat_c_per_min", oven.heatMilliCPerMin, readRate);
        take(fields, "cool_c_per_min", oven.coolMilliCPerMin, readRate);
        takeList(fields, "warming", oven.warming, readWarming);
        return oven;
    });
}

Burner readBurner(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Burner burner;
        takeOwnId(fields, burner.id);
        take(fields, "name", burner.name, readText);
        take(fields, "size", burner.size, readLength);
        take(fields, "power", burner.power, readPower);
        take(fields, "kind", burner.kind, readEnum<BurnerKind>);
        return burner;
    });
}

Appliance readAppliance(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Appliance appliance;
        takeOwnId(fields, appliance.id);
        take(fields, "name", appliance.name, readText);
        take(fields, "kind", appliance.kind, readText);
        take(fields, "holds", appliance.holds, readLitres);
        return appliance;
    });
}

Vessel readVessel(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Vessel vessel;
        takeOwnId(fields, vessel.id);
        take(fields, "name", vessel.name, readText);
        take(fields, "kind", vessel.kind, readText);
        take(fields, "volume", vessel.volume, readLitres);
        take(fields, "diameter", vessel.diameter, readLength);
        take(fields, "count", vessel.count, readCount);
        return vessel;
    });
}

ColdPlace readColdPlace(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        ColdPlace place;
        takeOwnId(fields, place.id);
        take(fields, "name", place.name, readText);
        take(fields, "kind", place.kind, readEnum<ColdKind>);
        take(fields, "room", place.room, readLitres);
        take(fields, "temperature", place.temperature, readCelsius);
        return place;
    });
}

KitchenCook readCook(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        KitchenCook cook;
        takeOwnId(fields, cook.id);
        take(fields, "name", cook.name, readText);
        take(fields, "is_host", cook.isHost, readBool);
        takeList(fields, "skills", cook.skills, readText);
        takeList(fields, "usual_hours", cook.usualHours, readHoursAt);
        return cook;
    });
}

/// Above the sea; the kitchen's own faults say how high it may be.
int readMetres(const JsonCursor& at)
{
    return static_cast<int>(at.whole(-100'000, 100'000));
}

TimeTaken readTimeTaken(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        TimeTaken time;
        takeOwnId(fields, time.id);
        take(fields, "name", time.name, readText);
        time.on = readId<KitchenItemId>(fields.required("on"));
        time.date = readDate(fields.required("date"));
        time.computed = readMinutes(fields.required("computed"));
        time.taken = readMinutes(fields.required("taken"));
        return time;
    });
}

} // namespace

Hours readHoursAt(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Hours hours;
        hours.from = readClock(fields.required("from"));
        hours.to = readClock(fields.required("to"));
        take(fields, "presence", hours.presence, readEnum<Presence>);
        return hours;
    });
}

Kitchen readKitchenAt(const JsonCursor& at)
{
    return readObject(at, [](JsonFields& fields) {
        Kitchen kitchen;
        takeOwnId(fields, kitchen.id);
        take(fields, "name", kitchen.name, readText);
        takeList(fields, "ovens", kitchen.ovens, readOven);
        takeList(fields, "burners", kitchen.burners, readBurner);
        takeList(fields, "appliances", kitchen.appliances, readAppliance);
        takeList(fields, "vessels", kitchen.vessels, readVessel);
        takeList(fields, "cold_places", kitchen.coldPlaces, readColdPlace);
        takeList(fields, "cooks", kitchen.cooks, readCook);
        take(fields, "room_temperature", kitchen.roomTemperature, readCelsius);
        take(fields, "altitude", kitchen.altitudeMetres, readMetres);
        takeList(fields, "times_taken", kitchen.timesTaken, readTimeTaken);
        return kitchen;
    });
}

} // namespace suppertide
