// NightJob: what is left of the evening, looked at or planned anew on a thread of its own, together
// with the sheet that the cooks read. The request is a snapshot; the answer comes back as a signal
// on the thread that owns this. A later request stops the one before and takes its place.
#pragma once

#include <QObject>

#include <memory>

#include "core/propose/plan_rest.h"
#include "core/sheet/night_sheet.h"
#include "ui/worker/parked_runs.h"

namespace suppertide::ui {

struct NightQuestion
{
    RestRequest request;
    bool mayMove = false; // plan anew where what is laid out does not hold
    ReadingStyle style{};
};

struct NightAnswer
{
    RestOutcome outcome; // RestPlan or NoRest
    NightSheet sheet;
    bool mayMove = false;

    [[nodiscard]] const RestOfEvening& rest() const;
    [[nodiscard]] const PlanPtr& plan() const;
};

using NightAnswerPtr = std::shared_ptr<const NightAnswer>;

/// On the caller's thread; null if it was stopped.
[[nodiscard]] Result<NightAnswerPtr> answered(const NightQuestion& question,
                                              const std::stop_token& stop = {});

class NightJob : public QObject
{
    Q_OBJECT

public:
    explicit NightJob(QObject* parent = nullptr);

    void ask(NightQuestion question);
    [[nodiscard]] bool isRunning() const { return runs_.isRunning(); }

Q_SIGNALS:
    void answeredFor(const suppertide::ui::NightAnswerPtr& answer, quint64 revision);
    void failed(const suppertide::Failure& failure);

private:
    void report(quint64 run, const Result<NightAnswerPtr>& answer, quint64 revision);

    ParkedRuns runs_;
};

} // namespace suppertide::ui
