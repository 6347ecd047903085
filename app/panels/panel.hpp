// What all side panels have in common: they are shown a piece with its plan, light a place, and ask for changes.
//
// A panel is as high as what it holds and does not scroll: put it into a scroll area with a resizable widget. It is
// made for 340 to 420 pixels of width.
//
// Objects by name, for whoever looks for one:
//   in each panel   "answer" and "reason" (labels), "plot" (AlongPlot), "calculate" (button, once it was stopped)
//   line panel      "linePanel"; "offsets" (table), "offsetsUnread" (label), "addPoint", "insertPoint", "removePoint",
//                   "pointUp", "pointDown", "pasteOffsets", "copyOffsets", "openOffsets" (buttons; what is pasted or
//                   opened is asked about, see offsets_dialog.hpp), "offsetsProblems" (label), "correct0", "correct1",
//                   ... (buttons, the worst slip first); heads "offsetsHead", "fairingHead"; fields "fairWithin",
//                   "readTo", "read", "startHeading", "endHeading", "takeOff", "describes", "stripsOn"
//   strips panel    "stripsPanel"; "strips" (table), "spares" (label), "groups" (table), "groupsUnread", "addStrips",
//                   "removeStrips", "stripsIn", "stripsOut" (buttons), "wood", "limitsText" (labels), "widths"
//                   (table), "widthsUnread", "addWidth", "removeWidth"; heads "choicesHead", "stripsHead", "groupHead",
//                   "woodHead", "widthsHead", "stackHead", "limitsHead"; "choiceUp", "choiceAcross" (combo boxes),
//                   "choicesPicture" (ChoicesPicture), "choiceNamed" (label), "choices" (table), "dryingWords"
//                   (label); fields of the chosen group "tapersTo", "modulus", "sacrificial", "dryFace", "bentBefore",
//                   "set"; fields of the stack "runsPastStart", "runsPastEnd", "glueLine", "moisture",
//                   "serviceMoisture", "grainSlope", "pins", "scarfedStart", "scarfedEnd", "ripAllowance", "gluings"
//   form panel      "formPanel"; heads "openingsHead", "ruleHead", "homeHead" (these three unless it stays in place),
//                   "stressHead" (only there), "formFieldsHead", "supportHead", "fewerHead", "planedHead", "airHead";
//                   "openings"
//                   (table), "spreadWords", "moistureWords", "ruleWords" (labels), "stressLeft" (table), "homeOff"
//                   (line edit), "homeOffReason", "homeWords", "fewerWords" (labels); fields "formKind",
//                   "letGo", "carriesOnStart", "carriesOnEnd", "allowsForSpringback", "springbackFactor", "fixedAt";
//                   "posts" (table), "postsUnread", "addPost", "removePost"; "planed" (table), "planedUnread",
//                   "addPlaned", "removePlaned"; "serviceAir", "serviceHumidity" (line edits), "airWords",
//                   "useAirMoisture"
//   holding panel   "holdingPanel"; "toFormWords" (label), "toForm" (button); "pullPlot" (AlongPlot); heads
//                   "proposalHead", "stationsHead", "pullsHead", "evenHead", "closingHead", "overRunHead", "propsHead",
//                   "screwsHead", "strapsHead" (these three only when there are any), "toolsHead", "settingsHead",
//                   "hullHead" stations: "stations" (table), "stationsUnread", "addStation", "removeStation",
//                   "stationTold" (label); fields of the chosen stations "stationPull", "stationMost", "stationPad",
//                   "stationSide"; of props and jacks "footX", "footY", "section", "stop", "propTo"; of screws
//                   "screwDiameter", "intoBackbone", "washer"; of straps "strapTo", "pullsFrom", "strapFriction" set
//                   out evenly: "evenFrom", "evenTo", "evenSpacing" (line edits), "evenKind" (combo box),
//                   "setOutEvenly" (button), "evenReason" (label)
//                   what follows: "proposalWords" (label), "proposed" (table), "adopt" (button), "closing" (table),
//                   "carriedWords", "overRunStart", "overRunEnd" (labels), "runOn" (button), "props", "screws",
//                   "straps" (tables), "propCaution" (label)
//                   tools: "tools" (table), "toolsUnread", "addTool", "removeTool"; fields of the chosen tool
//                   "toolPad", "toolOpening", "toolThroat", "toolPitch"; "toolCounts", "served" (tables), "toolsShort"
//                   (label) settings: fields "gapLimit", "pads", "closesFrom", "caul", "floorFriction", "backbone"
//                   boat: "hullWords", "hullCaution" (labels), fields "hullWeight", "hullCentreX", "hullCentreY",
//                   "hullFriction"; "blocks" (table), "blocksUnread", "addBlock", "removeBlock"
//   glue panel      "gluePanel"; "glueCaution" (label); heads "amountsHead", "batchesHead", "potLifeHead",
//                   "conditionsHead", "cureHead", "glueFieldsHead", "coatsHead", "glueAirHead"; "amounts", "batches",
//                   "goingOff", "vessels", "conditions", "cure" (tables), "potLifeWords", "adhesiveWarning" (labels),
//                   "curePlot" (AlongPlot), "ownGlues" (button); fields "adhesive",
//                   "mixingRatio", "potLife", "measuredBy", "scaleReads",
//                   "cupReads", "cupHolds", "vessel", "faces", "surfaceWork", "wetOut", "spreadCoat", "bothFaces",
//                   "filler", "thinner", "waste", "pasteYield", "air", "humidity", "airOverNight", "tentFrom",
//                   "tentHours", "tentAir", "hands"
//   schedule panel  "schedulePanel"; "gluing" (combo box, only where there are several), "lanes" (LanesChart),
//                   "momentWords" (label); heads "chanceHead", "remediesHead", "facesHead", "cupsHead", "tasksHead",
//                   "crewHead", "ratesHead", "uncertainHead"; "chanceWords", "remediesWords", "remedyAsks" (labels),
//                   "remedies", "faceTimes", "cupTimes", "tasks" (tables), "adoptRemedy", "toGlue" (buttons),
//                   "toGlueWords" (label); fields "startAt", "uncertain", "mixTakes", "wetOutRate", "spreadRate",
//                   "stackStrip", "soakTakes", "carryTakes", "clampTakes", "propTakes", "jackTakes", "screwTakes",
//                   "scrapeRate", "wipeRate", "sandRate", "pace", "glueUncertain", "stripBreaksChance",
//                   "stripBreaksCosts", "clampSlipsChance", "clampSlipsCosts", "cupSpillsChance", "cupSpillsCosts"
//   stock panel     "stockPanel"; "boards" (table), "boardsUnread", "addBoard", "removeBoard", "pasteBoards" (buttons);
//                   fields of the chosen board "boardWood", "boardBad", "boardMoisture", "boardPrice", "boardPricePer";
//                   "boardsTold" (label), "stockPicture" (StockPicture); of the chosen strip "stripWords" (label),
//                   "stripBoard" (combo box), "stripLost", "useSpare", "stripUncut" (buttons); heads "stockCuresHead"
//                   (only where strips are short), "stockFiguresHead", "priceHead", "sawingHead", "boardsOfHead",
//                   "buyHead", "cutHead"; "stockCures" (table), "takeStockCure", "stockFigures" (table); fields "kerf",
//                   "planing", "planerLeast", "snipe", "saw", "least", "stockScarfSlope", "extraScarfs", "stagger",
//                   "stockSpares"; "shareBoards", "buy" (table), "addToBuy", "removeToBuy", "allCut" (buttons)
//   record panel    "recordPanel"; "openClock", "openDryFit" (buttons); heads "daysHead", "dayLearnedHead",
//                   "dayTasksHead", "readingsHead", "learnedHead"; "days" (table), of its chosen row "dayWords"
//                   (label), "remarks" (RemarksEdit), "removeDay" (button), "dayCompared" (table), "dayLearned"
//                   (label), "useDayRates" (button), "dayTasks" (table); "readings" (table), "readingsUnread",
//                   "addReading", "removeReading"; "learnedWords" (label), "learned" (table), "useFactor"
//   in a section whose part may be the shed's (Tools, Glue, Air, Crew): "shedTools" and the like (ShedLine) with
//                   "shedToolsWords" (label), "shedToolsUse", "shedToolsKeep" (buttons)
//   The reason why a field cannot be read stands in a label named for the field: "readToReason". A cell that is being
//   typed in has an editor named "cellEditor".
#pragma once

#include <QWidget>
#include <optional>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"

namespace fayline::model {
enum class ShedPart;
}

namespace fayline::app {

class Panel : public QWidget {
    Q_OBJECT
public:
    using QWidget::QWidget;
    virtual void show(const Shown& shown) = 0;
    virtual void lightPlace(std::optional<double> at_m) { Q_UNUSED(at_m); }   // pointed at anywhere
    virtual void selectPlace(std::optional<double> at_m) { Q_UNUSED(at_m); }  // chosen anywhere
    virtual void selectPoint(int point) { Q_UNUSED(point); }  // chosen in the drawing; -1: none; the keyboard stays
    virtual void selectStrip(int place) { Q_UNUSED(place); }  // chosen anywhere, 1 on the form; 0: none
    // Brings the keyboard to a point of the line, where the panel has it (-1: to its first table).
    virtual void goToPoint(int point) { Q_UNUSED(point); }
    void dim(bool old);  // plots and sentences; tables and the answer see to it themselves

protected:
    // Hands on what is pointed at and chosen in a view of the line.
    template <class View>
    void tellPlaces(View* view) {
        connect(view, &View::placeHovered, this, &Panel::placeHovered);
        connect(view, &View::placeSelected, this, &Panel::placeSelected);
    }

signals:
    void changeAsked(const Change& change);
    void placeHovered(std::optional<double> at_m);
    void placeSelected(std::optional<double> at_m);
    void pointSelected(int point);                                   // chosen here by the user
    void stripSelected(int place);                                   // likewise, 1 on the form; 0: none
    void momentPointed(const std::optional<PointedMoment>& moment);  // of the glue-up; none: no longer
    void actionAsked(const QString& name);                           // of the window, by its object's name
    void ownGluesAsked();                                            // to be listed and changed
    void calculateAsked();                                           // what the user stopped
    void keepInShedAsked(model::ShedPart part);                      // of the piece, as it stands
    void panelAsked(plan::Question question);                        // to be opened
    void wholePieceWanted();                                         // in view, with the change that comes next
};

// The panels that exist, in the order of the job, each with the question it answers. The caller owns them.
struct NamedPanel {
    plan::Question question;
    QString title;
    Panel* panel;
};
std::vector<NamedPanel> makePanels(QWidget* parent);

}  // namespace fayline::app
