#include <QLabel>

#include "tests/gui/window/open_window.h"

namespace suppertide::ui {
namespace {

using SecondWindow = test::OpenWindow;

TEST_F(SecondWindow, SaysInOneSentenceThatItCanOnlyLook)
{
    auto library = openLibrary(file_, OpenMode::ReadWrite);
    ASSERT_TRUE(library) << library.error().forCook;
    auto document = Document::open(std::move(*library));
    ASSERT_TRUE(document) << document.error().forCook;
    MainWindow second{**document, theme_, clock_, &answers_};
    second.show();

    EXPECT_TRUE(second.findChild<QLabel*>(QStringLiteral("said"))
                    ->text()
                    .contains(QStringLiteral("has this library open")));
    const LibraryState before = (*document)->library();
    LibraryState changed = before;
    changed.open.reset();
    (*document)->apply(changed, QStringLiteral("Close it"));
    EXPECT_TRUE(differenceOf(before, (*document)->library(), {}).parts.empty());
    ASSERT_EQ(answers_.told.size(), 1);
    EXPECT_TRUE(answers_.told.front().contains(QStringLiteral("Close it there")));
}

TEST_F(SecondWindow, CanWriteOnceTheFirstIsClosed)
{
    close();
    open();
    EXPECT_EQ(document_->saveState(), SaveState::Saved);
}

} // namespace
} // namespace suppertide::ui
