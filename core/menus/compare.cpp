#include "core/menus/compare.h"

#include <algorithm>
#include <atomic>
#include <mutex>
#include <thread>
#include <utility>

#include "core/menus/menu_figures.h"
#include "core/propose/make_plan.h"

namespace suppertide::menus {

namespace {

using Clock = std::chrono::steady_clock;

/// What the user holds on to; the rest of a layout is of the menu it was made for.
Layout pinsOf(const Layout& layout)
{
    Layout pins;
    pins.pinned = layout.pinned;
    for (const std::string& id : layout.pinned) {
        if (const auto start = layout.starts.find(id); start != layout.starts.end()) {
            pins.starts.insert(*start);
        }
        if (const auto option = layout.options.find(id); option != layout.options.end()) {
            pins.options.insert(*option);
        }
    }
    pins.cooks = layout.cooks;
    pins.units = layout.units;
    pins.ovens = layout.ovens;
    pins.ovenSettings = layout.ovenSettings;
    pins.washed = layout.washed;
    return pins;
}

PlanPtr planIn(const PlanOutcome& outcome)
{
    if (const auto* found = std::get_if<PlanFound>(&outcome)) {
        return found->plan;
    }
    const auto* stopped = std::get_if<Stopped>(&outcome);
    return stopped != nullptr ? stopped->best : nullptr;
}

class Comparing
{
public:
    Comparing(const CompareRequest& request, const MenuTable& table, const std::stop_token& stop,
              const CompareSink& sink)
        : request_(request), table_(table), stop_(stop), sink_(sink),
          until_(Clock::now() + request.limits.wallClock)
    {}

    std::vector<ComparedMenu> run(bool& isStopped)
    {
        begin();
        for (const std::int64_t steps : request_.limits.settling) {
            lookAtAll(Cookable::NotSettled, steps);
        }
        for (const std::int64_t steps : request_.limits.improving) {
            lookAtAll(Cookable::Yes, steps);
        }
        isStopped = isCut_ || stop_.stop_requested();
        return std::move(menus_);
    }

private:
    [[nodiscard]] bool isOver() const { return stop_.stop_requested() || Clock::now() >= until_; }

    void begin()
    {
        menus_.reserve(table_.size());
        for (std::size_t i = 0; i < table_.size(); ++i) {
            menus_.push_back(table_.unplanned(i));
            int steps = 0;
            for (const CourseMix* mix : table_.menu(i)) {
                steps += mix->steps;
            }
            steps_.push_back(steps);
        }
        toDo_ =
            menus_.size() * (request_.limits.settling.size() + request_.limits.improving.size());
        if (sink_) {
            sink_({&menus_, &table_, nullptr, 0, toDo_});
        }
    }

    [[nodiscard]] static bool isOpen(const ComparedMenu& menu, Cookable which)
    {
        return menu.cookable == which && !menu.isBestPlan;
    }

    /// Those that are less work first: they are settled soonest.
    [[nodiscard]] std::vector<std::size_t> order(Cookable which) const
    {
        std::vector<std::size_t> open;
        for (std::size_t i = 0; i < menus_.size(); ++i) {
            if (isOpen(menus_[i], which)) {
                open.push_back(i);
            }
        }
        std::ranges::stable_sort(open, {}, [this](std::size_t i) { return steps_[i]; });
        return open;
    }

    void lookAtAll(Cookable which, std::int64_t steps)
    {
        if (isOver()) {
            isCut_ = isCut_ || std::ranges::any_of(menus_, [which](const ComparedMenu& menu) {
                         return isOpen(menu, which);
                     });
            return;
        }
        const std::vector<std::size_t> open = order(which);
        done_ += menus_.size() - open.size();
        std::atomic<std::size_t> next{0};
        const auto work = [&] {
            for (std::size_t i = next++; i < open.size(); i = next++) {
                if (isOver()) {
                    isCut_ = true;
                    return;
                }
                tell(lookAt(menus_[open[i]], steps));
                isCut_ = isCut_ || isOver(); // this look too may have ended early
            }
        };
        std::vector<std::jthread> others;
        for (int i = 1; i < request_.limits.threads; ++i) {
            others.emplace_back(work);
        }
        work();
    }

    [[nodiscard]] ComparedMenu lookAt(ComparedMenu menu, std::int64_t steps) const
    {
        PlanRequest plan{inputFor(request_.input, table_, menu.number), {}, request_.revision};
        plan.limits.steps = steps;
        plan.limits.wallClock =
            std::max(std::chrono::milliseconds{1},
                     std::chrono::duration_cast<std::chrono::milliseconds>(until_ - Clock::now()));
        const auto outcome = makePlanFor(plan, menu.cookable);
        if (!outcome) {
            return menu; // faults were told of before; what is left cannot be planned
        }
        if (const PlanPtr found = planIn(*outcome)) {
            take(menu, *found, plan.input);
        } else if (const auto* none = std::get_if<NoPlan>(&*outcome); none && none->isProven) {
            menu.cookable = Cookable::No;
            menu.conflict = none->conflict;
        }
        if (request_.price && !menu.price && !stop_.stop_requested()) {
            menu.price = request_.price(plan.input);
        }
        return menu;
    }

    /// For a menu that is not settled any plan will do: the search ends with the first.
    [[nodiscard]] Result<PlanOutcome> makePlanFor(const PlanRequest& request, Cookable known) const
    {
        if (known != Cookable::NotSettled) {
            return makePlan(request, stop_);
        }
        std::stop_source enough;
        const std::stop_callback passedOn(stop_, [&enough] { enough.request_stop(); });
        return makePlan(request, enough.get_token(), [&enough](const PlanProgress& progress) {
            if (progress.better) {
                enough.request_stop();
            }
        });
    }

    void take(ComparedMenu& menu, const Plan& plan, PlanInput& input) const
    {
        const EveningFigures figures = eveningOf(plan, *request_.input.kitchen);
        menu.cookable = Cookable::Yes;
        menu.isBestPlan = plan.schedule.status == ScheduleStatus::Optimal;
        if (!menu.evening || figures.cost < menu.evening->cost) {
            menu.evening = figures;
            menu.leftUsed = leftUsedBy(plan);
            menu.layout = std::make_shared<const Layout>(
                layoutOf(*plan.formulation, plan.schedule, pinsOf(*request_.input.layout)));
            if (request_.price) { // what the plan takes of what is left is not bought
                input.layout = menu.layout;
                menu.price = request_.price(input);
            }
        }
    }

    void tell(ComparedMenu looked)
    {
        const std::lock_guard lock(mutex_);
        ++done_;
        ComparedMenu& menu = menus_[looked.number];
        menu = std::move(looked);
        if (sink_) {
            sink_({nullptr, nullptr, &menu, done_, toDo_});
        }
    }

    const CompareRequest& request_;
    const MenuTable& table_;
    const std::stop_token& stop_;
    const CompareSink& sink_;
    Clock::time_point until_;
    std::atomic<bool> isCut_ = false; // menus were left for want of time
    std::mutex
        mutex_; // of all below; a menu is read and written by the one thread that looks at it
    std::vector<ComparedMenu> menus_;
    std::vector<int> steps_; // that each takes
    std::size_t done_ = 0;
    std::size_t toDo_ = 0;
};

} // namespace

Result<Comparison> compareMenus(const CompareRequest& request, const std::stop_token& stop,
                                const CompareSink& sink)
{
    auto table = MenuTable::make(request.input);
    if (!table) {
        return table.error();
    }
    Comparison result{*std::move(table), {}, false};
    result.menus = Comparing(request, result.table, stop, sink).run(result.isStopped);
    return result;
}

PlanInput inputFor(const PlanInput& input, const MenuTable& table, std::size_t number)
{
    PlanInput result = input;
    result.occasion = std::make_shared<const Occasion>(table.occasion(*input.occasion, number));
    result.layout = std::make_shared<const Layout>(pinsOf(*input.layout));
    result.closeness = Closeness::AsPreferred;
    result.held.clear();
    return result;
}

} // namespace suppertide::menus
