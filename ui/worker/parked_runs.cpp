#include "ui/worker/parked_runs.h"

#include <utility>

namespace suppertide::ui {

ParkedRuns::~ParkedRuns()
{
    for (Run& run : runs_) {
        run.thread.request_stop();
    }
}

void ParkedRuns::begin(Work work)
{
    stop();
    const quint64 number = ++current_;
    isRunning_ = true;
    runs_.push_back(
        {number, std::jthread([number, work = std::move(work)](const std::stop_token& stop) {
             work(number, stop);
         })});
}

void ParkedRuns::stop()
{
    if (!runs_.empty()) {
        runs_.back().thread.request_stop();
    }
}

void ParkedRuns::drop()
{
    stop();
    ++current_;
    isRunning_ = false;
}

bool ParkedRuns::end(quint64 run)
{
    runs_.remove_if([run](const Run& parked) { return parked.number == run; });
    if (!isCurrent(run)) {
        return false; // replaced by a later one meanwhile
    }
    isRunning_ = false;
    return true;
}

} // namespace suppertide::ui
