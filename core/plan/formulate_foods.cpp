// Followed foods: which tasks and waits each of them goes through, one track for all variants that
// go the same way, and one for each batch of the step that has most of them.
#include <algorithm>
#include <cmath>

#include "core/plan/followed_foods.h"
#include "core/plan/food_ties.h"

namespace suppertide {

namespace {

/// A track while variants that go the same way are still being put together.
struct Track
{
    OpenFood open;
    std::vector<std::size_t> variants;
    std::vector<PortionRange> portions;
    std::vector<FoodStage> stages;

    [[nodiscard]] PortionShare share() const { return PortionShare{portions}; }
};

class FoodWriter
{
public:
    FoodWriter(Evening& evening, std::size_t making)
        : evening_(evening), index_(making), making_(evening.makings[making])
    {}

    void write()
    {
        for (std::size_t variant = 0; variant < making_.variants.size(); ++variant) {
            for (const OpenFood& open : foodsOf(making_, making_.variants[variant])) {
                follow(open, variant);
            }
        }
        for (const Track& track : tracks_) {
            evening_.draft.addFood(finished(track));
        }
    }

private:
    /// The batches of a made step that have portions of these.
    [[nodiscard]] std::vector<std::size_t> batchesFor(std::size_t step,
                                                      const PortionShare& share) const
    {
        std::vector<std::size_t> batches;
        for (const std::size_t batch : making_.steps[step].batches) {
            if (making_.batches[batch].share.meets(share)) {
                batches.push_back(batch);
            }
        }
        return batches;
    }

    void follow(const OpenFood& open, std::size_t variant)
    {
        const PortionShare all = making_.shareOf(variant);
        std::vector<PortionShare> shares{all};
        for (const FoodTreatment& treatment : open.food->steps) {
            for (const std::size_t step : making_.stepsNamed(variant, treatment.step)) {
                const std::vector<std::size_t> batches = batchesFor(step, all);
                if (batches.size() > shares.size()) {
                    shares.clear();
                    for (const std::size_t batch : batches) {
                        shares.push_back(making_.batches[batch].share.common(all));
                    }
                }
            }
        }
        for (const PortionShare& share : shares) {
            add(open, variant, share);
        }
    }

    void add(const OpenFood& open, std::size_t variant, const PortionShare& share)
    {
        std::vector<FoodStage> stages = stagesOf(*open.food, variant, share);
        if (stages.empty() || share.empty()) {
            return;
        }
        auto same = std::ranges::find_if(tracks_, [&](const Track& track) {
            return *track.open.food == *open.food && track.open.method == open.method &&
                   track.stages == stages;
        });
        if (same == tracks_.end()) {
            same = tracks_.insert(tracks_.end(), Track{open, {}, {}, std::move(stages)});
        }
        same->variants.push_back(variant);
        const std::vector<PortionRange>& ranges = share.ranges();
        same->portions.insert(same->portions.end(), ranges.begin(), ranges.end());
    }

    [[nodiscard]] std::vector<FoodStage> stagesOf(const FollowedFood& food, std::size_t variant,
                                                  const PortionShare& share) const
    {
        std::vector<FoodStage> stages;
        for (const FoodTreatment& treatment : food.steps) {
            for (const std::size_t step : making_.stepsNamed(variant, treatment.step)) {
                const std::vector<std::size_t> batches = batchesFor(step, share);
                if (!batches.empty()) {
                    stages.push_back(stageOf(treatment, step, batches.front()));
                }
            }
        }
        return stages;
    }

    [[nodiscard]] FoodStage stageOf(const FoodTreatment& treatment, std::size_t step,
                                    std::size_t batch) const
    {
        const std::vector<TaskIndex>& tasks = evening_.batchTasks(index_, batch).tasks;
        FoodStage stage{tasks.front(), tasks.back(), treatment, std::nullopt, false};
        const auto oven = evening_.ovenOf.find({index_, batch});
        if (oven != evening_.ovenOf.end()) {
            stage.oven = oven->second;
        }
        stage.isOnBurner = std::ranges::any_of(making_.steps[step].step.uses, [](const Use& use) {
            return std::holds_alternative<BurnerUse>(use);
        });
        return stage;
    }

    [[nodiscard]] TrackedFood finished(const Track& track) const
    {
        const FollowedFood& food = *track.open.food;
        TrackedFood result;
        nameIt(result, track);
        result.kind = food.kind;
        result.material = food.material;
        result.shape = food.shape;
        result.isOnePiece = food.isOnePiece;
        result.from = food.from;
        result.stages = track.stages;
        scale(result, food, track.share());
        tellWhoEats(result, track);
        result.keeps = keepsOf(food, track.share());
        end(result, track.share());
        if (const auto option = evening_.optionFor(index_, track.open.method)) {
            result.with = {option->choice, option->option};
        }
        return result;
    }

    void nameIt(TrackedFood& result, const Track& track) const
    {
        const FollowedFood& food = *track.open.food;
        std::string middle;
        for (const std::size_t variant : track.variants) {
            result.variants.push_back(making_.variants[variant].id);
            if (track.variants.size() < making_.variants.size()) {
                middle += (middle.empty() ? "" : "+") + making_.variants[variant].id.text();
                result.variantName +=
                    (result.variantName.empty() ? "" : ", ") + making_.variants[variant].name;
            }
        }
        if (track.open.method) {
            middle += (middle.empty() ? "" : "+") + track.open.method->method.text();
        }
        result.key = making_.key + "/" + (middle.empty() ? "*" : middle) + "/" + food.id.text();
        const auto batches = std::ranges::count_if(tracks_, [&](const Track& other) {
            return other.open.food->id == food.id && other.variants == track.variants &&
                   other.open.method == track.open.method;
        });
        if (batches > 1) {
            const auto number = 1 + std::count_if(tracks_.data(), &track, [&](const Track& other) {
                                    return other.open.food->id == food.id &&
                                           other.variants == track.variants &&
                                           other.open.method == track.open.method;
                                });
            result.key += "#" + std::to_string(number);
        }
        result.name = food.name;
        result.dishName = making_.name;
        result.dish = making_.dish->id;
        result.course = making_.course->id;
        result.recipe = making_.recipe->id;
    }

    /// A larger piece is as much thicker as it is longer and wider.
    void scale(TrackedFood& result, const FollowedFood& food, const PortionShare& share) const
    {
        const Portions all = making_.shareOf(allVariants()).total();
        const Rational factor = food.scaling == Scaling::PerPortion
                                    ? share.total() / making_.recipe->portions
                                : food.scaling == Scaling::Fixed ? share.total() / all
                                                                 : Rational{1};
        result.mass = Grams::ofSmallest(scaled(food.mass.smallest(), factor));
        result.thickness = food.thickness;
        if (food.isOnePiece) {
            result.thickness = Length::ofSmallest(std::llround(
                static_cast<double>(food.thickness.smallest()) * std::cbrt(factor.toDouble())));
        }
    }

    [[nodiscard]] std::vector<std::size_t> allVariants() const
    {
        std::vector<std::size_t> all;
        for (std::size_t variant = 0; variant < making_.variants.size(); ++variant) {
            all.push_back(variant);
        }
        return all;
    }

    void tellWhoEats(TrackedFood& result, const Track& track) const
    {
        bool isKnown = true;
        for (const std::size_t variant : track.variants) {
            const std::vector<GuestId>& eaters = making_.variants[variant].eaters;
            isKnown = isKnown && !eaters.empty();
            for (const GuestId& guest : eaters) {
                if (std::ranges::find(result.eaters, guest) == result.eaters.end()) {
                    result.eaters.push_back(guest);
                }
            }
        }
        for (const Guest& guest : evening_.occasion().guests) {
            if (!isKnown || std::ranges::find(result.eaters, guest.id) != result.eaters.end()) {
                result.risks.insert(result.risks.end(), guest.risks.begin(), guest.risks.end());
            }
        }
        std::ranges::sort(result.risks);
        const auto twice = std::ranges::unique(result.risks);
        result.risks.erase(twice.begin(), twice.end());
    }

    [[nodiscard]] std::vector<FoodKeep> keepsOf(const FollowedFood& food,
                                                const PortionShare& share) const
    {
        std::vector<FoodKeep> keeps;
        for (const KeptWait& wait : evening_.keptWaits) {
            if (wait.making == index_ && wait.share.meets(share) &&
                isFoodsWait(food, wait.from, wait.to)) {
                keeps.push_back({wait.lag, wait.place, wait.oven});
            }
        }
        return keeps;
    }

    void end(TrackedFood& result, const PortionShare& share) const
    {
        if (!making_.isPreparation) {
            result.until = {startOf(evening_.servings.at(making_.course->id))};
            result.atTable = making_.course->atTable;
            return;
        }
        result.isEaten = false;
        for (const Consumer& consumer : making_.consumers) {
            if (consumer.share.meets(share)) {
                result.until.push_back(
                    evening_.batchTasks(consumer.making, consumer.batch).start());
            }
        }
    }

    Evening& evening_;
    std::size_t index_;
    const Making& making_;
    std::vector<Track> tracks_;
};

} // namespace

void addFoods(Evening& evening)
{
    for (std::size_t making = 0; making < evening.makings.size(); ++making) {
        FoodWriter(evening, making).write();
    }
    tieParts(evening);
    tieTrips(evening);
}

} // namespace suppertide
