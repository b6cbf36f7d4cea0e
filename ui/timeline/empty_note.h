// EmptyNote: one sentence and one button over a timeline without steps.
#pragma once

#include <QWidget>

class QLabel;
class QPushButton;

namespace suppertide::ui {

class EmptyNote : public QWidget
{
    Q_OBJECT

public:
    explicit EmptyNote(QWidget* parent);
    void say(const QString& sentence, const QString& button);

Q_SIGNALS:
    void triggered();

private:
    QLabel* sentence_;
    QPushButton* button_;
};

} // namespace suppertide::ui
