#include "core/kitchen/kitchen.h"

#include <fmt/format.h>

#include <set>

namespace suppertide {

namespace {

constexpr int mostVessels = 500;

/// A time of the day; 24:00 is its end.
bool isOnClock(const ClockTime& clock)
{
    return clock.hour >= 0 && clock.minute >= 0 && clock.minute < 60 && clock <= ClockTime{24, 0};
}

class FaultFinder
{
public:
    explicit FaultFinder(std::vector<KitchenFault>& faults) : faults_(faults) {}

    void say(std::string place, std::string sentence)
    {
        faults_.push_back({std::move(place), std::move(sentence)});
    }

    /// Items share one list of ids, since a pin names them by id alone.
    void checkItem(const KitchenItemId& id, const std::string& name, std::string_view what)
    {
        if (id.empty() || name.empty()) {
            say(fmt::format("{} “{}”", what, name), "It has no name. Give it one.");
        }
        if (!id.empty() && !items_.insert(id).second) {
            say(fmt::format("{} “{}”", what, name),
                fmt::format("Something else has the id “{}” already.", id.text()));
        }
    }

    void checkOven(const KitchenOven& oven)
    {
        checkItem(oven.id, oven.name, "oven");
        const std::string place = "oven “" + oven.name + "”";
        if (oven.shelves < 1 || oven.shelves > 20) {
            say(place, "An oven has between 1 and 20 shelves.");
        }
        if (oven.low > oven.high) {
            say(place, fmt::format("Its lowest temperature, {} °C, is above its highest, {} °C.",
                                   oven.low.wholeDegrees(), oven.high.wholeDegrees()));
        } else if (oven.low < Celsius::degrees(0) || oven.high > Celsius::degrees(600)) {
            say(place, "An oven's temperatures lie between 0 and 600 °C.");
        }
        if (oven.heatMilliCPerMin <= 0 || oven.coolMilliCPerMin <= 0) {
            say(place, "It heats and cools by more than 0 °C a minute.");
        }
        checkWarming(oven, place);
    }

    void checkWarming(const KitchenOven& oven, const std::string& place)
    {
        constexpr std::size_t most = 2;
        if (oven.warming.size() > most) {
            say(place, "How it heats up is measured once or twice, not more often.");
        }
        OvenWarming last;
        for (const OvenWarming& each : oven.warming) {
            if (each.after <= last.after || each.shown <= last.shown) {
                say(place, "What was measured while it heated up is each time later and hotter "
                           "than before. Measure again from cold.");
                return;
            }
            last = each;
        }
    }

    void checkHours(const std::vector<Hours>& hours, const std::string& place)
    {
        ClockTime last{0, 0};
        for (const Hours& each : hours) {
            if (!isOnClock(each.from) || !isOnClock(each.to)) {
                say(place, fmt::format("{} to {} are no times of a day. Write them like 08:00 to "
                                       "24:00.",
                                       toIso(each.from), toIso(each.to)));
                return;
            }
            if (each.to <= each.from || each.from < last) {
                say(place, fmt::format("The hours from {} to {} end before they begin, or overlap "
                                       "the hours before them.",
                                       toIso(each.from), toIso(each.to)));
                return;
            }
            last = each.to;
        }
    }

    void checkCook(const KitchenCook& cook)
    {
        if (cook.id.empty() || cook.name.empty()) {
            say("cook “" + cook.name + "”", "A cook has a name. Give one.");
        }
        if (!cook.id.empty() && !cooks_.insert(cook.id).second) {
            say("cook “" + cook.name + "”",
                fmt::format("Two cooks have the id “{}”. Rename one of them.", cook.id.text()));
        }
        checkHours(cook.usualHours, "cook “" + cook.name + "”, hours");
    }

private:
    std::vector<KitchenFault>& faults_;
    std::set<KitchenItemId> items_;
    std::set<CookId> cooks_;
};

} // namespace

std::vector<KitchenFault> faultsOf(const Kitchen& kitchen)
{
    std::vector<KitchenFault> faults;
    FaultFinder finder(faults);
    if (kitchen.id.empty() || kitchen.name.empty()) {
        finder.say("kitchen", "The kitchen has no name. Give it one.");
    }
    if (kitchen.roomTemperature < Celsius::degrees(-20) ||
        kitchen.roomTemperature > Celsius::degrees(60)) {
        finder.say("kitchen", "The room's temperature lies between −20 and 60 °C.");
    }
    if (kitchen.altitudeMetres < -400 || kitchen.altitudeMetres > 5000) {
        finder.say("kitchen", "The kitchen lies between 400 m below and 5000 m above the sea.");
    }
    for (const TimeTaken& time : kitchen.timesTaken) {
        finder.checkItem(time.id, time.name, "time taken");
        if (time.computed <= Minutes{0} || time.taken <= Minutes{0}) {
            finder.say("time taken by “" + time.name + "”",
                       "What took no time teaches nothing. Give minutes above 0, or take it away.");
        }
    }
    for (const KitchenOven& oven : kitchen.ovens) {
        finder.checkOven(oven);
    }
    for (const Burner& burner : kitchen.burners) {
        finder.checkItem(burner.id, burner.name, "burner");
        if (burner.size <= Length{}) {
            finder.say("burner “" + burner.name + "”", "It takes pans of more than 0 cm.");
        }
    }
    for (const Appliance& appliance : kitchen.appliances) {
        finder.checkItem(appliance.id, appliance.name, "appliance");
        if (appliance.kind.empty()) {
            finder.say("appliance “" + appliance.name + "”",
                       "Say what kind it is, like “blender”.");
        }
        if (appliance.holds && *appliance.holds <= Litres{}) {
            finder.say("appliance “" + appliance.name + "”", "It holds more than 0 l.");
        }
    }
    for (const Vessel& vessel : kitchen.vessels) {
        finder.checkItem(vessel.id, vessel.name, "vessel");
        if (vessel.kind.empty() || vessel.count < 1 || vessel.count > mostVessels ||
            vessel.volume < Litres{}) {
            finder.say("vessel “" + vessel.name + "”",
                       "It has a kind, like “wide pan”, there are between 1 and 500, and it holds "
                       "0 l or more.");
        }
    }
    for (const ColdPlace& cold : kitchen.coldPlaces) {
        finder.checkItem(cold.id, cold.name, "cold place");
        if (cold.room < Litres{}) {
            finder.say("cold place “" + cold.name + "”", "It cannot have less than 0 l to spare.");
        }
        if (cold.temperature && (*cold.temperature < Celsius::degrees(-40) ||
                                 *cold.temperature > Celsius::degrees(15))) {
            finder.say("cold place “" + cold.name + "”", "It is between −40 and 15 °C.");
        }
    }
    for (const KitchenCook& cook : kitchen.cooks) {
        finder.checkCook(cook);
    }
    return faults;
}

} // namespace suppertide
