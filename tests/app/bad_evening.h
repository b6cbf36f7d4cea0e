// BadEvening: an evening of the demo as a file, to be spoilt and handed to the verbs.
#pragma once

#include <gmock/gmock.h>
#include <nlohmann/json.hpp>

#include <fstream>

#include "tests/app/verbs_fixture.h"

namespace suppertide::app {

inline std::string bytesOf(const std::filesystem::path& file)
{
    std::stringstream bytes;
    bytes << std::ifstream(file, std::ios::binary).rdbuf();
    return bytes.str();
}

inline void write(const std::filesystem::path& file, const std::string& bytes)
{
    std::ofstream(file, std::ios::binary | std::ios::trunc) << bytes;
}

/// An evening of the demo as one file, to be spoilt.
class BadEvening : public Verbs
{
protected:
    void SetUp() override
    {
        Verbs::SetUp();
        importDemo();
        ASSERT_EQ(run({"export", lunch, "--out", file("lunch.json").string()}), Exit::Done);
        evening_ = nlohmann::json::parse(bytesOf(file("lunch.json")));
        // Commands on the file shall find nothing more in the library.
        std::filesystem::remove(file("suppertide") / "library.suppertide");
    }

    Exit runOn(const nlohmann::json& evening, std::vector<std::string> words = {"check"})
    {
        const std::string name = file("evening.json").string();
        write(name, evening.dump());
        words.insert(words.begin() + 1, name);
        return run(words);
    }

    nlohmann::json& course(std::size_t number)
    {
        return evening_["occasions"][0]["courses"][number];
    }
    nlohmann::json& kitchen() { return evening_["kitchens"][0]; }
    nlohmann::json& recipe(const std::string& id)
    {
        for (nlohmann::json& each : evening_["recipes"]) {
            if (each["id"] == id) {
                return each;
            }
        }
        ADD_FAILURE() << "no recipe " << id;
        return evening_["recipes"][0];
    }

    /// Refused by check, and by import with nothing taken in.
    void expectRefused(const std::string& place, const std::string& why)
    {
        EXPECT_EQ(runOn(evening_), Exit::BadInput) << out_.str();
        EXPECT_THAT(err_.str(), testing::HasSubstr(place));
        EXPECT_THAT(err_.str(), testing::HasSubstr(why));
        EXPECT_EQ(runOn(evening_, {"import"}), Exit::BadInput) << out_.str();
        EXPECT_THAT(err_.str(), testing::HasSubstr(place));
        ASSERT_EQ(run({"export", "--out", file("kept.json").string()}), Exit::Done) << err_.str();
        EXPECT_THAT(out_.str(), testing::HasSubstr(" 0 recipes, 0 kitchens, 0 occasions"));
    }

    nlohmann::json evening_;
};

} // namespace suppertide::app
