#include "tests/kill/script.h"

#include <algorithm>
#include <string>

#include "tests/support/for_each_seed.h"

namespace suppertide::test {

namespace {

RecipePtr recipeOf(const RecipeId& id, int number, Random& random)
{
    Recipe recipe;
    recipe.id = id;
    recipe.name = "Step " + std::to_string(number);
    // Of a size that fills no page, one page or several.
    recipe.note = std::string(static_cast<std::size_t>(random.between(0, 20'000)), 'n');
    return std::make_shared<const Recipe>(std::move(recipe));
}

/// An evening under way with one more report, and with its layout as planned anew after that.
OccasionPtr reported(const LibraryState& state, const OccasionId& id, int number, Random& random)
{
    const auto before = state.occasions.find(id);
    OccasionRecord record = before == state.occasions.end() ? OccasionRecord{} : *before->second;
    record.occasion.id = id;
    const Instant at{Minutes{30'000'000 + number}};
    const std::string step = "roots/*/step-" + std::to_string(random.between(0, 30));
    StepReport& report = record.progress.steps[step];
    if (report.started) {
        report.done = at;
    } else {
        report.started = at;
        report.cooks = {"maren"};
    }
    for (int i = 0; i < 5; ++i) {
        record.layout.starts["roots/*/step-" + std::to_string(random.between(0, 30))] =
            at + Minutes{random.between(0, 300)};
    }
    return std::make_shared<const OccasionRecord>(std::move(record));
}

/// Five things at once: two recipes put, changed or taken away, a report on the night, what is at
/// home, and the open occasion.
Change changeOf(const LibraryState& state, int number, Random& random)
{
    LibraryState next = state;
    for (int i = 0; i < 2; ++i) {
        const RecipeId id{"recipe-" + std::to_string(random.between(0, 9))};
        if (next.recipes.contains(id) && random.oneIn(3)) {
            next.recipes.erase(id);
        } else {
            next.recipes[id] = recipeOf(id, number, random);
        }
    }
    const OccasionId night{"night"};
    next.occasions[night] = reported(next, night, number, random);
    Larder larder = larderOf(next);
    larder.stock.resize(
        static_cast<std::size_t>(random.between(0, 30)),
        {"flour " + std::to_string(number), {Rational{number}, Unit::Gram}, {}, false, {}});
    next.larder = std::make_shared<const Larder>(std::move(larder));
    next.open = OccasionId{"occasion-" + std::to_string(number)};
    return differenceOf(state, next, "Step " + std::to_string(number));
}

template <typename Part>
bool areSidesAlike(const Part& a, const Part& b)
{
    const auto alike = [](const auto& x, const auto& y) { return x == y || (x && y && *x == *y); };
    return alike(a.before, b.before) && alike(a.after, b.after);
}

template <typename Part>
bool arePartsAlike(const Part& a, const Part& b)
{
    return a.id == b.id && areSidesAlike(a, b);
}

bool arePartsAlike(const LarderChange& a, const LarderChange& b)
{
    return areSidesAlike(a, b);
}

bool arePartsAlike(const OpenChange& a, const OpenChange& b)
{
    return a.before == b.before && a.after == b.after;
}

bool areChangesAlike(const Change& a, const Change& b)
{
    return a.text == b.text &&
           std::ranges::equal(a.parts, b.parts, [](const ChangePart& x, const ChangePart& y) {
               return x.index() == y.index() &&
                      std::visit(
                          [&y](const auto& part) {
                              return arePartsAlike(
                                  part, std::get<std::remove_cvref_t<decltype(part)>>(y));
                          },
                          x);
           });
}

} // namespace

Deed deedOf(const Model& model, int number)
{
    Random random(static_cast<std::uint64_t>(number));
    if (random.oneIn(4) && model.history.done > 0) {
        return Undo{};
    }
    if (random.oneIn(2) && model.history.done < model.history.changes.size()) {
        return Redo{};
    }
    return changeOf(model.state, number, random);
}

Model after(Model model, const Deed& deed)
{
    History& history = model.history;
    if (const auto* change = std::get_if<Change>(&deed)) {
        model.state = applied(std::move(model.state), *change);
        history.changes.resize(history.done);
        history.changes.push_back(*change);
        if (history.changes.size() > 100) {
            history.changes.erase(history.changes.begin());
        }
        history.done = history.changes.size();
    } else if (std::holds_alternative<Undo>(deed)) {
        model.state = reverted(std::move(model.state), history.changes.at(--history.done));
    } else {
        model.state = applied(std::move(model.state), history.changes.at(history.done++));
    }
    return model;
}

bool areAlike(const Model& a, const Model& b)
{
    return differenceOf(a.state, b.state, {}).parts.empty() && a.history.done == b.history.done &&
           std::ranges::equal(a.history.changes, b.history.changes, areChangesAlike);
}

} // namespace suppertide::test
