#include "ui/timeline/text_cache.h"

#include <QFontMetricsF>

namespace suppertide::ui {

namespace {

/// More than a busy window shows; when a long session has seen more, all are laid out anew.
constexpr qsizetype mostTexts = 4000;

} // namespace

void TextCache::clear()
{
    faces_.clear();
    texts_.clear();
}

void TextCache::follow(const Theme& theme)
{
    if (theme.textScale != textScale_) {
        clear();
        textScale_ = theme.textScale;
    }
}

const TextCache::Face& TextCache::face(const Theme& theme, TypeRole role)
{
    const int key = static_cast<int>(role);
    auto found = faces_.find(key);
    if (found == faces_.end()) {
        Face made;
        made.font = theme.font(role);
        const QFontMetricsF metrics{made.font};
        made.ascent = metrics.ascent();
        made.capHeight = metrics.capHeight();
        found = faces_.insert(key, made);
    }
    return *found;
}

const QFont& TextCache::font(const Theme& theme, TypeRole role)
{
    follow(theme);
    return face(theme, role).font;
}

const LaidText& TextCache::laid(const Theme& theme, TypeRole role, const QString& words)
{
    follow(theme);
    if (texts_.size() > mostTexts) {
        texts_.clear();
    }
    const QPair<int, QString> key{static_cast<int>(role), words};
    auto found = texts_.find(key);
    if (found == texts_.end()) {
        const Face& used = face(theme, role);
        LaidText made;
        made.text = QStaticText{words};
        made.text.setTextFormat(Qt::PlainText);
        made.text.setPerformanceHint(QStaticText::AggressiveCaching);
        made.text.prepare(QTransform{}, used.font);
        made.width = QFontMetricsF{used.font}.horizontalAdvance(words);
        made.ascent = used.ascent;
        made.capHeight = used.capHeight;
        found = texts_.insert(key, made);
    }
    return *found;
}

} // namespace suppertide::ui
