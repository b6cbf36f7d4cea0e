#include "ui/models/reading_choice.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

ReadingStyle readingStyle(const Document& document)
{
    ReadingStyle style;
    style.fahrenheit = document.setting(u"reading.temperatures"_s) == u"fahrenheit"_s;
    style.measures = findMeasureSystem(document.setting(u"reading.measures"_s).toStdString());
    return style;
}

void keepReadingStyle(Document& document, const ReadingStyle& style)
{
    document.keepSetting(u"reading.temperatures"_s,
                         style.fahrenheit ? u"fahrenheit"_s : u"celsius"_s);
    const std::string_view measures = style.measures ? nameOf(*style.measures) : "as written";
    document.keepSetting(
        u"reading.measures"_s,
        QString::fromUtf8(measures.data(), static_cast<qsizetype>(measures.size())));
}

} // namespace suppertide::ui
