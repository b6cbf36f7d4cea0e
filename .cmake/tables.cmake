# Tables of figures (resources/tables/*.tsv) are compiled in as text, so that a library of core reads no file.

# suppertide_tables(core/safety safety_rules storage_days)
# Each table becomes `std::string_view suppertide::tables::safetyRules()` of the folder's library; who reads
# it declares that function.
function(suppertide_tables folder)
    string(REPLACE "/" "_" library "suppertide/${folder}")
    foreach(table IN LISTS ARGN)
        set(file ${CMAKE_SOURCE_DIR}/resources/tables/${table}.tsv)
        set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${file})
        file(READ ${file} text)
        string(REPLACE "_" ";" words ${table})
        list(POP_FRONT words function)
        foreach(word IN LISTS words)
            string(SUBSTRING ${word} 0 1 first)
            string(SUBSTRING ${word} 1 -1 rest)
            string(TOUPPER ${first} first)
            string(APPEND function ${first}${rest})
        endforeach()
        set(source ${CMAKE_BINARY_DIR}/tables/${table}.cpp)
        file(CONFIGURE OUTPUT ${source} @ONLY CONTENT [[
#include <string_view>

namespace suppertide::tables {

std::string_view @function@();

std::string_view @function@()
{
    return R"table(@text@)table";
}

} // namespace suppertide::tables
]])
        # A table may be longer than the text that every compiler must take at once; ours take it.
        set_source_files_properties(${source} PROPERTIES COMPILE_OPTIONS -Wno-overlength-strings)
        target_sources(${library} PRIVATE ${source})
    endforeach()
endfunction()
