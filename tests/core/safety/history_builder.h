// Builds food histories for tests: stays one after the other, with level or straight curves.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/safety/judge_history.h"

namespace suppertide::safety::test {

[[nodiscard]] constexpr double fahrenheit(double degrees)
{
    return celsiusOf(degrees);
}

class HistoryBuilder
{
public:
    explicit HistoryBuilder(FoodClass food, std::vector<RiskFact> facts = {})
    {
        history_.kind = {food, std::move(facts)};
    }
    /// The minute at which the next stay begins.
    HistoryBuilder& at(std::int64_t minute)
    {
        now_ = minute;
        return *this;
    }
    /// Core and surface alike, straight from one temperature to the other, in °C.
    HistoryBuilder& stay(Place place, std::int64_t minutes, double from, double to)
    {
        const auto start = static_cast<double>(now_);
        const auto end = static_cast<double>(now_ + minutes);
        return curve(place, minutes, {{start, from, from}, {end, to, to}});
    }
    HistoryBuilder& stay(Place place, std::int64_t minutes, double level)
    {
        return stay(place, minutes, level, level);
    }
    HistoryBuilder& curve(Place place, std::int64_t minutes, std::vector<TemperatureSample> samples)
    {
        history_.pieces.push_back({planTime(now_), planTime(now_ + minutes), place,
                                   std::move(samples), std::nullopt, false, false});
        now_ += minutes;
        return *this;
    }
    /// A stay that nobody has computed.
    HistoryBuilder& unknown(Place place, std::int64_t minutes) { return curve(place, minutes, {}); }
    HistoryBuilder& in(double surroundings)
    {
        history_.pieces.back().surroundings = surroundings;
        return *this;
    }
    HistoryBuilder& covered()
    {
        history_.pieces.back().isCovered = true;
        return *this;
    }
    HistoryBuilder& fan()
    {
        history_.pieces.back().isFan = true;
        return *this;
    }
    HistoryBuilder& weighing(double kilograms)
    {
        history_.kilograms = kilograms;
        return *this;
    }
    HistoryBuilder& becomes(FoodClass food)
    {
        history_.events.emplace_back(Became{planTime(now_), food});
        return *this;
    }
    HistoryBuilder& made()
    {
        history_.events.emplace_back(Made{planTime(now_)});
        return *this;
    }
    HistoryBuilder& reheated(bool forHotHolding = true)
    {
        history_.events.emplace_back(Reheated{planTime(now_), forHotHolding});
        return *this;
    }
    HistoryBuilder& thawed(ThawBy method)
    {
        history_.events.emplace_back(Thawed{planTime(now_), method});
        return *this;
    }
    HistoryBuilder& mixedIn(MixedIn part)
    {
        part.at = planTime(now_);
        history_.events.emplace_back(part);
        return *this;
    }
    [[nodiscard]] const FoodHistory& history() const { return history_; }
    [[nodiscard]] std::vector<Finding> judged(RuleBook book,
                                              std::vector<RiskGroup> guests = {}) const
    {
        Judging judging;
        judging.book = book;
        judging.guests = std::move(guests);
        return judgeHistory(history_, judging).value();
    }

private:
    FoodHistory history_;
    std::int64_t now_ = 0;
};

[[nodiscard]] inline const Finding* find(const std::vector<Finding>& findings,
                                         std::string_view rule)
{
    const auto found = std::ranges::find(findings, rule, &Finding::rule);
    return found == findings.end() ? nullptr : &*found;
}

[[nodiscard]] inline bool breaks(const std::vector<Finding>& findings, std::string_view rule)
{
    return find(findings, rule) != nullptr;
}

[[nodiscard]] inline std::vector<std::string> rulesOf(const std::vector<Finding>& findings)
{
    std::vector<std::string> rules;
    for (const Finding& finding : findings) {
        rules.push_back(finding.rule);
    }
    return rules;
}

} // namespace suppertide::safety::test
