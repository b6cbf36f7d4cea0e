#include "core/plan/food_temperatures.h"

#include <algorithm>

#include "core/plan/food_body.h"

namespace suppertide {

namespace {

using safety::FoodHistory;
using safety::HistoryPiece;

/// What happens to a food on its way, for the rules.
class EventList
{
public:
    EventList(const TrackedFood& food, const std::vector<FoodPassage>& passages)
        : food_(food), passages_(passages)
    {}

    std::vector<safety::HistoryEvent> all()
    {
        addChanges();
        addReheating();
        addThawing();
        addMaking();
        return std::move(events_);
    }

private:
    /// What becomes of it, as the recipe says; what is raw at first is cooked after its last heat
    /// if nobody says otherwise.
    void addChanges()
    {
        std::optional<PlanTime> lastHeat;
        bool isSaid = false;
        for (const FoodPassage& passage : passages_) {
            if (passage.stage == nullptr) {
                continue;
            }
            if (const auto& becomes = passage.stage->does.becomes) {
                events_.emplace_back(safety::Became{passage.when.end, *becomes});
                isSaid = true;
            }
            if (makesHot(passage.stage->does.treatment) && !passage.stage->does.isReheating) {
                lastHeat = passage.when.end;
            }
        }
        if (!isSaid && lastHeat && isRawAnimal(food_.kind.food)) {
            events_.emplace_back(safety::Became{*lastHeat, cooked(food_.kind.food)});
        }
    }

    void addReheating()
    {
        for (std::size_t i = 0; i < passages_.size(); ++i) {
            const FoodStage* stage = passages_[i].stage;
            if (stage != nullptr && stage->does.isReheating) {
                const bool isKeptHot =
                    std::any_of(passages_.begin() + static_cast<std::ptrdiff_t>(i), passages_.end(),
                                [](const FoodPassage& later) {
                                    return later.place == safety::Place::WarmHold;
                                });
                events_.emplace_back(safety::Reheated{passages_[i].when.start, isKeptHot});
            }
        }
    }

    /// Out of the freezer: what comes next thaws it.
    void addThawing()
    {
        bool isFrozen = food_.from == KeepPlace::Freezer;
        for (const FoodPassage& passage : passages_) {
            if (isFrozen && passage.place != safety::Place::Freezer) {
                events_.emplace_back(safety::Thawed{passage.when.start, thawedBy(passage.place)});
            }
            isFrozen = passage.place == safety::Place::Freezer;
        }
    }

    static safety::ThawBy thawedBy(safety::Place place)
    {
        switch (place) {
        case safety::Place::Fridge:
        case safety::Place::Freezer:
            return safety::ThawBy::Fridge;
        case safety::Place::ThawWater:
        case safety::Place::IceBath:
            return safety::ThawBy::ColdWater;
        case safety::Place::Microwave:
            return safety::ThawBy::Microwave;
        case safety::Place::Oven:
        case safety::Place::Hob:
        case safety::Place::WaterBath:
            return safety::ThawBy::Cooking;
        case safety::Place::Counter:
        case safety::Place::AtTable:
        case safety::Place::WarmHold:
            return safety::ThawBy::Counter;
        }
        return safety::ThawBy::Counter;
    }

    /// What first goes into the cold to be kept, no longer raw, is made then.
    void addMaking()
    {
        FoodHistory soFar;
        soFar.kind = food_.kind;
        soFar.events = events_;
        for (const FoodPassage& passage : passages_) {
            const bool isKept =
                passage.stage == nullptr &&
                (passage.place == safety::Place::Fridge || passage.place == safety::Place::Freezer);
            if (isKept && !isRawAnimal(classAt(soFar, passage.when.start))) {
                events_.emplace_back(safety::Made{passage.when.start});
                return;
            }
        }
    }

    const TrackedFood& food_;
    const std::vector<FoodPassage>& passages_;
    std::vector<safety::HistoryEvent> events_;
};

HistoryPiece pieceOf(const FoodPassage& passage)
{
    HistoryPiece piece;
    piece.from = passage.when.start;
    piece.to = passage.when.end;
    piece.place = passage.place;
    piece.surroundings = passage.surroundings;
    piece.isCovered = passage.isCovered;
    piece.isFan = passage.isFan;
    return piece;
}

/// At table it is cut up: nothing goes on cooking.
std::vector<safety::TemperatureSample> served(std::vector<safety::TemperatureSample> samples)
{
    for (safety::TemperatureSample& sample : samples) {
        sample.core = std::min(sample.core, samples.front().core);
    }
    return samples;
}

/// The minutes of a curve are told from its beginning on; a history has the plan's.
std::vector<safety::TemperatureSample> shifted(std::vector<safety::TemperatureSample> samples,
                                               const Interval& when)
{
    const auto from = static_cast<double>(minuteOf(when.start));
    const auto to = static_cast<double>(minuteOf(when.end));
    for (safety::TemperatureSample& sample : samples) {
        sample.minute = std::min(from + sample.minute, to);
    }
    return samples;
}

/// The stays of one food, as they were computed last.
class KnownFood
{
public:
    KnownFood(const TrackedFood& food, const KitchenClimate& climate) : food_(&food)
    {
        if (auto body = bodyOf(food)) {
            body_ = std::move(*body);
            auto start =
                science::HeatedBody::make(body_->beta, body_->halfThickness, body_->material,
                                          temperatureAt(food.from, climate));
            if (start) {
                start_ = std::move(*start);
            } else {
                body_.reset();
            }
        }
    }

    std::optional<FoodHistory> history(const FoodRoutes& routes, std::size_t& computed)
    {
        const std::vector<FoodPassage> passages = routes.passagesOf(*food_);
        if (passages.empty()) {
            return std::nullopt;
        }
        if (body_) {
            bringUpToDate(passages, computed);
        }
        FoodHistory history;
        history.kind = food_->kind;
        history.isEaten = food_->isEaten;
        if (!food_->mass.isZero()) {
            history.kilograms = static_cast<double>(food_->mass.smallest()) /
                                static_cast<double>(grams(1000).smallest());
        }
        history.events = EventList(*food_, passages).all();
        for (std::size_t i = 0; i < passages.size(); ++i) {
            HistoryPiece piece = pieceOf(passages[i]);
            if (body_) {
                const auto& samples = known_[i].curve.samples;
                const bool isServed = passages[i].place == safety::Place::AtTable;
                piece.curve = shifted(isServed ? served(samples) : samples, passages[i].when);
            }
            history.pieces.push_back(std::move(piece));
        }
        return history;
    }

private:
    struct Known
    {
        PassageHeat heat;
        PassageCurve curve;
    };

    /// What meets the same heat for as long, after the same, is as it was, whenever it begins.
    void bringUpToDate(const std::vector<FoodPassage>& passages, std::size_t& computed)
    {
        std::size_t same = 0;
        while (same < known_.size() && same < passages.size() &&
               known_[same].heat == passages[same].heat) {
            ++same;
        }
        known_.resize(same);
        for (std::size_t i = same; i < passages.size(); ++i) {
            const auto& before = i == 0 ? start_ : known_[i - 1].curve.after;
            known_.push_back({passages[i].heat, curveOf(passages[i].heat, *body_, before)});
            ++computed;
        }
    }

    const TrackedFood* food_;
    std::optional<BodyOf> body_;
    std::optional<science::HeatedBody> start_;
    std::vector<Known> known_;
};

} // namespace

class FoodTemperatures::Parts
{
public:
    Parts(const Formulation& from, const Kitchen& kitchen)
        : formulation(from), climate(climateOf(kitchen)), histories(from.foods.size())
    {
        for (const TrackedFood& food : from.foods) {
            foods.push_back(KnownFood(food, climate));
        }
    }

    void update(const Schedule& schedule)
    {
        computedLast = 0;
        if (formulation.foods.empty()) {
            return;
        }
        const FoodRoutes routes(formulation, schedule, climate);
        for (const FoodIndex food : formulation.foods.indices()) {
            histories[food] = foods[food].history(routes, computedLast);
        }
    }

    const Formulation& formulation;
    KitchenClimate climate;
    IndexedVector<FoodIndex, KnownFood> foods;
    FoodHistories histories;
    std::size_t computedLast = 0;
};

FoodTemperatures::FoodTemperatures(const Formulation& formulation, const Kitchen& kitchen)
    : parts_(std::make_unique<Parts>(formulation, kitchen))
{}
FoodTemperatures::~FoodTemperatures() = default;
FoodTemperatures::FoodTemperatures(FoodTemperatures&&) noexcept = default;
FoodTemperatures& FoodTemperatures::operator=(FoodTemperatures&&) noexcept = default;

const FoodHistories& FoodTemperatures::update(const Schedule& schedule)
{
    parts_->update(schedule);
    return parts_->histories;
}

std::size_t FoodTemperatures::computedLast() const
{
    return parts_->computedLast;
}

} // namespace suppertide
