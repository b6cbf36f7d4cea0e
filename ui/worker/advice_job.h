// AdviceJob: looking for ways out on a thread of its own, each told as it is found. Starting anew
// stops the run before and parks it until it has reported, like PlanJob.
#pragma once

#include <QObject>

#include <list>
#include <string>
#include <thread>
#include <vector>

#include "core/advice/ways_out.h"

namespace suppertide::ui {

class AdviceJob : public QObject
{
    Q_OBJECT

public:
    explicit AdviceJob(QObject* parent = nullptr);
    ~AdviceJob() override;
    AdviceJob(const AdviceJob&) = delete;
    AdviceJob& operator=(const AdviceJob&) = delete;
    AdviceJob(AdviceJob&&) = delete;
    AdviceJob& operator=(AdviceJob&&) = delete;

    void start(AdviceRequest request);
    /// Ends the run and forgets it: nothing more is told of it.
    void drop();
    /// Ends the run; `finished` follows with what was found so far.
    void stop();
    [[nodiscard]] bool isRunning() const { return isRunning_; }

Q_SIGNALS:
    void found(const suppertide::WayOut& way);
    void progressed(int tried, int toTry);
    void finished(const suppertide::Advice& advice);
    void failed(const suppertide::Failure& failure);

private:
    void report(quint64 run, const Result<Advice>& advice);

    struct Run
    {
        quint64 number = 0;
        std::jthread thread;
    };
    quint64 current_ = 0;
    bool isRunning_ = false;
    std::list<Run> runs_; // the current one and those parked; last: joined before the rest goes
};

} // namespace suppertide::ui
