// MenuComparison: what the page of menus knows: the menus compared so far, the two figures of the
// chart, which menus nothing beats in both, and what is to be said of one. Pure but for words.
#pragma once

#include <QString>
#include <QStringList>

#include <memory>
#include <optional>
#include <vector>

#include "core/menus/figure.h"
#include "core/menus/menu_table.h"
#include "ui/models/edit.h"

namespace suppertide::ui {

/// A menu in the chart.
struct MenuPoint
{
    std::size_t menu = 0;
    double x = 0;
    double y = 0;
    bool isUnbeaten = false;

    friend bool operator==(const MenuPoint&, const MenuPoint&) = default;
};

class MenuComparison
{
public:
    MenuComparison() = default;
    MenuComparison(PlanInput input, std::shared_ptr<const menus::MenuTable> table,
                   std::vector<menus::ComparedMenu> menus);

    /// More is known of one.
    void update(const menus::ComparedMenu& menu);
    void setFigures(menus::Figure across, menus::Figure up);
    [[nodiscard]] menus::Figure across() const { return across_; }
    [[nodiscard]] menus::Figure up() const { return up_; }

    [[nodiscard]] bool isEmpty() const { return menus_.empty(); }
    [[nodiscard]] const std::vector<menus::ComparedMenu>& menus() const { return menus_; }
    [[nodiscard]] const Occasion& occasion() const { return *input_.occasion; }
    /// Those of which both figures are known, in order of the figure across.
    [[nodiscard]] const std::vector<MenuPoint>& points() const;
    /// The menu that leads each course now; absent if there is none such.
    [[nodiscard]] std::optional<std::size_t> menuNow(const Occasion& occasion) const;

    [[nodiscard]] QString nameOf(std::size_t menu) const;
    /// All there is to say of one: who gets what, what it takes, what is against it.
    [[nodiscard]] QString detailOf(std::size_t menu) const;
    /// "81 menus: 69 can be cooked here, 12 cannot, 0 not settled."
    [[nodiscard]] QString counts() const;
    /// The same, and which menus nothing beats.
    [[nodiscard]] QString summary() const;

    /// Whether what was compared is not as it was then; who gets how much now is no matter, for
    /// each menu has portions of its own.
    [[nodiscard]] bool isStale(const LibraryState& library) const;
    /// The library with the menu as the open occasion's, laid out as it was planned if it was.
    /// Absent if it is stale.
    [[nodiscard]] std::optional<Edit> take(const LibraryState& library, std::size_t menu) const;

private:
    [[nodiscard]] QStringList helpingsOf(std::size_t menu) const;

    PlanInput input_;
    std::shared_ptr<const menus::MenuTable> table_;
    std::vector<menus::ComparedMenu> menus_;
    menus::Figure across_ = menus::Figure::HandsOn;
    menus::Figure up_ = menus::Figure::LastHour;
    mutable std::optional<std::vector<MenuPoint>> points_; // of what is known now
};

/// "hands-on": a figure's name as it stands in lists of the window; translated.
[[nodiscard]] QString figureName(menus::Figure figure);

} // namespace suppertide::ui
