#include "ui/timeline/timeline_accessible.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <QHash>
#include <QPointer>

#include <algorithm>
#include <memory>

#include "ui/timeline/block_words.h"
#include "ui/timeline/timeline_view.h"

namespace suppertide::ui {

namespace {

class BlockItem : public QAccessibleInterface, public QAccessibleActionInterface
{
public:
    BlockItem(TimelineView* view, std::string id) : view_(view), id_(std::move(id)) {}

    [[nodiscard]] bool isValid() const override { return block() != nullptr; }
    [[nodiscard]] QObject* object() const override { return nullptr; }
    [[nodiscard]] QWindow* window() const override
    {
        return view_ ? view_->window()->windowHandle() : nullptr;
    }
    [[nodiscard]] QAccessibleInterface* parent() const override
    {
        return view_ ? QAccessible::queryAccessibleInterface(view_.data()) : nullptr;
    }
    [[nodiscard]] QAccessibleInterface* child(int) const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* childAt(int, int) const override { return nullptr; }
    [[nodiscard]] int childCount() const override { return 0; }
    [[nodiscard]] int indexOfChild(const QAccessibleInterface*) const override { return -1; }
    [[nodiscard]] QAccessible::Role role() const override { return QAccessible::ListItem; }
    void setText(QAccessible::Text, const QString&) override {}

    [[nodiscard]] QString text(QAccessible::Text kind) const override
    {
        const SceneBlock* found = block();
        const bool isWanted = kind == QAccessible::Name || kind == QAccessible::Description;
        return found != nullptr && isWanted ? sentenceOf(view_->state().scene(), *found)
                                            : QString{};
    }

    [[nodiscard]] QRect rect() const override
    {
        const BlockShape* found = shape();
        if (found == nullptr) {
            return {};
        }
        const Box box = found->bounds();
        const QRect local = QRectF{box.left, box.top, box.width(), box.height()}.toAlignedRect();
        return {view_->mapToGlobal(local.topLeft()), local.size()};
    }

    [[nodiscard]] QAccessible::State state() const override
    {
        QAccessible::State state;
        state.focusable = true;
        state.selectable = true;
        state.invalid = !isValid();
        if (view_) {
            const Marks& marks = view_->state().marks();
            const auto* focused = std::get_if<BlockTarget>(&marks.focused);
            state.selected = marks.selected == id_;
            state.focused = focused != nullptr && focused->id == id_ && marks.hasKeyboard;
        }
        return state;
    }

    void* interface_cast(QAccessible::InterfaceType type) override
    {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this)
                                                    : nullptr;
    }

    [[nodiscard]] QStringList actionNames() const override
    {
        return {setFocusAction(), pressAction(), increaseAction(), decreaseAction()};
    }

    void doAction(const QString& name) override
    {
        if (block() == nullptr) {
            return;
        }
        view_->showTask(QString::fromStdString(id_));
        if (name == pressAction()) {
            view_->select(QString::fromStdString(id_));
            Q_EMIT view_->selectionChanged(QString::fromStdString(id_));
        } else if (name == increaseAction()) {
            view_->moveFocusedBy(1);
        } else if (name == decreaseAction()) {
            view_->moveFocusedBy(-1);
        }
    }

    [[nodiscard]] QStringList keyBindingsForAction(const QString& name) const override
    {
        if (name == increaseAction()) {
            return {QStringLiteral("Alt+Right")};
        }
        if (name == decreaseAction()) {
            return {QStringLiteral("Alt+Left")};
        }
        return {};
    }

private:
    [[nodiscard]] const SceneBlock* block() const
    {
        return view_ ? findBlock(view_->state().scene(), id_) : nullptr;
    }
    [[nodiscard]] const BlockShape* shape() const
    {
        if (!view_) {
            return nullptr;
        }
        const TimelineState& state = view_->state();
        for (const BlockShape& candidate : state.geometry().blocks()) {
            if (state.scene().blocks[candidate.block].id == id_) {
                return &candidate;
            }
        }
        return nullptr;
    }

    QPointer<TimelineView> view_;
    std::string id_;
};

/// The list. Its items stay registered by task, so that a reader's handle outlives a new scene.
class TimelineList : public QAccessibleWidget
{
public:
    explicit TimelineList(TimelineView* view)
        : QAccessibleWidget(view, QAccessible::List), view_(view)
    {}
    ~TimelineList() override
    {
        for (const QAccessible::Id id : std::as_const(items_)) {
            QAccessible::deleteAccessibleInterface(id);
        }
    }
    TimelineList(const TimelineList&) = delete;
    TimelineList& operator=(const TimelineList&) = delete;
    TimelineList(TimelineList&&) = delete;
    TimelineList& operator=(TimelineList&&) = delete;

    [[nodiscard]] int childCount() const override
    {
        return static_cast<int>(view_->state().scene().blocks.size());
    }

    [[nodiscard]] QAccessibleInterface* child(int index) const override
    {
        const std::vector<std::size_t> blocks = readingOrder(view_->state().scene());
        if (index < 0 || index >= static_cast<int>(blocks.size())) {
            return nullptr;
        }
        return itemOf(view_->state().scene().blocks[blocks[static_cast<std::size_t>(index)]].id);
    }

    [[nodiscard]] QAccessibleInterface* childAt(int x, int y) const override
    {
        for (int i = 0; i < childCount(); ++i) {
            QAccessibleInterface* item = child(i);
            if (item != nullptr && item->rect().contains(x, y)) {
                return item;
            }
        }
        return nullptr;
    }

    [[nodiscard]] int indexOfChild(const QAccessibleInterface* item) const override
    {
        const Scene& scene = view_->state().scene();
        const std::vector<std::size_t> order = readingOrder(scene);
        const auto at = std::find_if(order.begin(), order.end(), [&](std::size_t block) {
            return itemOf(scene.blocks[block].id) == item;
        });
        return at == order.end() ? -1 : static_cast<int>(at - order.begin());
    }

    [[nodiscard]] QAccessibleInterface* focusChild() const override
    {
        const Marks& marks = view_->state().marks();
        const auto* focused = std::get_if<BlockTarget>(&marks.focused);
        return focused != nullptr && marks.hasKeyboard ? itemOf(focused->id) : nullptr;
    }

private:
    [[nodiscard]] QAccessibleInterface* itemOf(const std::string& task) const
    {
        const QString key = QString::fromStdString(task);
        auto found = items_.constFind(key);
        if (found == items_.constEnd()) {
            auto* item = new BlockItem(view_, task);
            // NOLINTNEXTLINE(clang-analyzer-cplusplus.NewDeleteLeaks): Qt deletes it, by its id
            found = items_.insert(key, QAccessible::registerAccessibleInterface(item));
        }
        return QAccessible::accessibleInterface(*found);
    }

    TimelineView* view_;
    mutable QHash<QString, QAccessible::Id> items_; // made when a reader first asks for them
};

QAccessibleInterface* makeTimelineInterface(const QString& name, QObject* object)
{
    if (name != QLatin1String("suppertide::ui::TimelineView")) {
        return nullptr;
    }
    auto* view = qobject_cast<TimelineView*>(object);
    return view != nullptr ? new TimelineList(view) : nullptr;
}

} // namespace

void installTimelineAccessibility()
{
    static const bool isInstalled = [] {
        QAccessible::installFactory(makeTimelineInterface);
        return true;
    }();
    static_cast<void>(isInstalled);
}

void notifyBlocksChanged(TimelineView& view)
{
    if (QAccessible::isActive()) {
        QAccessibleEvent event{&view, QAccessible::ObjectReorder};
        QAccessible::updateAccessibility(&event);
    }
}

void notifyFocusMoved(TimelineView& view)
{
    const auto* focused = std::get_if<BlockTarget>(&view.state().marks().focused);
    if (!QAccessible::isActive() || focused == nullptr) {
        return;
    }
    const Scene& scene = view.state().scene();
    const std::vector<std::size_t> order = readingOrder(scene);
    const auto at = std::find_if(order.begin(), order.end(), [&](std::size_t block) {
        return scene.blocks[block].id == focused->id;
    });
    if (at != order.end()) {
        QAccessibleEvent event{&view, QAccessible::Focus};
        event.setChild(static_cast<int>(at - order.begin()));
        QAccessible::updateAccessibility(&event);
    }
}

} // namespace suppertide::ui
