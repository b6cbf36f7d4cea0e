#include "ui/pages/places/places_page.h"

#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QHideEvent>
#include <QLabel>
#include <QLocale>
#include <QPageSize>
#include <QPainter>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include "core/sheet/place_sheet.h"
#include "ui/models/place_model.h"
#include "ui/pages/places/mix_view.h"
#include "ui/pages/places/place_delegate.h"
#include "ui/print/place_pages.h"
#include "ui/theme/page_button.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

constexpr double pointsPerInch = 72;

std::optional<PlaceSheet> sheetOf(const LibraryState& library)
{
    const auto input = placesInput(library);
    return input ? std::optional{placeSheet(*input)} : std::nullopt;
}

PaperSize paperOf(const QComboBox& box)
{
    return box.currentIndex() == 0 ? PaperSize::A4 : PaperSize::Letter;
}

} // namespace

PlacesPage::PlacesPage(Document& document, Prompts& prompts, const Theme& theme, QWidget* parent)
    : QWidget(parent), document_(document), prompts_(prompts), model_(new PlaceModel(this)),
      heading_(new QLabel(tr("At table"), this)), note_(new QLabel(this)),
      share_(
          pageButton(tr("Share &out portions"), u"shareOut"_s,
                     tr("Everybody gets what leads each course, or what suits them with the fewest "
                        "extra steps"),
                     this)),
      byVariant_(pageButton(
          tr("By varia&nt"), u"placesByVariant"_s,
          tr("A row for each variant: drag a guest's portion from one to another"), this)),
      fill_(pageButton(tr("&Large"), u"placesFill"_s, tr("Fill the window with this page"), this)),
      preview_(pageButton(tr("Print pre&view"), u"placesPreview"_s,
                          tr("The table of who gets what, and place cards"), this)),
      pdf_(pageButton(tr("Save as &PDF…"), u"placesPdf"_s,
                      tr("The table of who gets what, and place cards"), this)),
      paper_(new QComboBox(this)), table_(new QTableView(this)),
      mix_(new MixView(document, theme, this))
{
    build();
    layOut();
    connectParts();
    setTheme(theme);
    refresh();
}

void PlacesPage::build()
{
    fill_->setCheckable(true);
    byVariant_->setCheckable(true);
    note_->setObjectName(u"placesNote"_s);
    note_->setTextFormat(Qt::PlainText);
    note_->setWordWrap(true);
    paper_->setObjectName(u"placesPaper"_s);
    paper_->setAccessibleName(tr("Paper"));
    paper_->addItems({tr("A4"), tr("Letter")});
    paper_->setCurrentIndex(QLocale().measurementSystem() == QLocale::ImperialUSSystem ? 1 : 0);
    table_->setObjectName(u"placeTable"_s);
    table_->setAccessibleName(tr("Who gets what"));
    table_->setModel(model_);
    table_->setItemDelegate(new PlaceDelegate(document_, table_));
    table_->setTabKeyNavigation(false);
    // Enter or a double click, by `activated`; F2 is the window's own.
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table_->setWordWrap(true);
    constexpr int columnWidth = 170; // px
    table_->horizontalHeader()->setDefaultSectionSize(columnWidth);
    table_->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
}

void PlacesPage::layOut()
{
    auto* first = new QHBoxLayout;
    first->addWidget(share_);
    first->addWidget(byVariant_);
    first->addWidget(fill_);
    first->addStretch();
    auto* second = new QHBoxLayout;
    second->addWidget(preview_);
    second->addWidget(pdf_);
    second->addWidget(paper_);
    second->addStretch();
    auto* page = new QVBoxLayout(this);
    page->setContentsMargins(10, 8, 10, 8);
    page->addWidget(heading_);
    page->addWidget(note_);
    page->addLayout(first);
    page->addWidget(table_, 1);
    page->addWidget(mix_, 1);
    page->addLayout(second);
    page->addStretch();
}

void PlacesPage::connectParts()
{
    connect(table_, &QTableView::activated, this, [this](const QModelIndex& cell) {
        // NoEditTriggers is about keys and clicks alone.
        table_->edit(cell);
    });
    connect(share_, &QPushButton::clicked, this, &PlacesPage::shareOut);
    connect(preview_, &QPushButton::clicked, this, &PlacesPage::preview);
    connect(pdf_, &QPushButton::clicked, this, &PlacesPage::savePdf);
    connect(byVariant_, &QPushButton::toggled, this, &PlacesPage::showTable);
    connect(mix_, &MixView::said, this, &PlacesPage::said);
    connect(fill_, &QPushButton::toggled, this, &PlacesPage::fillRequested);
}

void PlacesPage::refresh()
{
    model_->show(document_.library());
    mix_->refresh();
    const OccasionPtr record = openOccasion(document_.library());
    if (!record) {
        note_->setText(tr("No occasion is open. Begin one under Occasion, New."));
    } else if (record->occasion.guests.empty()) {
        note_->setText(tr("Nobody is invited yet. Add guests, with what they must not eat, under "
                          "Menu and guests."));
    } else if (model_->isEmpty()) {
        note_->setText(tr("There are no dishes yet. Choose them under Menu and guests."));
    } else {
        note_->setText(model_->summary());
    }
    for (QWidget* part :
         std::initializer_list<QWidget*>{share_, byVariant_, fill_, preview_, pdf_, paper_}) {
        part->setVisible(!model_->isEmpty());
    }
    showTable();
}

void PlacesPage::showTable()
{
    table_->setVisible(!model_->isEmpty() && !byVariant_->isChecked());
    mix_->setVisible(!model_->isEmpty() && byVariant_->isChecked());
}

void PlacesPage::setTheme(const Theme& theme)
{
    heading_->setFont(theme.font(TypeRole::Heading));
    note_->setFont(theme.font(TypeRole::Control));
    table_->setFont(theme.font(TypeRole::Label));
    table_->horizontalHeader()->setFont(theme.font(TypeRole::SecondaryBold));
    table_->verticalHeader()->setFont(theme.font(TypeRole::SecondaryBold));
    mix_->setTheme(theme);
    for (QPushButton* each : {byVariant_, fill_}) {
        keepRoomForBold(*each, theme);
    }
}

void PlacesPage::shareOut()
{
    auto edit = sharedOut(document_.library());
    if (!edit) {
        Q_EMIT said(tr("Portions are shared out so already."));
        return;
    }
    document_.apply(std::move(edit->next), edit->text);
    Q_EMIT said(model_->summary());
}

void PlacesPage::preview()
{
    const auto sheet = sheetOf(document_.library());
    if (!sheet) {
        return;
    }
    QPrinter printer(QPrinter::HighResolution);
    const PaperSize size = paperOf(*paper_);
    printer.setPageSize(QPageSize(size == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter));
    printer.setFullPage(true);
    printer.setDocName(QString::fromStdString(sheet->title));
    QPrintPreviewDialog dialog(&printer, window());
    dialog.setObjectName(u"placesPreviewDialog"_s);
    connect(&dialog, &QPrintPreviewDialog::paintRequested, this, [&](QPrinter* onto) {
        QPainter painter(onto);
        const double scale = onto->logicalDpiX() / pointsPerInch;
        painter.scale(scale, scale);
        paintPlacePages(painter, *sheet, size, [onto] { onto->newPage(); });
    });
    dialog.exec();
}

void PlacesPage::savePdf()
{
    const auto sheet = sheetOf(document_.library());
    if (!sheet) {
        return;
    }
    const auto file =
        prompts_.saveFile({tr("Save who gets what as PDF"), tr("PDF (*.pdf)"),
                           tr("%1, at table.pdf").arg(QString::fromStdString(sheet->title))});
    if (!file) {
        return;
    }
    const auto written =
        writePlacesPdf(*sheet, std::filesystem::path(file->toStdString()), paperOf(*paper_));
    if (written) {
        Q_EMIT said(tr("Saved to %1.").arg(*file));
    } else {
        prompts_.tell(tr("The PDF was not saved"), QString::fromStdString(written.error().forCook));
    }
}

void PlacesPage::hideEvent(QHideEvent* event)
{
    QWidget::hideEvent(event);
    if (!event->spontaneous()) {
        fill_->setChecked(false);
    }
}

} // namespace suppertide::ui
