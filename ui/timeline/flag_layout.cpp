#include "ui/timeline/flag_layout.h"

#include <algorithm>
#include <array>

namespace suppertide::ui {

namespace {

constexpr double tail = 11;   // swallow tail and the room around the texts
constexpr double textGap = 3; // between name and time
constexpr double between = 0; // between two flags of a level

double widthOf(const FlagNeed& need, bool showsName, bool showsTime)
{
    double width = flagNumberWidth;
    if (showsName || showsTime) {
        width += tail;
    }
    width += showsName ? need.nameWidth : 0;
    width += showsTime ? need.timeWidth : 0;
    return width + (showsName && showsTime ? textGap : 0);
}

} // namespace

std::vector<Flag> layoutFlags(std::span<const FlagNeed> needs, double leftEdge)
{
    struct Form
    {
        bool showsName;
        bool showsTime;
    };
    constexpr std::array forms{Form{true, true}, Form{false, true}, Form{false, false}};
    std::vector<Flag> flags;
    std::array<double, 2> taken{leftEdge, leftEdge};
    for (std::size_t i = 0; i < needs.size(); ++i) {
        const std::size_t level = i % 2;
        Flag flag;
        flag.level = static_cast<int>(level);
        flag.right = needs[i].mast;
        for (const Form& form : forms) {
            flag.showsName = form.showsName;
            flag.showsTime = form.showsTime;
            flag.left = flag.right - widthOf(needs[i], form.showsName, form.showsTime);
            if (flag.left >= taken[level]) {
                break;
            }
        }
        taken[level] = std::max(taken[level], flag.right + between);
        flags.push_back(flag);
    }
    return flags;
}

} // namespace suppertide::ui
