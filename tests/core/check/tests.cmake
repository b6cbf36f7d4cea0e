suppertide_test(core/check DEPENDS core/check tests/support/problem)
