#include "ui/models/temperature_curves.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

#include "ui/models/food_curves.h"
#include "ui/models/occasion_edits.h"
#include "ui/models/oven_temperatures.h"
#include "ui/models/temperature_limits.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr std::string_view foodPrefix = "food:";
constexpr std::string_view ovenPrefix = "oven:";

QString tr(const char* text)
{
    return QCoreApplication::translate("TemperatureCurves", text);
}

QString words(std::string_view text)
{
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

/// "Lamb stock: stock, with barley, batch 2"; a food that is called as its dish is not said twice.
QString nameOf(const TrackedFood& food)
{
    const QString dish = words(food.dishName);
    QString name = words(food.name);
    name = dish.contains(name, Qt::CaseInsensitive) ? dish : tr("%1: %2").arg(dish, name);
    if (!food.variantName.empty()) {
        name = tr("%1, %2").arg(name, words(food.variantName));
    }
    const auto batch = food.key.rfind('#');
    return batch == std::string::npos
               ? name
               : tr("%1, batch %2").arg(name, words(std::string_view(food.key).substr(batch + 1)));
}

bool isNotKnown(const safety::Finding& finding)
{
    const safety::Rule* rule = safety::findRule(finding.rule);
    return rule != nullptr && rule->subject == safety::Subject::NotKnown;
}

/// "128 of 120 min", "7 h 05 of 6 h", "58 of 63 °C": the figure that breaks the rule.
QString figureOf(const safety::Finding& finding, const ReadingStyle& style)
{
    const bool isOver = finding.measured > finding.limit;
    const double measured = isOver ? std::ceil(finding.measured - safety::onTheLimit)
                                   : std::floor(finding.measured + safety::onTheLimit);
    const auto degrees = [&](double value) {
        const bool isFahrenheit = finding.measure == safety::Measure::Fahrenheit;
        return degreesText(isFahrenheit ? safety::celsiusOf(value) : value, style, 1);
    };
    switch (finding.measure) {
    case safety::Measure::None:
        return tr("rule broken");
    case safety::Measure::Minutes: {
        constexpr double longer = 180; // min, from which hours read better
        if (std::max(measured, finding.limit) < longer) {
            return tr("%1 of %2 min").arg(measured).arg(finding.limit);
        }
        const auto length = [](double minutes) {
            return words(durationText(Minutes{std::llround(minutes)}));
        };
        return tr("%1 of %2").arg(length(measured), length(finding.limit));
    }
    case safety::Measure::Days:
    case safety::Measure::Times:
        return tr("%1 of %2 %3")
            .arg(measured)
            .arg(finding.limit)
            .arg(words(safety::unitOf(finding.measure)));
    case safety::Measure::Celsius:
    case safety::Measure::Fahrenheit:
        return tr("%1 of %2").arg(degrees(finding.measured), degrees(finding.limit));
    }
    return {};
}

bool isWorse(const TemperatureSubject& left, const TemperatureSubject& right)
{
    if (left.worst.has_value() != right.worst.has_value()) {
        return left.worst.has_value();
    }
    return left.worst && left.clash < right.clash; // clashes are in order, worst first
}

} // namespace

TemperatureCurves::TemperatureCurves(PlanPtr plan, const PlanInput& input,
                                     const ReadingStyle& style)
    : plan_(std::move(plan)), occasion_(input.occasion), style_(style),
      safety_(*plan_->formulation, input)
{
    safety_.update(plan_->schedule);
    addFoods();
    addOvens();
    // The number of the worst clash: clashes stand in their order already.
    for (auto clash = plan_->clashes.rbegin(); clash != plan_->clashes.rend(); ++clash) {
        const auto subject = std::ranges::find(subjects_, temperatureSubjectOf(*plan_, *clash),
                                               &TemperatureSubject::key);
        if (subject != subjects_.end()) {
            subject->worst = clash->severity;
            subject->clash = static_cast<int>(plan_->clashes.rend() - clash);
        }
    }
    const auto ovens = std::ranges::find_if(subjects_, [](const TemperatureSubject& subject) {
        return subject.key.starts_with(ovenPrefix);
    });
    std::stable_sort(subjects_.begin(), ovens, isWorse);
}

void TemperatureCurves::addFoods()
{
    for (const FoodIndex index : plan_->formulation->foods.indices()) {
        const TrackedFood& food = plan_->formulation->foods[index];
        const auto& history = safety_.histories()[index];
        if (history && !history->pieces.empty()) {
            subjects_.push_back({std::string(foodPrefix) + food.key, nameOf(food), {}, 0});
            hasFoods_ = true;
        }
    }
    std::ranges::stable_sort(subjects_, {}, &TemperatureSubject::name);
}

void TemperatureCurves::addOvens()
{
    const Formulation& formulation = *plan_->formulation;
    for (const OvenIndex oven : formulation.problem.ovens.indices()) {
        if (isOvenUsed(*plan_, oven)) {
            subjects_.push_back({std::string(ovenPrefix) + formulation.problem.ovens[oven].id,
                                 words(formulation.ovenNames[oven]),
                                 {},
                                 0});
        }
    }
}

std::optional<TemperatureView> TemperatureCurves::viewOf(const std::string& key) const
{
    if (std::ranges::find(subjects_, key, &TemperatureSubject::key) == subjects_.end()) {
        return std::nullopt;
    }
    auto view = knownView(key);
    if (view) {
        view->isFahrenheit = style_.fahrenheit;
    }
    return view;
}

std::optional<TemperatureView> TemperatureCurves::knownView(const std::string& key) const
{
    const Formulation& formulation = *plan_->formulation;
    for (const FoodIndex food : formulation.foods.indices()) {
        if (key == std::string(foodPrefix) + formulation.foods[food].key) {
            return foodView(food);
        }
    }
    for (const OvenIndex oven : formulation.problem.ovens.indices()) {
        if (key == std::string(ovenPrefix) + formulation.problem.ovens[oven].id) {
            return ovenView(*plan_, *occasion_, oven, style_);
        }
    }
    return std::nullopt;
}

TemperatureView TemperatureCurves::foodView(FoodIndex food) const
{
    const safety::FoodHistory& history = *safety_.histories()[food];
    const PlanCalendar& calendar = plan_->formulation->calendar;
    const auto day = dateOf(*occasion_);
    const auto clock = [&](double minute) {
        return words(timeText(calendar, planTime(std::llround(minute)), day, style_));
    };
    TemperatureView view;
    view.key = std::string(foodPrefix) + plan_->formulation->foods[food].key;
    view.title = nameOf(plan_->formulation->foods[food]);
    view.calendar = calendar;
    view.from = static_cast<double>(minuteOf(history.pieces.front().from));
    view.to = static_cast<double>(minuteOf(history.pieces.back().to));
    view.curves = curvesOf(history);
    FoodLimits limits = limitsFor(history, occasion_->preferences.rules, style_);
    view.limits = std::move(limits.lines);
    view.bands = std::move(limits.zones);
    view.bars = placeBars(history, style_);
    view.columns = {tr("From"),
                    tr("Place"),
                    tr("Middle at its begin"),
                    tr("Middle at its end"),
                    tr("Surface at its end"),
                    tr("To")};
    for (const safety::HistoryPiece& piece : history.pieces) {
        const auto degrees = [&](double celsius) { return degreesText(celsius, style_, 1); };
        const bool isKnown = !piece.curve.empty();
        TemperatureStay stay;
        stay.from = clock(static_cast<double>(minuteOf(piece.from)));
        stay.to = clock(static_cast<double>(minuteOf(piece.to)));
        stay.place = placeOf(piece, style_);
        stay.first = isKnown ? degrees(piece.curve.front().core) : tr("not known");
        stay.last = isKnown ? degrees(piece.curve.back().core) : tr("not known");
        stay.surface = isKnown ? degrees(piece.curve.back().surface) : tr("not known");
        view.stays.push_back(std::move(stay));
    }
    addFindings(food, view);
    const auto warmest = warmestOf(view.curves.front());
    view.summary =
        tr("%1, from %2 to %3.").arg(view.title, clock(view.from), clock(view.to)) +
        (warmest ? tr(" Its middle gets to %1, at %2.")
                       .arg(degreesText(warmest->celsius, style_, 1), clock(warmest->minute))
                 : tr(" Its temperature is not known.")) +
        u' ' + view.sentences.join(u' ');
    return view;
}

void TemperatureCurves::addFindings(FoodIndex food, TemperatureView& view) const
{
    int row = 0;
    for (std::size_t i = 0; i < plan_->clashes.size(); ++i) {
        const Clash& clash = plan_->clashes[i];
        if (clash.kind != ClashKind::FoodSafety || clash.food != food) {
            continue;
        }
        view.sentences.push_back(words(sentence(*plan_, *occasion_, clash, style_)));
        if (!clash.finding || clash.finding->counts.empty()) {
            continue;
        }
        ++row;
        for (const safety::MinuteSpan& span : clash.finding->counts) {
            // What a preparation did before it went in is shown at the preparation.
            TemperatureBar bar;
            bar.from = std::max(span.from, view.from);
            bar.to = span.to;
            if (bar.to <= bar.from) {
                continue;
            }
            bar.label = figureOf(*clash.finding, style_);
            bar.kind = BarKind::Finding;
            bar.row = row;
            bar.severity = clash.severity;
            bar.clash = static_cast<int>(i) + 1;
            view.bars.push_back(std::move(bar));
        }
    }
    if (const auto why = safety_.notJudged(food)) {
        view.sentences.push_back(
            tr("It cannot be judged by the rules of food safety: %1").arg(words(*why)));
    } else if (view.sentences.empty()) {
        view.sentences.push_back(tr("No rule known to the program is broken."));
    }
    for (const safety::Finding& finding : safety_.findingsOf(food)) {
        if (isNotKnown(finding)) {
            view.sentences.push_back(words(safety::sourceOf(finding).says));
        }
    }
    view.sentences.push_back(
        tr("The rules are those of %1. Temperatures are computed, not measured. Local food codes "
           "and licensed practice prevail over what is shown here.")
            .arg(words(safety::nameOf(occasion_->preferences.rules))));
}

std::string temperatureSubjectOf(const Plan& plan, const Clash& clash)
{
    const Formulation& formulation = *plan.formulation;
    if (clash.kind == ClashKind::FoodSafety && clash.food &&
        formulation.foods.contains(*clash.food)) {
        return std::string(foodPrefix) + formulation.foods[*clash.food].key;
    }
    const bool isHeat =
        clash.kind == ClashKind::OvenTemperature || clash.kind == ClashKind::OvenRamp;
    if (isHeat && clash.oven) {
        return std::string(ovenPrefix) + formulation.problem.ovens[*clash.oven].id;
    }
    return {};
}

} // namespace suppertide::ui
