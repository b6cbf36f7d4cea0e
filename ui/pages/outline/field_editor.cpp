#include "ui/pages/outline/field_editor.h"

#include <QLabel>
#include <QVBoxLayout>

namespace suppertide::ui {

FieldEditor::FieldEditor(const Field& field, const Theme& theme, QWidget* parent)
    : QWidget(parent), field_(field), label_(new QLabel(field.label, this)),
      help_(new QLabel(field.help, this)), fault_(new QLabel(this))
{
    setObjectName(QStringLiteral("field.") + QString::fromStdString(field.key));
    label_->setFont(theme.font(TypeRole::Secondary));
    label_->setWordWrap(true);
    help_->setFont(theme.font(TypeRole::Secondary));
    help_->setWordWrap(true);
    help_->setForegroundRole(QPalette::PlaceholderText);
    help_->setVisible(!field.help.isEmpty());
    fault_->setFont(theme.font(TypeRole::SecondaryBold));
    fault_->setWordWrap(true);
    fault_->setStyleSheet(QStringLiteral("color: %1").arg(theme.role().impossible.colour.name()));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(1);
    column->addWidget(label_);
    column->addWidget(help_);
    column->addWidget(fault_);
    showFault(field.fault);
}

void FieldEditor::setInput(QWidget* input, bool hasOwnLabel)
{
    qobject_cast<QVBoxLayout*>(layout())->insertWidget(1, input);
    label_->setVisible(!hasOwnLabel);
    label_->setBuddy(input);
    input->setAccessibleName(field_.label);
    input->setAccessibleDescription(field_.help);
    setFocusProxy(input);
}

bool FieldEditor::canShow(const Field& field) const
{
    return field.key == field_.key && field.kind == field_.kind && field.label == field_.label &&
           field.options == field_.options && field.unit == field_.unit;
}

void FieldEditor::show(const Field& field)
{
    const bool isSame = field == field_;
    field_ = field;
    showFault(field.fault);
    if (!isSame) {
        help_->setText(field.help);
        help_->setVisible(!field.help.isEmpty());
        focusProxy()->setAccessibleDescription(field.help);
        showValue(field);
    }
}

void FieldEditor::showFault(const QString& sentence)
{
    fault_->setText(sentence);
    fault_->setVisible(!sentence.isEmpty());
}

void FieldEditor::enter(const FieldValue& value)
{
    if (value != field_.value) {
        Q_EMIT entered(field_.key, value);
    } else {
        showFault(field_.fault);
    }
}

} // namespace suppertide::ui
