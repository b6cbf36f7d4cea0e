// The rows of the page "Menu and guests", and what can be done with each.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "core/menus/by_product_offers.h"
#include "core/wording/diet_words.h"
#include "core/wording/wording.h"
#include "ui/models/menu_forms.h"
#include "ui/models/menu_outline.h"
#include "ui/models/occasion_edits.h"
#include "ui/models/place_model.h"

namespace suppertide::ui {

namespace {

QString text(const std::string& words)
{
    return QString::fromStdString(words);
}

QString portionsText(const Portions& portions)
{
    return portions == Portions{1} ? MenuOutline::tr("1 portion")
                                   : MenuOutline::tr("%1 portions").arg(text(fieldText(portions)));
}

/// Rows of one occasion, built in order.
class RowBuilder
{
public:
    RowBuilder(const LibraryState& library, const Occasion& occasion, const DishLooks& looks)
        : library_(library), occasion_(occasion), looks_(looks)
    {}

    std::vector<OutlineRow> build()
    {
        const auto date = dateOf(occasion_);
        add(RowPath("occasion"), 0, text(occasion_.name), date ? text(dayText(*date)) : QString());
        heading("courses", MenuOutline::tr("Courses"));
        int number = 0;
        for (const Course& course : occasion_.courses) {
            addCourse(course, ++number);
        }
        heading("guests", MenuOutline::tr("Guests"),
                QString::number(static_cast<int>(occasion_.guests.size())));
        for (const Guest& guest : occasion_.guests) {
            add(RowPath().with("guest", guest.id.text()), 1, text(guest.name),
                text(fmt::format("{}", fmt::join(needsOf(guest), ", "))))
                .fault = text(dietDoubtSentence(guest));
        }
        heading("jobs", MenuOutline::tr("House jobs"));
        for (const HouseJob& job : occasion_.houseJobs) {
            add(RowPath().with("job", job.id.text()), 1, text(job.name),
                text(durationText(job.duration)));
        }
        heading("trips", MenuOutline::tr("Shopping trips"));
        for (const ShoppingTrip& trip : occasion_.trips) {
            add(RowPath().with("trip", trip.id.text()), 1, text(trip.name),
                text(durationText(trip.duration)));
        }
        return std::move(rows_);
    }

private:
    OutlineRow& add(const RowPath& path, int depth, const QString& title,
                    const QString& detail = {})
    {
        OutlineRow row;
        row.id = path.text();
        row.depth = depth;
        row.title = title;
        row.detail = detail;
        rows_.push_back(std::move(row));
        return rows_.back();
    }
    void heading(const char* id, const QString& title, const QString& detail = {})
    {
        add(RowPath(id), 0, title, detail).kind = RowKind::Heading;
    }
    void addCourse(const Course& course, int number)
    {
        const RowPath path = RowPath().with("course", course.id.text());
        add(path, 1, MenuOutline::tr("%1 %2").arg(number).arg(text(course.name)),
            text(toIso(course.serving.clock)));
        const bool hasChoice = course.alternatives.size() > 1;
        if (!hasChoice) {
            for (const Dish& dish : course.dishes) {
                addDish(path, dish, 2);
            }
            return;
        }
        for (const Alternative& alternative : course.alternatives) {
            add(path.with("alternative", alternative.id.text()), 2, text(alternative.name),
                MenuOutline::tr("alternative"));
            for (const Dish& dish : course.dishes) {
                if (dish.alternative == alternative.id) {
                    addDish(path, dish, 3);
                }
            }
        }
    }
    void addDish(const RowPath& course, const Dish& dish, int depth)
    {
        const RowPath path = course.with("dish", dish.id.text());
        const Portions portions = portionsOf(dish);
        OutlineRow& row =
            add(path, depth, text(menu::dishName(library_, dish)),
                portions > Portions{0} ? portionsText(portions) : MenuOutline::tr("not cooked"));
        row.look = looks_.find(dish.id);
        if (!library_.recipes.contains(dish.recipe)) {
            row.fault = MenuOutline::tr("Its recipe is not in this library.");
        }
        for (const MixEntry& mix : dish.mix) {
            add(path.with("mix", mix.variant.text()), depth + 1,
                text(menu::variantName(library_, dish, mix.variant)), text(fieldText(mix.portions)))
                .fault = tooFew(mix);
        }
    }
    /// Where those named for it would eat more than is made of it, in a sentence.
    [[nodiscard]] QString tooFew(const MixEntry& mix) const
    {
        Portions eaten{0};
        for (const Guest& guest : occasion_.guests) {
            if (std::ranges::find(mix.guests, guest.id) != mix.guests.end()) {
                eaten = eaten + guest.portion;
            }
        }
        return eaten > mix.portions
                   ? MenuOutline::tr(
                         "Those who are ticked for it eat %1, and %2 is made: make more "
                         "of it, or tick fewer.")
                         .arg(text(fieldText(eaten)), text(fieldText(mix.portions)))
                   : QString();
    }

    const LibraryState& library_;
    const Occasion& occasion_;
    const DishLooks& looks_;
    std::vector<OutlineRow> rows_;
};

constexpr const char* addCourseKey = "add-course";
constexpr const char* addAlternativeKey = "add-alternative";
constexpr const char* addGuestKey = "add-guest";
constexpr const char* shareOutKey = "share-out";
constexpr const char* useLeftKey = "use-left/"; // and the line that could take it
constexpr const char* addJobKey = "add-job";
constexpr const char* addTripKey = "add-trip";
constexpr const char* removeKey = "remove";

Edit withNewGuest(const LibraryState& library)
{
    const QString text = MenuOutline::tr("Add guest");
    std::string id;
    LibraryState next = withOccasion(library, [&](Occasion& occasion) {
        Guest guest;
        guest.id = freshIdIn(occasion.guests, "guest");
        guest.name = MenuOutline::tr("Guest %1").arg(occasion.guests.size() + 1).toStdString();
        id = guest.id.text();
        occasion.guests.push_back(std::move(guest));
    });
    return {std::move(next), text, RowPath().with("guest", id).text()};
}

/// The whole day of the first course, up to its serving.
template <typename Job>
void giveWindow(Job& job, const Occasion& occasion, const CivilDate& today)
{
    const CivilTime serving =
        occasion.courses.empty() ? CivilTime{today, {19, 30}} : occasion.courses.front().serving;
    job.earliest = {serving.date, {8, 0}};
    job.latest = std::max(serving, CivilTime{serving.date, {9, 0}});
}

Edit withNewJob(const LibraryState& library, const CivilDate& today)
{
    std::string id;
    LibraryState next = withOccasion(library, [&](Occasion& occasion) {
        HouseJob job;
        job.name = MenuOutline::tr("Lay the table").toStdString();
        job.id = freshIdIn(occasion.houseJobs, job.name);
        giveWindow(job, occasion, today);
        id = job.id.text();
        occasion.houseJobs.push_back(std::move(job));
    });
    return {std::move(next), MenuOutline::tr("Add house job"), RowPath().with("job", id).text()};
}

Edit withNewTrip(const LibraryState& library, const CivilDate& today)
{
    std::string id;
    LibraryState next = withOccasion(library, [&](Occasion& occasion) {
        ShoppingTrip trip;
        trip.name = MenuOutline::tr("Shopping").toStdString();
        trip.id = freshIdIn(occasion.trips, trip.name);
        giveWindow(trip, occasion, today);
        id = trip.id.text();
        occasion.trips.push_back(std::move(trip));
    });
    return {std::move(next), MenuOutline::tr("Add trip"), RowPath().with("trip", id).text()};
}

Edit withNewAlternative(const LibraryState& library, const CourseId& course)
{
    std::string id;
    LibraryState next = withOccasion(library, [&](Occasion& occasion) {
        Course* there = findIn(occasion.courses, course);
        Alternative alternative;
        alternative.name = MenuOutline::tr("Another").toStdString();
        alternative.id = freshIdIn(there->alternatives, alternative.name);
        id = alternative.id.text();
        there->alternatives.push_back(std::move(alternative));
    });
    return {std::move(next), MenuOutline::tr("Add alternative"),
            RowPath().with("course", course.text()).with("alternative", id).text()};
}

/// Takes what the row stands for out of the occasion; its name is what Undo says.
QString removeRow(const LibraryState& library, Occasion& occasion, const RowPath& path)
{
    const std::string kind = path.kind();
    QString name;
    const auto drop = [&](auto& things, const auto& id) {
        if (const auto* there = findIn(things, id)) {
            name = text(there->name);
        }
        eraseFrom(things, id);
    };
    Course* course = findIn(occasion.courses, CourseId{path.idOf("course")});
    const Dish* dish = findDish(std::as_const(occasion), DishId{path.idOf("dish")});
    if (kind == "guest") {
        const GuestId guest{path.id()};
        drop(occasion.guests, guest);
        for (Course& each : occasion.courses) {
            for (Dish& other : each.dishes) {
                for (MixEntry& mix : other.mix) {
                    std::erase(mix.guests, guest);
                }
            }
        }
    } else if (kind == "job") {
        drop(occasion.houseJobs, HouseJobId{path.id()});
    } else if (kind == "trip") {
        drop(occasion.trips, HouseJobId{path.id()});
    } else if (kind == "course" && course != nullptr) {
        const std::vector<Dish> dishes = course->dishes;
        for (const Dish& each : dishes) {
            occasion = withDishRemoved(std::move(occasion), each.id);
        }
        drop(occasion.courses, CourseId{path.id()});
    } else if (kind == "alternative" && course != nullptr) {
        const AlternativeId id{path.id()};
        const CourseId within = course->id;
        const std::vector<Dish> dishes = course->dishes;
        for (const Dish& each : dishes) {
            if (each.alternative == id) {
                occasion = withDishRemoved(std::move(occasion), each.id);
            }
        }
        // The occasion was moved about: what pointed into it holds no more.
        drop(findIn(occasion.courses, within)->alternatives, id);
    } else if (kind == "dish" && dish != nullptr) {
        name = text(menu::dishName(library, *dish));
        const DishId id = dish->id;
        occasion = withDishRemoved(std::move(occasion), id);
    } else if (kind == "mix" && dish != nullptr) {
        const VariantId variant{path.id()};
        const DishId id = dish->id;
        name = text(menu::variantName(library, *dish, variant));
        occasion = withPortions(std::move(occasion), id, variant, Portions{0});
    }
    return name;
}

/// What other dishes of the evening leave that a line of this one could take.
std::vector<menus::ByProductOffer> offersFor(const LibraryState& library, const DishId& dish)
{
    const auto input = planInputOf(library);
    const Dish* there = input ? findDish(*input->occasion, dish) : nullptr;
    const bool isWhole =
        input && faultsOf(*input->occasion, *input->kitchen, recipesOf(library)).empty();
    if (there == nullptr || !isWhole) {
        return {};
    }
    std::vector<menus::ByProductOffer> offers = menus::byProductOffers(*input);
    std::erase_if(offers, [there](const menus::ByProductOffer& offer) {
        return offer.taker != there->recipe;
    });
    return offers;
}

QString offerText(const menus::ByProductOffer& offer)
{
    return MenuOutline::tr("Use %1 from %2").arg(text(offer.name), text(offer.from));
}

/// The line takes what is left: one change of its recipe.
std::optional<Edit> withLeftUsed(const LibraryState& library, const DishId& dish,
                                 const std::string& line)
{
    for (const menus::ByProductOffer& offer : offersFor(library, dish)) {
        const auto recipe = library.recipes.find(offer.taker);
        if (offer.line.text() == line && recipe != library.recipes.end()) {
            return Edit{
                withRecipe(library, menus::withByProduct(*recipe->second, offer.line, offer.name)),
                offerText(offer),
                {}};
        }
    }
    return std::nullopt;
}

} // namespace

std::vector<OutlineRow> MenuOutline::rows(const LibraryState& library) const
{
    const OccasionPtr open = openOccasion(library);
    return open ? RowBuilder(library, open->occasion, looks_).build() : std::vector<OutlineRow>{};
}

std::vector<RowCommand> MenuOutline::commands(const LibraryState& library,
                                              const std::string& row) const
{
    if (!openOccasion(library)) {
        return {};
    }
    const RowPath path(row);
    const std::string kind = path.kind();
    std::vector<RowCommand> commands;
    if (kind == "guest" || kind == "guests") {
        commands.push_back({addGuestKey, tr("Add guest")});
        if (sharedOut(library)) {
            commands.push_back({shareOutKey, tr("Share out portions")});
        }
    } else if (kind == "job" || kind == "jobs") {
        commands.push_back({addJobKey, tr("Add job")});
    } else if (kind == "trip" || kind == "trips") {
        commands.push_back({addTripKey, tr("Add trip")});
    } else {
        commands.push_back({addCourseKey, tr("Add course")});
        if (path.has("course")) {
            commands.push_back({addAlternativeKey, tr("Add alternative")});
            if (sharedOut(library, CourseId{path.idOf("course")})) {
                commands.push_back({shareOutKey, tr("Share out portions")});
            }
        }
    }
    if (kind == "dish") {
        for (const menus::ByProductOffer& offer : offersFor(library, DishId{path.id()})) {
            commands.push_back({useLeftKey + offer.line.text(), offerText(offer)});
        }
    }
    const bool isThing = path.size() > 0 && !path.id().empty();
    if (isThing) {
        commands.push_back({removeKey, tr("Delete")});
    }
    return commands;
}

Result<Edit> MenuOutline::run(const LibraryState& library, const std::string& row,
                              const std::string& command) const
{
    const OccasionPtr open = openOccasion(library);
    const RowPath path(row);
    const Failure cannot{FailureKind::NotFound, "This is not there any more.", command};
    if (!open) {
        return cannot;
    }
    const CivilDate today = TimeZone::utc().civil(clock_.now()).date;
    if (command == addCourseKey) {
        LibraryState next = withOccasion(library, [&](Occasion& occasion) {
            occasion = withCourseAdded(std::move(occasion), tr("Course").toStdString(), today);
        });
        const std::string id = openOccasion(next)->occasion.courses.back().id.text();
        return Edit{std::move(next), tr("Add course"), RowPath().with("course", id).text()};
    }
    if (command == addAlternativeKey && path.has("course")) {
        return withNewAlternative(library, CourseId{path.idOf("course")});
    }
    if (command.starts_with(useLeftKey) && path.kind() == "dish") {
        auto edit = withLeftUsed(library, DishId{path.id()},
                                 command.substr(std::string_view(useLeftKey).size()));
        if (edit) {
            edit->select = row;
        }
        return edit ? Result<Edit>(*std::move(edit)) : cannot;
    }
    if (command == shareOutKey) {
        auto edit = path.has("course") ? sharedOut(library, CourseId{path.idOf("course")})
                                       : sharedOut(library);
        if (edit && path.has("course")) {
            edit->select = RowPath().with("course", path.idOf("course")).text();
        } else if (edit && !open->occasion.guests.empty()) {
            const GuestId& first = open->occasion.guests.front().id;
            edit->select = RowPath().with("guest", first.text()).text();
        }
        return edit ? Result<Edit>(*std::move(edit))
                    : Failure{FailureKind::NotFound,
                              "Portions are shared out so already: everybody has what leads the "
                              "course, or what suits them with the fewest extra steps.",
                              command};
    }
    if (command == addGuestKey) {
        return withNewGuest(library);
    }
    if (command == addJobKey) {
        return withNewJob(library, today);
    }
    if (command == addTripKey) {
        return withNewTrip(library, today);
    }
    if (command == removeKey && !path.id().empty()) {
        QString name;
        LibraryState next = withOccasion(
            library, [&](Occasion& occasion) { name = removeRow(library, occasion, path); });
        return Edit{std::move(next), tr("Delete %1").arg(name), path.parent().text()};
    }
    return cannot;
}

} // namespace suppertide::ui
