#include "ui/clashes/ways_panel.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/clashes/way_delegate.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

WaysPanel::WaysPanel(const Theme& theme, QWidget* parent)
    : QWidget(parent), items_(new WayItems(this)), delegate_(new WayDelegate(theme, this)),
      heading_(new QLabel(this)), progress_(new QLabel(this)),
      stop_(new QPushButton(tr("Stop"), this)), take_(new QPushButton(tr("Take it"), this)),
      view_(new QListView(this))
{
    setObjectName(u"waysOut"_s);
    view_->setObjectName(u"ways"_s);
    view_->setAccessibleName(tr("Ways out, cheapest first"));
    view_->setModel(items_);
    view_->setItemDelegate(delegate_);
    view_->setMouseTracking(true);
    view_->setFrameShape(QFrame::NoFrame);
    view_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    view_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    view_->setResizeMode(QListView::Adjust);
    progress_->setObjectName(u"waysProgress"_s);
    stop_->setObjectName(u"stopWays"_s);
    stop_->setAccessibleName(tr("Stop looking for ways out"));
    take_->setObjectName(u"takeWay"_s);
    take_->setAccessibleName(tr("Take the chosen way out"));
    take_->setToolTip(tr("Makes this change. Undo takes it back."));

    auto* title = new QHBoxLayout;
    title->setSpacing(8);
    title->addWidget(heading_);
    title->addWidget(progress_, 1);
    title->addWidget(stop_);
    title->addWidget(take_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addLayout(title);
    column->addWidget(view_, 1);

    connect(view_, &QListView::activated, this, &WaysPanel::takeCurrent);
    connect(take_, &QPushButton::clicked, this, &WaysPanel::takeCurrent);
    connect(stop_, &QPushButton::clicked, this, &WaysPanel::stopRequested);
    connect(view_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &WaysPanel::showTake);
    connect(items_, &QAbstractItemModel::modelReset, this, &WaysPanel::showTake);
    setTheme(theme);
    showTake();
}

void WaysPanel::begin(const QString& heading)
{
    heading_->setText(heading);
    items_->clear();
}

void WaysPanel::setReasons(const QStringList& reasons)
{
    items_->setReasons(reasons);
}

void WaysPanel::add(WayRow row)
{
    items_->add(std::move(row));
    showTake();
}

void WaysPanel::setProgress(const QString& words, bool isSearching)
{
    isSearching_ = isSearching;
    progress_->setText(words);
    // A button that has the focus does not vanish under it.
    if (!isSearching && stop_->hasFocus()) {
        view_->setFocus();
    }
    stop_->setVisible(isSearching);
}

void WaysPanel::setTheme(const Theme& theme)
{
    delegate_->setTheme(theme);
    heading_->setFont(theme.font(TypeRole::Heading));
    progress_->setFont(theme.font(TypeRole::Secondary));
    view_->doItemsLayout();
}

void WaysPanel::showTake()
{
    take_->setEnabled(view_->currentIndex().data(WayItems::IsWayRole).toBool());
}

void WaysPanel::takeCurrent()
{
    const QModelIndex current = view_->currentIndex();
    if (current.data(WayItems::IsWayRole).toBool()) {
        Q_EMIT taken(items_->wayNumber(current.row()));
    }
}

void WaysPanel::keyPressEvent(QKeyEvent* event)
{
    if (event->key() != Qt::Key_Escape) {
        QWidget::keyPressEvent(event);
        return;
    }
    if (isSearching_) {
        Q_EMIT stopRequested();
    } else {
        Q_EMIT closed();
    }
}

void WaysPanel::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    view_->doItemsLayout(); // sentences wrap anew
}

} // namespace suppertide::ui
