// OutlinePage: shows any Outline: the tree of rows, what can be done with the chosen one as
// buttons, and its form. What the user enters goes to the outline, and what it answers to the
// document; a refusal is shown at the field.
#pragma once

#include <QWidget>

#include <memory>

#include "ui/models/outline.h"
#include "ui/theme/theme.h"

class QHBoxLayout;
class QLabel;
class QSplitter;
class QTreeView;
class QVBoxLayout;

namespace suppertide::ui {

class Document;
class FormView;
class OutlineDelegate;
class OutlineItems;

class OutlinePage : public QWidget
{
    Q_OBJECT

public:
    OutlinePage(const QString& title, std::unique_ptr<Outline> outline, Document& document,
                const Theme& theme, QWidget* parent = nullptr);
    ~OutlinePage() override;

    void setTheme(const Theme& theme);
    /// Said instead of the rows while there are none.
    void setEmptyText(const QString& text);
    /// A widget of the page's own above the rows.
    void setTop(QWidget* top);
    void refresh();
    void select(const std::string& row);
    /// Of the chosen row, to be typed into.
    void focusField(const std::string& key);
    [[nodiscard]] std::string selected() const;
    /// Carries a command of the chosen row out.
    void run(const std::string& command);

protected:
    /// Rows may move under a button that is down, as commands come and go; what was pressed stays
    /// chosen.
    bool eventFilter(QObject* watched, QEvent* event) override;
    [[nodiscard]] Document& document() { return document_; }

private:
    void showRow();
    void enter(const std::string& key, const FieldValue& value);
    void take(Edit edit);
    void showForm(bool isWanted);
    void placeCommands(const std::vector<RowCommand>& commands);

    std::unique_ptr<Outline> outline_;
    Document& document_;
    Theme theme_;
    OutlineItems* items_;
    OutlineDelegate* delegate_;
    QLabel* title_;
    QLabel* empty_;
    QTreeView* view_;
    QWidget* commands_;
    FormView* form_;
    QSplitter* splitter_;
    bool wasFormShown_ = false;
    bool isRefreshing_ = false;
};

} // namespace suppertide::ui
