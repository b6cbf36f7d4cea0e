// CalmSlider: from fresh to calm, with named places on the way; Page Up and Page Down go
// from one named place to the next, arrows by small steps.
#pragma once

#include <QSlider>

namespace suppertide::ui {

class CalmSlider : public QSlider
{
    Q_OBJECT

public:
    explicit CalmSlider(QWidget* parent);

protected:
    void keyPressEvent(QKeyEvent* event) override;
};

} // namespace suppertide::ui
