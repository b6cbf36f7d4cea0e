// FormView: the fields of one row as a column of editors. Shown again with the same fields it keeps
// its editors, so that the focus and what is being typed stay.
#pragma once

#include <QScrollArea>

#include <vector>

#include "ui/models/outline.h"
#include "ui/theme/theme.h"

class QVBoxLayout;

namespace suppertide::ui {

class FieldEditor;

class FormView : public QScrollArea
{
    Q_OBJECT

public:
    explicit FormView(const Theme& theme, QWidget* parent = nullptr);

    void show(const std::vector<Field>& fields);
    void showFault(const std::string& key, const QString& sentence);
    void setTheme(const Theme& theme);
    void focusFirst();
    /// With its text chosen, so that what is typed takes its place. Nothing if there is no such
    /// field.
    void focusField(const std::string& key);

Q_SIGNALS:
    void entered(const std::string& key, const suppertide::ui::FieldValue& value);

private:
    [[nodiscard]] bool canKeep(const std::vector<Field>& fields) const;
    void build(const std::vector<Field>& fields);
    [[nodiscard]] std::string focused() const;

    Theme theme_;
    std::vector<FieldEditor*> editors_;
    QVBoxLayout* column_;
};

} // namespace suppertide::ui
