// Boxed notes: the dangers of a step at its hour, and before each course the guests who must not
// get what others get.
#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <tuple>

#include "core/plan/step_cautions.h"
#include "core/sheet/sheet_parts.h"
#include "core/wording/diet_words.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

/// A danger of the cook's tools, the same in every dish; the others are dangers of a dish.
bool isOfTheCook(safety::CautionKind caution)
{
    using safety::CautionKind;
    return caution == CautionKind::SharpBlade || caution == CautionKind::Steam ||
           caution == CautionKind::HotOven;
}

/// Each danger is said where it first comes up for a cook on a day: anew in each recipe, but once
/// for a cook's tools. What is said at every stir is not read.
void addCautions(const SheetContext& context, const std::vector<SheetStep>& steps,
                 std::vector<SheetNote>& notes)
{
    using Said = std::tuple<CivilDate, std::vector<std::string>, std::optional<RecipeId>,
                            safety::CautionKind>;
    std::set<Said> said;
    for (const SheetStep& step : steps) {
        const TaskSource& source = context.formulation.tasks[step.task];
        const CivilDate day = context.formulation.calendar.civil(step.start).date;
        for (const safety::CautionKind caution : cautionsOf(source)) {
            // A preparation has the id of the dish that uses it, but dangers of its own.
            const auto recipe = isOfTheCook(caution) ? std::nullopt : source.recipe;
            if (said.insert({day, step.cooks, recipe, caution}).second) {
                notes.push_back({SheetNoteKind::Caution, step.start,
                                 safety::cautionOf(caution).says, step.cooks});
            }
        }
    }
}

/// Before a course: who must not get what others get, and what they get instead.
class GuestsToMind
{
public:
    GuestsToMind(const SheetContext& context, const Course& course)
        : context_(context), course_(course),
          helpings_(helpingsOf(context.occasion, course, context.recipes, context.ingredients))
    {}

    /// "Bea (coeliac) gets mushroom tartlets, gluten-free case. Nothing here suits Fay (no milk)."
    [[nodiscard]] std::string text() const
    {
        const std::vector<Substance> contained = containedInCourse();
        std::string text;
        for (const Guest& guest : context_.occasion.guests) {
            const std::vector<Substance> avoided = avoidedBy(guest);
            const bool isConcerned = std::ranges::any_of(avoided, [&contained](Substance each) {
                return std::ranges::find(contained, each) != contained.end();
            });
            if (isConcerned) {
                text += (text.empty() ? "" : " ") + sentenceFor(guest);
            }
        }
        return text;
    }

private:
    [[nodiscard]] std::vector<Substance> containedInCourse() const
    {
        std::vector<Substance> contained;
        for (const Dish& dish : course_.dishes) {
            const auto recipe = context_.recipes.find(dish.recipe);
            for (const MixEntry& entry : dish.mix) {
                if (recipe != context_.recipes.end() && entry.portions > Portions{0}) {
                    const Contents contents = contentsOf(*recipe->second, entry.variant,
                                                         context_.recipes, context_.ingredients);
                    contained.insert(contained.end(), contents.contains.begin(),
                                     contents.contains.end());
                }
            }
        }
        return contained;
    }

    [[nodiscard]] std::string sentenceFor(const Guest& guest) const
    {
        const std::string who = fmt::format("{} ({})", guest.name, listed(needsOf(guest)));
        std::vector<std::string> suits;
        std::vector<std::string> harms;
        for (const Helping& helping : helpings_) {
            if (helping.guest != guest.id) {
                continue;
            }
            if (!helping.unsuitable.empty()) {
                harms.push_back(nameOfPortion(helping));
            } else if (!isForEverybody(helping)) {
                suits.push_back(nameOfPortion(helping));
            }
        }
        std::string text = who;
        if (!suits.empty()) {
            text += " gets " + listed(suits);
        }
        if (!harms.empty()) {
            text += fmt::format("{} must not get {}", suits.empty() ? "" : ", and", listed(harms));
        }
        return suits.empty() && harms.empty() ? who + ": mind what is in each dish." : text + ".";
    }

    /// All portions of the dish are of one variant, and there is one for each.
    [[nodiscard]] bool isForEverybody(const Helping& helping) const
    {
        const auto got = std::ranges::count_if(helpings_, [&helping](const Helping& other) {
            return other.dish == helping.dish && other.variant == helping.variant;
        });
        return static_cast<std::size_t>(got) == context_.occasion.guests.size();
    }

    [[nodiscard]] std::string nameOfPortion(const Helping& helping) const
    {
        const auto dish = std::ranges::find(course_.dishes, helping.dish, &Dish::id);
        const auto recipe = dish == course_.dishes.end() ? context_.recipes.end()
                                                         : context_.recipes.find(dish->recipe);
        return recipe == context_.recipes.end() ? helping.dish.text()
                                                : portionName(*recipe->second, helping.variant);
    }

    const SheetContext& context_;
    const Course& course_;
    std::vector<Helping> helpings_;
};

/// Names of the course's dishes that a test holds for, with portions.
template <typename Test>
std::vector<std::string> dishesThat(const SheetContext& context, const Course& course, Test test)
{
    std::vector<std::string> names;
    for (const Dish& dish : course.dishes) {
        const auto recipe = context.recipes.find(dish.recipe);
        if (recipe != context.recipes.end() && portionsOf(dish) > Portions{0} &&
            test(dish, *recipe->second)) {
            names.push_back(theThing(plainName(recipe->second->name)));
        }
    }
    return names;
}

/// What guests ought to hear when the plates come: alcohol, and egg that stays raw.
void addAtTable(const SheetContext& context, const Course& course, PlanTime at,
                std::vector<SheetNote>& notes)
{
    const std::vector<std::string> spirited =
        dishesThat(context, course, [&](const Dish& dish, const Recipe& recipe) {
            return std::ranges::any_of(dish.mix, [&](const MixEntry& entry) {
                if (entry.portions == Portions{0}) {
                    return false;
                }
                const Contents contents =
                    contentsOf(recipe, entry.variant, context.recipes, context.ingredients);
                return std::ranges::find(contents.contains, Substance::Alcohol) !=
                       contents.contains.end();
            });
        });
    if (!spirited.empty()) {
        notes.push_back({SheetNoteKind::Caution,
                         at,
                         fmt::format("There is alcohol in {}, and cooking leaves part of it: say "
                                     "so at table.",
                                     listed(spirited)),
                         {}});
    }
    const std::vector<std::string> raw =
        dishesThat(context, course, [&](const Dish& dish, const Recipe& /*recipe*/) {
            return std::ranges::any_of(context.formulation.foods, [&](const TrackedFood& food) {
                return food.dish == dish.id && food.kind.has(RiskFact::RawEgg) &&
                       !food.kind.has(RiskFact::PasteurisedEgg);
            });
        });
    if (!raw.empty()) {
        notes.push_back({SheetNoteKind::Caution,
                         at,
                         fmt::format("There is raw egg in {}: not for the pregnant, the very young "
                                     "or old, or the ill.",
                                     listed(raw)),
                         {}});
    }
}

} // namespace

std::vector<SheetNote> sheetNotes(const SheetContext& context, const std::vector<SheetStep>& steps)
{
    // The plates are minded a quarter of an hour before they go out.
    constexpr Minutes ahead{15};
    std::vector<SheetNote> notes;
    addCautions(context, steps, notes);
    for (const Course& course : context.occasion.courses) {
        const auto event = context.formulation.servings.find(course.id);
        if (event == context.formulation.servings.end()) {
            continue;
        }
        const auto when = context.timetable.interval(event->second);
        if (when) {
            addAtTable(context, course, when->start - ahead, notes);
        }
        std::string text = GuestsToMind(context, course).text();
        if (when && !text.empty()) {
            notes.push_back({SheetNoteKind::Guests, when->start - ahead, std::move(text), {}});
        }
    }
    std::ranges::stable_sort(notes, {}, &SheetNote::at);
    return notes;
}

} // namespace suppertide
