// Comparing menus on threads of its own, on the demo's lunch.
#include <QCoreApplication>
#include <QTest>

#include <gtest/gtest.h>

#include "tests/support/demo_evening.h"
#include "ui/document/document.h"
#include "ui/worker/compare_job.h"

namespace suppertide::ui {
namespace {

constexpr int longEnough = 60'000; // ms: for a busy machine; nothing is measured

class CompareJobTest : public testing::Test
{
protected:
    CompareJobTest()
    {
        QObject::connect(&job_, &CompareJob::begun,
                         [this](const auto&, const auto& menus) { begun_ = menus.size(); });
        QObject::connect(&job_, &CompareJob::looked, [this](const auto& menus, int done, int toDo) {
            looked_ += menus.size();
            EXPECT_LE(done, toDo);
        });
        QObject::connect(&job_, &CompareJob::finished, [this](bool isStopped) {
            ++ends_;
            wasStopped_ = isStopped;
        });
        QObject::connect(&job_, &CompareJob::failed, [this](const Failure& failure) {
            ++ends_;
            failure_ = failure.forCook;
        });
    }
    [[nodiscard]] static menus::CompareRequest request(const std::string& occasion)
    {
        const LibraryState library = test::demoLibrary(occasion);
        menus::CompareRequest made{*planInputOf(library), {}, {}, 1};
        made.input.recipes = library.recipes;
        made.limits.wallClock = std::chrono::milliseconds{longEnough};
        return made;
    }
    [[nodiscard]] bool ends()
    {
        return QTest::qWaitFor([this] { return ends_ > 0; }, longEnough);
    }

    int argumentCount_ = 0;
    QCoreApplication application_{argumentCount_, nullptr};
    CompareJob job_;
    std::size_t begun_ = 0;
    std::size_t looked_ = 0;
    int ends_ = 0;
    bool wasStopped_ = false;
    std::string failure_;
};

TEST_F(CompareJobTest, TellsAllMenusThenWhatIsKnownOfThem)
{
    job_.start(request("sunday-lunch"));
    EXPECT_TRUE(job_.isRunning());
    ASSERT_TRUE(ends());
    EXPECT_EQ(failure_, "");
    EXPECT_GE(begun_, 1U);
    EXPECT_GE(looked_, begun_);
    EXPECT_FALSE(wasStopped_);
    EXPECT_FALSE(job_.isRunning());
}

TEST_F(CompareJobTest, EndsWhenItIsStoppedAndSaysSo)
{
    job_.start(request("midsummer-supper"));
    job_.stop();
    ASSERT_TRUE(ends());
    EXPECT_TRUE(wasStopped_);
}

TEST_F(CompareJobTest, SaysWhatIsWrongWithTheOccasion)
{
    menus::CompareRequest faulty = request("sunday-lunch");
    faulty.input.recipes.clear();
    job_.start(std::move(faulty));
    ASSERT_TRUE(ends());
    EXPECT_NE(failure_, "");
}

} // namespace
} // namespace suppertide::ui
