#include "ui/window/help_texts.h"

#include <QCoreApplication>

namespace suppertide::ui {

namespace {

QString tr(const char* text)
{
    return QCoreApplication::translate("HelpTexts", text);
}

} // namespace

QString tourText()
{
    return tr(
        "1. The timeline in the middle has a lane for each oven, burner, appliance, cook and cold "
        "place. Each course is a line through all of them.\n\n"
        "2. At the foot is what collides. A click goes there; the same number stands at both "
        "places. Beside it come ways out, each tried before it is shown: Enter or Take it makes "
        "the change.\n\n"
        "3. Drag a step along its lane: what is tied to it moves along, and the clashes show as "
        "it moves. Esc leaves it, Ctrl+Z takes it back. By keyboard: arrows choose a step, "
        "Alt+arrows move it, P pins it, W says why it stands where it does.\n\n"
        "4. Drag a variant from the repertoire onto the timeline, or choose it and press Enter, "
        "to put it on the menu.\n\n"
        "5. Make plan looks for the best plan. What it finds is offered under the timeline, its "
        "figures beside those of your plan: Ctrl+T takes it, Esc leaves it. When a step is let go "
        "and something collides, the program offers to plan the rest again, moving as little as "
        "it can; what you pin stays. Fresh or calm, few oven changes and more are under "
        "Preferences.\n\n"
        "6. The page Per-hour plan prints what each cook does when.\n\n"
        "7. On the night, the page of that name says what to do now and next. Say what is started, "
        "done or late: the rest is planned anew, moving as little as it can. Before the day it can "
        "be rehearsed.\n\n"
        "8. The page Temperatures shows how warm each food that is followed is through the whole "
        "plan, against the limits of the rule book that the occasion goes by, and how warm each "
        "oven is. A double click on a broken rule at the foot opens it at that food.\n\n"
        "9. The page Shopping says what to buy on which trip, what for, and what will be left "
        "over. "
        "Space ticks what is bought. What is at home, and what packs cost, is noted there too.\n\n"
        "10. Where courses have alternatives, the page Menus compares all the menus that they "
        "make: "
        "which can be cooked here, whom they suit, what each would do to the evening. One is taken "
        "by a button and taken back by Undo. At table shows who gets what, shares portions out, "
        "and prints place cards.");
}

QString cautionsText()
{
    return tr(
        "Suppertide plans; it does not taste, measure or watch.\n\n"
        "Its times are those of the recipes and of the cook. Its allergen warnings are only as "
        "good as what the recipes say of their ingredients: read the labels.\n\n"
        "Temperatures of foods and ovens are computed, never measured. That no rule known to the "
        "program is broken does not say that a food is fit to eat.\n\n"
        "Check with a thermometer that food is hot enough, cool it quickly, and keep it cold. Do "
        "not leave hot oil, caramel or a flame alone.\n\n"
        "Local food-safety codes, and the advice of those licensed to give it, prevail over "
        "anything shown here.");
}

QString aboutText()
{
    return tr("Suppertide %1\n\nPlans a dinner of several courses, from the menu to the minute of "
              "serving.\n\nMIT licence. Built with Qt, SQLite, spdlog, fmt, date and "
              "nlohmann/json.")
        .arg(QCoreApplication::applicationVersion());
}

} // namespace suppertide::ui
