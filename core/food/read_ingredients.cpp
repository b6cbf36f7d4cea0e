// Reading the table of ingredients.
#include <cmath>

#include "core/base/contracts.h"
#include "core/base/table_text.h"
#include "core/food/ingredient.h"

namespace suppertide {

namespace {

/// "clove 3" is parted at its last blank.
struct NameAndFigure
{
    std::string_view name;
    std::string_view figure;
};

NameAndFigure parted(std::string_view text)
{
    const std::size_t blank = text.rfind(' ');
    return blank == std::string_view::npos
               ? NameAndFigure{text, {}}
               : NameAndFigure{text.substr(0, blank), text.substr(blank + 1)};
}

std::optional<Grams> gramsOf(std::string_view figure)
{
    const auto grams = decimalNumber(figure);
    return grams && *grams > 0 ? std::optional{Grams::ofSmallest(std::llround(*grams * 1000))}
                               : std::nullopt;
}

/// Reads the rows one by one; the first thing wrong is kept.
class IngredientReader
{
public:
    explicit IngredientReader(const TableRow& row) : row_(row) {}

    Result<Ingredient> read()
    {
        Ingredient result;
        result.name = row_.text("name");
        for (const std::string_view name : row_.list("other_names")) {
            result.otherNames.emplace_back(name);
        }
        result.foodClass = one<FoodClass>("class", findFoodClass, "a class of food");
        result.section = one<StoreSection>("section", findStoreSection, "a section of a store");
        result.contains = substances("contains");
        result.mayContain = substances("may_contain");
        result.checkLabel = !row_.isEmpty("label");
        if (const auto density = perThousand("density", 5)) {
            result.density = Density{*density};
        }
        readPieces(result);
        result.ediblePerThousand = perThousand("yield", 1);
        readParts(result);
        result.fridgeDays = days("fridge_days");
        result.cupboardDays = days("cupboard_days");
        result.usdaNumber = row_.text("sr26");
        result.sources = {text("density_source"), text("pieces_source"), text("yield_source"),
                          text("parts_source"), text("keeps_source")};
        if (fault_) {
            return *fault_;
        }
        return result;
    }

private:
    void note(std::string_view column, std::string_view expected)
    {
        if (!fault_) {
            fault_ = row_.fault(column, expected);
        }
    }

    [[nodiscard]] std::string text(std::string_view column) const
    {
        return std::string(row_.text(column));
    }

    template <typename T, typename Find>
    T one(std::string_view column, const Find& find, std::string_view expected)
    {
        const auto found = find(row_.text(column));
        if (!found) {
            note(column, expected);
        }
        return found.value_or(T{});
    }

    std::vector<Substance> substances(std::string_view column)
    {
        std::vector<Substance> result;
        for (const std::string_view name : row_.list(column)) {
            const auto substance = findSubstance(name);
            if (!substance) {
                note(column, "substances with commas between");
                break;
            }
            result.push_back(*substance);
        }
        return result;
    }

    std::optional<int> perThousand(std::string_view column, double most)
    {
        const auto value = row_.optionalNumber(column);
        if (!value) {
            fault_ = fault_ ? fault_ : std::optional{value.error()};
            return std::nullopt;
        }
        if (*value && (**value <= 0 || **value > most)) {
            note(column, "a figure above 0 that can be");
        }
        return *value ? std::optional{static_cast<int>(std::lround(**value * 1000))} : std::nullopt;
    }

    std::optional<int> days(std::string_view column)
    {
        const auto value = row_.optionalNumber(column);
        if (!value || (*value && **value < 1)) {
            note(column, "a number of days");
            return std::nullopt;
        }
        return *value ? std::optional{static_cast<int>(**value)} : std::nullopt;
    }

    void readPieces(Ingredient& result)
    {
        for (const std::string_view cell : row_.list("pieces")) {
            const auto [name, figure] = parted(cell);
            const auto unit = findUnit(name);
            const auto mass = gramsOf(figure);
            if (!unit || !mass) {
                note("pieces", "counted units with their grams, like “clove 3, head 40”");
                return;
            }
            result.pieces.push_back({*unit, *mass});
        }
    }

    void readParts(Ingredient& result)
    {
        for (const std::string_view cell : row_.list("parts")) {
            auto [name, figure] = parted(cell);
            const auto part = findIngredientPart(name);
            const bool isShare = figure.ends_with('%');
            figure.remove_suffix(isShare ? 1 : 0);
            const auto mass = gramsOf(figure);
            if (!part || !mass) {
                note("parts", "parts with their grams or share, like “juice 48” or “bones 32%”");
                return;
            }
            PartMass each{*part, mass, std::nullopt};
            if (isShare) { // g of 100 g, in mg: a hundredth of a per cent is a thousandth of it
                each = {*part, std::nullopt, static_cast<int>(mass->smallest() / 100)};
            }
            result.parts.push_back(each);
        }
    }

    const TableRow& row_;
    std::optional<Failure> fault_;
};

} // namespace

Result<std::vector<Ingredient>> readIngredients(std::string_view table)
{
    const auto text = TableText::read(
        "ingredients", table,
        {"name", "other_names", "class", "section", "contains", "may_contain", "label", "density",
         "density_source", "pieces", "pieces_source", "yield", "yield_source", "parts",
         "parts_source", "fridge_days", "cupboard_days", "keeps_source", "sr26"});
    if (!text) {
        return text.error();
    }
    std::vector<Ingredient> result;
    for (const TableRow& row : text->rows()) {
        auto ingredient = IngredientReader(row).read();
        if (!ingredient) {
            return ingredient.error();
        }
        result.push_back(std::move(*ingredient));
    }
    return result;
}

} // namespace suppertide
