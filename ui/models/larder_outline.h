// LarderOutline: what is at home, packs and prices, the cook's own ingredients and the labels read,
// as rows with their forms; a part of the page "Shopping".
#pragma once

#include <QCoreApplication>

#include "ui/models/outline.h"

namespace suppertide::ui {

class LarderOutline : public Outline
{
    Q_DECLARE_TR_FUNCTIONS(LarderOutline)

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

/// The library with this larder.
[[nodiscard]] LibraryState withLarder(const LibraryState& library, Larder larder);

} // namespace suppertide::ui
