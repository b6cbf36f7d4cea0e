// Lags: is the time between two points no shorter and no longer than asked?
#include <algorithm>

#include "core/check/judges.h"

namespace suppertide {

Verdict judgeLag(const Evidence& evidence, LagIndex lag)
{
    const Lag& what = evidence.problem().lags[lag];
    const auto from = evidence.times().time(what.from);
    const auto to = evidence.times().time(what.to);
    if (!from || !to) {
        return {};
    }
    const Minutes gap = *to - *from;
    Verdict verdict;
    const auto fail = [&](BrokenHow how, Minutes bound) {
        Broken broken{BrokenKind::Lag, how, what.id};
        broken.tasks = evidence.inOrderOfStart({what.from.task, what.to.task});
        broken.when = Interval{std::min(*from, *to), std::max(*from, *to)};
        broken.asked = gap.count();
        broken.allowed = bound.count();
        verdict.push_back(std::move(broken));
    };
    if (what.min && gap < *what.min) {
        fail(BrokenHow::BelowMin, *what.min);
    }
    if (what.max && gap > *what.max) {
        fail(BrokenHow::AboveMax, *what.max);
    }
    return verdict;
}

} // namespace suppertide
