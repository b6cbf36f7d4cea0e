// CompareJob: comparing menus on threads of its own, results told as they come, some ten times a
// second at most. Starting anew stops the run before and parks it, like PlanJob.
#pragma once

#include <QObject>

#include <memory>
#include <vector>

#include "core/menus/compare.h"
#include "ui/worker/parked_runs.h"

namespace suppertide::ui {

class CompareJob : public QObject
{
    Q_OBJECT

public:
    explicit CompareJob(QObject* parent = nullptr);

    void start(menus::CompareRequest request);
    /// Ends the run; `finished` follows.
    void stop();
    /// Ends the run and forgets it: nothing more is told of it.
    void drop();
    [[nodiscard]] bool isRunning() const { return runs_.isRunning(); }

Q_SIGNALS:
    /// All menus, before any is planned.
    void begun(const std::shared_ptr<const suppertide::menus::MenuTable>& table,
               const std::vector<suppertide::menus::ComparedMenu>& menus);
    /// Those of which more is known.
    void looked(const std::vector<suppertide::menus::ComparedMenu>& menus, int done, int toDo);
    void finished(bool isStopped);
    void failed(const suppertide::Failure& failure);

private:
    class Batches;

    void report(quint64 run, const Result<bool>& isStopped);

    ParkedRuns runs_;
};

} // namespace suppertide::ui
