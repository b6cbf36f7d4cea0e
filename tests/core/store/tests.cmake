suppertide_test(core/store DEPENDS core/store core/exchange tests/support/content)
