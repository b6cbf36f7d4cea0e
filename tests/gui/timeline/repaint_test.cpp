// What is repainted when one scene follows another must be all that looks different: compared
// pixel by pixel with a painting from scratch, so that nothing stale is ever left on the screen.
#include <QImage>
#include <QPainter>

#include "tests/gui/timeline/timeline_window.h"
#include "tests/support/for_each_seed.h"
#include "ui/timeline/painter.h"

namespace suppertide::ui {
namespace {

using suppertide::test::forEachSeed;
using suppertide::test::Random;
using test::at;
using test::Day;

/// The edges of slanting lines are rounded a level or two differently under another clip; what is
/// stale differs by far more.
bool isUnlike(QRgb a, QRgb b)
{
    constexpr int rounding = 8; // of 255
    return std::abs(qRed(a) - qRed(b)) > rounding || std::abs(qGreen(a) - qGreen(b)) > rounding ||
           std::abs(qBlue(a) - qBlue(b)) > rounding;
}

class Repaint : public testing::Test
{
protected:
    Repaint()
    {
        state_.resize(width, height);
        state_.setText(1, longestLaneName(test::exampleScene(), theme_, texts_));
        state_.setScene(test::exampleScene());
        state_.show({at(Day::Saturday, 15, 20), at(Day::Saturday, 21, 40)});
    }

    [[nodiscard]] QImage painted()
    {
        QImage image{width, height, QImage::Format_RGB32};
        paintOn(image, image.rect());
        return image;
    }
    void paintOn(QImage& image, const QRect& dirty)
    {
        const auto flags = flagsOf(state_.scene(), state_.geometry(), theme_, texts_);
        QPainter painter{&image};
        painter.setClipRect(dirty);
        paintTimeline(painter, {state_.scene(), state_.geometry(), theme_, state_.marks(), flags},
                      texts_, dirty);
    }
    /// Repaints `before` where `damage` says, and compares it with a painting from scratch.
    void expectNothingStale(QImage before, const Damage& damage)
    {
        QRegion region;
        for (const Box& box : damage.boxes) {
            region += QRectF{box.left, box.top, box.width(), box.height()}.toAlignedRect().adjusted(
                -2, -2, 2, 2);
        }
        region = damage.isAll ? QRegion{before.rect()} : region.intersected(before.rect());
        for (const QRect& rect : region) {
            paintOn(before, rect);
        }
        expectAlike(before, painted(), before.rect());
    }
    static void expectAlike(const QImage& repainted, const QImage& fresh, const QRect& where)
    {
        QRect unlike;
        for (int y = where.top(); y <= where.bottom(); ++y) {
            for (int x = where.left(); x <= where.right(); ++x) {
                if (isUnlike(repainted.pixel(x, y), fresh.pixel(x, y))) {
                    unlike |= QRect{x, y, 1, 1};
                }
            }
        }
        EXPECT_TRUE(unlike.isNull()) << "stale from " << unlike.left() << "," << unlike.top()
                                     << " to " << unlike.right() << "," << unlike.bottom();
    }

    [[nodiscard]] Scene withAnyStepMoved(Random& random) const
    {
        const auto& blocks = state_.scene().blocks;
        const auto which = static_cast<std::size_t>(
            random.between(0, static_cast<std::int64_t>(blocks.size()) - 1));
        const PlanTime start = at(Day::Saturday, 15, 30) + Minutes{random.between(0, 70) * 5};
        return state_.withBlockAt(blocks[which].id, start);
    }

    static constexpr int width = 1068;
    static constexpr int height = 568;
    Theme theme_ = makeTheme(Appearance::Light);
    TextCache texts_;
    TimelineState state_;
};

TEST_F(Repaint, LeavesNothingStaleWhenAnyStepMoves)
{
    state_.holdPleats(true);
    forEachSeed(60, [&](Random& random) {
        state_.setScene(test::exampleScene());
        for (std::int64_t moved = random.between(0, 8); moved > 0; --moved) {
            state_.setScene(withAnyStepMoved(random));
        }
        const QImage before = painted();
        expectNothingStale(before, state_.setScene(withAnyStepMoved(random)));
    });
}

// A drag repaints whatever part of a clash it touches: no part may look unlike the whole.
TEST_F(Repaint, PaintsASlantTheSameWhateverPartIsPainted)
{
    const QImage whole = painted();
    for (const BlockShape& shape : state_.geometry().blocks()) {
        const QRect slant =
            QRectF{shape.least, shape.top, shape.most - shape.least, shape.bottom - shape.top}
                .toAlignedRect()
                .adjusted(-3, -3, 3, 3)
                .intersected(whole.rect());
        for (int x = slant.left(); x <= slant.right(); ++x) {
            for (int y = slant.top(); y <= slant.bottom(); ++y) {
                QImage parts = whole;
                const QRect part = QRect{x, y, 40, 30}.intersected(whole.rect());
                paintOn(parts, part);
                expectAlike(parts, whole, part);
            }
        }
        ASSERT_FALSE(HasFailure()) << state_.scene().blocks[shape.block].id;
    }
}

TEST_F(Repaint, LeavesNothingStaleWhenAStepMovesWithItsWaitsAndClashes)
{
    state_.holdPleats(true);
    for (const int minutes : {-60, -30, -5, 5, 10, 45}) {
        const QImage before = painted();
        Scene scene = state_.withBlockAt("fill", at(Day::Saturday, 19, 40) + Minutes{minutes});
        for (SceneWait& wait : scene.waits) {
            if (wait.to == "fill") {
                wait.when.end = findBlock(scene, "fill")->start;
            }
        }
        if (minutes < -30) {
            std::erase_if(scene.clashes, [](const SceneClash& clash) { return clash.number == 2; });
        }
        expectNothingStale(before, state_.setScene(scene));
    }
}

TEST_F(Repaint, LeavesNothingStaleWhenADragBeginsAndEnds)
{
    const QImage before = painted();
    expectNothingStale(before, state_.setScene(test::exampleScene(true)));
    const QImage during = painted();
    expectNothingStale(during, state_.setScene(test::exampleScene()));
}

TEST_F(Repaint, LeavesNothingStaleWhateverIsPointedAt)
{
    std::vector<Marks> all(7);
    all[1].hovered = BlockTarget{"braise", "oven"};
    all[2].selected = "braise";
    all[3].selected = "fill";
    all[3].hovered = FlagTarget{2};
    all[4].focused = BlockTarget{"whip", "mixer"};
    all[4].hasKeyboard = true;
    all[5].focused = FlagTarget{3};
    all[5].hasKeyboard = true;
    all[6].dragged = "cream";
    for (const Marks& marks : all) {
        const QImage before = painted();
        expectNothingStale(before, state_.setMarks(marks));
    }
}

} // namespace
} // namespace suppertide::ui
