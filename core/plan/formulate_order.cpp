// The order of steps, of batches, and of portions that must be kept clear of something (formulate
// rule 3): what is said by the recipes but not by a wait.
#include <algorithm>

#include "core/plan/evening.h"

namespace suppertide {

namespace {

bool isOrdered(const Problem& problem, const TaskPoint& from, const TaskPoint& to)
{
    return std::ranges::any_of(problem.lags, [&](const Lag& lag) {
        return lag.from == from && lag.to == to && lag.min && *lag.min >= Minutes{0};
    });
}

class OrderWriter
{
public:
    OrderWriter(Evening& evening, std::size_t making)
        : evening_(evening), index_(making), making_(evening.makings[making])
    {}

    void write()
    {
        for (std::size_t step = 0; step < making_.steps.size(); ++step) {
            writeAfter(step);
            writeBatches(step);
        }
    }

private:
    void writeAfter(std::size_t step)
    {
        const MadeStep& made = making_.steps[step];
        for (const StepId& id : made.step.after) {
            std::vector<std::size_t> before;
            for (const std::size_t variant : made.variants) {
                for (const std::size_t found : making_.stepsNamed(variant, id)) {
                    const bool isNew = std::ranges::find(before, found) == before.end();
                    if (isNew && areCompatible(made.method, making_.steps[found].method)) {
                        before.push_back(found);
                    }
                }
            }
            for (const std::size_t earlier : before) {
                tie(earlier, step);
            }
        }
    }

    /// Each batch after those that make some of its portions.
    void tie(std::size_t earlier, std::size_t later)
    {
        for (const std::size_t from : making_.steps[earlier].batches) {
            for (const std::size_t to : making_.steps[later].batches) {
                if (making_.batches[from].share.meets(making_.batches[to].share)) {
                    order(evening_.batchTasks(index_, from).end(),
                          evening_.batchTasks(index_, to).start());
                }
            }
        }
    }

    /// Like batches are begun in order: which is which does not matter.
    void writeBatches(std::size_t step)
    {
        const auto& batches = making_.steps[step].batches;
        for (std::size_t i = 1; i < batches.size(); ++i) {
            order(evening_.batchTasks(index_, batches[i - 1]).start(),
                  evening_.batchTasks(index_, batches[i]).start(), Rule::Batches);
        }
    }

    void order(const TaskPoint& from, const TaskPoint& to, Rule rule = Rule::Spans)
    {
        if (!isOrdered(evening_.draft.problem(), from, to)) {
            evening_.draft.addLag(from, to, Gap::atLeast(Minutes{0}), orderSource(making_, rule));
        }
    }

    Evening& evening_;
    std::size_t index_;
    const Making& making_;
};

} // namespace

void addOrder(Evening& evening)
{
    for (std::size_t making = 0; making < evening.makings.size(); ++making) {
        OrderWriter(evening, making).write();
    }
}

} // namespace suppertide
