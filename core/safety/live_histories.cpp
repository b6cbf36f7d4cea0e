#include "core/safety/live_histories.h"

#include <utility>

namespace suppertide::safety {

void LiveHistories::update(std::vector<Food> foods)
{
    judgedLast_ = 0;
    std::map<std::string, Judged, std::less<>> next;
    for (Food& food : foods) {
        std::string key = food.key;
        const auto known = judged_.find(key);
        const bool isSame = known != judged_.end() && known->second.food.history == food.history &&
                            known->second.food.judging == food.judging;
        bool isNew = false;
        if (isSame) {
            isNew = next.emplace(std::move(key), std::move(known->second)).second;
        } else {
            ++judgedLast_;
            auto findings = judgeHistory(food.history, food.judging);
            isNew =
                next.emplace(std::move(key), Judged{std::move(food), std::move(findings)}).second;
        }
        expects(isNew, "no food stands twice");
    }
    judged_ = std::move(next);
}

const Result<std::vector<Finding>>* LiveHistories::findingsOf(std::string_view key) const
{
    const auto found = judged_.find(key);
    return found == judged_.end() ? nullptr : &found->second.findings;
}

} // namespace suppertide::safety
