// MenuTable: all menus of an occasion by number, each with its mixes. Mixes are worked out once for
// each course and alternative; a menu is a choice of one of them for each course. Used by compare
// and by whatever takes a menu.
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "core/base/result.h"
#include "core/menus/compared_menu.h"

namespace suppertide::menus {

inline constexpr std::size_t mostMenus = 10'000;

class MenuTable
{
public:
    /// Failure: an occasion with faults, or with more than `mostMenus` menus; both are told in
    /// words for the cook.
    [[nodiscard]] static Result<MenuTable> make(const PlanInput& input);

    [[nodiscard]] std::size_t size() const { return size_; }
    /// By course, in order; each with the mix of every alternative that may lead it.
    [[nodiscard]] const std::vector<std::vector<CourseMix>>& mixes() const { return mixes_; }
    /// The mixes of a menu, by course. The last course's alternatives change fastest.
    [[nodiscard]] std::vector<const CourseMix*> menu(std::size_t number) const;
    /// The occasion with that menu.
    [[nodiscard]] Occasion occasion(const Occasion& occasion, std::size_t number) const;
    /// What needs no plan: whom it suits, what is repeated.
    [[nodiscard]] ComparedMenu unplanned(std::size_t number) const;
    /// The menu of these leading alternatives; absent if there is none.
    [[nodiscard]] std::optional<std::size_t> find(const std::vector<AlternativeId>& leading) const;

private:
    MenuTable() = default;

    std::vector<std::vector<CourseMix>> mixes_;
    std::vector<std::vector<std::vector<std::string>>> mains_; // by course and mix
    std::size_t size_ = 0;
};

} // namespace suppertide::menus
