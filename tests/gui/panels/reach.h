// What can be reached without a mouse or without seeing: which widgets the Tab key stops at, and
// which of them have no name for a screen reader.
#pragma once

#include <QAccessible>
#include <QApplication>
#include <QTest>
#include <QWidget>

#include <algorithm>
#include <ostream>
#include <set>

// For GoogleTest, which looks for it beside QString.
inline void PrintTo(const QString& text, std::ostream* out)
{
    *out << '"' << text.toStdString() << '"';
}

namespace suppertide::ui::test {

/// Those that the user can give the focus to, now.
[[nodiscard]] inline QList<QWidget*> stopsOf(const QWidget& window)
{
    QList<QWidget*> stops;
    for (QWidget* widget : window.findChildren<QWidget*>()) {
        const bool isStop = (widget->focusPolicy() & Qt::TabFocus) != 0 && widget->isEnabled() &&
                            widget->isVisibleTo(&window) && widget->focusProxy() == nullptr;
        if (isStop) {
            stops << widget;
        }
    }
    return stops;
}

[[nodiscard]] inline QStringList withoutName(const QWidget& window)
{
    QStringList nameless;
    for (QWidget* widget : stopsOf(window)) {
        const QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(widget);
        if (spoken == nullptr || spoken->text(QAccessible::Name).trimmed().isEmpty()) {
            nameless << widget->objectName() + QStringLiteral(" (") +
                            QString::fromLatin1(widget->metaObject()->className()) +
                            QStringLiteral(")");
        }
    }
    return nameless;
}

/// Those that Tab does not come to. `window` is active.
[[nodiscard]] inline QStringList notReachedByTab(QWidget& window)
{
    const QList<QWidget*> stops = stopsOf(window);
    std::set<QWidget*> reached;
    for (qsizetype i = 0; i < 2 * stops.size() + 2; ++i) {
        QWidget* now = QApplication::focusWidget();
        if (now != nullptr) {
            reached.insert(now);
        }
        QTest::keyClick(now != nullptr ? now : &window, Qt::Key_Tab);
    }
    QStringList missed;
    for (QWidget* widget : stops) {
        if (!reached.contains(widget)) {
            missed << widget->objectName() + QStringLiteral(" (") +
                          QString::fromLatin1(widget->metaObject()->className()) +
                          QStringLiteral(")");
        }
    }
    return missed;
}

[[nodiscard]] inline bool becomesActive(QWidget& window)
{
    window.show();
    window.activateWindow();
    return QTest::qWaitFor([&] { return window.isActiveWindow(); });
}

} // namespace suppertide::ui::test
