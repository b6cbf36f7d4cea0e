suppertide_test(core/shopping DEPENDS core/shopping tests/support/supper)
