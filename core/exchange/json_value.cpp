#include "core/exchange/json_value.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <limits>
#include <utility>

namespace suppertide {

namespace {

/// A well-formed file of ours is nested seven deep.
constexpr std::size_t mostDepth = 64;

/// Builds the tree while the parser runs, which itself does not recurse.
class TreeBuilder
{
public:
    // NOLINTBEGIN(readability-identifier-naming): names that the parser calls
    bool null() { return put({}); }
    bool boolean(bool value) { return put({value}); }
    bool number_integer(std::int64_t value) { return put({value}); }
    bool number_unsigned(std::uint64_t value)
    {
        if (value > static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max())) {
            return put({JsonDecimal{std::to_string(value)}});
        }
        return put({static_cast<std::int64_t>(value)});
    }
    bool number_float(double /*value*/, const std::string& text)
    {
        JsonDecimal decimal{text};
        // The parser hands out the point as the locale of the process writes it.
        std::ranges::replace(decimal.text, ',', '.');
        return put({std::move(decimal)});
    }
    bool string(std::string& value) { return put({std::move(value)}); }
    bool binary(std::vector<std::uint8_t>& /*value*/) { return false; }
    bool start_object(std::size_t /*size*/) { return open({JsonValue::Object{}}); }
    bool start_array(std::size_t /*size*/) { return open({JsonValue::List{}}); }
    bool key(std::string& value)
    {
        open_.back().key = std::move(value);
        return true;
    }
    bool end_object() { return keysAreUnique() && close(); }
    bool end_array() { return close(); }
    bool parse_error(std::size_t position, const std::string& /*token*/,
                     const nlohmann::json::exception& error)
    {
        constexpr int numberOutOfRange = 406; // of the library's documented exception ids
        isNumberTooLarge_ = error.id == numberOutOfRange;
        position_ = position;
        complaint_ = error.what();
        return false;
    }
    // NOLINTEND(readability-identifier-naming)

    [[nodiscard]] JsonValue takeTree() { return std::move(tree_); }
    [[nodiscard]] const std::string& complaint() const { return complaint_; }
    /// How many bytes had been read at a syntax error; 0 if the complaint names its own place.
    [[nodiscard]] std::size_t position() const { return position_; }
    [[nodiscard]] bool isNumberTooLarge() const { return isNumberTooLarge_; }

private:
    struct Open
    {
        JsonValue value;
        std::string key; // under which the next member goes
    };

    bool put(JsonValue value)
    {
        if (open_.empty()) {
            tree_ = std::move(value);
        } else if (auto* list = std::get_if<JsonValue::List>(&open_.back().value.data)) {
            list->push_back(std::move(value));
        } else {
            std::get<JsonValue::Object>(open_.back().value.data)
                .push_back({std::move(open_.back().key), std::move(value)});
        }
        return true;
    }

    bool open(JsonValue value)
    {
        if (open_.size() == mostDepth) {
            complaint_ = fmt::format("{}: nested deeper than {} levels", place(), mostDepth);
            return false;
        }
        open_.push_back({std::move(value), {}});
        return true;
    }

    bool close()
    {
        JsonValue done = std::move(open_.back().value);
        open_.pop_back();
        return put(std::move(done));
    }

    bool keysAreUnique()
    {
        const auto& members = std::get<JsonValue::Object>(open_.back().value.data);
        std::vector<std::string_view> keys;
        keys.reserve(members.size());
        for (const JsonMember& member : members) {
            keys.emplace_back(member.key);
        }
        std::ranges::sort(keys);
        const auto twice = std::ranges::adjacent_find(keys);
        if (twice == keys.end()) {
            return true;
        }
        const std::string where = place();
        complaint_ = fmt::format("{}{}the key “{}” stands twice in one object", where,
                                 where.empty() ? "" : ": ", *twice);
        return false;
    }

    /// Where the innermost open value stands: "tasks[3]".
    [[nodiscard]] std::string place() const
    {
        std::string result;
        for (std::size_t i = 0; i + 1 < open_.size() && result.size() < 200; ++i) {
            if (const auto* list = std::get_if<JsonValue::List>(&open_[i].value.data)) {
                result += fmt::format("[{}]", list->size());
            } else {
                result += (result.empty() ? "" : ".") + open_[i].key;
            }
        }
        return result;
    }

    std::vector<Open> open_;
    JsonValue tree_;
    std::string complaint_;
    std::size_t position_ = 0;
    bool isNumberTooLarge_ = false;
};

std::string lineAndColumn(std::string_view text, std::size_t position)
{
    const std::string_view before = text.substr(0, position == 0 ? 0 : position - 1);
    const auto lines = std::ranges::count(before, '\n');
    const std::size_t lineStart = before.rfind('\n') + 1; // npos + 1 is 0
    return fmt::format("line {}, column {}", lines + 1, before.size() - lineStart + 1);
}

Failure notJson(std::string forCook, std::string forLog = {})
{
    return {FailureKind::BadInput, std::move(forCook), std::move(forLog)};
}

} // namespace

Result<JsonValue> parseJson(std::string_view text)
{
    if (text.size() > mostJsonBytes) {
        return notJson(
            fmt::format("The text is longer than {} MB. Split it.", mostJsonBytes >> 20U));
    }
    if (text.starts_with("\xEF\xBB\xBF")) {
        return notJson("The text begins with a byte order mark. Save it as plain UTF-8.");
    }
    if (const auto nul = text.find('\0'); nul != std::string_view::npos) {
        return notJson(
            fmt::format("This is not JSON at {}: there is a zero byte. Correct it there.",
                        lineAndColumn(text, nul + 1)));
    }
    TreeBuilder builder;
    if (nlohmann::json::sax_parse(text.begin(), text.end(), &builder)) {
        return builder.takeTree();
    }
    if (builder.position() == 0) {
        return notJson(fmt::format("In this text, {}. Correct it there.", builder.complaint()));
    }
    return notJson(
        fmt::format("{} at {}. Correct it there.",
                    builder.isNumberTooLarge() ? "There is too large a number" : "This is not JSON",
                    lineAndColumn(text, builder.position())),
        builder.complaint());
}

Result<std::string> readTextFile(const std::string& file)
{
    std::error_code error;
    const auto size = std::filesystem::file_size(file, error);
    if (error) {
        return Failure{FailureKind::NotFound,
                       fmt::format("There is no readable file “{}”. Check its name.", file),
                       error.message()};
    }
    if (size > mostJsonBytes) {
        return notJson(fmt::format("The file “{}” is larger than {} MB. Split it.", file,
                                   mostJsonBytes >> 20U));
    }
    std::ifstream stream(file, std::ios::binary);
    std::string text(size, '\0');
    if (!stream.read(text.data(), static_cast<std::streamsize>(size))) {
        return Failure{FailureKind::Io,
                       fmt::format("The file “{}” could not be read. Try again, or copy it "
                                   "to another disk.",
                                   file),
                       std::strerror(errno)}; // NOLINT(concurrency-mt-unsafe): only for the log
    }
    return text;
}

} // namespace suppertide
