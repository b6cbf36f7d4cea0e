// What a TimelineView is made of beside its state. Only its own .cpp files include this.
#pragma once

#include <QPointF>
#include <QScrollBar>
#include <QTimer>

#include <optional>
#include <variant>

#include "ui/timeline/empty_note.h"
#include "ui/timeline/overview_strip.h"
#include "ui/timeline/painter.h"
#include "ui/timeline/text_cache.h"
#include "ui/timeline/timeline_view.h"

namespace suppertide::ui {

struct TimelineView::Parts
{
    explicit Parts(TimelineView& view, const Theme& theme, TextCache& texts)
        : horizontal(new QScrollBar(Qt::Horizontal, &view)),
          vertical(new QScrollBar(Qt::Vertical, &view)),
          overview(new OverviewStrip(theme, texts, &view)), empty(new EmptyNote(&view)),
          hoverCard(new QTimer(&view)), edgeScroll(new QTimer(&view)), pleatOpen(new QTimer(&view))
    {}

    QScrollBar* horizontal;
    QScrollBar* vertical;
    OverviewStrip* overview;
    EmptyNote* empty;
    QTimer* hoverCard;
    QTimer* edgeScroll;
    QTimer* pleatOpen;
    std::vector<Flag> flags;
};

/// What the pressed mouse button is doing.
struct TimelineView::Gesture
{
    struct Idle
    {};
    struct Pan
    {
        QPointF from;
        double scrollX = 0;
        double scrollY = 0;
    };
    /// Pressed on something; becomes a drag once the pointer has gone far enough.
    struct Pressed
    {
        QPointF from;
        Target target;
    };
    struct Drag
    {
        TaskDrag task;
        std::optional<int> course; // a flag is dragged, not a block
        Scene before;              // what held when it was picked up
    };

    std::variant<Idle, Pan, Pressed, Drag> now;
    QPointF pointer;
    Fineness fineness = Fineness::Coarse;
    bool isSpaceHeld = false;
};

} // namespace suppertide::ui
