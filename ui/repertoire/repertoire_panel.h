// RepertoirePanel: the repertoire at the left edge: search, and the recipes as cards whose variants
// can be dragged onto the timeline or put into a course by Enter.
#pragma once

#include <QWidget>

#include "ui/models/repertoire.h"
#include "ui/theme/theme.h"
#include "ui/timeline/variant_mime.h"

class QLabel;
class QLineEdit;
class QPushButton;
class QTreeView;

namespace suppertide::ui {

class RepertoireDelegate;
class RepertoireItems;

class RepertoirePanel : public QWidget
{
    Q_OBJECT

public:
    explicit RepertoirePanel(const Theme& theme, QWidget* parent = nullptr);

    void show(const LibraryState& library, const DishLooks& looks);
    void setTheme(const Theme& theme);
    void focusSearch();
    /// The recipe that is chosen; empty: none.
    [[nodiscard]] QString chosenRecipe() const;
    void choose(const QString& recipe);

Q_SIGNALS:
    /// Enter or a double click on a variant.
    void variantActivated(const suppertide::ui::DraggedVariant& variant);
    /// The same on a recipe.
    void recipeActivated(const QString& recipe);
    void newRecipeRequested();
    void menuRequested(const QString& recipe, const QString& variant, const QPoint& global);

private:
    void refresh();
    void activate(const QModelIndex& index);

    LibraryState library_;
    DishLooks looks_;
    Repertoire repertoire_;
    RepertoireItems* items_;
    RepertoireDelegate* delegate_;
    QLabel* heading_;
    QLabel* count_;
    QLineEdit* search_;
    QTreeView* view_;
    QLabel* empty_;
    QPushButton* clear_;
};

} // namespace suppertide::ui
