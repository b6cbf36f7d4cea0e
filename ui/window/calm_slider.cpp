#include "ui/window/calm_slider.h"

#include <QKeyEvent>

#include "ui/models/calm_places.h"

namespace suppertide::ui {

CalmSlider::CalmSlider(QWidget* parent) : QSlider(Qt::Horizontal, parent)
{
    constexpr int betweenPlaces = calmPlaces[1] - calmPlaces[0];
    setRange(0, 100);
    setSingleStep(5);
    setPageStep(betweenPlaces);
    setAccessibleName(tr("From fresh to calm"));
    const auto say = [this](int calm) {
        setToolTip(tr("%1 (%2 of 100). Fresh: everything made as late as can be. Calm: little to "
                      "do in the last hour and while guests are at table. Page Up and Page Down "
                      "go to the named places.")
                       .arg(calmName(calm))
                       .arg(calm));
        setAccessibleDescription(calmName(calm));
    };
    connect(this, &QSlider::valueChanged, this, say);
    say(value());
}

void CalmSlider::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_PageUp || event->key() == Qt::Key_PageDown) {
        setValue(nextCalmPlace(value(), event->key() == Qt::Key_PageUp ? 1 : -1));
        event->accept();
        return;
    }
    QSlider::keyPressEvent(event);
}

} // namespace suppertide::ui
