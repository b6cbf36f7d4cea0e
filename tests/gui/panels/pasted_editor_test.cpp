// Pasted ingredient lines: what is read of them is seen before it is taken by a key or a click,
// what is not read stays, and taking is one change that can be undone.
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>

#include <gtest/gtest.h>

#include "tests/gui/panels/reach.h"
#include "tests/support/demo_evening.h"
#include "tests/support/memory_library.h"
#include "ui/document/document.h"
#include "ui/models/recipe_outline.h"
#include "ui/pages/outline/outline_page.h"

namespace suppertide::ui {
namespace {

using suppertide::test::Memory;
using suppertide::test::MemoryLibrary;

class PastePage : public testing::Test
{
protected:
    void SetUp() override
    {
        auto opened = Document::open(std::make_unique<MemoryLibrary>(memory_));
        ASSERT_TRUE(opened);
        document_ = std::move(*opened);
        page_ = std::make_unique<OutlinePage>("Recipe", std::make_unique<RecipeOutline>(id_),
                                              *document_, makeTheme(Appearance::Light));
        page_->resize(420, 900);
        page_->refresh();
        ASSERT_TRUE(test::becomesActive(*page_));
        page_->select("recipe");
    }
    template <typename Widget>
    [[nodiscard]] Widget& part(const char* name) const
    {
        const auto* editor = page_->findChild<QWidget*>("field.paste");
        auto* found = editor == nullptr ? nullptr : editor->findChild<Widget*>(name);
        if (found == nullptr) {
            throw std::runtime_error(name);
        }
        return *found;
    }
    [[nodiscard]] QPlainTextEdit& input() const
    {
        auto* editor = page_->findChild<QWidget*>("field.paste");
        return *editor->findChild<QPlainTextEdit*>();
    }
    [[nodiscard]] bool isReadAs(const char* words) const
    {
        const QLabel& preview = part<QLabel>("pastedPreview");
        return QTest::qWaitFor([&] { return preview.text().contains(QString::fromUtf8(words)); });
    }
    [[nodiscard]] std::size_t lines() const
    {
        return document_->library().recipes.at(id_)->common.lines.size();
    }

    const RecipeId id_{"rhubarb-pavlova"};
    std::shared_ptr<Memory> memory_ = [] {
        auto memory = std::make_shared<Memory>();
        memory->state = test::demoLibrary();
        return memory;
    }();
    std::unique_ptr<Document> document_;
    std::unique_ptr<OutlinePage> page_;
};

TEST_F(PastePage, ShowsWhatIsReadAndTakesItOnAKey)
{
    const std::size_t before = lines();
    EXPECT_FALSE(part<QPushButton>("pastedTake").isVisible());
    input().setFocus(Qt::TabFocusReason);
    QTest::keyClicks(&input(), "250 g ground almonds, sieved");
    QTest::keyClick(&input(), Qt::Key_Return);
    QTest::keyClicks(&input(), "For the top:");
    ASSERT_TRUE(isReadAs("ground almonds"));
    EXPECT_TRUE(isReadAs("not read"));
    EXPECT_EQ(lines(), before) << "only seen, not yet taken";
    QPushButton& take = part<QPushButton>("pastedTake");
    EXPECT_EQ(take.text(), QStringLiteral("Take 1 ingredient"));
    QTest::keyClick(&input(), Qt::Key_Tab);
    EXPECT_TRUE(take.hasFocus());
    QTest::keyClick(&take, Qt::Key_Space);
    ASSERT_EQ(lines(), before + 1);
    const IngredientLine& line = document_->library().recipes.at(id_)->common.lines.back();
    EXPECT_EQ(line.ingredient, "ground almonds");
    EXPECT_EQ(line.note, "sieved");
    EXPECT_EQ(input().toPlainText(), QStringLiteral("For the top:"));
    document_->undoStack().undo();
    EXPECT_EQ(lines(), before);
}

TEST_F(PastePage, TakesNothingWhenTheFieldIsLeft)
{
    const std::size_t before = lines();
    input().setFocus(Qt::TabFocusReason);
    QTest::keyClicks(&input(), "2 eggs");
    ASSERT_TRUE(isReadAs("egg"));
    page_->select("lines");
    EXPECT_EQ(lines(), before);
    EXPECT_EQ(document_->undoStack().count(), 0);
}

TEST_F(PastePage, ReadsALongListWithoutHoldingAnythingUp)
{
    QString text;
    for (int i = 1; i <= 120; ++i) {
        text += QStringLiteral("%1 g sugar number %1, sifted\n").arg(i);
    }
    input().setPlainText(text);
    ASSERT_TRUE(isReadAs("120 g"));
    EXPECT_EQ(part<QPushButton>("pastedTake").text(), QStringLiteral("Take 120 ingredients"));
}

} // namespace
} // namespace suppertide::ui
