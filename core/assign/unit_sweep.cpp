#include "core/assign/unit_sweep.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <optional>
#include <tuple>
#include <unordered_map>

#include "core/base/contracts.h"

namespace suppertide {

namespace {

constexpr std::size_t mostStates = 2048;
constexpr std::int64_t isFree = std::numeric_limits<std::int64_t>::min();

struct State
{
    std::vector<std::int64_t> busyUntil; // of each unit
    std::vector<std::int64_t> canonical; // the same, sorted within units that are alike
    std::int64_t broken = 0;
    std::int64_t trouble = 0; // minutes in which what is broken is broken
    std::int64_t waste = 0;   // of size
    std::size_t from = 0;
    std::size_t unit = 0;

    [[nodiscard]] bool isBetterThan(const State& other) const
    {
        return std::tie(broken, trouble, waste) <
               std::tie(other.broken, other.trouble, other.waste);
    }
};

std::uint64_t hashOf(const std::vector<std::int64_t>& values)
{
    std::uint64_t hash = 14695981039346656037U; // FNV-1a, over words
    for (const std::int64_t value : values) {
        hash = (hash ^ static_cast<std::uint64_t>(value)) * 1099511628211U;
    }
    return hash;
}

class Sweep
{
public:
    /// `strict`: without a broken demand, or not at all.
    Sweep(const std::vector<UnitWork>& work, const std::vector<std::int64_t>& size, bool strict)
        : work_(work), size_(size), strict_(strict)
    {
        bySize_.resize(size.size());
        std::iota(bySize_.begin(), bySize_.end(), std::size_t{0});
        std::stable_sort(bySize_.begin(), bySize_.end(),
                         [&](std::size_t a, std::size_t b) { return size_[a] < size_[b]; });
        findAlike();
    }

    std::optional<UnitSweepResult> run();

private:
    void findAlike();
    [[nodiscard]] bool areAlike(std::size_t a, std::size_t b) const;
    void extend(const State& state, std::size_t from, std::size_t item);
    void give(const State& state, std::size_t from, std::size_t item, std::size_t unit);
    void canonicalise(State& state) const;
    void add(State state);

    const std::vector<UnitWork>& work_;
    const std::vector<std::int64_t>& size_;
    bool strict_;
    std::vector<std::size_t> bySize_;
    std::vector<std::vector<std::size_t>> alike_; // classes of units
    std::vector<State> states_;
    std::vector<State> next_;
    std::unordered_map<std::uint64_t, std::size_t> positions_; // first of each hash in next_
};

bool Sweep::areAlike(std::size_t a, std::size_t b) const
{
    return size_[a] == size_[b] && std::all_of(work_.begin(), work_.end(), [&](const auto& work) {
               const auto pinnedTo = [&](std::size_t unit) {
                   return !work.pinned.empty() && work.pinned.front() == unit;
               };
               return work.allowed[a] == work.allowed[b] && !pinnedTo(a) && !pinnedTo(b);
           });
}

void Sweep::findAlike()
{
    for (const std::size_t unit : bySize_) {
        const auto found = std::find_if(alike_.begin(), alike_.end(), [&](const auto& others) {
            return areAlike(others.front(), unit);
        });
        if (found == alike_.end()) {
            alike_.push_back({unit});
        } else {
            found->push_back(unit);
        }
    }
}

void Sweep::canonicalise(State& state) const
{
    state.canonical.clear();
    for (const auto& units : alike_) {
        const auto first = static_cast<std::ptrdiff_t>(state.canonical.size());
        for (const std::size_t unit : units) {
            state.canonical.push_back(state.busyUntil[unit]);
        }
        std::sort(state.canonical.begin() + first, state.canonical.end());
    }
}

void Sweep::add(State state)
{
    const auto [known, isNew] = positions_.try_emplace(hashOf(state.canonical), next_.size());
    if (isNew) {
        next_.push_back(std::move(state));
        return;
    }
    for (std::size_t at = known->second; at < next_.size(); ++at) {
        if (next_[at].canonical == state.canonical) {
            if (state.isBetterThan(next_[at])) {
                next_[at] = std::move(state);
            }
            return;
        }
    }
    next_.push_back(std::move(state));
}

void Sweep::give(const State& state, std::size_t from, std::size_t item, std::size_t unit)
{
    const UnitWork& work = work_[item];
    const bool busy = state.busyUntil[unit] > minuteOf(work.during.start);
    if (strict_ && (busy || !work.allowed[unit])) {
        return;
    }
    State next = state;
    next.broken += (busy ? 1 : 0) + (work.allowed[unit] ? 0 : 1);
    const std::int64_t end = minuteOf(work.during.end);
    const std::int64_t start = minuteOf(work.during.start);
    next.trouble += busy ? std::min(end, state.busyUntil[unit]) - start : 0;
    next.trouble += work.allowed[unit] ? 0 : end - start;
    next.waste += size_[unit];
    next.busyUntil[unit] = std::max(next.busyUntil[unit], minuteOf(work.during.end));
    next.from = from;
    next.unit = unit;
    canonicalise(next);
    add(std::move(next));
}

void Sweep::extend(const State& state, std::size_t from, std::size_t item)
{
    const UnitWork& work = work_[item];
    if (!work.pinned.empty()) {
        give(state, from, item, work.pinned.front());
        return;
    }
    for (const auto& units : alike_) {
        std::vector<std::int64_t> tried;
        for (const std::size_t unit : units) {
            const std::int64_t until = state.busyUntil[unit];
            if (std::find(tried.begin(), tried.end(), until) == tried.end()) {
                tried.push_back(until);
                give(state, from, item, unit);
            }
        }
    }
}

std::optional<UnitSweepResult> Sweep::run()
{
    std::vector<std::size_t> order(work_.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return work_[a].during.start < work_[b].during.start;
    });
    struct Step
    {
        std::size_t from;
        std::size_t unit;
    };
    std::vector<std::vector<Step>> history;
    State start;
    start.busyUntil.assign(size_.size(), isFree);
    states_ = {start};
    const auto better = [](const State& a, const State& b) { return a.isBetterThan(b); };
    for (const std::size_t item : order) {
        next_.clear();
        positions_.clear();
        for (std::size_t from = 0; from < states_.size(); ++from) {
            for (std::int64_t& until : states_[from].busyUntil) {
                until = until <= minuteOf(work_[item].during.start) ? isFree : until;
            }
            extend(states_[from], from, item);
        }
        states_.swap(next_);
        if (states_.empty()) {
            return std::nullopt;
        }
        if (states_.size() > mostStates) {
            std::stable_sort(states_.begin(), states_.end(), better);
            states_.resize(mostStates);
        }
        std::vector<Step>& steps = history.emplace_back();
        for (const State& state : states_) {
            steps.push_back({state.from, state.unit});
        }
    }
    const auto best = std::min_element(states_.begin(), states_.end(), better);
    UnitSweepResult result;
    result.broken = best->broken;
    result.units.resize(work_.size());
    auto at = static_cast<std::size_t>(best - states_.begin());
    for (std::size_t i = order.size(); i-- > 0;) {
        result.units[order[i]] = history[i][at].unit;
        at = history[i][at].from;
    }
    return result;
}

} // namespace

UnitSweepResult sweepUnits(const std::vector<UnitWork>& work, const std::vector<std::int64_t>& size)
{
    expects(!size.empty(), "a pool with units");
    if (auto clean = Sweep(work, size, true).run()) {
        return *std::move(clean);
    }
    const auto broken = Sweep(work, size, false).run();
    ensures(broken.has_value(), "broken assignments always exist");
    return *broken;
}

} // namespace suppertide
