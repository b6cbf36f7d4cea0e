#include <gtest/gtest.h>

#include "ui/timeline/block_label.h"

namespace suppertide::ui {
namespace {

SceneBlock braise()
{
    SceneBlock block;
    block.verb = "Braise";
    block.object = "shoulder";
    block.likely = 215_min;
    return block;
}

/// As if every sign were 6 px wide: "Braise shoulder 3 h 35" is 132 px.
LabelRequest request(double room, ZoomStop stop = ZoomStop::Hours)
{
    return {"C", stop, room,
            [](const BlockLabel& label) { return 6.0 * static_cast<double>(label.words.size()); }};
}

std::string wordsIn(double room, ZoomStop stop = ZoomStop::Hours)
{
    const auto label = fittingLabel(braise(), request(room, stop));
    return label ? label->words : "";
}

TEST(BlockLabel, ShortensByWholePartsThenGoes)
{
    EXPECT_EQ(wordsIn(132), "Braise shoulder 3 h 35");
    EXPECT_EQ(wordsIn(131), "Braise shoulder");
    EXPECT_EQ(wordsIn(89), "Braise");
    EXPECT_EQ(wordsIn(35), "C");
    EXPECT_EQ(wordsIn(8), "C");
    EXPECT_EQ(wordsIn(7), "");
}

TEST(BlockLabel, MarksTheLetterAsOne)
{
    EXPECT_TRUE(fittingLabel(braise(), request(20))->isLetter);
    EXPECT_FALSE(fittingLabel(braise(), request(50))->isLetter);
}

TEST(BlockLabel, IsButTheLetterInTheDaysZoom)
{
    EXPECT_EQ(wordsIn(500, ZoomStop::Day), "C");
}

TEST(BlockLabel, HasNoLetterForAHouseJob)
{
    LabelRequest narrow = request(20);
    narrow.letter.clear();
    EXPECT_EQ(fittingLabel(braise(), narrow), std::nullopt);
}

TEST(BlockLabel, LeavesOutAMissingObject)
{
    SceneBlock block = braise();
    block.object.clear();
    EXPECT_EQ(fittingLabel(block, request(500))->words, "Braise 3 h 35");
}

std::vector<std::string> linesIn(double room, ZoomStop stop)
{
    std::vector<std::string> lines;
    for (const BlockLabel& label : fittingLines(braise(), "15:55-19:30", request(room, stop))) {
        lines.push_back(label.words);
    }
    return lines;
}

TEST(BlockLabel, TakesTwoLinesInACooksLane)
{
    using Lines = std::vector<std::string>;
    EXPECT_EQ(linesIn(90, ZoomStop::Hours), Lines{"Braise shoulder"});
    EXPECT_EQ(linesIn(60, ZoomStop::Hours), (Lines{"Braise", "shoulder"}));
    EXPECT_EQ(linesIn(40, ZoomStop::Hours), Lines{"Braise"});
    EXPECT_EQ(linesIn(30, ZoomStop::Hours), Lines{"C"});
    EXPECT_EQ(linesIn(4, ZoomStop::Hours), Lines{});
    EXPECT_EQ(linesIn(90, ZoomStop::QuarterHours), (Lines{"Braise shoulder", "15:55-19:30"}));
}

TEST(LabelRoom, BeginsRightOfTheStem)
{
    EXPECT_EQ(labelRoom(100, 200, 0, std::nullopt), (std::pair{113.0, 200.0}));
}

TEST(LabelRoom, StaysInViewOnABlockThatBeganBefore)
{
    EXPECT_EQ(labelRoom(20, 200, 122, std::nullopt), (std::pair{126.0, 200.0}));
}

TEST(LabelRoom, KeepsToTheWiderSideOfTheNowLine)
{
    EXPECT_EQ(labelRoom(100, 200, 0, 120), (std::pair{125.0, 200.0}));
    EXPECT_EQ(labelRoom(100, 200, 0, 190), (std::pair{113.0, 187.0}));
    EXPECT_EQ(labelRoom(100, 200, 0, 300), (std::pair{113.0, 200.0}));
}

} // namespace
} // namespace suppertide::ui
