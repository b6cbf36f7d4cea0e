// PreferenceMenu: what the cook prefers, to choose by mouse or keyboard: the named places between
// fresh and calm, and how much to care for few oven changes, few sessions and staying close to the
// plan. It shows the preferences it is given and says what they would be; it keeps nothing.
#pragma once

#include <QMenu>

#include <vector>

#include "core/occasion/occasion.h"

namespace suppertide::ui {

class PreferenceMenu : public QMenu
{
    Q_OBJECT

public:
    explicit PreferenceMenu(QWidget* parent);

    void show(const Preferences& preferences);

Q_SIGNALS:
    /// `text` is for Undo.
    void chosen(const suppertide::Preferences& preferences, const QString& text);

private:
    struct WishRow
    {
        Wish Preferences::*wish;
        std::vector<QAction*> grades; // none, some, much
    };
    void addPlaces();
    void addWish(Wish Preferences::*wish, const QString& title, const QString& name);

    Preferences shown_;
    std::vector<QAction*> places_;
    std::vector<WishRow> wishes_;
};

} // namespace suppertide::ui
