suppertide_test(core/plan DEPENDS core/plan core/exchange core/propose core/wording tests/support/supper)
