// Holding hot, holding cold, and the freezer.
#include <algorithm>

#include "core/safety/judges.h"

namespace suppertide::safety {

namespace {

/// A roast that was cooked by the chart may be kept at the chart's lowest temperature.
const Rule* hotRule(const Case& each, FoodClass food)
{
    const Rule* roast = each.rule(Subject::HotHoldingRoast, food);
    const bool isRoast = each.history.kind.food == FoodClass::RawMeat && roast != nullptr;
    return isRoast ? roast : each.rule(Subject::HotHolding, food);
}

void judgeHot(Case& each)
{
    // Where a book grants a period below, judgeDangerZone has counted it.
    if (each.rule(Subject::HotPeriod, FoodClass::CookedDish) != nullptr) {
        return;
    }
    const Rule* broken = nullptr;
    std::vector<MinuteSpan> spans;
    double lowest = 0;
    for (const TraceSegment& segment : each.trace) {
        if (segment.piece->place != Place::WarmHold || !segment.hasTemperature()) {
            continue;
        }
        const Rule* rule = hotRule(each, segment.food);
        if (rule == nullptr) {
            continue;
        }
        const LinearRun coldest = segment.coldest();
        if (const auto under = below(segment, coldest, *rule->temperature)) {
            const double lower = rule->temperature->reading(std::min(coldest.first, coldest.last));
            lowest = broken == nullptr ? lower : std::min(lowest, lower);
            broken = rule;
            append(spans, *under);
        }
    }
    if (broken != nullptr) {
        each.findings.push_back(findingOf(*broken, measureOf(*broken->temperature), lowest,
                                          broken->temperature->value, std::move(spans),
                                          {Remedy::KeepHotter, Remedy::EatSooner}));
    }
}

/// °C. A food comes ever nearer to the temperature of a place that is as cold as the limit asks,
/// and never quite there. What has not been cold yet counts as cold from so little above the limit:
/// half of what a food thermometer may be out by, ±1 °C (FDA Food Code 2022, 4-203.11(B); read in
/// California Health and Safety Code § 114159(c), which repeats it). What has been cold once has no
/// such grace: its limit is the printed one.
constexpr double almost = 0.5;

/// A stay in a cold place: what is warm goes down first (judgeCooling), and from then on stays
/// down.
class ColdStay
{
public:
    ColdStay(const Rule& rule, double grace) : rule_(&rule), grace_(grace) {}

    void see(const TraceSegment& segment)
    {
        if (!until_ || segment.from > *until_ + onTheLimit) { // has been elsewhere
            wasCold_ = false;
            enteredAt_ = segment.from;
        }
        until_ = segment.to;
        const LinearRun warmest = segment.warmest();
        wasCold_ = wasCold_ || rule_->temperature->isKeptUnderBy(warmest.first);
        if (const auto over = above(segment, warmest, *rule_->temperature)) {
            note(*over, segment, warmest);
        }
        wasCold_ = wasCold_ || rule_->temperature->isKeptUnderBy(warmest.last);
    }
    [[nodiscard]] bool isBroken() const { return !spans_.empty(); }
    [[nodiscard]] Finding finding(std::vector<Remedy> remedies) const
    {
        return findingOf(*rule_, measureOf(*rule_->temperature),
                         rule_->temperature->reading(warmest_), rule_->temperature->value, spans_,
                         std::move(remedies));
    }

private:
    /// How warm it is in the minutes that count: before them it may be warmer.
    void note(const MinuteSpan& over, const TraceSegment& segment, const LinearRun& run)
    {
        const double from = wasCold_ ? over.from : std::max(over.from, enteredAt_ + grace_);
        if (from < over.to) {
            const auto at = [&](double minute) {
                return run.at((minute - segment.from) / segment.length());
            };
            const double warmest = std::max(at(from), at(over.to));
            if (!wasCold_ && warmest <= rule_->temperature->celsius() + almost) {
                return;
            }
            warmest_ = spans_.empty() ? warmest : std::max(warmest_, warmest);
            append(spans_, {from, over.to});
        }
    }

    const Rule* rule_;
    double grace_; // minutes in which a warm food may go down
    std::optional<double> until_;
    bool wasCold_ = false;
    double enteredAt_ = 0;
    double warmest_ = 0;
    std::vector<MinuteSpan> spans_;
};

/// The rules for a food in a cold place. A row for this very food that allows more (eggs in the
/// shell) stands in for the row for all; one that asks for more (mince) stands beside it.
std::vector<const Rule*> coldRules(RuleBook book, Subject subject, FoodClass food)
{
    std::vector<const Rule*> rules = rulesAbout(book, subject, food);
    const Rule* own = !rules.empty() && !rules.front()->foods.empty() ? rules.front() : nullptr;
    std::erase_if(rules, [own](const Rule* rule) {
        return own != nullptr && rule->foods.empty() &&
               own->temperature->celsius() > rule->temperature->celsius();
    });
    return rules;
}

void judgeCold(Case& each, Subject subject, Place place, const std::vector<Remedy>& remedies)
{
    // A warm food may take as long as both stages of cooling; a freezer takes a day (common
    // practice).
    const double grace =
        place == Place::Fridge ? findRule("us_cooling_total")->minutes.value_or(0) : 24 * 60.0;
    std::vector<std::pair<const Rule*, ColdStay>> stays;
    for (const TraceSegment& segment : each.trace) {
        if (segment.piece->place != place || !segment.hasTemperature()) {
            continue;
        }
        for (const Rule* rule : coldRules(each.judging.book, subject, segment.food)) {
            auto stay = std::ranges::find(stays, rule, &std::pair<const Rule*, ColdStay>::first);
            if (stay == stays.end()) {
                stays.emplace_back(rule, ColdStay{*rule, grace});
                stay = std::prev(stays.end());
            }
            stay->second.see(segment);
        }
    }
    for (const auto& [rule, stay] : stays) {
        if (stay.isBroken()) {
            each.findings.push_back(stay.finding(remedies));
        }
    }
}

} // namespace

void judgeHolding(Case& each)
{
    judgeHot(each);
    judgeCold(each, Subject::ColdHolding, Place::Fridge, {Remedy::ColderFridge, Remedy::IceBath});
    judgeCold(each, Subject::Freezing, Place::Freezer, {Remedy::ColderFridge});
}

} // namespace suppertide::safety
