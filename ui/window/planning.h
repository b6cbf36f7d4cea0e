// Planning: “Make plan” as the window has it: the planner runs while the user works, better plans
// are offered as they come, one is taken by a click and can be undone. What was found for a state
// that is no longer current is dropped, and planning begins again.
#pragma once

#include <QObject>
#include <QString>
#include <QStringList>

#include "ui/document/document.h"
#include "ui/document/open_plan.h"
#include "ui/worker/plan_job.h"

namespace suppertide::ui {

class Planning : public QObject
{
    Q_OBJECT

public:
    Planning(Document& document, OpenPlan& plan, QObject* parent);

    [[nodiscard]] bool isRunning() const { return job_->isRunning(); }
    /// The best plan found that has not been taken; null: none.
    [[nodiscard]] const PlanPtr& offer() const { return offer_; }

public Q_SLOTS:
    void start();
    void stop();
    /// Makes the offer the plan, undoable.
    void take();
    void dismiss();

Q_SIGNALS:
    void runningChanged(bool isRunning);
    void offered(const suppertide::PlanPtr& plan);
    void said(const QString& words);
    /// There is no plan, proven; why, a sentence each.
    void impossible(const QStringList& reasons);

private:
    void progress(const PlanProgress& progress);
    void finish(const PlanOutcome& outcome, quint64 revision);
    void checkCurrent();

    Document& document_;
    OpenPlan& plan_;
    PlanJob* job_;
    PlanPtr offer_;
    std::uint64_t revision_ = 0; // for which the job runs
    bool isTaking_ = false;
    bool takesFirst_ = false; // the plan that holds clashes: the first one found is taken at once
};

} // namespace suppertide::ui
