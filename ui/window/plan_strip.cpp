#include "ui/window/plan_strip.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

#include "ui/window/two_line_label.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

/// The sentence has as much width as it takes in two lines, within these (px at 100 %); figures go
/// before it gets less.
constexpr int leastSentence = 220;
constexpr int mostSentence = 420;
/// Of what it takes in one line: lines end where words do.
constexpr double halfAndSome = 0.58;

} // namespace

PlanStrip::PlanStrip(const Theme& theme, QWidget* parent)
    : QWidget(parent), theme_(theme), sentence_(new TwoLineLabel(this)),
      figures_(new QWidget(this)), look_(new QPushButton(tr("Look at it"), this)),
      take_(new QPushButton(tr("Take it"), this)), leave_(new QPushButton(tr("Leave it"), this)),
      plan_(new QPushButton(tr("Make plan"), this)), stop_(new QPushButton(tr("Stop"), this))
{
    setObjectName(u"planStrip"_s);
    setAccessibleName(tr("The plan, and what is offered"));
    sentence_->setObjectName(u"planSentence"_s);
    auto* cells = new QHBoxLayout(figures_);
    cells->setContentsMargins(0, 0, 0, 0);
    cells->setSpacing(14);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(10, 2, 8, 2);
    row->setSpacing(8);
    row->addWidget(sentence_, 1);
    row->addWidget(figures_);
    makeButtons(*row);
    setTheme(theme);
}

void PlanStrip::makeButtons(QHBoxLayout& row)
{
    look_->setObjectName(u"lookAtOffer"_s);
    look_->setCheckable(true);
    look_->setToolTip(tr("Show the offered plan on the timeline; nothing is changed by it"));
    take_->setObjectName(u"takeOffer"_s);
    take_->setProperty("primary", true);
    take_->setToolTip(tr("Make the offered plan the plan (Ctrl+T); Undo takes it back"));
    leave_->setObjectName(u"leaveOffer"_s);
    leave_->setToolTip(tr("Leave everything as it is (Esc)"));
    plan_->setObjectName(u"planAnew"_s);
    plan_->setToolTip(tr("Look for the best plan for the evening as it is now (Ctrl+M)"));
    stop_->setObjectName(u"stopSearch"_s);
    stop_->setToolTip(tr("End the search (Esc)"));
    for (QPushButton* button : {look_, take_, leave_, plan_, stop_}) {
        button->setAutoDefault(true); // Enter presses it while it has the focus
        button->setStatusTip(button->toolTip());
        button->hide();
        row.addWidget(button);
    }
    connect(look_, &QPushButton::toggled, this, &PlanStrip::lookedAt);
    connect(take_, &QPushButton::clicked, this, &PlanStrip::taken);
    connect(leave_, &QPushButton::clicked, this, &PlanStrip::left);
    connect(plan_, &QPushButton::clicked, this, &PlanStrip::planRequested);
    connect(stop_, &QPushButton::clicked, this, &PlanStrip::stopRequested);
}

void PlanStrip::show(StripContent next)
{
    const bool isNews = next.sentence != content_.sentence;
    content_ = std::move(next);
    const StripContent& content = content_;
    const bool isOffer = content.state == StripState::Offer;
    sentence_->setSentenceFont(theme_.font(
        content.state == StripState::Plain ? TypeRole::Control : TypeRole::ControlBold));
    sentence_->setSentence(content.sentence);
    if (!isOffer) {
        look_->setChecked(false);
    }
    look_->setVisible(isOffer);
    take_->setVisible(isOffer);
    leave_->setVisible(isOffer);
    plan_->setVisible(content.state == StripState::Stale);
    stop_->setVisible(content.state == StripState::Searching);
    showCells();
    giveWay();
    if (isNews && QAccessible::isActive() && content.state != StripState::Plain) {
        QAccessibleEvent event(sentence_, QAccessible::Alert);
        QAccessible::updateAccessibility(&event);
    }
}

bool PlanStrip::isLooking() const
{
    return look_->isChecked();
}

void PlanStrip::showCells()
{
    while (cells_.size() > content_.cells.size()) {
        delete cells_.back();
        cells_.pop_back();
    }
    while (cells_.size() < content_.cells.size()) {
        auto* cell = new QWidget(figures_);
        auto* column = new QVBoxLayout(cell);
        column->setContentsMargins(0, 0, 0, 0);
        column->setSpacing(0);
        for (int line = 0; line < 2; ++line) {
            auto* text = new QLabel(cell);
            text->setTextFormat(Qt::PlainText);
            column->addWidget(text);
        }
        figures_->layout()->addWidget(cell);
        cells_.push_back(cell);
    }
    for (std::size_t i = 0; i < cells_.size(); ++i) {
        const FigureCell& what = content_.cells[i];
        const auto lines = cells_[i]->findChildren<QLabel*>();
        lines[0]->setText(what.label);
        lines[0]->setFont(theme_.font(TypeRole::Secondary));
        lines[1]->setText(what.text());
        lines[1]->setFont(
            theme_.font(what.offered.isEmpty() ? TypeRole::Label : TypeRole::LabelBold));
        const QString whole =
            what.offered.isEmpty()
                ? tr("%1: %2").arg(what.meaning, what.now)
                : tr("%1: now %2, offered %3").arg(what.meaning, what.now, what.offered);
        cells_[i]->setToolTip(whole);
        lines[1]->setAccessibleName(whole);
    }
}

void PlanStrip::setTheme(const Theme& theme)
{
    theme_ = theme;
    const QFontMetrics label(theme.font(TypeRole::ControlBold));
    // Two lines of words, or a button.
    setFixedHeight(std::max(2 * label.lineSpacing() + 6, 34));
    show(content_);
}

void PlanStrip::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    giveWay();
}

/// By the labels themselves: layouts keep the sizes of what was hidden when they were last asked.
int PlanStrip::widthOf(const QWidget& cell)
{
    int widest = 0;
    for (const QLabel* text : cell.findChildren<const QLabel*>()) {
        widest = std::max(widest, text->sizeHint().width());
    }
    return widest;
}

void PlanStrip::giveWay()
{
    const QMargins margins = layout()->contentsMargins();
    const double inTwo =
        halfAndSome * QFontMetrics(sentence_->font()).horizontalAdvance(content_.sentence);
    const double sentence =
        std::clamp(inTwo, leastSentence * theme_.textScale, mostSentence * theme_.textScale);
    int spare = width() - margins.left() - margins.right() - static_cast<int>(sentence);
    for (const QPushButton* button : {look_, take_, leave_, plan_, stop_}) {
        spare -= button->isHidden() ? 0 : button->sizeHint().width() + layout()->spacing();
    }
    // How far it is from the best stays longest, then the first figures.
    std::vector<QWidget*> order = cells_;
    if (!order.empty()) {
        std::rotate(order.begin(), order.end() - 1, order.end());
    }
    bool hasRoom = true;
    bool isAny = false;
    for (QWidget* cell : order) {
        spare -= widthOf(*cell) + figures_->layout()->spacing();
        hasRoom = hasRoom && spare >= 0;
        cell->setVisible(hasRoom);
        isAny = isAny || hasRoom;
    }
    figures_->setVisible(isAny);
}

} // namespace suppertide::ui
