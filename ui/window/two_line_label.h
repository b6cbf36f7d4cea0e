// TwoLineLabel: a sentence in at most two lines at any width. What has no room is cut with “…”, and
// the whole is in its tool tip and its accessible name.
#pragma once

#include <QLabel>

namespace suppertide::ui {

/// The sentence in at most two lines of so many px, the second one cut if it must be.
[[nodiscard]] QString inTwoLines(const QString& sentence, const QFont& font, int width);

class TwoLineLabel : public QLabel
{
    Q_OBJECT

public:
    explicit TwoLineLabel(QWidget* parent = nullptr);

    void setSentence(const QString& sentence);
    void setSentenceFont(const QFont& font);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void fit();

    QString sentence_;
};

} // namespace suppertide::ui
