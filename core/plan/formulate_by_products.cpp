// By-products (formulate rule 9): what one step leaves, another may take; else its recipe's own
// line stands.
#include <algorithm>

#include "core/plan/evening.h"

namespace suppertide {

namespace {

/// Bones, whites, yolks and the like keep in the fridge about so long (common practice); local
/// advice prevails.
constexpr Minutes mostKept{2 * 24 * 60};
/// What it is worth, in points of the plan's cost, to use what is left over.
constexpr std::int64_t wasteAvoided = 3;

/// What a batch leaves, and how much of it nobody has taken yet.
struct Left
{
    std::size_t making = 0;
    std::size_t batch = 0;
    std::string name;
    Amount amount;
};

std::vector<Left> leftovers(const Evening& evening)
{
    std::vector<Left> result;
    for (std::size_t index = 0; index < evening.makings.size(); ++index) {
        const Making& making = evening.makings[index];
        for (std::size_t batch = 0; batch < making.batches.size(); ++batch) {
            const MadeStep& made = making.steps[making.batches[batch].step];
            // What only one method leaves is not counted upon.
            if (made.method || making.onlyWith) {
                continue;
            }
            const Rational share = making.batches[batch].share.total() / making.recipe->portions;
            for (const ByProduct& product : made.step.leaves) {
                result.push_back({index, batch, product.name, scaled(product.amount, share)});
            }
        }
    }
    return result;
}

class ByProductWriter
{
public:
    explicit ByProductWriter(Evening& evening) : evening_(evening), left_(leftovers(evening)) {}

    void write()
    {
        for (std::size_t index = 0; index < evening_.makings.size(); ++index) {
            const Making& making = evening_.makings[index];
            for (std::size_t batch = 0; batch < making.batches.size(); ++batch) {
                for (const IngredientLine& line : making.steps[making.batches[batch].step].lines) {
                    if (line.byProduct) {
                        offer(index, batch, line);
                    }
                }
            }
        }
    }

private:
    void offer(std::size_t index, std::size_t batch, const IngredientLine& line)
    {
        const Making& making = evening_.makings[index];
        const MadeStep& made = making.steps[making.batches[batch].step];
        const Amount wanted = amountFor(line, making, making.batches[batch].share.total(),
                                        making.shareOf(made.variants).total());
        const auto from = std::ranges::find_if(left_, [&](const Left& left) {
            const auto same = inUnit(wanted, left.amount.unit);
            return left.making != index && left.name == *line.byProduct && same &&
                   left.amount.value >= same->most();
        });
        if (from == left_.end()) {
            return;
        }
        const Rational taken = inUnit(wanted, from->amount.unit)->most();
        from->amount = {from->amount.value - taken, from->amount.unit};
        addChoice(index, batch, line, *from);
    }

    void addChoice(std::size_t index, std::size_t batch, const IngredientLine& line,
                   const Left& left)
    {
        FormulationDraft& draft = evening_.draft;
        const Making& making = evening_.makings[index];
        const std::string id = evening_.idOf(making, making.batches[batch]) + "/" + line.id.text();
        const ChoiceIndex choice = draft.addChoice(
            id, {ChoiceKind::ByProduct, making.dish->id, making.name, left.name, {}});
        const std::string own = draft.problem().choices[choice].id;
        const auto said = evening_.layout().options.find(own);
        const bool isPinned =
            evening_.layout().pinned.contains(own) && said != evening_.layout().options.end();
        if (!isPinned || said->second != "own") {
            use(choice, own, index, batch, left);
        }
        if (!isPinned || said->second == "own") {
            draft.addOption(choice, "own", "bought", wasteAvoided * costUnitsPerPoint);
        }
    }

    void use(ChoiceIndex choice, const std::string& id, std::size_t index, std::size_t batch,
             const Left& left)
    {
        FormulationDraft& draft = evening_.draft;
        const Making& making = evening_.makings[index];
        const Making& giver = evening_.makings[left.making];
        const OptionRef option = draft.addOption(choice, "use", "from " + giver.name);
        const BatchTasks& from = evening_.batchTasks(left.making, left.batch);
        TaskSource source;
        source.role = TaskRole::TakeFrom;
        source.rule = Rule::Preparations;
        source.course = making.course->id;
        source.dish = making.dish->id;
        source.recipe = making.recipe->id;
        source.dishName = making.name;
        source.text = left.name + " from " + giver.name;
        const TaskIndex taken = draft.addEvent(id + "@use", std::move(source));
        draft.putInto(option, taken);
        LagSource given = orderSource(giver, Rule::Preparations);
        given.text = left.name;
        draft.addLag(from.end(), startOf(taken), Gap::none(), given);
        LagSource kept = given;
        kept.dish = making.dish->id;
        kept.most = mostKept;
        draft.addLag(startOf(taken), evening_.batchTasks(index, batch).start(),
                     {Minutes{0}, mostKept}, kept);
    }

    Evening& evening_;
    std::vector<Left> left_;
};

} // namespace

void addByProducts(Evening& evening)
{
    ByProductWriter(evening).write();
}

} // namespace suppertide
