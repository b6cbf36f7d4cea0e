#include "ui/models/reading_choice.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

ReadingStyle readingStyle(const Document& document)
{
    ReadingStyle style;
    style.fahrenheit = document.setting(u"reading.temperatures"_s) == u"fahrenheit"_s;
    return style;
}

void keepReadingStyle(Document& document, const ReadingStyle& style)
{
    document.keepSetting(u"reading.temperatures"_s,
                         style.fahrenheit ? u"fahrenheit"_s : u"celsius"_s);
}

} // namespace suppertide::ui
