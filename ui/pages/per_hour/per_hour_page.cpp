#include "ui/pages/per_hour/per_hour_page.h"

#include <QComboBox>
#include <QFontDatabase>
#include <QHBoxLayout>
#include <QLabel>
#include <QLocale>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QPushButton>
#include <QScrollBar>
#include <QTextBrowser>
#include <QVBoxLayout>

#include <filesystem>

#include "ui/print/per_hour_html.h"
#include "ui/print/per_hour_pdf.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

QPushButton* button(const QString& text, const QString& name, QWidget* parent)
{
    auto* made = new QPushButton(text, parent);
    made->setObjectName(name);
    return made;
}

} // namespace

PerHourPage::PerHourPage(Prompts& prompts, const Theme& theme, QWidget* parent)
    : QWidget(parent), prompts_(prompts), title_(new QLabel(tr("Per-hour plan"), this)),
      buttons_(new QWidget(this)), paper_(new QComboBox(buttons_)), size_(new QComboBox(buttons_)),
      text_(new QTextBrowser(this))
{
    text_->setObjectName(u"perHourText"_s);
    text_->setAccessibleName(tr("The plan by the hour"));
    text_->setOpenLinks(false);
    // Beside the timeline there is no room for the headings of a page.
    text_->document()->setDefaultStyleSheet(
        u"h1 { font-size: large; } h2 { font-size: medium; } h3, h4 { font-size: medium; }"_s);
    paper_->setObjectName(u"paperSize"_s);
    paper_->setAccessibleName(tr("Paper"));
    paper_->addItems({tr("A4"), tr("Letter")});
    const bool isMetric = QLocale().measurementSystem() != QLocale::ImperialUSSystem;
    paper_->setCurrentIndex(isMetric ? 0 : 1);
    size_->setObjectName(u"printSize"_s);
    size_->setAccessibleName(tr("Size of the print"));
    size_->addItems({tr("Normal"), tr("Large")});

    auto* previewButton = button(tr("Print preview"), u"printPreview"_s, buttons_);
    auto* printButton = button(tr("Print…"), u"print"_s, buttons_);
    auto* pdfButton = button(tr("Save as PDF…"), u"savePdf"_s, buttons_);
    connect(previewButton, &QPushButton::clicked, this, &PerHourPage::preview);
    connect(printButton, &QPushButton::clicked, this, &PerHourPage::print);
    connect(pdfButton, &QPushButton::clicked, this, &PerHourPage::savePdf);

    auto* choices = new QHBoxLayout;
    choices->addWidget(paper_);
    choices->addWidget(size_);
    choices->addStretch();
    auto* actions = new QHBoxLayout;
    actions->addWidget(printButton);
    actions->addWidget(pdfButton);
    actions->addStretch();
    auto* column = new QVBoxLayout(buttons_);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(previewButton);
    column->addLayout(actions);
    column->addLayout(choices);
    auto* page = new QVBoxLayout(this);
    page->setContentsMargins(10, 8, 10, 8);
    page->addWidget(title_);
    page->addWidget(buttons_);
    page->addWidget(text_, 1);
    setTheme(theme);
    showNothing({});
}

void PerHourPage::setTheme(const Theme& theme)
{
    title_->setFont(theme.font(TypeRole::Heading));
    text_->setFont(theme.font(TypeRole::Label));
}

void PerHourPage::show(const PerHourPlan& sheet, const std::map<DishId, int>& looks)
{
    sheet_ = sheet;
    looks_ = looks;
    buttons_->setEnabled(true);
    const QString html = QString::fromStdString(perHourHtml(sheet));
    if (html != html_) {
        html_ = html;
        const int at = text_->verticalScrollBar()->value();
        text_->setHtml(html);
        text_->verticalScrollBar()->setValue(at);
    }
}

void PerHourPage::showNothing(const QString& why)
{
    sheet_ = {};
    html_.clear();
    buttons_->setEnabled(false);
    text_->setPlainText(why.isEmpty() ? tr("There is no plan yet. Put dishes on the menu first.")
                                      : why);
}

PageStyle PerHourPage::style() const
{
    PageStyle style;
    style.paper = paper_->currentIndex() == 0 ? PaperSize::A4 : PaperSize::Letter;
    style.text = size_->currentIndex() == 0 ? TextSize::Normal : TextSize::Large;
    style.looks = looks_;
    return style;
}

void PerHourPage::setUp(QPrinter& printer) const
{
    printer.setPageSize(QPageSize(paper_->currentIndex() == 0 ? QPageSize::A4 : QPageSize::Letter));
    printer.setFullPage(true);
    printer.setDocName(QString::fromStdString(sheet_.title));
}

void PerHourPage::paintOn(QPrinter* printer) const
{
    const PerHourPages pages = layOutPages(sheet_, style());
    QPainter painter(printer);
    const double scale = printer->logicalDpiX() / 72.0;
    painter.scale(scale, scale);
    for (std::size_t page = 0; page < pages.pages.size(); ++page) {
        if (page > 0) {
            printer->newPage();
        }
        paintPage(painter, pages, page);
    }
}

void PerHourPage::preview()
{
    if (!sheet_.plan) {
        return;
    }
    QPrinter printer(QPrinter::HighResolution);
    setUp(printer);
    QPrintPreviewDialog dialog(&printer, window());
    dialog.setObjectName(u"printPreviewDialog"_s);
    connect(&dialog, &QPrintPreviewDialog::paintRequested, this,
            [this](QPrinter* onto) { paintOn(onto); });
    dialog.exec();
}

void PerHourPage::print()
{
    if (!sheet_.plan) {
        return;
    }
    QPrinter printer(QPrinter::HighResolution);
    setUp(printer);
    QPrintDialog dialog(&printer, window());
    if (dialog.exec() == QDialog::Accepted) {
        paintOn(&printer);
        Q_EMIT said(tr("Sent to the printer."));
    }
}

void PerHourPage::savePdf()
{
    if (!sheet_.plan) {
        return;
    }
    const auto file = prompts_.saveFile({tr("Save the per-hour plan as PDF"), tr("PDF (*.pdf)"),
                                         QString::fromStdString(sheet_.title) + u".pdf"_s});
    if (!file) {
        return;
    }
    const auto written =
        writePerHourPdf(sheet_, std::filesystem::path(file->toStdString()), style().paper);
    if (written) {
        Q_EMIT said(tr("Saved to %1.").arg(*file));
    } else {
        prompts_.tell(tr("The PDF was not saved"), QString::fromStdString(written.error().forCook));
    }
}

} // namespace suppertide::ui
