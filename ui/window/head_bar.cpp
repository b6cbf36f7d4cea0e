#include "ui/window/head_bar.h"

#include <QButtonGroup>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QUndoStack>

#include <algorithm>
#include <array>
#include <vector>

#include "ui/models/calm_places.h"
#include "ui/window/calm_slider.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

// What Undo undoes is cut to this width (px), so that the buttons beside it stand still.
constexpr int undoWidth = 190;
// A name is cut no shorter than this (px); there is always its tool tip.
constexpr int leastName = 80;

constexpr std::array cautions{CautionLevel::Likely, CautionLevel::Half, CautionLevel::Careful,
                              CautionLevel::VeryCareful};

} // namespace

HeadBar::HeadBar(QUndoStack& undo, QMenu& preferences, const Theme& theme, QWidget* parent)
    : QWidget(parent), name_(new QLabel(this)), date_(new QLabel(this)),
      undo_(new QPushButton(this)), redo_(new QPushButton(this)), plan_(new QPushButton(this)),
      preferences_(new QWidget(this)), calm_(new CalmSlider(preferences_)),
      wishes_(new QPushButton(preferences_)), caution_(new QComboBox(preferences_)),
      zoom_(new QWidget(this))
{
    setObjectName(u"headBar"_s);
    name_->setObjectName(u"occasionName"_s);
    name_->setTextFormat(Qt::PlainText);
    date_->setTextFormat(Qt::PlainText);
    plan_->setObjectName(u"makePlan"_s);
    plan_->setProperty("primary", true);
    connect(plan_, &QPushButton::clicked, this, [this] {
        if (isRunning_) {
            Q_EMIT stopRequested();
        } else {
            Q_EMIT planRequested();
        }
    });
    makeUndo(undo);
    makePreferences(preferences);
    makeZoom();

    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(12, 5, 12, 5);
    row->setSpacing(8);
    row->addWidget(name_);
    row->addWidget(date_);
    row->addStretch(1);
    for (QWidget* each :
         std::initializer_list<QWidget*>{undo_, redo_, plan_, preferences_, zoom_}) {
        row->addWidget(each);
    }
    setTheme(theme);
    setPlanning(false, false);
}

void HeadBar::makeUndo(QUndoStack& undo)
{
    undo_->setObjectName(u"undo"_s);
    undo_->setFixedWidth(undoWidth);
    redo_->setObjectName(u"redo"_s);
    const auto follow = [this, &undo] {
        undo_->setEnabled(undo.canUndo());
        undo_->setText(undo.canUndo() ? tr("Undo: %1").arg(undoText(undo.undoText())) : tr("Undo"));
        undo_->setToolTip(undo.undoText());
        redo_->setEnabled(undo.canRedo());
        redo_->setText(tr("Redo"));
        redo_->setToolTip(undo.redoText());
    };
    connect(&undo, &QUndoStack::indexChanged, this, follow);
    connect(undo_, &QPushButton::clicked, &undo, &QUndoStack::undo);
    connect(redo_, &QPushButton::clicked, &undo, &QUndoStack::redo);
    follow();
}

void HeadBar::makePreferences(QMenu& menu)
{
    calm_->setObjectName(u"calm"_s);
    calm_->setFixedWidth(84);
    wishes_->setObjectName(u"preferences"_s);
    wishes_->setMenu(&menu);
    wishes_->setToolTip(tr("What you prefer: fresh or calm, few oven changes, few working "
                           "sessions, staying close to the plan"));
    caution_->setObjectName(u"caution"_s);
    caution_->setAccessibleName(tr("Which durations to plan with"));
    caution_->addItems(
        {tr("likely"), tr("half the time"), tr("8 times in 10"), tr("19 times in 20")});
    caution_->setToolTip(tr("How often a step should be done within the time planned for it"));
    // Each value tried while dragging would be a change of its own; the one let go of is.
    connect(calm_, &QSlider::valueChanged, this, [this](int value) {
        showPlace(value);
        if (!calm_->isSliderDown()) {
            Q_EMIT calmChanged(value);
        }
    });
    connect(calm_, &QSlider::sliderReleased, this, [this] { Q_EMIT calmChanged(calm_->value()); });
    connect(caution_, &QComboBox::activated, this, [this](int index) {
        Q_EMIT cautionChanged(cautions.at(static_cast<std::size_t>(index)));
    });
    auto* row = new QHBoxLayout(preferences_);
    row->setContentsMargins(6, 0, 6, 0);
    row->setSpacing(6);
    row->addWidget(new QLabel(tr("fresh"), preferences_));
    row->addWidget(calm_);
    row->addWidget(new QLabel(tr("calm"), preferences_));
    row->addWidget(wishes_);
    row->addSpacing(6);
    row->addWidget(new QLabel(tr("durations"), preferences_));
    row->addWidget(caution_);
}

void HeadBar::makeZoom()
{
    auto* row = new QHBoxLayout(zoom_);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    auto* group = new QButtonGroup(this);
    group->setObjectName(u"zoomStops"_s);
    const std::array<std::pair<ZoomStop, QString>, 3> stops{
        {{ZoomStop::Day, tr("day")},
         {ZoomStop::Hours, tr("hours")},
         {ZoomStop::QuarterHours, tr("quarter hours")}}};
    for (const auto& [stop, text] : stops) {
        auto* button = new QPushButton(text, zoom_);
        button->setCheckable(true);
        button->setAccessibleName(tr("Zoom to %1").arg(text));
        group->addButton(button, static_cast<int>(stop));
        row->addWidget(button);
    }
    connect(group, &QButtonGroup::idClicked, this,
            [this](int id) { Q_EMIT zoomRequested(static_cast<ZoomStop>(id)); });
}

QString HeadBar::undoText(const QString& deed) const
{
    constexpr int frame = 24;
    const QFontMetrics metrics = undo_->fontMetrics();
    return metrics.elidedText(deed, Qt::ElideRight,
                              undoWidth - frame -
                                  metrics.horizontalAdvance(tr("Undo: %1").arg(u""_s)));
}

void HeadBar::show(const QString& name, const QString& date)
{
    fullName_ = name;
    name_->setToolTip(name);
    name_->setAccessibleName(name);
    date_->setText(date);
    giveWay();
}

void HeadBar::showPreferences(const Preferences& preferences)
{
    const QSignalBlocker quiet(calm_);
    calm_->setValue(preferences.calm);
    showPlace(preferences.calm);
    const auto* at = std::find(cautions.begin(), cautions.end(), preferences.caution);
    caution_->setCurrentIndex(static_cast<int>(at - cautions.begin()));
}

void HeadBar::setPlanning(bool isPossible, bool isRunning)
{
    isRunning_ = isRunning;
    plan_->setText(isRunning ? tr("Stop planning") : tr("Make plan"));
    plan_->setEnabled(isPossible || isRunning);
    plan_->setStatusTip(isRunning ? tr("End the search; the best plan so far stays offered")
                                  : tr("Look for the best plan that this kitchen allows"));
    calm_->setEnabled(isPossible);
    wishes_->setEnabled(isPossible);
    caution_->setEnabled(isPossible);
}

void HeadBar::showPlace(int calm)
{
    wishes_->setText(calmName(calm));
    wishes_->setAccessibleName(tr("Preferences: %1").arg(calmName(calm)));
}

void HeadBar::showZoom(ZoomStop stop)
{
    auto* group = findChild<QButtonGroup*>(u"zoomStops"_s);
    if (auto* button = group->button(static_cast<int>(stop))) {
        button->setChecked(true);
    }
}

void HeadBar::setTheme(const Theme& theme)
{
    name_->setFont(theme.font(TypeRole::Title));
    date_->setFont(theme.font(TypeRole::Label));
    giveWay();
}

void HeadBar::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    giveWay();
}

void HeadBar::giveWay()
{
    // The date goes first, then the words of the preferences, then what the menus have too; at last
    // the name is cut.
    std::vector<QWidget*> order{date_};
    for (QLabel* label : preferences_->findChildren<QLabel*>()) {
        order.push_back(label);
    }
    order.insert(order.end(), {redo_, preferences_, zoom_});
    name_->setText(fullName_);
    for (QWidget* widget : order) {
        widget->setVisible(true);
    }
    const auto wanted = [this] {
        preferences_->layout()->invalidate();
        layout()->invalidate();
        return layout()->totalSizeHint().width();
    };
    for (QWidget* widget : order) {
        if (wanted() <= width()) {
            return;
        }
        widget->setVisible(false);
    }
    if (const int over = wanted() - width(); over > 0) {
        name_->setText(name_->fontMetrics().elidedText(
            fullName_, Qt::ElideRight, std::max(leastName, name_->sizeHint().width() - over)));
    }
}

} // namespace suppertide::ui
