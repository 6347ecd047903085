// The tables and sentences of the holding panel without a window.
#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <QTest>

#include "app/panels/figures_model.hpp"
#include "app/panels/holding_changes.hpp"
#include "app/panels/holding_plots.hpp"
#include "app/panels/holding_rows.hpp"
#include "app/panels/holding_words.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/stations_model.hpp"
#include "app/panels/support_models.hpp"
#include "app/panels/tools_model.hpp"
#include "core/math/count.hpp"
#include "tests/app/held_piece.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

template <typename Model>
void followInto(Taken& taken, Model* model) {
    taken.follow(static_cast<PieceTable*>(model),
                 [model](const Shown& shown) { model->show(std::make_shared<const Shown>(shown)); });
}

QString shownText(const QAbstractItemModel& model, int row, int column) {
    return model.index(row, column).data().toString();
}

bool saysNoNumber(const QString& text) {
    return text.contains("inf", Qt::CaseInsensitive) || text.contains("nan", Qt::CaseInsensitive);
}

}  // namespace

class HoldingModelsTest : public QObject {
    Q_OBJECT
private slots:
    void StationsShowWhatTheyPullOfWhatTheyCan() {
        StationsModel model;
        const QAbstractItemModelTester tester(&model);
        const Shown shown = heldByHand();
        model.show(std::make_shared<const Shown>(shown));
        QCOMPARE(shownText(model, 1, StationsModel::pullColumn), QStringLiteral("200 N"));
        QCOMPARE(model.index(1, StationsModel::pullColumn).data(underRole).toString(), QStringLiteral("8 %"));
        QCOMPARE(model.index(1, StationsModel::pullColumn).data(barRole).toDouble(), 200.0 / 2500);
        QCOMPARE(model.index(2, StationsModel::gapColumn).data(sortRole).toDouble(), 2e-4);
        QCOMPARE(model.index(2, StationsModel::gapColumn).data(underRole).toString(), QStringLiteral("closed"));
        // Beyond the limit of the piece the gap is marked.
        const double limit_m = shown.piece.holding.gapLimit_m;
        for (int row = 0; row < model.rowCount(); ++row) {
            const QModelIndex gap = model.index(row, StationsModel::gapColumn);
            QCOMPARE(gap.data(severityRole).isValid(), gap.data(sortRole).toDouble() > limit_m);
        }
    }

    void PullsAreShownInTheUnitsOfTheBoat() {
        StationsModel model;
        Shown shown = heldByHand();
        shown.display.forces = units::ForceUnit::poundForce;
        model.show(std::make_shared<const Shown>(shown));
        QVERIFY(shownText(model, 1, StationsModel::pullColumn).endsWith("lbf"));
        QCOMPARE(shownText(model, 1, StationsModel::mostColumn), QStringLiteral("562 lbf"));
    }

    void WithoutAnAnswerStationsShowADashAndStayToType() {
        StationsModel model;
        const QAbstractItemModelTester tester(&model);
        Shown shown = heldByHand();
        auto plan = std::make_shared<plan::Plan>(*shown.plan);
        plan->holding.held = {};
        shown.plan = plan;
        model.show(std::make_shared<const Shown>(shown));
        QCOMPARE(shownText(model, 0, StationsModel::pullColumn), QString(QChar(0x2013)));
        QVERIFY(model.index(0, StationsModel::pullColumn).flags() & Qt::ItemIsEditable);
        plan = std::make_shared<plan::Plan>(*heldByHand().plan);
        plan->holding.held.stations[0].pull_N = endless;
        plan->holding.held.stations[0].gap_m = std::nan("");
        shown.plan = plan;
        model.show(std::make_shared<const Shown>(shown));
        for (int column = 0; column < StationsModel::columns; ++column)
            QVERIFY(!saysNoNumber(shownText(model, 0, column)));
    }

    void AGivenPullIsTypedAndTakenBack() {
        StationsModel model;
        const QAbstractItemModelTester tester(&model);
        Taken taken{heldByHand(), {}};
        followInto(taken, &model);
        model.setData(model.index(0, StationsModel::pullColumn), "800", Qt::EditRole);
        QCOMPARE(*taken.shown.piece.holding.stations[0].pull_N, 800.0);
        model.setData(model.index(0, StationsModel::givenColumn), "200 lbf", Qt::EditRole);
        QVERIFY(std::abs(*taken.shown.piece.holding.stations[0].pull_N - 889.644) < 0.001);
        model.setData(model.index(0, StationsModel::givenColumn), "", Qt::EditRole);
        QVERIFY(!taken.shown.piece.holding.stations[0].pull_N);
        model.setData(model.index(0, StationsModel::mostColumn), "3 kN", Qt::EditRole);
        QCOMPARE(taken.shown.piece.holding.stations[0].most_N, 3000.0);
        model.setData(model.index(0, StationsModel::padColumn), "50 mm", Qt::EditRole);
        QCOMPARE(taken.shown.piece.holding.stations[0].pad_m, 0.05);
        model.setData(model.index(0, StationsModel::sideColumn), int(Qt::Checked), Qt::CheckStateRole);
        QVERIFY(taken.shown.piece.holding.stations[0].side);
        QCOMPARE(shownText(model, 0, StationsModel::pullColumn), QStringLiteral("side"));
        QCOMPARE(taken.names.size(), 6);
    }

    void WhatIsNoForceIsKeptWithItsReason() {
        StationsModel model;
        const QAbstractItemModelTester tester(&model);
        Taken taken{heldByHand(), {}};
        followInto(taken, &model);
        const model::Piece before = taken.shown.piece;
        for (const char* text : {"strong", "-800", "nan", "1e99"}) {
            model.setData(model.index(0, StationsModel::mostColumn), text, Qt::EditRole);
            QVERIFY2(taken.shown.piece == before, text);
            QVERIFY2(!model.index(0, StationsModel::mostColumn).data(faultRole).toString().isEmpty(), text);
            model.dropDraft(model.index(0, StationsModel::mostColumn));
        }
    }

    void AdoptingTheProposalKeepsTheFixedStationsAndIsOneChange() {
        const Shown shown = heldByHand();
        const std::optional<Change> change = adoptProposal(shown);
        QVERIFY(change.has_value());
        QVERIFY(!change->name.isEmpty());
        const std::vector<model::Station>& after = change->after.holding.stations;
        QCOMPARE(after.size(), 2u);
        QVERIFY(std::find(after.begin(), after.end(), shown.piece.holding.stations[2]) != after.end());
        model::Piece expected = shown.piece;
        expected.holding.stations = after;
        QVERIFY(change->after == expected);
    }

    void NothingIsAdoptedOfAProposalThatIsNotOfThisPiece() {
        QVERIFY(!adoptProposal(heldByHand(false)));
        Shown shown = heldByHand();
        shown.outOfDate = true;
        QVERIFY(!adoptProposal(shown));
        QVERIFY(!runOnAsNeeded(shown));
        shown.outOfDate = false;
        auto plan = std::make_shared<plan::Plan>(*shown.plan);
        plan->holdingStudy->proposal.finished = false;
        shown.plan = plan;
        QVERIFY(!adoptProposal(shown));
        QVERIFY(!adoptProposal(Shown{}));
    }

    void TheOverRunIsLengthenedWhereItIsShortAndNowhereElse() {
        Shown shown = heldByHand();
        auto metric = std::make_shared<plan::Plan>(*shown.plan);
        shown.display.lengths = metric->display.lengths = units::LengthNotation::millimetres;
        shown.plan = metric;
        shown.piece.stack.runsPastStart_m = 0.1;
        shown.piece.form.carriesOnStart_m = 0.05;
        const model::Piece before = shown.piece;
        const std::optional<Change> change = runOnAsNeeded(shown);
        QVERIFY(change.has_value());
        QVERIFY(std::abs(change->after.stack.runsPastStart_m - 0.13) < 1e-9);
        QVERIFY(std::abs(*change->after.form.carriesOnStart_m - 0.13) < 1e-9);
        QCOMPARE(change->after.stack.runsPastEnd_m, before.stack.runsPastEnd_m);
        shown.piece = change->after;
        QVERIFY(!runOnAsNeeded(shown));
        shown.piece.stack.runsPastStart_m = 0.5;  // more than is needed stays
        QVERIFY(!runOnAsNeeded(shown));
    }

    void RowsThatSayWhatTheySaidAreLeftAlone() {
        FiguresModel model(closingColumns());
        const QAbstractItemModelTester tester(&model);
        const Shown shown = heldByHand();
        plan::HoldingStudy study = *shown.plan->holdingStudy;
        QSignalSpy changed(&model, &QAbstractItemModel::dataChanged);
        model.show(closingRows(study, shown.piece, shown.display));
        QCOMPARE(model.rowCount(), math::countOf(study.closing));
        QCOMPARE(changed.count(), 0);
        study.closing[3].pull_N = 999;
        model.show(closingRows(study, shown.piece, shown.display));
        QCOMPARE(changed.count(), 1);
        QCOMPARE(changed[0].at(0).toModelIndex().row(), 3);
        // Of a moment ago: the same rows, fainter.
        QVERIFY(!model.index(0, 0).data(faintRole).toBool());
        model.show(closingRows(study, shown.piece, shown.display), true);
        QVERIFY(model.index(0, 0).data(faintRole).toBool());
        model.show({});
        QCOMPARE(model.rowCount(), 0);
    }

    void TheClosingOrderTellsPullTailAndFloor() {
        FiguresModel model(closingColumns());
        const Shown shown = heldByHand();
        model.show(closingRows(*shown.plan->holdingStudy, shown.piece, shown.display));
        QCOMPARE(shownText(model, 0, 0), QStringLiteral("1"));
        QCOMPARE(shownText(model, 0, 2), QStringLiteral("150 N"));
        QCOMPARE(model.index(0, 3).data(underRole).toString(), QStringLiteral("in the way"));
        QVERIFY(model.index(0, 3).data(severityRole).isValid());
        QVERIFY(!model.index(1, 3).data(severityRole).isValid());
        QCOMPARE(model.index(1, 0).data(placeRole).toDouble(), shown.piece.holding.stations[1].at_m);
        // The boat's margin at each step: nothing where none pushes, a caution below what is asked, a stop below 1.
        plan::HoldingStudy study = *shown.plan->holdingStudy;
        const auto boatOf = [](double margin) {
            holding::HullPlan hull;
            hull.margin = margin;
            return std::optional<holding::HullPlan>(hull);
        };
        study.closingLoads.hulls = {std::nullopt, boatOf(std::numeric_limits<double>::infinity()), boatOf(1.4),
                                    boatOf(0.9)};
        model.show(closingRows(study, shown.piece, shown.display));
        QCOMPARE(model.index(0, 1).data(underRole).toString(), QString());
        QCOMPARE(model.index(1, 1).data(underRole).toString(), QString());
        QCOMPARE(model.index(2, 1).data(underRole).toString(), QStringLiteral("1.4"));
        QCOMPARE(model.index(3, 1).data(underRole).toString(), QStringLiteral("0.9"));
        QVERIFY(!model.index(1, 1).data(severityRole).isValid());
        QVERIFY(model.index(2, 1).data(severityRole) != model.index(3, 1).data(severityRole));
        // A plan of other stations than the piece has by now says no places for those that are gone.
        model::Piece fewer = shown.piece;
        fewer.holding.stations.resize(1);
        model.show(closingRows(*shown.plan->holdingStudy, fewer, shown.display));
        QVERIFY(!model.index(1, 0).data(placeRole).isValid());
    }

    void WhatIsEndlessOrMissingIsSaidInWords() {
        const units::Display display;
        holding::EndNeed need{std::nullopt, 2500, std::nullopt, std::nullopt, std::nan("")};
        QString words = overRunWords("At the start", need, 0.1, display);
        QVERIFY2(!saysNoNumber(words) && words.contains("No extra length") && words.contains("not known"),
                 qPrintable(words));
        need = {0.13, 2500, 4000, 0.02, 7e-4};
        words = overRunWords("At the start", need, 0.1, display);
        QVERIFY2(words.contains("130 mm") && words.contains("4000 N") && words.contains("20 mm"), qPrintable(words));
        words = overRunWords("At the start", need, 0.2, display);
        QVERIFY2(words.contains("enough") && !words.contains("instead"), qPrintable(words));

        plan::HoldingPlan holding;
        QVERIFY(hullWords(holding, display).isEmpty());
        holding.hull.emplace();
        QVERIFY(hullWords(holding, display).contains("Nothing pushes"));
        holding.hull->totalPush_N = 500;
        holding.hull->margin = endless;
        holding.hull->mostPush_N = endless;
        words = hullWords(holding, display);
        QVERIFY2(!saysNoNumber(words) && words.contains("stays down"), qPrintable(words));
        holding.hull->standsAtRest = false;
        QVERIFY(hullWords(holding, display).contains("does not stand"));

        holding::Proposal proposal;
        QVERIFY(proposalWords(proposal, display).contains("No stations"));
        proposal.stations.push_back({stationAt(0.1), holding::Governs::end, endless, std::nan("")});
        proposal.met = false;
        proposal.unmet = holding::Governs::gap;
        proposal.withinCounts = false;
        proposal.tools = 3;
        proposal.largest.gap_m = endless;
        words = proposalWords(proposal, display);
        QVERIFY2(!saysNoNumber(words) && words.contains("gap limit") && words.contains("have only 3"),
                 qPrintable(words));
        plan::HoldingStudy study;
        study.proposal = proposal;
        for (const FigureRow& row : proposalRows(study, display))
            for (const FigureCell& cell : row.cells) QVERIFY(!saysNoNumber(cell.text));
        study.carried = studyByHand({}).carried;
        QVERIFY2(carriedWords(study.carried, display).contains("400 mm and 1500 mm"),
                 qPrintable(carriedWords(study.carried, display)));
        study.carried.sag_m = endless;
        QVERIFY(carriedWords(study.carried, display).isEmpty());
    }

    void PressingIsToldAsAWishWhereTheGlueFillsGaps() {
        const units::Display display;
        holding::Proposal proposal;
        proposal.stations.push_back({stationAt(0.1), holding::Governs::end, 137, 0, holding::HoldState::closes});
        proposal.stations.push_back({stationAt(0.9, model::HoldKind::strap), holding::Governs::fixedOne, 500, 0});
        proposal.pressingIsWish = true;
        proposal.forEverything = 7;
        QVERIFY2(proposalWords(proposal, display).contains("squeeze-out everywhere: 7; this glue needs contact only"),
                 qPrintable(proposalWords(proposal, display)));
        proposal.forEverything = 2;
        QVERIFY(!proposalWords(proposal, display).contains("everywhere"));
        // A light pull by no figure, and no gap of a strap.
        plan::HoldingStudy study;
        study.proposal = proposal;
        const std::vector<FigureRow> rows = proposalRows(study, display);
        QCOMPARE(rows[0].cells[2].text, QStringLiteral("light"));
        QCOMPARE(rows[1].cells[3].text, QString(QChar(0x2013)));
        // What a pad's reach hangs on, and what a thinner mix gains.
        Shown shown = heldByHand();
        auto plan = std::make_shared<plan::Plan>(*shown.plan);
        holding::PressingNeed& need = plan->holding.pressing[0];
        need.pressure_Pa = 17000;
        need.spacing_m = 0.178;
        need.thinnerSpacing_m = 0.212;
        need.isWish = true;
        shown.plan = plan;
        shown.display = display;
        const QString words = stationWords(shown, plan->holding.stations[0].index);
        QVERIFY2(words.contains("squeeze glue out there: 17 kPa: pads no further apart than 170 mm (set by the "
                                "stiffness of the strips above). With a mix half as stiff: 210 mm."),
                 qPrintable(words));
    }

    void APropThatSlipsOrCarriesTooMuchIsMarkedWithItsSource() {
        plan::HoldingPlan holding;
        holding::PropPlan prop;
        prop.thrust_N = 900;
        prop.allowable_N = 800;
        prop.most_N = 2500;
        prop.slips = holding::Slips::foot;
        prop.stopsHold = false;
        prop.columnSource = {"NDS 3.7", units::Mark::fromMemory};
        holding.props.push_back(prop);
        const std::vector<FigureRow> rows = propRows(holding, {}, {});
        QCOMPARE(rows.size(), 1u);
        QCOMPARE(rows[0].cells[1].text, QStringLiteral("900 N"));
        QCOMPARE(rows[0].cells[1].under, QStringLiteral("800 N"));
        QVERIFY(rows[0].cells[1].severity.has_value());
        QVERIFY(rows[0].cells[1].source.contains("NDS 3.7"));
        QCOMPARE(rows[0].cells[3].text, QStringLiteral("at its foot"));
        QVERIFY(rows[0].cells[3].severity.has_value());
        QCOMPARE(rows[0].cells[4].text, QStringLiteral("none"));
        holding.props[0].stopsHold = true;
        holding.props[0].thrust_N = 700;
        QVERIFY(!propRows(holding, {}, {})[0].cells[1].severity);
        QVERIFY(!propRows(holding, {}, {})[0].cells[3].severity);
    }

    void ToolsAreTypedAddedAndRemoved() {
        ToolsModel model;
        const QAbstractItemModelTester tester(&model);
        Taken taken{heldByHand(), {}};
        followInto(taken, &model);
        QCOMPARE(model.rowCount(), 1);
        model.addTool(0);
        QCOMPARE(model.rowCount(), 2);
        model.setData(model.index(1, ToolsModel::nameColumn), "Cam clamp", Qt::EditRole);
        model.setData(model.index(1, ToolsModel::mostColumn), "1.2 kN", Qt::EditRole);
        model.setData(model.index(1, ToolsModel::countColumn), "6", Qt::EditRole);
        model.setData(model.index(1, ToolsModel::pitchColumn), "4 mm", Qt::EditRole);
        const model::Tool& tool = taken.shown.piece.holding.tools[1];
        QCOMPARE(tool.name, std::string("Cam clamp"));
        QCOMPARE(tool.most_N, 1200.0);
        QCOMPARE(tool.count, 6);
        QCOMPARE(*tool.pitch_m, 0.004);
        model.setData(model.index(1, ToolsModel::openingColumn), "", Qt::EditRole);
        QVERIFY(!taken.shown.piece.holding.tools[1].opening_m);
        const model::Piece good = taken.shown.piece;
        for (const auto& [column, text] :
             std::initializer_list<std::pair<int, const char*>>{{ToolsModel::countColumn, "-1"},
                                                                {ToolsModel::countColumn, "many"},
                                                                {ToolsModel::mostColumn, "-5"},
                                                                {ToolsModel::kindColumn, "glue"},
                                                                {ToolsModel::padColumn, ""}}) {
            model.setData(model.index(1, column), text, Qt::EditRole);
            QVERIFY2(taken.shown.piece == good, text);
            QVERIFY2(!model.unread().isEmpty(), text);
            model.dropDraft(model.index(1, column));
        }
        model.removeTools({1});
        QCOMPARE(model.rowCount(), 1);
    }

    void WhatIsShortAtHandIsCountedAndSaid() {
        holding::AtHand atHand;
        QVERIFY(atHandWords(atHand, {}).isEmpty());
        atHand.counts.push_back({model::HoldKind::clamp, 5, 3, true, {1, 4}});
        atHand.counts.push_back({model::HoldKind::prop, 2, 0, false, {}});
        atHand.leftWithout = 2;
        const std::vector<FigureRow> rows = countRows(atHand);
        QCOMPARE(rows[0].cells[3].text, QStringLiteral("2"));
        QVERIFY(rows[0].cells[3].severity.has_value());
        QCOMPARE(rows[1].cells[2].text, QStringLiteral("not listed"));
        atHand.splitAfterStrip = 4;
        atHand.splitShare = 0.5;
        atHand.splitServes = 2;
        const QString words = atHandWords(atHand, {});
        QVERIFY2(words.contains("after strip 4") && words.contains("50 %"), qPrintable(words));
    }

    void PostsKeepTheirOrderAndShowTheirThrust() {
        PostsModel model;
        const QAbstractItemModelTester tester(&model);
        Taken taken{shownSample("marram.fayline", 1), {}};
        followInto(taken, &model);
        QVERIFY(model.rowCount() >= 3);
        const int rows = model.rowCount();
        model.addPost(0.1);
        QCOMPARE(model.rowCount(), rows + 1);
        QCOMPARE(model.index(1, PostsModel::atColumn).data(sortRole).toDouble(), 0.1);
        model.setData(model.index(1, PostsModel::holdsColumn), "500 N", Qt::EditRole);
        QCOMPARE(taken.shown.piece.form.posts[1].holds_N, 500.0);
        Shown loaded = taken.shown;
        auto plan = std::make_shared<plan::Plan>(*loaded.plan);
        plan->holding.posts = {{1, 0.1, 700, 500}};
        loaded.plan = plan;
        model.show(std::make_shared<const Shown>(loaded));
        QCOMPARE(shownText(model, 1, PostsModel::thrustColumn), QStringLiteral("700 N"));
        QVERIFY(model.index(1, PostsModel::thrustColumn).data(severityRole).isValid());
        QCOMPARE(shownText(model, 0, PostsModel::thrustColumn), QString(QChar(0x2013)));
        model.removePost(1);
        QCOMPARE(model.rowCount(), rows);
    }

    void BlocksAreMovedAndShowTheirPush() {
        BlocksModel model;
        const QAbstractItemModelTester tester(&model);
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        QCOMPARE(model.rowCount(), 0);
        model.addBlock();
        model.addBlock();
        QCOMPARE(model.rowCount(), 2);
        QVERIFY(!(taken.shown.piece.holding.hull.blocks[0] == taken.shown.piece.holding.hull.blocks[1]));
        model.setData(model.index(0, BlocksModel::xColumn), "250 mm", Qt::EditRole);
        QCOMPARE(taken.shown.piece.holding.hull.blocks[0].x_m, 0.25);
        Shown loaded = taken.shown;
        auto plan = std::make_shared<plan::Plan>(*loaded.plan);
        plan->holding.hull.emplace();
        plan->holding.hull->blocks = {{0, 0.25, 0, 1200, 1000, false}, {1, 1, 0, 0, 900, true}};
        loaded.plan = plan;
        model.show(std::make_shared<const Shown>(loaded));
        QCOMPARE(shownText(model, 0, BlocksModel::pushColumn), QStringLiteral("1200 N"));
        QCOMPARE(shownText(model, 1, BlocksModel::pushColumn), QStringLiteral("lifts"));
        model.removeBlock(0);
        QCOMPARE(model.rowCount(), 1);
    }

    void TheTwoPicturesLieOnOneScaleAndDrawTheLimit() {
        const Shown shown = heldByHand();
        const HoldingPictures pictures = holdingPictures(std::make_shared<const Shown>(shown));
        QCOMPARE(pictures.gap.from_m, pictures.pull.from_m);
        QCOMPARE(pictures.gap.to_m, pictures.pull.to_m);
        QVERIFY(pictures.gap.limit.has_value());
        QCOMPARE(pictures.gap.limit->value, shown.piece.holding.gapLimit_m);
        QVERIFY(pictures.gap.most > shown.piece.holding.gapLimit_m);
        QCOMPARE(pictures.pull.stems.size(), shown.piece.holding.stations.size());
        QCOMPARE(pictures.pull.stems[1].value, 200.0);
        QCOMPARE(*pictures.pull.stems[1].most, 2500.0);
        QVERIFY(pictures.pull.most >= 2500);
        QVERIFY(!saysNoNumber(pictures.gap.reading(0.5)) && !saysNoNumber(pictures.pull.reading(0.5)));
        QVERIFY2(pictures.pull.reading(0).contains("1 pulls light, under 200 N"), qPrintable(pictures.pull.reading(0)));
    }

    void PicturesWithoutAnAnswerStillShowTheTrimLines() {
        Shown shown = heldByHand();
        auto plan = std::make_shared<plan::Plan>(*shown.plan);
        plan->holding.held = {};
        plan->holding.held.samples.push_back({0.1, endless, std::nan(""), endless});
        shown.plan = plan;
        const HoldingPictures pictures = holdingPictures(std::make_shared<const Shown>(shown));
        QVERIFY(pictures.gap.curves.empty() && pictures.pull.stems.empty());
        QVERIFY(pictures.gap.marks.size() >= 2);
        QVERIFY(std::isfinite(pictures.gap.most) && std::isfinite(pictures.pull.most));
        QVERIFY(!saysNoNumber(pictures.gap.reading(0.1)) && !saysNoNumber(pictures.pull.reading(0.1)));
    }

    void ASectionIsReadAsItIsWritten() {
        const units::Display metric;
        units::Display inches;
        inches.lengths = units::LengthNotation::inches;
        QCOMPARE((*readSection("89 x 38", metric))[0], 0.089);
        QCOMPARE((*readSection("89 x 38", metric))[1], 0.038);
        const auto section = readSection("3 1/2 x 1 1/2 in", inches);
        QVERIFY(std::abs((*section)[0] - 0.0889) < 1e-9);
        QCOMPARE(*readSection(writeSection(section, inches), inches), *section);
        QVERIFY(!readSection(" ", metric).has_value());
        QVERIFY_EXCEPTION_THROWN(readSection("89", metric), units::InputError);
        QVERIFY_EXCEPTION_THROWN(readSection("89 x 38 x 4", metric), units::InputError);
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QCoreApplication, HoldingModelsTest>(argc, argv);
}
#include "holding_models_test.moc"
