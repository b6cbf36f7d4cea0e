#include "ui/worker/compare_job.h"

#include <chrono>
#include <utility>

#include "core/base/log.h"

namespace suppertide::ui {

namespace {

using menus::ComparedMenu;

/// Whether it was stopped.
Result<bool> compared(const menus::CompareRequest& request, const std::stop_token& stop,
                      const menus::CompareSink& sink)
{
    try {
        const auto comparison = menus::compareMenus(request, stop, sink);
        return comparison ? Result<bool>(comparison->isStopped) : Result<bool>(comparison.error());
    } catch (const std::exception& error) { // a thread's entry is an edge
        log::error("ui.worker", "comparing menus failed: {}", error.what());
        return Failure{FailureKind::BadInput,
                       "Comparing stopped because of a defect in the program. Your evening is as "
                       "it was.",
                       error.what()};
    }
}

} // namespace

/// Gathers results on the run's threads, one at a time, and hands them over in batches.
class CompareJob::Batches
{
public:
    Batches(CompareJob& job, quint64 run) : job_(job), run_(run) {}

    void take(const menus::CompareProgress& progress)
    {
        if (progress.begun != nullptr) {
            handOver([job = &job_,
                      table = std::make_shared<const menus::MenuTable>(*progress.table),
                      all = *progress.begun] { Q_EMIT job->begun(table, all); });
        }
        if (progress.looked != nullptr) {
            waiting_.push_back(*progress.looked);
        }
        done_ = static_cast<int>(progress.done);
        toDo_ = static_cast<int>(progress.toDo);
        constexpr std::chrono::milliseconds between{100};
        if (Clock::now() - last_ >= between) {
            flush();
        }
    }

    void flush()
    {
        last_ = Clock::now();
        handOver([job = &job_, menus = std::exchange(waiting_, {}), done = done_, toDo = toDo_] {
            Q_EMIT job->looked(menus, done, toDo);
        });
    }

private:
    using Clock = std::chrono::steady_clock;

    template <typename Tell>
    void handOver(Tell tell)
    {
        QMetaObject::invokeMethod(
            &job_,
            [job = &job_, run = run_, tell = std::move(tell)] {
                if (job->runs_.isCurrent(run)) {
                    tell();
                }
            },
            Qt::QueuedConnection);
    }

    CompareJob& job_;
    quint64 run_;
    std::vector<ComparedMenu> waiting_;
    int done_ = 0;
    int toDo_ = 0;
    Clock::time_point last_ = Clock::now();
};

CompareJob::CompareJob(QObject* parent) : QObject(parent) {}

void CompareJob::start(menus::CompareRequest request)
{
    runs_.begin([this, request = std::move(request)](quint64 run, const std::stop_token& stop) {
        Batches batches(*this, run);
        const Result<bool> isStopped =
            compared(request, stop, [&batches](const menus::CompareProgress& progress) {
                batches.take(progress);
            });
        batches.flush();
        QMetaObject::invokeMethod(
            this, [this, run, isStopped] { report(run, isStopped); }, Qt::QueuedConnection);
    });
}

void CompareJob::stop()
{
    runs_.stop();
}

void CompareJob::drop()
{
    runs_.drop();
}

void CompareJob::report(quint64 run, const Result<bool>& isStopped)
{
    if (!runs_.end(run)) {
        return;
    }
    if (isStopped) {
        Q_EMIT finished(*isStopped);
    } else {
        Q_EMIT failed(isStopped.error());
    }
}

} // namespace suppertide::ui
