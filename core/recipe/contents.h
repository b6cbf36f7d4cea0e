// Collecting what lines contain, for a recipe (contents.cpp) and for a dish with its preparations
// and by-products (core/occasion).
#pragma once

#include <set>
#include <string>

#include "core/recipe/recipe.h"

namespace suppertide {

class ContentsCollector
{
public:
    explicit ContentsCollector(const IngredientBook& ingredients) : ingredients_(ingredients) {}

    /// Preparations are left to the caller.
    void add(const IngredientLine& line);
    void add(const RecipePart& part);
    void addUnknown(const std::string& ingredient) { unknown_.insert(ingredient); }

    [[nodiscard]] Contents contents() const;

private:
    void addContained(const std::vector<Substance>& substances);

    const IngredientBook& ingredients_;
    std::set<Substance> contains_;
    std::set<std::string> unknown_;
    std::set<std::string> checkLabel_;
};

} // namespace suppertide
