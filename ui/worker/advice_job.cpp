#include "ui/worker/advice_job.h"

#include "core/base/log.h"

namespace suppertide::ui {

namespace {

Result<Advice> advised(const AdviceRequest& request, const std::stop_token& stop,
                       const AdviceSink& sink)
{
    try {
        return findWaysOut(request, stop, sink);
    } catch (const std::exception& error) { // a thread's entry is an edge
        log::error("ui.worker", "looking for ways out failed: {}", error.what());
        return Failure{FailureKind::BadInput,
                       "Looking for ways out stopped because of a defect in the program. Your "
                       "evening is as it was.",
                       error.what()};
    }
}

} // namespace

AdviceJob::AdviceJob(QObject* parent) : QObject(parent) {}

AdviceJob::~AdviceJob()
{
    for (Run& run : runs_) {
        run.thread.request_stop();
    }
}

void AdviceJob::start(AdviceRequest request)
{
    drop();
    const quint64 number = current_;
    isRunning_ = true;
    const auto sink = [this, number](const AdviceProgress& progress) {
        QMetaObject::invokeMethod(
            this,
            [this, number, tried = static_cast<int>(progress.tried),
             toTry = static_cast<int>(progress.toTry),
             way = progress.found != nullptr ? std::optional(*progress.found) : std::nullopt] {
                if (number != current_ || !isRunning_) {
                    return;
                }
                if (way) {
                    Q_EMIT found(*way);
                }
                Q_EMIT progressed(tried, toTry);
            },
            Qt::QueuedConnection);
    };
    runs_.push_back({number, std::jthread([this, number, sink, request = std::move(request)](
                                              const std::stop_token& stop) {
                         const Result<Advice> advice = advised(request, stop, sink);
                         QMetaObject::invokeMethod(
                             this, [this, number, advice] { report(number, advice); },
                             Qt::QueuedConnection);
                     })});
}

void AdviceJob::drop()
{
    stop();
    ++current_;
    isRunning_ = false;
}

void AdviceJob::stop()
{
    if (!runs_.empty()) {
        runs_.back().thread.request_stop();
    }
}

void AdviceJob::report(quint64 run, const Result<Advice>& advice)
{
    runs_.remove_if([run](const Run& parked) { return parked.number == run; });
    if (run != current_) {
        return; // replaced by a later one meanwhile
    }
    isRunning_ = false;
    if (advice) {
        Q_EMIT finished(*advice);
    } else {
        Q_EMIT failed(advice.error());
    }
}

} // namespace suppertide::ui
