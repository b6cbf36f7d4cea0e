suppertide_test(core/menus DEPENDS core/menus core/wording tests/support/supper)
