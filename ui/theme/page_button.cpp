#include "ui/theme/page_button.h"

#include <QFontMetricsF>

#include <cmath>

namespace suppertide::ui {

QPushButton* pageButton(const QString& text, const QString& name, const QString& tip,
                        QWidget* parent)
{
    auto* made = new QPushButton(text, parent);
    made->setObjectName(name);
    made->setToolTip(tip);
    made->setStatusTip(tip);
    made->setAccessibleDescription(tip);
    return made;
}

void keepRoomForBold(QPushButton& button, const Theme& theme)
{
    constexpr double padding = 34; // px
    const QFontMetricsF bold(theme.font(TypeRole::ControlBold));
    button.setMinimumWidth(
        static_cast<int>(std::ceil(bold.horizontalAdvance(button.text()) + padding)));
}

} // namespace suppertide::ui
