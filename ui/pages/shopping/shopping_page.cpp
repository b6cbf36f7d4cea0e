#include "ui/pages/shopping/shopping_page.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLocale>
#include <QPageSize>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QSaveFile>
#include <QSplitter>
#include <QStackedWidget>
#include <QTextBrowser>
#include <QTreeView>
#include <QVBoxLayout>

#include <filesystem>

#include "core/shopping/shopping_text.h"
#include "ui/models/larder_outline.h"
#include "ui/models/shopping_edits.h"
#include "ui/models/shopping_items.h"
#include "ui/pages/outline/outline_page.h"
#include "ui/pages/shopping/current_lists.h"
#include "ui/print/list_html.h"
#include "ui/print/list_pdf.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

QPushButton* button(const QString& text, const QString& name, const QString& tip, QWidget* parent)
{
    auto* made = new QPushButton(text, parent);
    made->setObjectName(name);
    made->setToolTip(tip);
    made->setStatusTip(tip);
    made->setAccessibleDescription(tip);
    return made;
}

QTextBrowser* reader(const QString& name, const QString& accessible, QWidget* parent)
{
    auto* made = new QTextBrowser(parent);
    made->setObjectName(name);
    made->setAccessibleName(accessible);
    made->setOpenLinks(false);
    made->document()->setDefaultStyleSheet(u"h2 { font-size: large; } h3 { font-size: medium; }"_s);
    return made;
}

/// The same text again must not lose the reader's place.
void setHtml(QTextBrowser& browser, const QString& html)
{
    if (browser.property("shown").toString() != html) {
        browser.setProperty("shown", html);
        browser.setHtml(html);
    }
}

} // namespace

ShoppingPage::ShoppingPage(Document& document, Prompts& prompts, const Theme& theme,
                           QWidget* parent)
    : QWidget(parent), document_(document), prompts_(prompts),
      lists_(new CurrentLists(document, this)), items_(new ShoppingItems(this)),
      larder_(new OutlinePage(tr("At home and prices"), std::make_unique<LarderOutline>(), document,
                              theme, this)),
      heading_(new QLabel(tr("Shopping"), this)), working_(new QLabel(this)),
      summary_(new QLabel(this)), views_(new QComboBox(this)), stack_(new QStackedWidget(this)),
      tree_(new QTreeView(this)), details_(reader(u"shoppingLine"_s, tr("The chosen thing"), this)),
      equipment_(reader(u"equipmentText"_s, tr("Equipment"), this)),
      measuring_(reader(u"measuringText"_s, tr("To measure out"), this)),
      atHome_(button(tr("At &home…"), u"shoppingAtHome"_s,
                     tr("Note how much of the chosen thing is at home"), this)),
      price_(button(tr("P&rice…"), u"shoppingPrice"_s,
                    tr("Note in which packs the chosen thing is sold, and for how much"), this)),
      paper_(new QComboBox(this))
{
    build();
    setTheme(theme);
    showLists();
}

void ShoppingPage::build()
{
    larder_->setObjectName(u"larderPage"_s);
    working_->setObjectName(u"shoppingWorking"_s);
    summary_->setObjectName(u"shoppingSummary"_s);
    summary_->setWordWrap(true);
    summary_->setTextFormat(Qt::PlainText);
    views_->setObjectName(u"shoppingViews"_s);
    views_->setAccessibleName(tr("Which list"));
    views_->addItems(
        {tr("What to buy"), tr("At home and prices"), tr("Equipment"), tr("To measure out")});
    stack_->addWidget(listView());
    stack_->addWidget(larder_);
    stack_->addWidget(equipment_);
    stack_->addWidget(measuring_);
    auto* page = new QVBoxLayout(this);
    page->setContentsMargins(10, 8, 10, 8);
    page->addWidget(head());
    page->addWidget(summary_);
    page->addWidget(views_);
    page->addWidget(stack_, 1);
    page->addWidget(buttons());
    connect(lists_, &CurrentLists::changed, this, &ShoppingPage::showLists);
    connect(views_, &QComboBox::currentIndexChanged, this, [this](int view) {
        stack_->setCurrentIndex(view);
        showPlanList();
    });
    connect(items_, &ShoppingItems::ticked, this, &ShoppingPage::tick);
    connect(tree_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &ShoppingPage::showLine);
    connect(atHome_, &QPushButton::clicked, this, [this] {
        if (const auto* line = items_->lineAt(tree_->currentIndex())) {
            goToLarder(stockEdit(document_.library(), *line), "amount");
        }
    });
    connect(price_, &QPushButton::clicked, this, [this] {
        if (const auto* line = items_->lineAt(tree_->currentIndex())) {
            goToLarder(packEdit(document_.library(), *line), "price");
        }
    });
}

/// Whether the lists are being worked out stands where nothing moves for it.
QWidget* ShoppingPage::head()
{
    auto* row = new QWidget(this);
    auto* across = new QHBoxLayout(row);
    across->setContentsMargins(0, 0, 0, 0);
    across->addWidget(heading_);
    across->addStretch();
    across->addWidget(working_);
    return row;
}

QWidget* ShoppingPage::listView()
{
    tree_->setObjectName(u"shoppingList"_s);
    tree_->setAccessibleName(tr("What to buy"));
    tree_->setAccessibleDescription(tr("Space ticks the chosen thing as bought."));
    tree_->setModel(items_);
    tree_->setIndentation(12);
    tree_->setAllColumnsShowFocus(true);
    tree_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    tree_->setFrameShape(QFrame::NoFrame);
    tree_->header()->setSectionResizeMode(ShoppingItems::Thing, QHeaderView::Stretch);
    tree_->setColumnHidden(ShoppingItems::Buy, true);
    tree_->header()->setSectionResizeMode(ShoppingItems::Cost, QHeaderView::ResizeToContents);
    tree_->header()->setStretchLastSection(false);
    auto* notes = new QHBoxLayout;
    notes->addWidget(atHome_);
    notes->addWidget(price_);
    notes->addStretch();
    auto* below = new QWidget(this);
    auto* column = new QVBoxLayout(below);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(details_, 1);
    column->addLayout(notes);
    auto* splitter = new QSplitter(Qt::Vertical, this);
    splitter->addWidget(tree_);
    splitter->addWidget(below);
    splitter->setStretchFactor(0, 3);
    splitter->setStretchFactor(1, 1);
    splitter->setChildrenCollapsible(false);
    return splitter;
}

QWidget* ShoppingPage::buttons()
{
    auto* row = new QWidget(this);
    paper_->setObjectName(u"shoppingPaper"_s);
    paper_->setAccessibleName(tr("Paper"));
    paper_->addItems({tr("A4"), tr("Letter")});
    const bool isMetric = QLocale().measurementSystem() != QLocale::ImperialUSSystem;
    paper_->setCurrentIndex(isMetric ? 0 : 1);
    auto* file =
        button(tr("&Save as…"), u"shoppingSave"_s, tr("The list as a table (CSV) or text"), row);
    auto* pdf = button(tr("P&DF…"), u"shoppingPdf"_s, tr("What is shown, as a PDF"), row);
    auto* paper = button(tr("&Print…"), u"shoppingPrint"_s, tr("What is shown, on paper"), row);
    connect(file, &QPushButton::clicked, this, &ShoppingPage::saveText);
    connect(pdf, &QPushButton::clicked, this, &ShoppingPage::savePdf);
    connect(paper, &QPushButton::clicked, this, &ShoppingPage::print);
    auto* across = new QHBoxLayout(row);
    across->setContentsMargins(0, 0, 0, 0);
    across->addWidget(file);
    across->addWidget(pdf);
    across->addWidget(paper);
    across->addWidget(paper_);
    across->addStretch();
    return row;
}

void ShoppingPage::setTheme(const Theme& theme)
{
    heading_->setFont(theme.font(TypeRole::Heading));
    working_->setFont(theme.font(TypeRole::Secondary));
    summary_->setFont(theme.font(TypeRole::Control));
    tree_->setFont(theme.font(TypeRole::Label));
    tree_->header()->setFont(theme.font(TypeRole::SecondaryBold));
    for (QTextBrowser* browser : {details_, equipment_, measuring_}) {
        browser->setFont(theme.font(TypeRole::Label));
    }
    larder_->setTheme(theme);
}

void ShoppingPage::show(const PlanPtr& plan)
{
    lists_->look(plan);
}

void ShoppingPage::awaitPlan()
{
    lists_->awaitPlan();
}

bool ShoppingPage::isWorking() const
{
    return lists_->isWorking();
}

void ShoppingPage::showLists()
{
    const auto* chosen = items_->lineAt(tree_->currentIndex());
    const std::string key = chosen == nullptr ? std::string() : chosen->key;
    if (items_->show(lists_->buy())) {
        tree_->expandAll();
        spanHeadings({});
        if (const QModelIndex again = items_->find(key); again.isValid()) {
            tree_->setCurrentIndex(again);
        }
    }
    working_->setText(lists_->isWorking() ? tr("being worked out anew…") : QString());
    showSummary();
    showLine();
    showPlanList();
}

/// Trips and sections have no price, and need the room.
void ShoppingPage::spanHeadings(const QModelIndex& parent)
{
    for (int row = 0; row < items_->rowCount(parent); ++row) {
        const QModelIndex child = items_->index(row, ShoppingItems::Thing, parent);
        if (items_->lineAt(child) == nullptr) {
            tree_->setFirstColumnSpanned(row, parent, true);
            spanHeadings(child);
        }
    }
}

/// Long texts are laid out only where they are seen.
void ShoppingPage::showPlanList()
{
    const PlanPtr& plan = lists_->plan();
    const QString none = tr("There is no plan yet. Put dishes on the menu first.");
    if (views_->currentIndex() == Equipment) {
        setHtml(*equipment_,
                plan ? equipmentHtml(lists_->equipment(), plan->formulation->calendar) : none);
    } else if (views_->currentIndex() == Measuring) {
        setHtml(*measuring_, plan
                                 ? miseEnPlaceHtml(lists_->measuring(), plan->formulation->calendar,
                                                   lists_->buy().measures)
                                 : none);
    }
}

void ShoppingPage::showSummary()
{
    const shopping::ShoppingList& list = items_->list();
    QStringList words;
    if (!lists_->failure().isEmpty()) {
        words << lists_->failure();
    }
    if (list.lines.empty() && lists_->isWorking()) {
        words << tr("What to buy is being worked out…");
    } else if (list.lines.empty()) {
        words << tr("There is nothing to buy yet. Give dishes portions under “Menu and guests”.");
    }
    if (list.cost > 0) {
        const QString cost = QString::fromStdString(priceText(list.cost, list.currency));
        words
            << (list.unpriced == 0
                    ? tr("%1 together.").arg(cost)
                    : tr("%1 together, and %2 more without a price.").arg(cost).arg(list.unpriced));
    }
    for (const std::string& sentence : list.sentences) {
        words << QString::fromStdString(sentence);
    }
    for (std::size_t i = 0; i < list.spare.size(); ++i) {
        QString what =
            tr("%1 (%2) will be left over of “%3”")
                .arg(QString::fromStdString(list.spare[i].name),
                     QString::fromStdString(kitchenText(list.spare[i].amount, list.measures)),
                     QString::fromStdString(list.spare[i].from));
        const QString uses = QString::fromStdString(list.spareUses[i]);
        what[0] = what[0].toUpper(); // a sentence
        words << (uses.isEmpty() ? what + u'.' : tr("%1; could go into %2.").arg(what, uses));
    }
    if (!list.lines.empty()) {
        words << QString::fromStdString(shopping::labelCaution());
    }
    summary_->setText(words.join(u'\n'));
}

void ShoppingPage::showLine()
{
    const auto* line = items_->lineAt(tree_->currentIndex());
    atHome_->setEnabled(line != nullptr);
    price_->setEnabled(line != nullptr);
    setHtml(*details_, line == nullptr ? tr("Choose a thing to see what it is for.")
                                       : lineHtml(*line, items_->list()));
}

void ShoppingPage::tick(const QString& key, bool isBought)
{
    const auto* line = items_->lineAt(items_->find(key.toStdString()));
    if (line != nullptr && openOccasion(document_.library())) {
        take(tickEdit(document_.library(), *line, isBought));
    }
}

void ShoppingPage::take(const Edit& edit)
{
    document_.apply(edit.next, edit.text);
}

void ShoppingPage::goToLarder(const Edit& edit, const std::string& field)
{
    take(edit);
    views_->setCurrentIndex(Larder);
    larder_->select(edit.select);
    larder_->focusField(field);
}

QString ShoppingPage::html() const
{
    switch (views_->currentIndex()) {
    case Equipment:
        return equipment_->property("shown").toString();
    case Measuring:
        return measuring_->property("shown").toString();
    default:
        return shoppingHtml(items_->list());
    }
}

void ShoppingPage::saveText()
{
    const auto file = prompts_.saveFile(
        {tr("Save the shopping list"), tr("Table (*.csv);;Text (*.txt)"), tr("shopping.csv")});
    if (!file) {
        return;
    }
    const bool isText = file->endsWith(u".txt"_s, Qt::CaseInsensitive);
    const std::string text =
        isText ? shopping::textOf(items_->list()) : shopping::csvOf(items_->list());
    QSaveFile out(*file);
    const QByteArray bytes = QByteArray::fromStdString(text);
    if (out.open(QIODevice::WriteOnly) && out.write(bytes) == bytes.size() && out.commit()) {
        Q_EMIT said(tr("Saved to %1.").arg(*file));
    } else {
        prompts_.tell(tr("The list was not saved"),
                      tr("“%1” could not be written: %2. Choose another folder.")
                          .arg(*file, out.errorString()));
    }
}

void ShoppingPage::savePdf()
{
    const auto file =
        prompts_.saveFile({tr("Save the list as PDF"), tr("PDF (*.pdf)"), tr("shopping.pdf")});
    if (!file) {
        return;
    }
    const auto written =
        writeHtmlPdf(html(), views_->currentText(), std::filesystem::path(file->toStdString()),
                     paper_->currentIndex() == 0 ? PaperSize::A4 : PaperSize::Letter);
    if (written) {
        Q_EMIT said(tr("Saved to %1.").arg(*file));
    } else {
        prompts_.tell(tr("The PDF was not saved"), QString::fromStdString(written.error().forCook));
    }
}

void ShoppingPage::print()
{
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageSize(QPageSize(paper_->currentIndex() == 0 ? QPageSize::A4 : QPageSize::Letter));
    printer.setDocName(views_->currentText());
    QPrintDialog dialog(&printer, window());
    if (dialog.exec() == QDialog::Accepted) {
        paintHtml(html(), printer);
        Q_EMIT said(tr("Sent to the printer."));
    }
}

} // namespace suppertide::ui
