#include "core/planner/engine/activity.h"

namespace suppertide::engine {

namespace {

constexpr double rescaleAbove = 1e100;

} // namespace

void Activity::put(std::size_t place, std::uint32_t name)
{
    heap_[place] = name;
    names_[name].place = static_cast<std::int32_t>(place);
}

void Activity::rise(std::size_t place)
{
    const std::uint32_t name = heap_[place];
    while (place > 0 && above(name, heap_[(place - 1) / 2])) {
        put(place, heap_[(place - 1) / 2]);
        place = (place - 1) / 2;
    }
    put(place, name);
}

void Activity::sink(std::size_t place)
{
    const std::uint32_t name = heap_[place];
    while (2 * place + 1 < heap_.size()) {
        std::size_t child = 2 * place + 1;
        if (child + 1 < heap_.size() && above(heap_[child + 1], heap_[child])) {
            ++child;
        }
        if (!above(heap_[child], name)) {
            break;
        }
        put(place, heap_[child]);
        place = child;
    }
    put(place, name);
}

void Activity::insert(std::uint32_t name)
{
    heap_.push_back(name);
    rise(heap_.size() - 1);
}

void Activity::rescale()
{
    for (Name& name : names_) {
        name.figure /= rescaleAbove;
    }
    increment_ /= rescaleAbove;
}

void Activity::bump(Literal literal)
{
    if ((literal.view & 1U) != 0) {
        literal = ~literal;
    }
    const std::uint64_t key =
        (std::uint64_t{literal.view} << 32U) | static_cast<std::uint32_t>(literal.bound);
    const auto [found, isNew] = known_.try_emplace(key, static_cast<std::uint32_t>(names_.size()));
    const std::uint32_t index = found->second;
    if (isNew) {
        names_.push_back({literal, 0, -1});
    }
    Name& name = names_[index];
    name.figure += increment_;
    if (name.place >= 0) {
        rise(static_cast<std::size_t>(name.place));
    } else if (isNew) {
        insert(index);
    }
    if (name.figure > rescaleAbove) {
        rescale();
    }
}

std::optional<Literal> Activity::next(const Trail& trail)
{
    while (!heap_.empty()) {
        const std::uint32_t top = heap_.front();
        const Literal literal = names_[top].literal;
        if (!trail.holds(literal) && !trail.fails(literal)) {
            return literal;
        }
        names_[top].place = -1;
        outside_.push_back({top, trail.events().size()});
        const std::uint32_t last = heap_.back();
        heap_.pop_back();
        if (!heap_.empty()) {
            put(0, last);
            sink(0);
        }
    }
    return std::nullopt;
}

void Activity::reopen(std::size_t events)
{
    while (!outside_.empty() && outside_.back().events > events) {
        const std::uint32_t name = outside_.back().name;
        outside_.pop_back();
        if (names_[name].place < 0) {
            insert(name);
        }
    }
}

} // namespace suppertide::engine
