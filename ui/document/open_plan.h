// OpenPlan: the plan of the open occasion as it is laid out, made anew after each change that
// touches it: formulated, laid out, judged. On the spot while that takes less than a frame, else
// on a thread of its own; what comes back for a state that is no longer current is dropped.
#pragma once

#include <QObject>
#include <QString>

#include <chrono>
#include <thread>
#include <vector>

#include "core/plan/plan.h"
#include "ui/document/state.h"

namespace suppertide::ui {

class Document;

/// Formulates, lays out and judges. Fails with one sentence a fault of the input.
[[nodiscard]] Result<PlanPtr> laidOutPlan(const PlanInput& input, std::uint64_t revision);

class OpenPlan : public QObject
{
    Q_OBJECT

public:
    explicit OpenPlan(Document& document, QObject* parent = nullptr);
    ~OpenPlan() override;
    OpenPlan(const OpenPlan&) = delete;
    OpenPlan& operator=(const OpenPlan&) = delete;
    OpenPlan(OpenPlan&&) = delete;
    OpenPlan& operator=(OpenPlan&&) = delete;

    /// The latest plan; null if no occasion is open or it has faults. While a new one is being
    /// made this is the one before.
    [[nodiscard]] const PlanPtr& plan() const { return plan_; }
    [[nodiscard]] bool isCurrent() const { return isMade_ && made_ == wanted_; }
    /// The revision of the last change that touches the plan; what was made for another one is out
    /// of date.
    [[nodiscard]] std::uint64_t wantedRevision() const { return wanted_; }
    /// What keeps the occasion from being planned, in sentences; empty if nothing does.
    [[nodiscard]] const QString& faults() const { return faults_; }

Q_SIGNALS:
    void changed();

private:
    void refresh();
    void startThread(const PlanInput& input, std::uint64_t revision);
    void take(const Result<PlanPtr>& made, std::uint64_t revision);

    Document& document_;
    PlanPtr plan_;
    QString faults_;
    std::chrono::steady_clock::duration lastTook_{};
    std::uint64_t wanted_ = 0;
    std::uint64_t made_ = 0;
    bool isMade_ = false;
    bool isRunning_ = false;
    std::jthread thread_; // last: joined before the rest goes
};

} // namespace suppertide::ui
