// FieldEditor: one field of a form as a widget. It shows a Field, says what the user has entered,
// and shows the sentence that came back if that cannot be. What is being typed is never
// overwritten.
#pragma once

#include <QWidget>

#include <memory>

#include "ui/models/outline.h"
#include "ui/theme/theme.h"

class QLabel;

namespace suppertide::ui {

class FieldEditor : public QWidget
{
    Q_OBJECT

public:
    /// The editor that fits the field's kind.
    [[nodiscard]] static FieldEditor* make(const Field& field, const Theme& theme, QWidget* parent);

    /// Takes the value of the document; only if `canShow(field)`.
    void show(const Field& field);
    /// Whether this editor can show it: same key, kind and options.
    [[nodiscard]] bool canShow(const Field& field) const;
    void showFault(const QString& sentence);
    [[nodiscard]] const Field& field() const { return field_; }

Q_SIGNALS:
    void entered(const std::string& key, const suppertide::ui::FieldValue& value);

protected:
    FieldEditor(const Field& field, const Theme& theme, QWidget* parent);
    /// Puts the widget that holds the value between label and fault.
    void setInput(QWidget* input, bool hasOwnLabel = false);
    virtual void showValue(const Field& field) = 0;
    void enter(const FieldValue& value);

private:
    Field field_;
    QLabel* label_;
    QLabel* help_;
    QLabel* fault_;
};

} // namespace suppertide::ui
