// The demo, read from its files, with one of its evenings open: laid out and ready to be shown, as
// the window has it after a start.
#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>

#include "core/exchange/exchange.h"
#include "ui/document/open_plan.h"
#include "ui/models/drag_scene.h"
#include "ui/models/scene_of_plan.h"

namespace suppertide::ui::test {

/// Throws, in the reader's words, if a file of the demo cannot be read.
[[nodiscard]] inline const LibraryState& demoFiles()
{
    static const LibraryState state = [] {
        LibraryState all;
        const std::filesystem::path demo = std::filesystem::path(SUPPERTIDE_SOURCE_DIR) / "demo-db";
        for (const char* folder : {"recipes", "kitchens", "occasions", "larder"}) {
            for (const auto& entry : std::filesystem::directory_iterator(demo / folder)) {
                const auto content = readExchangeFile(entry.path());
                if (!content) {
                    throw std::runtime_error(content.error().forCook);
                }
                all = imported(std::move(all), *content);
            }
        }
        return all;
    }();
    return state;
}

[[nodiscard]] inline LibraryState demoLibrary(const std::string& occasion = "midsummer-supper")
{
    LibraryState library = demoFiles();
    library.open = OccasionId{occasion};
    return library;
}

/// The open evening of a library, laid out.
struct LaidOut
{
    explicit LaidOut(LibraryState state) : library(std::move(state))
    {
        const auto input = planInputOf(library);
        if (!input) {
            throw std::runtime_error("no evening is open");
        }
        const Result<PlanPtr> made = laidOutPlan(*input, 0);
        if (!made) {
            throw std::runtime_error(made.error().forCook);
        }
        plan = *made;
        looks.see(*input->occasion);
    }

    [[nodiscard]] PlanInput input() const { return *planInputOf(library); }
    [[nodiscard]] const Occasion& occasion() const { return openOccasion(library)->occasion; }
    [[nodiscard]] SceneSource source() const
    {
        const PlanInput from = input();
        return {plan, from.occasion, from.kitchen, from.layout, looks, std::nullopt, {}};
    }
    [[nodiscard]] TaskIndex task(const std::string& id) const
    {
        return plan->formulation->taskById.at(id);
    }
    [[nodiscard]] PlanTime start(const std::string& id) const
    {
        return plan->interval(task(id))->start;
    }

    LibraryState library;
    PlanPtr plan;
    DishLooks looks;
};

} // namespace suppertide::ui::test
