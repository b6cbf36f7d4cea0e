#include "core/safety/food_history.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace suppertide::safety {

namespace {

constexpr std::array placeNames{
    std::pair{Place::Counter, std::string_view{"counter"}},
    std::pair{Place::AtTable, std::string_view{"at table"}},
    std::pair{Place::Fridge, std::string_view{"fridge"}},
    std::pair{Place::Freezer, std::string_view{"freezer"}},
    std::pair{Place::Oven, std::string_view{"oven"}},
    std::pair{Place::Hob, std::string_view{"hob"}},
    std::pair{Place::Microwave, std::string_view{"microwave"}},
    std::pair{Place::WaterBath, std::string_view{"water bath"}},
    std::pair{Place::WarmHold, std::string_view{"kept warm"}},
    std::pair{Place::IceBath, std::string_view{"ice bath"}},
    std::pair{Place::ThawWater, std::string_view{"thawing in water"}},
};
static_assert(placeNames.size() == allPlaces.size());

constexpr double coldest = -80;
constexpr double hottest = 600;

bool isTemperature(double celsius)
{
    return celsius >= coldest && celsius <= hottest; // false for what is no number
}

Failure historyFault(const HistoryPiece& piece, std::string_view what)
{
    return {FailureKind::BadInput,
            fmt::format("The temperatures of a food cannot be followed: its stay in “{}” {}. Look "
                        "at the step's figures.",
                        nameOf(piece.place), what),
            fmt::format("piece from minute {} to {}", minuteOf(piece.from), minuteOf(piece.to))};
}

Result<void> checkPiece(const HistoryPiece& piece)
{
    if (piece.to < piece.from) {
        return historyFault(piece, "ends before it begins");
    }
    if (piece.surroundings && !isTemperature(*piece.surroundings)) {
        return historyFault(piece, "has surroundings colder than −80 °C or hotter than 600 °C");
    }
    double last = static_cast<double>(minuteOf(piece.from));
    const auto end = static_cast<double>(minuteOf(piece.to));
    for (const TemperatureSample& sample : piece.curve) {
        if (!(sample.minute >= last && sample.minute <= end)) {
            return historyFault(piece, "has temperatures out of order or outside its time");
        }
        if (!isTemperature(sample.core) || !isTemperature(sample.surface)) {
            return historyFault(piece, "has a temperature below −80 °C or above 600 °C");
        }
        last = sample.minute;
    }
    return {};
}

/// When the food was last raw; its beginning if it never was.
PlanTime lastRaw(const FoodHistory& history, PlanTime until)
{
    PlanTime last = history.pieces.empty() ? until : history.pieces.front().from;
    for (const HistoryEvent& event : history.events) {
        if (const auto* became = std::get_if<Became>(&event)) {
            const bool wasRaw = isRawAnimal(classAt(history, became->at - Minutes{1}));
            if (wasRaw && became->at <= until) {
                last = std::max(last, became->at);
            }
        }
    }
    return last;
}

std::optional<PlanTime> firstMade(const FoodHistory& history, PlanTime until)
{
    std::optional<PlanTime> first;
    for (const HistoryEvent& event : history.events) {
        const auto* made = std::get_if<Made>(&event);
        if (made != nullptr && made->at <= until) {
            first = std::min(first.value_or(made->at), made->at);
        }
    }
    return first;
}

Minutes fridgeBetween(const FoodHistory& history, PlanTime since, PlanTime until)
{
    Minutes sum{0};
    for (const HistoryPiece& piece : history.pieces) {
        if (piece.place == Place::Fridge) {
            sum += Interval{piece.from, piece.to}.common({since, until}).length();
        }
    }
    return sum;
}

/// Midnights that pass while the food is not in the freezer. So the day on which it goes in does
/// not count and the day on which it comes out does.
int midnightsBetween(const FoodHistory& history, PlanTime since, PlanTime until,
                     const PlanCalendar& calendar)
{
    const auto midnights = [&calendar](PlanTime from, PlanTime to) {
        return from < to ? daysBetween(calendar.civil(from).date, calendar.civil(to).date) : 0;
    };
    int sum = midnights(since, until);
    for (const HistoryPiece& piece : history.pieces) {
        if (piece.place == Place::Freezer) {
            sum -= midnights(std::max(piece.from, since), std::min(piece.to, until));
        }
    }
    return sum;
}

} // namespace

std::string_view nameOf(Place place)
{
    const auto found =
        std::ranges::find(placeNames, place, &std::pair<Place, std::string_view>::first);
    return found == placeNames.end() ? std::string_view{} : found->second;
}

std::optional<Place> findPlace(std::string_view name)
{
    const auto found =
        std::ranges::find(placeNames, name, &std::pair<Place, std::string_view>::second);
    return found == placeNames.end() ? std::nullopt : std::optional{found->first};
}

bool isHeating(Place place)
{
    return place == Place::Oven || place == Place::Hob || place == Place::Microwave ||
           place == Place::WaterBath;
}

bool isCold(Place place)
{
    return place == Place::Fridge || place == Place::Freezer || place == Place::IceBath;
}

Result<void> checkHistory(const FoodHistory& history)
{
    for (std::size_t i = 0; i < history.pieces.size(); ++i) {
        if (auto fine = checkPiece(history.pieces[i]); !fine) {
            return fine;
        }
        if (i > 0 && history.pieces[i].from < history.pieces[i - 1].to) {
            return historyFault(history.pieces[i], "begins before the one before it has ended");
        }
    }
    return {};
}

FoodClass classAt(const FoodHistory& history, PlanTime time)
{
    FoodClass food = history.kind.food;
    std::optional<PlanTime> since;
    for (const HistoryEvent& event : history.events) {
        const auto* became = std::get_if<Became>(&event);
        if (became != nullptr && became->at <= time && (!since || became->at >= *since)) {
            food = became->food;
            since = became->at;
        }
    }
    return food;
}

MixedIn keptSoFar(const FoodHistory& history, PlanTime until, const PlanCalendar& calendar)
{
    PlanTime since = lastRaw(history, until);
    if (const auto made = firstMade(history, until)) {
        since = std::max(since, *made);
    }
    Minutes fridge = fridgeBetween(history, since, until);
    int midnights = midnightsBetween(history, since, until, calendar);
    for (const HistoryEvent& event : history.events) {
        const auto* part = std::get_if<MixedIn>(&event);
        if (part != nullptr && part->at <= until) {
            fridge = std::max(fridge, part->fridge + fridgeBetween(history, part->at, until));
            midnights = std::max(
                midnights, part->midnights + midnightsBetween(history, part->at, until, calendar));
        }
    }
    return {until, fridge, midnights, {}};
}

} // namespace suppertide::safety
