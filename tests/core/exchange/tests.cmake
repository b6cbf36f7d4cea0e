suppertide_test(core/exchange DEPENDS core/exchange tests/support/content)
