suppertide_test(core/menus DEPENDS core/menus core/shopping core/wording tests/support/supper)
