suppertide_test(core/exchange DEPENDS core/exchange tests/support/broken tests/support/content
               tests/support/problem)

# Debian's python has Debian's jsonschema, whichever python stands first on the path.
execute_process(COMMAND /usr/bin/python3 -c "import jsonschema" RESULT_VARIABLE no_jsonschema
                OUTPUT_QUIET ERROR_QUIET)
if(NOT no_jsonschema)
    file(GLOB_RECURSE demo_files CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/demo-db/*.json)
    add_test(NAME core/exchange/schema_by_python
             COMMAND /usr/bin/python3 ${CMAKE_SOURCE_DIR}/tests/core/exchange/validate_schema.py
                     ${CMAKE_SOURCE_DIR}/resources/schema/suppertide-exchange.schema.json
                     ${demo_files})
endif()
