#include "ui/models/pasted_lines.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

#include "core/recipe/read_lines.h"

namespace suppertide::ui {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("PastedLines", text);
}

QString plain(const std::string& words)
{
    return QString::fromStdString(words).toHtmlEscaped();
}

std::string joined(std::initializer_list<std::string> words)
{
    std::string text;
    for (const std::string& word : words) {
        text += (text.empty() || word.empty() ? "" : " · ") + word;
    }
    return text;
}

} // namespace

std::vector<std::string> linesIn(const std::string& text)
{
    std::vector<std::string> lines;
    for (const QString& line :
         QString::fromStdString(text).split(QLatin1Char('\n'), Qt::SkipEmptyParts)) {
        if (!line.trimmed().isEmpty()) {
            lines.push_back(line.trimmed().toStdString());
        }
    }
    return lines;
}

PastedLine pastedLine(const std::string& written, MeasureSystem system)
{
    const std::vector<IngredientLineReading> readings = readIngredientLines(written, system);
    PastedLine line{written, {}, {}};
    if (readings.empty() || readings.front().ingredient.empty()) {
        return line;
    }
    const IngredientLineReading& reading = readings.front();
    IngredientLine taken = lineFrom(reading, {});
    const auto part = nameOf(taken.part);
    line.notRead = reading.rest;
    line.read = joined(
        {toText(taken.amount), taken.also ? toText(*taken.also) : std::string(), taken.ingredient,
         taken.part == IngredientPart::Whole ? std::string() : std::string(part), taken.note});
    return line;
}

QString previewHtml(const std::vector<PastedLine>& lines)
{
    QStringList rows;
    for (const PastedLine& line : lines) {
        if (!line.isTaken()) {
            rows << tr("✗ <i>%1</i>: not read as an ingredient; it stays here")
                        .arg(plain(line.written));
        } else if (line.notRead.empty()) {
            rows << QStringLiteral("✓ ") + plain(line.read);
        } else {
            rows << tr("✓ %1 — “%2” is not understood and stands in the note")
                        .arg(plain(line.read), plain(line.notRead));
        }
    }
    return rows.join(QStringLiteral("<br>"));
}

} // namespace suppertide::ui
