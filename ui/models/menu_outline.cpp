#include "ui/models/menu_outline.h"

#include "ui/models/menu_forms.h"
#include "ui/models/occasion_edits.h"

namespace suppertide::ui {

namespace {

Failure gone()
{
    return {FailureKind::NotFound,
            "This is not there any more; it was removed or undone. Choose another row.", ""};
}

/// Puts a changed thing back into its list.
template <typename Thing>
void replaceIn(std::vector<Thing>& things, const Thing& thing)
{
    if (Thing* there = findIn(things, thing.id)) {
        *there = thing;
    }
}

/// Things of the open occasion that a row stands for; null where it stands for another kind.
struct Found
{
    const Course* course = nullptr;
    const Alternative* alternative = nullptr;
    const Dish* dish = nullptr;
    const MixEntry* mix = nullptr;
    const Guest* guest = nullptr;
    const HouseJob* job = nullptr;
    const ShoppingTrip* trip = nullptr;
};

Found find(const Occasion& occasion, const RowPath& path)
{
    Found found;
    found.course = findIn(occasion.courses, CourseId{path.idOf("course")});
    if (found.course != nullptr) {
        found.alternative =
            findIn(found.course->alternatives, AlternativeId{path.idOf("alternative")});
        found.dish = findIn(found.course->dishes, DishId{path.idOf("dish")});
    }
    if (found.dish != nullptr) {
        const auto mix = std::find_if(
            found.dish->mix.begin(), found.dish->mix.end(),
            [&](const MixEntry& entry) { return entry.variant.text() == path.idOf("mix"); });
        found.mix = mix == found.dish->mix.end() ? nullptr : &*mix;
    }
    found.guest = findIn(occasion.guests, GuestId{path.idOf("guest")});
    found.job = findIn(occasion.houseJobs, HouseJobId{path.idOf("job")});
    found.trip = findIn(occasion.trips, HouseJobId{path.idOf("trip")});
    return found;
}

/// Calls `visitor` with the form of the row, its name for Undo, and how a changed thing is put
/// back; `visitor.missing()` if there is no such row.
template <typename Visitor>
auto visitRow(const LibraryState& library, const Occasion& occasion, const RowPath& path,
              const Visitor& visitor)
{
    const std::string kind = path.kind();
    const Found found = find(occasion, path);
    if (kind == "occasion") {
        return visitor(menu::occasionForm(library, occasion), occasion.name,
                       [](Occasion& next, const Occasion& changed) { next = changed; });
    }
    if (kind == "mix" && found.mix != nullptr) {
        return visitor(menu::mixForm(occasion, *found.mix),
                       menu::variantName(library, *found.dish, found.mix->variant),
                       [&](Occasion& next, const MixEntry& changed) {
                           for (MixEntry& mix : findDish(next, found.dish->id)->mix) {
                               mix = mix.variant == changed.variant ? changed : mix;
                           }
                       });
    }
    if (kind == "dish" && found.dish != nullptr) {
        return visitor(
            menu::dishForm(library, *found.course, *found.dish),
            menu::dishName(library, *found.dish),
            [](Occasion& next, const Dish& changed) { *findDish(next, changed.id) = changed; });
    }
    if (kind == "alternative" && found.alternative != nullptr) {
        return visitor(menu::alternativeForm(*found.alternative), found.alternative->name,
                       [&](Occasion& next, const Alternative& changed) {
                           replaceIn(findIn(next.courses, found.course->id)->alternatives, changed);
                       });
    }
    if (kind == "course" && found.course != nullptr) {
        return visitor(menu::courseForm(library, occasion, *found.course), found.course->name,
                       [](Occasion& next, const Course& changed) {
                           replaceIn(next.courses, changed);
                           next = sorted(next);
                       });
    }
    if (kind == "guest" && found.guest != nullptr) {
        return visitor(
            menu::guestForm(*found.guest), found.guest->name,
            [](Occasion& next, const Guest& changed) { replaceIn(next.guests, changed); });
    }
    if (kind == "job" && found.job != nullptr) {
        return visitor(
            menu::jobForm(library, *found.job), found.job->name,
            [](Occasion& next, const HouseJob& changed) { replaceIn(next.houseJobs, changed); });
    }
    if (kind == "trip" && found.trip != nullptr) {
        return visitor(
            menu::tripForm(library, *found.trip), found.trip->name,
            [](Occasion& next, const ShoppingTrip& changed) { replaceIn(next.trips, changed); });
    }
    return visitor.missing();
}

struct ReadFields
{
    template <typename Form, typename Store>
    std::vector<Field> operator()(const Form& form, const std::string& /*name*/,
                                  const Store& /*store*/) const
    {
        return form.fields();
    }
    static std::vector<Field> missing() { return {}; }
};

struct WriteField
{
    const LibraryState& library;
    const std::string& field;
    const FieldValue& value;

    template <typename Thing, typename Store>
    Result<Edit> operator()(const FieldList<Thing>& form, const std::string& name,
                            const Store& store) const
    {
        const Result<Thing> next = form.with(field, value);
        if (!next) {
            return next.error();
        }
        return Edit{withOccasion(library, [&](Occasion& occasion) { store(occasion, *next); }),
                    QCoreApplication::translate("MenuOutline", "Change %1: %2")
                        .arg(QString::fromStdString(name), form.labelOf(field).toLower()),
                    {}};
    }
    static Result<Edit> missing() { return gone(); }
};

} // namespace

std::vector<Field> MenuOutline::fields(const LibraryState& library, const std::string& row) const
{
    const OccasionPtr open = openOccasion(library);
    return open ? visitRow(library, open->occasion, RowPath(row), ReadFields{})
                : std::vector<Field>{};
}

Result<Edit> MenuOutline::set(const LibraryState& library, const std::string& row,
                              const std::string& field, const FieldValue& value) const
{
    const OccasionPtr open = openOccasion(library);
    if (!open) {
        return gone();
    }
    return visitRow(library, open->occasion, RowPath(row), WriteField{library, field, value});
}

} // namespace suppertide::ui
