// HeadBar: the bar under the menus: which occasion, undo that names what it undoes, Make plan, what
// the user prefers, and how close the timeline is looked at. It shows and says; it changes nothing
// itself.
#pragma once

#include <QWidget>

#include "core/occasion/occasion.h"
#include "ui/theme/theme.h"
#include "ui/timeline/zoom.h"

class QComboBox;
class QLabel;
class QPushButton;
class QMenu;
class QUndoStack;

namespace suppertide::ui {

class CalmSlider;

class HeadBar : public QWidget
{
    Q_OBJECT

public:
    /// `preferences` pops up from the button that names them.
    HeadBar(QUndoStack& undo, QMenu& preferences, const Theme& theme, QWidget* parent);

    void show(const QString& name, const QString& date);
    void showPreferences(const Preferences& preferences);
    /// No occasion: nothing can be planned.
    void setPlanning(bool isPossible, bool isRunning);
    void showZoom(ZoomStop stop);
    void setTheme(const Theme& theme);

Q_SIGNALS:
    void planRequested();
    void stopRequested();
    void calmChanged(int calm);
    void cautionChanged(suppertide::CautionLevel caution);
    void zoomRequested(suppertide::ui::ZoomStop stop);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void makePreferences(QMenu& menu);
    void makeZoom();
    void makeUndo(QUndoStack& undo);
    void showPlace(int calm);
    void giveWay();
    [[nodiscard]] QString undoText(const QString& deed) const;

    QLabel* name_;
    QLabel* date_;
    QPushButton* undo_;
    QPushButton* redo_;
    QPushButton* plan_;
    QWidget* preferences_;
    CalmSlider* calm_;
    QPushButton* wishes_; // named after the place on the slider; opens the preferences
    QComboBox* caution_;
    QWidget* zoom_;
    QString fullName_;
    bool isRunning_ = false;
};

} // namespace suppertide::ui
