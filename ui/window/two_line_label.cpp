#include "ui/window/two_line_label.h"

#include <QFontMetrics>
#include <QTextLayout>

namespace suppertide::ui {

QString inTwoLines(const QString& sentence, const QFont& font, int width)
{
    QTextLayout layout(sentence, font);
    layout.beginLayout();
    QTextLine first = layout.createLine();
    if (first.isValid()) {
        first.setLineWidth(width);
    }
    QTextLine second = layout.createLine();
    layout.endLayout();
    if (!second.isValid()) {
        return sentence;
    }
    const QString rest = sentence.mid(second.textStart());
    return sentence.left(second.textStart()).trimmed() + QLatin1Char('\n') +
           QFontMetrics(font).elidedText(rest, Qt::ElideRight, width);
}

TwoLineLabel::TwoLineLabel(QWidget* parent) : QLabel(parent)
{
    setTextFormat(Qt::PlainText);
    setTextInteractionFlags(Qt::TextSelectableByMouse);
    // As much room as there is; it asks for none.
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Ignored);
}

void TwoLineLabel::setSentence(const QString& sentence)
{
    sentence_ = sentence;
    setToolTip(sentence);
    setAccessibleName(sentence);
    fit();
}

void TwoLineLabel::setSentenceFont(const QFont& font)
{
    setFont(font);
    fit();
}

void TwoLineLabel::resizeEvent(QResizeEvent* event)
{
    QLabel::resizeEvent(event);
    fit();
}

void TwoLineLabel::fit()
{
    setText(inTwoLines(sentence_, font(), contentsRect().width()));
}

} // namespace suppertide::ui
