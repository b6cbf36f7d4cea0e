#include "ui/worker/night_job.h"

#include "core/base/log.h"

namespace suppertide::ui {

namespace {

/// A thread's entry is an edge.
Result<NightAnswerPtr> guarded(const NightQuestion& question, const std::stop_token& stop)
{
    try {
        return answered(question, stop);
    } catch (const std::exception& error) {
        log::error("ui.worker", "planning the rest failed: {}", error.what());
        return Failure{FailureKind::BadInput,
                       "The rest could not be planned because of a defect in the program. The plan "
                       "is as it was; go on by it.",
                       error.what()};
    }
}

} // namespace

const RestOfEvening& NightAnswer::rest() const
{
    const auto* plan = std::get_if<RestPlan>(&outcome);
    return plan != nullptr ? plan->rest : std::get<NoRest>(outcome).rest;
}

const PlanPtr& NightAnswer::plan() const
{
    const auto* found = std::get_if<RestPlan>(&outcome);
    return found != nullptr ? found->plan : std::get<NoRest>(outcome).plan;
}

Result<NightAnswerPtr> answered(const NightQuestion& question, const std::stop_token& stop)
{
    auto outcome = question.mayMove ? planRest(question.request, stop) : carryOn(question.request);
    if (!outcome) {
        return outcome.error();
    }
    if (std::holds_alternative<std::monostate>(*outcome)) {
        return NightAnswerPtr{};
    }
    NightAnswer answer{*std::move(outcome), {}, question.mayMove};
    answer.sheet = nightSheet(answer.rest(), answer.plan(), question.request.input, question.style);
    return std::make_shared<const NightAnswer>(std::move(answer));
}

NightJob::NightJob(QObject* parent) : QObject(parent) {}

void NightJob::ask(NightQuestion question)
{
    runs_.begin([this, question = std::move(question)](quint64 run, const std::stop_token& stop) {
        const Result<NightAnswerPtr> answer = guarded(question, stop);
        QMetaObject::invokeMethod(
            this,
            [this, run, answer, revision = question.request.revision] {
                report(run, answer, revision);
            },
            Qt::QueuedConnection);
    });
}

void NightJob::report(quint64 run, const Result<NightAnswerPtr>& answer, quint64 revision)
{
    if (!runs_.end(run)) {
        return;
    }
    if (!answer) {
        Q_EMIT failed(answer.error());
    } else if (*answer) {
        Q_EMIT answeredFor(*answer, revision);
    }
}

} // namespace suppertide::ui
