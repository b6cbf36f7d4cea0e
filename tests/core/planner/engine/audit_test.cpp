// The audit finds propagators that lie, each in its own way.
#include <gtest/gtest.h>

#include "core/base/contracts.h"
#include "core/planner/engine/engine.h"

namespace suppertide::engine {

namespace {

/// Once `seen` holds, implies `said`, because of `because`.
class Liar : public Propagator
{
public:
    Liar(Literal seen, Literal said, Literals because)
        : seen_(seen), said_(said), because_(std::move(because))
    {}
    bool propagate(Engine& engine) override
    {
        if (!engine.trail().holds(seen_)) {
            return true;
        }
        if (later) {
            engine.implyLater(said_, *this);
            return true;
        }
        return engine.imply(said_, because_);
    }
    void explain(const Trail& /*trail*/, EventIndex /*event*/, Literal /*needed*/,
                 Literals& because) const override
    {
        because = because_;
    }

    bool later = false; // explains when it is asked

private:
    Literal seen_;
    Literal said_;
    Literals because_;
};

struct Case
{
    Case() : x(engine.newVariable(0, 9)), y(engine.newVariable(0, 9)) {}
    /// Tells what follows from x ≥ 3.
    Liar& lies(Literal said, Literals because)
    {
        return engine.add(std::make_unique<Liar>(atLeast(x, 3), said, std::move(because)),
                          {x.minus()});
    }
    bool propagates()
    {
        EXPECT_TRUE(engine.propagate());
        engine.decide(atLeast(x, 3));
        return engine.propagate();
    }

    Engine engine;
    Variable x;
    Variable y;
};

} // namespace

TEST(Audit, AcceptsWhatIsTrue)
{
    Case it;
    it.engine.audit().know({{2, 9}, {3, 4}});
    it.lies(atMost(it.y, 4), {atLeast(it.x, 3)});
    EXPECT_TRUE(it.propagates());
    EXPECT_EQ(it.engine.trail().most(it.y), 4);
}

TEST(Audit, RefusesAnExplanationThatDoesNotHold)
{
    Case it;
    it.engine.audit();
    it.lies(atMost(it.y, 4), {atLeast(it.x, 4)});
    EXPECT_THROW(it.propagates(), ContractViolation);
}

TEST(Audit, RefusesAnExplanationByItself)
{
    Case it;
    it.engine.audit();
    it.lies(atMost(it.y, 4), {atMost(it.y, 4)}).later = true;
    EXPECT_THROW(it.propagates(), ContractViolation);
}

TEST(Audit, RefusesAnExplanationThatRulesOutASolution)
{
    Case it;
    it.engine.audit().know({{3, 5}});
    it.lies(atMost(it.y, 4), {atLeast(it.x, 3)});
    EXPECT_THROW(it.propagates(), ContractViolation);
}

TEST(Audit, RefusesToLearnWhatRulesOutASolution)
{
    Case it;
    it.lies(atMost(it.y, 4), {atLeast(it.x, 3)});
    it.engine.addClause({atLeast(it.y, 5), atMost(it.x, 2)});
    ASSERT_FALSE(it.propagates());
    it.engine.audit().know({{3, 5}});
    EXPECT_THROW(static_cast<void>(it.engine.learn()), ContractViolation);
}

TEST(Audit, IsOnFromTheStartWhereTheBuildAsksForIt)
{
    Case it;
    it.lies(atMost(it.y, 4), {atLeast(it.x, 4)});
#ifdef SUPPERTIDE_ASSERT_EXPLANATIONS
    EXPECT_THROW(it.propagates(), ContractViolation);
#else
    EXPECT_TRUE(it.propagates());
#endif
}

} // namespace suppertide::engine
