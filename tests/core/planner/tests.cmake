suppertide_test(core/planner DEPENDS core/planner core/check)
suppertide_test(core/planner/quick_start DEPENDS core/planner)
