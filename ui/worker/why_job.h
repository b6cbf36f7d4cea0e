// WhyJob: finding out why a step stands where it does, on a thread of its own.
#pragma once

#include <QObject>

#include <list>
#include <thread>

#include "core/advice/why_here.h"

namespace suppertide::ui {

class WhyJob : public QObject
{
    Q_OBJECT

public:
    explicit WhyJob(QObject* parent = nullptr);
    ~WhyJob() override;
    WhyJob(const WhyJob&) = delete;
    WhyJob& operator=(const WhyJob&) = delete;
    WhyJob(WhyJob&&) = delete;
    WhyJob& operator=(WhyJob&&) = delete;

    /// A question before this one is forgotten.
    void ask(PlanPtr plan, PlanInput input, TaskIndex task);
    void drop();

Q_SIGNALS:
    void answered(const suppertide::WhyHere& why, const suppertide::PlanPtr& plan);

private:
    struct Run
    {
        quint64 number = 0;
        std::jthread thread;
    };
    quint64 current_ = 0;
    std::list<Run> runs_; // last: joined before the rest goes
};

} // namespace suppertide::ui
