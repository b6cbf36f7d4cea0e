#include "ui/models/temperature_limits.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

using safety::RuleBook;
using safety::Subject;

QString tr(const char* text)
{
    return QCoreApplication::translate("TemperatureLimits", text);
}

/// What the food is in the course of its history, each class once.
std::vector<FoodClass> classesOf(const safety::FoodHistory& history)
{
    std::vector<FoodClass> classes{history.kind.food};
    for (const safety::HistoryEvent& event : history.events) {
        const auto* became = std::get_if<safety::Became>(&event);
        if (became != nullptr && std::ranges::find(classes, became->food) == classes.end()) {
            classes.push_back(became->food);
        }
    }
    return classes;
}

bool isAt(const safety::FoodHistory& history, safety::Place place)
{
    return std::ranges::any_of(history.pieces, [place](const safety::HistoryPiece& piece) {
        return piece.place == place;
    });
}

bool isReheated(const safety::FoodHistory& history)
{
    return std::ranges::any_of(history.events, [](const safety::HistoryEvent& event) {
        return std::holds_alternative<safety::Reheated>(event);
    });
}

class Limits
{
public:
    Limits(RuleBook book, const ReadingStyle& style) : book_(book), style_(style) {}

    void addLine(FoodClass food, Subject subject, const QString& words)
    {
        const safety::Rule* rule = safety::ruleAbout(book_, subject, food);
        if (rule == nullptr || !rule->temperature) {
            return;
        }
        const double celsius = rule->temperature->celsius();
        QString label = words.arg(degrees(celsius));
        if (subject == Subject::CoreTemperature || subject == Subject::Reheating) {
            const QString time = QString::fromStdString(rule->printedTime);
            if (!time.isEmpty()) {
                label = tr("%1 for %2").arg(label, time);
            }
        }
        const auto same = std::ranges::find_if(found_.lines, [&](const LimitLine& line) {
            return std::abs(line.celsius - celsius) < nearlyTheSame;
        });
        if (same == found_.lines.end()) {
            found_.lines.push_back({celsius, label});
        } else if (!same->label.contains(label)) {
            same->label += u"; "_s + label;
        }
    }

    void addZone(FoodClass food)
    {
        for (const Subject subject :
             {Subject::DangerZone, Subject::TimeAlone, Subject::HotPeriod}) {
            const safety::Rule* rule = safety::ruleAbout(book_, subject, food);
            if (rule != nullptr && rule->temperature && rule->upper) {
                const double low = rule->temperature->celsius();
                const double high = rule->upper->celsius();
                const QString words = subject == Subject::DangerZone
                                          ? tr("danger zone %1 to %2")
                                          : tr("minutes count from %1 to %2");
                const LimitBand zone{low, high, words.arg(degrees(low), degrees(high)), {}};
                if (std::ranges::find(found_.zones, zone) == found_.zones.end()) {
                    found_.zones.push_back(zone);
                }
                return;
            }
        }
    }

    [[nodiscard]] FoodLimits taken()
    {
        std::ranges::sort(found_.lines, {}, &LimitLine::celsius);
        return std::move(found_);
    }

private:
    static constexpr double nearlyTheSame = 0.05; // °C: less than what is written

    [[nodiscard]] QString degrees(double celsius) const { return degreesText(celsius, style_, 1); }

    RuleBook book_;
    ReadingStyle style_;
    FoodLimits found_;
};

} // namespace

QString degreesText(double celsius, const ReadingStyle& style, int decimals)
{
    double value = style.fahrenheit ? safety::fahrenheitOf(celsius) : celsius;
    const double scale = std::pow(10.0, decimals);
    value = std::round(value * scale) / scale;
    const bool isWhole = value == std::round(value);
    const QString figure = QString::number(std::abs(value), 'f', isWhole ? 0 : decimals);
    return (value < 0 ? u"−"_s : QString()) + figure + (style.fahrenheit ? u" °F"_s : u" °C"_s);
}

FoodLimits limitsFor(const safety::FoodHistory& history, RuleBook book, const ReadingStyle& style)
{
    Limits limits(book, style);
    for (const FoodClass food : classesOf(history)) {
        if (!safety::watches(book, food)) {
            continue;
        }
        limits.addZone(food);
        limits.addLine(food, Subject::ColdHolding, tr("kept cold: at most %1"));
        limits.addLine(food, Subject::HotHolding, tr("kept hot: at least %1"));
        limits.addLine(food, Subject::CoreTemperature, tr("its middle: at least %1"));
        if (isReheated(history)) {
            limits.addLine(food, Subject::Reheating, tr("heated again: at least %1"));
        }
        if (isAt(history, safety::Place::Microwave)) {
            limits.addLine(food, Subject::Microwave, tr("in the microwave oven: at least %1"));
        }
        if (isAt(history, safety::Place::Freezer)) {
            limits.addLine(food, Subject::Freezing, tr("frozen: at most %1"));
        }
    }
    return limits.taken();
}

} // namespace suppertide::ui
