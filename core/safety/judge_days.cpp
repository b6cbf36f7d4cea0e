// Days kept: the storage chart by class, and the date mark of trade.
#include <algorithm>

#include "core/safety/judges.h"
#include "core/safety/storage_days.h"

namespace suppertide::safety {

namespace {

constexpr double minutesOfDay = 1440;

/// Time in the fridge, or the freezer, while the food was of one kind: raw, or not.
struct KeptAs
{
    FoodClass food = FoodClass::DryGoods;
    std::vector<MinuteSpan> spans;
};

void addTo(std::vector<KeptAs>& kept, const TraceSegment& segment)
{
    const bool isNew =
        kept.empty() || (kept.back().food != segment.food && isRawAnimal(kept.back().food));
    if (isNew) {
        kept.push_back({segment.food, {}});
    }
    // The mixture of a cooked food is as old as its oldest part: the count goes on, the class is
    // new.
    kept.back().food = segment.food;
    append(kept.back().spans, {segment.from, segment.to});
}

std::vector<KeptAs> keptIn(const Case& each, Place place)
{
    std::vector<KeptAs> kept;
    for (const TraceSegment& segment : each.trace) {
        if (segment.piece->place == place) {
            addTo(kept, segment);
        }
    }
    return kept;
}

/// Minutes that a part brought along, which count for what the food is after it.
double broughtAlong(const Case& each)
{
    double most = 0;
    for (const HistoryEvent& event : each.history.events) {
        if (const auto* part = std::get_if<MixedIn>(&event)) {
            most = std::max(most, static_cast<double>(part->fridge.count()));
        }
    }
    return most;
}

void judgeKept(Case& each, const KeptAs& kept, double before,
               std::optional<KeepingTime> StorageRow::*where, std::vector<Remedy> remedies)
{
    const StorageRow* row = storageOf(each.judging.book, kept.food);
    const auto limit = row == nullptr ? std::nullopt : row->*where;
    if (!limit) {
        return;
    }
    const double minutes = before + minutesIn(kept.spans);
    const auto least = static_cast<double>(limit->least.count());
    const auto most = static_cast<double>(limit->most.count());
    if (!exceeds(minutes, least)) {
        return;
    }
    const bool isOver = exceeds(minutes, most);
    const bool isOfQuality = where == &StorageRow::freezer;
    if (isOfQuality && !isOver) {
        return;
    }
    each.findings.push_back({"storage/" + row->id,
                             isOver && !isOfQuality ? row->weight : Weight::Caution,
                             Measure::Days,
                             minutes / minutesOfDay,
                             (isOver ? most : least) / minutesOfDay,
                             kept.spans,
                             std::move(remedies),
                             {},
                             {}});
}

void judgeStorage(Case& each)
{
    const std::vector<KeptAs> fridge = keptIn(each, Place::Fridge);
    for (std::size_t i = 0; i < fridge.size(); ++i) {
        const bool isLast = i + 1 == fridge.size();
        const bool isMixture = isLast && !isRawAnimal(fridge[i].food);
        judgeKept(each, fridge[i], isMixture ? broughtAlong(each) : 0, &StorageRow::fridge,
                  {Remedy::DayLater, Remedy::EatSooner, Remedy::Freeze});
    }
    for (const KeptAs& kept : keptIn(each, Place::Freezer)) {
        judgeKept(each, kept, 0, &StorageRow::freezer, {Remedy::EatSooner});
    }
}

/// The day of making is day 1. A day counts if the food is not in the freezer when it ends; the
/// last one counts too.
void judgeDateMark(Case& each, const Rule& rule)
{
    if (each.history.pieces.empty()) {
        return;
    }
    const bool isMade = std::ranges::any_of(each.history.events, [](const HistoryEvent& event) {
        return std::holds_alternative<Made>(event) || std::holds_alternative<Became>(event) ||
               std::holds_alternative<MixedIn>(event);
    });
    const bool isKept = std::ranges::any_of(each.history.pieces, [](const HistoryPiece& piece) {
        return piece.place == Place::Fridge;
    });
    const PlanTime end = each.history.pieces.back().to;
    const FoodClass food = classAt(each.history, end);
    if (!isMade || !isKept || isRawAnimal(food) || !rule.isAbout(food)) {
        return;
    }
    const MixedIn kept = keptSoFar(each.history, end, each.judging.calendar);
    const double day = kept.midnights + 1.0;
    const double limit = *rule.minutes / minutesOfDay;
    if (day > limit) {
        std::vector<MinuteSpan> spans;
        for (const KeptAs& cold : keptIn(each, Place::Fridge)) {
            for (const MinuteSpan& span : cold.spans) {
                append(spans, span);
            }
        }
        each.findings.push_back(findingOf(rule, Measure::Days, day, limit, std::move(spans),
                                          {Remedy::DayLater, Remedy::EatSooner, Remedy::Freeze}));
    }
}

} // namespace

void judgeDays(Case& each)
{
    judgeStorage(each);
    if (const Rule* mark = each.rule(Subject::DateMark, FoodClass::CookedDish)) {
        judgeDateMark(each, *mark);
    }
}

} // namespace suppertide::safety
