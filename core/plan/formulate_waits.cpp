// Waits and their keep places (formulate rules 6 and 11): thawing, soaking, resting, chilling,
// keeping warm are all waits with a least, a most and a place.
#include <algorithm>
#include <cmath>

#include "core/plan/followed_foods.h"
#include "core/plan/tied_points.h"
#include "core/plan/wait_estimate.h"

namespace suppertide {

namespace {

/// Food kept warm stays above the rules' limit for hot holding by this much, and below what goes on
/// cooking it.
constexpr TemperatureDelta holdingMargin = TemperatureDelta::degrees(2);
constexpr Celsius hottestHolding = Celsius::degrees(90);
constexpr Celsius usualHolding = Celsius::degrees(70);

/// Of the occasion's rules, in whole degrees, rounded up.
Celsius leastHolding(const Occasion& occasion)
{
    const auto limit = safety::keepWarmAt(occasion.preferences.rules, FoodClass::CookedDish);
    return Celsius::degrees(static_cast<int>(std::ceil(limit.celsius() - safety::onTheLimit))) +
           holdingMargin;
}

const char* placeWord(KeepPlace place)
{
    switch (place) {
    case KeepPlace::Nowhere:
    case KeepPlace::Counter:
        return "counter";
    case KeepPlace::Fridge:
        return "fridge";
    case KeepPlace::Freezer:
        return "freezer";
    case KeepPlace::Warm:
        return "warm";
    }
    return "counter";
}

bool takesNoRoom(const KeepOption& option)
{
    return option.place == KeepPlace::Nowhere || option.place == KeepPlace::Counter;
}

std::optional<Minutes> least(const std::optional<Minutes>& one, const std::optional<Minutes>& two)
{
    return one && two ? std::min(*one, *two) : (one ? one : two);
}

/// A place is of no use beside one that takes no room, is allowed as long and loses no more.
std::vector<KeepOption> withoutUseless(std::vector<KeepOption> options,
                                       const std::optional<Minutes>& most)
{
    const auto best = std::ranges::find_if(options, [&](const KeepOption& option) {
        const bool isAsLong = !option.most || (most && *option.most >= *most);
        return takesNoRoom(option) && isAsLong &&
               std::ranges::all_of(options, [&](const KeepOption& other) {
                   return option.lossPerHour <= other.lossPerHour;
               });
    });
    if (best != options.end()) {
        return {*best};
    }
    return options;
}

class WaitWriter
{
public:
    WaitWriter(Evening& evening, std::size_t making, const SharedTie<Wait>& shared)
        : evening_(evening), draft_(evening.draft), index_(making),
          making_(evening.makings[making]), wait_(shared.tie), method_(shared.method),
          variants_(shared.variants)
    {}

    void write(TiedPair pair)
    {
        computeLeast(pair);
        pair.from.point = conditional(evening_, index_, method_, pair.from.point, pair.to.point);
        const std::vector<KeepOption> places = withoutUseless(allowedPlaces(), wait_.most);
        if (places.size() > 1) {
            writeChoice(pair, places);
            return;
        }
        if (places.empty()) {
            const KeepPlace nowhere = KeepPlace::Nowhere;
            const LagIndex lag =
                draft_.addLag(pair.from.point, pair.to.point,
                              {wait_.least, least(wait_.most, allowedIn(nowhere).most)},
                              sourceFor(nowhere, 0,
                                        limitOf(KeepOption{nowhere,
                                                           allowedIn(nowhere).most,
                                                           {},
                                                           Scaling::PerPortion,
                                                           0,
                                                           WarmBy::Oven})));
            keep(pair, lag, nowhere, std::nullopt);
            return;
        }
        writeKept(pair, places.front(), pair.to.point);
    }

private:
    /// Never longer than the recipe lets it wait.
    void computeLeast(const TiedPair& pair)
    {
        computed_ = computedWait(wait_, making_.variants[variants_.front()].recipe,
                                 pair.portions / making_.recipe->portions, evening_.kitchen());
        if (!computed_ || !computed_->failure.empty()) {
            return;
        }
        const std::optional<Minutes> inPlace =
            wait_.keep.empty() ? std::nullopt : wait_.keep.front().most;
        const std::optional<Minutes> most = least(wait_.most, inPlace);
        wait_.least = most ? std::min(*most, computed_->range.likely) : computed_->range.likely;
    }

    /// What a rule of food safety allows in a place, and which rule, where that is less than the
    /// recipe does. Where the recipe asks for longer than that, nothing is arranged by it: the
    /// history will be found to break the rule.
    struct Allowed
    {
        std::optional<Minutes> most;
        std::string rule;
    };

    [[nodiscard]] Allowed allowedIn(KeepPlace place) const
    {
        const auto limit = safetyLimit(evening_, making_, variants_, wait_, place);
        if (!limit || limit->most < wait_.least) {
            return {};
        }
        return {limit->most, limit->rule};
    }

    [[nodiscard]] std::vector<KeepOption> allowedPlaces() const
    {
        std::vector<KeepOption> places = wait_.keep;
        for (KeepOption& option : places) {
            option.most = least(option.most, allowedIn(option.place).most);
        }
        return places;
    }

    /// The rule that `most` comes from, if it is one of food safety.
    [[nodiscard]] std::string limitOf(const KeepOption& option) const
    {
        const Allowed allowed = allowedIn(option.place);
        const bool isIt = allowed.most && allowed.most == least(wait_.most, option.most) &&
                          allowed.most != wait_.most;
        return isIt ? allowed.rule : std::string{};
    }

    [[nodiscard]] LagSource sourceFor(KeepPlace place, int lossPerHour,
                                      std::string limitedBy = {}) const
    {
        LagSource source = orderSource(making_, Rule::Waits);
        source.wait = wait_.id;
        source.text = wait_.text;
        source.place = place;
        source.least = wait_.least;
        source.most = wait_.most;
        source.lossPerHour = lossPerHour;
        source.limitedBy = std::move(limitedBy);
        source.computed = computed_;
        return source;
    }

    /// Costs are set later, from the preferences.
    void writeKept(const TiedPair& pair, const KeepOption& option, const TaskPoint& until)
    {
        const LagIndex lag =
            draft_.addLag(pair.from.point, until, {wait_.least, least(wait_.most, option.most)},
                          sourceFor(option.place, option.lossPerHour, limitOf(option)));
        keep(pair, lag, option.place, holdPlace(pair, option, until, keepId(pair)));
    }

    void keep(const TiedPair& pair, LagIndex lag, KeepPlace place,
              std::optional<OvenDemandIndex> oven)
    {
        evening_.keptWaits.push_back({index_, wait_.from, wait_.to,
                                      pair.from.share.common(pair.to.share), lag, place, oven});
    }

    [[nodiscard]] std::string keepId(const TiedPair& pair) const
    {
        const Batch& batch = making_.batches[pair.from.batch.value_or(0)];
        const std::string number = batch.number > 0 ? "#" + std::to_string(batch.number) : "";
        return evening_.prefix(making_, making_.steps[batch.step]) + "/" + wait_.id.text() + number;
    }

    /// What holds everywhere stands on the two ends; each place has an event at the end of the
    /// wait, and its own limits and demands reach up to that.
    void writeChoice(const TiedPair& pair, const std::vector<KeepOption>& places)
    {
        draft_.addLag(pair.from.point, pair.to.point, {wait_.least, wait_.most},
                      sourceFor(KeepPlace::Nowhere, 0));
        const std::string id = keepId(pair);
        const ChoiceIndex choice = draft_.addChoice(
            id, {ChoiceKind::KeepPlace, making_.dish->id, making_.name, wait_.text, {}});
        const std::string own = draft_.problem().choices[choice].id;
        const auto pinned = pinnedPlace(own, places);
        for (const KeepOption& option : places) {
            if (!pinned || *pinned == placeWord(option.place)) {
                writeOption(pair, option, choice, own);
            }
        }
    }

    [[nodiscard]] std::optional<std::string>
    pinnedPlace(const std::string& choice, const std::vector<KeepOption>& places) const
    {
        const Layout& layout = evening_.layout();
        const auto said = layout.options.find(choice);
        if (!layout.pinned.contains(choice) || said == layout.options.end()) {
            return std::nullopt;
        }
        const bool isThere = std::ranges::any_of(places, [&](const KeepOption& option) {
            return said->second == placeWord(option.place);
        });
        return isThere ? std::optional(said->second) : std::nullopt;
    }

    void writeOption(const TiedPair& pair, const KeepOption& option, ChoiceIndex choice,
                     const std::string& id)
    {
        const OptionRef ref =
            draft_.addOption(choice, placeWord(option.place), placeWord(option.place));
        TaskSource source = draft_.formulation().tasks[pair.from.point.task];
        source.role = TaskRole::KeepTo;
        source.rule = Rule::Waits;
        const TaskIndex until =
            draft_.addEvent(id + "@" + placeWord(option.place), std::move(source));
        draft_.putInto(ref, until);
        draft_.addLag(startOf(until), pair.to.point, Gap::none(),
                      orderSource(making_, Rule::Waits));
        // Where what follows may not take place, the event has nothing to wait for.
        const bool alwaysFollows = draft_.isPresentWith(pair.to.point.task, pair.from.point.task);
        const LagIndex lag = draft_.addLag(
            pair.from.point, startOf(until),
            {alwaysFollows ? wait_.least : Minutes{0}, least(wait_.most, option.most)},
            sourceFor(option.place, option.lossPerHour, limitOf(option)));
        keep(pair, lag, option.place,
             holdPlace(pair, option, startOf(until), id + "@" + placeWord(option.place)));
    }

    /// The oven, if it is one that keeps it warm.
    std::optional<OvenDemandIndex> holdPlace(const TiedPair& pair, const KeepOption& option,
                                             const TaskPoint& until, const std::string& id)
    {
        switch (option.place) {
        case KeepPlace::Nowhere:
        case KeepPlace::Counter:
            return std::nullopt;
        case KeepPlace::Fridge:
            holdCold(pair, option, until, id, ResourceKind::Fridge, "fridge");
            return std::nullopt;
        case KeepPlace::Freezer:
            holdCold(pair, option, until, id, ResourceKind::Freezer, "freezer");
            return std::nullopt;
        case KeepPlace::Warm:
            return holdWarm(pair, option, until, id);
        }
        return std::nullopt;
    }

    [[nodiscard]] DemandSource keepSource(const char* thing) const
    {
        DemandSource source = demandSource(making_, Rule::Waits, thing, wait_.text);
        source.isKeep = true;
        return source;
    }

    void holdCold(const TiedPair& pair, const KeepOption& option, const TaskPoint& until,
                  const std::string& id, ResourceKind kind, const char* name)
    {
        const std::int64_t tenths = roomFor(pair, option);
        if (tenths == 0) {
            return;
        }
        Demand demand{id + ":" + name, pair.from.point, until, {}, tenths, {}, 0, {}};
        demand.count = thingOf(evening_, kind, name).count;
        draft_.addDemand(std::move(demand), keepSource(name));
    }

    /// Tenths of a litre, rounded up: a box does not shrink.
    [[nodiscard]] std::int64_t roomFor(const TiedPair& pair, const KeepOption& option) const
    {
        const Rational room{option.litres.smallest()};
        switch (option.scaling) {
        case Scaling::PerPortion:
            return (room * pair.portions / making_.recipe->portions).ceiled();
        case Scaling::Fixed:
            return (room * pair.portions / pair.from.share.total()).ceiled();
        case Scaling::PerBatch:
            return room.ceiled();
        }
        return room.ceiled();
    }

    std::optional<OvenDemandIndex> holdWarm(const TiedPair& pair, const KeepOption& option,
                                            const TaskPoint& until, const std::string& id)
    {
        const TaskPoint from = pair.from.point;
        std::optional<OvenDemandIndex> oven;
        switch (option.warmBy) {
        case WarmBy::Oven:
            oven = holdOven(evening_,
                            OvenUse{1, leastHolding(evening_.occasion()), hottestHolding,
                                    usualHolding, OvenMode::Any},
                            from, until, id, keepSource("oven"));
            break;
        case WarmBy::Burner:
            hold(evening_, BurnerUse{}, from, until, id, keepSource("burner"));
            break;
        case WarmBy::Flask:
            hold(evening_, VesselUse{"flask", option.litres, 1, Minutes{0}}, from, until, id,
                 keepSource("flask"));
            return std::nullopt;
        }
        keepWatch(evening_, from, until, id, keepSource(""));
        return oven;
    }

    Evening& evening_;
    FormulationDraft& draft_;
    std::size_t index_;
    const Making& making_;
    Wait wait_; // its least as computed, if it is
    std::optional<ComputedDuration> computed_;
    const std::optional<MethodKey>& method_;
    const std::vector<std::size_t>& variants_;
};

} // namespace

void addWaits(Evening& evening)
{
    for (std::size_t making = 0; making < evening.makings.size(); ++making) {
        for (const SharedTie<Wait>& shared : sharedWaits(evening.makings[making])) {
            for (const TiedPair& pair :
                 tiedPairs(evening, making, shared.tie.from, shared.tie.to, shared.variants)) {
                WaitWriter(evening, making, shared).write(pair);
            }
        }
    }
}

} // namespace suppertide
