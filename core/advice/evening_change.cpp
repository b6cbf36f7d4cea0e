#include "core/advice/evening_change.h"

#include <algorithm>

#include "core/advice/helping_hours.h"

namespace suppertide {

namespace {

template <typename List, typename Key>
auto* findById(List& list, const Key& id)
{
    const auto found =
        std::ranges::find_if(list, [&](const auto& thing) { return thing.id == id; });
    return found == list.end() ? nullptr : &*found;
}

template <typename List>
auto freshIdIn(const List& list, const std::string& wish)
{
    using Key = std::decay_t<decltype(list.front().id)>;
    Key id{wish};
    for (int number = 2; findById(list, id) != nullptr; ++number) {
        id = Key{wish + "-" + std::to_string(number)};
    }
    return id;
}

Dish* findDish(Occasion& occasion, const DishId& id)
{
    for (Course& course : occasion.courses) {
        if (Dish* dish = findById(course.dishes, id)) {
            return dish;
        }
    }
    return nullptr;
}

void addPortions(std::vector<MixEntry>& mix, const VariantId& variant, const Portions& portions,
                 const std::vector<GuestId>& guests)
{
    const auto there = std::ranges::find(mix, variant, &MixEntry::variant);
    if (there == mix.end()) {
        mix.push_back({variant, portions, guests});
        return;
    }
    there->portions = there->portions + portions;
    there->guests.insert(there->guests.end(), guests.begin(), guests.end());
}

class Applying
{
public:
    explicit Applying(const PlanInput& input)
        : input_(input), occasion_(*input.occasion), kitchen_(*input.kitchen),
          layout_(*input.layout), recipes_(input.recipes)
    {}

    void operator()(const PlanAnew&) {}
    void operator()(const Unpin& change)
    {
        layout_.pinned.erase(change.id);
        const auto setting = static_cast<std::size_t>(change.setting);
        if (change.setting >= 0 && setting < layout_.ovenSettings.size()) {
            layout_.ovenSettings.erase(layout_.ovenSettings.begin() + change.setting);
        }
    }
    void operator()(const MoveStep& change)
    {
        layout_.starts[change.task] = change.to;
        layout_.pinned.insert(change.task);
    }
    void operator()(const TakeOption& change)
    {
        layout_.options[change.choice] = change.to;
        layout_.pinned.insert(change.choice);
    }
    void operator()(const TakeMethod& change)
    {
        if (Dish* dish = findDish(occasion_, change.dish)) {
            dish->methods[change.choice] = change.to;
        }
    }
    void operator()(const UseOther& change) { layout_.units[change.demand] = change.to; }
    void operator()(const WashBefore& change) { layout_.washed.insert(change.demand); }
    void operator()(const ShareTemperature& change)
    {
        const auto setting = static_cast<std::size_t>(change.setting);
        if (setting < layout_.ovenSettings.size()) {
            layout_.ovenSettings[setting].setC = change.toC;
        }
    }
    void operator()(const ServeLater& change)
    {
        for (const ServingMove& move : change.moves) {
            if (Course* course = findById(occasion_.courses, move.course)) {
                course->serving = move.to;
            }
        }
    }
    void operator()(const PlanLikely&) { occasion_.preferences.caution = CautionLevel::Likely; }
    void operator()(const DropJob& change)
    {
        std::erase_if(occasion_.houseJobs,
                      [&](const HouseJob& job) { return job.id == change.job; });
    }
    void operator()(const JobEarlier& change)
    {
        if (HouseJob* job = findById(occasion_.houseJobs, change.job)) {
            job->earliest = change.to;
        }
    }
    void operator()(const FreeCook& change)
    {
        if (const KitchenCook* cook = findById(kitchen_.cooks, change.cook)) {
            addFreeHours(occasion_, *cook, change.from, change.to);
        }
    }
    void operator()(const Helper& change)
    {
        KitchenCook helper;
        helper.id = freshIdIn(kitchen_.cooks, "helper");
        helper.name = "Helper";
        helper.isHost = false;
        helper.usualHours.clear();
        kitchen_.cooks.push_back(helper);
        addFreeHours(occasion_, helper, change.from, change.to);
    }
    void operator()(const Borrow& change) { borrow(change); }
    void operator()(const AddShelf& change)
    {
        if (KitchenOven* oven = findById(kitchen_.ovens, change.oven)) {
            ++oven->shelves;
        }
    }
    void operator()(const TakeVariant& change)
    {
        Dish* dish = findDish(occasion_, change.dish);
        if (dish == nullptr) {
            return;
        }
        const auto entry = std::ranges::find(dish->mix, change.from, &MixEntry::variant);
        if (entry != dish->mix.end()) {
            const MixEntry moved = *entry;
            dish->mix.erase(entry);
            addPortions(dish->mix, change.to, moved.portions, moved.guests);
        }
    }
    void operator()(const GiveVariant& change)
    {
        Dish* dish = findDish(occasion_, change.dish);
        if (dish == nullptr) {
            return;
        }
        const auto entry = std::ranges::find(dish->mix, change.from, &MixEntry::variant);
        if (entry == dish->mix.end()) {
            return;
        }
        const auto eaters = static_cast<std::int64_t>(entry->guests.size());
        const Portions one = eaters == 0 ? std::min(Portions{1}, entry->portions)
                                         : entry->portions / Portions{eaters};
        entry->portions = entry->portions - one;
        std::erase(entry->guests, change.guest);
        if (entry->portions <= Portions{0}) {
            dish->mix.erase(entry);
        }
        addPortions(dish->mix, change.to, one, {change.guest});
    }
    void operator()(const ServeGuest& change)
    {
        std::vector<DishId> dishes;
        if (change.from) {
            dishes.push_back(*change.from);
        }
        if (change.to) {
            dishes.push_back(change.to->first);
        }
        give(change.course, dishes, change.guest, change.to);
    }
    void operator()(const Substitute& change)
    {
        const Dish* dish = findDish(occasion_, change.dish);
        const auto recipe = dish == nullptr ? recipes_.end() : recipes_.find(dish->recipe);
        if (recipe == recipes_.end()) {
            return;
        }
        recipe->second = std::make_shared<const Recipe>(
            withSwapped(*recipe->second, change.variant, change.swaps));
        std::vector<DishId> dishes{change.dish};
        if (change.from && *change.from != change.dish) {
            dishes.push_back(*change.from);
        }
        give(change.course, dishes, change.guest,
             std::pair{change.dish, swappedVariant(change.variant, change.swaps)});
    }
    void operator()(const TakeAlternative& change)
    {
        Dish* from = findDish(occasion_, change.from);
        Dish* to = findDish(occasion_, change.to);
        const auto recipe = to == nullptr ? input_.recipes.end() : input_.recipes.find(to->recipe);
        if (from != nullptr && to != nullptr && recipe != input_.recipes.end()) {
            exchange(*from, *to, *recipe->second);
        }
    }

    [[nodiscard]] PlanInput made() const
    {
        PlanInput next = input_;
        next.occasion = std::make_shared<const Occasion>(occasion_);
        next.kitchen = std::make_shared<const Kitchen>(kitchen_);
        next.layout = std::make_shared<const Layout>(layout_);
        next.recipes = recipes_;
        return next;
    }

private:
    void give(const CourseId& course, const std::vector<DishId>& dishes, const GuestId& guest,
              const GivenHelping& helping)
    {
        std::map<RecipeId, const Recipe*> recipes;
        for (const auto& [id, recipe] : recipes_) {
            recipes.emplace(id, recipe.get());
        }
        if (findById(occasion_.courses, course) != nullptr && findGuest(guest) != nullptr) {
            occasion_ =
                withGiven(occasion_, course, dishes, guest, helping, recipes, input_.ingredients);
        }
    }

    void borrow(const Borrow& change)
    {
        switch (change.kind) {
        case ResourceKind::Oven:
            borrowOven(change);
            break;
        case ResourceKind::Burner: {
            const auto widest = std::ranges::max_element(kitchen_.burners, {}, &Burner::size);
            Burner burner = widest == kitchen_.burners.end() ? Burner{} : *widest;
            burner.size = std::max(burner.size, Length::ofSmallest(change.size));
            burner.id = freshIdIn(kitchen_.burners, "borrowed-burner");
            burner.name = "borrowed burner";
            kitchen_.burners.push_back(burner);
            break;
        }
        case ResourceKind::Appliance:
            kitchen_.appliances.push_back(
                {freshIdIn(kitchen_.appliances, "borrowed-" + change.name),
                 "Borrowed " + change.name, change.name,
                 change.size > 0 ? std::optional(Litres::ofSmallest(change.size)) : std::nullopt});
            break;
        case ResourceKind::Vessel:
            borrowVessel(change);
            break;
        case ResourceKind::Fridge:
        case ResourceKind::Freezer:
            kitchen_.coldPlaces.push_back(
                {freshIdIn(kitchen_.coldPlaces, "borrowed-cold-place"),
                 change.kind == ResourceKind::Fridge ? "Borrowed fridge room"
                                                     : "Borrowed freezer room",
                 change.kind == ResourceKind::Fridge ? ColdKind::Fridge : ColdKind::Freezer,
                 Litres::ofSmallest(change.size)});
            break;
        case ResourceKind::Watch:
        case ResourceKind::Cook:
            break;
        }
    }

    /// Like the one there is with the most shelves; a usual one where there is none.
    void borrowOven(const Borrow& change)
    {
        const auto largest = std::ranges::max_element(kitchen_.ovens, {}, &KitchenOven::shelves);
        KitchenOven oven = largest == kitchen_.ovens.end() ? KitchenOven{} : *largest;
        oven.id = freshIdIn(kitchen_.ovens, "borrowed-oven");
        oven.name = "Borrowed oven";
        oven.hasFan = oven.hasFan || change.name.find("fan") != std::string::npos;
        oven.hasGrill = oven.hasGrill || change.name.find("grill") != std::string::npos;
        kitchen_.ovens.push_back(oven);
    }

    /// As large as the ones there are, so that all of a kind stay alike.
    void borrowVessel(const Borrow& change)
    {
        Vessel borrowed;
        for (const Vessel& vessel : kitchen_.vessels) {
            if (vessel.kind == change.name && borrowed.volume < vessel.volume) {
                borrowed = vessel;
            }
        }
        borrowed.volume = std::max(borrowed.volume, Litres::ofSmallest(change.size));
        borrowed.kind = change.name;
        borrowed.name = "Borrowed " + change.name;
        borrowed.id = freshIdIn(kitchen_.vessels, "borrowed-" + change.name);
        borrowed.count = 1;
        kitchen_.vessels.push_back(borrowed);
    }

    [[nodiscard]] const Guest* findGuest(const GuestId& id) const
    {
        return findById(occasion_.guests, id);
    }

    /// The first variant with nothing in it that the guest avoids.
    [[nodiscard]] const Variant* suitableFor(const Recipe& recipe, const GuestId& id) const
    {
        std::map<RecipeId, const Recipe*> recipes;
        for (const auto& [key, each] : input_.recipes) {
            recipes.emplace(key, each.get());
        }
        const Guest* guest = findGuest(id);
        const std::vector<Substance> avoided =
            guest == nullptr ? std::vector<Substance>{} : avoidedBy(*guest);
        for (const Variant& variant : recipe.variants) {
            const Contents contents = contentsOf(recipe, variant.id, recipes, input_.ingredients);
            const bool suits = std::ranges::none_of(contents.contains, [&](Substance substance) {
                return std::ranges::find(avoided, substance) != avoided.end();
            });
            if (suits && (avoided.empty() || contents.unknown.empty())) {
                return &variant;
            }
        }
        return nullptr;
    }

    /// Guests whom no variant suits keep what they have.
    void exchange(Dish& from, Dish& to, const Recipe& recipe)
    {
        std::vector<MixEntry> kept;
        for (const MixEntry& entry : from.mix) {
            if (entry.guests.empty()) {
                addPortions(to.mix, recipe.variants.front().id, entry.portions, {});
                continue;
            }
            const Portions each =
                entry.portions / Portions{static_cast<std::int64_t>(entry.guests.size())};
            for (const GuestId& guest : entry.guests) {
                if (const Variant* variant = suitableFor(recipe, guest)) {
                    addPortions(to.mix, variant->id, each, {guest});
                } else {
                    addPortions(kept, entry.variant, each, {guest});
                }
            }
        }
        from.mix = std::move(kept);
    }

    const PlanInput& input_;
    Occasion occasion_;
    Kitchen kitchen_;
    Layout layout_;
    decltype(PlanInput::recipes) recipes_;
};

struct Pinned
{
    std::string id;

    void operator()(const MoveStep& change) { id = change.task; }
    template <typename Other>
    void operator()(const Other&)
    {}
};

/// Somebody's time: a point to ask, and one for each quarter of an hour.
std::int64_t pointsForTime(std::int64_t toAsk, const CivilTime& from, const CivilTime& to)
{
    constexpr std::int64_t minutesAPoint = 15;
    const Minutes time = minuteOfDay(to.clock) - minuteOfDay(from.clock);
    return toAsk + (time.count() + minutesAPoint - 1) / minutesAPoint;
}

struct Pointing
{
    std::int64_t operator()(const PlanAnew&) const { return 0; }
    std::int64_t operator()(const Unpin&) const { return 1; }
    std::int64_t operator()(const MoveStep& change) const
    {
        const bool isOnTheDay =
            change.why == MoveStep::Why::ShorterWait || change.why == MoveStep::Why::CleanFirst;
        return isOnTheDay ? 1 : 2;
    }
    std::int64_t operator()(const TakeOption&) const { return 2; }
    std::int64_t operator()(const TakeMethod&) const { return 3; }
    std::int64_t operator()(const UseOther&) const { return 1; }
    std::int64_t operator()(const WashBefore&) const { return 2; }
    std::int64_t operator()(const ShareTemperature&) const { return 2; }
    /// Guests wait: a point for each three minutes of each course.
    std::int64_t operator()(const ServeLater& change) const
    {
        constexpr std::int64_t minutesAPoint = 3;
        Minutes all{0};
        for (const ServingMove& move : change.moves) {
            all += minuteOfDay(move.to.clock) - minuteOfDay(move.from.clock);
        }
        return 2 + all.count() / minutesAPoint;
    }
    std::int64_t operator()(const PlanLikely&) const { return 6; }
    std::int64_t operator()(const DropJob&) const { return 6; }
    std::int64_t operator()(const JobEarlier&) const { return 3; }
    std::int64_t operator()(const FreeCook& change) const
    {
        return pointsForTime(3, change.from, change.to);
    }
    std::int64_t operator()(const Helper& change) const
    {
        return pointsForTime(8, change.from, change.to);
    }
    std::int64_t operator()(const Borrow& change) const
    {
        switch (change.kind) {
        case ResourceKind::Oven:
            return 24;
        case ResourceKind::Burner:
        case ResourceKind::Fridge:
        case ResourceKind::Freezer:
            return 12;
        case ResourceKind::Appliance:
        case ResourceKind::Vessel:
        case ResourceKind::Watch:
        case ResourceKind::Cook:
            return 8;
        }
        return 8;
    }
    std::int64_t operator()(const AddShelf&) const { return 10; }
    std::int64_t operator()(const TakeVariant&) const { return 9; }
    std::int64_t operator()(const GiveVariant&) const { return 5; }
    std::int64_t operator()(const ServeGuest& change) const { return change.to ? 6 : 8; }
    /// Something must be bought, and the dish was not made for it.
    std::int64_t operator()(const Substitute& change) const
    {
        return 8 + 2 * static_cast<std::int64_t>(change.swaps.size());
    }
    std::int64_t operator()(const TakeAlternative&) const { return 15; }
};

} // namespace

PlanInput applied(const PlanInput& input, const EveningChange& change)
{
    Applying applying(input);
    std::visit(applying, change);
    return applying.made();
}

Layout released(Layout layout, const EveningChange& change, const Layout& before)
{
    Pinned pinned;
    std::visit(pinned, change);
    if (!pinned.id.empty() && !before.pinned.contains(pinned.id)) {
        layout.pinned.erase(pinned.id);
    }
    return layout;
}

std::int64_t pointsOf(const EveningChange& change)
{
    return std::visit(Pointing{}, change);
}

} // namespace suppertide
