#include "ui/models/menu_comparison.h"

#include <QCoreApplication>

#include <algorithm>

#include "core/wording/advice_wording.h"
#include "core/wording/menu_words.h"
#include "ui/models/plan_basis.h"

namespace suppertide::ui {

using namespace Qt::StringLiterals;

namespace {

using menus::ComparedMenu;
using menus::Cookable;
using menus::Figure;

struct Words
{
    Q_DECLARE_TR_FUNCTIONS(MenuComparison)
};

QString text(std::string_view words)
{
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

/// All of an occasion that menus depend on.
Occasion withoutPortions(Occasion occasion)
{
    for (Course& course : occasion.courses) {
        for (Dish& dish : course.dishes) {
            dish.mix.clear();
        }
    }
    occasion.name.clear();
    occasion.note.clear();
    return occasion;
}

QString recipeName(const PlanInput& input, const Dish& dish)
{
    const auto recipe = input.recipes.find(dish.recipe);
    return text(recipe == input.recipes.end() ? dish.recipe.text() : recipe->second->name);
}

QString variantName(const PlanInput& input, const Dish& dish, const VariantId& variant)
{
    const auto recipe = input.recipes.find(dish.recipe);
    if (recipe != input.recipes.end()) {
        const Variant* found = findIn(recipe->second->variants, variant);
        if (found != nullptr) {
            return text(found->name);
        }
    }
    return text(variant.text());
}

} // namespace

QString figureName(Figure figure)
{
    return QCoreApplication::translate("MenuFigures", std::string(headingOf(figure)).c_str());
}

MenuComparison::MenuComparison(PlanInput input, std::shared_ptr<const menus::MenuTable> table,
                               std::vector<ComparedMenu> menus)
    : input_(std::move(input)), table_(std::move(table)), menus_(std::move(menus))
{}

void MenuComparison::update(const ComparedMenu& menu)
{
    if (menu.number < menus_.size()) {
        menus_[menu.number] = menu;
        points_.reset();
    }
}

void MenuComparison::setFigures(Figure across, Figure up)
{
    across_ = across;
    up_ = up;
    points_.reset();
}

const std::vector<MenuPoint>& MenuComparison::points() const
{
    if (points_) {
        return *points_;
    }
    const auto front = menus::unbeaten(menus_, across_, up_);
    std::vector<bool> isUnbeaten(menus_.size());
    for (const std::size_t menu : front) {
        isUnbeaten[menu] = true;
    }
    std::vector<MenuPoint> points;
    for (std::size_t i = 0; i < menus_.size(); ++i) {
        const auto x = menus::valueOf(menus_[i], across_);
        const auto y = menus::valueOf(menus_[i], up_);
        if (x && y && menus_[i].cookable == Cookable::Yes) {
            points.push_back({i, static_cast<double>(*x), static_cast<double>(*y), isUnbeaten[i]});
        }
    }
    std::ranges::stable_sort(points, {}, &MenuPoint::x);
    return points_.emplace(std::move(points));
}

std::optional<std::size_t> MenuComparison::menuNow(const Occasion& occasion) const
{
    if (!table_) {
        return std::nullopt;
    }
    std::vector<AlternativeId> leading;
    for (const Course& course : occasion.courses) {
        leading.push_back(menus::leadingNow(course));
    }
    return table_->find(leading);
}

QString MenuComparison::nameOf(std::size_t menu) const
{
    return text(menuName(occasion(), menus_[menu]));
}

QStringList MenuComparison::helpingsOf(std::size_t menu) const
{
    QStringList lines;
    const auto mixes = table_->menu(menu);
    for (std::size_t i = 0; i < mixes.size(); ++i) {
        QStringList dishes;
        for (const Dish& dish : mixes[i]->dishes) {
            for (const MixEntry& entry : dish.mix) {
                dishes.push_back(Words::tr("%1 %2 (%3)")
                                     .arg(text(entry.portions.text()), recipeName(input_, dish),
                                          variantName(input_, dish, entry.variant)));
            }
        }
        lines.push_back(
            Words::tr("%1: %2").arg(text(occasion().courses[i].name), dishes.join(u", "_s)));
    }
    return lines;
}

QString MenuComparison::detailOf(std::size_t menu) const
{
    const ComparedMenu& compared = menus_[menu];
    QStringList lines = helpingsOf(menu);
    lines.push_back(Words::tr("Suits: %1.").arg(text(whomItSuits(occasion(), compared))));
    std::map<RecipeId, const Recipe*> recipes;
    for (const auto& [id, recipe] : input_.recipes) {
        recipes.emplace(id, recipe.get());
    }
    const auto mixes = table_->menu(menu);
    for (std::size_t i = 0; i < mixes.size(); ++i) {
        for (const menus::NotServed& guest : mixes[i]->notServed) {
            lines.push_back(
                text(notServedSentence(occasion(), occasion().courses[i], recipes, guest)));
        }
    }
    switch (compared.cookable) {
    case Cookable::Yes:
        break;
    case Cookable::No:
        lines.push_back(Words::tr("It cannot be cooked in this kitchen as it stands. Take it and "
                                  "choose Make plan to see why, and ways out."));
        break;
    case Cookable::NotSettled:
        lines.push_back(Words::tr("Whether it can be cooked is not settled yet."));
        break;
    }
    if (compared.evening && compared.evening->unsafe > 0) {
        lines.push_back(Words::tr("Its plan breaks rules of food safety or has an allergen at a "
                                  "place (%1): see its clashes once it is taken.")
                            .arg(compared.evening->unsafe));
    }
    if (!compared.repeated.empty()) {
        lines.push_back(
            Words::tr("More than once: %1.").arg(text(repeatedText(occasion(), compared))));
    }
    if (!compared.leftUsed.empty()) {
        lines.push_back(Words::tr("Used instead of bought: %1.").arg(text(leftUsedText(compared))));
    }
    for (const Figure figure : menus::allFigures) {
        const auto value = menus::valueOf(compared, figure);
        if (value && figure != Figure::Repeated) {
            lines.push_back(
                Words::tr("%1: %2").arg(figureName(figure), text(figureText(figure, value))));
        }
    }
    return lines.join(u'\n');
}

QString MenuComparison::counts() const
{
    const auto count = [this](Cookable cookable) {
        return static_cast<int>(std::ranges::count(menus_, cookable, &ComparedMenu::cookable));
    };
    return Words::tr("%1 menus: %2 can be cooked here, %3 cannot, %4 not settled.")
        .arg(menus_.size())
        .arg(count(Cookable::Yes))
        .arg(count(Cookable::No))
        .arg(count(Cookable::NotSettled));
}

QString MenuComparison::summary() const
{
    QStringList unbeaten;
    for (const MenuPoint& point : points()) {
        if (point.isUnbeaten) {
            unbeaten.push_back(nameOf(point.menu));
        }
    }
    return unbeaten.isEmpty() ? counts()
                              : Words::tr("%1 Nothing beats in both figures: %2.")
                                    .arg(counts(), unbeaten.join(u"; "_s));
}

bool MenuComparison::isStale(const LibraryState& library) const
{
    const auto now = planInputOf(library);
    return !now || !input_.occasion || *now->kitchen != *input_.kitchen ||
           library.recipes != input_.recipes ||
           withoutPortions(*now->occasion) != withoutPortions(*input_.occasion);
}

std::optional<Edit> MenuComparison::take(const LibraryState& library, std::size_t menu) const
{
    if (menu >= menus_.size() || isStale(library)) {
        return std::nullopt;
    }
    LibraryState next = withOccasion(
        library, [&](Occasion& occasion) { occasion = table_->occasion(occasion, menu); });
    if (menus_[menu].layout) {
        Layout layout = *menus_[menu].layout;
        layout.plannedFrom = planBasis(next);
        next = withLayout(next, std::move(layout));
    }
    return Edit{std::move(next), Words::tr("Take menu: %1").arg(nameOf(menu)), {}};
}

} // namespace suppertide::ui
