// The tables of the panels without a window: what they show, what they ask for, what they refuse and keep.
#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <QTest>
#include <cmath>

#include "app/panels/offsets_model.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/stack_models.hpp"
#include "app/panels/stations_model.hpp"
#include "app/panels/strips_panel.hpp"
#include "core/math/count.hpp"
#include "tests/app/shown_piece.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

constexpr double inch = units::inch_m;

template <typename Model>
void followInto(Taken& taken, Model* model) {
    taken.follow(static_cast<PieceTable*>(model),
                 [model](const Shown& shown) { model->show(std::make_shared<const Shown>(shown)); });
}

QString shownText(const QAbstractItemModel& model, int row, int column) {
    return model.index(row, column).data().toString();
}

}  // namespace

class ModelsTest : public QObject {
    Q_OBJECT
private slots:
    void TypingAnOffsetChangesThatOffsetAndNothingElse() {
        OffsetsModel model;
        const QAbstractItemModelTester tester(&model);
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        const model::Piece before = taken.shown.piece;
        QVERIFY(model.setData(model.index(5, OffsetsModel::xColumn), "1-6-0", Qt::EditRole));
        QCOMPARE(taken.names, QStringList{QStringLiteral("Set WL 12 x to 1-6-0")});
        model::Piece expected = before;
        expected.line.points[5].x_m = 18 * inch;
        expected.line.points[5].written[0] = "1-6-0";
        QVERIFY(taken.shown.piece == expected);
        QCOMPARE(shownText(model, 5, OffsetsModel::xColumn), QStringLiteral("1-6-0"));
    }

    void WhatCouldNotBeReadStaysWithItsPieceAndItsBoat() {
        OffsetsModel model;
        const Shown stem = shownSample();
        model.show(std::make_shared<const Shown>(stem));
        const auto typeNonsense = [&] {
            model.setData(model.index(5, OffsetsModel::xColumn), "nonsense", Qt::EditRole);
            return shownText(model, 5, OffsetsModel::xColumn) == QStringLiteral("nonsense");
        };
        QVERIFY(typeNonsense());
        Shown moved = stem;  // down in the list
        moved.pieceIndex = 2;
        model.show(std::make_shared<const Shown>(moved));
        QCOMPARE(shownText(model, 5, OffsetsModel::xColumn), QStringLiteral("nonsense"));
        Shown otherBoat = moved;
        otherBoat.boatNumber = 7;
        model.show(std::make_shared<const Shown>(otherBoat));
        QVERIFY(shownText(model, 5, OffsetsModel::xColumn) != QStringLiteral("nonsense"));
        QVERIFY(typeNonsense());
        Shown otherPiece = otherBoat;  // in its place
        otherPiece.piece.id = "another";
        model.show(std::make_shared<const Shown>(otherPiece));
        QVERIFY(shownText(model, 5, OffsetsModel::xColumn) != QStringLiteral("nonsense"));
    }

    void ACommaOfThousandsIsNotReadAsADecimalOne() {
        QCOMPARE(readNumber("1,5"), 1.5);
        QCOMPARE(readNumber("1,200.5"), 1200.5);
        QVERIFY_EXCEPTION_THROWN(readNumber("1,200"), units::InputError);
        QVERIFY_EXCEPTION_THROWN(way::force().read("1,200 N", {}), units::InputError);
    }

    void WhatWasWrittenIsShownAsItWasUntilItNoLongerSaysThePlace() {
        OffsetsModel model;
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        model.setData(model.index(0, OffsetsModel::xColumn), "3' 9 1/16\"", Qt::EditRole);
        QCOMPARE(shownText(model, 0, OffsetsModel::xColumn), QStringLiteral("3' 9 1/16\""));
        taken.shown.piece.line.points[0].x_m += 1 * inch;  // dragged
        model.show(std::make_shared<const Shown>(taken.shown));
        QCOMPARE(shownText(model, 0, OffsetsModel::xColumn), QStringLiteral("3-10-0+"));
        // A bare 27.5 is inches to one reader and millimetres to another.
        taken.shown.display.lengths = units::LengthNotation::inches;
        model.show(std::make_shared<const Shown>(taken.shown));
        model.setData(model.index(0, OffsetsModel::xColumn), "27.5", Qt::EditRole);
        taken.shown.display.lengths = units::LengthNotation::millimetres;
        model.show(std::make_shared<const Shown>(taken.shown));
        QCOMPARE(shownText(model, 0, OffsetsModel::xColumn), QStringLiteral("698.5"));
    }

    void ATextThatCannotBeReadIsKeptWithItsReasonAndThePieceStaysAsItWas() {
        OffsetsModel model;
        const QAbstractItemModelTester tester(&model);
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        const QModelIndex cell = model.index(5, OffsetsModel::yColumn);
        const QString before = cell.data().toString();
        model.setData(cell, "2-13-4", Qt::EditRole);
        QVERIFY(taken.names.isEmpty());
        QCOMPARE(cell.data().toString(), QStringLiteral("2-13-4"));
        QVERIFY(cell.data(faultRole).toString().contains("13"));
        QVERIFY2(model.unread().startsWith("WL 12, y: "), qPrintable(model.unread()));
        // A plan that comes meanwhile takes nothing away.
        model.show(std::make_shared<const Shown>(taken.shown));
        QCOMPARE(cell.data().toString(), QStringLiteral("2-13-4"));
        // Nor does a point that comes before it; the text goes along with its row.
        model.insertPoint(2);
        QVERIFY2(model.unread().startsWith("WL 12, y: "), qPrintable(model.unread()));
        QCOMPARE(model.index(6, OffsetsModel::yColumn).data().toString(), QStringLiteral("2-13-4"));
        model.removePoints({2});
        model.dropDraft(cell);
        QCOMPARE(cell.data().toString(), before);
        QVERIFY(model.unread().isEmpty());
        model.setData(cell, "1/0", Qt::EditRole);
        model.setData(cell, "1-0-4", Qt::EditRole);
        QVERIFY(model.unread().isEmpty());
        QCOMPARE(taken.names.size(), 3);
    }

    void ANewPlanChangesRowsInPlaceAndNeverResets() {
        OffsetsModel model;
        const QAbstractItemModelTester tester(&model);
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        const QSignalSpy resets(&model, &QAbstractItemModel::modelReset);
        const QPersistentModelIndex third(model.index(2, 0));
        const QPersistentModelIndex last(model.index(model.rowCount() - 1, 0));
        model.setData(model.index(0, OffsetsModel::mustPassColumn), int(Qt::Checked), Qt::CheckStateRole);
        model.insertPoint(5);
        QCOMPARE(third.row(), 2);
        QCOMPARE(last.row(), 12);
        QCOMPARE(last.data().toString(), QStringLiteral("Head"));
        model.removePoints({5, 3});
        QCOMPARE(model.rowCount(), 11);
        QCOMPARE(resets.count(), 0);
        QCOMPARE(taken.names, QStringList({"Fix the line at Scarf", "Insert a point", "Remove 2 points"}));
    }

    void AnInsertedPointLiesOnTheFairLineSoThatNothingMoves() {
        OffsetsModel model;
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        const double radius = 1 / std::abs(taken.shown.plan->line.tightest.curvature_per_m);
        const line::Line fair = taken.shown.plan->line.fair.line;
        model.insertPoint(7);
        const model::Point& point = taken.shown.piece.line.points[7];
        QVERIFY(std::abs(fair.nearest(point.x_m, point.y_m).distance_m) < 1e-6);
        QVERIFY(std::abs(1 / std::abs(taken.shown.plan->line.tightest.curvature_per_m) - radius) < 0.02 * radius);
    }

    void PointsMoveUpAndDownTheTableAndNotBeyondIt() {
        OffsetsModel model;
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        const auto before = taken.shown.piece.line.points;
        model.movePoint(0, -1);
        model.movePoint(11, +1);
        QVERIFY(taken.names.isEmpty());
        model.movePoint(3, -1);
        QVERIFY(taken.shown.piece.line.points[2] == before[3]);
        QVERIFY(taken.shown.piece.line.points[3] == before[2]);
        model.movePoint(2, +1);
        QVERIFY(taken.shown.piece.line.points == before);
    }

    void WhatIsWrongWithAPointMarksItsRow() {
        OffsetsModel model;
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        // Two equal neighbours make no line.
        model.setData(model.index(3, OffsetsModel::xColumn), shownText(model, 2, OffsetsModel::xColumn), Qt::EditRole);
        model.setData(model.index(3, OffsetsModel::yColumn), shownText(model, 2, OffsetsModel::yColumn), Qt::EditRole);
        QVERIFY(taken.shown.outOfDate);
        QVERIFY(taken.shown.reasonPath.startsWith("line.points["));
        int marked = 0;
        for (int row = 0; row < model.rowCount(); ++row) {
            const bool atFault = model.index(row, OffsetsModel::labelColumn).data(faultRole).isValid();
            QCOMPARE(atFault, taken.shown.reasonPath.startsWith(QStringLiteral("line.points[%1]").arg(row)));
            marked += atFault;
        }
        QCOMPARE(marked, 1);
    }

    void MisfitsAreThePlansAndTheBarIsFullAtTheCeiling() {
        OffsetsModel model;
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        for (int row = 0; row < model.rowCount(); ++row) {
            const double misfit = taken.shown.plan->line.fair.points[static_cast<std::size_t>(row)].misfit_m;
            const QModelIndex cell = model.index(row, OffsetsModel::misfitColumn);
            QCOMPARE(cell.data(sortRole).toDouble(), misfit);
            QCOMPARE(cell.data(barRole).toDouble(),
                     std::clamp(misfit / taken.shown.piece.line.fairWithin_m, -1.0, 1.0));
            QCOMPARE(cell.data().toString(), QString::fromStdString(units::writeSmall(misfit, taken.shown.display)));
        }
        // A plan of another number of points says nothing about these.
        Shown other = taken.shown;
        other.piece.line.points.pop_back();
        other.outOfDate = true;
        model.show(std::make_shared<const Shown>(other));
        QCOMPARE(shownText(model, 0, OffsetsModel::misfitColumn), QString(QChar(0x2013)));
    }

    void AMisreadOffsetIsOfferedItsRepairAsOneChange() {
        Taken taken{shownSample("marram_misread.fayline"), {}};
        deepenShown(taken.shown);
        const std::vector<Repair> repairs = repairsOf(taken.shown);
        QVERIFY(!repairs.empty());
        const Repair& repair = repairs.front();
        QCOMPARE(repair.points.size(), 1u);
        const int point = repair.points.front();
        const QString name = pointName(taken.shown.piece, point);
        QCOMPARE(repair.change.name, QStringLiteral("Correct ") + name);
        QVERIFY2(repair.text.startsWith(name) && repair.text.contains("; try "), qPrintable(repair.text));
        OffsetsModel model;
        model.show(std::make_shared<const Shown>(taken.shown));
        QCOMPARE(model.index(point, OffsetsModel::labelColumn).data(severityRole).toInt(),
                 int(plan::Severity::caution));
        taken.shown.piece = repair.change.after;
        planAnew(taken.shown);
        deepenShown(taken.shown);
        QVERIFY(taken.shown.plan->line.misread.suspects.empty());
        // Nothing is offered for a piece that the plan is not of.
        taken.shown.outOfDate = true;
        QVERIFY(repairsOf(taken.shown).empty());
    }

    void StripsShowShareOfBreakingWithItsSource() {
        StripsModel model;
        const QAbstractItemModelTester tester(&model);
        const Shown shown = shownSample();
        model.show(std::make_shared<const Shown>(shown));
        QCOMPARE(model.rowCount(), math::countOf(shown.plan->stack.strips));
        for (int row = 0; row < model.rowCount(); ++row) {
            const laminate::Strip& strip = shown.plan->stack.strips[static_cast<std::size_t>(row)];
            const QModelIndex share = model.index(row, StripsModel::shareColumn);
            QCOMPARE(share.data(sortRole).toDouble(), strip.strain / strip.breakingStrain);
            const QString source = share.data(sourceRole).toString();
            QVERIFY(source.contains(QString::fromStdString(strip.breakingSource.text)));
            QVERIFY(source.contains(units::markMeaning(strip.breakingSource.mark)));
            QCOMPARE(model.index(row, StripsModel::cutColumn).data(sortRole).toDouble(), strip.cutLength_m);
        }
        QVERIFY(!(model.index(0, 0).flags() & Qt::ItemIsEditable));
    }

    void GroupsOfStripsAreTypedAndImpossibleOnesRefused() {
        GroupsModel model;
        const QAbstractItemModelTester tester(&model);
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        model.setData(model.index(0, GroupsModel::thicknessColumn), "3/16 in", Qt::EditRole);
        QVERIFY(std::abs(taken.shown.piece.stack.strips[0].thickness_m - 3 * inch / 16) < 1e-12);
        const QString ash = QString::fromStdString(wood::findSpecies(taken.shown.species, "ash_white")->name);
        model.setData(model.index(0, GroupsModel::woodColumn), ash, Qt::EditRole);
        QCOMPARE(taken.shown.piece.stack.strips[0].species, std::string("ash_white"));
        QCOMPARE(model.index(0, GroupsModel::woodColumn).data(choicesRole).toStringList().size(),
                 qsizetype(taken.shown.species.size()));
        const model::Piece good = taken.shown.piece;
        for (const auto& [column, text] :
             std::initializer_list<std::pair<int, const char*>>{{GroupsModel::countColumn, "0"},
                                                                {GroupsModel::countColumn, "-3"},
                                                                {GroupsModel::countColumn, "two"},
                                                                {GroupsModel::thicknessColumn, "-6 mm"},
                                                                {GroupsModel::thicknessColumn, "0"},
                                                                {GroupsModel::thicknessColumn, "nan"},
                                                                {GroupsModel::woodColumn, "driftwood"}}) {
            model.setData(model.index(0, column), text, Qt::EditRole);
            QVERIFY2(taken.shown.piece == good, text);
            QVERIFY2(!model.index(0, column).data(faultRole).toString().isEmpty(), text);
            model.dropDraft(model.index(0, column));
        }
        model.addGroup(0);
        QCOMPARE(model.rowCount(), math::countOf(good.stack.strips) + 1);
        QCOMPARE(taken.shown.piece.stack.strips[1].species, std::string("ash_white"));
        model.moveGroup(1, -1);
        model.removeGroup(0);
        QVERIFY(taken.shown.piece == good);
    }

    void TheLastGroupOfStripsAndTheLastWidthStay() {
        GroupsModel groups;
        WidthsModel widths;
        Taken taken{shownSample("minimal.fayline"), {}};
        followInto(taken, &groups);
        followInto(taken, &widths);
        QCOMPARE(groups.rowCount(), 1);
        groups.removeGroup(0);
        widths.removeWidth(0);
        QVERIFY(taken.names.isEmpty());
    }

    void WidthsKeepTheirOrderAlongTheLineAndNoPlaceHasTwo() {
        WidthsModel model;
        const QAbstractItemModelTester tester(&model);
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        const int rows = model.rowCount();
        QVERIFY(rows >= 2);
        model.addWidth(0.5);
        QCOMPARE(model.rowCount(), rows + 1);
        const double middle = model.index(1, WidthsModel::widthColumn).data(sortRole).toDouble();
        QCOMPARE(middle, laminate::widthAt(taken.shown.piece.stack, 0.5));
        model.setData(model.index(1, WidthsModel::atColumn), "0", Qt::EditRole);
        QVERIFY(!model.index(1, WidthsModel::atColumn).data(faultRole).toString().isEmpty());
        QCOMPARE(taken.names.size(), 1);
        model.dropDraft(model.index(1, WidthsModel::atColumn));
        model.setData(model.index(1, WidthsModel::atColumn), "99-0-0", Qt::EditRole);
        QCOMPARE(model.index(rows, WidthsModel::widthColumn).data(sortRole).toDouble(), middle);
    }

    void StationsAreNumberedAlongTheLineAsThePlanHasThem() {
        StationsModel model;
        const QAbstractItemModelTester tester(&model);
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        model.addStation(0.3);
        QCOMPARE(taken.names.size(), 1);
        for (int row = 0; row < model.rowCount(); ++row) {
            const holding::StationPlace& place = taken.shown.plan->holding.stations[static_cast<std::size_t>(row)];
            QCOMPARE(place.number, row + 1);
            QCOMPARE(model.index(row, StationsModel::alongColumn).data(sortRole).toDouble(), place.at_m);
            QCOMPARE(model.index(row, StationsModel::alongColumn).data(underRole).toString(),
                     writeLengthText(place.alongOutside_m, taken.shown.display));
        }
    }

    void SettingOutEvenlyKeepsTheFixedStations() {
        StationsModel model;
        Taken taken{shownSample(), {}};
        followInto(taken, &model);
        model.removeStations({0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15});
        QCOMPARE(model.rowCount(), 0);
        model.addStation(0.37);
        model.setData(model.index(0, StationsModel::fixedColumn), int(Qt::Checked), Qt::CheckStateRole);
        model.setOutEvenly(0, 1.0, 0.25, model::HoldKind::prop);
        QCOMPARE(model.rowCount(), 6);
        QCOMPARE(shownText(model, 0, StationsModel::kindColumn), QStringLiteral("prop"));
        QCOMPARE(shownText(model, 2, StationsModel::kindColumn), QStringLiteral("clamp"));
        model.setOutEvenly(0, 1.0, 0.5, model::HoldKind::clamp);
        QCOMPARE(model.rowCount(), 4);
        QVERIFY_EXCEPTION_THROWN(model.setOutEvenly(0, 1, 0, model::HoldKind::clamp), units::InputError);
        QVERIFY_EXCEPTION_THROWN(model.setOutEvenly(0, 1, -1, model::HoldKind::clamp), units::InputError);
    }

    void EveryTableIsEmptyForABoatWithoutPieces() {
        const auto none = std::make_shared<const Shown>();
        OffsetsModel offsets;
        StripsModel strips;
        GroupsModel groups;
        WidthsModel widths;
        StationsModel stations;
        for (PieceTable* model : std::initializer_list<PieceTable*>{&offsets, &strips, &groups, &widths, &stations}) {
            const QAbstractItemModelTester tester(model);
            model->show(none);
            QCOMPARE(model->rowCount(), 0);
            model->show(std::make_shared<const Shown>(shownSample()));
            QVERIFY(model->rowCount() > 0);
            model->show(none);
            QCOMPARE(model->rowCount(), 0);
        }
    }

    void NumbersAreReadWithCommaOrPointAndWrittenSoThatTheyComeBack() {
        QCOMPARE(readNumber("12,5"), 12.5);
        QCOMPARE(readNumber(" -0.25 "), -0.25);
        QCOMPARE(readShare("12 %"), 0.12);
        QCOMPARE(readShare("7,5"), 0.075);
        QVERIFY_EXCEPTION_THROWN(readNumber("inf"), units::InputError);
        QVERIFY_EXCEPTION_THROWN(readNumber(""), units::InputError);
        QVERIFY_EXCEPTION_THROWN(readWhole("2.5"), units::InputError);
        for (const char* slope : {"1 in 20", "1:20", "20", "5 %", "0.05"}) QCOMPARE(readGrainSlope(slope), 0.05);
        QCOMPARE(readGrainSlope("straight"), 0.0);
        QCOMPARE(writeGrainSlope(0.05), QStringLiteral("1 in 20"));
        QCOMPARE(readGrainSlope(writeGrainSlope(0)), 0.0);
        QVERIFY_EXCEPTION_THROWN(readGrainSlope("-2"), units::InputError);
        QVERIFY_EXCEPTION_THROWN(readGrainSlope("1 in 0"), units::InputError);
        QVERIFY(!readHeading("").has_value());
        QVERIFY(std::abs(*readHeading("90") - std::numbers::pi / 2) < 1e-12);
        QVERIFY(std::abs(*readHeading(writeHeading(-0.7)) + 0.7) < 1e-5);
        QCOMPARE(*readScarf("1 in 10"), 10.0);
        QVERIFY(!readScarf(" ").has_value());
        QVERIFY_EXCEPTION_THROWN(readScarf("0"), units::InputError);
    }

    void AWoodIsToldWithTheSourceAndMarkOfEveryValue() {
        const wood::Species* oak = wood::findSpecies(wood::builtInSpecies(), "oak_white");
        QVERIFY(oak);
        const QString told = woodText(*oak, {});
        for (const units::Cited* cited : {&oak->sg, &oak->mor_Pa, &oak->moe_Pa}) {
            QVERIFY(told.contains(QString::fromStdString(cited->source.text).toHtmlEscaped()));
            QVERIFY(told.contains(units::markMeaning(cited->source.mark)));
        }
        wood::Species warned = *oak;
        warned.warning = "Two tables disagree.";
        QVERIFY(woodText(warned, {}).indexOf("Two tables disagree.") >= 0);
        QVERIFY(woodText(warned, {}).indexOf("Two tables disagree.") <
                woodText(warned, {}).indexOf("Specific gravity"));
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QCoreApplication, ModelsTest>(argc, argv);
}
#include "models_test.moc"
