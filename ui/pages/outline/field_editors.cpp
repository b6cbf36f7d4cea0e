// The editors by kind of field.
#include <QCheckBox>
#include <QComboBox>
#include <QDateTimeEdit>
#include <QGridLayout>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QSpinBox>

#include "ui/pages/outline/field_editor.h"
#include "ui/pages/outline/pasted_editor.h"

namespace suppertide::ui {

namespace {

using namespace Qt::StringLiterals;

QString text(const FieldValue& value)
{
    return QString::fromStdString(std::get<std::string>(value));
}

class LineEditor final : public FieldEditor
{
public:
    LineEditor(const Field& field, const Theme& theme, QWidget* parent)
        : FieldEditor(field, theme, parent), input_(new QLineEdit(text(field.value), this))
    {
        setInput(input_);
        connect(input_, &QLineEdit::editingFinished, this,
                [this] { enter(input_->text().toStdString()); });
    }

private:
    void showValue(const Field& field) override { input_->setText(text(field.value)); }

    QLineEdit* input_;
};

/// Says what was entered when the focus leaves it: each stay is one change.
class ParagraphEditor final : public FieldEditor
{
public:
    ParagraphEditor(const Field& field, const Theme& theme, QWidget* parent)
        : FieldEditor(field, theme, parent), input_(new QPlainTextEdit(text(field.value), this))
    {
        setInput(input_);
        input_->setTabChangesFocus(true);
        input_->setFixedHeight(input_->fontMetrics().lineSpacing() * 4 + 12);
        input_->installEventFilter(this);
    }

    bool eventFilter(QObject* watched, QEvent* event) override
    {
        if (event->type() == QEvent::FocusOut) {
            enter(input_->toPlainText().toStdString());
        }
        return FieldEditor::eventFilter(watched, event);
    }

private:
    void showValue(const Field& field) override { input_->setPlainText(text(field.value)); }

    QPlainTextEdit* input_;
};

class WholeEditor final : public FieldEditor
{
public:
    WholeEditor(const Field& field, const Theme& theme, QWidget* parent)
        : FieldEditor(field, theme, parent), input_(new QSpinBox(this))
    {
        input_->setRange(static_cast<int>(field.least), static_cast<int>(field.most));
        if (!field.unit.isEmpty()) {
            input_->setSuffix(u" "_s + field.unit);
        }
        input_->setKeyboardTracking(false);
        input_->setValue(valueOf(field));
        setInput(input_);
        connect(input_, &QSpinBox::valueChanged, this,
                [this](int value) { enter(std::int64_t{value}); });
    }

private:
    static int valueOf(const Field& field)
    {
        return static_cast<int>(std::get<std::int64_t>(field.value));
    }
    void showValue(const Field& field) override
    {
        const QSignalBlocker quiet(input_);
        input_->setValue(valueOf(field));
    }

    QSpinBox* input_;
};

class SwitchEditor final : public FieldEditor
{
public:
    SwitchEditor(const Field& field, const Theme& theme, QWidget* parent)
        : FieldEditor(field, theme, parent), input_(new QCheckBox(field.label, this))
    {
        input_->setChecked(std::get<bool>(field.value));
        setInput(input_, true);
        connect(input_, &QCheckBox::toggled, this, [this](bool isOn) { enter(isOn); });
    }

private:
    void showValue(const Field& field) override
    {
        const QSignalBlocker quiet(input_);
        input_->setChecked(std::get<bool>(field.value));
    }

    QCheckBox* input_;
};

class ChoiceEditor final : public FieldEditor
{
public:
    ChoiceEditor(const Field& field, const Theme& theme, QWidget* parent)
        : FieldEditor(field, theme, parent), input_(new QComboBox(this))
    {
        for (const FieldOption& option : field.options) {
            input_->addItem(option.text, QString::fromStdString(option.key));
        }
        input_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        input_->setMinimumContentsLength(8);
        setInput(input_);
        select(field);
        connect(input_, &QComboBox::activated, this,
                [this] { enter(input_->currentData().toString().toStdString()); });
    }

private:
    void select(const Field& field)
    {
        input_->setCurrentIndex(input_->findData(text(field.value)));
    }
    void showValue(const Field& field) override { select(field); }

    QComboBox* input_;
};

class ChecksEditor final : public FieldEditor
{
public:
    ChecksEditor(const Field& field, const Theme& theme, QWidget* parent)
        : FieldEditor(field, theme, parent), input_(new QWidget(this))
    {
        auto* grid = new QGridLayout(input_);
        grid->setContentsMargins(0, 0, 0, 0);
        grid->setVerticalSpacing(0);
        constexpr int columns = 2;
        for (const FieldOption& option : field.options) {
            auto* box = new QCheckBox(option.text, input_);
            box->setToolTip(option.text);
            const auto place = static_cast<int>(boxes_.size());
            grid->addWidget(box, place / columns, place % columns);
            connect(box, &QCheckBox::toggled, this, [this] { enter(ticked()); });
            boxes_.push_back(box);
        }
        setInput(input_);
        tick(field);
    }

private:
    [[nodiscard]] std::vector<std::string> ticked() const
    {
        std::vector<std::string> keys;
        for (std::size_t i = 0; i < boxes_.size(); ++i) {
            if (boxes_[i]->isChecked()) {
                keys.push_back(field().options[i].key);
            }
        }
        return keys;
    }
    void tick(const Field& field)
    {
        const auto& keys = std::get<std::vector<std::string>>(field.value);
        for (std::size_t i = 0; i < boxes_.size(); ++i) {
            const QSignalBlocker quiet(boxes_[i]);
            boxes_[i]->setChecked(std::find(keys.begin(), keys.end(), field.options[i].key) !=
                                  keys.end());
        }
    }
    void showValue(const Field& field) override { tick(field); }

    QWidget* input_;
    std::vector<QCheckBox*> boxes_;
};

/// A date, a time, or both, in the ISO form of the value.
class TimeEditor final : public FieldEditor
{
public:
    TimeEditor(const Field& field, const Theme& theme, QWidget* parent)
        : FieldEditor(field, theme, parent), input_(new QDateTimeEdit(this))
    {
        input_->setDisplayFormat(field.kind == FieldKind::Clock  ? u"HH:mm"_s
                                 : field.kind == FieldKind::Date ? u"ddd d MMM yyyy"_s
                                                                 : u"ddd d MMM yyyy HH:mm"_s);
        input_->setCalendarPopup(field.kind != FieldKind::Clock);
        input_->setKeyboardTracking(false);
        input_->setTimeSpec(
            Qt::UTC); // a clock on the wall; the occasion's zone is not ours to know
        read(field);
        setInput(input_);
        connect(input_, &QDateTimeEdit::editingFinished, this, [this] { enter(written()); });
    }

private:
    [[nodiscard]] QString format() const
    {
        switch (field().kind) {
        case FieldKind::Clock:
            return u"HH:mm"_s;
        case FieldKind::Date:
            return u"yyyy-MM-dd"_s;
        case FieldKind::DateTime:
        case FieldKind::Line:
        case FieldKind::Paragraph:
        case FieldKind::Pasted:
        case FieldKind::Whole:
        case FieldKind::Switch:
        case FieldKind::Choice:
        case FieldKind::Checks:
            return u"yyyy-MM-dd'T'HH:mm"_s;
        }
        return {};
    }
    [[nodiscard]] std::string written() const
    {
        return input_->dateTime().toString(format()).toStdString();
    }
    void read(const Field& field)
    {
        QDateTime time = QDateTime::fromString(text(field.value), format());
        time.setTimeSpec(Qt::UTC);
        if (field.kind == FieldKind::Clock) {
            time.setDate(QDate(2000, 1, 1));
        }
        input_->setDateTime(time);
    }
    void showValue(const Field& field) override
    {
        const QSignalBlocker quiet(input_);
        read(field);
    }

    QDateTimeEdit* input_;
};

} // namespace

FieldEditor* FieldEditor::make(const Field& field, const Theme& theme, QWidget* parent)
{
    switch (field.kind) {
    case FieldKind::Line:
        return new LineEditor(field, theme, parent);
    case FieldKind::Paragraph:
        return new ParagraphEditor(field, theme, parent);
    case FieldKind::Pasted:
        return new PastedEditor(field, theme, parent);
    case FieldKind::Whole:
        return new WholeEditor(field, theme, parent);
    case FieldKind::Switch:
        return new SwitchEditor(field, theme, parent);
    case FieldKind::Choice:
        return new ChoiceEditor(field, theme, parent);
    case FieldKind::Checks:
        return new ChecksEditor(field, theme, parent);
    case FieldKind::DateTime:
    case FieldKind::Date:
    case FieldKind::Clock:
        return new TimeEditor(field, theme, parent);
    }
    return nullptr;
}

} // namespace suppertide::ui
