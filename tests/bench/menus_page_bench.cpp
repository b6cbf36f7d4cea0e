// What ten thousand compared menus cost on the interface thread: showing them, one more batch of
// results with the paint that follows, sorting by a figure, and choosing another.
#include <QApplication>
#include <QTableView>

#include <benchmark/benchmark.h>

#include "tests/bench/window_bench.h"
#include "tests/support/for_each_seed.h"
#include "ui/models/menu_comparison.h"
#include "ui/pages/menus/menus_page.h"
#include "ui/theme/theme.h"

using namespace suppertide;     // NOLINT(google-build-using-namespace): a program
using namespace suppertide::ui; // NOLINT(google-build-using-namespace)

namespace {

constexpr std::size_t courses = 4;
constexpr std::size_t alternatives = 10; // of each: 10,000 menus

PlanInput input()
{
    Occasion occasion;
    for (std::size_t i = 0; i < courses; ++i) {
        Course& course = occasion.courses.emplace_back();
        course.id = CourseId{"course-" + std::to_string(i)};
        for (std::size_t each = 0; each < alternatives; ++each) {
            course.alternatives.push_back({AlternativeId{"alternative-" + std::to_string(each)},
                                           "Braised shoulder " + std::to_string(each), false});
        }
    }
    PlanInput result;
    result.occasion = std::make_shared<const Occasion>(std::move(occasion));
    return result;
}

std::vector<menus::ComparedMenu> anyMenus(test::Random& random)
{
    std::vector<menus::ComparedMenu> result;
    std::size_t count = 1;
    for (std::size_t i = 0; i < courses; ++i) {
        count *= alternatives;
    }
    for (std::size_t number = 0; number < count; ++number) {
        menus::ComparedMenu menu;
        menu.number = number;
        std::size_t rest = number;
        for (std::size_t i = 0; i < courses; ++i) {
            menu.leading.emplace_back("alternative-" + std::to_string(rest % alternatives));
            rest /= alternatives;
        }
        menu.cookable = random.oneIn(8) ? menus::Cookable::NotSettled : menus::Cookable::Yes;
        menus::EveningFigures figures;
        figures.handsOn = Minutes{random.between(200, 500)};
        figures.lastHour = Minutes{random.between(20, 90)};
        figures.energy.wattHours = random.between(2'000, 9'000);
        menu.evening = figures;
        menu.price = random.between(4'000, 15'000);
        result.push_back(std::move(menu));
    }
    return result;
}

struct Shown
{
    test::Random random{1};
    std::vector<menus::ComparedMenu> menus = anyMenus(random);
    MenuComparison comparison{input(), nullptr, menus};
    MenusPage page{makeTheme(Appearance::Light)};

    Shown()
    {
        page.resize(1400, 900);
        page.show(&comparison, std::nullopt);
        page.QWidget::show();
        QCoreApplication::processEvents();
    }
    QTableView& table() { return *page.findChild<QTableView*>(QStringLiteral("menuTable")); }
};

void showing(benchmark::State& state)
{
    Shown shown;
    for (auto step : state) {
        shown.page.show(&shown.comparison, std::nullopt);
        QCoreApplication::processEvents();
    }
}
BENCHMARK(showing)->Unit(benchmark::kMillisecond);

void aBatchOfResults(benchmark::State& state)
{
    Shown shown;
    std::size_t next = 0;
    for (auto step : state) {
        for (int i = 0; i < 20; ++i) {
            menus::ComparedMenu& menu = shown.menus[next++ % shown.menus.size()];
            menu.evening->handsOn = Minutes{shown.random.between(200, 500)};
            shown.comparison.update(menu);
        }
        shown.page.refresh(std::nullopt);
        QCoreApplication::processEvents();
    }
}
BENCHMARK(aBatchOfResults)->Unit(benchmark::kMillisecond);

void sortingByAFigure(benchmark::State& state)
{
    Shown shown;
    int column = 3;
    for (auto step : state) {
        column = column == 3 ? 4 : 3;
        shown.table().sortByColumn(column, Qt::AscendingOrder);
        QCoreApplication::processEvents();
    }
}
BENCHMARK(sortingByAFigure)->Unit(benchmark::kMillisecond);

void paintingTheChartAnew(benchmark::State& state)
{
    Shown shown;
    bool isWide = false;
    for (auto step : state) {
        isWide = !isWide;
        shown.page.resize(isWide ? 1401 : 1400, 900);
        QCoreApplication::processEvents();
    }
}
BENCHMARK(paintingTheChartAnew)->Unit(benchmark::kMillisecond);

} // namespace

int main(int argc, char** argv)
{
    return suppertide::bench::runInWindow(argc, argv);
}
