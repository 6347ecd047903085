// A risk of a plan: what it is, how bad, where, by what number against what limit.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/findings/text.hpp"
#include "core/units/source.hpp"

namespace fayline::plan {

enum class Severity { stop, caution, note };
enum class About { line, stack, form, holding, glue, schedule, stock };

// Whether a finding asks for a decision, tells what is so and stands in a panel already (a fact), or is a constant
// caution of the work (safety). Lists and badges leave facts out; the printed plan has them all.
enum class Level { finding, fact, safety };

// What can be found. Each has a row in the table of finding.cpp: word, subject, unit, severity, level.
enum class Code {
    offsetMisread,
    offsetsShareASlip,
    lineNotSettled,
    pointsOutOfOrder,
    missAtCeiling,
    lineReverses,
    tightestBendUncertain,
    stripBreaks,
    stripBreaksHot,
    chanceOfBreaking,
    breakingRemedies,
    oneStripFewer,
    bendForLoad,
    noRoom,
    stackCrossesItself,
    pinsForbidSliding,
    endsStep,
    moistureBeyondTable,
    grainBeyondTable,
    speciesWarning,
    dryBeforeGlue,
    storedBend,
    woodMeasured,
    woodMeasuredBreaks,
    trialLeftOut,
    woodValuesMissing,
    woodByDefault,
    ruleStripOfMoulding,
    ruleScarfSlope,
    stockTooSmall,
    stripsNotFromStock,
    boardsShort,
    boardsMissing,
    scarfInTightest,
    scarfTooSteep,
    scarfWithoutClamp,
    boardsMoistureApart,
    boardsMoistureService,
    planerTooThick,
    pinNotKept,
    peelAtEnd,
    fasteningWanted,
    formImpossible,
    formNoRoom,
    formNotSettled,
    springback,
    springbackNotAllowedFor,
    springbackFactor,
    springbackLearned,
    springbackLeftOut,
    springHome,
    stripBreaksOnForm,
    bentBeyondElastic,
    scarfFeather,
    partOffLine,
    gluingsAddUp,
    movesLater,
    planingMovesIt,
    moistureOutOfRange,
    serviceMoistureOutOfRange,
    shrinkageUnknown,
    moistureMovesIt,
    thickPiece,
    contactNotWorkedOut,
    noStations,
    stackSnaps,
    springsAway,
    holdingNotSettled,
    hangsOnPads,
    gapOverLimit,
    gapAtTrim,
    fallsInside,
    noStrength,
    atItsStrength,
    nothingToPull,
    stationOffTheStrips,
    stationOffTheForm,
    padsOverlap,
    pressureBelowWanted,
    notPressed,
    starvedJoint,
    padCrushes,
    postGivesWay,
    toolsShort,
    strapWithoutEnd,
    strapIdle,
    propFootAboveHead,
    propCannotPress,
    propSlipsAtHead,
    propSlipsAtFoot,
    propBuckles,
    propOverStrength,
    jackOverRating,
    propTooSlender,
    propFootAssumed,
    propSectionAssumed,
    propsCanFly,
    propsPushOverhead,
    floorInTheWay,
    screwDrawsOut,
    screwBreaks,
    washerCrushes,
    washerUnknown,
    screwNearEdge,
    screwNearEnd,
    screwAssumed,
    screwHead,
    boatOverhead,
    boatDoesNotStand,
    boatLifts,
    boatTips,
    boatSlides,
    boatMargin,
    blockComesFree,
    atItsStrengthWhileClosing,
    padCrushesWhileClosing,
    postGivesWayWhileClosing,
    toolsShortWhileClosing,
    propBucklesWhileClosing,
    propOverStrengthWhileClosing,
    jackOverRatingWhileClosing,
    screwDrawsOutWhileClosing,
    screwBreaksWhileClosing,
    washerCrushesWhileClosing,
    boatLiftsWhileClosing,
    boatTipsWhileClosing,
    boatSlidesWhileClosing,
    boatMarginWhileClosing,
    blockComesFreeWhileClosing,
    tailStandsOff,
    restsOtherwise,
    snapsWhileClosing,
    maySnapWhileClosing,
    overRunNeeded,
    moreClampsNeeded,
    noStationsWouldDo,
    sagsWhenCarried,
    cupGoesOff,
    fullCupSmokes,
    ratioRounded,
    thinned,
    tooColdForGlue,
    hotDay,
    nearDewPoint,
    nightTooCold,
    coldWoodSweats,
    woodWetForGlue,
    neverCures,
    closedTooLate,
    marginShort,
    cupWaits,
    chanceInTime
};

// Shown beside the number, never in the way of working on.
struct Finding {
    Finding();
    Finding(const Finding& other);
    Finding(Finding&& other) noexcept;
    Finding& operator=(const Finding& other);
    Finding& operator=(Finding&& other) noexcept;
    ~Finding();

    Code code = Code::noStations;
    Severity severity = Severity::note;
    Message text;                  // one line: what and where, the number against its limit, what to do
    std::vector<Message> details;  // sentences that open under it: why, what else helps
    std::optional<double> at_m;
    double value = 0;     // in `unit`
    double limit = 0;     // in `unit`
    bool limited = true;  // false: there is no limit to hold the value against
    std::string unit;     // as in the printed plan: "mm", "pct", "ratio", "J", ""
    units::Source source;
    int point = -1;  // index of the point it is about; -1: none
    int strip = 0;   // place of the strip it is about; 0: none
    int root = -1;   // index among a plan's findings of the one that it follows from; -1: it stands for itself
};

// One of this code with the severity and the unit that its row has.
Finding found(Code code, units::Source source = {});
// One whose value is held against nothing.
Finding foundWithoutLimit(Code code, units::Source source = {});

const char* codeWord(Code code);  // short and stable: strip_breaks
About aboutOf(Code code);
bool isWhileClosing(Code code);  // whether it tells of one moment while stations are closed
Code whileClosing(Code code);    // the code of the same at such a moment; itself where it has none
Level levelOf(const Finding& finding);
// Whether it asks for a decision and stands for itself: what lists, badges, papers and the verdict count.
bool isCause(const Finding& finding);

// The words of a severity, subject and level as the printed plan has them.
const char* severityText(Severity severity);
const char* levelText(Level level);
const char* aboutText(About about);

// One line, and all that opens under it.
std::string textOf(const Finding& finding, const units::Display& display, const Translate& translate = {});
std::string detailsOf(const Finding& finding, const units::Display& display, const Translate& translate = {});

}  // namespace fayline::plan
