suppertide_test(core/occasion DEPENDS core/occasion tests/support/content)
