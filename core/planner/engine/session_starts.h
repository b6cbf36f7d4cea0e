// SessionStartsPropagator: with which tasks sessions of a cook begin: with one before which no
// other task of the cook starts that goes on until so shortly before it that it is still the same
// session.
//
//     salad [--]  dip [---]  |    gap    |  soup [----]  bread [--]
//                                           begins, once no other can reach into the gap
//
// A task that is the cook's and with which no session is to begin goes on from another: where only
// one is left that can be it, that one does.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/planner/engine/engine.h"

namespace suppertide::engine {

/// What a cook may have to do; starts no later than it ends.
struct CooksJob
{
    Term from;
    Term to;
    Literal mine;   // the cook does it
    Literal begins; // holds at least where a session begins with it
};

class SessionStartsPropagator : public Propagator
{
public:
    /// All that the cook may have to do. `gap`: minutes without work that do not end a session.
    SessionStartsPropagator(std::vector<CooksJob> jobs, std::int64_t gap);
    static void post(Engine& engine, std::vector<CooksJob> jobs, std::int64_t gap);

    bool propagate(Engine& engine) override;
    [[nodiscard]] int order() const override { return 2; }

private:
    /// For no task in particular.
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    /// Two that the task may go on from; kept, as they mostly stay so.
    struct Blockers
    {
        std::size_t one = none;
        std::size_t other = none;
    };
    [[nodiscard]] bool mayGoOn(const Trail& trail, std::size_t job, std::size_t from) const;
    [[nodiscard]] std::size_t nextBlocker(const Trail& trail, std::size_t job,
                                          std::size_t butNot) const;
    void lookForBlockers(const Trail& trail, std::size_t job, bool forTwo);
    [[nodiscard]] Literals whyNone(const Trail& trail, std::size_t job, std::size_t butFor) const;
    [[nodiscard]] bool begin(Engine& engine, std::size_t job) const;
    [[nodiscard]] bool goOn(Engine& engine, std::size_t job, std::size_t from) const;

    std::vector<CooksJob> jobs_;
    Bound gap_;
    std::vector<Blockers> blockers_;
};

} // namespace suppertide::engine
