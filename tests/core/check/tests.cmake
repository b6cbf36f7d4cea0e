suppertide_test(core/check DEPENDS core/check core/exchange tests/support/problem)
