#include "ui/document/open_plan.h"

#include "core/base/log.h"
#include "core/plan/lay_out.h"
#include "ui/document/document.h"

namespace suppertide::ui {

namespace {

using SteadyClock = std::chrono::steady_clock;

constexpr std::chrono::milliseconds frame{16};

} // namespace

Result<PlanPtr> laidOutPlan(const PlanInput& input, std::uint64_t revision)
{
    Result<FormulationPtr> formulation = formulate(input);
    if (!formulation) {
        return formulation.error();
    }
    Schedule schedule = layOut(**formulation, *input.layout);
    return judgePlan(*formulation, input, std::move(schedule), revision);
}

OpenPlan::OpenPlan(Document& document, QObject* parent) : QObject(parent), document_(document)
{
    connect(&document_, &Document::changed, this, [this](const ChangeSet& changes) {
        if (changes.isPlanTouched) {
            refresh();
        }
    });
    refresh();
}

OpenPlan::~OpenPlan() = default;

void OpenPlan::refresh()
{
    wanted_ = document_.state()->revision;
    if (isRunning_) {
        return; // its end starts the next one
    }
    const std::optional<PlanInput> input = planInputOf(document_.library());
    if (!input) {
        take(PlanPtr{}, wanted_);
        return;
    }
    if (lastTook_ > frame) {
        startThread(*input, wanted_);
        return;
    }
    const auto begin = SteadyClock::now();
    const Result<PlanPtr> made = laidOutPlan(*input, wanted_);
    lastTook_ = SteadyClock::now() - begin;
    take(made, wanted_);
}

void OpenPlan::startThread(const PlanInput& input, std::uint64_t revision)
{
    isRunning_ = true;
    thread_ = std::jthread([this, input, revision] {
        const auto begin = SteadyClock::now();
        Result<PlanPtr> made = [&]() -> Result<PlanPtr> {
            try {
                return laidOutPlan(input, revision);
            } catch (const std::exception& error) { // a thread's entry is an edge
                log::error("ui.document", "laying out failed: {}", error.what());
                return Failure{FailureKind::BadInput,
                               "This plan could not be laid out because of a defect in the "
                               "program. Undo the last change to go on.",
                               error.what()};
            }
        }();
        const auto took = SteadyClock::now() - begin;
        QMetaObject::invokeMethod(
            this,
            [this, made = std::move(made), revision, took] {
                isRunning_ = false;
                lastTook_ = took;
                take(made, revision);
            },
            Qt::QueuedConnection);
    });
}

void OpenPlan::take(const Result<PlanPtr>& made, std::uint64_t revision)
{
    if (revision != wanted_) {
        refresh();
        return;
    }
    isMade_ = true;
    made_ = revision;
    plan_ = made ? *made : nullptr;
    faults_ = made ? QString() : QString::fromStdString(made.error().forCook);
    Q_EMIT changed();
}

} // namespace suppertide::ui
