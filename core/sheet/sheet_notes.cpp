// Boxed notes: the dangers of a step at its hour, and before each course the guests who must not
// get what others get.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/sheet/sheet_parts.h"
#include "core/wording/phrases.h"

namespace suppertide {

namespace {

/// Each danger is said where it first comes up in a dish, not at every stir of it.
void addCautions(const SheetContext& context, const std::vector<SheetStep>& steps,
                 std::vector<SheetNote>& notes)
{
    std::map<std::optional<DishId>, std::vector<Caution>> said;
    for (const SheetStep& step : steps) {
        for (const Caution caution : context.formulation.tasks[step.task].cautions) {
            std::vector<Caution>& ofDish = said[step.dish];
            if (std::ranges::find(ofDish, caution) == ofDish.end()) {
                ofDish.push_back(caution);
                notes.push_back({SheetNoteKind::Caution, step.start,
                                 std::string(cautionText(caution)), step.cooks});
            }
        }
    }
}

std::string needsOf(const Guest& guest)
{
    std::vector<std::string> needs;
    for (const Diet diet : guest.diets) {
        needs.emplace_back(nameOf(diet));
    }
    for (const Substance substance : guest.allergies) {
        needs.push_back(fmt::format("no {}", nameOf(substance)));
    }
    return listed(needs);
}

/// "Bea: coeliac. Fay: no tree nuts." where the course holds something that they avoid.
std::string guestsToMind(const SheetContext& context, const Course& course)
{
    std::vector<Substance> contained;
    for (const Dish& dish : course.dishes) {
        const auto recipe = context.recipes.find(dish.recipe);
        for (const MixEntry& entry : dish.mix) {
            if (recipe != context.recipes.end() && entry.portions > Portions{0}) {
                const Contents contents =
                    contentsOf(*recipe->second, entry.variant, context.recipes);
                contained.insert(contained.end(), contents.contains.begin(),
                                 contents.contains.end());
            }
        }
    }
    std::string text;
    for (const Guest& guest : context.occasion.guests) {
        const std::vector<Substance> avoided = avoidedBy(guest);
        const bool concerned = std::ranges::any_of(avoided, [&contained](Substance each) {
            return std::ranges::find(contained, each) != contained.end();
        });
        if (concerned) {
            text += fmt::format("{}{}: {}.", text.empty() ? "" : " ", guest.name, needsOf(guest));
        }
    }
    return text;
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
        std::string text = guestsToMind(context, course);
        if (when && !text.empty()) {
            notes.push_back({SheetNoteKind::Guests, when->start - ahead, std::move(text), {}});
        }
    }
    std::ranges::stable_sort(notes, {}, &SheetNote::at);
    return notes;
}

} // namespace suppertide
