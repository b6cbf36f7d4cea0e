// ClashWords: the names of all that one clash concerns, looked up once, for its sentence and for
// its place. For core/wording only.
#pragma once

#include <string>
#include <vector>

#include "core/wording/phrases.h"

namespace suppertide {

class ClashWords
{
public:
    ClashWords(const Plan& plan, const Occasion& occasion, const Clash& clash,
               const ReadingStyle& style)
        : plan_(plan), formulation_(*plan.formulation), occasion_(occasion), clash_(clash),
          times_(plan, occasion, style)
    {}

    [[nodiscard]] const Clash& clash() const { return clash_; }
    [[nodiscard]] const Formulation& formulation() const { return formulation_; }
    [[nodiscard]] const Plan& plan() const { return plan_; }
    [[nodiscard]] const TimeReader& times() const { return times_; }

    /// "the gratin and the roast roots"; "what is cooked" if no task is named.
    [[nodiscard]] std::string dishes() const;
    /// The deeds, quoted: “Slice the potatoes” and “Fry the filling”; of more than four the first
    /// three, and how many more.
    [[nodiscard]] std::string deeds() const;
    /// How many of the clash's tasks there are at once at the worst of its times.
    [[nodiscard]] std::size_t mostAtOnce() const;
    /// "From 17:40 to 18:10 "; empty if the clash has no time.
    [[nodiscard]] std::string fromTo() const;
    /// "the oven"; "the oven" too if it is not said which.
    [[nodiscard]] std::string oven() const;
    [[nodiscard]] std::string cook() const;
    /// "wide pan", "fridge": what the pool or count is called.
    [[nodiscard]] std::string thing() const;
    [[nodiscard]] std::string course() const;
    [[nodiscard]] const Course* findCourse() const;
    [[nodiscard]] std::string guest() const;
    /// "the gratin": the clash's dish, its lag's, or those of its tasks.
    [[nodiscard]] std::string dish() const;
    [[nodiscard]] std::string ovenDish(OvenDemandIndex demand) const;
    /// "at 150 °C", "at 140 °C to 160 °C": what a dish wants of its oven.
    [[nodiscard]] std::string wanted(OvenDemandIndex demand) const;
    [[nodiscard]] std::optional<Interval> gapOf(const Lag& lag) const;
    [[nodiscard]] std::optional<Interval> intervalOf(TaskIndex task) const;

private:
    const Plan& plan_;
    const Formulation& formulation_;
    const Occasion& occasion_;
    const Clash& clash_;
    TimeReader times_;
};

} // namespace suppertide
