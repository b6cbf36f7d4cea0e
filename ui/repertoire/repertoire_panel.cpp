#include "ui/repertoire/repertoire_panel.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTreeView>
#include <QVBoxLayout>

#include "ui/models/repertoire_items.h"
#include "ui/repertoire/repertoire_delegate.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

QTreeView* makeView(QWidget* parent, QAbstractItemModel* items, QAbstractItemDelegate* delegate)
{
    auto* view = new QTreeView(parent);
    view->setObjectName(u"repertoire"_s);
    view->setAccessibleName(RepertoirePanel::tr("Recipes and their variants"));
    view->setModel(items);
    view->setItemDelegate(delegate);
    view->setHeaderHidden(true);
    view->setIndentation(0);
    view->setRootIsDecorated(false);
    view->setItemsExpandable(false);
    view->setExpandsOnDoubleClick(false);
    view->setDragEnabled(true);
    view->setDragDropMode(QAbstractItemView::DragOnly);
    view->setSelectionMode(QAbstractItemView::SingleSelection);
    view->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    view->setFrameShape(QFrame::NoFrame);
    view->setMouseTracking(true);
    view->setContextMenuPolicy(Qt::CustomContextMenu);
    view->setStyleSheet(u"QTreeView { background: transparent; border: 0; }"_s);
    return view;
}

} // namespace

RepertoirePanel::RepertoirePanel(const Theme& theme, QWidget* parent)
    : QWidget(parent), items_(new RepertoireItems(this)),
      delegate_(new RepertoireDelegate(theme, this)), heading_(new QLabel(tr("Repertoire"), this)),
      count_(new QLabel(this)), search_(new QLineEdit(this)),
      view_(makeView(this, items_, delegate_)), empty_(new QLabel(this)),
      clear_(new QPushButton(tr("Clear the search"), this))
{
    search_->setObjectName(u"repertoireSearch"_s);
    search_->setAccessibleName(tr("Search the repertoire"));
    search_->setPlaceholderText(tr("Search, or “no nuts”"));
    search_->setClearButtonEnabled(true);
    empty_->setWordWrap(true);
    auto* add = new QPushButton(tr("New recipe"), this);
    add->setObjectName(u"newRecipe"_s);

    auto* title = new QHBoxLayout;
    title->addWidget(heading_);
    title->addStretch();
    title->addWidget(count_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(10, 8, 8, 8);
    column->setSpacing(6);
    column->addLayout(title);
    column->addWidget(search_);
    column->addWidget(empty_);
    column->addWidget(clear_, 0, Qt::AlignLeft);
    column->addWidget(view_, 1);
    // Takes the room of the list when that is hidden.
    column->addStretch();
    column->addWidget(add);

    connect(search_, &QLineEdit::textChanged, this, [this] { refresh(); });
    connect(clear_, &QPushButton::clicked, search_, &QLineEdit::clear);
    connect(add, &QPushButton::clicked, this, [this] { Q_EMIT newRecipeRequested(); });
    connect(view_, &QTreeView::activated, this, [this](const QModelIndex& at) { activate(at); });
    connect(view_, &QTreeView::customContextMenuRequested, this, [this](const QPoint& at) {
        const QModelIndex index = view_->indexAt(at);
        if (index.isValid()) {
            Q_EMIT menuRequested(index.data(RepertoireItems::RecipeRole).toString(),
                                 index.data(RepertoireItems::VariantRole).toString(),
                                 view_->viewport()->mapToGlobal(at));
        }
    });
    setTheme(theme);
}

void RepertoirePanel::show(const LibraryState& library, const DishLooks& looks)
{
    library_ = library;
    looks_ = looks;
    refresh();
}

void RepertoirePanel::setTheme(const Theme& theme)
{
    delegate_->setTheme(theme);
    heading_->setFont(theme.font(TypeRole::Heading));
    count_->setFont(theme.font(TypeRole::Secondary));
    empty_->setFont(theme.font(TypeRole::Control));
    view_->doItemsLayout();
}

void RepertoirePanel::refresh()
{
    const QString searched = search_->text().trimmed();
    const QString chosen = chosenRecipe();
    items_->setCards(
        repertoire_.cards(library_, looks_, RepertoireSearch::parse(searched.toStdString())));
    view_->expandAll();
    if (!chosen.isEmpty() && !view_->currentIndex().isValid()) {
        choose(chosen);
    }
    const auto found = static_cast<int>(items_->cards().size());
    count_->setText(found == 1 ? tr("1 recipe") : tr("%1 recipes").arg(found));
    empty_->setText(searched.isEmpty()
                        ? tr("No recipes yet. Write one, or import some under Occasion.")
                        : tr("Nothing found for “%1”.").arg(searched));
    empty_->setVisible(found == 0);
    clear_->setVisible(found == 0 && !searched.isEmpty());
    view_->setVisible(found > 0);
    qobject_cast<QVBoxLayout*>(layout())->setStretchFactor(view_, found > 0 ? 1 : 0);
}

void RepertoirePanel::activate(const QModelIndex& index)
{
    const QString recipe = index.data(RepertoireItems::RecipeRole).toString();
    const QVariant variant = index.data(RepertoireItems::VariantRole);
    if (variant.isValid()) {
        Q_EMIT variantActivated({recipe, variant.toString()});
    } else if (!recipe.isEmpty()) {
        Q_EMIT recipeActivated(recipe);
    }
}

void RepertoirePanel::focusSearch()
{
    search_->setFocus(Qt::ShortcutFocusReason);
    search_->selectAll();
}

QString RepertoirePanel::chosenRecipe() const
{
    return view_->currentIndex().data(RepertoireItems::RecipeRole).toString();
}

void RepertoirePanel::choose(const QString& recipe)
{
    const QModelIndex index = items_->find(recipe);
    if (index.isValid()) {
        view_->setCurrentIndex(index);
        view_->scrollTo(index);
    }
}

} // namespace suppertide::ui
