// WhyCard: a small card beside a step that says why it stands where it does. Escape, or a click
// anywhere else, puts it away.
#pragma once

#include <QFrame>

#include "ui/theme/theme.h"

class QLabel;

namespace suppertide::ui {

class WhyCard : public QFrame
{
    Q_OBJECT

public:
    WhyCard(const Theme& theme, const QString& title, QWidget* parent);

    void say(const QStringList& sentences);
    /// Below and right of the point, but all of it on the screen.
    void showAt(const QPoint& global);

private:
    QLabel* said_;
    QPoint at_;
};

} // namespace suppertide::ui
