#include "ui/print/paper_text.h"

#include <QFontMetricsF>
#include <QRegularExpression>
#include <QTextLayout>

#include <algorithm>
#include <cmath>

namespace suppertide::ui {

namespace {

using namespace Qt::StringLiterals;

/// Line height over type size; DejaVu's own is 1.164.
constexpr double leading = 1.18;
/// Cap height of DejaVu Sans over its type size.
constexpr double capShare = 0.729;

} // namespace

QFont magnifiedFont(const PaperFont& font)
{
    QFont result{font.isSerif ? QStringList{u"DejaVu Serif"_s, u"serif"_s}
                              : QStringList{u"DejaVu Sans"_s, u"sans-serif"_s}};
    result.setPixelSize(static_cast<int>(std::lround(font.size * fontMagnification)));
    result.setBold(font.isBold);
    result.setHintingPreference(QFont::PreferNoHinting);
    return result;
}

double lineHeight(const PaperFont& font)
{
    return font.size * leading;
}

double capHeight(const PaperFont& font)
{
    return font.size * capShare;
}

double textWidth(const QString& text, const PaperFont& font)
{
    return QFontMetricsF{magnifiedFont(font)}.horizontalAdvance(text) / fontMagnification;
}

QString plainLine(std::string_view text)
{
    static const QRegularExpression beforeUnit{
        QStringLiteral("(?<=\\d) (?=(?:°[CF]|min|h|days?|kg|g|ml|l|cm|mm|tsp|tbsp|am|pm)\\b)")};
    QString line = QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size())).simplified();
    return line.replace(beforeUnit, QString{QChar::Nbsp});
}

QStringList brokenLines(const QString& text, const PaperFont& font, const Measure& measure)
{
    QStringList lines;
    if (text.isEmpty()) {
        return lines; // a QTextLayout would make an empty line of it
    }
    QTextLayout layout{text, magnifiedFont(font)};
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    layout.setTextOption(option);
    layout.beginLayout();
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
        const double indent = lines.isEmpty() ? measure.firstIndent : 0;
        const double width = std::max(1.0, measure.width - indent);
        line.setLineWidth(width * fontMagnification);
        if (lines.size() + 1 == measure.mostLines) {
            lines.append(shortened(text.mid(line.textStart()).trimmed(), font, width));
            break;
        }
        lines.append(text.mid(line.textStart(), line.textLength()).trimmed());
    }
    layout.endLayout();
    return lines;
}

QString shortened(const QString& text, const PaperFont& font, double width)
{
    return QFontMetricsF{magnifiedFont(font)}.elidedText(text, Qt::ElideRight,
                                                         width * fontMagnification);
}

} // namespace suppertide::ui
