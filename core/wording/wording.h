// Wording: the sentences a cook reads, in one place: clashes, steps, times, cautions. English here;
// the window's own labels are translated through Qt.
#pragma once

#include <string>
#include <string_view>

#include "core/plan/plan.h"
#include "core/quantity/kitchen_text.h"

namespace suppertide {

/// How a user reads figures.
struct ReadingStyle
{
    bool fahrenheit = false;
    bool clock12 = false;                                 // 7:30 pm instead of 19:30
    std::optional<MeasureSystem> measures = std::nullopt; // absent: as each recipe has its amounts
};

/// "150 °C", "300 °F".
[[nodiscard]] std::string temperatureText(int celsius, const ReadingStyle& style = {});
/// `text` with the temperatures in it as the user reads them: "82 °C" and "160–180 °C" become °F if
/// the style says so; else it stays as it is.
[[nodiscard]] std::string inStyle(const std::string& text, const ReadingStyle& style);
/// "2 h 30", "45 min", "3 days".
[[nodiscard]] std::string durationText(Minutes duration);
/// "19:30"; with the day where it is not `day`: "Fri 18 June 20:00".
[[nodiscard]] std::string timeText(const PlanCalendar& calendar, PlanTime time,
                                   std::optional<CivilDate> day = {},
                                   const ReadingStyle& style = {});
/// "Saturday 19 June".
[[nodiscard]] std::string dayText(const CivilDate& date);
/// "From 17:40 to 18:10 the oven is wanted at 150 °C by the gratin and at 220 °C by the roast
/// roots."
[[nodiscard]] std::string sentence(const Plan& plan, const Occasion& occasion, const Clash& clash,
                                   const ReadingStyle& style = {});
/// Where and when, for the second line of a row: "Oven, Saturday 17:40 to 18:10".
[[nodiscard]] std::string placeAndTime(const Plan& plan, const Occasion& occasion,
                                       const Clash& clash, const ReadingStyle& style = {});
[[nodiscard]] std::string_view nameOf(ClashKind kind);
[[nodiscard]] std::string_view nameOf(Severity severity);
/// "Hot oil: never leave it, keep water away, a lid at hand."
[[nodiscard]] std::string_view cautionText(Caution caution);
/// Why a task could not be placed, in a sentence; `because` are ids of the problem ("lag:l1").
[[nodiscard]] std::string unplacedSentence(const Formulation& formulation, TaskIndex task,
                                           const std::vector<std::string>& because);
/// A step for a list and for blind readers: "Slice the potatoes, 18:05 to 18:50, Jory, hands-on."
[[nodiscard]] std::string taskText(const Plan& plan, TaskIndex task,
                                   const ReadingStyle& style = {});

} // namespace suppertide
