#include "ui/models/plan_basis.h"

#include <QCoreApplication>

#include <array>
#include <charconv>
#include <cstdint>

#include "core/exchange/exchange.h"

namespace suppertide::ui {

namespace {

constexpr const char* coursePrefix = "course/";
constexpr const char* recipePrefix = "recipe/";

QString tr(const char* text)
{
    return QCoreApplication::translate("PlanBasis", text);
}

/// FNV-1a of 64 bits, in sixteen hexadecimal digits: kept in files, so the same on every machine.
std::string printOf(const std::string& text)
{
    std::uint64_t hash = 14695981039346656037U;
    for (const char c : text) {
        hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211U;
    }
    std::array<char, 16> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), hash, 16);
    return {digits.data(), end.ptr};
}

/// The exchange format leaves out what is at its default, so that a part's print stays the same
/// when later versions know more.
template <typename Fill>
std::string printOfPart(const Fill& fill)
{
    OccasionRecord part;
    fill(part.occasion);
    return printOf(writeOccasion(part));
}

QString wordsFor(const std::string& part, const LibraryState& library, const Occasion& occasion)
{
    const auto rest = [&](const char* prefix) {
        return part.substr(std::char_traits<char>::length(prefix));
    };
    if (part.starts_with(coursePrefix)) {
        for (const Course& course : occasion.courses) {
            if (course.id.text() == rest(coursePrefix)) {
                return tr("the course “%1”").arg(QString::fromStdString(course.name));
            }
        }
        return tr("the courses");
    }
    if (part.starts_with(recipePrefix)) {
        const auto recipe = library.recipes.find(RecipeId{rest(recipePrefix)});
        return recipe == library.recipes.end()
                   ? tr("the recipes")
                   : tr("the recipe “%1”").arg(QString::fromStdString(recipe->second->name));
    }
    return part == "guests"        ? tr("the guests")
           : part == "jobs"        ? tr("the house jobs and trips")
           : part == "hours"       ? tr("the cooks' hours")
           : part == "durations"   ? tr("the durations to plan with")
           : part == "preferences" ? tr("your preferences")
                                   : tr("the kitchen");
}

} // namespace

std::map<std::string, std::string> planBasis(const LibraryState& library)
{
    const auto input = planInputOf(library);
    expects(input.has_value(), "an open occasion with a kitchen");
    const Occasion& now = *input->occasion;
    std::map<std::string, std::string> basis;
    basis["guests"] = printOfPart([&](Occasion& part) { part.guests = now.guests; });
    for (const Course& course : now.courses) {
        basis[coursePrefix + course.id.text()] =
            printOfPart([&](Occasion& part) { part.courses = {course}; });
    }
    basis["jobs"] = printOfPart([&](Occasion& part) {
        part.houseJobs = now.houseJobs;
        part.trips = now.trips;
    });
    basis["hours"] = printOfPart([&](Occasion& part) {
        part.hours = now.hours;
        part.zone = now.zone;
    });
    basis["durations"] =
        printOfPart([&](Occasion& part) { part.preferences.caution = now.preferences.caution; });
    basis["preferences"] = printOfPart([&](Occasion& part) {
        part.preferences = now.preferences;
        part.preferences.caution = CautionLevel::Likely;
    });
    basis["kitchen"] = printOf(writeKitchen(*input->kitchen));
    for (const auto& [id, recipe] : input->recipes) {
        basis[recipePrefix + id.text()] = printOf(writeRecipe(*recipe));
    }
    return basis;
}

QStringList changedSincePlanned(const LibraryState& library)
{
    const OccasionPtr record = openOccasion(library);
    if (!record || record->layout.plannedFrom.empty() || !openKitchen(library)) {
        return {};
    }
    const std::map<std::string, std::string>& was = record->layout.plannedFrom;
    const std::map<std::string, std::string> is = planBasis(library);
    QStringList changed;
    const auto note = [&](const std::string& part) {
        const QString words = wordsFor(part, library, record->occasion);
        if (!changed.contains(words)) {
            changed.push_back(words);
        }
    };
    for (const auto& [part, print] : is) {
        const auto before = was.find(part);
        if (before == was.end() || before->second != print) {
            note(part);
        }
    }
    for (const auto& [part, print] : was) {
        // A recipe that is not cooked any more went with its course's dishes, which are named.
        if (!is.contains(part) && !part.starts_with(recipePrefix)) {
            note(part);
        }
    }
    return changed;
}

QString staleText(const QStringList& changed)
{
    if (changed.isEmpty()) {
        return {};
    }
    constexpr qsizetype named = 2;
    QString list = changed.front();
    if (changed.size() > named) {
        list = tr("%1, %2 and more").arg(changed[0], changed[1]);
    } else if (changed.size() == named) {
        list = tr("%1 and %2").arg(changed[0], changed[1]);
    }
    return tr("Out of date: planned before %1 changed.").arg(list);
}

} // namespace suppertide::ui
