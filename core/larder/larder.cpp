#include "core/larder/larder.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

#include "core/food/ingredient.h"

namespace suppertide {

namespace {

const Rational nothing{0};
constexpr std::int64_t heaviestLitre = 25;    // kg; gold has 19, no food 3
constexpr std::int64_t heaviestPiece = 100;   // kg
constexpr int longestKept = 3660;             // days, ten years
constexpr std::int64_t dearest = 100'000'000; // smallest coins

bool hasPrices(const Larder& larder)
{
    return std::ranges::any_of(larder.packs,
                               [](const Pack& pack) { return pack.price.has_value(); });
}

bool isCurrency(const std::string& code)
{
    return code.size() == 3 &&
           std::ranges::all_of(code, [](char c) { return c >= 'A' && c <= 'Z'; });
}

class FaultFinder
{
public:
    explicit FaultFinder(const Larder& larder) : larder_(larder) {}

    std::vector<LarderFault> find()
    {
        std::ranges::for_each(larder_.ingredients,
                              [this](const OwnIngredient& own) { check(own); });
        std::ranges::for_each(larder_.stock, [this](const StockItem& item) { check(item); });
        std::ranges::for_each(larder_.packs, [this](const Pack& pack) { check(pack); });
        std::ranges::for_each(larder_.labels,
                              [this](const ConfirmedLabel& label) { check(label); });
        if (!isCurrency(larder_.currency)) {
            say("currency", fmt::format("“{}” is no currency. Write its three letters, like GBP.",
                                        larder_.currency));
        }
        return std::move(faults_);
    }

private:
    void say(std::string place, std::string sentence)
    {
        faults_.push_back({std::move(place), std::move(sentence)});
    }

    void checkName(const std::string& name, const std::string& place)
    {
        if (ingredientKey(name).empty()) {
            say(place, "It names no ingredient. Give it a name.");
        }
    }

    void checkWeight(const std::optional<Grams>& mass, std::int64_t mostKilograms,
                     const std::string& place, std::string_view what)
    {
        if (mass && (*mass <= Grams{} || *mass > grams(mostKilograms * 1000))) {
            say(place,
                fmt::format("{} weighs more than nothing and at most {} kg.", what, mostKilograms));
        }
    }

    void check(const OwnIngredient& own)
    {
        const std::string place = fmt::format("ingredient “{}”", own.name);
        checkName(own.name, place);
        std::vector<std::string> words{own.name};
        words.insert(words.end(), own.synonyms.begin(), own.synonyms.end());
        for (const std::string& word : words) {
            if (!known_.insert(ingredientKey(word)).second) {
                say(place, fmt::format("“{}” stands in the larder twice. Keep one.", word));
            }
        }
        checkWeight(own.litreWeighs, heaviestLitre, place, "A litre");
        checkWeight(own.pieceWeighs, heaviestPiece, place, "A piece");
        if (own.ediblePercent && (*own.ediblePercent < 1 || *own.ediblePercent > 100)) {
            say(place, "What is left to eat of it lies between 1 and 100 %.");
        }
        if (own.keepsDays && (*own.keepsDays < 0 || *own.keepsDays > longestKept)) {
            say(place, fmt::format("It keeps between 0 and {} days.", longestKept));
        }
        for (const auto& [part, amount] : own.parts) {
            if (amount.value <= nothing || amount.unit == Unit::ToTaste) {
                say(place, "A part of it is more than nothing: write how much one gives.");
            }
        }
    }

    void check(const StockItem& item)
    {
        const std::string place = fmt::format("at home, “{}”", item.ingredient);
        checkName(item.ingredient, place);
        if (!item.isAlwaysThere && item.amount.value < nothing) {
            say(place, "There cannot be less than nothing of it.");
        }
        checkDay(item.useBy, place);
    }

    void check(const Pack& pack)
    {
        const std::string place = fmt::format("pack of “{}”", pack.ingredient);
        checkName(pack.ingredient, place);
        if (pack.amount.value <= nothing || pack.amount.unit == Unit::ToTaste) {
            say(place, "A pack holds more than nothing. Write how much, like 500 g.");
        }
        if (pack.price && (*pack.price < 0 || *pack.price > dearest)) {
            say(place, fmt::format("A price lies between 0 and {}.",
                                   priceText(dearest, larder_.currency)));
        }
    }

    void check(const ConfirmedLabel& label)
    {
        const std::string place = fmt::format("label of “{}”", label.ingredient);
        checkName(label.ingredient, place);
        checkDay(label.read, place);
    }

    void checkDay(const std::optional<CivilDate>& day, const std::string& place)
    {
        if (day && !isValid(*day)) {
            say(place, fmt::format("There is no day {} in the calendar.", toIso(*day)));
        }
    }

    const Larder& larder_;
    std::set<std::string> known_;
    std::vector<LarderFault> faults_;
};

/// Replaces in `things` each that is the same as one of `added`, and adds the others.
template <typename Thing, typename IsSame>
void merge(std::vector<Thing>& things, const std::vector<Thing>& added, const IsSame& isSame)
{
    for (const Thing& thing : added) {
        const auto there =
            std::ranges::find_if(things, [&](const Thing& other) { return isSame(other, thing); });
        if (there == things.end()) {
            things.push_back(thing);
        } else {
            *there = thing;
        }
    }
}

} // namespace

std::string ingredientKey(std::string_view name)
{
    return nameKey(name);
}

const OwnIngredient* findOwn(const Larder& larder, std::string_view name)
{
    const std::string key = ingredientKey(name);
    const auto isCalledSo = [&key](const OwnIngredient& own) {
        return ingredientKey(own.name) == key ||
               std::ranges::any_of(own.synonyms, [&key](const std::string& word) {
                   return ingredientKey(word) == key;
               });
    };
    const auto found = std::ranges::find_if(larder.ingredients, isCalledSo);
    return found == larder.ingredients.end() ? nullptr : &*found;
}

const ConfirmedLabel* findLabel(const Larder& larder, std::string_view name)
{
    const std::string key = ingredientKey(name);
    const ConfirmedLabel* latest = nullptr;
    for (const ConfirmedLabel& label : larder.labels) {
        if (ingredientKey(label.ingredient) == key &&
            (latest == nullptr || latest->read <= label.read)) {
            latest = &label;
        }
    }
    return latest;
}

int minorDigitsOf(std::string_view currency)
{
    using namespace std::string_view_literals;
    constexpr std::array withoutCoins{"BIF"sv, "CLP"sv, "DJF"sv, "GNF"sv, "ISK"sv, "JPY"sv,
                                      "KMF"sv, "KRW"sv, "PYG"sv, "RWF"sv, "UGX"sv, "VND"sv,
                                      "VUV"sv, "XAF"sv, "XOF"sv, "XPF"sv};
    constexpr std::array withThousandths{"BHD"sv, "IQD"sv, "JOD"sv, "KWD"sv,
                                         "LYD"sv, "OMR"sv, "TND"sv};
    if (std::ranges::find(withoutCoins, currency) != withoutCoins.end()) {
        return 0;
    }
    return std::ranges::find(withThousandths, currency) != withThousandths.end() ? 3 : 2;
}

std::string priceText(std::int64_t minorUnits, std::string_view currency)
{
    const int digits = minorDigitsOf(currency);
    const std::string sign = minorUnits < 0 ? "-" : "";
    const std::int64_t size = minorUnits < 0 ? -minorUnits : minorUnits;
    if (digits == 0) {
        return fmt::format("{}{} {}", sign, size, currency);
    }
    const std::int64_t whole = digits == 3 ? 1000 : 100;
    return fmt::format("{}{}.{:0{}} {}", sign, size / whole, size % whole, digits, currency);
}

Larder merged(Larder larder, const Larder& added)
{
    if (larder.empty()) {
        return added;
    }
    if (hasPrices(added) || !hasPrices(larder)) {
        larder.currency = added.currency;
    }
    const auto isSameName = [](const std::string& a, const std::string& b) {
        return ingredientKey(a) == ingredientKey(b);
    };
    merge(
        larder.ingredients, added.ingredients,
        [&](const OwnIngredient& a, const OwnIngredient& b) { return isSameName(a.name, b.name); });
    merge(larder.stock, added.stock, [&](const StockItem& a, const StockItem& b) {
        return isSameName(a.ingredient, b.ingredient) && a.useBy == b.useBy &&
               a.amount.unit == b.amount.unit && a.note == b.note;
    });
    merge(larder.packs, added.packs, [&](const Pack& a, const Pack& b) {
        return isSameName(a.ingredient, b.ingredient) && a.amount == b.amount && a.name == b.name;
    });
    merge(larder.labels, added.labels, [&](const ConfirmedLabel& a, const ConfirmedLabel& b) {
        return isSameName(a.ingredient, b.ingredient) && a.note == b.note;
    });
    if (!added.sections.empty()) {
        larder.sections = added.sections;
    }
    return larder;
}

bool areInOneCurrency(const Larder& larder, const Larder& added)
{
    return larder.currency == added.currency || !hasPrices(larder) || !hasPrices(added);
}

std::vector<LarderFault> faultsOf(const Larder& larder)
{
    return FaultFinder(larder).find();
}

} // namespace suppertide
