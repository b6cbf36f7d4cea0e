suppertide_test(core/night DEPENDS core/night core/propose core/sheet core/exchange tests/support/supper)
