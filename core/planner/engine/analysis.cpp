#include "core/planner/engine/analysis.h"

#include <algorithm>

#include "core/planner/engine/engine.h"

namespace suppertide::engine {

namespace {

constexpr int thinningDepth = 4;

} // namespace

/// Of each view the strongest literal needed; looked up by view in a flat list, since conflicts
/// concern few views.
class Analysis::Needs
{
public:
    explicit Needs(const Trail& trail) : trail_(&trail) {}

    void add(Literal literal)
    {
        const EventIndex event = trail_->madeTrue(literal);
        if (event < 0 || trail_->events()[static_cast<std::size_t>(event)].level == 0) {
            return;
        }
        const auto below = [](const Need& a, const Need& b) { return a.event < b.event; };
        for (Need& need : needs_) {
            if (need.literal.view == literal.view) {
                if (literal.bound < need.literal.bound) {
                    need = {literal, event};
                    std::make_heap(needs_.begin(), needs_.end(), below);
                }
                return;
            }
        }
        needs_.push_back({literal, event});
        std::push_heap(needs_.begin(), needs_.end(), below);
    }
    [[nodiscard]] bool empty() const { return needs_.empty(); }
    [[nodiscard]] std::size_t size() const { return needs_.size(); }
    [[nodiscard]] Need take()
    {
        const auto below = [](const Need& a, const Need& b) { return a.event < b.event; };
        std::pop_heap(needs_.begin(), needs_.end(), below);
        const Need result = needs_.back();
        needs_.pop_back();
        return result;
    }
    [[nodiscard]] const Need& top() const { return needs_.front(); }
    [[nodiscard]] const std::vector<Need>& all() const { return needs_; }

private:
    const Trail* trail_;
    std::vector<Need> needs_;
};

std::int32_t Analysis::levelOf(EventIndex event) const
{
    return engine_->trail().events()[static_cast<std::size_t>(event)].level;
}

std::optional<Analysis::Learnt> Analysis::learn(const Literals& conflict)
{
    Needs needs(engine_->trail());
    for (const Literal literal : conflict) {
        needs.add(literal);
    }
    if (needs.empty()) {
        return std::nullopt;
    }
    const std::int32_t level = levelOf(needs.top().event);
    Literals because;
    while (true) {
        const Need latest = needs.take();
        engine_->activity_.bump(latest.literal);
        if (needs.empty() || levelOf(needs.top().event) < level) {
            std::vector<Need> kept = needs.all();
            kept.push_back(latest);
            thinOut(kept);
            kept.erase(std::find_if(kept.begin(), kept.end(),
                                    [&](const Need& need) { return need.event == latest.event; }));
            for (const Need& need : kept) {
                engine_->activity_.bump(need.literal);
            }
            return clauseOf(latest, kept);
        }
        const Reason reason =
            engine_->trail().events()[static_cast<std::size_t>(latest.event)].reason;
        if (reason.kind == Reason::Kind::Clause) {
            engine_->clauses_.bump(reason.at);
        }
        because.clear();
        engine_->explain(latest.event, latest.literal, because);
        for (const Literal literal : because) {
            needs.add(literal);
        }
    }
}

/// Whether a literal follows from those kept that became true before `before`.
bool Analysis::isCovered(Literal literal, EventIndex before, int depth,
                         const std::vector<Need>& kept) const
{
    const EventIndex event = engine_->trail().madeTrue(literal);
    if (event < 0 || levelOf(event) == 0) {
        return true;
    }
    for (const Need& need : kept) {
        if (need.literal.view == literal.view) {
            if (need.event < before && need.literal.bound <= literal.bound) {
                return true;
            }
            break;
        }
    }
    const Event& made = engine_->trail().events()[static_cast<std::size_t>(event)];
    if (depth == 0 || made.reason.kind == Reason::Kind::Decision) {
        return false;
    }
    Literals because;
    engine_->explain(event, literal, because);
    return std::all_of(because.begin(), because.end(),
                       [&](Literal reason) { return isCovered(reason, event, depth - 1, kept); });
}

void Analysis::thinOut(std::vector<Need>& kept) const
{
    std::sort(kept.begin(), kept.end(),
              [](const Need& a, const Need& b) { return a.event > b.event; });
    for (std::size_t i = 1; i < kept.size();) { // the first is the implication point
        const Need need = kept[i];
        const Event& made = engine_->trail().events()[static_cast<std::size_t>(need.event)];
        bool covered = false;
        if (made.reason.kind != Reason::Kind::Decision) {
            Literals because;
            engine_->explain(need.event, need.literal, because);
            covered = std::all_of(because.begin(), because.end(), [&](Literal reason) {
                return isCovered(reason, need.event, thinningDepth, kept);
            });
        }
        if (covered) {
            kept.erase(kept.begin() + static_cast<std::ptrdiff_t>(i));
        } else {
            ++i;
        }
    }
}

Analysis::Learnt Analysis::clauseOf(const Need& implied, const std::vector<Need>& kept) const
{
    Learnt learnt;
    learnt.literals.push_back(~implied.literal);
    std::vector<std::int32_t> levels{levelOf(implied.event)};
    for (const Need& need : kept) { // the latest first
        learnt.literals.push_back(~need.literal);
        levels.push_back(levelOf(need.event));
    }
    learnt.level = kept.empty() ? 0 : levels[1];
    levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
    learnt.levels = static_cast<std::int32_t>(levels.size());
    return learnt;
}

Literals Analysis::decisionsBehind(const Engine& engine, Literal literal)
{
    Needs needs(engine.trail());
    needs.add(literal);
    Literals decisions;
    Literals because;
    while (!needs.empty()) {
        const Need latest = needs.take();
        const Event& made = engine.trail().events()[static_cast<std::size_t>(latest.event)];
        if (made.reason.kind == Reason::Kind::Decision) {
            decisions.push_back({made.view, made.after});
            continue;
        }
        because.clear();
        engine.explain(latest.event, latest.literal, because);
        for (const Literal reason : because) {
            needs.add(reason);
        }
    }
    return decisions;
}

} // namespace suppertide::engine
