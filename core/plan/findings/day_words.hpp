// Sentences about glue and day that stand beside the numbers.
#pragma once

#include <string>
#include <vector>

#include "core/plan/day/day_plan.hpp"
#include "core/plan/findings/text.hpp"
#include "core/schedule/day.hpp"
#include "core/schedule/moment.hpp"

namespace fayline::plan {

// What this glue can do to whoever mixes it, and that local rules and the maker's sheets come first.
std::vector<Message> glueCaution(const glue::GluePlan& glue);

// How long a mix lasts: "26 to 43 min", "48 to 80 min", from three hours on "1.5 to 3.2 h", "25 min" where both ends
// read alike, "over 2 h" where it may last for more than a week.
Message lifeText(const glue::Between& lasts_s);
std::string lifeWords(const glue::Between& lasts_s);

// How hot a mix gets that is left standing, to ten degrees, since the model knows it no better: "190 to 250 C" (with
// the degree sign), "about 40 C".
std::string peakWords(const glue::Between& peak_C, const units::Display& display);

// How the pot life was found: fitted to how many points, how well it meets them, what is assumed.
std::vector<Message> potLifeTexts(const glue::GluePlan& glue);

// What the model makes of a glue of the user's own: how its points are met, and what 100 g in a cup twice as large do
// in air of 18 C. Throws InputError, with paths from the glue on (`parts_by_weight`), for what cannot be mixed and for
// points that contradict each other.
std::vector<Message> ownGlueTexts(const model::OwnAdhesive& own);

// "about 58 in 100": never above "more than 99 in 100" nor below "fewer than 1 in 100", since no model of a day knows
// all that can happen.
Message inHundredText(double chance);
std::string inHundred(double chance);
// The same for a table: "58", "> 99".
std::string inHundredBrief(double chance);
// The same as a printed number of percent: 0.5 to 99.5.
double oddsPct(double chance);

// "37 min to spare", "4 min too late".
Message marginText(double margin_s);

// The margin, then on how many days in a hundred it is enough, then the margin that 95 in 100 take; no full stop.
std::string oddsWords(double margin_s, const schedule::Days& days);

// The same as sentences, with how the margin is spread over the days, the batches, and what the days differ in.
std::vector<Message> chanceTexts(const DayPlan& day, const DayStudy& study);

// Whether a remedy is needed or helps: before a table of them.
Message remediesText(const DayPlan& day, const DayStudy& study);

// "joint 1-2", "the joint on the boat": a glue line by its inner strip.
Message jointName(int inner);

// What goes on at one moment of a gluing: what is being done, which joint presses, what is on. One to four sentences.
std::vector<Message> momentTexts(const GluingDay& gluing, const schedule::Moment& moment, double startAt_s);

// What the clock says of a warning while it lasts.
std::vector<Message> warningTexts(const schedule::Warning& warning);

}  // namespace fayline::plan
