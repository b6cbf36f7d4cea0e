// “Temperatures” by keyboard: a food of the supper is chosen, its curve, its limits and what breaks
// a rule are there, the chart is zoomed, read as a table, and opened from a clash at the foot.
#include <QAction>
#include <QChart>
#include <QComboBox>
#include <QLabel>
#include <QListView>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTableView>
#include <QXYSeries>

#include "tests/gui/window/open_window.h"
#include "ui/models/edit.h"
#include "ui/pages/temperatures/temperature_chart.h"

namespace suppertide::ui {
namespace {

using namespace Qt::StringLiterals;

class TemperaturePageTest : public test::OpenWindow
{
protected:
    void SetUp() override
    {
        OpenWindow::SetUp();
        openPage();
    }
    void openPage() const
    {
        QTest::keyClick(window_.get(), Qt::Key_5, Qt::ControlModifier);
        ASSERT_TRUE(part<QWidget>(u"temperaturePage"_s).isVisible());
    }
    /// From the fridge into the oven; `thickness` decides whether its middle gets warm in an hour.
    void follow(Length thickness)
    {
        Recipe gratin = *document_->library().recipes.at(RecipeId{"gratin"});
        FollowedFood food;
        food.id = FollowedFoodId{"layers"};
        food.name = "layers";
        food.kind.food = FoodClass::RawMince;
        food.material = "potato_gratin";
        food.shape = FoodShape::Flat;
        food.thickness = thickness;
        food.mass = 1200_g;
        FoodTreatment layered;
        layered.step = StepId{"layer"};
        FoodTreatment baked;
        baked.step = StepId{"bake"};
        baked.treatment = Treatment::Heat;
        food.steps = {layered, baked};
        gratin.common.foods = {food};
        FollowedFood cream = food;
        cream.id = FollowedFoodId{"cream"};
        cream.name = "cream";
        cream.kind.food = FoodClass::Dairy;
        cream.material.clear();
        gratin.common.foods.push_back(cream);
        document_->apply(withRecipe(document_->library(), gratin), u"Follow the gratin"_s);
        ASSERT_TRUE(QTest::qWaitFor([this] { return subjects().count() == 3; }));
    }
    [[nodiscard]] QComboBox& subjects() const { return part<QComboBox>(u"temperatureSubjects"_s); }
    [[nodiscard]] TemperatureChart& chart() const
    {
        return part<TemperatureChart>(u"temperatureChart"_s);
    }
    [[nodiscard]] QString sentences() const
    {
        return part<QPlainTextEdit>(u"temperatureSentences"_s).toPlainText();
    }
    [[nodiscard]] QStringList names() const
    {
        QStringList all;
        for (int row = 0; row < subjects().count(); ++row) {
            all.push_back(subjects().itemText(row));
        }
        return all;
    }
    /// With the arrow keys.
    void choose(const QString& name) const
    {
        QComboBox& list = subjects();
        list.setFocus(Qt::TabFocusReason);
        QTest::keyClick(&list, Qt::Key_Home);
        for (int i = 0; i < list.count() && list.currentText() != name; ++i) {
            QTest::keyClick(&list, Qt::Key_Down);
        }
        ASSERT_EQ(list.currentText(), name) << names().join(u'\n').toStdString();
    }
    [[nodiscard]] int points() const
    {
        int count = 0;
        for (const auto* series : chart().chart()->series()) {
            count += qobject_cast<const QXYSeries*>(series)->count();
        }
        return count;
    }
    /// The first clash at the foot that temperatures are shown with.
    [[nodiscard]] int clashOfFood() const
    {
        const auto& rows = window_->findChild<ClashPanel*>()->rows();
        for (const ClashRow& row : rows) {
            if (row.temperatures.starts_with("food:")) {
                return row.number;
            }
        }
        return 0;
    }
};

constexpr Length thin = 4_cm;
constexpr Length thick = 16_cm;

TEST_F(TemperaturePageTest, SaysHowToFollowAFoodWhereNoneIs)
{
    EXPECT_TRUE(part<QLabel>(u"temperatureNote"_s).isVisible());
    EXPECT_TRUE(part<QLabel>(u"temperatureNote"_s).text().contains(u"Followed for food safety"_s));
    EXPECT_EQ(names(), QStringList{u"Oven"_s}); // its curve is there all the same
    EXPECT_GT(points(), 4);
    follow(thin);
    EXPECT_FALSE(part<QLabel>(u"temperatureNote"_s).isVisible());
}

TEST_F(TemperaturePageTest, ShowsCurveLimitsAndFindingsOfTheFoodThatIsChosenByKeyboard)
{
    follow(thick);
    choose(u"Potato gratin: layers"_s);
    const TemperatureView& shown = chart().view();
    ASSERT_EQ(shown.curves.size(), 2U);
    EXPECT_GT(points(), 20);
    EXPECT_EQ(chart().chart()->series().size(), 2);
    EXPECT_FALSE(shown.limits.empty());
    EXPECT_FALSE(shown.bands.empty());
    const int number = clashOfFood();
    ASSERT_GT(number, 0);
    const QString broken = clashes().at(number - 1);
    EXPECT_TRUE(sentences().contains(broken)) << sentences().toStdString();
    EXPECT_TRUE(sentences().contains(u"licensed practice prevail"_s));
    EXPECT_TRUE(chart().accessibleDescription().contains(broken));

    choose(u"Oven"_s);
    EXPECT_EQ(chart().view().key, "oven:oven");
}

TEST_F(TemperaturePageTest, FollowsAChangeOfThePlan)
{
    follow(thin);
    choose(u"Potato gratin: layers"_s);
    const TemperatureView before = chart().view();
    follow(thick);
    EXPECT_EQ(chart().view().key, before.key);
    EXPECT_NE(chart().view(), before);
    document_->undoStack().undo();
    ASSERT_TRUE(QTest::qWaitFor([&] { return chart().view() == before; }));
}

TEST_F(TemperaturePageTest, ZoomsAndMovesByKeysAndWheel)
{
    follow(thin);
    choose(u"Potato gratin: layers"_s);
    TemperatureChart& chart = this->chart();
    chart.setFocus(Qt::TabFocusReason);
    const double whole = chart.timeWindow().length();
    QTest::keyClick(&chart, Qt::Key_Plus);
    QTest::keyClick(&chart, Qt::Key_Plus);
    EXPECT_NEAR(chart.timeWindow().length(), whole * 0.49, 1e-6);
    const double from = chart.timeWindow().from();
    QTest::keyClick(&chart, Qt::Key_Right);
    EXPECT_GT(chart.timeWindow().from(), from);
    QTest::keyClick(&chart, Qt::Key_Left);
    EXPECT_NEAR(chart.timeWindow().from(), from, 1e-6);
    QTest::keyClick(&chart, Qt::Key_Minus);
    EXPECT_NEAR(chart.timeWindow().length(), whole * 0.7, 1e-6);
    QTest::keyClick(&chart, Qt::Key_Home);
    EXPECT_TRUE(chart.timeWindow().isWhole());

    const QPoint middle = chart.viewport()->rect().center();
    QWheelEvent turn(middle, chart.viewport()->mapToGlobal(middle), {}, {0, 240}, Qt::NoButton, {},
                     Qt::NoScrollPhase, false);
    QCoreApplication::sendEvent(chart.viewport(), &turn);
    EXPECT_NEAR(chart.timeWindow().length(), whole * 0.64, 1e-6);
    const double shown = chart.timeWindow().from();
    QTest::mousePress(chart.viewport(), Qt::LeftButton, {}, middle);
    QTest::mouseMove(chart.viewport(), middle - QPoint(20, 0));
    QTest::mouseRelease(chart.viewport(), Qt::LeftButton, {}, middle - QPoint(20, 0));
    EXPECT_GT(chart.timeWindow().from(), shown);
}

TEST_F(TemperaturePageTest, CanBeReadAsATable)
{
    follow(thin);
    choose(u"Potato gratin: layers"_s);
    auto& table = part<QTableView>(u"temperatureTable"_s);
    EXPECT_FALSE(table.isVisible());
    auto& toggle = part<QPushButton>(u"temperaturesAsTable"_s);
    toggle.setFocus();
    QTest::keyClick(&toggle, Qt::Key_Space);
    EXPECT_TRUE(table.isVisible());
    EXPECT_EQ(table.model()->rowCount(), static_cast<int>(chart().view().stays.size()));
    EXPECT_EQ(table.model()->headerData(1, Qt::Horizontal).toString(), u"Place"_s);
    EXPECT_FALSE(table.accessibleName().isEmpty());
}

TEST_F(TemperaturePageTest, IsOpenedByADoubleClickOnABrokenRule)
{
    follow(thick);
    choose(u"Oven"_s);
    QTest::keyClick(window_.get(), Qt::Key_1, Qt::ControlModifier);
    EXPECT_FALSE(chart().isVisible());
    const int number = clashOfFood();
    ASSERT_GT(number, 0);
    auto& list = part<QListView>(u"clashes"_s);
    const QModelIndex row = list.model()->index(number - 1, 0);
    list.scrollTo(row);
    // At the right: there the ways out come up between the two clicks. Through the window, which
    // gives the second one to whatever lies there by then.
    const QPoint at = list.viewport()->mapTo(
        window_.get(), QPoint(list.viewport()->width() - 40, list.visualRect(row).center().y()));
    QTest::mouseDClick(window_->windowHandle(), Qt::LeftButton, {}, at);
    EXPECT_TRUE(part<QWidget>(u"waysOut"_s).isVisible());
    EXPECT_TRUE(chart().isVisible());
    EXPECT_EQ(chart().view().key, "food:gratin/*/layers");
}

TEST_F(TemperaturePageTest, IsReadInFahrenheitWhereTheUserChoosesSo)
{
    follow(thin);
    choose(u"Potato gratin: layers"_s);
    EXPECT_TRUE(chart().view().stays.front().first.endsWith(u"°C"_s));
    const auto trigger = [this](const QString& text) {
        for (QAction* action : window_->findChildren<QAction*>()) {
            if (action->text() == text) {
                action->trigger();
                return;
            }
        }
        FAIL() << text.toStdString();
    };
    trigger(u"Te&mperatures in °F"_s);
    EXPECT_TRUE(chart().view().stays.front().first.endsWith(u"°F"_s));
    EXPECT_TRUE(chart().view().isFahrenheit);
    EXPECT_FALSE(document_->undoStack().undoText().contains(u"°"_s)); // it changes no plan
    close();
    open();
    openPage();
    choose(u"Potato gratin: layers"_s);
    EXPECT_TRUE(chart().view().isFahrenheit) << "kept with the library";
    trigger(u"T&emperatures in °C"_s);
    EXPECT_FALSE(chart().view().isFahrenheit);
}

TEST_F(TemperaturePageTest, HasAMenuForWhatTheMouseAndKeysDo)
{
    follow(thin);
    choose(u"Potato gratin: layers"_s);
    EXPECT_EQ(chart().contextMenuPolicy(), Qt::ActionsContextMenu);
    const double whole = chart().timeWindow().length();
    part<QAction>(u"temperaturesCloser"_s).trigger();
    EXPECT_LT(chart().timeWindow().length(), whole);
    part<QAction>(u"temperaturesAll"_s).trigger();
    EXPECT_TRUE(chart().timeWindow().isWhole());
    part<QAction>(u"temperaturesTable"_s).trigger();
    EXPECT_TRUE(part<QTableView>(u"temperatureTable"_s).isVisible());
}

} // namespace
} // namespace suppertide::ui
