#include "ui/models/plan_figures_text.h"

#include <QCoreApplication>

#include "core/wording/wording.h"
#include "ui/models/occasion_edits.h"

namespace suppertide::ui {

namespace {

QString tr(const char* text, int count = -1)
{
    return QCoreApplication::translate("PlanFigures", text, nullptr, count);
}

QString text(const std::string& words)
{
    return QString::fromStdString(words);
}

/// Up to twelve as a word, as in "eight at table".
QString countText(std::size_t count)
{
    static constexpr std::array<const char*, 13> words{"nobody", "one",    "two",   "three", "four",
                                                       "five",   "six",    "seven", "eight", "nine",
                                                       "ten",    "eleven", "twelve"};
    return count < words.size() ? tr(words.at(count)) : QString::number(static_cast<int>(count));
}

} // namespace

QString figuresText(const PlanFigures& figures)
{
    const QString changes =
        figures.ovenChanges == 1 ? tr("1 change") : tr("%1 changes").arg(figures.ovenChanges);
    const QString sessions =
        figures.sessions == 1 ? tr("1 session") : tr("%1 sessions").arg(figures.sessions);
    const QString oven =
        figures.ovenOn == Minutes{0}
            ? tr("oven never on")
            : tr("oven on %1, %2").arg(text(durationText(figures.ovenOn)), changes);
    return tr("%1 hands-on in the last hour · %2 · %3")
        .arg(text(durationText(figures.handsOnLastHour)), oven, sessions);
}

QString dateLine(const Occasion& occasion, const CivilDate& today)
{
    const auto date = dateOf(occasion);
    if (!date) {
        return tr("no courses yet");
    }
    const QString day = date->year == today.year
                            ? text(dayText(*date))
                            : tr("%1 %2").arg(text(dayText(*date))).arg(date->year);
    const QString at = text(toIso(occasion.courses.front().serving.clock));
    if (occasion.guests.empty()) {
        return tr("%1, served at %2").arg(day, at);
    }
    return tr("%1, %2 at table at %3").arg(day, countText(occasion.guests.size()), at);
}

bool isPast(const Occasion& occasion, Instant now)
{
    const auto zone = TimeZone::find(occasion.zone);
    return zone && !occasion.courses.empty() &&
           zone->instant(occasion.courses.back().serving) < now;
}

} // namespace suppertide::ui
