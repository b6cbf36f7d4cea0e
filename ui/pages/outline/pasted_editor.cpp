#include "ui/pages/outline/pasted_editor.h"

#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

#include "core/recipe/read_lines.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr std::chrono::milliseconds afterAKey{150};
constexpr std::size_t atOnce = 3; // lines; some milliseconds

} // namespace

PastedEditor::PastedEditor(const Field& field, const Theme& theme, QWidget* parent)
    : FieldEditor(field, theme, parent), input_(new QPlainTextEdit(this)),
      preview_(new QLabel(this)), take_(new QPushButton(this))
{
    auto* box = new QWidget(this);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addWidget(input_);
    column->addWidget(preview_);
    column->addWidget(take_, 0, Qt::AlignLeft);
    input_->setTabChangesFocus(true);
    input_->setFixedHeight(input_->fontMetrics().lineSpacing() * 5 + 12);
    preview_->setObjectName(u"pastedPreview"_s);
    preview_->setFont(theme.font(TypeRole::Secondary));
    preview_->setTextFormat(Qt::RichText);
    preview_->setWordWrap(true);
    preview_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    preview_->setAccessibleName(tr("What is read of the lines"));
    take_->setObjectName(u"pastedTake"_s);
    setInput(box);
    setFocusProxy(input_);
    input_->setAccessibleName(field.label);
    input_->setAccessibleDescription(field.help);
    connect(input_, &QPlainTextEdit::textChanged, this, &PastedEditor::begin);
    connect(take_, &QPushButton::clicked, this, &PastedEditor::take);
    connect(&reader_, &QTimer::timeout, this, &PastedEditor::readSome);
    showReading();
}

void PastedEditor::begin()
{
    const std::string text = input_->toPlainText().toStdString();
    waiting_ = linesIn(text);
    std::ranges::reverse(waiting_);
    system_ = systemOf(text);
    read_.clear();
    take_->setEnabled(false);
    reader_.start(afterAKey);
}

void PastedEditor::readSome()
{
    for (std::size_t i = 0; i < atOnce && !waiting_.empty(); ++i) {
        read_.push_back(pastedLine(waiting_.back(), system_));
        waiting_.pop_back();
    }
    if (waiting_.empty()) {
        reader_.stop();
        showReading();
    } else {
        reader_.start(std::chrono::milliseconds{0});
    }
}

void PastedEditor::showReading()
{
    const auto taken = static_cast<int>(std::ranges::count_if(read_, &PastedLine::isTaken));
    preview_->setText(previewHtml(read_));
    preview_->setVisible(!read_.empty());
    take_->setText(taken == 1 ? tr("Take 1 ingredient") : tr("Take %1 ingredients").arg(taken));
    take_->setVisible(!read_.empty());
    take_->setEnabled(taken > 0);
}

void PastedEditor::take()
{
    const std::string text = input_->toPlainText().toStdString();
    QStringList left;
    for (const PastedLine& line : read_) {
        if (!line.isTaken()) {
            left << QString::fromStdString(line.written);
        }
    }
    input_->setPlainText(left.join(u'\n'));
    enter(text); // the form may show another row then
}

} // namespace suppertide::ui
