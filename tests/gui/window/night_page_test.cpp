// “On the night” by keyboard: reports are kept at once, the rest is planned anew and said in words,
// all of it can be taken back and is there after a restart; a rehearsal keeps nothing.
#include <QLabel>
#include <QListView>
#include <QPushButton>

#include "tests/gui/window/open_window.h"

namespace suppertide::ui {
namespace {

using namespace Qt::StringLiterals;

class NightPageTest : public test::OpenWindow
{
protected:
    /// The window at a time of the evening's day, in London.
    void openAt(int hour, int minute)
    {
        close();
        time_.set(at(hour, minute));
        auto library = openLibrary(file_, OpenMode::ReadWrite);
        ASSERT_TRUE(library) << library.error().forCook;
        auto document = Document::open(std::move(*library));
        ASSERT_TRUE(document) << document.error().forCook;
        document_ = std::move(*document);
        window_ = std::make_unique<MainWindow>(*document_, theme_, time_, &answers_);
        window_->setGeometry(0, 0, 1440, 900);
        window_->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(window_.get()));
        window_->activateWindow();
        QTest::keyClick(window_.get(), Qt::Key_4, Qt::ControlModifier);
        ASSERT_TRUE(QTest::qWaitFor([this] { return list().isVisible() && rowCount() > 0; }));
    }

    static Instant at(int hour, int minute)
    {
        return TimeZone::find("Europe/London")->instant({{2027, 6, 19}, {hour, minute}});
    }
    [[nodiscard]] QListView& list() const { return part<QListView>(u"nightList"_s); }
    [[nodiscard]] int rowCount() const { return list().model()->rowCount(); }
    [[nodiscard]] QString text(const QString& name) const { return part<QLabel>(name).text(); }
    [[nodiscard]] QStringList rows() const
    {
        QStringList all;
        for (int row = 0; row < rowCount(); ++row) {
            all.push_back(list().model()->index(row, 0).data().toString());
        }
        return all;
    }
    /// Chooses the line with the arrow keys.
    void choose(const QString& words)
    {
        QTest::keyClick(&list(), Qt::Key_Home);
        for (int i = 0; i < rowCount(); ++i) {
            if (list().currentIndex().data().toString().startsWith(words)) {
                return;
            }
            QTest::keyClick(&list(), Qt::Key_Down);
        }
        ADD_FAILURE() << words.toStdString() << " is not in\n" << rows().join(u'\n').toStdString();
    }
    void press(Qt::Key key) { QTest::keyClick(&list(), key); }
    [[nodiscard]] const OccasionRecord& record() const
    {
        return *document_->library().occasions.at(OccasionId{"supper"});
    }
    [[nodiscard]] bool planned() const
    {
        return QTest::qWaitFor([this] {
            const QString news = text(u"nightNews"_s);
            return !news.isEmpty() && !news.startsWith(u"Planning"_s);
        });
    }

    FixedClock time_{at(18, 0)};
};

TEST_F(NightPageTest, SaysWhenItBeginsAndLetsItBeRehearsed)
{
    openAt(9, 0);
    ASSERT_TRUE(QTest::qWaitFor([this] { return !text(u"nightHeadline"_s).isEmpty(); }));
    EXPECT_TRUE(text(u"nightHeadline"_s).startsWith(u"It begins on Saturday 19 June at 15:30"_s))
        << text(u"nightHeadline"_s).toStdString();
    const LibraryState before = document_->library();
    // Hours ahead nothing is reported by a slip of the finger.
    EXPECT_FALSE(part<QPushButton>(u"nightStarted"_s).isEnabled());
    press(Qt::Key_S);
    EXPECT_TRUE(differenceOf(before, document_->library(), {}).parts.empty());
    press(Qt::Key_R);
    ASSERT_TRUE(QTest::qWaitFor([this] { return text(u"nightClock"_s) == u"17:30"_s; }));
    EXPECT_TRUE(text(u"nightHeadline"_s).startsWith(u"Rehearsal. "_s));
    choose(u"Slice and layer"_s);
    press(Qt::Key_S);
    ASSERT_TRUE(planned());
    EXPECT_TRUE(QTest::qWaitFor([this] { return rows().filter(u"until 17:45"_s).size() == 1; }))
        << rows().join(u'\n').toStdString();
    EXPECT_TRUE(differenceOf(before, document_->library(), {}).parts.empty());
    press(Qt::Key_R);
    ASSERT_TRUE(QTest::qWaitFor([this] { return text(u"nightClock"_s) == u"09:00"_s; }));
}

TEST_F(NightPageTest, PlansTheRestWhenAStepIsLateAndSaysWhatChanged)
{
    openAt(18, 6);
    press(Qt::Key_A);
    ASSERT_TRUE(QTest::qWaitFor([this] { return rows().filter(u"Sweep"_s).isEmpty(); }));
    choose(u"Slice and layer"_s);
    press(Qt::Key_S);
    ASSERT_TRUE(planned());
    EXPECT_EQ(record().progress.steps.size(), 3U);
    press(Qt::Key_2);
    ASSERT_TRUE(QTest::qWaitFor([this] { return text(u"nightNews"_s).contains(u"later"_s); }))
        << text(u"nightNews"_s).toStdString();
    EXPECT_TRUE(text(u"nightNews"_s).contains(u"Main: served at 19:42, 12 min later."_s))
        << text(u"nightNews"_s).toStdString();
    // The serving is pinned: that it gives way is offered, and taken.
    EXPECT_EQ(record().occasion.courses[0].serving.clock, (ClockTime{19, 30}));
    ASSERT_TRUE(part<QPushButton>(u"nightTake"_s).isVisible());
    press(Qt::Key_T);
    EXPECT_EQ(record().occasion.courses[0].serving.clock, (ClockTime{19, 42}));
    EXPECT_EQ(record().layout.starts.at("serve/main"), at(19, 42));
    EXPECT_TRUE(QTest::qWaitFor([this] { return rows().filter(u"19:42"_s).size() == 1; }));
}

TEST_F(NightPageTest, TakesAReportBackWithThePlanThatFollowed)
{
    openAt(18, 6);
    press(Qt::Key_A);
    choose(u"Slice and layer"_s);
    press(Qt::Key_S);
    ASSERT_TRUE(planned());
    const OccasionRecord before = record();
    press(Qt::Key_2);
    ASSERT_TRUE(QTest::qWaitFor([this] { return text(u"nightNews"_s).contains(u"later"_s); }));
    ASSERT_NE(record(), before);
    press(Qt::Key_U);
    EXPECT_EQ(record(), before);
}

TEST_F(NightPageTest, TakesBackOnlyWhatWasReportedHere)
{
    openAt(18, 6);
    const OccasionRecord asIs = record();
    OccasionRecord renamed = asIs;
    renamed.occasion.note = "bring ice";
    LibraryState next = document_->library();
    next.occasions[asIs.occasion.id] = std::make_shared<const OccasionRecord>(renamed);
    document_->apply(next, u"Change the note"_s);
    EXPECT_TRUE(QTest::qWaitFor([this] { return !part<QPushButton>(u"nightUndo"_s).isEnabled(); }));
    press(Qt::Key_U);
    EXPECT_EQ(record(), renamed);
}

TEST_F(NightPageTest, DoesNotPlanTheWholeEveningOnceItIsUnderWay)
{
    openAt(18, 6);
    choose(u"Slice and layer"_s);
    press(Qt::Key_S);
    ASSERT_TRUE(planned());
    const OccasionRecord before = record();
    QTest::keyClick(window_.get(), Qt::Key_M, Qt::ControlModifier);
    EXPECT_TRUE(text(u"said"_s).startsWith(u"The evening is under way"_s))
        << text(u"said"_s).toStdString();
    EXPECT_EQ(record(), before);
}

TEST_F(NightPageTest, ComesBackToTheSameMomentAfterARestart)
{
    openAt(18, 6);
    press(Qt::Key_A);
    choose(u"Slice and layer"_s);
    press(Qt::Key_S);
    ASSERT_TRUE(planned());
    ASSERT_TRUE(document_->finishSaving());
    const OccasionRecord before = record();
    const QStringList shown = rows();
    openAt(18, 6);
    EXPECT_EQ(record(), before);
    EXPECT_EQ(rows(), shown);
}

TEST_F(NightPageTest, ShowsWhatIsLateByItselfAsTheClockMoves)
{
    openAt(18, 6);
    press(Qt::Key_A);
    time_.set(at(18, 11));
    ASSERT_TRUE(
        QTest::qWaitFor([this] { return rows().filter(u"5 min late"_s).size() == 1; }, 10'000))
        << rows().join(u'\n').toStdString();
}

TEST_F(NightPageTest, AsksForAnyNumberOfMinutesAndSaysWhatWouldDo)
{
    openAt(18, 6);
    press(Qt::Key_A);
    choose(u"Slice and layer"_s);
    press(Qt::Key_S);
    ASSERT_TRUE(planned());
    answers_.text = u"soon"_s;
    press(Qt::Key_L);
    ASSERT_EQ(answers_.told.size(), 1);
    EXPECT_TRUE(answers_.told.front().contains(u"whole number"_s));
    answers_.text = u"7"_s;
    press(Qt::Key_L);
    EXPECT_EQ(record().progress.steps.at("gratin/*/layer").longer, Minutes{7});
}

TEST_F(NightPageTest, EveryButtonHasAKeyAndSaysSo)
{
    openAt(18, 6);
    for (const char* name : {"nightStarted", "nightDone", "nightUndo", "nightLate5", "nightLate12",
                             "nightLate", "nightLeaveOut", "nightAsPlanned", "nightOven",
                             "nightPlan", "nightFill", "nightRehearse"}) {
        const auto& button = part<QPushButton>(QString::fromLatin1(name));
        EXPECT_TRUE(button.isVisible()) << name;
        EXPECT_FALSE(button.accessibleDescription().isEmpty()) << name;
    }
}

} // namespace
} // namespace suppertide::ui
