// A stack bent over a form that allows for springback: the form's curve counts, not the wanted line's.
#include <gtest/gtest.h>

#include <cmath>

#include "core/holding/held.hpp"
#include "core/holding/middle.hpp"
#include "core/holding/pressed.hpp"
#include "core/laminate/parallels.hpp"
#include "core/laminate/springback/form_plan.hpp"
#include "tests/core/holding/made_work.hpp"

namespace fayline::holding {
namespace on_form_test {

model::Piece threeStrips() {
    model::Piece piece;
    piece.stack.strips[0].count = 3;
    piece.stack.glueLine_m = 0;
    return piece;
}

// Three strips give back a ninth of their curve: the form bends them by 9/8.
struct OnForm {
    made::Work made;
    laminate::FormPlan form;

    explicit OnForm(double wavy)
        : made{threeStrips(), made::lineOf([wavy](double s) { return -0.5 - wavy * std::sin(3 * s); }, 1.0)} {
        const laminate::StackPlan stack = laminate::planStack(made.piece.stack, made.piece.line.describes,
                                                              made.piece.line.stripsOn, made.line, made.species);
        form = laminate::planForm(made.piece, made.line, made.species, stack);
    }
    StackOnForm work(bool onForm) const { return {made.piece, made.line, made.species, onForm ? &form.line : nullptr}; }
};

TEST(OnForm, TheMiddleTurnsByAsMuchMoreAsTheFormDoes) {
    const OnForm on(0);
    const Middle wanted = makeReady(on.work(false)).middle;
    const Middle bent = makeReady(on.work(true)).middle;
    const laminate::Part part = laminate::partsOf(on.made.piece.stack, on.made.piece.line.describes,
                                                  on.made.piece.line.stripsOn, on.made.line, on.made.species)[0];
    for (double s = 0.1; s < 0.9; s += 0.1) {
        const double rho = laminate::ratioAt(part, alongLine(wanted, s), 1);
        EXPECT_NEAR(rho, 1.0 / 9, 0.01);
        EXPECT_NEAR(middleAt(bent, s).curvature_per_m, middleAt(wanted, s).curvature_per_m / (1 - rho), 1e-4) << s;
    }
}

TEST(OnForm, ItsFrameStandsOnTheForm) {
    const OnForm on(0.4);
    const Middle bent = makeReady(on.work(true)).middle;
    for (double s = 0.05; s < 0.95; s += 0.1) {
        const double at_m = alongLine(bent, s);
        const MiddleFrame frame = middleFrame(bent, on.made.line, s);
        const double depth = bent.distance.at(at_m) - bent.faying.at(at_m);
        const line::Xy beside = on.form.line.beside(at_m, depth);
        EXPECT_NEAR(frame.point.x_m, beside.x_m, 1e-9);
        EXPECT_NEAR(frame.point.y_m, beside.y_m, 1e-9);
        // The frame goes the way that its points go.
        const MiddleFrame next = middleFrame(bent, on.made.line, s + 1e-5);
        const double along = std::hypot(next.point.x_m - frame.point.x_m, next.point.y_m - frame.point.y_m);
        EXPECT_NEAR(((next.point.x_m - frame.point.x_m) * frame.ahead.x_m +
                     (next.point.y_m - frame.point.y_m) * frame.ahead.y_m) /
                        along,
                    1, 1e-6);
    }
}

TEST(OnForm, TheStackIsBentHarderByTheSpringback) {
    OnForm on(0);
    on.made.piece.holding.stations = made::clampsAt({0.02, 0.2, 0.4, 0.6, 0.8, 0.98}, 20000);
    const Held wanted = hold(on.work(false));
    const Held bent = hold(on.work(true));
    ASSERT_EQ(bent.outcome, Outcome::settled);
    const auto momentAt = [](const Held& held, double at_m) {
        double moment = 0;
        for (const HeldSample& sample : held.samples) {
            if (std::abs(sample.at_m - at_m) < 0.006) moment = sample.moment_N_m;
        }
        return moment;
    };
    EXPECT_NEAR(momentAt(bent, 0.4) / momentAt(wanted, 0.4), 9.0 / 8, 0.01);
}

}  // namespace on_form_test
}  // namespace fayline::holding
