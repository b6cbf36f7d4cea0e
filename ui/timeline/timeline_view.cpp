#include "ui/timeline/timeline_view.h"

#include <QPaintEvent>
#include <QPainter>
#include <QToolTip>

#include <algorithm>
#include <cmath>
#include <utility>

#include "ui/timeline/timeline_accessible.h"
#include "ui/timeline/timeline_parts.h"

namespace suppertide::ui {

namespace {

constexpr int hoverCardDelay = 500; // ms
constexpr int edgeScrollStep = 250; // ms
constexpr int pleatOpenDelay = 400; // ms
constexpr int scrollBarWidth = 11;
/// Beyond as many dirty rectangles it is cheaper to paint around all of them at once.
constexpr int mostRectangles = 8;

int overviewHeight(int height, double textScale)
{
    const int wanted = height >= 700 ? 40 : 28;
    return height < 420 ? 0 : static_cast<int>(std::lround(wanted * std::max(1.0, textScale)));
}

} // namespace

TimelineView::TimelineView(const Theme& theme, QWidget* parent)
    : QWidget(parent), theme_(theme), texts_(std::make_unique<TextCache>()),
      parts_(std::make_unique<Parts>(*this, theme, *texts_)), gesture_(std::make_unique<Gesture>())
{
    installTimelineAccessibility();
    setObjectName(QStringLiteral("timeline"));
    setAccessibleName(tr("Timeline"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setAcceptDrops(true);
    setMinimumSize(320, 160);
    setAttribute(Qt::WA_OpaquePaintEvent);
    parts_->horizontal->setObjectName(QStringLiteral("timelineScrollTime"));
    parts_->vertical->setObjectName(QStringLiteral("timelineScrollLanes"));
    for (QScrollBar* bar : {parts_->horizontal, parts_->vertical}) {
        bar->setFocusPolicy(Qt::NoFocus);
        connect(bar, &QScrollBar::valueChanged, this, [this] {
            apply(state_.scrollTo(parts_->horizontal->value(), parts_->vertical->value()));
        });
    }
    connect(parts_->overview, &OverviewStrip::viewMoved, this, [this](PlanTime start) {
        apply(state_.scrollTo(state_.geometry().axis().xOf(start), state_.viewport().scrollY));
    });
    connect(parts_->empty, &EmptyNote::triggered, this, &TimelineView::emptyNoteTriggered);
    parts_->empty->hide();
    parts_->hoverCard->setSingleShot(true);
    parts_->hoverCard->setInterval(hoverCardDelay);
    connect(parts_->hoverCard, &QTimer::timeout, this, &TimelineView::showHoverCard);
    parts_->edgeScroll->setInterval(edgeScrollStep);
    connect(parts_->edgeScroll, &QTimer::timeout, this, &TimelineView::scrollAtEdge);
    parts_->pleatOpen->setSingleShot(true);
    parts_->pleatOpen->setInterval(pleatOpenDelay);
    connect(parts_->pleatOpen, &QTimer::timeout, this, &TimelineView::openPleatUnderDrag);
    retext();
}

TimelineView::~TimelineView() = default;

void TimelineView::setScene(Scene scene)
{
    isAnswered_ = true;
    const bool hasNewLanes = scene.lanes != state_.scene().lanes;
    apply(state_.setScene(std::move(scene)));
    if (hasNewLanes) {
        retext();
    }
    if (!std::holds_alternative<Gesture::Drag>(gesture_->now)) {
        parts_->overview->setScene(state_.scene());
    }
    parts_->empty->setVisible(state_.isEmpty());
    notifyBlocksChanged(*this);
}

void TimelineView::setTheme(const Theme& theme)
{
    theme_ = theme;
    texts_->clear();
    parts_->overview->setTheme(theme);
    retext();
    update();
}

/// Lane names decide how wide the header column is.
void TimelineView::retext()
{
    apply(state_.setText(theme_.textScale, longestLaneName(state_.scene(), theme_, *texts_)));
}

void TimelineView::apply(const Damage& damage)
{
    if (damage.isNone()) {
        return;
    }
    parts_->flags = flagsOf(state_.scene(), state_.geometry(), theme_, *texts_);
    if (damage.isAll) {
        followScroll();
        update(paintedArea());
        return;
    }
    for (const Box& box : damage.boxes) {
        const QRectF area{box.left, box.top, box.width(), box.height()};
        update(area.toAlignedRect().adjusted(-2, -2, 2, 2).intersected(paintedArea()));
    }
}

void TimelineView::followScroll()
{
    const Geometry& geometry = state_.geometry();
    const QSignalBlocker still[]{QSignalBlocker{parts_->horizontal},
                                 QSignalBlocker{parts_->vertical}};
    const double hour = geometry.axis().pixelsPerHour();
    parts_->horizontal->setRange(0, static_cast<int>(std::ceil(geometry.maxScrollX())));
    parts_->horizontal->setPageStep(static_cast<int>(geometry.timeWidth()));
    parts_->horizontal->setSingleStep(static_cast<int>(hour));
    parts_->horizontal->setValue(static_cast<int>(std::lround(state_.viewport().scrollX)));
    parts_->vertical->setRange(0, static_cast<int>(std::ceil(geometry.lanes().scrollRange)));
    parts_->vertical->setPageStep(static_cast<int>(geometry.lanes().scrolling.height));
    parts_->vertical->setSingleStep(26);
    parts_->vertical->setValue(static_cast<int>(std::lround(state_.viewport().scrollY)));
    parts_->vertical->setVisible(geometry.lanes().scrollRange > 0);
    parts_->overview->setView(geometry.visibleTime(), geometry.timeLeft());
    Q_EMIT zoomChanged(hour);
}

QRect TimelineView::paintedArea() const
{
    // The overview moves the view along; where there is none, a scroll bar does.
    const int below = parts_->overview->height() > 0 ? parts_->overview->height() : scrollBarWidth;
    return {0, 0, width(), std::max(0, height() - below)};
}

void TimelineView::placeParts()
{
    const int strip = overviewHeight(height(), theme_.textScale);
    parts_->overview->setVisible(strip > 0);
    parts_->overview->setGeometry(0, height() - strip, width(), strip);
    const QRect area = paintedArea();
    parts_->horizontal->setVisible(strip == 0);
    parts_->empty->setFixedWidth(std::min(380, std::max(200, width() - 160)));
    parts_->empty->adjustSize();
    parts_->empty->move(area.center() - parts_->empty->rect().center());
    apply(state_.resize(area.width(), area.height()));
    const auto left = static_cast<int>(state_.geometry().timeLeft());
    parts_->horizontal->setGeometry(left, area.bottom() + 1, width() - left, scrollBarWidth);
    const Strip lanes = state_.geometry().lanes().scrolling;
    parts_->vertical->setGeometry(width() - scrollBarWidth, static_cast<int>(lanes.top),
                                  scrollBarWidth, static_cast<int>(lanes.height));
}

void TimelineView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    placeParts();
}

void TimelineView::paintEvent(QPaintEvent* event)
{
    QPainter painter{this};
    const PaintInput input{state_.scene(), state_.geometry(), theme_, state_.marks(),
                           parts_->flags};
    const QRegion dirty = event->region().intersected(paintedArea());
    if (dirty.rectCount() > mostRectangles) {
        painter.setClipRect(dirty.boundingRect());
        paintTimeline(painter, input, *texts_, dirty.boundingRect());
    } else {
        for (const QRect& rect : dirty) {
            painter.setClipRect(rect);
            paintTimeline(painter, input, *texts_, rect);
        }
    }
    const QRegion rest = event->region().subtracted(paintedArea());
    painter.setClipRegion(rest);
    painter.fillRect(rest.boundingRect(), theme_.neutral().panel);
}

void TimelineView::setMarks(const Marks& marks)
{
    marks_ = marks;
    apply(state_.setMarks(marks));
}

void TimelineView::select(const QString& taskId)
{
    Marks marks = marks_;
    marks.selected = taskId.toStdString();
    setMarks(marks);
}

QString TimelineView::selected() const
{
    return QString::fromStdString(marks_.selected);
}

void TimelineView::pointAtClash(std::optional<int> number)
{
    Marks marks = marks_;
    marks.pointedClash = number;
    setMarks(marks);
}

void TimelineView::zoomTo(ZoomStop stop)
{
    apply(state_.zoomTo(pixelsPerHourAt(stop),
                        (state_.geometry().timeLeft() + state_.geometry().timeRight()) / 2));
}

void TimelineView::zoomBy(int notches)
{
    const double middle = (state_.geometry().timeLeft() + state_.geometry().timeRight()) / 2;
    apply(state_.zoomTo(zoomedBy(state_.viewport().pixelsPerHour, notches), middle));
}

void TimelineView::showTime(const Interval& when)
{
    apply(state_.show(when));
}

void TimelineView::showEvening()
{
    apply(state_.showEvening());
}

void TimelineView::showTask(const QString& taskId)
{
    const SceneBlock* block = findBlock(state_.scene(), taskId.toStdString());
    if (block != nullptr && !block->places.empty()) {
        showTime(block->when());
        focusTarget(BlockTarget{block->id, block->places.front().lane});
    }
}

void TimelineView::setEmptyNote(const QString& sentence, const QString& button)
{
    parts_->empty->say(sentence, button);
    placeParts();
}

} // namespace suppertide::ui
