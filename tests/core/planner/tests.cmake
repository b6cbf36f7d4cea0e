suppertide_test(core/planner DEPENDS core/planner core/check core/exchange tests/support/problem)
suppertide_test(core/planner/quick_start DEPENDS core/planner tests/support/problem)
suppertide_test(core/planner/engine DEPENDS core/planner/engine)
if(SUPPERTIDE_ASSERT_EXPLANATIONS OR SUPPERTIDE_BUILD STREQUAL "asan")
    target_compile_definitions(test_core_planner_engine PRIVATE SUPPERTIDE_ASSERT_EXPLANATIONS)
endif()
suppertide_test(core/planner/exact DEPENDS core/planner core/check tests/support/problem)

# Another solver, for tests only: it says what the best schedule of a tiny problem costs.
find_package(PkgConfig REQUIRED)
pkg_check_modules(z3 REQUIRED IMPORTED_TARGET z3)
suppertide_test(core/planner/oracle DEPENDS core/planner core/check core/exchange tests/support/problem PkgConfig::z3)
suppertide_test(core/planner/fuzz DEPENDS core/planner core/check core/exchange tests/support/problem tests/support/broken)
