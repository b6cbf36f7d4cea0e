// Compare: every menu of an occasion looked at, each planned as if it were the one to be cooked,
// with the same planner and judged by the same checker as Make plan. Runs on threads of its own
// and tells results as they come: first what needs no plan, then a first plan of each menu or the
// proof that there is none, then better plans as long as there is time.
#pragma once

#include <chrono>
#include <functional>
#include <stop_token>
#include <vector>

#include "core/menus/menu_table.h"
#include "core/planner/planner.h"

namespace suppertide::menus {

struct CompareLimits
{
    std::chrono::milliseconds wallClock{60'000};
    /// The planner's steps for a menu, look by look; each menu is looked at once before any is
    /// again. First looks at those that are not settled, to find any plan or that there is none …
    std::vector<std::int64_t> settling{10'000, 40'000, 200'000};
    /// … then at those that can be cooked, for better plans. As long as the wall clock does not end
    /// it first, the result is the same however many threads there are.
    std::vector<std::int64_t> improving{40'000};
    int threads = 2;
};

/// What is to be paid for what an evening needs, in hundredths of the user's currency; absent if
/// it is not known. Called from several threads at once.
using PriceOf = std::function<std::optional<std::int64_t>(const PlanInput&)>;

struct CompareRequest
{
    PlanInput input;
    CompareLimits limits;
    PriceOf price; // may be empty
    std::uint64_t revision = 0;
};

struct CompareProgress
{
    const std::vector<ComparedMenu>* begun = nullptr; // all, before any is planned; once, with
    const MenuTable* table = nullptr;                 // what they are made of
    const ComparedMenu* looked = nullptr;             // as it stands after one more look
    std::size_t done = 0;                             // looks
    std::size_t toDo = 0;                             // at most
};

/// Called by one thread at a time.
using CompareSink = std::function<void(const CompareProgress&)>;

struct Comparison
{
    MenuTable table;
    std::vector<ComparedMenu> menus; // by number
    bool isStopped = false;          // by the token or the clock, before all looks were done
};

/// Failure only for faulty input or too many menus. Stopped early, it returns what is known.
[[nodiscard]] Result<Comparison> compareMenus(const CompareRequest& request,
                                              const std::stop_token& stop = {},
                                              const CompareSink& sink = {});

/// The evening with a menu: nothing of the layout is kept but what is pinned.
[[nodiscard]] PlanInput inputFor(const PlanInput& input, const MenuTable& table,
                                 std::size_t number);

} // namespace suppertide::menus
