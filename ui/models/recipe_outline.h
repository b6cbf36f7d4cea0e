// RecipeOutline: the page of one recipe: its lines, steps, waits and spans, its methods and its
// variants; and what the repertoire does with whole recipes: an empty one, a copy, who uses it.
#pragma once

#include <QCoreApplication>

#include "ui/models/outline.h"
#include "ui/models/row_path.h"

namespace suppertide::ui {

class RecipeOutline : public Outline
{
    Q_DECLARE_TR_FUNCTIONS(RecipeOutline)

public:
    explicit RecipeOutline(RecipeId recipe) : recipe_(std::move(recipe)) {}

    [[nodiscard]] std::vector<OutlineRow> rows(const LibraryState& library) const override;
    [[nodiscard]] std::vector<Field> fields(const LibraryState& library,
                                            const std::string& row) const override;
    [[nodiscard]] std::vector<RowCommand> commands(const LibraryState& library,
                                                   const std::string& row) const override;
    [[nodiscard]] Result<Edit> set(const LibraryState& library, const std::string& row,
                                   const std::string& field,
                                   const FieldValue& value) const override;
    [[nodiscard]] Result<Edit> run(const LibraryState& library, const std::string& row,
                                   const std::string& command) const override;

private:
    [[nodiscard]] RecipePtr find(const LibraryState& library) const;

    RecipeId recipe_;
};

/// A recipe with one variant and one step, fit for planning, to begin with.
[[nodiscard]] Recipe emptyRecipe(const LibraryState& library, const std::string& name);
[[nodiscard]] Recipe copyOfRecipe(const LibraryState& library, const Recipe& recipe);
/// Which occasions and recipes need it, in a sentence; empty: none.
[[nodiscard]] QString usersOfRecipe(const LibraryState& library, const RecipeId& recipe);

} // namespace suppertide::ui
