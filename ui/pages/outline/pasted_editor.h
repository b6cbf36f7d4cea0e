// PastedEditor: a field into which ingredient lines are pasted. Below it stands what is read of
// them, line by line, while they are typed; they are taken by a button, and what was not read stays
// in the field.
#pragma once

#include <QTimer>

#include "ui/models/pasted_lines.h"
#include "ui/pages/outline/field_editor.h"

class QPlainTextEdit;
class QPushButton;

namespace suppertide::ui {

class PastedEditor final : public FieldEditor
{
    Q_OBJECT

public:
    PastedEditor(const Field& field, const Theme& theme, QWidget* parent);

private:
    void showValue(const Field& /*field*/) override {}
    void begin();
    void readSome();
    void showReading();
    void take();

    QPlainTextEdit* input_;
    QLabel* preview_;
    QPushButton* take_;
    QTimer reader_; // a few lines at a time, so that a long text holds nothing up
    std::vector<std::string> waiting_; // the last is read next
    MeasureSystem system_ = MeasureSystem::Metric;
    std::vector<PastedLine> read_;
};

} // namespace suppertide::ui
