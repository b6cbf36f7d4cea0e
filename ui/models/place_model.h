// PlaceModel: who gets what as a table: a row a guest, a column a course or a side. A cell can be
// edited: its choices are all variants of the column's dishes, each with what speaks against it;
// what is chosen comes back as an Edit for the document.
#pragma once

#include <QAbstractTableModel>

#include "core/menus/place_table.h"
#include "ui/models/place_words.h"

namespace suppertide::ui {

/// One thing that a cell may be set to.
struct PlaceChoice
{
    QString text; // "Squash, vegetarian", with marks
    std::optional<std::pair<DishId, VariantId>> helping;

    friend bool operator==(const PlaceChoice&, const PlaceChoice&) = default;
};

class PlaceModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    using QAbstractTableModel::QAbstractTableModel;

    /// Of the open occasion; empty if there is none. Nothing happens if all is as before.
    void show(const LibraryState& library);

    [[nodiscard]] bool isEmpty() const { return table_.guests.empty() || table_.columns.empty(); }
    /// The choices of a cell, "nothing" first, and which of them it has now.
    [[nodiscard]] std::vector<PlaceChoice> choices(const QModelIndex& cell) const;
    [[nodiscard]] int choiceNow(const QModelIndex& cell) const;
    /// What would follow from that choice; absent if the cell is gone or nothing changes.
    [[nodiscard]] std::optional<Edit> edit(const LibraryState& library, const QModelIndex& cell,
                                           int choice) const;
    /// How many places something speaks against, and how many are not known.
    [[nodiscard]] QString summary() const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

private:
    [[nodiscard]] const menus::PlaceCell* cellAt(const QModelIndex& index) const;
    [[nodiscard]] QString cellText(const QModelIndex& index) const;
    [[nodiscard]] QString nameOf(const menus::PlaceOption& option) const;
    [[nodiscard]] QString guestOf(int row) const;

    PlanInput input_;
    menus::PlaceTable table_;
};

/// The portions of one course (or, without one, of all) shared out anew, with the alternative that
/// leads now; in one change. Absent if no occasion is open or nothing would change.
[[nodiscard]] std::optional<Edit> sharedOut(const LibraryState& library,
                                            const std::optional<CourseId>& course = {});

} // namespace suppertide::ui
