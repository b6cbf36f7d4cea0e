# Tests of the window. tests/ui needs no screen; tests/gui has a QApplication and sends events.
add_library(suppertide_tests_timeline STATIC support/timeline/example_scene.cpp)
target_compile_options(suppertide_tests_timeline PRIVATE ${suppertide_warnings})
suppertide_link(suppertide_tests_timeline PUBLIC ui/timeline)

# An object library, since nothing refers to what registers the QApplication.
add_library(suppertide_tests_gui OBJECT gui/qt_application.cpp)
target_compile_options(suppertide_tests_gui PRIVATE ${suppertide_warnings})
suppertide_link(suppertide_tests_gui PUBLIC Qt6::Widgets Qt6::Test GTest::gtest)

add_executable(draw_timeline EXCLUDE_FROM_ALL pictures/draw_timeline.cpp)
target_compile_options(draw_timeline PRIVATE ${suppertide_warnings})
suppertide_link(draw_timeline PRIVATE tests/timeline)

foreach(folder theme timeline)
    if(IS_DIRECTORY ${CMAKE_SOURCE_DIR}/tests/ui/${folder})
        suppertide_test(ui/${folder} QT DEPENDS ui/${folder} tests/timeline)
    endif()
endforeach()
foreach(folder timeline)
    if(IS_DIRECTORY ${CMAKE_SOURCE_DIR}/tests/gui/${folder})
        suppertide_test(gui/${folder} QT DEPENDS ui/${folder} tests/timeline tests/gui)
    endif()
endforeach()

add_library(suppertide_tests_print STATIC support/print/sheet_builder.cpp support/print/example_sheet.cpp)
target_compile_options(suppertide_tests_print PRIVATE ${suppertide_warnings})
suppertide_link(suppertide_tests_print PUBLIC ui/print)

add_executable(draw_sheet EXCLUDE_FROM_ALL pictures/draw_sheet.cpp)
target_compile_options(draw_sheet PRIVATE ${suppertide_warnings})
suppertide_link(draw_sheet PRIVATE tests/print)

suppertide_test(ui/print QT DEPENDS ui/print ui/models core/exchange tests/print tests/gui)

suppertide_test(ui/document QT DEPENDS ui/document core/store core/exchange Qt6::Test)
suppertide_test(ui/models QT DEPENDS ui/models core/exchange tests/support/supper Qt6::Test)
suppertide_test(ui/worker QT DEPENDS ui/worker ui/models core/exchange Qt6::Test)
suppertide_test(gui/panels QT DEPENDS ui/repertoire ui/clashes ui/pages/outline ui/prompts core/exchange
                tests/gui)

if(IS_DIRECTORY ${CMAKE_SOURCE_DIR}/tests/gui/window)
    suppertide_test(gui/window QT DEPENDS ui/window core/store core/exchange tests/gui)
endif()
