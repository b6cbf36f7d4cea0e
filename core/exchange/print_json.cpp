#include "core/exchange/print_json.h"

#include <nlohmann/json.hpp>

namespace suppertide {

namespace {

constexpr std::size_t lineWidth = 100; // bytes; text beyond ASCII only breaks a little earlier

std::string quoted(const std::string& text)
{
    // What is no UTF-8 becomes U+FFFD: better a mark in a word than a file nobody can read.
    return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

class Printer
{
public:
    explicit Printer(bool pretty) : pretty_(pretty) {}

    [[nodiscard]] std::string flat(const JsonValue& value) const
    {
        std::string out;
        flat(value, out);
        return out;
    }

    void print(const JsonValue& value, std::size_t indent, std::size_t before)
    {
        const bool canBreak = std::holds_alternative<JsonValue::List>(value.data) ||
                              std::holds_alternative<JsonValue::Object>(value.data);
        std::string line = flat(value);
        if (!canBreak || before + line.size() < lineWidth || line.size() <= 2) {
            out_ += line;
            return;
        }
        const std::string margin(indent + 2, ' ');
        if (const auto* list = std::get_if<JsonValue::List>(&value.data)) {
            std::string_view separator = "[\n";
            for (const JsonValue& item : *list) {
                out_ += separator;
                out_ += margin;
                print(item, indent + 2, indent + 2);
                separator = ",\n";
            }
            out_ += "\n" + std::string(indent, ' ') + "]";
        } else {
            std::string_view separator = "{\n";
            for (const JsonMember& member : std::get<JsonValue::Object>(value.data)) {
                const std::string key = quoted(member.key) + ": ";
                out_ += separator;
                out_ += margin;
                out_ += key;
                print(member.value, indent + 2, indent + 2 + key.size());
                separator = ",\n";
            }
            out_ += "\n" + std::string(indent, ' ') + "}";
        }
    }

    [[nodiscard]] std::string take() { return std::move(out_); }

private:
    // NOLINTNEXTLINE(misc-no-recursion): as deep as our own values are
    void flat(const JsonValue& value, std::string& out) const
    {
        if (const auto* text = std::get_if<std::string>(&value.data)) {
            out += quoted(*text);
        } else if (const auto* number = std::get_if<std::int64_t>(&value.data)) {
            out += std::to_string(*number);
        } else if (const auto* decimal = std::get_if<JsonDecimal>(&value.data)) {
            out += decimal->text;
        } else if (const auto* flag = std::get_if<bool>(&value.data)) {
            out += *flag ? "true" : "false";
        } else if (const auto* list = std::get_if<JsonValue::List>(&value.data)) {
            flatList(*list, out);
        } else if (const auto* object = std::get_if<JsonValue::Object>(&value.data)) {
            flatObject(*object, out);
        } else {
            out += "null";
        }
    }

    void flatList(const JsonValue::List& list, std::string& out) const
    {
        out += '[';
        bool isFirst = true;
        for (const JsonValue& item : list) {
            out += isFirst ? "" : comma();
            flat(item, out);
            isFirst = false;
        }
        out += ']';
    }

    void flatObject(const JsonValue::Object& object, std::string& out) const
    {
        out += '{';
        bool isFirst = true;
        for (const JsonMember& member : object) {
            out += isFirst ? "" : comma();
            out += quoted(member.key);
            out += pretty_ ? ": " : ":";
            flat(member.value, out);
            isFirst = false;
        }
        out += '}';
    }

    [[nodiscard]] const char* comma() const { return pretty_ ? ", " : ","; }

    bool pretty_;
    std::string out_;
};

} // namespace

std::string printJson(const JsonValue& value)
{
    Printer printer(true);
    printer.print(value, 0, 0);
    return printer.take() + "\n";
}

std::string printCompactJson(const JsonValue& value)
{
    return Printer(false).flat(value);
}

} // namespace suppertide
