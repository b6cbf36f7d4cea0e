// PlacesPage: “At table”: who gets what, guest by guest, with what speaks against it; a cell is
// changed by hand, with keys or mouse; or variant by variant, where portions are dragged; portions
// are shared out by the program on demand; all of it and place cards go on paper. Every change is
// one undoable command.
#pragma once

#include <QWidget>

#include "ui/document/document.h"
#include "ui/prompts/prompts.h"
#include "ui/theme/theme.h"

class QComboBox;
class QLabel;
class QPrinter;
class QPushButton;
class QTableView;

namespace suppertide::ui {

class MixView;
class PlaceModel;

class PlacesPage : public QWidget
{
    Q_OBJECT

public:
    /// All must outlive this.
    PlacesPage(Document& document, Prompts& prompts, const Theme& theme, QWidget* parent = nullptr);

    /// After a change of the document.
    void refresh();
    void setTheme(const Theme& theme);

public Q_SLOTS:
    void shareOut();
    void preview();
    void savePdf();

Q_SIGNALS:
    void said(const QString& words);
    /// The page is to fill the window, or no longer.
    void fillRequested(bool fills);

protected:
    void hideEvent(QHideEvent* event) override;

private:
    void build();
    void layOut();
    void connectParts();
    void showTable();

    Document& document_;
    Prompts& prompts_;
    PlaceModel* model_;
    QLabel* heading_;
    QLabel* note_;
    QPushButton* share_;
    QPushButton* byVariant_;
    QPushButton* fill_;
    QPushButton* preview_;
    QPushButton* pdf_;
    QComboBox* paper_;
    QTableView* table_;
    MixView* mix_;
};

} // namespace suppertide::ui
