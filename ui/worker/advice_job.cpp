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

void AdviceJob::start(AdviceRequest request)
{
    runs_.begin([this, request = std::move(request)](quint64 run, const std::stop_token& stop) {
        const auto sink = [this, run](const AdviceProgress& progress) {
            QMetaObject::invokeMethod(
                this,
                [this, run, tried = static_cast<int>(progress.tried),
                 toTry = static_cast<int>(progress.toTry),
                 way = progress.found != nullptr ? std::optional(*progress.found) : std::nullopt] {
                    tell(run, tried, toTry, way);
                },
                Qt::QueuedConnection);
        };
        const Result<Advice> advice = advised(request, stop, sink);
        QMetaObject::invokeMethod(
            this, [this, run, advice] { report(run, advice); }, Qt::QueuedConnection);
    });
}

void AdviceJob::drop()
{
    runs_.drop();
}

void AdviceJob::stop()
{
    runs_.stop();
}

void AdviceJob::tell(quint64 run, int tried, int toTry, const std::optional<WayOut>& way)
{
    if (!runs_.isCurrent(run)) {
        return;
    }
    if (way) {
        Q_EMIT found(*way);
    }
    Q_EMIT progressed(tried, toTry);
}

void AdviceJob::report(quint64 run, const Result<Advice>& advice)
{
    if (!runs_.end(run)) {
        return;
    }
    if (advice) {
        Q_EMIT finished(*advice);
    } else {
        Q_EMIT failed(advice.error());
    }
}

} // namespace suppertide::ui
