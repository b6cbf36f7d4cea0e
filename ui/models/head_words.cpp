#include "ui/models/head_words.h"

#include <QCoreApplication>

#include "core/wording/wording.h"
#include "ui/models/occasion_edits.h"

namespace suppertide::ui {

namespace {

QString tr(const char* text, int count = -1)
{
    return QCoreApplication::translate("HeadWords", text, nullptr, count);
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
