#include "core/planner/engine/trail.h"

namespace suppertide::engine {

Variable Trail::add(Bound least, Bound most)
{
    const Variable result{static_cast<std::uint32_t>(most_.size() / 2)};
    most_.push_back(most);
    most_.push_back(-least);
    last_.push_back(fromTheStart);
    last_.push_back(fromTheStart);
    return result;
}

void Trail::push(Literal literal, Reason reason)
{
    Bound& most = most_[literal.view];
    events_.push_back({literal.view, most, literal.bound, last_[literal.view], level(), reason});
    most = literal.bound;
    last_[literal.view] = static_cast<EventIndex>(events_.size() - 1);
}

Reason Trail::store(const Literals& because)
{
    const auto at = static_cast<std::uint32_t>(stored_.size());
    stored_.push_back({0, static_cast<Bound>(because.size())});
    stored_.insert(stored_.end(), because.begin(), because.end());
    return {Reason::Kind::Stored, at};
}

void Trail::backTo(std::int32_t level)
{
    const Mark mark = marks_[static_cast<std::size_t>(level)];
    while (events_.size() > mark.events) {
        const Event& event = events_.back();
        most_[event.view] = event.before;
        last_[event.view] = event.earlier;
        events_.pop_back();
    }
    stored_.resize(mark.stored);
    marks_.resize(static_cast<std::size_t>(level));
}

EventIndex Trail::madeTrue(Literal literal) const
{
    EventIndex at = last_[literal.view];
    while (at >= 0 && events_[static_cast<std::size_t>(at)].before <= literal.bound) {
        at = events_[static_cast<std::size_t>(at)].earlier;
    }
    return at;
}

Bound Trail::mostAlways(View view) const
{
    Bound most = most_[view];
    EventIndex at = last_[view];
    while (at >= 0 && events_[static_cast<std::size_t>(at)].level > 0) {
        most = events_[static_cast<std::size_t>(at)].before;
        at = events_[static_cast<std::size_t>(at)].earlier;
    }
    return most;
}

Bound Trail::mostBefore(EventIndex event, View view) const
{
    Bound most = most_[view];
    EventIndex at = last_[view];
    while (at >= event) {
        most = events_[static_cast<std::size_t>(at)].before;
        at = events_[static_cast<std::size_t>(at)].earlier;
    }
    return most;
}

} // namespace suppertide::engine
