// KitchenOutline: the page "Kitchen": what the kitchen of the open occasion (else the first one)
// has, and its cooks with their usual hours and those of the occasion's days.
#pragma once

#include <QCoreApplication>

#include "ui/models/outline.h"
#include "ui/models/row_path.h"

namespace suppertide::ui {

class KitchenOutline : public Outline
{
    Q_DECLARE_TR_FUNCTIONS(KitchenOutline)

public:
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
};

} // namespace suppertide::ui
