// What the page of temperatures shows of a pot of stock that cools on its own, of the same pot in
// iced water, of a pie of which nothing is computed, and of the oven that bakes it.
#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

#include "core/problem/oven_curve.h"
#include "tests/support/supper/supper.h"
#include "ui/models/temperature_curves.h"

namespace suppertide::ui {
namespace {

using safety::RuleBook;
using test::after;
using test::inOven;
using test::recipeInOrder;
using test::slug;
using test::step;
using test::Supper;
using testing::Contains;
using testing::DoubleNear;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

FoodTreatment does(const std::string& text, Treatment treatment)
{
    FoodTreatment result;
    result.step = StepId{slug(text)};
    result.treatment = treatment;
    return result;
}

FollowedFood followed(const std::string& name, FoodClass kind, std::vector<FoodTreatment> steps)
{
    FollowedFood food;
    food.id = FollowedFoodId{slug(name)};
    food.name = name;
    food.kind.food = kind;
    food.steps = std::move(steps);
    return food;
}

/// Six litres, boiled in the morning, kept in the fridge and heated up for the evening.
Recipe stock(bool inIcedWater)
{
    FollowedFood pot =
        followed("stock", FoodClass::GravyOrBroth, {does("Boil bones", Treatment::Boil)});
    pot.material = "stock";
    pot.shape = FoodShape::Stirred;
    pot.thickness = 16_cm;
    pot.mass = 6000_g;
    pot.isOnePiece = true;
    pot.scaling = Scaling::Fixed;
    std::vector<Step> steps{test::with(step("Boil bones", 60_min, keepAnEye), BurnerUse{20_cm})};
    if (inIcedWater) {
        steps.push_back(step("Stir over ice", 100_min, keepAnEye));
        pot.steps.push_back(does("Stir over ice", Treatment::IceBath));
    }
    steps.push_back(test::with(step("Heat up", 10_min, keepAnEye), BurnerUse{20_cm}));
    FoodTreatment again = does("Heat up", Treatment::Boil);
    again.isReheating = true;
    pot.steps.push_back(again);
    Recipe result = recipeInOrder("Lamb broth", std::move(steps));
    Wait wait = test::waitBetween("chills", inIcedWater ? "Stir over ice" : "Boil bones", "Heat up",
                                  1_min, 2000_min);
    wait.keep = {test::inFridge(6_l)};
    result.common.waits = {wait};
    result.common.foods = {pot};
    return result;
}

/// Nobody has said what it is made of, so that only its minutes are counted.
Recipe pie()
{
    Recipe result = recipeInOrder("Apple pie", {inOven("Bake", 60_min, 170_degC, 190_degC)});
    result.common.foods = {followed("pie", FoodClass::CookedDish, {does("Bake", Treatment::Heat)})};
    return result;
}

class TemperatureCurvesTest : public testing::Test
{
protected:
    void cook(bool inIcedWater, RuleBook book = RuleBook::UsHome)
    {
        supper_ = Supper();
        supper_.occasion.preferences.rules = book;
        supper_.serve(pie());
        supper_.serve(stock(inIcedWater));
        supper_.put("lamb-broth/*/boil-bones", 9, 0);
        supper_.put("lamb-broth/*/stir-over-ice", 10, 0);
        supper_.put("lamb-broth/*/heat-up", 19, 20);
        plan_ = supper_.laidOut();
    }
    [[nodiscard]] TemperatureCurves curves() const { return {plan_, supper_.input()}; }
    [[nodiscard]] TemperatureView view(const std::string& key) const
    {
        const auto found = curves().viewOf(key);
        if (!found) {
            throw std::logic_error("there is no " + key);
        }
        return *found;
    }
    [[nodiscard]] static std::vector<TemperatureBar> barsOf(const TemperatureView& view,
                                                            BarKind kind)
    {
        std::vector<TemperatureBar> bars;
        std::ranges::copy_if(view.bars, std::back_inserter(bars),
                             [kind](const TemperatureBar& bar) { return bar.kind == kind; });
        return bars;
    }
    [[nodiscard]] static std::vector<std::string> words(const QStringList& list)
    {
        std::vector<std::string> all;
        for (const QString& each : list) {
            all.push_back(each.toStdString());
        }
        return all;
    }

    const std::string stock_ = "food:lamb-broth/*/stock";
    const std::string pie_ = "food:apple-pie/*/pie";
    Supper supper_;
    PlanPtr plan_;
};

TEST_F(TemperatureCurvesTest, ListsFoodsWithABrokenRuleFirstAndOvensLast)
{
    cook(false);
    const TemperatureCurves all = curves();
    ASSERT_THAT(all.subjects(), SizeIs(3));
    EXPECT_TRUE(all.hasFoods());
    const TemperatureSubject& first = all.subjects()[0];
    EXPECT_EQ(first.key, stock_);
    EXPECT_EQ(first.name.toStdString(), "Lamb broth: stock");
    ASSERT_EQ(first.worst, Severity::Unsafe);
    const Clash& clash = plan_->clashes.at(static_cast<std::size_t>(first.clash) - 1);
    EXPECT_EQ(temperatureSubjectOf(*plan_, clash), stock_);
    EXPECT_EQ(clash.severity, Severity::Unsafe);
    EXPECT_EQ(all.subjects()[1].name.toStdString(), "Apple pie");
    EXPECT_TRUE(all.subjects()[2].key.starts_with("oven:"));
    EXPECT_FALSE(all.viewOf("food:nothing"));
}

TEST_F(TemperatureCurvesTest, ListsFoodsByTheirDishesWhereNothingIsBroken)
{
    cook(true);
    const TemperatureCurves all = curves();
    ASSERT_THAT(all.subjects(), SizeIs(3));
    EXPECT_EQ(all.subjects()[0].key, pie_);
    EXPECT_EQ(all.subjects()[1].key, stock_);
    EXPECT_FALSE(all.subjects()[1].worst);
}

TEST_F(TemperatureCurvesTest, FollowTheMiddleAndTheSurfaceThroughTheWholePlan)
{
    cook(true);
    const TemperatureView shown = view(stock_);
    ASSERT_THAT(shown.curves, SizeIs(2));
    EXPECT_FALSE(shown.curves[0].isDashed);
    EXPECT_TRUE(shown.curves[1].isDashed);
    ASSERT_THAT(shown.curves[0].runs, SizeIs(1));
    const auto& middle = shown.curves[0].runs[0];
    EXPECT_TRUE(std::ranges::is_sorted(middle, {}, &CurvePoint::minute));
    EXPECT_EQ(middle.front().minute, shown.from);
    EXPECT_EQ(middle.back().minute, shown.to);
    EXPECT_THAT(middle.front().celsius, DoubleNear(4, 1e-6)); // from the fridge
    EXPECT_THAT(std::ranges::max(middle, {}, &CurvePoint::celsius).celsius, DoubleNear(100, 0.1));
    EXPECT_EQ(shown.curves[1].runs[0].size(), middle.size());
    std::vector<std::string> places;
    for (const TemperatureBar& bar : barsOf(shown, BarKind::Place)) {
        places.push_back(bar.label.toStdString());
        EXPECT_EQ(bar.row, 0);
    }
    EXPECT_THAT(places, ElementsAre("hob", "ice bath", "fridge", "hob", "at table"));
    ASSERT_THAT(shown.stays, SizeIs(5));
    EXPECT_EQ(shown.stays[0].from.toStdString(), "09:00");
    EXPECT_EQ(shown.stays[0].last.toStdString(), "100 °C");
    EXPECT_THAT(shown.columns, SizeIs(6));
}

// foodsafety.gov: danger zone 40 to 140 °F, leftovers reheated to 165 °F.
TEST_F(TemperatureCurvesTest, DrawTheLimitsOfTheUsBookForHomes)
{
    cook(true);
    const TemperatureView shown = view(stock_);
    ASSERT_THAT(shown.bands, SizeIs(1));
    EXPECT_THAT(shown.bands[0].low, DoubleNear(40.0 / 9, 1e-9));
    EXPECT_THAT(shown.bands[0].high, DoubleNear(60, 1e-9));
    EXPECT_FALSE(shown.bands[0].when);
    std::vector<std::string> labels;
    for (const LimitLine& line : shown.limits) {
        labels.push_back(line.label.toStdString());
    }
    EXPECT_THAT(labels, ElementsAre("kept cold: at most 4.4 °C", "kept hot: at least 60 °C",
                                    "heated again: at least 73.9 °C"));
}

// Food Safety and Hygiene (England) Regulations 2013, Schedule 4: 8 and 63 °C.
TEST_F(TemperatureCurvesTest, DrawTheLimitsOfTheBookThatTheOccasionGoesBy)
{
    cook(true, RuleBook::UkEu);
    const TemperatureView shown = view(stock_);
    ASSERT_THAT(shown.bands, SizeIs(1));
    EXPECT_EQ(shown.bands[0].low, 8);
    EXPECT_EQ(shown.bands[0].high, 63);
    ASSERT_FALSE(shown.limits.empty());
    EXPECT_EQ(shown.limits.front().label.toStdString(), "kept cold: at most 8 °C");
    EXPECT_THAT(shown.sentences.back().toStdString(), HasSubstr("UK and EU"));
}

TEST_F(TemperatureCurvesTest, MarkTheMinutesThatCountWithTheirFigure)
{
    cook(false);
    const TemperatureView shown = view(stock_);
    const auto bars = barsOf(shown, BarKind::Finding);
    std::size_t spans = 0;
    for (std::size_t i = 0; i < plan_->clashes.size(); ++i) {
        const Clash& clash = plan_->clashes[i];
        if (!clash.finding) {
            continue;
        }
        for (const safety::MinuteSpan& span : clash.finding->counts) {
            const auto bar = std::ranges::find_if(bars, [&](const TemperatureBar& each) {
                return each.clash == static_cast<int>(i) + 1 && each.from == span.from;
            });
            ASSERT_NE(bar, bars.end()) << clash.finding->rule;
            EXPECT_EQ(bar->to, span.to);
            EXPECT_GT(bar->row, 0);
            EXPECT_EQ(bar->severity, clash.severity);
            EXPECT_THAT(bar->label.toStdString(), HasSubstr(" of "));
            ++spans;
        }
        EXPECT_THAT(words(shown.sentences), Contains(sentence(*plan_, supper_.occasion, clash)));
    }
    EXPECT_GE(spans, 2U);
    EXPECT_EQ(bars.size(), spans);
    // FDA, Food Code 2022, 3-501.14(A)(1): two hours from 135 to 70 °F.
    const auto first = std::ranges::find_if(plan_->clashes, [](const Clash& clash) {
        return clash.finding && clash.finding->rule == "us_cooling_first";
    });
    ASSERT_NE(first, plan_->clashes.end());
    const auto number = static_cast<int>(first - plan_->clashes.begin()) + 1;
    const auto bar = std::ranges::find(bars, number, &TemperatureBar::clash);
    ASSERT_NE(bar, bars.end());
    EXPECT_TRUE(bar->label.endsWith(QStringLiteral(" of 120 min")) ||
                bar->label.endsWith(QStringLiteral(" of 2 h")))
        << bar->label.toStdString();
}

TEST_F(TemperatureCurvesTest, NeverSayThatAFoodIsSafe)
{
    cook(true);
    const TemperatureView shown = view(stock_);
    ASSERT_THAT(shown.sentences, SizeIs(2));
    EXPECT_EQ(shown.sentences[0].toStdString(), "No rule known to the program is broken.");
    EXPECT_THAT(shown.sentences[1].toStdString(),
                HasSubstr("Local food codes and licensed practice prevail"));
    for (const QString& text : shown.sentences + QStringList{shown.summary}) {
        EXPECT_FALSE(text.contains(QStringLiteral("safe"), Qt::CaseInsensitive))
            << text.toStdString();
    }
    EXPECT_TRUE(shown.summary.contains(QStringLiteral("100 °C"))) << shown.summary.toStdString();
}

TEST_F(TemperatureCurvesTest, TellBatchesApartByTheirNumber)
{
    Recipe batches = pie();
    batches.common.steps.front().portionsPerBatch = Portions{4};
    supper_.serve(batches, 8);
    plan_ = supper_.laidOut();
    std::vector<std::string> names;
    const TemperatureCurves all = curves();
    for (const TemperatureSubject& subject : all.subjects()) {
        names.push_back(subject.name.toStdString());
    }
    EXPECT_THAT(names, testing::IsSupersetOf({"Apple pie, batch 1", "Apple pie, batch 2"}));
}

TEST_F(TemperatureCurvesTest, LeaveAGapWhereNothingIsComputed)
{
    cook(true);
    const TemperatureView shown = view(pie_);
    for (const TemperatureCurve& curve : shown.curves) {
        EXPECT_THAT(curve.runs, IsEmpty());
    }
    ASSERT_FALSE(shown.stays.empty());
    EXPECT_EQ(shown.stays[0].first.toStdString(), "not known");
    EXPECT_THAT(words(shown.sentences), Contains(HasSubstr("The temperature was not computed")));
    EXPECT_FALSE(barsOf(shown, BarKind::Place).empty());
}

double at(const std::vector<CurvePoint>& points, double minute)
{
    const auto next = std::ranges::lower_bound(points, minute, {}, &CurvePoint::minute);
    if (next == points.begin() || next->minute == minute) {
        return next->celsius;
    }
    const CurvePoint& before = *(next - 1);
    return before.celsius + (minute - before.minute) / (next->minute - before.minute) *
                                (next->celsius - before.celsius);
}

TEST_F(TemperatureCurvesTest, OfAnOvenAreItsProgramsWithWhatItsDishesAccept)
{
    cook(true);
    const OvenIndex oven{0};
    const Formulation& formulation = *plan_->formulation;
    const TemperatureView shown = view("oven:" + formulation.problem.ovens[oven].id);
    const OvenCurve curve(formulation.problem.ovens[oven], plan_->schedule.programs[oven]);
    ASSERT_THAT(shown.curves, SizeIs(2));
    const auto& points = shown.curves[0].runs.at(0);
    for (double minute = shown.from; minute <= shown.to; ++minute) {
        const auto exact = static_cast<double>(curve.milliC(planTime(std::llround(minute)))) / 1000;
        EXPECT_THAT(at(points, minute), DoubleNear(exact, 1e-6)) << minute;
    }
    ASSERT_THAT(shown.bands, SizeIs(1));
    EXPECT_EQ(shown.bands[0].low, 170);
    EXPECT_EQ(shown.bands[0].high, 190);
    ASSERT_TRUE(shown.bands[0].when);
    EXPECT_LT(static_cast<double>(minuteOf(shown.bands[0].when->end)), shown.to);
    ASSERT_THAT(shown.stays, SizeIs(1));
    EXPECT_EQ(shown.stays[0].place.toStdString(), "Apple pie");
    EXPECT_EQ(shown.stays[0].surface.toStdString(), "170 °C to 190 °C");
    EXPECT_EQ(shown.sentences[0].toStdString(), "It keeps within what the dishes in it accept.");
}

TEST_F(TemperatureCurvesTest, AreShownForClashesOfFoodSafetyAndOvenHeatAlone)
{
    cook(false);
    Clash clash;
    clash.kind = ClashKind::Hands;
    EXPECT_EQ(temperatureSubjectOf(*plan_, clash), "");
    clash.kind = ClashKind::OvenTemperature;
    EXPECT_EQ(temperatureSubjectOf(*plan_, clash), "");
    clash.oven = OvenIndex{0};
    EXPECT_TRUE(curves().viewOf(temperatureSubjectOf(*plan_, clash)));
    clash.kind = ClashKind::OvenSpace;
    EXPECT_EQ(temperatureSubjectOf(*plan_, clash), "");
}

TEST_F(TemperatureCurvesTest, ReadInFahrenheitWhereTheReaderDoes)
{
    cook(true);
    const auto shown =
        TemperatureCurves(plan_, supper_.input(), ReadingStyle{true, false}).viewOf(stock_);
    ASSERT_TRUE(shown);
    EXPECT_EQ(shown->stays[0].last.toStdString(), "212 °F");
    EXPECT_EQ(shown->limits.front().label.toStdString(), "kept cold: at most 40 °F");
}

} // namespace
} // namespace suppertide::ui
