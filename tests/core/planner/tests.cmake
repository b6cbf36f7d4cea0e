suppertide_test(core/planner DEPENDS core/planner core/check tests/support/problem)
suppertide_test(core/planner/quick_start DEPENDS core/planner)
suppertide_test(core/planner/engine DEPENDS core/planner/engine)
suppertide_test(core/planner/exact DEPENDS core/planner core/check tests/support/problem)
