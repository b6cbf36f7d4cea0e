#include "ui/pages/menus/menus_page.h"

#include <QComboBox>
#include <QFontMetrics>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QHideEvent>
#include <QLabel>
#include <QPlainTextEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QSignalBlocker>
#include <QTableView>
#include <QVBoxLayout>

#include "ui/models/menu_table_model.h"
#include "ui/pages/menus/menu_chart.h"
#include "ui/theme/page_button.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

MenusPage::MenusPage(const Theme& theme, QWidget* parent)
    : QWidget(parent), theme_(theme), heading_(new QLabel(tr("Menus"), this)),
      note_(new QLabel(this)),
      compare_(pageButton(tr("&Compare menus"), u"compareMenus"_s,
                          tr("Look at every menu that the courses' alternatives make"), this)),
      stop_(pageButton(tr("&Stop"), u"stopComparing"_s, tr("What is known so far stays"), this)),
      fill_(pageButton(tr("&Large"), u"menusFill"_s, tr("Fill the window with this page"), this)),
      progress_(new QProgressBar(this)), acrossLabel_(new QLabel(tr("Acr&oss"), this)),
      upLabel_(new QLabel(tr("&Up"), this)), across_(new QComboBox(this)), up_(new QComboBox(this)),
      chart_(new MenuChart(theme, this)), model_(new MenuTableModel(this)),
      table_(new QTableView(this)), detail_(new QPlainTextEdit(this)),
      take_(pageButton(tr("&Take this menu"), u"takeMenu"_s,
                       tr("The chosen menu becomes the evening's, laid out as it was planned; Undo "
                          "takes it back"),
                       this))
{
    build();
    connectParts();
    setTheme(theme);
    show(nullptr, std::nullopt);
}

void MenusPage::build()
{
    fill_->setCheckable(true);
    note_->setObjectName(u"menusNote"_s);
    note_->setTextFormat(Qt::PlainText);
    note_->setWordWrap(true);
    progress_->setObjectName(u"menusProgress"_s);
    progress_->setAccessibleName(tr("How far the comparison is"));
    across_->setObjectName(u"menusAcross"_s);
    across_->setAccessibleName(tr("Figure across"));
    up_->setObjectName(u"menusUp"_s);
    up_->setAccessibleName(tr("Figure up"));
    acrossLabel_->setBuddy(across_);
    upLabel_->setBuddy(up_);
    chart_->setObjectName(u"menuChart"_s);
    chart_->setAccessibleName(tr("Chart of menus"));
    table_->setObjectName(u"menuTable"_s);
    table_->setAccessibleName(tr("Menus compared"));
    table_->setModel(model_);
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setTabKeyNavigation(false);
    table_->setSortingEnabled(true);
    table_->sortByColumn(0, Qt::AscendingOrder);
    table_->verticalHeader()->hide();
    table_->horizontalHeader()->setResizeContentsPrecision(0); // what is seen, not all of 10,000
    detail_->setObjectName(u"menuDetail"_s);
    detail_->setAccessibleName(tr("The chosen menu"));
    detail_->setReadOnly(true);
    detail_->setTabChangesFocus(true);
    detail_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);

    auto* buttons = new QHBoxLayout;
    buttons->addWidget(compare_);
    buttons->addWidget(stop_);
    buttons->addWidget(fill_);
    buttons->addStretch();
    auto* figures = new QGridLayout;
    figures->addWidget(upLabel_, 0, 0);
    figures->addWidget(up_, 0, 1);
    figures->addWidget(acrossLabel_, 0, 2);
    figures->addWidget(across_, 0, 3);
    figures->setColumnStretch(1, 1);
    figures->setColumnStretch(3, 1);
    auto* page = new QVBoxLayout(this);
    page->setContentsMargins(10, 8, 10, 8);
    page->addWidget(heading_);
    page->addWidget(note_);
    page->addLayout(buttons);
    page->addWidget(progress_);
    page->addLayout(figures);
    page->addWidget(chart_, 3);
    page->addWidget(table_, 3);
    page->addWidget(detail_, 2);
    page->addWidget(take_);
    page->addStretch();
    listFigures();
}

void MenusPage::listFigures()
{
    for (QComboBox* box : {across_, up_}) {
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        box->setMinimumContentsLength(8);
        for (const menus::Figure figure : menus::allFigures) {
            box->addItem(figureName(figure), static_cast<int>(figure));
        }
    }
    const MenuComparison usual;
    across_->setCurrentIndex(across_->findData(static_cast<int>(usual.across())));
    up_->setCurrentIndex(up_->findData(static_cast<int>(usual.up())));
}

void MenusPage::connectParts()
{
    connect(compare_, &QPushButton::clicked, this, &MenusPage::compareRequested);
    connect(stop_, &QPushButton::clicked, this, &MenusPage::stopRequested);
    connect(fill_, &QPushButton::toggled, this, &MenusPage::fillRequested);
    connect(take_, &QPushButton::clicked, this, [this] {
        if (chosen_) {
            Q_EMIT taken(static_cast<int>(*chosen_));
        }
    });
    for (QComboBox* box : {across_, up_}) {
        connect(box, &QComboBox::currentIndexChanged, this, [this] {
            if (comparison_ != nullptr) {
                comparison_->setFigures(static_cast<menus::Figure>(across_->currentData().toInt()),
                                        static_cast<menus::Figure>(up_->currentData().toInt()));
                refresh(now_);
            }
        });
    }
    connect(chart_, &MenuChart::chosen, this,
            [this](int menu) { choose(static_cast<std::size_t>(menu)); });
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& row) {
                if (row.isValid() && !isChoosing_) {
                    choose(model_->menuAt(row.row()));
                }
            });
    connect(table_, &QTableView::activated, this, [this] {
        if (take_->isEnabled()) {
            take_->click();
        }
    });
}

void MenusPage::show(MenuComparison* comparison, std::optional<std::size_t> now)
{
    comparison_ = comparison;
    chosen_.reset();
    if (comparison_ != nullptr) {
        comparison_->setFigures(static_cast<menus::Figure>(across_->currentData().toInt()),
                                static_cast<menus::Figure>(up_->currentData().toInt()));
    }
    model_->show(comparison_);
    setShown(comparison_ != nullptr);
    isStale_ = false;
    now_ = now;
    constexpr int nameWidth = 238; // px, of the first column to begin with
    table_->resizeColumnsToContents();
    table_->setColumnWidth(0, static_cast<int>(nameWidth * theme_.textScale));
    refresh(now);
    if (now) {
        choose(now);
    }
}

void MenusPage::refresh(std::optional<std::size_t> now)
{
    now_ = now;
    if (comparison_ == nullptr) {
        return;
    }
    model_->refresh();
    showChart();
    showDetail();
}

void MenusPage::setNow(std::optional<std::size_t> now)
{
    if (now != now_ && comparison_ != nullptr) {
        now_ = now;
        showChart();
        showDetail();
    }
}

void MenusPage::showChart()
{
    chart_->show(comparison_->points(), comparison_->across(), comparison_->up(), now_);
    chart_->choose(chosen_);
    chart_->setAccessibleDescription(
        tr("%1 Left and right go from menu to menu, up and down along those that nothing beats.")
            .arg(comparison_->summary()));
}

void MenusPage::choose(std::optional<std::size_t> menu)
{
    chosen_ = menu;
    const int row = menu ? model_->rowOf(*menu) : -1;
    if (row >= 0 && table_->currentIndex().row() != row) {
        isChoosing_ = true;
        table_->selectRow(row);
        table_->scrollTo(model_->index(row, 0));
        isChoosing_ = false;
    }
    chart_->choose(chosen_);
    showDetail();
}

void MenusPage::showDetail()
{
    const bool isThere = comparison_ != nullptr && chosen_;
    const QString words = isThere ? comparison_->detailOf(*chosen_) : QString();
    if (detail_->toPlainText() != words) {
        detail_->setPlainText(words);
    }
    take_->setEnabled(isThere && !isStale_);
    if (chosen_ && chosen_ == now_) {
        take_->setText(tr("&Take this menu (it is cooked now)"));
    } else {
        take_->setText(tr("&Take this menu"));
    }
}

void MenusPage::setNote(const QString& note)
{
    note_->setText(note);
    note_->setVisible(!note.isEmpty());
}

void MenusPage::setPossible(bool isPossible)
{
    compare_->setEnabled(isPossible);
}

void MenusPage::setRunning(bool isRunning, int done, int toDo)
{
    stop_->setVisible(isRunning);
    progress_->setVisible(isRunning);
    progress_->setRange(0, toDo);
    progress_->setValue(done);
    compare_->setText(comparison_ != nullptr ? tr("&Compare again") : tr("&Compare menus"));
    compare_->setVisible(!isRunning);
}

void MenusPage::setStale(bool isStale)
{
    isStale_ = isStale;
    showDetail();
}

void MenusPage::setShown(bool hasMenus)
{
    for (QWidget* part : std::initializer_list<QWidget*>{fill_, acrossLabel_, across_, upLabel_,
                                                         up_, chart_, table_, detail_, take_}) {
        part->setVisible(hasMenus);
    }
}

void MenusPage::setTheme(const Theme& theme)
{
    theme_ = theme;
    heading_->setFont(theme.font(TypeRole::Heading));
    note_->setFont(theme.font(TypeRole::Control));
    detail_->setFont(theme.font(TypeRole::Label));
    table_->setFont(theme.font(TypeRole::Label));
    table_->horizontalHeader()->setFont(theme.font(TypeRole::SecondaryBold));
    // Two lines: the name of a menu of four courses seldom goes into one beside the timeline.
    constexpr int lines = 2;
    constexpr int between = 8; // px
    table_->verticalHeader()->setDefaultSectionSize(
        lines * QFontMetrics(theme.font(TypeRole::Label)).lineSpacing() + between);
    for (QPushButton* each : {compare_, stop_, fill_}) {
        keepRoomForBold(*each, theme);
    }
    chart_->setTheme(theme);
}

void MenusPage::hideEvent(QHideEvent* event)
{
    QWidget::hideEvent(event);
    if (!event->spontaneous()) {
        fill_->setChecked(false); // the next page has the room that is its own
    }
}

} // namespace suppertide::ui
