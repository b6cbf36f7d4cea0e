suppertide_test(core/advice DEPENDS core/advice core/wording tests/support/supper)
