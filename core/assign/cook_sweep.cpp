#include "core/assign/cook_sweep.h"

#include <algorithm>
#include <compare>
#include <limits>
#include <numeric>
#include <optional>
#include <unordered_map>

#include "core/base/contracts.h"

namespace suppertide {

namespace {

using CookMask = std::uint64_t;

constexpr std::size_t mostStates = 256;
constexpr std::size_t mostStatesExact = 4096;
constexpr std::int64_t noSession = std::numeric_limits<std::int64_t>::min();

struct Cost
{
    std::int64_t broken = 0;
    std::int64_t unable = 0;
    std::int64_t sessions = 0;
    std::int64_t strain = 0; // percent × minutes that overlap where a cook has too much to do

    friend auto operator<=>(const Cost&, const Cost&) = default;
    friend Cost operator+(const Cost& a, const Cost& b)
    {
        return {a.broken + b.broken, a.unable + b.unable, a.sessions + b.sessions,
                a.strain + b.strain};
    }
};

/// After one piece of work: who does what is still under way (in the order of the layer), when each
/// cook's session so far ends, and whence this came.
struct State
{
    std::vector<CookMask> active;
    std::vector<std::int64_t> latest;
    Cost cost;
    std::size_t from = 0;
    CookMask chosen = 0;

    [[nodiscard]] bool sameAs(const State& other) const
    {
        return active == other.active && latest == other.latest;
    }
};

struct SweepRules
{
    std::optional<Minutes> sessionGap;   // absent: sessions do not count
    std::optional<std::int64_t> below{}; // less broken than this, or not at all
    std::size_t limit = mostStates;
};

std::uint64_t hashOf(const State& state)
{
    std::uint64_t hash = 14695981039346656037U; // FNV-1a, over words
    for (const CookMask mask : state.active) {
        hash = (hash ^ mask) * 1099511628211U;
    }
    for (const std::int64_t latest : state.latest) {
        hash = (hash ^ static_cast<std::uint64_t>(latest)) * 1099511628211U;
    }
    return hash;
}

/// Of those who are chosen best for it.
std::int64_t leastFaults(const CookWork& work, std::size_t cooks)
{
    std::vector<int> faults = work.faults;
    if (!work.pinned.empty()) {
        std::int64_t sum = 0;
        for (const std::size_t cook : work.pinned) {
            sum += faults[cook];
        }
        return sum;
    }
    std::ranges::sort(faults);
    const auto there = std::min({cooks, faults.size(), static_cast<std::size_t>(work.cooks)});
    return std::accumulate(faults.begin(), faults.begin() + static_cast<std::ptrdiff_t>(there),
                           std::int64_t{0});
}

class Sweep
{
public:
    Sweep(const std::vector<CookWork>& work, std::size_t cooks, const SweepRules& rules)
        : work_(work), cooks_(cooks), sessionGap_(rules.sessionGap), below_(rules.below),
          limit_(rules.limit)
    {}

    std::optional<CookSweepResult> run();
    [[nodiscard]] bool wasCut() const { return wasCut_; }

private:
    void enter(std::size_t item);
    void extend(State state, std::size_t item);
    void choose(const State& base, std::size_t item, std::size_t nextCook, std::size_t left,
                CookMask chosen, const Cost& cost);
    void add(State state);
    void shorten();
    [[nodiscard]] Cost costOf(const State& base, std::size_t item, std::size_t cook) const;
    [[nodiscard]] std::int64_t strainOf(const State& base, std::size_t item,
                                        std::size_t cook) const;
    [[nodiscard]] CookSweepResult traced(const std::vector<std::size_t>& order) const;

    const std::vector<CookWork>& work_;
    std::size_t cooks_;
    std::optional<Minutes> sessionGap_; // absent: sessions do not count
    std::optional<std::int64_t> below_;
    std::int64_t unavoidable_ = 0; // faults of the work that is still to come, whoever does it
    std::size_t limit_;
    bool wasCut_ = false;
    std::vector<std::size_t> active_; // work under way, in the order of the states' masks
    std::vector<State> states_;
    std::vector<State> next_;
    std::unordered_map<std::uint64_t, std::size_t> positions_; // first of each hash in next_
    struct Step
    {
        std::size_t from;
        CookMask chosen;
    };
    std::vector<std::vector<Step>> history_;
    std::vector<int> load_;
};

/// Forgets what has ended when `item` begins.
void Sweep::enter(std::size_t item)
{
    const PlanTime now = work_[item].during.start;
    std::vector<std::size_t> stays;
    for (std::size_t i = 0; i < active_.size(); ++i) {
        if (work_[active_[i]].during.end > now) {
            stays.push_back(i);
        }
    }
    if (stays.size() != active_.size()) {
        for (State& state : states_) {
            for (std::size_t i = 0; i < stays.size(); ++i) {
                state.active[i] = state.active[stays[i]];
            }
            state.active.resize(stays.size());
        }
        for (std::size_t i = 0; i < stays.size(); ++i) {
            active_[i] = active_[stays[i]];
        }
        active_.resize(stays.size());
    }
    if (sessionGap_) {
        const std::int64_t oldest = minuteOf(now - *sessionGap_);
        for (State& state : states_) {
            for (std::int64_t& latest : state.latest) {
                latest = latest < oldest ? noSession : latest;
            }
        }
    }
}

Cost Sweep::costOf(const State& base, std::size_t item, std::size_t cook) const
{
    const CookWork& work = work_[item];
    Cost cost;
    const bool isTooMuch = load_[cook] + work.attention > 100;
    cost.broken = work.faults[cook] + (isTooMuch ? 1 : 0);
    cost.unable = !work.unable.empty() && work.unable[cook] ? 1 : 0;
    cost.sessions = sessionGap_ && base.latest[cook] == noSession ? 1 : 0;
    cost.strain = isTooMuch ? strainOf(base, item, cook) : 0;
    return cost;
}

/// Tells assignments apart that break equally much: not all on one cook.
std::int64_t Sweep::strainOf(const State& base, std::size_t item, std::size_t cook) const
{
    const Interval& during = work_[item].during;
    std::int64_t strain = 0;
    for (std::size_t i = 0; i < active_.size(); ++i) {
        const CookWork& other = work_[active_[i]];
        if ((base.active[i] >> cook & 1U) != 0) {
            strain += other.attention * during.common(other.during).length().count();
        }
    }
    return strain;
}

void Sweep::add(State state)
{
    const auto [known, isNew] = positions_.try_emplace(hashOf(state), next_.size());
    if (isNew) {
        next_.push_back(std::move(state));
        return;
    }
    for (std::size_t at = known->second; at < next_.size(); ++at) {
        if (next_[at].sameAs(state)) {
            if (state.cost < next_[at].cost) {
                next_[at] = std::move(state);
            }
            return;
        }
    }
    next_.push_back(std::move(state));
}

void Sweep::choose(const State& base, std::size_t item, std::size_t nextCook, std::size_t left,
                   CookMask chosen, const Cost& cost)
{
    if (below_ && cost.broken + unavoidable_ >= *below_) {
        return;
    }
    if (left == 0) {
        State state = base;
        state.chosen = chosen;
        state.cost = cost;
        state.active.push_back(chosen);
        for (std::size_t cook = 0; sessionGap_ && cook < cooks_; ++cook) {
            if ((chosen >> cook & 1U) != 0) {
                state.latest[cook] = std::max(state.latest[cook], minuteOf(work_[item].during.end));
            }
        }
        add(std::move(state));
        return;
    }
    for (std::size_t cook = nextCook; cook + left <= cooks_; ++cook) {
        const Cost more = costOf(base, item, cook);
        choose(base, item, cook + 1, left - 1, chosen | CookMask{1} << cook, cost + more);
    }
}

void Sweep::extend(State state, std::size_t item)
{
    load_.assign(cooks_, 0);
    for (std::size_t i = 0; i < active_.size(); ++i) {
        for (std::size_t cook = 0; cook < cooks_; ++cook) {
            load_[cook] += (state.active[i] >> cook & 1U) != 0 ? work_[active_[i]].attention : 0;
        }
    }
    const CookWork& work = work_[item];
    if (work.pinned.empty()) {
        const std::size_t there = std::min(cooks_, static_cast<std::size_t>(work.cooks));
        choose(state, item, 0, there, 0, state.cost);
        return;
    }
    Cost cost = state.cost;
    CookMask chosen = 0;
    for (const std::size_t cook : work.pinned) {
        const Cost more = costOf(state, item, cook);
        cost = cost + more;
        chosen |= CookMask{1} << cook;
    }
    choose(state, item, 0, 0, chosen, cost);
}

void Sweep::shorten()
{
    if (states_.size() <= limit_) {
        return;
    }
    wasCut_ = true;
    std::stable_sort(states_.begin(), states_.end(),
                     [](const State& a, const State& b) { return a.cost < b.cost; });
    states_.resize(limit_);
}

CookSweepResult Sweep::traced(const std::vector<std::size_t>& order) const
{
    CookSweepResult result;
    result.cooks.resize(work_.size());
    const auto best =
        std::min_element(states_.begin(), states_.end(),
                         [](const State& a, const State& b) { return a.cost < b.cost; });
    result.broken = best->cost.broken;
    result.sessions = best->cost.sessions;
    auto at = static_cast<std::size_t>(best - states_.begin());
    for (std::size_t i = order.size(); i-- > 0;) {
        const Step& step = history_[i][at];
        for (std::size_t cook = 0; cook < cooks_; ++cook) {
            if ((step.chosen >> cook & 1U) != 0) {
                result.cooks[order[i]].push_back(cook);
            }
        }
        at = step.from;
    }
    return result;
}

std::optional<CookSweepResult> Sweep::run()
{
    std::vector<std::size_t> order(work_.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return work_[a].during.start < work_[b].during.start;
    });
    State start;
    start.latest.assign(sessionGap_ ? cooks_ : 0, noSession);
    states_ = {start};
    for (const CookWork& work : work_) {
        unavoidable_ += leastFaults(work, cooks_);
    }
    for (const std::size_t item : order) {
        unavoidable_ -= leastFaults(work_[item], cooks_);
        enter(item);
        next_.clear();
        positions_.clear();
        for (std::size_t from = 0; from < states_.size(); ++from) {
            State state = states_[from];
            state.from = from;
            extend(std::move(state), item);
        }
        active_.push_back(item);
        states_.swap(next_);
        if (states_.empty()) {
            return std::nullopt;
        }
        shorten();
        std::vector<Step>& steps = history_.emplace_back();
        for (const State& state : states_) {
            steps.push_back({state.from, state.chosen});
        }
    }
    return traced(order);
}

} // namespace

CookSweepResult sweepCooks(const std::vector<CookWork>& work, std::size_t cooks, Minutes sessionGap)
{
    expects(cooks <= mostCooks, "no more cooks than fit a mask");
    if (auto clean = Sweep(work, cooks, {sessionGap, 1, mostStates}).run()) {
        return *std::move(clean);
    }
    Sweep sweep(work, cooks, {sessionGap, std::nullopt, mostStates});
    const auto result = sweep.run();
    ensures(result.has_value(), "broken assignments always exist");
    if (!sweep.wasCut()) {
        return *result;
    }
    const auto exact = Sweep(work, cooks, {std::nullopt, result->broken, mostStatesExact}).run();
    return exact ? *exact : *result;
}

} // namespace suppertide
