// ApplicationTheme: gives the whole application one of the two looks, by the user's choice or as
// the system has it, and says when that changes. One for each QApplication, made before the first
// window. Widgets of our own paint with theme(); all others follow from palette and style sheet.
// A push button with the property "primary" set to true is the filled one (Make plan).
#pragma once

#include <QObject>

#include "ui/theme/theme.h"

class QApplication;

namespace suppertide::ui {

enum class AppearanceChoice
{
    System,
    Light,
    Dark
};

class ApplicationTheme : public QObject
{
    Q_OBJECT

public:
    explicit ApplicationTheme(QApplication& application,
                              AppearanceChoice choice = AppearanceChoice::System,
                              QObject* parent = nullptr);

    [[nodiscard]] AppearanceChoice choice() const { return choice_; }
    void setChoice(AppearanceChoice choice);
    [[nodiscard]] const Theme& theme() const { return theme_; }

Q_SIGNALS:
    void changed(const suppertide::ui::Theme& theme);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    [[nodiscard]] Appearance wanted() const;
    void apply();

    QApplication& application_;
    AppearanceChoice choice_;
    Appearance system_ = Appearance::Light;
    bool isApplying_ = false;
    Theme theme_;
};

} // namespace suppertide::ui
