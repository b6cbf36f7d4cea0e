// ParkedRuns: work on threads of its own, one after the other. Beginning anew stops the run before
// and parks it until it has reported: nobody waits for it before the program ends. Each job of this
// folder has one; all members are called on the thread that owns the job.
#pragma once

#include <QtGlobal>

#include <functional>
#include <list>
#include <stop_token>
#include <thread>

namespace suppertide::ui {

class ParkedRuns
{
public:
    /// On the run's own thread, with its number.
    using Work = std::function<void(quint64 run, const std::stop_token& stop)>;

    ParkedRuns() = default;
    ~ParkedRuns();
    Q_DISABLE_COPY_MOVE(ParkedRuns)

    void begin(Work work);
    /// Asks the last one to stop; it stays the current one.
    void stop();
    /// The same, and whatever it reports is not wanted any more.
    void drop();
    [[nodiscard]] bool isCurrent(quint64 run) const { return isRunning_ && run == current_; }
    [[nodiscard]] bool isRunning() const { return isRunning_; }
    /// A run has reported. Whether that is still wanted.
    [[nodiscard]] bool end(quint64 run);

private:
    struct Run
    {
        quint64 number = 0;
        std::jthread thread;
    };
    quint64 current_ = 0;
    bool isRunning_ = false;
    std::list<Run> runs_; // the current one and those parked
};

} // namespace suppertide::ui
