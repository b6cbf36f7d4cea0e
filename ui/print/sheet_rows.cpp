#include "ui/print/sheet_rows.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <string>

namespace suppertide::ui {

namespace {

constexpr Minutes wholeHour{60};
constexpr std::size_t mostCooksBesideEachOther = 2;
/// Adults read English prose silently at about 240 words a minute (from memory).
constexpr std::ptrdiff_t wordsInFiveMinutes = 5 * 240;

using Owners = std::vector<std::size_t>;

/// Says in whose columns things stand; remembers who last worked for each dish.
class Ownership
{
public:
    explicit Ownership(const PerHourPlan& plan) : plan_(&plan)
    {
        for (const SheetDay& day : plan.days) {
            for (const SheetHour& at : day.hours) {
                for (const SheetStep& step : at.steps) {
                    ofStep_.emplace(&step, ownersOf(step));
                }
            }
        }
    }

    [[nodiscard]] const Owners& of(const SheetStep& step) const { return ofStep_.at(&step); }

    [[nodiscard]] Owners of(const SheetFetch& fetch) const
    {
        Owners owners = positionsOf(fetch.cooks);
        return owners.empty() ? Owners{0} : owners;
    }
    [[nodiscard]] Owners of(const SheetNote& note) const
    {
        Owners owners = positionsOf(note.cooks);
        if (owners.empty()) {
            owners.resize(std::max<std::size_t>(1, plan_->cookNames.size()));
            std::iota(owners.begin(), owners.end(), std::size_t{0});
        }
        return owners;
    }

private:
    [[nodiscard]] Owners positionsOf(const std::vector<std::string>& names) const
    {
        Owners owners;
        for (std::size_t cook = 0; cook < plan_->cookNames.size(); ++cook) {
            if (std::find(names.begin(), names.end(), plan_->cookNames[cook]) != names.end()) {
                owners.push_back(cook);
            }
        }
        return owners;
    }
    Owners ownersOf(const SheetStep& step)
    {
        Owners owners = positionsOf(step.cooks);
        if (!step.dish) {
            return owners.empty() ? Owners{0} : owners;
        }
        Owners& last = lastOfDish_[*step.dish];
        if (!owners.empty()) {
            last = owners;
        }
        return last.empty() ? Owners{0} : last;
    }

    const PerHourPlan* plan_;
    std::map<const SheetStep*, Owners> ofStep_;
    std::map<DishId, Owners> lastOfDish_;
};

/// Cuts one hour into its parts and puts everything where it belongs.
class HourCutter
{
public:
    HourCutter(const PerHourPlan& plan, const SheetCooks& cooks, const Ownership& owners)
        : plan_(&plan), cooks_(&cooks), owners_(&owners)
    {}

    [[nodiscard]] std::vector<RowPart> cut(const SheetHour& at, const Interval& when) const
    {
        std::vector<Stretch> stretches = emptyStretches(at, when);
        fill(stretches, at, when);
        std::vector<RowPart> parts;
        auto serving = at.servings.begin();
        for (Stretch& stretch : stretches) {
            for (; serving != at.servings.end() && serving->at <= stretch.when.start; ++serving) {
                parts.emplace_back(&*serving);
            }
            if (!stretch.when.empty() || !isBare(stretch)) {
                parts.emplace_back(std::move(stretch));
            }
        }
        for (; serving != at.servings.end(); ++serving) {
            parts.emplace_back(&*serving);
        }
        return parts;
    }

    static bool isBare(const Stretch& stretch)
    {
        return stretch.turns.empty() &&
               std::all_of(stretch.columns.begin(), stretch.columns.end(),
                           [](const auto& column) { return column.empty(); });
    }

private:
    [[nodiscard]] std::vector<Stretch> emptyStretches(const SheetHour& at,
                                                      const Interval& when) const
    {
        std::vector<Stretch> stretches;
        PlanTime from = when.start;
        const auto add = [&](PlanTime to) {
            Stretch stretch;
            stretch.when = {from, to};
            stretch.columns.resize(cooks_->size());
            stretches.push_back(std::move(stretch));
            from = to;
        };
        for (const SheetServing& serving : at.servings) {
            const PlanTime cutAt = std::clamp(serving.at, from, when.end);
            if (from < cutAt) {
                add(cutAt);
            }
        }
        add(when.end);
        return stretches;
    }

    static Stretch& stretchAt(std::vector<Stretch>& stretches, PlanTime time)
    {
        for (Stretch& stretch : stretches) {
            if (time < stretch.when.end) {
                return stretch;
            }
        }
        return stretches.back();
    }

    void put(std::vector<Stretch>& stretches, const SheetEntry& entry, const Owners& owners) const
    {
        Stretch& stretch = stretchAt(stretches, timeOf(entry));
        for (std::size_t column = 0; column < cooks_->size(); ++column) {
            if (std::find(owners.begin(), owners.end(), (*cooks_)[column]) != owners.end()) {
                stretch.columns[column].push_back(entry);
            }
        }
    }

    void fill(std::vector<Stretch>& stretches, const SheetHour& at, const Interval& when) const
    {
        for (const SheetTable& table : plan_->table) {
            if (when.contains(table.when.start)) {
                put(stretches, &table, {table.cook.value()});
            }
        }
        for (const SheetFetch& fetch : at.fetches) {
            put(stretches, &fetch, owners_->of(fetch));
        }
        for (const SheetStep& step : at.steps) {
            put(stretches, &step, owners_->of(step));
        }
        for (const SheetNote& note : at.notes) {
            put(stretches, &note, owners_->of(note));
        }
        for (const SheetOvenTurn& turn : at.ovenTurns) {
            stretchAt(stretches, turn.at).turns.push_back(&turn);
        }
        for (Stretch& stretch : stretches) {
            for (auto& column : stretch.columns) {
                std::stable_sort(
                    column.begin(), column.end(),
                    [](const SheetEntry& a, const SheetEntry& b) { return timeOf(a) < timeOf(b); });
            }
        }
    }

    const PerHourPlan* plan_;
    const SheetCooks* cooks_;
    const Ownership* owners_;
};

bool isWorthARow(const std::vector<RowPart>& parts)
{
    return std::any_of(parts.begin(), parts.end(), [](const RowPart& part) {
        const auto* stretch = std::get_if<Stretch>(&part);
        return stretch == nullptr || !HourCutter::isBare(*stretch);
    });
}

/// Whether a step of these cooks that takes attention runs on into an interval.
bool isBusyIn(const PerHourPlan& plan, const SheetCooks& cooks, const Ownership& owners,
              const Interval& when)
{
    const auto isTheirs = [&](const SheetStep& step) {
        const Owners& of = owners.of(step);
        return std::find_first_of(of.begin(), of.end(), cooks.begin(), cooks.end()) != of.end();
    };
    for (const SheetDay& day : plan.days) {
        for (const SheetHour& hour : day.hours) {
            for (const SheetStep& step : hour.steps) {
                if (step.attention.percent() > 0 && isTheirs(step) &&
                    when.overlaps({step.start, step.end})) {
                    return true;
                }
            }
        }
    }
    return false;
}

/// Nothing is left to do after the hour's last serving.
bool endsBare(const SheetRow& row)
{
    const auto* last = std::get_if<Stretch>(&row.parts.back());
    return row.parts.size() > 1 && last != nullptr && HourCutter::isBare(*last);
}

/// Words that a cook reads of the whole plan.
std::ptrdiff_t wordCount(const PerHourPlan& plan)
{
    std::ptrdiff_t count = 0;
    const auto add = [&count](const std::string& text) {
        count += text.empty() ? 0 : 1 + std::count(text.begin(), text.end(), ' ');
    };
    for (const SheetDay& day : plan.days) {
        for (const SheetHour& hour : day.hours) {
            for (const SheetStep& step : hour.steps) {
                add(step.deed);
                add(step.detail);
                add(step.after);
                std::for_each(step.amounts.begin(), step.amounts.end(), add);
            }
            for (const SheetNote& note : hour.notes) {
                add(note.text);
            }
        }
    }
    return count;
}

SheetRow foldRow(std::size_t day, const Interval& when, bool isBusy, std::size_t columns)
{
    Stretch nothing;
    nothing.when = when;
    nothing.columns.resize(columns);
    return {day, when, true, isBusy, {nothing}};
}

} // namespace

PlanTime timeOf(const SheetEntry& entry)
{
    if (const auto* table = std::get_if<const SheetTable*>(&entry)) {
        return (*table)->when.start;
    }
    if (const auto* step = std::get_if<const SheetStep*>(&entry)) {
        return (*step)->start;
    }
    if (const auto* note = std::get_if<const SheetNote*>(&entry)) {
        return (*note)->at;
    }
    return std::get<const SheetFetch*>(entry)->at;
}

std::vector<SheetRow> sheetRowsOf(const PerHourPlan& plan, const SheetCooks& cooks)
{
    const Ownership owners{plan};
    const HourCutter cutter{plan, cooks, owners};
    std::vector<SheetRow> rows;
    for (std::size_t day = 0; day < plan.days.size(); ++day) {
        const auto& hours = plan.days[day].hours;
        for (std::size_t at = 0; at < hours.size(); ++at) {
            Interval when{hours[at].start, hours[at].start + wholeHour};
            if (at + 1 < hours.size()) {
                when.end = std::min(when.end, hours[at + 1].start);
            }
            std::vector<RowPart> parts = cutter.cut(hours[at], when);
            if (!isWorthARow(parts)) {
                continue;
            }
            if (!rows.empty() && rows.back().day == day && rows.back().when.end < when.start) {
                const Interval gap{rows.back().when.end, when.start};
                rows.push_back(foldRow(day, gap, isBusyIn(plan, cooks, owners, gap), cooks.size()));
            }
            rows.push_back({day, when, false, false, std::move(parts)});
        }
    }
    for (SheetRow& row : rows) {
        const bool isLastOfDay = &row == &rows.back() || (&row + 1)->day != row.day;
        if (isLastOfDay && endsBare(row)) {
            row.parts.pop_back();
        }
    }
    return rows;
}

std::vector<SheetCooks> sheetsOf(const PerHourPlan& plan, bool isOneCookEach)
{
    // Without cooks there is one column that names nobody.
    SheetCooks all(std::max<std::size_t>(1, plan.cookNames.size()));
    std::iota(all.begin(), all.end(), std::size_t{0});
    const bool isShort = wordCount(plan) <= wordsInFiveMinutes;
    if (!isOneCookEach && isShort && all.size() <= mostCooksBesideEachOther) {
        return {all};
    }
    std::vector<SheetCooks> sheets;
    for (const std::size_t cook : all) {
        sheets.push_back({cook});
    }
    return sheets;
}

} // namespace suppertide::ui
