#include "ui/print/per_hour_html.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "core/base/contracts.h"
#include "ui/print/dish_patterns.h"
#include "ui/print/sheet_times.h"
#include "ui/print/sheet_words.h"

namespace suppertide::ui {

namespace {

std::string escaped(std::string_view text)
{
    std::string result;
    result.reserve(text.size());
    for (const char letter : text) {
        switch (letter) {
        case '&':
            result += "&amp;";
            break;
        case '<':
            result += "&lt;";
            break;
        case '>':
            result += "&gt;";
            break;
        case '"':
            result += "&quot;";
            break;
        default:
            result += letter;
        }
    }
    return result;
}

struct Line
{
    PlanTime at;
    std::string html;
};

/// Whole sentences run together: "Slice the potatoes. 2 mm thick."
std::string sentences(const std::vector<std::string>& parts)
{
    std::string result;
    for (const std::string& part : parts) {
        if (part.empty()) {
            continue;
        }
        const bool isEnded = part.back() == '.' || part.back() == '!' || part.back() == '?';
        result += (result.empty() ? "" : " ") + escaped(part) + (isEnded ? "" : ".");
    }
    return result;
}

class HtmlWriter
{
public:
    explicit HtmlWriter(const PerHourPlan& plan) : plan_(&plan), patterns_(plan, {}) {}

    [[nodiscard]] std::string write()
    {
        html_ = fmt::format("<!DOCTYPE html>\n<html lang=\"en\">\n<head><meta charset=\"utf-8\">"
                            "<title>{0}</title></head>\n<body>\n<h1>{0}</h1>\n<p>{1}</p>\n",
                            escaped(plan_->title), escaped(plan_->subtitle));
        writeList(doesNotHold, plan_->clashes);
        for (const SheetDay& day : plan_->days) {
            html_ += fmt::format("<h2>{}</h2>\n", escaped(day.heading));
            for (const SheetHour& hour : day.hours) {
                writeHour(hour);
            }
        }
        writeList(throughout, plan_->cautions);
        html_ += fmt::format("<p>{}</p>\n</body>\n</html>\n", escaped(localCodesPrevail));
        return std::move(html_);
    }

private:
    void writeList(std::string_view heading, const std::vector<std::string>& sentencesOf)
    {
        if (sentencesOf.empty()) {
            return;
        }
        html_ += fmt::format("<h2>{}</h2>\n<ul>\n", escaped(heading));
        for (const std::string& sentence : sentencesOf) {
            html_ += fmt::format("<li>{}</li>\n", escaped(sentence));
        }
        html_ += "</ul>\n";
    }

    void writeHour(const SheetHour& hour)
    {
        html_ += fmt::format("<h3>From {}</h3>\n<ul>\n", clock(hour.start));
        for (const Line& line : linesOf(hour)) {
            html_ += fmt::format("<li>{}: {}</li>\n", clock(line.at), line.html);
        }
        html_ += "</ul>\n";
    }

    [[nodiscard]] std::string clock(PlanTime time) const
    {
        return escaped(clockText(*plan_, time));
    }

    /// In the paper's order: at one time a serving before what begins with it.
    [[nodiscard]] std::vector<Line> linesOf(const SheetHour& hour) const
    {
        std::vector<Line> lines;
        for (const SheetServing& serving : hour.servings) {
            lines.push_back({serving.at, servingHtml(serving)});
        }
        for (const SheetTable& table : plan_->table) {
            if (hour.start <= table.when.start && table.when.start < hour.start + Minutes{60}) {
                lines.push_back({table.when.start, tableHtml(table)});
            }
        }
        for (const SheetOvenTurn& turn : hour.ovenTurns) {
            lines.push_back({turn.at, sentences({turn.text})});
        }
        for (const SheetFetch& fetch : hour.fetches) {
            lines.push_back({fetch.at, sentences({fetch.text, names(fetch.cooks)})});
        }
        for (const SheetStep& step : hour.steps) {
            lines.push_back({step.start, stepHtml(step)});
        }
        for (const SheetNote& note : hour.notes) {
            lines.push_back(
                {note.at, "<strong>" + sentences({noteTitle(note), note.text}) + "</strong>"});
        }
        std::stable_sort(lines.begin(), lines.end(),
                         [](const Line& a, const Line& b) { return a.at < b.at; });
        return lines;
    }

    static std::string noteTitle(const SheetNote& note)
    {
        return note.kind == SheetNoteKind::Caution ? "Caution" : "Guests";
    }

    static std::string names(const std::vector<std::string>& cooks)
    {
        return fmt::format("{}", fmt::join(cooks, ", "));
    }

    [[nodiscard]] std::string stepHtml(const SheetStep& step) const
    {
        const std::string dish = step.dish ? patterns_.nameOf(*step.dish) : std::string{};
        return sentences({step.deed, step.detail, fmt::format("{}", fmt::join(step.amounts, ", ")),
                          step.after, names(step.cooks),
                          std::string{nameOf(noteShapeOf(step.attention))},
                          dish.empty() ? dish : "For: " + dish});
    }

    static std::string servingHtml(const SheetServing& serving)
    {
        return fmt::format("<strong>{}</strong> {}",
                           sentences({fmt::format("Course {}", serving.number), serving.text}),
                           sentences(serving.helpings));
    }

    [[nodiscard]] std::string tableHtml(const SheetTable& table) const
    {
        const std::size_t cook = table.cook.value();
        const std::string name = cook < plan_->cookNames.size() ? plan_->cookNames[cook] : "";
        return sentences(
            {fmt::format("{} at table to {}", name, clockText(*plan_, table.when.end))});
    }

    const PerHourPlan* plan_;
    DishPatterns patterns_;
    std::string html_;
};

} // namespace

std::string perHourHtml(const PerHourPlan& plan)
{
    expects(plan.plan != nullptr && plan.plan->formulation != nullptr, "a sheet of a plan");
    return HtmlWriter{plan}.write();
}

} // namespace suppertide::ui
