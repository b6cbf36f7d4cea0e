suppertide_test(core/recipe DEPENDS core/recipe tests/support/content)
