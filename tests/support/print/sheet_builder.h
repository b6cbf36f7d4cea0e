// Sheet builder: a per-hour plan by hand, with as much of a plan behind it as paper reads: the
// tasks with their dishes, the ovens with their programs and what stands in them.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/sheet/per_hour_plan.h"

namespace suppertide::ui::test {

/// A clock time of the example's zone.
struct On
{
    CivilDate date;
    int hour = 0;
    int minute = 0;
};

struct StepWords
{
    std::string deed;
    std::string detail;
    std::vector<std::string> amounts;
    std::string after;
};

class SheetBuilder
{
public:
    /// Minute 0 is the midnight of London before `first`.
    explicit SheetBuilder(const CivilDate& first);

    [[nodiscard]] PlanTime at(const On& time) const;

    /// Free all the time, or from then on.
    CookIndex cook(const std::string& name, const std::optional<On>& from = {});
    OvenIndex oven(const std::string& name, std::int64_t shelves, int maxC);
    DishId dish(const std::string& id, const std::string& name, int course);

    void step(const On& start, Minutes length, Attention attention,
              const std::vector<std::string>& cooks, const std::optional<DishId>& dish,
              const StepWords& words);
    /// Food in an oven; no step of its own.
    void bake(OvenIndex oven, const On& from, const On& to, const DishId& dish);
    void turn(OvenIndex oven, const On& when, std::optional<int> setC, const std::string& text);
    void note(const On& when, const std::string& text, const std::vector<std::string>& cooks,
              SheetNoteKind kind = SheetNoteKind::Caution);
    void fetch(const On& when, const std::string& text, const std::vector<std::string>& cooks);
    void serving(int number, const On& when, const std::string& text,
                 const std::vector<std::string>& helpings);
    void table(CookIndex cook, const On& from, const On& to);

    /// The words that belong to no hour.
    PerHourPlan words;

    [[nodiscard]] PerHourPlan build() const;

private:
    struct Baking
    {
        TaskIndex task;
        OvenIndex oven;
        DishId dish;
    };
    struct DishEntry
    {
        std::string name;
        CourseId course;
    };

    TaskIndex addTask(PlanTime start, Minutes length, const std::optional<DishId>& dish);
    SheetHour& hourOf(PlanTime time);

    Formulation formulation_;
    std::map<TaskIndex, PlanTime> starts_;
    std::vector<Baking> bakings_;
    std::vector<OvenProgram> programs_;
    std::map<DishId, DishEntry> dishes_;
    std::map<PlanTime, SheetHour> hours_; // by their start
    std::vector<SheetTable> table_;
};

} // namespace suppertide::ui::test
