#include "ui/prompts/prompts.h"

#include <QFileDialog>
#include <QInputDialog>
#include <QMessageBox>
#include <QPushButton>

namespace suppertide::ui {

void WidgetPrompts::tell(const QString& title, const QString& text)
{
    QMessageBox box(QMessageBox::NoIcon, title, text, QMessageBox::Ok, &window_);
    box.setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    box.exec();
}

bool WidgetPrompts::confirm(const QString& title, const QString& text, const QString& action)
{
    QMessageBox box(QMessageBox::NoIcon, title, text, QMessageBox::Cancel, &window_);
    const QPushButton* agree = box.addButton(action, QMessageBox::AcceptRole);
    box.setDefaultButton(QMessageBox::Cancel);
    box.exec();
    return box.clickedButton() == agree;
}

std::optional<QString> WidgetPrompts::askText(const QString& title, const QString& label,
                                              const QString& now)
{
    bool isGiven = false;
    const QString text =
        QInputDialog::getText(&window_, title, label, QLineEdit::Normal, now, &isGiven);
    return isGiven && !text.trimmed().isEmpty() ? std::optional(text.trimmed()) : std::nullopt;
}

std::optional<int> WidgetPrompts::choose(const QString& title, const QString& label,
                                         const QStringList& options, int now)
{
    bool isGiven = false;
    const QString taken =
        QInputDialog::getItem(&window_, title, label, options, now, false, &isGiven);
    return isGiven ? std::optional(static_cast<int>(options.indexOf(taken))) : std::nullopt;
}

std::optional<QString> WidgetPrompts::openFile(const FileQuestion& question)
{
    const QString file =
        QFileDialog::getOpenFileName(&window_, question.title, question.suggested, question.filter);
    return file.isEmpty() ? std::nullopt : std::optional(file);
}

std::optional<QString> WidgetPrompts::saveFile(const FileQuestion& question)
{
    const QString file =
        QFileDialog::getSaveFileName(&window_, question.title, question.suggested, question.filter);
    return file.isEmpty() ? std::nullopt : std::optional(file);
}

} // namespace suppertide::ui
