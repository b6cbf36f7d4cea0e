// Occasion: one evening: guests, courses with their serving times, dishes with portions by variant,
// house jobs, and when the cooks are there. What is cooked is what has portions.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/food/food_class.h"
#include "core/food/substance.h"
#include "core/kitchen/kitchen.h"
#include "core/recipe/recipe.h"
#include "core/safety/rules.h"

namespace suppertide {

using OccasionId = Id<struct OccasionTag>;
using GuestId = Id<struct GuestTag>;
using CourseId = Id<struct CourseTag>;
using AlternativeId = Id<struct AlternativeTag>;
using DishId = Id<struct DishTag>;
using HouseJobId = Id<struct HouseJobTag>;

struct Guest
{
    GuestId id;
    std::string name;
    std::vector<Diet> diets;
    std::vector<Substance> allergies;
    std::vector<RiskGroup> risks;      // by which rules of food safety are stricter
    Portions portion{1};               // of each dish; a child's may be ½
    std::vector<std::string> dislikes; // ingredients, by name

    friend bool operator==(const Guest&, const Guest&) = default;
};

/// What the guest avoids: allergies and all that the diets rule out; sorted, each once.
[[nodiscard]] std::vector<Substance> avoidedBy(const Guest& guest);

/// Portions of one variant, and for whom if that is said.
struct MixEntry
{
    VariantId variant;
    Portions portions;
    std::vector<GuestId> guests;

    friend bool operator==(const MixEntry&, const MixEntry&) = default;
};

/// Another tin or mould than the one that the recipe names.
struct OtherMould
{
    Mould mould = RoundMould{centimetres(20)};
    /// As much goes in as into the recipe's: it is deeper or shallower, and bakes as much longer or
    /// shorter. Else it is filled as deep, with less or more.
    bool keepsAmounts = false;

    friend bool operator==(const OtherMould&, const OtherMould&) = default;
};

struct Dish
{
    DishId id;
    RecipeId recipe;
    AlternativeId alternative; // of its course
    std::vector<MixEntry> mix;
    std::optional<CookId> cook;                 // who must make it
    std::map<MethodChoiceId, MethodId> methods; // taken by the user; else the planner chooses
    std::optional<OtherMould> mould{};

    friend bool operator==(const Dish&, const Dish&) = default;
};

/// What a course may be: a dish with its sides. Sides for everybody stand in an alternative of
/// their own.
struct Alternative
{
    AlternativeId id;
    std::string name;
    bool isForEverybody = false; // served beside whichever of the others leads

    friend bool operator==(const Alternative&, const Alternative&) = default;
};

struct Course
{
    CourseId id;
    std::string name; // "Soup"
    CivilTime serving;
    Minutes atTable{25};         // eating and clearing; hosts sit so long
    bool isServingPinned = true; // false: may be served up to 30 minutes later
    std::vector<Alternative> alternatives;
    std::vector<Dish> dishes;

    friend bool operator==(const Course&, const Course&) = default;
};

/// Something to do for the evening that is no dish.
struct HouseJob
{
    HouseJobId id;
    std::string name; // "Lay the table"
    Minutes duration{20};
    Attention attention = handsOn;
    CivilTime earliest;
    CivilTime latest; // by when it must be done
    std::optional<CookId> cook;

    friend bool operator==(const HouseJob&, const HouseJob&) = default;
};

/// Going shopping: before the first use of what it buys and no earlier than its freshness allows.
struct ShoppingTrip
{
    HouseJobId id;
    std::string name;
    Minutes duration{60};
    CivilTime earliest;
    CivilTime latest;
    std::vector<DishId> forDishes;    // empty: all
    std::optional<Minutes> freshness; // from its end to the first use at most
    Litres fridge;                    // that what it brings takes up until first use
    std::optional<CookId> cook;

    friend bool operator==(const ShoppingTrip&, const ShoppingTrip&) = default;
};

/// At which point of a step's range a plan is made (formulate rule 10).
enum class CautionLevel
{
    Likely,
    Half,
    Careful,
    VeryCareful
}; // likely; 50, 80, 95 % quantile

/// How much the user cares for something.
enum class Wish
{
    None,
    Some,
    Much
};

/// What the user prefers; core/plan/weights.h says what each is worth in the plan's cost.
struct Preferences
{
    int calm = 50; // 0: as fresh as can be … 100: as calm as can be
    Wish fewOvenChanges = Wish::Some;
    Wish fewSessions = Wish::Some; // of working, told apart by an hour without
    Wish stayClose = Wish::Some;   // to the plan so far, when planning anew
    CautionLevel caution = CautionLevel::Likely;
    safety::RuleBook rules = safety::RuleBook::UkEu; // whose rules of food safety

    friend bool operator==(const Preferences&, const Preferences&) = default;
};

struct Occasion
{
    OccasionId id;
    std::string name;
    std::string zone = "Europe/London"; // IANA
    KitchenId kitchen;
    std::vector<Guest> guests;
    std::vector<Course> courses; // in order of serving
    std::vector<HouseJob> houseJobs;
    std::vector<ShoppingTrip> trips;
    std::map<CookId, std::vector<HoursOfDay>> hours; // where they differ from the usual ones
    Preferences preferences;
    std::string note;

    friend bool operator==(const Occasion&, const Occasion&) = default;
};

struct OccasionFault
{
    std::string place;
    std::string sentence;

    friend bool operator==(const OccasionFault&, const OccasionFault&) = default;
};

/// Unknown zone, no courses, courses out of order or over seven days apart, ids twice, portions
/// below 0 or above 500, more than 500 guests, guests who eat nothing or more than four portions
/// or portions finer than twelfths, mixes that name guests or variants that are not
/// there, jobs that end before they begin. `recipes` may lack some: that is a fault with the dish's
/// name.
[[nodiscard]] std::vector<OccasionFault> faultsOf(const Occasion& occasion, const Kitchen& kitchen,
                                                  const std::map<RecipeId, const Recipe*>& recipes);

/// Portions of all variants together.
[[nodiscard]] Portions portionsOf(const Dish& dish);

/// What a variant contains with the preparations that its lines name (each in its first variant),
/// and with what steps of `recipes` took that leave a by-product which its lines may use.
[[nodiscard]] Contents contentsOf(const Recipe& recipe, const VariantId& variant,
                                  const std::map<RecipeId, const Recipe*>& recipes,
                                  const IngredientBook& ingredients = IngredientBook{});

/// Which portion each guest eats of a dish: as the mix says, the rest matched so that as many
/// guests as can be get a variant that suits them. Dishes with fewer portions than there are guests
/// (a main and its alternative) are shared out together, one for each guest; of a dish with a
/// portion for everybody, a guest whom no variant suits gets what is left, and `unsuitable` says
/// why that must not be.
struct Helping
{
    GuestId guest;
    DishId dish;
    VariantId variant;
    std::vector<Substance> unsuitable;   // what of it the guest avoids; empty: suits
    std::vector<std::string> unknown;    // ingredients of which nobody has said what they contain
    std::vector<std::string> checkLabel; // those among them whose label would tell

    friend bool operator==(const Helping&, const Helping&) = default;
};
[[nodiscard]] std::vector<Helping> helpingsOf(const Occasion& occasion, const Course& course,
                                              const std::map<RecipeId, const Recipe*>& recipes,
                                              const IngredientBook& ingredients = IngredientBook{});

/// Guests who get nothing in a course that suits them but, at most, a side beside its dishes.
[[nodiscard]] std::vector<GuestId> leftOut(const Occasion& occasion, const Course& course,
                                           const std::map<RecipeId, const Recipe*>& recipes,
                                           const IngredientBook& ingredients = IngredientBook{});

} // namespace suppertide
