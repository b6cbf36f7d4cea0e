// The lists of the demo's evening on a thread of their own: the same as on the spot, and of what is
// asked while a run goes on only the latest is answered.
#include <QCoreApplication>
#include <QTest>

#include <gtest/gtest.h>

#include "tests/support/demo_evening.h"
#include "ui/models/shopping_edits.h"
#include "ui/worker/lists_job.h"

namespace suppertide::ui {
namespace {

constexpr int longEnough = 60'000; // ms: for a busy machine; nothing is measured

class ListsJobTest : public testing::Test
{
protected:
    ListsJobTest()
    {
        QObject::connect(&job_, &ListsJob::listed,
                         [this](const EveningListsPtr& lists) { told_.push_back(lists); });
        QObject::connect(&job_, &ListsJob::failed,
                         [](const Failure& failure) { ADD_FAILURE() << failure.forCook; });
    }
    [[nodiscard]] shopping::ShoppingInput input() const
    {
        return *shoppingInputOf(evening_.library, evening_.plan);
    }
    [[nodiscard]] bool ends()
    {
        return QTest::qWaitFor([this] { return !job_.isRunning(); }, longEnough);
    }

    int argumentCount_ = 0;
    QCoreApplication application_{argumentCount_, nullptr};
    test::LaidOut evening_{test::demoLibrary("sunday-lunch")};
    ListsJob job_;
    std::vector<EveningListsPtr> told_;
};

TEST_F(ListsJobTest, TellsWhatIsWorkedOutOnTheSpot)
{
    job_.start(input());
    EXPECT_TRUE(job_.isRunning());
    EXPECT_TRUE(told_.empty());
    ASSERT_TRUE(ends());
    ASSERT_EQ(told_.size(), 1U);
    EXPECT_FALSE(told_[0]->buy.lines.empty());
    EXPECT_EQ(told_[0]->buy, shopping::shoppingListOf(input()));
    EXPECT_EQ(told_[0]->equipment, shopping::equipmentOf(*evening_.plan));
    EXPECT_EQ(told_[0]->measuring, shopping::miseEnPlaceOf(*evening_.plan));
}

TEST_F(ListsJobTest, AnswersOnlyTheLatestOfWhatIsAskedMeanwhile)
{
    for (const char* currency : {"EUR", "SEK", "CHF"}) {
        shopping::ShoppingInput asked = input();
        asked.larder.currency = currency;
        job_.start(std::move(asked));
    }
    ASSERT_TRUE(ends());
    ASSERT_EQ(told_.size(), 1U);
    EXPECT_EQ(told_[0]->buy.currency, "CHF");
}

TEST_F(ListsJobTest, TellsNothingOfWhatWasDropped)
{
    job_.start(input());
    job_.start(input());
    job_.drop();
    EXPECT_FALSE(job_.isRunning());
    shopping::ShoppingInput without = input();
    without.plan = nullptr;
    job_.start(std::move(without));
    ASSERT_TRUE(ends());
    ASSERT_EQ(told_.size(), 1U);
    EXPECT_TRUE(told_[0]->measuring.empty());
}

} // namespace
} // namespace suppertide::ui
