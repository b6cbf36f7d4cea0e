// The per-hour plan as plain text: 80 columns, one thing a line, readable by itself and aloud.
#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "core/sheet/per_hour_plan.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

constexpr std::size_t columns = 80;

/// Columns that a text takes: characters, not bytes (UTF-8 continuation bytes take none).
std::size_t widthOf(std::string_view text)
{
    return static_cast<std::size_t>(std::ranges::count_if(
        text, [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }));
}

/// What happens at one minute, so that an hour's things come in order of time.
struct Row
{
    PlanTime at;
    int order = 0; // among things of one minute
    std::string text;
};

class TextSheet
{
public:
    explicit TextSheet(const PerHourPlan& sheet) : sheet_(sheet) {}

    std::string write()
    {
        wrapped("", sheet_.title);
        wrapped("", sheet_.subtitle);
        if (!sheet_.clashes.empty()) {
            line("");
            wrapped("", "NOT YET SETTLED: " + std::string(verdict()));
            for (const std::string& clash : sheet_.clashes) {
                wrapped("  ! ", clash);
            }
        }
        line("");
        for (const std::string& caution : sheet_.cautions) {
            wrapped("", caution);
        }
        for (const SheetDay& day : sheet_.days) {
            line("");
            line(day.heading);
            line(std::string(widthOf(day.heading), '='));
            for (const SheetHour& hour : day.hours) {
                writeHour(hour);
            }
        }
        return text_;
    }

private:
    /// The worst that the clashes amount to.
    [[nodiscard]] std::string_view verdict() const
    {
        std::string_view worst = "this plan is not as good as it should be.";
        for (const Clash& clash : sheet_.plan->clashes) {
            if (clash.severity == Severity::Impossible) {
                return "this plan cannot be cooked as it stands.";
            }
            if (clash.severity == Severity::Unsafe) {
                worst = "this plan is not safe as it stands.";
            }
        }
        return worst;
    }

    void line(std::string_view text) { text_ += fmt::format("{}\n", text); }

    /// Breaks at white space, of which a name may hold any; further lines are indented as deep as
    /// `head` is wide.
    void wrapped(const std::string& head, const std::string& text)
    {
        const std::string indent(widthOf(head), ' ');
        std::string current = head;
        bool isFresh = true;
        std::size_t at = 0;
        while (at < text.size()) {
            const std::size_t end = std::min(text.find_first_of(" \t\r\n", at), text.size());
            const std::string word = text.substr(at, end - at);
            at = end + 1;
            if (word.empty()) {
                continue;
            }
            if (!isFresh && widthOf(current) + 1 + widthOf(word) > columns) {
                line(current);
                current = indent;
                isFresh = true;
            }
            current += (isFresh ? "" : " ") + word;
            isFresh = false;
        }
        line(current);
    }

    [[nodiscard]] std::string clock(PlanTime time) const
    {
        const PlanCalendar& calendar = sheet_.plan->formulation->calendar;
        return timeText(calendar, time, calendar.civil(time).date, sheet_.style);
    }

    /// The hour that occurs twice in the night in which the clocks go back.
    [[nodiscard]] bool isSecondTime(const SheetHour& hour) const
    {
        const PlanCalendar& calendar = sheet_.plan->formulation->calendar;
        return calendar.planTime(hour.civil) != hour.start &&
               calendar.zone.kindOf(hour.civil) == ClockTimeKind::Repeated;
    }

    void writeHour(const SheetHour& hour)
    {
        line("");
        line(clock(hour.start) + (isSecondTime(hour) ? " again: the clocks have gone back" : ""));
        std::vector<Row> rows;
        for (const SheetOvenTurn& turn : hour.ovenTurns) {
            rows.push_back({turn.at, 0, turn.text});
        }
        for (const SheetFetch& fetch : hour.fetches) {
            rows.push_back({fetch.at, 1, withCooks(fetch.text, fetch.cooks)});
        }
        for (const SheetNote& note : hour.notes) {
            rows.push_back(
                {note.at, 2,
                 (note.kind == SheetNoteKind::Caution ? "CAUTION: " : "GUESTS: ") + note.text});
        }
        for (const SheetStep& step : hour.steps) {
            rows.push_back({step.start, 3, stepText(step)});
        }
        for (const SheetServing& serving : hour.servings) {
            rows.push_back({serving.at, 4, servingText(serving)});
        }
        for (const SheetTable& table : sheet_.table) {
            if (hour.start <= table.when.start && table.when.start < hour.start + Minutes{60}) {
                rows.push_back({table.when.start, 5,
                                fmt::format("{} at table to {}",
                                            sheet_.plan->formulation->cookNames[table.cook],
                                            clock(table.when.end))});
            }
        }
        std::ranges::stable_sort(rows, [](const Row& a, const Row& b) {
            return std::pair{a.at, a.order} < std::pair{b.at, b.order};
        });
        for (const Row& row : rows) {
            wrapped("  " + clock(row.at) + "  ", row.text);
        }
    }

    static std::string withCooks(const std::string& text, const std::vector<std::string>& cooks)
    {
        return cooks.empty() ? text : fmt::format("{}: {}", listed(cooks), text);
    }

    /// Amounts are counted off one by one: no "and" that could be part of a name, none left out.
    static std::string commaed(const std::vector<std::string>& amounts)
    {
        std::string text;
        for (const std::string& amount : amounts) {
            text += (text.empty() ? "" : ", ") + amount;
        }
        return text;
    }

    static std::string stepText(const SheetStep& step)
    {
        std::string text = withCooks(step.deed, step.cooks);
        for (const std::string& more : {step.detail, commaed(step.amounts), step.after}) {
            if (!more.empty()) {
                text += "; " + more;
            }
        }
        return text;
    }

    static std::string servingText(const SheetServing& serving)
    {
        std::string text = fmt::format("== {}. {} ==", serving.number, serving.text);
        for (std::size_t i = 0; i < serving.helpings.size(); ++i) {
            text += (i == 0 ? " " : "; ") + serving.helpings[i];
        }
        return text;
    }

    const PerHourPlan& sheet_;
    std::string text_;
};

} // namespace

std::string toText(const PerHourPlan& sheet)
{
    return TextSheet(sheet).write();
}

} // namespace suppertide
