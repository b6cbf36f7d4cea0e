suppertide_test(core/sheet DEPENDS core/sheet core/propose core/exchange)
