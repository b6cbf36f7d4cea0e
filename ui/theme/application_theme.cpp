#include "ui/theme/application_theme.h"

#include <QApplication>
#include <QEvent>
#include <QScopedValueRollback>
#include <QStyleFactory>

#include <algorithm>

#include "ui/theme/application_style.h"
#include "ui/theme/typography.h"

namespace suppertide::ui {

namespace {

using Qt::StringLiterals::operator""_s;

/// The usual size of a desktop's font, at which the design's nominal size is used.
constexpr double usualDesktopPixels = 12;

/// Qt 6.4 cannot say whether the desktop is dark; its palette tells.
Appearance appearanceOf(const QPalette& system)
{
    const bool isDark =
        system.color(QPalette::WindowText).lightness() > system.color(QPalette::Window).lightness();
    return isDark ? Appearance::Dark : Appearance::Light;
}

} // namespace

ApplicationTheme::ApplicationTheme(QApplication& application, AppearanceChoice choice,
                                   QObject* parent)
    : QObject(parent), application_(application), choice_(choice)
{
    const double desktopPixels = textScaleOf(QApplication::font()) * nominalFontSize;
    theme_.textScale = std::max(1.0, desktopPixels / usualDesktopPixels);
    system_ = appearanceOf(QApplication::palette());
    QApplication::setStyle(QStyleFactory::create(u"Fusion"_s));
    QApplication::setFont(fontFor(TypeRole::Control, theme_.textScale));
    apply();
    application_.installEventFilter(this);
}

void ApplicationTheme::setChoice(AppearanceChoice choice)
{
    if (choice_ != choice) {
        choice_ = choice;
        apply();
    }
}

Appearance ApplicationTheme::wanted() const
{
    switch (choice_) {
    case AppearanceChoice::System:
        return system_;
    case AppearanceChoice::Light:
        return Appearance::Light;
    case AppearanceChoice::Dark:
        return Appearance::Dark;
    }
    return Appearance::Light;
}

void ApplicationTheme::apply()
{
    const QScopedValueRollback guard{isApplying_, true};
    theme_.palette = &paletteFor(wanted());
    QApplication::setPalette(widgetPalette(*theme_.palette));
    application_.setStyleSheet(styleSheetFor(*theme_.palette, theme_.textScale));
    Q_EMIT changed(theme_);
}

bool ApplicationTheme::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == &application_ && event->type() == QEvent::ThemeChange && !isApplying_) {
        {
            // A default palette means the desktop's own, which is what changed.
            const QScopedValueRollback guard{isApplying_, true};
            QApplication::setPalette(QPalette{});
            system_ = appearanceOf(QApplication::palette());
        }
        apply();
    }
    return QObject::eventFilter(watched, event);
}

} // namespace suppertide::ui
