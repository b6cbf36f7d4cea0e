#include "ui/pages/outline/flow_layout.h"

#include <algorithm>

namespace suppertide::ui {

namespace {

constexpr int gap = 4;

} // namespace

FlowLayout::FlowLayout(QWidget* parent) : QLayout(parent)
{
    setContentsMargins(0, 0, 0, 0);
}

FlowLayout::~FlowLayout()
{
    for (QLayoutItem* item : items_) {
        delete item;
    }
}

void FlowLayout::addItem(QLayoutItem* item)
{
    items_.push_back(item);
    invalidate();
}

int FlowLayout::count() const
{
    return static_cast<int>(items_.size());
}

QLayoutItem* FlowLayout::itemAt(int index) const
{
    return index >= 0 && index < count() ? items_[static_cast<std::size_t>(index)] : nullptr;
}

QLayoutItem* FlowLayout::takeAt(int index)
{
    QLayoutItem* item = itemAt(index);
    if (item != nullptr) {
        items_.erase(items_.begin() + index);
        invalidate();
    }
    return item;
}

int FlowLayout::heightForWidth(int width) const
{
    return arrange({0, 0, width, 0}, Carry::Measure);
}

QSize FlowLayout::minimumSize() const
{
    QSize size;
    for (const QLayoutItem* item : items_) {
        size = size.expandedTo(item->minimumSize());
    }
    return size;
}

void FlowLayout::setGeometry(const QRect& area)
{
    QLayout::setGeometry(area);
    arrange(area, Carry::Place);
}

int FlowLayout::arrange(const QRect& area, Carry carry) const
{
    int x = area.left();
    int y = area.top();
    int line = 0;
    for (QLayoutItem* item : items_) {
        const QSize size = item->sizeHint();
        if (x > area.left() && x + size.width() > area.right() + 1) {
            x = area.left();
            y += line + gap;
            line = 0;
        }
        if (carry == Carry::Place) {
            item->setGeometry({QPoint(x, y), size});
        }
        x += size.width() + gap;
        line = std::max(line, size.height());
    }
    return y + line - area.top();
}

} // namespace suppertide::ui
