// Both stages of cooling. The clock starts when the warmest part of the food passes below the upper
// limit, not when the hob goes off, and runs for what is put into the cold before it is hot again;
// what is eaten before that is judged by the minutes for which it stands.
#include <algorithm>

#include "core/safety/judges.h"

namespace suppertide::safety {

namespace {

/// From passing below the upper limit to being hot again, or the end.
struct Cooling
{
    double start = 0;
    double end = 0;
    bool goesIntoTheCold = false;
    bool isCold = false;    // has been computed down to the last limit
    bool isGuessed = false; // a stay before that which nobody has computed
    FoodClass food = FoodClass::CookedDish;
    std::vector<const TraceSegment*> segments;
};

std::vector<Cooling> coolingsOf(const Case& each, const PublishedTemperature& hot,
                                const PublishedTemperature& cold)
{
    std::vector<Cooling> coolings;
    bool isHot = false;
    bool isCooling = false;
    for (const TraceSegment& segment : each.trace) {
        if (!segment.hasTemperature()) {
            isCooling = false; // on some heat whose temperature nobody knows
            isHot = false;
            continue;
        }
        const LinearRun warmest = segment.warmest();
        const auto under = below(segment, warmest, hot);
        if (hot.isReachedBy(warmest.first)) { // made hot between two stays
            isCooling = false;
            isHot = true;
        }
        if (!isCooling && isHot && under) {
            coolings.push_back({under->from, segment.to, false, false, false, segment.food, {}});
            isCooling = true;
            isHot = false;
        }
        if (isCooling && under) {
            Cooling& cooling = coolings.back();
            cooling.end = under->to;
            cooling.goesIntoTheCold = cooling.goesIntoTheCold || isCold(segment.piece->place);
            cooling.isGuessed =
                cooling.isGuessed || (segment.known == Known::Assumed && !cooling.isCold);
            cooling.isCold = cooling.isCold || cold.isKeptUnderBy(warmest.last);
            cooling.segments.push_back(&segment);
        }
        if (hot.isReachedBy(warmest.last)) {
            isHot = true;
            isCooling = false;
        }
    }
    return coolings;
}

/// When all of it is first at or below a limit; nothing if it never is.
std::optional<double> reached(const Cooling& cooling, const PublishedTemperature& limit)
{
    for (const TraceSegment* segment : cooling.segments) {
        const LinearRun warmest = segment->warmest();
        const auto over = above(*segment, warmest, limit);
        if (!over || limit.isKeptUnderBy(warmest.first)) {
            return std::max(segment->from, cooling.start);
        }
        if (limit.isKeptUnderBy(warmest.last)) {
            return over->to;
        }
    }
    return std::nullopt;
}

void judgeStage(Case& each, const Rule& rule, const Cooling& cooling)
{
    const double end = reached(cooling, *rule.temperature).value_or(cooling.end);
    const double minutes = end - cooling.start;
    if (exceeds(minutes, *rule.minutes)) {
        each.findings.push_back(findingOf(
            rule, Measure::Minutes, minutes, *rule.minutes, {{cooling.start, end}},
            {Remedy::IceBath, Remedy::SplitShallow, Remedy::DayLater, Remedy::EatSooner}));
    }
}

/// A curve that ends warm and goes on as “in the fridge” says nothing of how it cools.
void reportGuess(Case& each, const Cooling& cooling)
{
    const Rule* unknown = each.rule(Subject::NotKnown, cooling.food);
    if (cooling.isGuessed && unknown != nullptr) {
        each.findings.push_back(findingOf(*unknown, Measure::None, 0, 0,
                                          {{cooling.start, cooling.end}}, {Remedy::Measure}));
    }
}

/// From being made to being cold, for food that has never been hot but goes into the cold warm.
class FromRoom
{
public:
    explicit FromRoom(const Rule& rule) : rule_(&rule) {}

    void see(Case& each, const TraceSegment& segment)
    {
        const auto over = above(segment, segment.warmest(), *rule_->temperature);
        if (over && !isWarm_ && watches(each.judging.book, segment.food)) {
            start_ = over->from;
            isWarm_ = true;
        }
        isInTheCold_ = isWarm_ && (isInTheCold_ || isCold(segment.piece->place));
        end_ = over ? over->to : segment.from;
        if (!over || over->to < segment.to) {
            close(each);
        }
    }
    /// It is cold now, or the history ends, or goes on with heat.
    void close(Case& each)
    {
        if (isInTheCold_ && exceeds(end_ - start_, *rule_->minutes)) {
            each.findings.push_back(findingOf(*rule_, Measure::Minutes, end_ - start_,
                                              *rule_->minutes, {{start_, end_}},
                                              {Remedy::SplitShallow, Remedy::IceBath}));
        }
        isWarm_ = false;
        isInTheCold_ = false;
    }

private:
    const Rule* rule_;
    double start_ = 0; // of what is warm now
    double end_ = 0;
    bool isWarm_ = false;
    bool isInTheCold_ = false;
};

void judgeFromRoom(Case& each, const Rule& rule)
{
    FromRoom cooling(rule);
    for (const TraceSegment& segment : each.trace) {
        if (isHeating(segment.piece->place) || !segment.hasTemperature()) {
            break;
        }
        cooling.see(each, segment);
    }
    cooling.close(each);
}

} // namespace

void judgeCooling(Case& each)
{
    constexpr FoodClass any = FoodClass::CookedDish;
    const Rule* first = each.rule(Subject::CoolingFirst, any);
    const Rule* total = each.rule(Subject::CoolingTotal, any);
    if (first != nullptr && total != nullptr) {
        for (const Cooling& cooling : coolingsOf(each, *first->upper, *total->temperature)) {
            if (cooling.goesIntoTheCold && watches(each.judging.book, cooling.food)) {
                judgeStage(each, *first, cooling);
                judgeStage(each, *total, cooling);
                reportGuess(each, cooling);
            }
        }
    }
    if (const Rule* room = each.rule(Subject::CoolingFromRoom, any)) {
        judgeFromRoom(each, *room);
    }
}

} // namespace suppertide::safety
