#include "ui/theme/look_table.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QString>

#include <string_view>

#include "core/base/contracts.h"

// At file scope, as Qt asks for resources in a static library.
static void initThemeResources()
{
    Q_INIT_RESOURCE(theme);
}

namespace suppertide::ui {

namespace {

using Qt::StringLiterals::operator""_s;

QJsonValue need(const QJsonObject& object, const QString& key)
{
    expects(object.contains(key), "a key of the look table");
    return object.value(key);
}

QColor colourOf(const QJsonValue& value)
{
    const QColor colour{value.toString()};
    expects(colour.isValid(), "a colour of the look table");
    return colour;
}

Pattern patternNamed(const QString& name)
{
    static const QStringList names{u"plain"_s, u"rain"_s,  u"swell"_s, u"shingle"_s,
                                   u"net"_s,   u"check"_s, u"wave"_s,  u"bond"_s};
    const auto index = names.indexOf(name);
    expects(index >= 0, "a pattern of the look table");
    return allPatterns.at(static_cast<std::size_t>(index));
}

PatternRows rowsFrom(const QJsonArray& rows)
{
    PatternRows result{};
    expects(rows.size() == static_cast<qsizetype>(result.size()), "eight rows a pattern");
    for (std::size_t i = 0; i < result.size(); ++i) {
        bool isHex = false;
        const uint row = rows.at(static_cast<qsizetype>(i)).toString().toUInt(&isHex, 16);
        expects(isHex && row <= 0xFF, "a byte in hex");
        result.at(i) = static_cast<std::uint8_t>(row);
    }
    return result;
}

Neutrals neutralsFrom(const QJsonObject& object)
{
    const auto colour = [&](const char* key) {
        return colourOf(need(object, QString::fromLatin1(key)));
    };
    return {colour("paper"),  colour("lane"),     colour("panel"),   colour("card"),
            colour("rule"),   colour("line"),     colour("ink"),     colour("ink2"),
            colour("pleatA"), colour("pleatB"),   colour("heat"),    colour("heatLine"),
            colour("cold"),   colour("coldLine"), colour("allowed"), colour("hands")};
}

Fill fillFrom(const QJsonObject& object, const QString& key)
{
    return {colourOf(need(object, key)), colourOf(need(object, u"text_on"_s))};
}

Roles rolesFrom(const QJsonObject& object)
{
    const auto role = [&](const char* key) {
        return fillFrom(need(object, QString::fromLatin1(key)).toObject(), u"colour"_s);
    };
    return {role("impossible"), role("unsafe"), role("undesirable"), role("ok"),
            role("selected"),   role("now"),    role("pinned")};
}

Palette paletteFrom(const QJsonObject& root, const QString& name, Appearance appearance)
{
    const QJsonObject object = need(root, name).toObject();
    Palette palette;
    palette.appearance = appearance;
    palette.neutral = neutralsFrom(need(object, u"neutral"_s).toObject());
    palette.role = rolesFrom(need(object, u"role"_s).toObject());
    const QJsonArray order = need(root, u"order"_s).toArray();
    const QJsonObject dishes = need(object, u"dish"_s).toObject();
    const QJsonObject patternOf = need(root, u"pattern_of"_s).toObject();
    expects(order.size() == static_cast<qsizetype>(hueCount), "eight hues");
    for (std::size_t i = 0; i < hueCount; ++i) {
        const QString hue = order.at(static_cast<qsizetype>(i)).toString();
        palette.dishes.at(i) = {fillFrom(need(dishes, hue).toObject(), u"fill"_s),
                                patternNamed(need(patternOf, hue).toString())};
    }
    return palette;
}

LookTable parse()
{
    initThemeResources();
    QFile file{u":/theme/look-palette.json"_s};
    expects(file.open(QIODevice::ReadOnly), "the look table is part of the program");
    const QJsonObject root = QJsonDocument::fromJson(file.readAll()).object();
    LookTable table;
    const QJsonObject patterns = need(root, u"patterns"_s).toObject();
    for (auto it = patterns.begin(); it != patterns.end(); ++it) {
        const Pattern pattern = patternNamed(it.key());
        table.patterns.at(static_cast<std::size_t>(pattern)) =
            rowsFrom(need(it.value().toObject(), u"rows"_s).toArray());
    }
    table.light = paletteFrom(root, u"light"_s, Appearance::Light);
    table.dark = paletteFrom(root, u"dark"_s, Appearance::Dark);
    return table;
}

} // namespace

const LookTable& lookTable()
{
    static const LookTable table = parse();
    return table;
}

} // namespace suppertide::ui
