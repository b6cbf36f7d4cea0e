#include "core/shopping/line_writer.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/shopping/day_words.h"
#include "core/shopping/line_amounts.h"
#include "core/shopping/packs.h"
#include "core/shopping/part_words.h"

namespace suppertide::shopping {

namespace {

const Rational nothing{0};

Rational ceiledTo(const Rational& value, std::int64_t step)
{
    return Rational{(value / Rational{step}).ceiled() * step};
}

CivilDate dayOf(const Instant& instant, const std::string& zone)
{
    const auto known = TimeZone::find(zone);
    return (known ? *known : TimeZone::utc()).civil(instant).date;
}

/// One group of needs made into a line.
class LineWriter
{
public:
    /// Takes from `stock` what it can compare with.
    LineWriter(NeedGroup group, const IngredientFacts& facts, const std::vector<Pack>& sold,
               const std::optional<MeasureSystem>& measures, std::vector<StockItem>& stock)
        : group_(std::move(group)), facts_(facts), sold_(sold), measures_(measures), stock_(stock)
    {}

    ShoppingLine write(const std::string& key)
    {
        line_.key = key;
        line_.ingredient = facts_.name;
        line_.section = facts_.section;
        line_.isInTable = facts_.isKnown;
        line_.keepsDays = facts_.keepsDays;
        line_.needed = {group_.amount, group_.unit};
        line_.fromHome = line_.toBuy = line_.leftOver = {nothing, group_.unit};
        findFirstUse();
        noteWhatIsTaken();
        noteOddUnits();
        if (group_.isCounted || isWanted()) {
            takeFromHome();
            if (!line_.isAlwaysThere) {
                buy();
            }
        }
        notePartsLeft();
        line_.needs = std::move(group_.needs);
        return std::move(line_);
    }

private:
    [[nodiscard]] std::string said(const Amount& amount) const
    {
        return kitchenText(amount, measures_);
    }

    [[nodiscard]] bool isWanted() const
    {
        return std::ranges::any_of(group_.needs,
                                   [](const ShoppingNeed& need) { return need.takenFrom.empty(); });
    }

    void findFirstUse()
    {
        for (const ShoppingNeed& need : group_.needs) {
            if (need.takenFrom.empty() && need.firstUse &&
                (!line_.firstUse || *need.firstUse < *line_.firstUse)) {
                line_.firstUse = need.firstUse;
            }
        }
    }

    void noteWhatIsTaken()
    {
        for (const ShoppingNeed& need : group_.needs) {
            if (!need.takenFrom.empty()) {
                line_.notes.push_back(fmt::format("{} for “{}” comes from “{}”.", said(need.amount),
                                                  need.recipeName, need.takenFrom));
            }
        }
    }

    /// Three litres of eggs, two kilograms of what is counted.
    void noteOddUnits()
    {
        if (dimensionOf(group_.unit) != Dimension::Count || !group_.isCounted) {
            return;
        }
        constexpr std::int64_t suspicious = 1000; // ml
        for (const ShoppingNeed& need : group_.needs) {
            if (need.part != IngredientPart::Whole ||
                dimensionOf(need.amount.unit) != Dimension::Volume) {
                continue;
            }
            const auto count = asBought(need, group_.unit, facts_);
            const auto volume = measured(need.amount, Unit::Millilitre, facts_);
            if (count && volume && *volume >= Rational{suspicious}) {
                line_.notes.push_back(
                    fmt::format("“{}” asks for {} of {}, which is counted: it was taken as {}. See "
                                "whether the recipe means that.",
                                need.recipeName, said(need.amount), need.ingredient,
                                said({Rational{count->ceiled()}, group_.unit})));
            }
        }
    }

    void takeFromHome()
    {
        Rational there;
        for (std::size_t i = 0; i < stock_.size();) {
            const StockItem& item = stock_[i];
            const auto value = usable(item);
            line_.isAlwaysThere = line_.isAlwaysThere || item.isAlwaysThere;
            if (value) {
                there = sumOf(there, *value);
                isSomeThere_ = true;
                stock_.erase(stock_.begin() + static_cast<std::ptrdiff_t>(i));
            } else {
                ++i;
            }
        }
        line_.isAlwaysThere = line_.isAlwaysThere || facts_.isFromTheTap;
        line_.fromHome.value = line_.isAlwaysThere ? group_.amount : std::min(there, group_.amount);
    }

    /// So much of the line's unit; of a pinch any amount at home will do.
    [[nodiscard]] std::optional<Rational> usable(const StockItem& item) const
    {
        if (!group_.isCounted && item.amount.value > nothing) {
            return nothing;
        }
        return item.isAlwaysThere ? std::nullopt : measured(item.amount, group_.unit, facts_);
    }

    void buy()
    {
        if (!group_.isCounted) {
            noteAnUnstatedAmount();
            return;
        }
        const Rational rest = group_.amount - line_.fromHome.value;
        if (rest <= nothing) {
            return;
        }
        findPacks();
        if (sizes_.empty()) {
            buyLoose(rest);
        } else {
            buyPacks(rest);
        }
        const bool isWeighedOut = sizes_.empty() && dimensionOf(group_.unit) != Dimension::Count;
        if (!isWeighedOut) {
            // Of a whole that is opened, parts are left, not the whole.
            const Rational half = Rational{group_.opened.ceiled()} - group_.opened;
            const bool isInPieces = group_.unit == Unit::Piece;
            const Rational left = line_.toBuy.value - rest - (isInPieces ? half : nothing);
            line_.leftOver.value = std::max(left, nothing);
        }
    }

    void noteAnUnstatedAmount()
    {
        if (isSomeThere_) {
            return;
        }
        line_.notes.emplace_back("The recipes do not say how much: see that there is some.");
        line_.toBuy = {nothing, Unit::ToTaste};
    }

    void findPacks()
    {
        for (const Pack& pack : sold_) {
            // A pack is taken to hold no more than it says, also where its size is rounded.
            const auto size = measured(pack.amount, group_.unit, facts_);
            if (!size || *size <= nothing) {
                line_.notes.push_back(fmt::format(
                    "It is sold by {}, and nobody has said what one weighs: ask for {} in the "
                    "shop, or say in the larder what one weighs.",
                    toText(pack.amount), said({group_.amount, group_.unit})));
            } else if (pack.isLoose) {
                loose_ = {pack, *size};
            } else {
                packs_.push_back(pack);
                sizes_.push_back({*size, pack.price});
            }
        }
    }

    void buyLoose(const Rational& rest)
    {
        line_.toBuy.value = roundedUp(rest, group_.unit);
        if (loose_ && loose_->first.price) {
            line_.cost =
                (line_.toBuy.value / loose_->second * Rational{*loose_->first.price}).ceiled();
        }
    }

    void buyPacks(const Rational& rest)
    {
        const std::vector<std::int64_t> counts = packsFor(rest, sizes_);
        std::optional<std::int64_t> cost{0};
        for (std::size_t i = 0; i < packs_.size(); ++i) {
            if (counts[i] == 0) {
                continue;
            }
            line_.packs.push_back({packs_[i], counts[i]});
            line_.toBuy.value = sumOf(line_.toBuy.value, sizes_[i].size * Rational{counts[i]});
            cost = cost && packs_[i].price ? std::optional{*cost + counts[i] * *packs_[i].price}
                                           : std::nullopt;
        }
        line_.cost = cost;
    }

    void notePartsLeft()
    {
        if (group_.opened <= nothing || line_.isAlwaysThere) {
            return;
        }
        std::vector<IngredientPart> known;
        for (const IngredientPart part : {IngredientPart::Yolk, IngredientPart::White,
                                          IngredientPart::Juice, IngredientPart::Zest}) {
            if (facts_.parts.contains(part) ||
                std::ranges::find(group_.needs, part, &ShoppingNeed::part) != group_.needs.end()) {
                known.push_back(part);
            }
        }
        const Rational opened{group_.opened.ceiled()};
        for (const auto& [part, wholes] : group_.wholes.left(opened, known)) {
            line_.partsLeft.push_back(fmt::format(
                "{} of {} × {}", wordFor(part), toText(Amount{wholes, Unit::Piece}), facts_.name));
        }
    }

    NeedGroup group_;
    const IngredientFacts& facts_;
    const std::vector<Pack>& sold_;
    const std::optional<MeasureSystem>& measures_;
    std::vector<StockItem>& stock_;
    ShoppingLine line_;
    bool isSomeThere_ = false;
    std::vector<Pack> packs_;
    std::vector<PackSize> sizes_;
    std::optional<std::pair<Pack, Rational>> loose_;
};

/// All lines of one ingredient, with what the larder has of it and knows of its packs.
class IngredientLines
{
public:
    IngredientLines(const IngredientFacts& facts, const ShoppingInput& input)
        : facts_(facts), input_(input)
    {}

    void add(const StockItem& item) { stock_.push_back(item); }
    void add(const Pack& pack) { sold_.push_back(pack); }
    void add(ShoppingNeed need) { needs_.push_back(std::move(need)); }

    void write(std::vector<ShoppingLine>& lines)
    {
        findFirstUse();
        const std::string name = wordOfRecipes();
        std::vector<StockItem> stock = stockInTime();
        std::vector<NeedGroup> groups = groupsOf(std::move(needs_), facts_);
        const std::size_t first = lines.size();
        for (NeedGroup& group : groups) {
            const bool isApart = lines.size() > first;
            const std::string key =
                isApart ? fmt::format("{} ({})", facts_.key, symbolOf(group.unit)) : facts_.key;
            lines.push_back(
                LineWriter(std::move(group), facts_, sold_, input_.measures, stock).write(key));
            lines.back().ingredient = name;
            if (isApart) {
                lines.back().notes.push_back(
                    fmt::format("Nobody has said how {} of it compares with {}, so it stands "
                                "apart.",
                                said(lines.back().needed), said(lines[first].needed)));
            }
        }
        for (const StockItem& item : stock) {
            if (!item.isAlwaysThere) {
                lines[first].notes.push_back(
                    fmt::format("At home there is {} of it; nobody has said how that compares "
                                "with {}.",
                                said(item.amount), said(lines[first].needed)));
            }
        }
        lines[first].notes.insert(lines[first].notes.end(), notes_.begin(), notes_.end());
    }

private:
    [[nodiscard]] std::string said(const Amount& amount) const
    {
        return kitchenText(amount, input_.measures);
    }

    void findFirstUse()
    {
        for (const ShoppingNeed& need : needs_) {
            if (need.firstUse && (!firstUse_ || *need.firstUse < *firstUse_)) {
                firstUse_ = need.firstUse;
            }
        }
    }

    /// “waxy potato”, if that is what all of them ask for; else the table's “potato”.
    [[nodiscard]] std::string wordOfRecipes() const
    {
        const auto isOtherwise = [this](const ShoppingNeed& need) {
            return ingredientKey(need.ingredient) != ingredientKey(needs_.front().ingredient);
        };
        return std::ranges::any_of(needs_, isOtherwise) ? facts_.name : needs_.front().ingredient;
    }

    std::vector<StockItem> stockInTime()
    {
        std::vector<StockItem> stock;
        for (const StockItem& item : stock_) {
            if (item.useBy && firstUse_ &&
                dayOf(*firstUse_, input_.evening.occasion->zone) > *item.useBy) {
                notes_.push_back(
                    fmt::format("At home there is {} of it, but it is to be used by {}.",
                                said(item.amount), dayWords(*item.useBy)));
            } else {
                stock.push_back(item);
            }
        }
        return stock;
    }

    const IngredientFacts& facts_;
    const ShoppingInput& input_;
    std::vector<ShoppingNeed> needs_;
    std::vector<StockItem> stock_;
    std::vector<Pack> sold_;
    std::optional<Instant> firstUse_;
    std::vector<std::string> notes_;
};

} // namespace

Rational roundedUp(const Rational& value, Unit unit)
{
    const Dimension dimension = dimensionOf(unit);
    if (dimension != Dimension::Mass && dimension != Dimension::Volume) {
        return Rational{value.ceiled()};
    }
    constexpr std::int64_t fine = 100;
    constexpr std::int64_t coarse = 1000;
    const Rational whole = ceiledTo(value, 1);
    return whole <= Rational{fine} ? whole : ceiledTo(value, whole <= Rational{coarse} ? 5 : 10);
}

std::vector<ShoppingLine> linesFor(const std::vector<ShoppingNeed>& needs,
                                   const ShoppingInput& input, FactsBook& facts)
{
    std::vector<IngredientLines> ingredients;
    std::map<std::string, std::size_t> byKey;
    for (ShoppingNeed need : needs) {
        takeFromWhole(need, facts);
        const IngredientFacts& known = facts.of(need.ingredient);
        const auto [place, isNew] = byKey.emplace(known.key, ingredients.size());
        if (isNew) {
            ingredients.emplace_back(known, input);
        }
        ingredients[place->second].add(std::move(need));
    }
    const auto handOut = [&](const auto& things) {
        for (const auto& thing : things) {
            const auto place = byKey.find(facts.of(thing.ingredient).key);
            if (place != byKey.end()) {
                ingredients[place->second].add(thing);
            }
        }
    };
    handOut(input.larder.stock);
    handOut(input.larder.packs);
    std::vector<ShoppingLine> lines;
    for (IngredientLines& ingredient : ingredients) {
        ingredient.write(lines);
    }
    return lines;
}

} // namespace suppertide::shopping
