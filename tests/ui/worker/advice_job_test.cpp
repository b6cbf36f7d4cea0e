// Ways out and “Why here?” on threads of their own, on the demo.
#include <QCoreApplication>
#include <QTest>

#include <gtest/gtest.h>

#include <vector>

#include "tests/support/demo_evening.h"
#include "ui/worker/advice_job.h"
#include "ui/worker/why_job.h"

namespace suppertide::ui {
namespace {

using test::demoLibrary;
using test::LaidOut;

constexpr int longEnough = 120'000; // ms: for a busy machine; nothing is measured

AdviceRequest requestFor(const LaidOut& evening)
{
    AdviceRequest request;
    request.input = evening.input();
    request.laidOut = evening.plan;
    request.clash = evening.plan->clashes.front();
    request.better.steps = 20'000;
    request.most = 1;
    return request;
}

/// With an event loop.
class AdviceJobTest : public testing::Test
{
private:
    int argumentCount_ = 0;
    QCoreApplication application_{argumentCount_, nullptr};
};
using WhyJobTest = AdviceJobTest;

TEST_F(AdviceJobTest, TellsAWayOutAndThatItIsDone)
{
    const LaidOut evening(demoLibrary());
    ASSERT_FALSE(evening.plan->clashes.empty());
    AdviceJob job;
    std::vector<WayOut> ways;
    std::vector<std::size_t> finished;
    QObject::connect(&job, &AdviceJob::found, [&](const WayOut& way) { ways.push_back(way); });
    QObject::connect(&job, &AdviceJob::finished,
                     [&](const Advice& advice) { finished.push_back(advice.ways.size()); });
    job.start(requestFor(evening));
    EXPECT_TRUE(job.isRunning());
    ASSERT_TRUE(QTest::qWaitFor([&] { return !finished.empty(); }, longEnough));
    EXPECT_FALSE(job.isRunning());
    EXPECT_EQ(ways.size(), 1U);
    EXPECT_EQ(finished, std::vector<std::size_t>{1});
}

TEST_F(AdviceJobTest, TellsNothingOfWhatWasDropped)
{
    const LaidOut evening(demoLibrary());
    AdviceJob job;
    int told = 0;
    QObject::connect(&job, &AdviceJob::found, [&] { ++told; });
    QObject::connect(&job, &AdviceJob::finished, [&] { ++told; });
    job.start(requestFor(evening));
    job.drop();
    EXPECT_FALSE(job.isRunning());
    // A later run is told of; by then the first has reported.
    bool isDone = false;
    AdviceJob second;
    QObject::connect(&second, &AdviceJob::finished, [&] { isDone = true; });
    second.start(requestFor(evening));
    second.stop();
    ASSERT_TRUE(QTest::qWaitFor([&] { return isDone; }, longEnough));
    EXPECT_EQ(told, 0);
}

TEST_F(WhyJobTest, AnswersTheLastQuestion)
{
    const LaidOut evening(demoLibrary());
    WhyJob job;
    std::vector<TaskIndex> answered;
    QObject::connect(&job, &WhyJob::answered,
                     [&](const WhyHere& why, const PlanPtr&) { answered.push_back(why.task); });
    std::vector<TaskIndex> steps;
    for (const TaskIndex task : evening.plan->formulation->problem.tasks.indices()) {
        if (evening.plan->formulation->tasks[task].role == TaskRole::Step &&
            evening.plan->schedule.starts[task]) {
            steps.push_back(task);
        }
    }
    ASSERT_GE(steps.size(), 2U);
    job.ask(evening.plan, evening.input(), steps[0]);
    job.ask(evening.plan, evening.input(), steps[1]);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !answered.empty(); }, longEnough));
    EXPECT_EQ(answered, std::vector<TaskIndex>{steps[1]});
}

} // namespace
} // namespace suppertide::ui
