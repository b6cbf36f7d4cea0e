#include "core/library/redate.h"

#include <algorithm>

namespace suppertide {

namespace {

void shift(CivilTime& time, int days)
{
    time.date = addDays(time.date, days);
}

Instant shifted(Instant instant, int days, const TimeZone& zone)
{
    CivilTime civil = zone.civil(instant);
    shift(civil, days);
    return zone.instant(civil);
}

void shiftOccasion(Occasion& occasion, int days)
{
    for (Course& course : occasion.courses) {
        shift(course.serving, days);
    }
    for (HouseJob& job : occasion.houseJobs) {
        shift(job.earliest, days);
        shift(job.latest, days);
    }
    for (ShoppingTrip& trip : occasion.trips) {
        shift(trip.earliest, days);
        shift(trip.latest, days);
    }
    for (auto& [cook, ofDays] : occasion.hours) {
        for (HoursOfDay& ofDay : ofDays) {
            ofDay.date = addDays(ofDay.date, days);
        }
    }
}

/// The `ordinal`-th (from 0) weekday of a month, or its last if it has fewer.
CivilDate weekdayOfMonth(int year, unsigned month, Weekday weekday, int ordinal)
{
    const CivilDate first{year, month, 1};
    const int toWeekday = (static_cast<int>(weekday) - static_cast<int>(weekdayOf(first)) + 7) % 7;
    CivilDate day = addDays(first, toWeekday + 7 * ordinal);
    while (day.month != month) {
        day = addDays(day, -7);
    }
    return day;
}

} // namespace

Result<OccasionRecord> redated(OccasionRecord record, int days)
{
    const auto zone = TimeZone::find(record.occasion.zone);
    if (!zone) {
        return zone.error();
    }
    shiftOccasion(record.occasion, days);
    for (auto& [task, start] : record.layout.starts) {
        start = shifted(start, days, *zone);
    }
    for (OvenSettingPin& pin : record.layout.ovenSettings) {
        pin.from = shifted(pin.from, days, *zone);
        pin.to = shifted(pin.to, days, *zone);
    }
    record.progress = {};
    record.bought = {};
    return record;
}

Larder redated(Larder larder, int days)
{
    for (StockItem& item : larder.stock) {
        if (item.useBy) {
            item.useBy = addDays(*item.useBy, days);
        }
    }
    return larder;
}

CivilDate nextOfItsKind(const CivilDate& day, const CivilDate& today)
{
    const int ordinal = static_cast<int>((day.day - 1) / 7);
    int year = std::max(day.year, today.year);
    CivilDate next = weekdayOfMonth(year, day.month, weekdayOf(day), ordinal);
    if (next < today) {
        ++year;
        next = weekdayOfMonth(year, day.month, weekdayOf(day), ordinal);
    }
    return next;
}

} // namespace suppertide
