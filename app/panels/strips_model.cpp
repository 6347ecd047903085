#include <cmath>

#include "app/panels/reading.hpp"
#include "app/panels/stack_models.hpp"
#include "core/plan/findings/breaking_wording.hpp"

namespace fayline::app {

namespace {

const laminate::Strip& stripAt(const Shown& shown, int row) {
    return shown.plan->stack.strips[row];
}

QString thicknessText(const laminate::Strip& strip, const Shown& shown) {
    const QString start = text(units::writeThickness(strip.thickness_m, shown.display));
    if (strip.thicknessAtEnd_m == strip.thickness_m) return start;
    return tr("%1 to %2").arg(start, text(units::writeThickness(strip.thicknessAtEnd_m, shown.display)));
}

QString radiusText(const laminate::Strip& strip, const Shown& shown) {
    return std::isfinite(strip.leastRadius_m) ? writeLengthText(strip.leastRadius_m, shown.display) : tr("straight");
}

// What all cells of a strip tell beside their text: where it lies, and what its breaking rests on.
QVariant told(const laminate::Strip& strip, int column, int role) {
    if (role == placeRole) return column == StripsModel::shareColumn ? strip.strainAt_m : strip.leastRadiusAt_m;
    if (role == barRole && column == StripsModel::shareColumn) return std::clamp(laminate::worstShare(strip), 0.0, 1.0);
    const bool breaks = column == StripsModel::shareColumn || column == StripsModel::chanceColumn;
    if (!breaks || (role != Qt::ToolTipRole && role != sourceRole)) return {};
    return tr("Average strip breaks at %1: %2")
        .arg(text(units::writeShare(strip.breakingStrain)), sourceText(strip.breakingSource));
}

}  // namespace

StripsModel::StripsModel(QObject* parent) : ListModel(tr("strip"), {}, parent) {
    using Strip = const laminate::Strip&;
    const auto column = [](int which, ListColumn of, auto write, auto below, auto number) {
        of.text = [write](const Shown& shown, int row) { return write(stripAt(shown, row), shown); };
        of.below = [below](const Shown& shown, int row) { return below(stripAt(shown, row), shown); };
        of.number = [number](const Shown& shown, int row) { return QVariant(number(stripAt(shown, row))); };
        of.more = [which](const Shown& shown, int row, int role) { return told(stripAt(shown, row), which, role); };
        return of;
    };
    ListColumn place = column(
        placeColumn,
        {.name = tr("Strip"),
         .hint = tr("Strip 1 lies on the form; one in brackets is planed away after. Below it: its thickness."),
         .under = tr("thick"),
         .widest = "15/64 in",
         .side = Qt::AlignLeft},
        [](Strip strip, const Shown&) { return QString(strip.sacrificial ? "(%1)" : "%1").arg(strip.place); },
        [](Strip strip, const Shown& shown) {
            return strip.thicknessAtEnd_m == strip.thickness_m ? thicknessText(strip, shown) : tr("tapers");
        },
        [](Strip strip) { return strip.place; });
    place.more = [](const Shown& shown, int row, int role) {
        Strip strip = stripAt(shown, row);
        if (role != Qt::ToolTipRole) return told(strip, placeColumn, role);
        return QVariant(
            tr("Strip %1, %2, %3").arg(strip.place).arg(thicknessText(strip, shown), woodName(shown, strip.species)));
    };
    setColumns(
        {place,
         column(
             radiusColumn,
             {.name = tr("Radius"),
              .hint = tr("The tightest radius of the strip's own middle. Below it: where along the line."),
              .under = tr("at"),
              .widest = "12-11-7+"},
             radiusText,
             [](Strip strip, const Shown& shown) {
                 const bool bent = std::isfinite(strip.leastRadius_m);
                 return bent ? writeLengthText(strip.leastRadiusAt_m, shown.display) : QString();
             },
             [](Strip strip) { return strip.leastRadius_m; }),
         column(
             shareColumn,
             {.name = tr("Bend"),
              .hint = tr("% of breaking for an average strip. Below it: the strain itself."),
              .under = tr("strain"),
              .widest = "100 %"},
             [](Strip strip, const Shown&) { return text(units::writeShare(laminate::worstShare(strip))); },
             [](Strip strip, const Shown&) { return text(units::writeShare(strip.strain)); }, laminate::worstShare),
         column(
             chanceColumn, {.name = tr("Chance"), .hint = tr("How likely the strip is to break"), .widest = "1 in 300"},
             [](Strip strip, const Shown&) { return text(plan::chanceBrief(strip.chanceOfBreaking)); },
             [](Strip, const Shown&) { return QString(); }, [](Strip strip) { return strip.chanceOfBreaking; }),
         column(
             cutColumn,
             {.name = tr("Cut"),
              .hint = tr("Length to cut, with the extra length. Below it: finished, between the trim lines."),
              .under = tr("finished"),
              .widest = "12-11-7+"},
             [](Strip strip, const Shown& shown) { return writeLengthText(strip.cutLength_m, shown.display); },
             [](Strip strip, const Shown& shown) { return writeLengthText(strip.finishedLength_m, shown.display); },
             [](Strip strip) { return strip.cutLength_m; })});
}

int StripsModel::rowsOf(const Shown& shown) const {
    return shown.plan ? math::countOf(shown.plan->stack.strips) : 0;
}

}  // namespace fayline::app
