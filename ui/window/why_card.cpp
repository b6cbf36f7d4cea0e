#include "ui/window/why_card.h"

#include <QLabel>
#include <QScreen>
#include <QVBoxLayout>

#include <algorithm>

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr int cardWidth = 360; // px at the nominal size of type
constexpr int padding = 10;

} // namespace

WhyCard::WhyCard(const Theme& theme, const QString& title, QWidget* parent)
    : QFrame(parent, Qt::Popup), said_(new QLabel(this))
{
    setObjectName(u"whyHere"_s);
    setAttribute(Qt::WA_DeleteOnClose);
    setFrameShape(QFrame::StyledPanel);
    setAccessibleName(tr("Why here? %1").arg(title));
    auto* heading = new QLabel(title, this);
    heading->setFont(theme.font(TypeRole::Heading));
    heading->setWordWrap(true);
    said_->setObjectName(u"whyHereSaid"_s);
    said_->setTextFormat(Qt::PlainText);
    said_->setWordWrap(true);
    said_->setFont(theme.font(TypeRole::Control));
    said_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    said_->setFocusPolicy(Qt::StrongFocus);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(padding, padding, padding, padding);
    column->setSpacing(padding / 2);
    column->addWidget(heading);
    column->addWidget(said_);
    setFixedWidth(static_cast<int>(cardWidth * theme.textScale));
    setFocusProxy(said_);
}

void WhyCard::say(const QStringList& sentences)
{
    said_->setText(sentences.join(u"\n\n"_s));
    said_->setAccessibleName(sentences.join(u' '));
    if (isVisible()) {
        showAt(at_);
    }
}

void WhyCard::showAt(const QPoint& global)
{
    at_ = global;
    setFixedHeight(std::max(sizeHint().height(), heightForWidth(width())));
    const QRect screenArea = screen()->availableGeometry();
    const QPoint most(screenArea.right() - width(), screenArea.bottom() - height());
    move(std::max(screenArea.left(), std::min(global.x(), most.x())),
         std::max(screenArea.top(), std::min(global.y(), most.y())));
    show();
    said_->setFocus(Qt::PopupFocusReason);
}

} // namespace suppertide::ui
