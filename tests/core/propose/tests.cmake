suppertide_test(core/propose DEPENDS core/propose)
