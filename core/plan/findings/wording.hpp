// The words that findings and answers share: plain sentences in the units that a user reads in.
#pragma once

#include <string>
#include <vector>

#include "core/contact/contact.hpp"
#include "core/laminate/stack.hpp"
#include "core/model/boat.hpp"
#include "core/plan/findings/text.hpp"
#include "core/units/display.hpp"
#include "core/wood/species.hpp"

namespace fayline::plan {

// "one" to "twelve", then figures.
std::string numberWord(int number);

// The same text with a capital first letter.
std::string capitalised(std::string text);

// "a", "a and b", "a, b and c".
std::string listed(const std::vector<std::string>& parts);

// A wood's name as it is said: "Douglas-fir, coast" is coast Douglas-fir, "White oak" white oak. The user's own names
// stay as they are.
std::string woodName(const wood::Species& species);
// Of the wood with this id; the id itself where there is none.
std::string woodName(const std::vector<wood::Species>& species, const std::string& id);

// "624 mm from the start"; beyond the trim lines "60 mm before the start", "60 mm past the end".
std::string placeText(double at_m, double lineLength_m, const units::Display& display);

// A length under a foot as a thickness, a longer one in the notation of lengths: "1 1/2 in", "2-0-4".
std::string spanText(double length_m, const units::Display& display);

// How far apart pads may stand, never more than it is: in steps of 10 mm or half an inch, since the reach of a pad is
// known no better. Below a step as spanText.
std::string reachText(double length_m, const units::Display& display);

// A size that must be had: rounded up to a sixteenth of an inch or a millimetre.
std::string atLeastText(double size_m, const units::Display& display);

// What a station pulls: "1700 N"; of one that closes its gap with little "light, under 200 N" (kinds.hpp says why), in
// pounds "light, under 45 lbf".
std::string pullText(double pull_N, contact::HoldState state, const units::Display& display);

// The size of a small distance, without its sign: "0.31 mm", "0.012 in".
std::string smallText(double distance_m, const units::Display& display);

// "the strip on the form", "the outermost strip", "strip 3", "the strip" where there is one only.
Message stripName(int place, int count);
// "eight strips of 1/4 in white oak and two of 3/16 in white ash", alike groups put together.
Message stripsName(const model::Stack& stack, const std::vector<wood::Species>& species);
std::string stripsText(const model::Stack& stack, const std::vector<wood::Species>& species,
                       const units::Display& display);

// "8 x 1/4 in + 2 x 3/16 in"
std::string stripsFigures(const model::Stack& stack, const units::Display& display);

// "WL 2", or "point 3" where there is no label.
Message pointName(const model::Point& point, int index);
std::string pointText(const model::Point& point, int index);

}  // namespace fayline::plan
