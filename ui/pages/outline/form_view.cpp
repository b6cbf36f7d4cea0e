#include "ui/pages/outline/form_view.h"

#include <QApplication>
#include <QScrollBar>
#include <QVBoxLayout>

#include "ui/pages/outline/field_editor.h"

namespace suppertide::ui {

FormView::FormView(const Theme& theme, QWidget* parent)
    : QScrollArea(parent), theme_(theme), column_(nullptr)
{
    auto* body = new QWidget(this);
    column_ = new QVBoxLayout(body);
    column_->setContentsMargins(2, 6, 6, 6);
    column_->setSpacing(8);
    column_->addStretch();
    // No wider than the page, however long the words of a choice are.
    body->setMinimumWidth(1);
    setWidget(body);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusPolicy(Qt::NoFocus);
}

bool FormView::canKeep(const std::vector<Field>& fields) const
{
    if (fields.size() != editors_.size()) {
        return false;
    }
    for (std::size_t i = 0; i < fields.size(); ++i) {
        if (!editors_[i]->canShow(fields[i])) {
            return false;
        }
    }
    return true;
}

void FormView::show(const std::vector<Field>& fields)
{
    if (!canKeep(fields)) {
        build(fields);
        return;
    }
    for (std::size_t i = 0; i < fields.size(); ++i) {
        editors_[i]->show(fields[i]);
    }
}

/// The field that has the focus; empty: none.
std::string FormView::focused() const
{
    for (const FieldEditor* editor : editors_) {
        if (editor->isAncestorOf(QApplication::focusWidget())) {
            return editor->field().key;
        }
    }
    return {};
}

void FormView::build(const std::vector<Field>& fields)
{
    // Whoever is typing goes on where they were.
    const std::string focus = focused();
    const int scrolled = verticalScrollBar()->value();
    for (FieldEditor* editor : editors_) {
        column_->removeWidget(editor);
        editor->blockSignals(true); // what it loses by going is no entry
        editor->hide();
        editor->deleteLater(); // it may be the one whose signal brought us here
    }
    editors_.clear();
    for (const Field& field : fields) {
        FieldEditor* editor = FieldEditor::make(field, theme_, widget());
        connect(editor, &FieldEditor::entered, this, &FormView::entered);
        column_->insertWidget(static_cast<int>(editors_.size()), editor);
        editors_.push_back(editor);
    }
    if (!focus.empty()) {
        verticalScrollBar()->setValue(scrolled);
        focusField(focus);
    }
}

void FormView::showFault(const std::string& key, const QString& sentence)
{
    for (FieldEditor* editor : editors_) {
        if (editor->field().key == key) {
            editor->showFault(sentence);
            ensureWidgetVisible(editor);
        }
    }
}

void FormView::setTheme(const Theme& theme)
{
    theme_ = theme;
    std::vector<Field> fields;
    for (const FieldEditor* editor : editors_) {
        fields.push_back(editor->field());
    }
    build(fields);
}

void FormView::focusField(const std::string& key)
{
    for (FieldEditor* editor : editors_) {
        if (editor->field().key == key) {
            editor->setFocus(Qt::TabFocusReason); // as by the tab key, which chooses all
            ensureWidgetVisible(editor);
        }
    }
}

void FormView::focusFirst()
{
    if (!editors_.empty()) {
        editors_.front()->setFocus(Qt::OtherFocusReason);
    }
}

} // namespace suppertide::ui
