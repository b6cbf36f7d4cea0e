// MenuOutline: the page "Menu and guests" of the open occasion: the evening, its courses with
// alternatives, dishes and portions by variant, guests, house jobs and trips.
#pragma once

#include <QCoreApplication>

#include "core/base/clock.h"
#include "ui/models/dish_looks.h"
#include "ui/models/outline.h"
#include "ui/models/row_path.h"

namespace suppertide::ui {

class MenuOutline : public Outline
{
    Q_DECLARE_TR_FUNCTIONS(MenuOutline)

public:
    /// Both are read when asked, and must outlive this.
    MenuOutline(const DishLooks& looks, const Clock& clock) : looks_(looks), clock_(clock) {}

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
    const DishLooks& looks_;
    const Clock& clock_;
};

} // namespace suppertide::ui
