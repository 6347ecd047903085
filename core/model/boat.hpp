// The document: a boat and its pieces, what the user said and nothing that follows from it.
//
// Plain values in SI that every part of the core may read: metres, radians, newtons, pascals, kilograms, seconds;
// temperatures in degrees Celsius; shares (slope of grain, waste) as fractions of one, moisture as a fraction of the
// dry mass. Defaults stand here, in one place, as member initialisers; file.hpp names each key of the project file.
//
// What many files copy is copied, compared and destroyed in boat.cpp: written out by the compiler in each file that
// does so, it takes seconds of every build.
//
// `at_m` is arc length along the fair line from its first point. It may lie outside 0..length where strips run past.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/model/holding.hpp"
#include "core/model/kept.hpp"
#include "core/model/read.hpp"
#include "core/units/display.hpp"
#include "core/units/units.hpp"

namespace fayline::model {

struct Point {
    std::string label;
    double x_m = 0;
    double y_m = 0;
    std::array<std::string, 2> written;  // x and y as the user wrote them; empty where typed nowhere
    Read read = Read::both;
    bool mustPass = false;
    Kept kept;

    bool operator==(const Point&) const = default;
};

enum class Describes { innerFace, middle, outerFace };  // which line of the stack the points are on
enum class Side { left, right };                        // as seen by someone walking from the first point to the last

struct LineInput {
    LineInput();
    LineInput(const LineInput& other);
    LineInput(LineInput&& other) noexcept;
    LineInput& operator=(const LineInput& other);
    LineInput& operator=(LineInput&& other) noexcept;
    ~LineInput();
    bool operator==(const LineInput& other) const;

    std::vector<Point> points;
    double readTo_m = units::sixteenth_m;
    double fairWithin_m = units::sixteenth_m;  // 0 interpolates
    std::optional<double> startHeading_rad;    // anticlockwise from +x
    std::optional<double> endHeading_rad;
    double takeOff_m = 0;
    Describes describes = Describes::innerFace;
    Side stripsOn = Side::left;
    Kept kept;
};

enum class Softened { no, soaked, steamed, boiled };

struct BentBefore {
    Softened how = Softened::no;
    double set = 0;  // share of the curve taken already, 0..1
    Kept kept;

    bool operator==(const BentBefore&) const = default;
};

struct Strips {  // `count` strips that are alike, one upon the other
    int count = 1;
    double thickness_m = 0.00635;  // at the line's start
    std::string species = "oak_white";
    bool sacrificial = false;
    std::optional<double> moe_Pa;      // measured by the user; used as it is
    std::optional<double> breaksAt;    // measured by the user: mean surface strain at breaking; used as it is
    std::optional<double> tapersTo_m;  // thickness at the line's end, linear along it
    std::optional<BentBefore> bentBefore;
    bool dryFace = false;
    Kept kept;

    bool operator==(const Strips&) const = default;
};

struct Width {
    double at_m = 0;
    double width_m = 0.051;
    Kept kept;

    bool operator==(const Width&) const = default;
};

struct Pin {
    double at_m = 0;
    Kept kept;

    bool operator==(const Pin&) const = default;
};

struct Planed {  // taken off after the glue has cured, square to the faces
    double at_m = 0;
    double inside_m = 0;  // of the face that lay on the form
    double outside_m = 0;
    Kept kept;

    bool operator==(const Planed&) const = default;
};

struct Scarf {
    double slope = 10;  // 1 in slope
    Kept kept;

    bool operator==(const Scarf&) const = default;
};

struct Stack {
    Stack();
    Stack(const Stack& other);
    Stack(Stack&& other) noexcept;
    Stack& operator=(const Stack& other);
    Stack& operator=(Stack&& other) noexcept;
    ~Stack();
    bool operator==(const Stack& other) const;

    std::vector<Strips> strips{Strips{.count = 8}};  // from the form outwards
    std::vector<int> gluings;                        // after which strips a gluing ends; empty: all in one go
    double ripAllowance_m = 0.003;                   // on each edge
    std::vector<Width> widths{Width{}};              // in any order, no two at one place; linear between, level beyond
    double glueLine_m = 0.0003;
    double moisture = 0.10;
    double serviceMoisture = 0.12;
    double grainSlope = 0.03;
    double runsPastStart_m = 0.1;
    double runsPastEnd_m = 0.15;
    std::vector<Pin> pins;
    std::optional<Scarf> scarfedStart;
    std::optional<Scarf> scarfedEnd;
    std::vector<Planed> planedAfter;  // in any order, no two at one place; linear between, level beyond
    Kept kept;
};

enum class FormKind { solid, posts, inPlace };

struct Post {
    double at_m = 0;
    double width_m = 0.038;
    double holds_N = 3000;
    Kept kept;

    bool operator==(const Post&) const = default;
};

struct Form {
    Form();
    Form(const Form& other);
    Form(Form&& other) noexcept;
    Form& operator=(const Form& other);
    Form& operator=(Form&& other) noexcept;
    ~Form();
    bool operator==(const Form& other) const;

    FormKind kind = FormKind::solid;
    bool letGo = true;
    std::vector<Post> posts;
    std::optional<double> carriesOnStart_m;  // absent: as far as the strips; in place: 0
    std::optional<double> carriesOnEnd_m;
    double springbackFactor = 1;
    bool allowsForSpringback = true;  // false: the form has the wanted line itself
    std::optional<double> fixedAt_m;  // where form and wanted line are laid on each other; absent: where closing begins
    Kept kept;
};

enum class Faces { planed, sanded, sawn };
enum class Vessel { cup, tray };
enum class SurfaceWork { nothing, wiped, sandedAndWiped };  // before the faces are wetted
enum class MeasuredBy { scale, cup };

struct Tent {
    double from_s = 3600;
    double lasts_s = 0;
    double air_C = 30;
    Kept kept;

    bool operator==(const Tent&) const = default;
};

struct Glue {
    std::string adhesive = "epoxy_2_1_medium";
    double pasteYield_Pa = 100;  // like mayonnaise; of filled epoxy none is published (C)
    double air_C = 18;
    double humidity = 0.60;
    double airOverNight_C = 10;
    Tent tent;
    Faces faces = Faces::planed;
    double wetOut_kg_m2 = 0.080;
    double spread_kg_m2 = 0.250;
    bool bothFaces = false;  // thickened glue on both faces of a joint; else on one
    double thinner = 0;
    double filler = 0.06;  // kg per kg of mix
    double waste = 0.15;
    double cup_m3 = 500e-6;
    Vessel vessel = Vessel::cup;
    double scaleReads_kg = 0.001;
    MeasuredBy measuredBy = MeasuredBy::scale;
    double cupReads_m3 = 10e-6;  // between the marks of a measuring cup
    SurfaceWork surfaceWork = SurfaceWork::nothing;
    Kept kept;

    bool operator==(const Glue&) const = default;
};

struct StationTimes {
    double clamp_s = 60;
    double prop_s = 120;
    double jack_s = 90;
    double screw_s = 60;
    Kept kept;

    bool operator==(const StationTimes&) const = default;
};

struct Rates {
    double mix_s = 240;
    double wetOut_m2_s = 0.06 / 60;
    double spread_m2_s = 0.06 / 60;
    double stackStrip_s = 30;
    double carry_s = 180;
    StationTimes station;
    double scrape_m_s = 0.5 / 60;
    double wipe_m2_s = 0.5 / 60;
    double sand_m2_s = 0.15 / 60;
    double soak_s = 300;  // wait between wetting out and spreading
    Kept kept;

    bool operator==(const Rates&) const = default;
};

// What goes wrong on some days: how often in a gluing, and the time it costs then.
struct Mishap {
    double chance = 0;  // 0..1
    double lasts_s = 0;
    Kept kept;

    bool operator==(const Mishap&) const = default;
};

struct Mishaps {
    Mishap stripBreaks{.chance = 0.03, .lasts_s = 600};
    Mishap clampSlips{.chance = 0.10, .lasts_s = 180};
    Mishap cupSpills{.chance = 0.02, .lasts_s = 360};
    Kept kept;

    bool operator==(const Mishaps&) const = default;
};

struct Crew {
    int hands = 2;
    double startAt_s = 8.5 * 3600;  // whole seconds after midnight
    Rates rates;
    double uncertain = 0.20;      // each task's own scatter
    double pace = 0.20;           // scatter of the pace that all tasks of a day share
    double glueUncertain = 0.15;  // scatter of a day's open time and pot life
    Mishaps mishaps;
    Kept kept;

    bool operator==(const Crew&) const = default;
};

struct BadStretch {
    double from_m = 0;
    double to_m = 0;
    std::optional<double> acrossFrom_m;  // from the board's first edge; absent: from that edge on
    std::optional<double> acrossTo_m;    // absent: up to the other edge
    Kept kept;

    bool operator==(const BadStretch&) const = default;
};

enum class PricePer { board, boardFoot, cubicMetre };

struct Board {
    std::string name;
    double length_m = 2.4;
    double width_m = 0.15;
    double thickness_m = 0.032;
    int count = 1;
    std::string species = "oak_white";
    std::vector<BadStretch> bad;
    double price = 0;
    PricePer pricePer = PricePer::board;
    std::optional<double> moisture;  // absent: as the strips are
    Kept kept;

    bool operator==(const Board&) const = default;
};

enum class Saw { either, edge, face };  // strips ripped off a board's edge, or resawn from its face

// Which of the boards that one row of the list stands for: those of a count are numbered from 1.
struct StripPin {  // a strip that its user wants from this board
    int place = 1;
    std::string board;  // its name
    int number = 1;
    Kept kept;

    bool operator==(const StripPin&) const = default;
};

struct StripCut {  // a strip, or one part of it between scarfs, that has been sawn: that wood is used
    int place = 1;
    std::string board;
    int number = 1;
    double from_m = 0;  // along the board
    double length_m = 0;
    double acrossFrom_m = 0;  // across its width
    double acrossTo_m = 0;
    double deepFrom_m = 0;  // through its thickness
    double deepTo_m = 0;
    bool lost = false;  // it broke or was spoilt: another is needed
    Kept kept;

    bool operator==(const StripCut&) const = default;
};

enum class StockAim { wood, price };

struct Stock {
    std::vector<Board> boards;  // empty: those of the boat, which its pieces share
    std::vector<Board> buy;     // what can be bought; count: at most so many
    double kerf_m = 0.0024;
    double planing_m = 0.0005;
    double planerLeast_m = 0;  // no strip goes through the planer thinner than this
    double snipe_m = 0;        // that the planer spoils at each end
    Saw saw = Saw::either;
    StockAim aim = StockAim::wood;  // what there is to be least of
    double scarfSlope = 12;
    int extraScarfs = 0;              // in a strip, above the fewest that it needs
    std::optional<double> stagger_m;  // least distance of scarfs in strips side by side; absent: "auto"
    std::optional<int> spares;        // absent: "auto"
    std::vector<StripPin> pins;
    std::vector<StripCut> cut;
    Kept kept;

    bool operator==(const Stock&) const = default;
};

struct TimeMark {
    std::string task;
    double at_s = 0;
    Kept kept;

    bool operator==(const TimeMark&) const = default;
};

struct AirMark {
    double at_s = 0;
    double air_C = 18;
    Kept kept;

    bool operator==(const AirMark&) const = default;
};

struct LetGo {
    double after_s = 0;
    double chordForm_m = 0;
    double chordPiece_m = 0;
    double risePiece_m = 0;
    Kept kept;

    bool operator==(const LetGo&) const = default;
};

struct MeasuredOn {  // the piece as it was when a record was made: later edits do not rewrite it
    LineInput line;
    Stack stack;
    Form form;
    Kept kept;

    bool operator==(const MeasuredOn&) const = default;
};

struct Record {  // what really happened at a glue-up or a dry fit
    Record();
    Record(const Record& other);
    Record(Record&& other) noexcept;
    Record& operator=(const Record& other);
    Record& operator=(Record&& other) noexcept;
    ~Record();
    bool operator==(const Record& other) const;

    std::string when;  // 2026-05-02T08:30
    bool dryFit = false;
    std::optional<double> air_C;
    std::vector<TimeMark> marks;
    std::vector<AirMark> airs;  // the air as it was typed anew during the day
    std::vector<LetGo> letGo;
    std::optional<MeasuredOn> on;
    std::string notes;
    Kept kept;
};

struct Piece {
    Piece();
    Piece(const Piece& other);
    Piece(Piece&& other) noexcept;
    Piece& operator=(const Piece& other);
    Piece& operator=(Piece&& other) noexcept;
    ~Piece();
    bool operator==(const Piece& other) const;

    std::string id;  // unique in the boat; outlives order and name
    std::string name;
    LineInput line;
    Stack stack;
    Form form;
    Holding holding;
    Glue glue;
    Crew crew;
    Stock stock;
    std::vector<Record> record;
    Kept kept;
};

// The user's own wood and glue, beside those in resources/.
struct OwnSpecies {
    std::string id;
    std::string name;
    double sg = 0.6;
    double mor_Pa = 100e6;
    double moe_Pa = 12000e6;
    std::optional<double> compressionAlong_Pa;
    std::optional<double> compressionAcross_Pa;
    std::optional<double> shear_Pa;
    std::optional<double> shrinkRadial;  // share, green to ovendry
    std::optional<double> shrinkTangential;
    bool hardwood = true;
    std::string source;
    Kept kept;

    bool operator==(const OwnSpecies&) const = default;
};

// A strip of the user's own wood laid flat on two supports, with a weight in the middle.
struct Trial {
    std::string when;  // 2026-05-02T08:30
    std::string species;
    double span_m = 0.6;
    double width_m = 0.05;
    double thickness_m = 0.006;
    double weight_kg = 1;
    double sag_m = 0.005;  // by which the weight alone lowered the middle
    double readTo_m = 0.0005;
    double moisture = 0.12;
    bool broke = false;  // under this weight
    std::string notes;
    Kept kept;

    bool operator==(const Trial&) const = default;
};

enum class AdhesiveKind { epoxy, resorcinol, urea, polyurethane };

struct PotLife {  // one more point of the data sheet
    double lasts_s = 30 * 60;
    double at_C = 25;
    double mass_kg = 0.1;
    Kept kept;

    bool operator==(const PotLife&) const = default;
};

struct OwnAdhesive {
    std::string id;
    std::string name;
    std::array<double, 2> partsByVolume{2, 1};
    std::array<double, 2> partsByWeight{100, 43};
    std::array<double, 2> density_kg_m3{1120, 980};
    double potLife_s = 30 * 60;
    double potLifeAt_C = 25;
    double potLifeMass_kg = 0.1;
    std::vector<PotLife> morePotLives;
    double openTime_s = 90 * 60;
    double openTimeAt_C = 25;
    double least_C = 10;
    double handling_s = 8 * 3600;
    double fullCure_s = 72 * 3600;
    double cureAt_C = 25;
    AdhesiveKind kind = AdhesiveKind::epoxy;
    double spread_kg_m2 = 0.250;
    std::string source;
    Kept kept;

    bool operator==(const OwnAdhesive&) const = default;
};

struct Boat {
    Boat();
    Boat(const Boat& other);
    Boat(Boat&& other) noexcept;
    Boat& operator=(const Boat& other);
    Boat& operator=(Boat&& other) noexcept;
    ~Boat();
    bool operator==(const Boat& other) const;

    std::string name;
    std::string notes;
    Kept boatKept;  // of the object "boat"
    units::Display display;
    Kept displayKept;
    std::vector<OwnSpecies> species;
    std::vector<OwnAdhesive> adhesives;
    std::vector<Trial> trials;
    std::vector<Board> boards;  // shared by the pieces that list none of their own
    std::vector<Piece> pieces;
    Kept kept;  // of the whole file
};

}  // namespace fayline::model
