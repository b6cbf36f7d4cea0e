suppertide_test(core/planner DEPENDS core/planner core/check tests/support/problem)
suppertide_test(core/planner/quick_start DEPENDS core/planner)
