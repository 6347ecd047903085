#include "core/plan/findings/finding.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace fayline::plan {

Finding::Finding() = default;
Finding::Finding(const Finding& other) = default;
Finding::Finding(Finding&& other) noexcept = default;
Finding& Finding::operator=(const Finding& other) = default;
Finding& Finding::operator=(Finding&& other) noexcept = default;
Finding::~Finding() = default;

namespace {

struct CodeRow {
    Code code;
    std::string_view word;
    About about;
    const char* unit;
    Severity severity;
    Level level = Level::finding;
};

constexpr CodeRow codeRows[] = {
    {Code::offsetMisread, "offset_misread", About::line, "mm", Severity::caution},
    {Code::offsetsShareASlip, "offsets_share_a_slip", About::line, "mm", Severity::caution},
    {Code::lineNotSettled, "line_not_settled", About::line, "mm", Severity::caution},
    {Code::pointsOutOfOrder, "points_out_of_order", About::line, "mm", Severity::caution},
    {Code::missAtCeiling, "miss_at_ceiling", About::line, "mm", Severity::caution},
    {Code::lineReverses, "line_reverses", About::line, "mm", Severity::note, Level::fact},
    {Code::tightestBendUncertain, "tightest_bend_uncertain", About::line, "pct", Severity::note},
    {Code::stripBreaks, "strip_breaks", About::stack, "pct", Severity::stop},
    {Code::stripBreaksHot, "strip_breaks_hot", About::stack, "pct", Severity::stop},
    {Code::chanceOfBreaking, "chance_of_breaking", About::stack, "pct", Severity::caution},
    {Code::breakingRemedies, "breaking_remedies", About::stack, "pct", Severity::note},
    {Code::oneStripFewer, "one_strip_fewer", About::stack, "pct", Severity::note, Level::fact},
    {Code::bendForLoad, "bend_for_load", About::stack, "pct", Severity::note},
    {Code::noRoom, "no_room", About::stack, "mm", Severity::stop},
    {Code::stackCrossesItself, "stack_crosses_itself", About::stack, "mm", Severity::stop},
    {Code::pinsForbidSliding, "pins_forbid_sliding", About::stack, "mm", Severity::stop},
    {Code::endsStep, "ends_step", About::stack, "mm", Severity::note, Level::fact},
    {Code::moistureBeyondTable, "moisture_beyond_table", About::stack, "pct", Severity::caution},
    {Code::grainBeyondTable, "grain_beyond_table", About::stack, "ratio", Severity::caution},
    {Code::speciesWarning, "species_warning", About::stack, "MPa", Severity::note},
    {Code::dryBeforeGlue, "dry_before_glue", About::stack, "days", Severity::note, Level::fact},
    {Code::storedBend, "stored_bend", About::stack, "J", Severity::note, Level::safety},
    {Code::woodMeasured, "wood_measured", About::stack, "MPa", Severity::note},
    {Code::woodMeasuredBreaks, "wood_measured_breaks", About::stack, "pct", Severity::caution},
    {Code::trialLeftOut, "trial_left_out", About::stack, "", Severity::note, Level::fact},
    {Code::woodValuesMissing, "wood_values_missing", About::stack, "MPa", Severity::note},
    {Code::woodByDefault, "wood_by_default", About::stack, "MPa", Severity::note},
    {Code::ruleStripOfMoulding, "rule_strip_of_moulding", About::stack, "pct", Severity::note, Level::fact},
    {Code::ruleScarfSlope, "rule_scarf_slope", About::stack, "ratio", Severity::note, Level::fact},
    {Code::stockTooSmall, "stock_too_small", About::stock, "mm", Severity::caution},
    {Code::stripsNotFromStock, "strips_not_from_stock", About::stock, "mm", Severity::caution},
    {Code::boardsShort, "boards_short", About::stock, "", Severity::caution},
    {Code::boardsMissing, "boards_missing", About::stock, "", Severity::note, Level::fact},
    {Code::scarfInTightest, "scarf_in_tightest", About::stock, "mm", Severity::caution},
    {Code::scarfTooSteep, "scarf_too_steep", About::stock, "ratio", Severity::note},
    {Code::scarfWithoutClamp, "scarf_without_clamp", About::stock, "mm", Severity::note},
    {Code::boardsMoistureApart, "boards_moisture_apart", About::stock, "pct", Severity::caution},
    {Code::boardsMoistureService, "boards_moisture_service", About::stock, "pct", Severity::caution},
    {Code::planerTooThick, "planer_too_thick", About::stock, "mm", Severity::note},
    {Code::pinNotKept, "pin_not_kept", About::stock, "", Severity::caution},
    {Code::peelAtEnd, "peel_at_end", About::form, "MPa", Severity::caution, Level::fact},
    {Code::fasteningWanted, "fastening_wanted", About::form, "N", Severity::caution},
    {Code::formImpossible, "form_impossible", About::form, "pct", Severity::stop},
    {Code::formNoRoom, "form_no_room", About::form, "pct", Severity::stop},
    {Code::formNotSettled, "form_not_settled", About::form, "pct", Severity::caution},
    {Code::springback, "springback", About::form, "mm", Severity::note, Level::fact},
    {Code::springbackNotAllowedFor, "springback_not_allowed_for", About::form, "mm", Severity::caution},
    {Code::springbackFactor, "springback_factor", About::form, "ratio", Severity::note, Level::fact},
    {Code::springbackLearned, "springback_learned", About::form, "ratio", Severity::note, Level::fact},
    {Code::springbackLeftOut, "springback_left_out", About::form, "", Severity::note, Level::fact},
    {Code::springHome, "spring_home", About::form, "pct", Severity::note, Level::fact},
    {Code::stripBreaksOnForm, "strip_breaks_on_form", About::form, "pct", Severity::stop},
    {Code::bentBeyondElastic, "bent_beyond_elastic", About::form, "pct", Severity::note, Level::fact},
    {Code::scarfFeather, "scarf_feather", About::form, "mm", Severity::note, Level::fact},
    {Code::partOffLine, "part_off_line", About::form, "mm", Severity::note, Level::fact},
    {Code::gluingsAddUp, "gluings_add_up", About::form, "pct", Severity::note, Level::fact},
    {Code::movesLater, "moves_later", About::form, "mm", Severity::note},
    {Code::planingMovesIt, "planing_moves_it", About::form, "mm", Severity::note, Level::fact},
    {Code::moistureOutOfRange, "moisture_out_of_range", About::form, "pct", Severity::stop},
    {Code::serviceMoistureOutOfRange, "service_moisture_out_of_range", About::form, "pct", Severity::stop},
    {Code::shrinkageUnknown, "shrinkage_unknown", About::form, "pct", Severity::note, Level::fact},
    {Code::moistureMovesIt, "moisture_moves_it", About::form, "mm", Severity::note, Level::fact},
    {Code::thickPiece, "thick_piece", About::form, "mm", Severity::note, Level::fact},
    {Code::contactNotWorkedOut, "contact_not_worked_out", About::holding, "", Severity::stop},
    {Code::noStations, "no_stations", About::holding, "", Severity::note, Level::fact},
    {Code::stackSnaps, "stack_snaps", About::holding, "", Severity::caution},
    {Code::springsAway, "springs_away", About::holding, "", Severity::stop},
    {Code::holdingNotSettled, "holding_not_settled", About::holding, "", Severity::caution},
    {Code::hangsOnPads, "hangs_on_pads", About::holding, "mm", Severity::caution},
    {Code::gapOverLimit, "gap_over_limit", About::holding, "mm", Severity::stop},
    {Code::gapAtTrim, "gap_at_trim", About::holding, "mm", Severity::stop},
    {Code::fallsInside, "falls_inside", About::holding, "mm", Severity::caution},
    {Code::noStrength, "no_strength", About::holding, "N", Severity::caution},
    {Code::atItsStrength, "at_its_strength", About::holding, "N", Severity::note, Level::fact},
    {Code::nothingToPull, "nothing_to_pull", About::holding, "N", Severity::note, Level::fact},
    {Code::stationOffTheStrips, "station_off_the_strips", About::holding, "mm", Severity::caution},
    {Code::stationOffTheForm, "station_off_the_form", About::holding, "mm", Severity::caution},
    {Code::padsOverlap, "pads_overlap", About::holding, "mm", Severity::caution},
    {Code::pressureBelowWanted, "pressure_below_wanted", About::holding, "kPa", Severity::caution},
    {Code::notPressed, "not_pressed", About::holding, "mm", Severity::caution},
    {Code::starvedJoint, "starved_joint", About::glue, "g/m2", Severity::caution},
    {Code::padCrushes, "pad_crushes", About::holding, "MPa", Severity::caution},
    {Code::postGivesWay, "post_gives_way", About::holding, "N", Severity::stop},
    {Code::toolsShort, "tools_short", About::holding, "", Severity::stop},
    {Code::strapWithoutEnd, "strap_without_end", About::holding, "mm", Severity::caution},
    {Code::strapIdle, "strap_idle", About::holding, "mm", Severity::note, Level::fact},
    {Code::propFootAboveHead, "prop_foot_above_head", About::holding, "mm", Severity::stop},
    {Code::propCannotPress, "prop_cannot_press", About::holding, "deg", Severity::stop},
    {Code::propSlipsAtHead, "prop_slips_at_head", About::holding, "deg", Severity::stop},
    {Code::propSlipsAtFoot, "prop_slips_at_foot", About::holding, "deg", Severity::stop},
    {Code::propBuckles, "prop_buckles", About::holding, "N", Severity::stop},
    {Code::propOverStrength, "prop_over_strength", About::holding, "N", Severity::stop},
    {Code::jackOverRating, "jack_over_rating", About::holding, "N", Severity::stop},
    {Code::propTooSlender, "prop_too_slender", About::holding, "mm", Severity::caution},
    {Code::propFootAssumed, "prop_foot_assumed", About::holding, "mm", Severity::note},
    {Code::propSectionAssumed, "prop_section_assumed", About::holding, "mm", Severity::note},
    {Code::propsCanFly, "props_can_fly", About::holding, "N", Severity::note, Level::safety},
    {Code::propsPushOverhead, "props_push_overhead", About::holding, "N", Severity::caution},
    {Code::floorInTheWay, "floor_in_the_way", About::holding, "mm", Severity::caution},
    {Code::screwDrawsOut, "screw_draws_out", About::holding, "N", Severity::caution},
    {Code::screwBreaks, "screw_breaks", About::holding, "N", Severity::caution},
    {Code::washerCrushes, "washer_crushes", About::holding, "MPa", Severity::caution},
    {Code::washerUnknown, "washer_unknown", About::holding, "MPa", Severity::note, Level::fact},
    {Code::screwNearEdge, "screw_near_edge", About::holding, "mm", Severity::caution},
    {Code::screwNearEnd, "screw_near_end", About::holding, "mm", Severity::caution},
    {Code::screwAssumed, "screw_assumed", About::holding, "mm", Severity::note},
    {Code::screwHead, "screw_head", About::holding, "mm", Severity::note, Level::fact},
    {Code::boatOverhead, "boat_overhead", About::holding, "N", Severity::note, Level::safety},
    {Code::boatDoesNotStand, "boat_does_not_stand", About::holding, "N", Severity::stop},
    {Code::boatLifts, "boat_lifts", About::holding, "N", Severity::stop},
    {Code::boatTips, "boat_tips", About::holding, "N", Severity::stop},
    {Code::boatSlides, "boat_slides", About::holding, "N", Severity::stop},
    {Code::boatMargin, "boat_margin", About::holding, "ratio", Severity::caution},
    {Code::blockComesFree, "block_comes_free", About::holding, "", Severity::caution},
    {Code::atItsStrengthWhileClosing, "at_its_strength_while_closing", About::holding, "N", Severity::caution},
    {Code::padCrushesWhileClosing, "pad_crushes_while_closing", About::holding, "MPa", Severity::caution},
    {Code::postGivesWayWhileClosing, "post_gives_way_while_closing", About::holding, "N", Severity::stop},
    {Code::toolsShortWhileClosing, "tools_short_while_closing", About::holding, "", Severity::stop},
    {Code::propBucklesWhileClosing, "prop_buckles_while_closing", About::holding, "N", Severity::stop},
    {Code::propOverStrengthWhileClosing, "prop_over_strength_while_closing", About::holding, "N", Severity::stop},
    {Code::jackOverRatingWhileClosing, "jack_over_rating_while_closing", About::holding, "N", Severity::stop},
    {Code::screwDrawsOutWhileClosing, "screw_draws_out_while_closing", About::holding, "N", Severity::caution},
    {Code::screwBreaksWhileClosing, "screw_breaks_while_closing", About::holding, "N", Severity::caution},
    {Code::washerCrushesWhileClosing, "washer_crushes_while_closing", About::holding, "MPa", Severity::caution},
    {Code::boatLiftsWhileClosing, "boat_lifts_while_closing", About::holding, "N", Severity::stop},
    {Code::boatTipsWhileClosing, "boat_tips_while_closing", About::holding, "N", Severity::stop},
    {Code::boatSlidesWhileClosing, "boat_slides_while_closing", About::holding, "N", Severity::stop},
    {Code::boatMarginWhileClosing, "boat_margin_while_closing", About::holding, "ratio", Severity::caution},
    {Code::blockComesFreeWhileClosing, "block_comes_free_while_closing", About::holding, "", Severity::caution},
    {Code::tailStandsOff, "tail_stands_off", About::holding, "mm", Severity::note, Level::fact},
    {Code::restsOtherwise, "rests_otherwise", About::holding, "mm", Severity::caution},
    {Code::snapsWhileClosing, "snaps_while_closing", About::holding, "", Severity::caution},
    {Code::maySnapWhileClosing, "may_snap_while_closing", About::holding, "", Severity::caution},
    {Code::overRunNeeded, "over_run_needed", About::holding, "mm", Severity::note},
    {Code::moreClampsNeeded, "more_clamps_needed", About::holding, "", Severity::caution},
    {Code::noStationsWouldDo, "no_stations_would_do", About::holding, "", Severity::caution},
    {Code::sagsWhenCarried, "sags_when_carried", About::holding, "mm", Severity::note, Level::fact},
    {Code::cupGoesOff, "cup_goes_off", About::glue, "min", Severity::stop},
    {Code::fullCupSmokes, "full_cup_smokes", About::glue, "C", Severity::note, Level::safety},
    {Code::ratioRounded, "ratio_rounded", About::glue, "pct", Severity::caution},
    {Code::thinned, "thinned", About::glue, "pct", Severity::caution},
    {Code::tooColdForGlue, "too_cold_for_glue", About::glue, "C", Severity::stop},
    {Code::hotDay, "hot_day", About::glue, "C", Severity::caution},
    {Code::nearDewPoint, "near_dew_point", About::glue, "C", Severity::caution},
    {Code::nightTooCold, "night_too_cold", About::glue, "C", Severity::caution},
    {Code::coldWoodSweats, "cold_wood_sweats", About::glue, "C", Severity::note},
    {Code::woodWetForGlue, "wood_wet_for_glue", About::glue, "pct", Severity::caution},
    {Code::neverCures, "never_cures", About::glue, "h", Severity::stop},
    {Code::closedTooLate, "closed_too_late", About::schedule, "min", Severity::stop},
    {Code::marginShort, "margin_short", About::schedule, "min", Severity::caution},
    {Code::cupWaits, "cup_waits", About::schedule, "min", Severity::caution},
    {Code::chanceInTime, "chance_in_time", About::schedule, "pct", Severity::caution},
};

constexpr bool inOrder() {
    for (std::size_t i = 0; i < std::size(codeRows); ++i) {
        if (codeRows[i].code != static_cast<Code>(i)) return false;
    }
    return true;
}
static_assert(inOrder(), "the rows stand in the order of Code");

const CodeRow& rowOf(Code code) {
    return codeRows[static_cast<std::size_t>(code)];
}

constexpr std::string_view closingSuffix = "_while_closing";

}  // namespace

Finding found(Code code, units::Source source) {
    Finding finding;
    finding.code = code;
    finding.severity = rowOf(code).severity;
    finding.unit = rowOf(code).unit;
    finding.source = std::move(source);
    return finding;
}

Finding foundWithoutLimit(Code code, units::Source source) {
    Finding finding = found(code, std::move(source));
    finding.limited = false;
    return finding;
}

Finding foundWithoutLimit(Code code, units::Source source, double value) {
    Finding finding = foundWithoutLimit(code, std::move(source));
    finding.value = value;
    return finding;
}

Finding foundAgainst(Code code, units::Source source, double value, double limit) {
    Finding finding = found(code, std::move(source));
    finding.value = value;
    finding.limit = limit;
    return finding;
}

Finding said(Finding finding, Message text, std::vector<Message> details) {
    finding.text = std::move(text);
    finding.details = std::move(details);
    return finding;
}

Finding said(Finding finding, double at_m, Message text, std::vector<Message> details) {
    finding.at_m = at_m;
    return said(std::move(finding), std::move(text), std::move(details));
}

const char* codeWord(Code code) {
    return rowOf(code).word.data();
}

About aboutOf(Code code) {
    return rowOf(code).about;
}

bool isWhileClosing(Code code) {
    return rowOf(code).word.ends_with(closingSuffix);
}

Code whileClosing(Code code) {
    const std::string word = std::string(rowOf(code).word).append(closingSuffix);
    const auto same =
        std::find_if(std::begin(codeRows), std::end(codeRows), [&](const CodeRow& row) { return row.word == word; });
    return same == std::end(codeRows) ? code : same->code;
}

// What is as bad as to stop or to caution is no mere fact.
Level levelOf(const Finding& finding) {
    return finding.severity == Severity::note ? rowOf(finding.code).level : Level::finding;
}

bool isCause(const Finding& finding) {
    return finding.root < 0 && levelOf(finding) == Level::finding;
}

const char* severityText(Severity severity) {
    static constexpr std::array words{"stop", "caution", "note"};
    return words[static_cast<std::size_t>(severity)];
}

const char* levelText(Level level) {
    static constexpr std::array words{"finding", "fact", "safety"};
    return words[static_cast<std::size_t>(level)];
}

const char* aboutText(About about) {
    static constexpr std::array words{"line", "stack", "form", "holding", "glue", "schedule", "stock"};
    return words[static_cast<std::size_t>(about)];
}

std::string textOf(const Finding& finding, const units::Display& display, const Translate& translate) {
    return writeText(finding.text, display, translate);
}

std::string detailsOf(const Finding& finding, const units::Display& display, const Translate& translate) {
    return writeTexts(finding.details, display, translate);
}

}  // namespace fayline::plan
