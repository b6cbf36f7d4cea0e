// SharedClauses: what one search has found about ovens holds for every search of the same problem,
// as all give their variables the same numbers. Safe to use from several threads.
#pragma once

#include <cstddef>
#include <mutex>
#include <utility>
#include <vector>

#include "core/planner/engine/literal.h"

namespace suppertide::exact {

class SharedClauses
{
public:
    void tell(std::size_t who, const engine::Literals& clause)
    {
        const std::lock_guard lock(mutex_);
        told_.emplace_back(who, clause);
    }
    /// What others have told from position `from` on, which is moved to the end.
    [[nodiscard]] std::vector<engine::Literals> hear(std::size_t who, std::size_t& from)
    {
        const std::lock_guard lock(mutex_);
        std::vector<engine::Literals> result;
        for (; from < told_.size(); ++from) {
            if (told_[from].first != who) {
                result.push_back(told_[from].second);
            }
        }
        return result;
    }

private:
    std::mutex mutex_;
    std::vector<std::pair<std::size_t, engine::Literals>> told_;
};

} // namespace suppertide::exact
