#include "ui/window/preference_menu.h"

#include <QActionGroup>

#include "ui/models/calm_places.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr std::array grades{Wish::None, Wish::Some, Wish::Much};

} // namespace

PreferenceMenu::PreferenceMenu(QWidget* parent) : QMenu(tr("Pre&ferences"), parent)
{
    setObjectName(u"preferenceMenu"_s);
    addPlaces();
    addSeparator();
    addWish(&Preferences::fewOvenChanges, tr("Few &oven changes"), u"fewOvenChanges"_s);
    addWish(&Preferences::fewSessions, tr("Few working &sessions"), u"fewSessions"_s);
    addWish(&Preferences::stayClose, tr("Stay &close to my plan"), u"stayClose"_s);
}

void PreferenceMenu::addPlaces()
{
    auto* group = new QActionGroup(this);
    for (const int calm : calmPlaces) {
        QAction* place = addAction(calmName(calm));
        place->setObjectName(u"calm%1"_s.arg(calm));
        place->setCheckable(true);
        place->setStatusTip(tr("How far everything is made as late as can be, or done beforehand"));
        group->addAction(place);
        places_.push_back(place);
        connect(place, &QAction::triggered, this, [this, calm] {
            Preferences next = shown_;
            next.calm = calm;
            Q_EMIT chosen(next, tr("Prefer %1").arg(calmName(calm)));
        });
    }
}

void PreferenceMenu::addWish(Wish Preferences::*wish, const QString& title, const QString& name)
{
    QMenu* menu = addMenu(title);
    menu->setObjectName(name);
    auto* group = new QActionGroup(this);
    WishRow row{wish, {}};
    for (const Wish grade : grades) {
        QAction* action = menu->addAction(wishName(grade));
        action->setCheckable(true);
        group->addAction(action);
        row.grades.push_back(action);
        QString plain = title;
        plain.remove(u'&');
        connect(action, &QAction::triggered, this, [this, wish, grade, plain] {
            Preferences next = shown_;
            next.*wish = grade;
            Q_EMIT chosen(next, tr("%1: %2").arg(plain, wishName(grade)));
        });
    }
    wishes_.push_back(std::move(row));
}

void PreferenceMenu::show(const Preferences& preferences)
{
    shown_ = preferences;
    const QString name = calmName(preferences.calm);
    for (std::size_t i = 0; i < places_.size(); ++i) {
        places_[i]->setChecked(calmName(calmPlaces.at(i)) == name);
    }
    for (const WishRow& row : wishes_) {
        for (std::size_t i = 0; i < row.grades.size(); ++i) {
            row.grades[i]->setChecked(grades.at(i) == preferences.*row.wish);
        }
    }
}

} // namespace suppertide::ui
