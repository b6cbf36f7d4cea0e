#include "ui/clashes/clash_panel.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QListView>
#include <QMenu>
#include <QMouseEvent>
#include <QVBoxLayout>

#include "ui/clashes/clash_delegate.h"
#include "ui/clashes/ways_panel.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

ClashPanel::ClashPanel(const Theme& theme, QWidget* parent)
    : QWidget(parent), items_(new ClashItems(this)), delegate_(new ClashDelegate(theme, this)),
      heading_(new QLabel(tr("Clashes"), this)), summary_(new QLabel(this)),
      quiet_(new QLabel(this)), view_(new QListView(this)), ways_(new WaysPanel(theme, this))
{
    view_->setObjectName(u"clashes"_s);
    view_->setAccessibleName(tr("Clashes of the plan"));
    view_->setModel(items_);
    view_->setItemDelegate(delegate_);
    view_->setMouseTracking(true);
    view_->setFrameShape(QFrame::NoFrame);
    view_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    view_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    view_->setResizeMode(QListView::Adjust);
    quiet_->setObjectName(u"noClashes"_s);
    quiet_->setWordWrap(true);
    quiet_->setTextInteractionFlags(Qt::TextSelectableByMouse);

    auto* title = new QHBoxLayout;
    title->setSpacing(12);
    title->addWidget(heading_);
    title->addWidget(summary_);
    title->addStretch();
    auto* column = new QVBoxLayout;
    column->setSpacing(4);
    column->addLayout(title);
    column->addWidget(quiet_);
    column->addWidget(view_, 1);
    column->addStretch();
    auto* across = new QHBoxLayout(this);
    across->setContentsMargins(10, 4, 4, 2);
    across->setSpacing(12);
    across->addLayout(column, 2);
    across->addWidget(ways_, 3);
    ways_->hide();

    const auto activate = [this](const QModelIndex& index) {
        Q_EMIT clashActivated(numberAt(index));
    };
    connect(view_, &QListView::clicked, this, activate);
    connect(view_, &QListView::activated, this, activate);
    view_->setContextMenuPolicy(Qt::CustomContextMenu);
    connect(view_, &QListView::customContextMenuRequested, this, &ClashPanel::popUp);
    connect(view_, &QListView::entered, this,
            [this](const QModelIndex& index) { Q_EMIT clashPointedAt(numberAt(index)); });
    connect(view_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& index) { Q_EMIT clashPointedAt(numberAt(index)); });
    for (QWidget* part : findChildren<QWidget*>()) {
        part->installEventFilter(this);
    }
    setTheme(theme);
}

void ClashPanel::popUp(const QPoint& at)
{
    const QModelIndex index = view_->indexAt(at);
    if (!index.isValid()) {
        return;
    }
    QMenu menu(this);
    menu.addAction(tr("Go there"), this,
                   [this, number = numberAt(index)] { Q_EMIT clashActivated(number); });
    const QString subject = index.data(ClashItems::TemperaturesRole).toString();
    if (!subject.isEmpty()) {
        menu.addAction(tr("Show temperatures"), this,
                       [this, subject] { Q_EMIT temperaturesRequested(subject); });
    }
    menu.exec(view_->viewport()->mapToGlobal(at));
}

int ClashPanel::numberAt(const QModelIndex& index) const
{
    return index.data(ClashItems::NumberRole).toInt();
}

void ClashPanel::setRows(std::vector<ClashRow> rows, const QString& quiet)
{
    const auto count = static_cast<int>(rows.size());
    items_->setRows(std::move(rows));
    summary_->setText(count == 0   ? QString()
                      : count == 1 ? tr("1 to settle before this plan can be cooked")
                                   : tr("%1 to settle before this plan can be cooked").arg(count));
    quiet_->setText(quiet);
    quiet_->setVisible(count == 0);
    view_->setVisible(count > 0);
}

void ClashPanel::setTheme(const Theme& theme)
{
    delegate_->setTheme(theme);
    heading_->setFont(theme.font(TypeRole::Heading));
    summary_->setFont(theme.font(TypeRole::Secondary));
    quiet_->setFont(theme.font(TypeRole::Control));
    ways_->setTheme(theme);
    view_->doItemsLayout();
}

void ClashPanel::showClash(int number)
{
    const QModelIndex index = items_->index(number - 1);
    if (index.isValid()) {
        view_->setCurrentIndex(index);
        view_->scrollTo(index);
    }
}

/// The first click of two makes room for ways out: by the second another row, the scroll bar or a
/// way out may be under the pointer. The row of the first one is meant all the same.
bool ClashPanel::takesDoubleClick()
{
    const QString subject = pressed_.data(ClashItems::TemperaturesRole).toString();
    pressed_ = QModelIndex();
    if (!subject.isEmpty()) {
        Q_EMIT temperaturesRequested(subject);
    }
    return !subject.isEmpty();
}

bool ClashPanel::eventFilter(QObject* watched, QEvent* event)
{
    const bool isOnList = watched == view_->viewport();
    if (event->type() == QEvent::MouseButtonPress) {
        pressed_ = isOnList ? view_->indexAt(static_cast<QMouseEvent*>(event)->position().toPoint())
                            : QModelIndex();
    } else if (event->type() == QEvent::MouseButtonDblClick) {
        return takesDoubleClick() && !isOnList; // no way out is taken by it
    } else if (isOnList && event->type() == QEvent::Leave) {
        Q_EMIT clashPointedAt(0);
    } else if (isOnList && event->type() == QEvent::Resize) {
        view_->doItemsLayout(); // sentences wrap anew, also where the ways out take room
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace suppertide::ui
