suppertide_test(core/wording DEPENDS core/wording core/advice tests/support/supper)
