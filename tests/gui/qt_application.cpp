// Gives each test program that has windows its one QApplication, for as long as the tests run.
#include <QApplication>

#include <gtest/gtest.h>

#include <memory>

namespace {

class QtApplication : public testing::Environment
{
public:
    void SetUp() override { application_ = std::make_unique<QApplication>(count_, arguments_); }
    void TearDown() override { application_.reset(); }

private:
    int count_ = 1;
    char name_[16] = "suppertide-test";
    char* arguments_[2] = {name_, nullptr};
    std::unique_ptr<QApplication> application_;
};

// GoogleTest owns it from here on.
[[maybe_unused]] const testing::Environment* const registered =
    testing::AddGlobalTestEnvironment(new QtApplication);

} // namespace
