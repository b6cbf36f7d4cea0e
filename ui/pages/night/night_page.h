// NightPage: “On the night”: what each cook does now and next, in large type, with buttons and keys
// to say what happened. Before the day it can be rehearsed with a pretend clock.
#pragma once

#include <QWidget>

#include "ui/pages/night/night_desk.h"
#include "ui/prompts/prompts.h"
#include "ui/theme/theme.h"

class QComboBox;
class QLabel;
class QListView;
class QPushButton;

namespace suppertide::ui {

class NightDelegate;
class NightRows;

class NightPage : public QWidget
{
    Q_OBJECT

public:
    /// `desk` and `prompts` must outlive this.
    NightPage(NightDesk& desk, Prompts& prompts, const Theme& theme, QWidget* parent = nullptr);
    ~NightPage() override;

    void setTheme(const Theme& theme);
    /// Shows what the desk has.
    void refresh();

Q_SIGNALS:
    void said(const QString& words);
    /// The page is to fill the window, or no longer.
    void fillRequested(bool fills);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    struct Parts;

    void build();
    QPushButton* button(const QString& text, const QString& name, const QString& key,
                        const QString& tip, const std::function<void()>& deed);
    void act(const std::function<void(const QString&)>& deed);
    void goOn();
    void askLate();
    void askOven();
    void setTypes();

    NightDesk& desk_;
    Prompts& prompts_;
    Theme theme_;
    std::unique_ptr<Parts> parts_;
};

} // namespace suppertide::ui
