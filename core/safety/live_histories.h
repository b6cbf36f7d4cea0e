// LiveHistories: judge_history kept up to date while a plan is edited: a food is judged anew only
// if its history, or by whom it is judged, has changed. Fit for every move of the mouse.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/safety/judge_history.h"

namespace suppertide::safety {

class LiveHistories
{
public:
    /// A food of the plan under a key of the caller's, the same at each update.
    struct Food
    {
        std::string key;
        FoodHistory history;
        Judging judging;
    };

    /// All foods of the plan; those no longer there are forgotten. A food's findings, or the
    /// failure to judge it, stand until its next change. Linear in samples; no food twice.
    void update(std::vector<Food> foods);

    /// Null if there is no such food.
    [[nodiscard]] const Result<std::vector<Finding>>* findingsOf(std::string_view key) const;
    /// How many foods the last update judged.
    [[nodiscard]] std::size_t judgedLast() const { return judgedLast_; }
    [[nodiscard]] std::size_t size() const { return judged_.size(); }

private:
    struct Judged
    {
        Food food;
        Result<std::vector<Finding>> findings;
    };
    std::map<std::string, Judged, std::less<>> judged_;
    std::size_t judgedLast_ = 0;
};

} // namespace suppertide::safety
