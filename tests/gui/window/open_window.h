// OpenWindow: the main window on a library file of its own, with a small supper of two dishes in
// it; driven by events of mouse and keyboard as the window system sends them.
#pragma once

#include <QApplication>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <QWindow>

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <memory>
#include <ostream>
#include <stdexcept>
#include <string>

#include "core/base/clock.h"
#include "core/exchange/exchange.h"
#include "core/store/sqlite_library.h"
#include "tests/gui/window/answers.h"
#include "ui/clashes/clash_panel.h"
#include "ui/document/document.h"
#include "ui/models/edit.h"
#include "ui/models/repertoire.h"
#include "ui/theme/application_theme.h"
#include "ui/timeline/target_box.h"
#include "ui/timeline/timeline_view.h"
#include "ui/window/main_window.h"

// For GoogleTest, which looks for it beside QString.
inline void PrintTo(const QString& text, std::ostream* out)
{
    *out << '"' << text.toStdString() << '"';
}

namespace suppertide::ui::test {

/// Noon of 1 June 2027, UTC: before the supper.
class NoonInJune final : public Clock
{
public:
    [[nodiscard]] Instant now() const override
    {
        return TimeZone::utc().instant(CivilTime{{2027, 6, 1}, {12, 0}});
    }
};

class OpenWindow : public testing::Test
{
protected:
    void SetUp() override
    {
        ASSERT_TRUE(folder_.isValid());
        file_ = std::filesystem::path(folder_.path().toStdString()) / "supper.suppertide";
        const auto content = readExchangeFile(std::filesystem::path(SUPPERTIDE_SOURCE_DIR) /
                                              "tests/gui/window/two_dishes.json");
        ASSERT_TRUE(content) << content.error().forCook;
        LibraryState state = imported({}, *content);
        state.open = OccasionId{"supper"};
        ASSERT_TRUE(makeLibrary(file_, state));
        open();
    }

    void open()
    {
        auto library = openLibrary(file_, OpenMode::ReadWrite);
        ASSERT_TRUE(library) << library.error().forCook;
        auto document = Document::open(std::move(*library));
        ASSERT_TRUE(document) << document.error().forCook;
        document_ = std::move(*document);
        window_ = std::make_unique<MainWindow>(*document_, theme_, clock_, &answers_);
        window_->setGeometry(0, 0, 1440, 900);
        window_->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(window_.get()));
        window_->activateWindow();
    }
    void close()
    {
        window_->close();
        window_.reset();
        document_.reset();
    }

    template <typename Widget>
    [[nodiscard]] Widget& part(const QString& name) const
    {
        auto* found = window_->findChild<Widget*>(name);
        if (found == nullptr) {
            throw std::logic_error("no part of the window is named " + name.toStdString());
        }
        return *found;
    }
    [[nodiscard]] TimelineView& timeline() const
    {
        return part<TimelineView>(QStringLiteral("timeline"));
    }
    [[nodiscard]] QStringList clashes() const
    {
        QStringList sentences;
        for (const ClashRow& row : window_->findChild<ClashPanel*>()->rows()) {
            sentences.push_back(row.sentence);
        }
        return sentences;
    }

    /// Roots as an alternative to the gratin.
    void offerRoots()
    {
        document_->apply(
            withOccasion(document_->library(),
                         [](Occasion& occasion) {
                             Course& main = occasion.courses.front();
                             main.alternatives.push_back({AlternativeId{"roots"}, "Roots"});
                             Dish dish;
                             dish.id = DishId{"roots"};
                             dish.recipe = RecipeId{"roots"};
                             dish.alternative = AlternativeId{"roots"};
                             main.dishes.push_back(dish);
                         }),
            QStringLiteral("Add roots"));
    }
    void press(const QString& name) const
    {
        auto& button = part<QPushButton>(name);
        button.setFocus(Qt::TabFocusReason);
        QTest::keyClick(&button, Qt::Key_Space);
    }
    [[nodiscard]] const Occasion& occasion() const
    {
        return openOccasion(document_->library())->occasion;
    }
    [[nodiscard]] Portions portions(std::size_t dish) const
    {
        return portionsOf(occasion().courses.front().dishes[dish]);
    }

    /// The first block of a task, in the window's coordinates.
    [[nodiscard]] QPoint onBlock(const std::string& task) const
    {
        const TimelineView& view = timeline();
        for (const SceneBlock& block : view.state().scene().blocks) {
            if (block.id == task && !block.places.empty()) {
                const auto box = boxOfTarget(view.state().scene(), view.state().geometry(),
                                             BlockTarget{task, block.places.front().lane});
                if (box) {
                    // Left of the middle: a label may be written there, an end may be dragged.
                    const QPointF point{box->left + (box->right - box->left) * 0.4,
                                        (box->top + box->bottom) / 2};
                    return view.mapTo(window_.get(), point.toPoint());
                }
            }
        }
        ADD_FAILURE() << "no block of " << task;
        return {};
    }
    [[nodiscard]] int pixels(Minutes minutes) const
    {
        const double hour = timeline().state().viewport().pixelsPerHour;
        return static_cast<int>(std::lround(static_cast<double>(minutes.count()) * hour / 60));
    }

    /// Presses, moves in steps and lets go, through the window system's queue of events.
    void drag(const QPoint& from, const QPoint& to)
    {
        dragAndLook(from, to, [] {});
    }

    /// The same; `look` runs at the end of the way, before the button is let go.
    template <typename Look>
    void dragAndLook(const QPoint& from, const QPoint& to, Look look)
    {
        QWindow* window = window_->windowHandle();
        constexpr int moves = 8;
        QTest::mouseMove(window, from);
        QTest::mousePress(window, Qt::LeftButton, {}, from);
        for (int move = 1; move <= moves; ++move) {
            QTest::mouseMove(window, from + (to - from) * move / moves);
        }
        look();
        QTest::mouseRelease(window, Qt::LeftButton, {}, to);
        QCoreApplication::processEvents();
    }

    QTemporaryDir folder_;
    std::filesystem::path file_;
    NoonInJune clock_;
    Answers answers_;
    ApplicationTheme theme_{*qobject_cast<QApplication*>(QCoreApplication::instance())};
    std::unique_ptr<Document> document_;
    std::unique_ptr<MainWindow> window_;
};

} // namespace suppertide::ui::test
