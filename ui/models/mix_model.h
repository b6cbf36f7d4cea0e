// MixModel: who gets which variant as a table: a row a variant, a column a guest. A portion is
// moved within its column, from one variant to another of the same course; what that would mean is
// told before it is done, and comes back as an Edit for the document.
#pragma once

#include <QAbstractTableModel>

#include "core/menus/mix_table.h"
#include "ui/models/place_words.h"

namespace suppertide::ui {

class MixModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    /// Mark of the cell.
    static constexpr int markRole = Qt::UserRole;
    /// Whether the row is the first of its course, or of a side.
    static constexpr int isFirstRole = Qt::UserRole + 1;

    enum Mark
    {
        Free,    // nothing speaks against it
        Unknown, // the label would tell
        Against, // not for this guest
    };

    using QAbstractTableModel::QAbstractTableModel;

    /// Of the open occasion; empty if there is none. Nothing happens if all is as before.
    void show(const LibraryState& library);
    [[nodiscard]] bool isEmpty() const { return table_.rows.empty(); }

    /// Whether the guest of the cell gets what its row is.
    [[nodiscard]] bool isTheirs(const QModelIndex& cell) const;
    /// The row in which the guest has the portion of that row's course; -1 if there is none.
    [[nodiscard]] int rowOfPortion(int guest, int row) const;
    /// The row of the same course that is `by` rows further, or the last that is.
    [[nodiscard]] int rowAway(int row, int by) const;

    /// Whether the portion could go there, whatever is in it.
    [[nodiscard]] bool canMove(int guest, int from, int to) const;
    /// "Ada gets salmon, plain. Not for this guest: fish; …"; or why the portion cannot go there.
    [[nodiscard]] QString moveWords(int guest, int from, int to) const;
    /// Absent if it cannot go there, or is there.
    [[nodiscard]] std::optional<Edit> move(const LibraryState& library, int guest, int from,
                                           int to) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    [[nodiscard]] const menus::MixRow& rowAt(int row) const
    {
        return table_.rows[static_cast<std::size_t>(row)];
    }
    [[nodiscard]] const menus::MixCell& cellAt(int guest, int row) const
    {
        return rowAt(row).cells[static_cast<std::size_t>(guest)];
    }
    [[nodiscard]] const menus::PlaceColumn& columnOf(int row) const;
    [[nodiscard]] bool isInTable(int guest, int row) const;
    [[nodiscard]] QString nameOf(int row) const;
    [[nodiscard]] QString guestOf(int guest) const;
    [[nodiscard]] bool isFirst(int row) const;
    [[nodiscard]] QString rowWords(int section) const;
    [[nodiscard]] QString cellWords(int guest, int row) const;

    PlanInput input_;
    menus::MixTable table_;
};

} // namespace suppertide::ui
