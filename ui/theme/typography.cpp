#include "ui/theme/typography.h"

#include <QGuiApplication>
#include <QScreen>
#include <QString>

namespace suppertide::ui {

namespace {

using Qt::StringLiterals::operator""_s;

struct Spec
{
    double size;
    bool isBold;
    bool isSerif;
};

Spec specOf(TypeRole role)
{
    switch (role) {
    case TypeRole::Minute:
        return {8, false, false};
    case TypeRole::Secondary:
        return {10, false, false};
    case TypeRole::SecondaryBold:
        return {10, true, false};
    case TypeRole::Label:
        return {10.5, false, false};
    case TypeRole::LabelBold:
        return {10.5, true, false};
    case TypeRole::Control:
        return {11, false, false};
    case TypeRole::ControlBold:
        return {11, true, false};
    case TypeRole::LaneName:
        return {11.5, true, false};
    case TypeRole::Heading:
        return {13, true, false};
    case TypeRole::Title:
        return {17, true, true};
    case TypeRole::Day:
        return {10.5, true, true};
    }
    return {11, false, false};
}

double pointsPerPixel()
{
    const QScreen* screen = QGuiApplication::primaryScreen();
    const double dotsPerInch = screen != nullptr ? screen->logicalDotsPerInchY() : 96.0;
    return 72.0 / dotsPerInch;
}

} // namespace

QFont fontFor(TypeRole role, double textScale)
{
    const Spec spec = specOf(role);
    QFont font{spec.isSerif ? QStringList{u"DejaVu Serif"_s, u"serif"_s}
                            : QStringList{u"DejaVu Sans"_s, u"sans-serif"_s}};
    // Qt's pixel sizes are whole; as points the design's halves survive.
    font.setPointSizeF(spec.size * textScale * pointsPerPixel());
    font.setBold(spec.isBold);
    return font;
}

double textScaleOf(const QFont& applicationFont)
{
    const double points = applicationFont.pointSizeF();
    const double pixels =
        points > 0 ? points / pointsPerPixel() : static_cast<double>(applicationFont.pixelSize());
    return pixels / nominalFontSize;
}

} // namespace suppertide::ui
