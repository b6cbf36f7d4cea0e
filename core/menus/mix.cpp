#include "core/menus/mix.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/base/contracts.h"
#include "core/menus/cheapest_choices.h"

namespace suppertide::menus {

namespace {

/// How far a variant is for a guest.
enum class Tier
{
    Suits,
    Unknown, // nothing known is against it
    No
};

class MixMaker
{
public:
    MixMaker(const PlanInput& input, const CourseOffer& offer, std::size_t leading)
        : input_(input), occasion_(*input.occasion), offer_(offer), leading_(leading),
          steps_(input, offer), mainOf_(occasion_.guests.size())
    {}

    CourseMix make()
    {
        mix_.course = offer_.course->id;
        mix_.leading = offer_.alternatives[leading_];
        chooseMains();
        chooseSides();
        nameNotServed();
        writeDishes();
        countSteps();
        return std::move(mix_);
    }

private:
    [[nodiscard]] Suitability suitability(std::size_t guest, const MadeVariant& made) const
    {
        return suitabilityOf(occasion_.guests[guest],
                             offer_.dishes[made.first].variants[made.second].nature,
                             occasion_.preferences.rules);
    }

    [[nodiscard]] Tier tier(std::size_t guest, const MadeVariant& made) const
    {
        const Suitability found = suitability(guest, made);
        if (!found.isFree()) {
            return Tier::No;
        }
        return found.suits() ? Tier::Suits : Tier::Unknown;
    }

    [[nodiscard]] int penalty(std::size_t guest, const MadeVariant& made) const
    {
        const auto disliked = dislikedIn(occasion_.guests[guest],
                                         offer_.dishes[made.first].variants[made.second].nature);
        return disliked.empty() ? 0 : stepsPerDislike;
    }

    /// Variants of a dish, the usual one first.
    [[nodiscard]] std::vector<MadeVariant> variantsOf(std::size_t dish) const
    {
        const OfferedDish& offered = offer_.dishes[dish];
        std::vector<MadeVariant> all{{dish, offered.usual}};
        for (std::size_t i = 0; i < offered.variants.size(); ++i) {
            if (i != offered.usual) {
                all.emplace_back(dish, i);
            }
        }
        return all;
    }

    /// Main dishes in their variants, what leads first: what a guest may have.
    [[nodiscard]] std::vector<MadeVariant> mains() const
    {
        std::vector<MadeVariant> all;
        const auto add = [&](std::size_t alternative) {
            if (const auto dish = offer_.mainDish(alternative)) {
                const std::vector<MadeVariant> own = variantsOf(*dish);
                all.insert(all.end(), own.begin(), own.end());
            }
        };
        add(leading_);
        for (std::size_t other = 0; other < offer_.alternatives.size(); ++other) {
            if (other != leading_) {
                add(other);
            }
        }
        return all;
    }

    /// Of `offered` those of the best tier that there is for the guest; only the first if that
    /// suits and is not disliked.
    [[nodiscard]] Choices choicesFor(std::size_t guest,
                                     const std::vector<MadeVariant>& offered) const
    {
        std::map<Tier, Choices> byTier;
        for (std::size_t i = 0; i < offered.size(); ++i) {
            const Choice choice{i, penalty(guest, offered[i])};
            const Tier found = tier(guest, offered[i]);
            if (i == 0 && found == Tier::Suits && choice.penalty == 0) {
                return {choice};
            }
            byTier[found].push_back(choice);
        }
        return byTier.contains(Tier::Suits) ? byTier[Tier::Suits] : byTier[Tier::Unknown];
    }

    /// What must be made so that these can be taken: their alternatives' other dishes too.
    [[nodiscard]] std::set<MadeVariant> madeWith(const std::set<std::size_t>& things,
                                                 const std::vector<MadeVariant>& offered) const
    {
        std::set<MadeVariant> made;
        for (const std::size_t thing : things) {
            made.insert(offered[thing]);
            const auto& alternative = offer_.dishes[offered[thing].first].alternative;
            if (!alternative) {
                continue;
            }
            for (const std::size_t dish : offer_.dishesOf(alternative)) {
                if (dish != offered[thing].first && dish != offer_.mainDish(*alternative)) {
                    made.emplace(dish, offer_.dishes[dish].usual);
                }
            }
        }
        return made;
    }

    /// Each guest's choice among `offered`; guests for whom there is none have none.
    std::map<std::size_t, MadeVariant> choose(const std::vector<std::size_t>& guests,
                                              const std::vector<MadeVariant>& offered)
    {
        std::vector<std::size_t> takers;
        std::vector<Choices> choices;
        for (const std::size_t guest : guests) {
            Choices own = choicesFor(guest, offered);
            if (!own.empty()) {
                takers.push_back(guest);
                choices.push_back(std::move(own));
            }
        }
        const auto cost = [&](const std::set<std::size_t>& things) {
            return steps_.count(madeWith(things, offered));
        };
        const std::vector<std::size_t> chosen = cheapestChoices(choices, cost);
        std::map<std::size_t, MadeVariant> result;
        for (std::size_t i = 0; i < takers.size(); ++i) {
            result.emplace(takers[i], offered[choices[i][chosen[i]].thing]);
        }
        return result;
    }

    void chooseMains()
    {
        const std::vector<MadeVariant> offered = mains();
        if (offered.empty()) {
            return;
        }
        for (const auto& [guest, made] : choose(everybody(), offered)) {
            mainOf_[guest] = made;
            addPlate(guest, made, true);
        }
    }

    void chooseSides()
    {
        for (std::size_t dish = 0; dish < offer_.dishes.size(); ++dish) {
            const auto& alternative = offer_.dishes[dish].alternative;
            if (alternative && offer_.mainDish(*alternative) == dish) {
                continue;
            }
            std::vector<std::size_t> eaters;
            for (const std::size_t guest : everybody()) {
                const auto& main = mainOf_[guest];
                if (!alternative ||
                    (main && offer_.dishes[main->first].alternative == alternative)) {
                    eaters.push_back(guest);
                }
            }
            const auto chosen = choose(eaters, variantsOf(dish));
            for (const std::size_t guest : eaters) {
                if (const auto made = chosen.find(guest); made != chosen.end()) {
                    addPlate(guest, made->second, false);
                } else {
                    mix_.without.push_back(
                        {occasion_.guests[guest].id, offer_.dishes[dish].dish->id});
                }
            }
        }
    }

    void nameNotServed()
    {
        if (mains().empty()) {
            return;
        }
        for (const std::size_t guest : everybody()) {
            if (!mainOf_[guest]) {
                const Guest& who = occasion_.guests[guest];
                mix_.notServed.push_back({who.id, waysToServe(input_, offer_, who)});
            }
        }
    }

    [[nodiscard]] std::vector<std::size_t> everybody() const
    {
        std::vector<std::size_t> all(occasion_.guests.size());
        for (std::size_t i = 0; i < all.size(); ++i) {
            all[i] = i;
        }
        return all;
    }

    void addPlate(std::size_t guest, const MadeVariant& made, bool isMain)
    {
        const OfferedDish& offered = offer_.dishes[made.first];
        mix_.plates.push_back({occasion_.guests[guest].id, offered.dish->id,
                               offered.variants[made.second].id, isMain, suitability(guest, made)});
        eaters_[made].push_back(guest);
    }

    void writeDishes()
    {
        if (occasion_.guests.empty()) {
            writeWithoutGuests();
        }
        for (const Dish& dish : offer_.course->dishes) {
            Dish& next = mix_.dishes.emplace_back(dish);
            next.mix.clear();
            const auto offered = std::ranges::find(offer_.dishes, dish.id,
                                                   [](const auto& each) { return each.dish->id; });
            if (offered == offer_.dishes.end()) {
                continue;
            }
            const auto index = static_cast<std::size_t>(offered - offer_.dishes.begin());
            for (std::size_t variant = 0; variant < offered->variants.size(); ++variant) {
                const MadeVariant made{index, variant};
                if (const auto portions = portions_.find(made); portions != portions_.end()) {
                    next.mix.push_back({offered->variants[variant].id, portions->second, {}});
                } else if (const auto eaters = eaters_.find(made); eaters != eaters_.end()) {
                    next.mix.push_back(entryFor(offered->variants[variant].id, eaters->second));
                }
            }
        }
    }

    /// With nobody named there are as many portions as now, or as the recipe is for.
    void writeWithoutGuests()
    {
        Portions most{0};
        for (const Dish& dish : offer_.course->dishes) {
            most = std::max(most, portionsOf(dish));
        }
        for (std::size_t i = 0; i < offer_.dishes.size(); ++i) {
            const OfferedDish& dish = offer_.dishes[i];
            if (!dish.alternative || dish.alternative == leading_) {
                portions_[{i, dish.usual}] = most > Portions{0} ? most : dish.recipe->portions;
            }
        }
    }

    [[nodiscard]] MixEntry entryFor(const VariantId& variant,
                                    const std::vector<std::size_t>& eaters) const
    {
        MixEntry entry{variant, Portions{0}, {}};
        for (const std::size_t guest : eaters) {
            entry.portions = entry.portions + occasion_.guests[guest].portion;
            entry.guests.push_back(occasion_.guests[guest].id);
        }
        return entry;
    }

    void countSteps()
    {
        std::set<MadeVariant> made;
        for (const auto& [variant, eaters] : eaters_) {
            made.insert(variant);
        }
        for (const auto& [variant, portions] : portions_) {
            made.insert(variant);
        }
        std::set<MadeVariant> alone;
        for (std::size_t i = 0; i < offer_.dishes.size(); ++i) {
            const auto& alternative = offer_.dishes[i].alternative;
            if (!alternative || alternative == leading_) {
                alone.emplace(i, offer_.dishes[i].usual);
            }
        }
        mix_.steps = steps_.count(made);
        mix_.extraSteps = mix_.steps - steps_.count(alone);
    }

    const PlanInput& input_;
    const Occasion& occasion_;
    const CourseOffer& offer_;
    std::size_t leading_;
    StepCounter steps_;
    std::vector<std::optional<MadeVariant>> mainOf_; // by guest
    std::map<MadeVariant, std::vector<std::size_t>> eaters_;
    std::map<MadeVariant, Portions> portions_; // where there are no guests
    CourseMix mix_;
};

} // namespace

bool CourseMix::suitsEverybody() const
{
    return notServed.empty() && unsure().empty();
}

std::vector<GuestId> CourseMix::unsure() const
{
    std::vector<GuestId> guests;
    for (const Plate& plate : plates) {
        if (!plate.suitability.suits() && std::ranges::find(guests, plate.guest) == guests.end()) {
            guests.push_back(plate.guest);
        }
    }
    return guests;
}

CourseMix mixOf(const PlanInput& input, const CourseOffer& offer, const AlternativeId& leading)
{
    const auto found = std::ranges::find(offer.alternatives, leading);
    expects(found != offer.alternatives.end(), "the course has that alternative");
    const auto index = static_cast<std::size_t>(found - offer.alternatives.begin());
    return MixMaker(input, offer, index).make();
}

Course withMix(Course course, const CourseMix& mix)
{
    course.dishes = mix.dishes;
    return course;
}

AlternativeId leadingNow(const Course& course)
{
    const std::vector<AlternativeId> leads = leadingAlternatives(course);
    AlternativeId best = leads.front();
    Portions most{0};
    for (const AlternativeId& lead : leads) {
        Portions own{0};
        for (const Dish& dish : course.dishes) {
            if (dish.alternative == lead) {
                own = std::max(own, portionsOf(dish));
            }
        }
        if (own > most) {
            most = own;
            best = lead;
        }
    }
    return best;
}

} // namespace suppertide::menus
