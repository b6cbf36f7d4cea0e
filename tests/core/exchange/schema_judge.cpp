#include "tests/core/exchange/schema_judge.h"

#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validator.hpp>

#include <fstream>

namespace suppertide::test {

using nlohmann::json;

json readJson(const std::filesystem::path& file)
{
    std::ifstream stream(file);
    return json::parse(stream);
}

const json& schemaText()
{
    static const json text = readJson(std::filesystem::path(SUPPERTIDE_SOURCE_DIR) /
                                      "resources/schema/suppertide-exchange.schema.json");
    return text;
}

std::string complaintOf(const json& document)
{
    static const valijson::Schema& schema = []() -> const valijson::Schema& {
        static valijson::Schema made;
        valijson::SchemaParser parser(valijson::SchemaParser::kDraft7);
        parser.populateSchema(valijson::adapters::NlohmannJsonAdapter(schemaText()), made);
        return made;
    }();
    valijson::Validator validator;
    valijson::ValidationResults results;
    if (validator.validate(schema, valijson::adapters::NlohmannJsonAdapter(document), &results)) {
        return {};
    }
    std::string text = "invalid";
    valijson::ValidationResults::Error error;
    while (results.popError(error)) {
        text += "\n";
        for (const std::string& step : error.context) {
            text += step;
        }
        text += ": " + error.description;
    }
    return text;
}

} // namespace suppertide::test
