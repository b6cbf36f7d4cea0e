// Text cache: laid-out texts by role and words, since laying out is most of the cost of painting.
// One for each widget that paints; emptied when the theme changes.
#pragma once

#include <QFont>
#include <QHash>
#include <QStaticText>
#include <QString>

#include <array>

#include "ui/theme/theme.h"

namespace suppertide::ui {

struct LaidText
{
    QStaticText text;
    double width = 0;
    double ascent = 0;
    double capHeight = 0;
};

class TextCache
{
public:
    /// Valid until the next call.
    const LaidText& laid(const Theme& theme, TypeRole role, const QString& words);
    const QFont& font(const Theme& theme, TypeRole role);
    void clear();

private:
    struct Face
    {
        QFont font;
        double ascent = 0;
        double capHeight = 0;
    };
    const Face& face(const Theme& theme, TypeRole role);
    void follow(const Theme& theme);

    double textScale_ = 0;
    QHash<int, Face> faces_;
    QHash<QPair<int, QString>, LaidText> texts_;
};

} // namespace suppertide::ui
