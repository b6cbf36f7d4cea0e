#include "ui/theme/application_style.h"

#include <QFile>
#include <QMap>

#include <cmath>

#include "core/base/contracts.h"
#include "ui/theme/typography.h"

namespace suppertide::ui {

namespace {

using Qt::StringLiterals::operator""_s;

/// What may stand between @ signs in style.qss.
QMap<QString, QString> fillings(const Palette& palette, double textScale)
{
    const Neutrals& n = palette.neutral;
    const Roles& r = palette.role;
    QMap<QString, QString> names{
        {u"paper"_s, n.paper.name()},
        {u"lane"_s, n.lane.name()},
        {u"panel"_s, n.panel.name()},
        {u"card"_s, n.card.name()},
        {u"rule"_s, n.rule.name()},
        {u"line"_s, n.line.name()},
        {u"ink"_s, n.ink.name()},
        {u"ink2"_s, n.ink2.name()},
        {u"pressed"_s, n.pleatB.name()},
        {u"hover"_s, n.pleatA.name()},
        {u"selected"_s, r.selected.colour.name()},
        {u"onSelected"_s, r.selected.textOn.name()},
        {u"mode"_s, palette.appearance == Appearance::Light ? u"light"_s : u"dark"_s},
    };
    const auto size = [&](const char* name, double pixels) {
        names.insert(QString::fromLatin1(name),
                     u"%1px"_s.arg(static_cast<int>(std::lround(pixels * textScale))));
    };
    size("control", 24);
    size("row", 24);
    size("small", 16);
    return names;
}

} // namespace

QPalette widgetPalette(const Palette& palette)
{
    const Neutrals& n = palette.neutral;
    QPalette result;
    result.setColor(QPalette::Window, n.panel);
    result.setColor(QPalette::WindowText, n.ink);
    result.setColor(QPalette::Base, n.card);
    result.setColor(QPalette::AlternateBase, n.paper);
    result.setColor(QPalette::Text, n.ink);
    result.setColor(QPalette::PlaceholderText, n.ink2);
    result.setColor(QPalette::Button, n.panel);
    result.setColor(QPalette::ButtonText, n.ink);
    result.setColor(QPalette::BrightText, palette.role.impossible.colour);
    result.setColor(QPalette::ToolTipBase, n.card);
    result.setColor(QPalette::ToolTipText, n.ink);
    result.setColor(QPalette::Highlight, palette.role.selected.colour);
    result.setColor(QPalette::HighlightedText, palette.role.selected.textOn);
    result.setColor(QPalette::Link, palette.role.selected.colour);
    result.setColor(QPalette::LinkVisited, palette.role.selected.colour);
    result.setColor(QPalette::Light, n.card);
    result.setColor(QPalette::Midlight, n.rule);
    result.setColor(QPalette::Mid, n.line);
    result.setColor(QPalette::Dark, n.line);
    result.setColor(QPalette::Shadow, n.pleatB);
    for (const QPalette::ColorRole role :
         {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        result.setColor(QPalette::Disabled, role, n.line);
    }
    return result;
}

QString styleSheetFor(const Palette& palette, double textScale)
{
    QFile file{u":/theme/style.qss"_s};
    expects(file.open(QIODevice::ReadOnly), "the style sheet is part of the program");
    QString sheet = QString::fromUtf8(file.readAll());
    const QMap<QString, QString> names = fillings(palette, textScale);
    for (auto it = names.begin(); it != names.end(); ++it) {
        sheet.replace(u'@' + it.key() + u'@', it.value());
    }
    ensures(!sheet.contains(u'@'), "every @name of the style sheet is known");
    return sheet;
}

} // namespace suppertide::ui
