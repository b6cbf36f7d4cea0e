// Planning on a thread of its own, on the demo's lunch.
#include <QCoreApplication>
#include <QTest>

#include <gtest/gtest.h>

#include <vector>

#include "tests/support/demo_evening.h"
#include "tests/support/memory_library.h"
#include "ui/document/document.h"
#include "ui/models/layout_edits.h"
#include "ui/worker/plan_job.h"

namespace suppertide::ui {
namespace {

using test::demoLibrary;
using test::LaidOut;

constexpr int longEnough = 60'000; // ms: for a busy machine; nothing is measured

class PlanJobTest : public testing::Test
{
protected:
    PlanJobTest()
    {
        QObject::connect(&job_, &PlanJob::progressed,
                         [this](const PlanProgress& made) { progress_.push_back(made); });
        QObject::connect(&job_, &PlanJob::finished,
                         [this](const PlanOutcome& outcome, quint64 revision) {
                             outcomes_.push_back(outcome);
                             revisions_.push_back(revision);
                         });
        QObject::connect(&job_, &PlanJob::failed,
                         [this](const Failure& failure) { failures_.push_back(failure); });
    }
    [[nodiscard]] PlanRequest request(const std::string& occasion, std::int64_t steps,
                                      std::uint64_t revision = 1) const
    {
        PlanRequest made{*planInputOf(demoLibrary(occasion)), {}, revision};
        made.limits.wallClock = std::chrono::milliseconds{longEnough};
        made.limits.steps = steps;
        return made;
    }
    [[nodiscard]] bool ends()
    {
        return QTest::qWaitFor([this] { return !outcomes_.empty() || !failures_.empty(); },
                               longEnough);
    }
    [[nodiscard]] static PlanPtr bestOf(const PlanOutcome& outcome)
    {
        if (const auto* found = std::get_if<PlanFound>(&outcome)) {
            return found->plan;
        }
        const auto* stopped = std::get_if<Stopped>(&outcome);
        return stopped != nullptr ? stopped->best : nullptr;
    }

    static constexpr std::int64_t fewSteps = 20'000;
    static constexpr std::int64_t endless = std::numeric_limits<std::int64_t>::max();

    int argumentCount_ = 0;
    QCoreApplication application_{argumentCount_, nullptr};
    std::vector<PlanProgress> progress_;
    std::vector<PlanOutcome> outcomes_;
    std::vector<quint64> revisions_;
    std::vector<Failure> failures_;
    PlanJob job_;
};

TEST_F(PlanJobTest, ReportsBetterPlansAndThenTheBestWithItsRevision)
{
    job_.start(request("sunday-lunch", fewSteps, 7));
    EXPECT_TRUE(job_.isRunning());
    ASSERT_TRUE(ends());
    EXPECT_FALSE(job_.isRunning());
    ASSERT_EQ(outcomes_.size(), 1U);
    EXPECT_EQ(revisions_.front(), 7U);
    const PlanPtr best = bestOf(outcomes_.front());
    ASSERT_NE(best, nullptr);
    EXPECT_TRUE(best->holds());
    const bool hasBetter = std::any_of(progress_.begin(), progress_.end(),
                                       [](const PlanProgress& made) { return made.better; });
    EXPECT_TRUE(hasBetter);
}

TEST_F(PlanJobTest, EndsSoonAfterItIsStopped)
{
    job_.start(request("midsummer-supper-first-idea", endless));
    job_.stop();
    ASSERT_TRUE(ends());
    ASSERT_EQ(outcomes_.size(), 1U);
    EXPECT_TRUE(std::holds_alternative<Stopped>(outcomes_.front())) << "never called the best";
    EXPECT_FALSE(job_.isRunning());
}

TEST_F(PlanJobTest, ReportsOnlyTheLastOfTwoRuns)
{
    job_.start(request("midsummer-supper", endless, 1));
    job_.start(request("sunday-lunch", fewSteps, 2));
    ASSERT_TRUE(ends());
    EXPECT_EQ(revisions_, (std::vector<quint64>{2}));
    ASSERT_NE(bestOf(outcomes_.front()), nullptr);
}

TEST_F(PlanJobTest, SaysInAFailureWhyAFaultyEveningCannotBePlanned)
{
    PlanRequest faulty = request("sunday-lunch", fewSteps);
    faulty.input.recipes.clear();
    job_.start(faulty);
    ASSERT_TRUE(ends());
    EXPECT_TRUE(outcomes_.empty());
    ASSERT_EQ(failures_.size(), 1U);
    EXPECT_FALSE(failures_.front().forCook.empty());
}

TEST_F(PlanJobTest, MayGoWhileItRuns)
{
    PlanJob other;
    other.start(request("midsummer-supper", endless));
}

TEST_F(PlanJobTest, MakesAPlanThatCanBeTakenAndUndone)
{
    const auto memory = std::make_shared<suppertide::test::Memory>();
    memory->state = demoLibrary("sunday-lunch");
    auto opened = Document::open(std::make_unique<suppertide::test::MemoryLibrary>(memory));
    ASSERT_TRUE(opened);
    Document& document = **opened;
    job_.start(request("sunday-lunch", fewSteps));
    ASSERT_TRUE(ends());
    const PlanPtr best = bestOf(outcomes_.front());
    ASSERT_NE(best, nullptr);
    const LibraryState before = document.library();
    Edit edit = takePlan(before, *best, QStringLiteral("Make plan"));
    document.apply(std::move(edit.next), edit.text);
    const LaidOut shown(document.library());
    EXPECT_EQ(shown.plan->schedule.starts, best->schedule.starts);
    EXPECT_TRUE(shown.plan->holds()) << "laid out by hand it holds as it did when planned";
    document.undoStack().undo();
    EXPECT_EQ(document.library(), before);
    document.undoStack().redo();
    EXPECT_EQ(LaidOut(document.library()).plan->schedule.starts, best->schedule.starts);
}

} // namespace
} // namespace suppertide::ui
