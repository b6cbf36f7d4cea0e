// The dialogs of WidgetPrompts, answered as a user would.
#include <QAbstractButton>
#include <QDialog>
#include <QLineEdit>
#include <QTimer>

#include <gtest/gtest.h>

#include "tests/gui/panels/reach.h"
#include "ui/prompts/prompts.h"

namespace suppertide::ui {
namespace {

class Dialogs : public testing::Test
{
protected:
    void SetUp() override { ASSERT_TRUE(test::becomesActive(window_)); }

    /// Calls `answer` with the dialog as soon as one is up; what it lacks is kept.
    template <typename Answer>
    void answerNext(const Answer& answer)
    {
        waiting_.setInterval(10);
        QObject::connect(&waiting_, &QTimer::timeout, &window_, [this, answer] {
            if (auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget())) {
                waiting_.stop();
                waiting_.disconnect();
                nameless_ = test::withoutName(*dialog);
                answer(*dialog);
            }
        });
        waiting_.start();
    }
    static void press(const QDialog& dialog, const QString& text)
    {
        for (auto* button : dialog.findChildren<QAbstractButton*>()) {
            if (button->text().remove(QLatin1Char('&')) == text) {
                QTest::mouseClick(button, Qt::LeftButton);
                return;
            }
        }
        ADD_FAILURE() << "no button says " << text.toStdString();
    }

    QWidget window_;
    WidgetPrompts prompts_{window_};
    QTimer waiting_;
    QStringList nameless_;
};

TEST_F(Dialogs, AgreeOnlyByTheButtonThatSaysSo)
{
    answerNext([](QDialog& dialog) { press(dialog, "Delete"); });
    EXPECT_TRUE(prompts_.confirm("Delete", "Delete the supper?", "Delete"));
    answerNext([](QDialog& dialog) { press(dialog, "Cancel"); });
    EXPECT_FALSE(prompts_.confirm("Delete", "Delete the supper?", "Delete"));
    answerNext([](QDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Escape); });
    EXPECT_FALSE(prompts_.confirm("Delete", "Delete the supper?", "Delete"));
    answerNext([](QDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Return); });
    EXPECT_FALSE(prompts_.confirm("Delete", "Delete the supper?", "Delete"))
        << "a stray Enter deletes nothing";
    EXPECT_EQ(nameless_, QStringList());
}

TEST_F(Dialogs, TakeATextWithoutSpaceAroundIt)
{
    answerNext([](QDialog& dialog) {
        auto* input = dialog.findChild<QLineEdit*>();
        input->selectAll();
        QTest::keyClicks(input, "  Harvest supper ");
        QTest::keyClick(input, Qt::Key_Return);
    });
    EXPECT_EQ(prompts_.askText("New occasion", "Name", "Supper"), "Harvest supper");
    EXPECT_EQ(nameless_, QStringList());
    answerNext([](QDialog& dialog) {
        dialog.findChild<QLineEdit*>()->clear();
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    EXPECT_EQ(prompts_.askText("New occasion", "Name", "Supper"), std::nullopt);
    answerNext([](QDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Escape); });
    EXPECT_EQ(prompts_.askText("New occasion", "Name", "Supper"), std::nullopt);
}

TEST_F(Dialogs, ChooseTheOptionShownAndNoneOnEscape)
{
    answerNext([](QDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Return); });
    EXPECT_EQ(prompts_.choose("Open", "Occasion", {"Lunch", "Supper"}, 1), 1);
    EXPECT_EQ(nameless_, QStringList());
    answerNext([](QDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Escape); });
    EXPECT_EQ(prompts_.choose("Open", "Occasion", {"Lunch", "Supper"}, 1), std::nullopt);
}

TEST_F(Dialogs, TellAndGoAtEnter)
{
    bool isSeen = false;
    answerNext([&isSeen](QDialog& dialog) {
        isSeen = true;
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    prompts_.tell("Saved", "The plan is on paper.");
    EXPECT_TRUE(isSeen);
}

} // namespace
} // namespace suppertide::ui
