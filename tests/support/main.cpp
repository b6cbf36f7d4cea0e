// The one main of all test programs: GoogleTest, plus the rule that a test fails on any warning or
// error in the log that it did not announce (log::takeComplaints).
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/base/log.h"

namespace {

class NoUnannouncedComplaints : public testing::EmptyTestEventListener
{
    void OnTestStart(const testing::TestInfo& /*info*/) override
    {
        static_cast<void>(suppertide::log::takeComplaints());
    }
    void OnTestEnd(const testing::TestInfo& /*info*/) override
    {
        for (const std::string& complaint : suppertide::log::takeComplaints()) {
            ADD_FAILURE() << "unannounced complaint in the log: " << complaint;
        }
    }
};

} // namespace

int main(int argc, char** argv)
{
    testing::InitGoogleMock(&argc, argv);
    // GoogleTest owns the listener from here on.
    testing::UnitTest::GetInstance()->listeners().Append(new NoUnannouncedComplaints);
    return RUN_ALL_TESTS();
}
