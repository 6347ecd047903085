#include <algorithm>
#include <cmath>

#include "app/panels/reading.hpp"
#include "app/panels/stack_models.hpp"
#include "core/math/count.hpp"
#include "core/plan/breaking_wording.hpp"
#include "core/wood/species.hpp"

namespace fayline::app {

QString woodName(const Shown& shown, const std::string& id) {
    const wood::Species* species = wood::findSpecies(shown.species, id);
    return text(species ? species->name : id);
}

int StripsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

int StripsModel::rowsOf(const Shown& shown) const {
    return shown.plan ? math::countOf(shown.plan->stack.strips) : 0;
}

bool StripsModel::sameRow(const Shown&, int rowOfA, const Shown&, int rowOfB) const {
    return rowOfA == rowOfB;
}

QString StripsModel::cellName(int row, int) const {
    return tr("Strip %1").arg(row + 1);
}

QVariant StripsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::TextAlignmentRole)
        return int((section == placeColumn ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    if (role == Qt::ToolTipRole) {
        switch (section) {
            case placeColumn:
                return tr("Strip 1 lies on the form; one in brackets is planed away after. Below it: its thickness.");
            case radiusColumn:
                return tr("The tightest radius of the strip's own middle. Below it: where along the line.");
            case shareColumn:
                return tr(
                    "The greatest strain of the strip as a share of the mean strain that breaks it. "
                    "Below it: the strain itself.");
            case chanceColumn:
                return tr("How likely the strip is to break");
            case cutColumn:
                return tr("Length to cut, with what runs past. Below it: finished, between the trim lines.");
            default:
                return {};
        }
    }
    if (role == underRole) {
        switch (section) {
            case placeColumn:
                return tr("thick");
            case radiusColumn:
                return tr("at");
            case shareColumn:
                return tr("strain");
            case cutColumn:
                return tr("finished");
            default:
                return {};
        }
    }
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case placeColumn:
            return tr("Strip");
        case radiusColumn:
            return tr("Radius");
        case shareColumn:
            return tr("Strained");
        case chanceColumn:
            return tr("Chance");
        case cutColumn:
            return tr("Cut");
        case thicknessColumn:
            return tr("Thickness");
        case woodColumn:
            return tr("Wood");
        case radiusAtColumn:
            return tr("Tightest at");
        case strainColumn:
            return tr("Strain");
        case finishedColumn:
            return tr("Finished");
        default:
            return {};
    }
}

namespace {

QString radiusText(double radius_m, const measure::Display& display) {
    return std::isfinite(radius_m) ? writeLengthText(radius_m, display) : QObject::tr("straight");
}

}  // namespace

QString StripsModel::display(const stack::Strip& strip, int column) const {
    const measure::Display& units = shown().display;
    switch (column) {
        case placeColumn:
            return (strip.sacrificial ? QStringLiteral("(%1)") : QStringLiteral("%1")).arg(strip.place);
        case radiusColumn:
            return radiusText(strip.leastRadius_m, units);
        case shareColumn:
            return text(measure::writeShare(stack::worstShare(strip)));
        case chanceColumn:
            return text(plan::chanceBrief(strip.chanceOfBreaking));
        case cutColumn:
            return writeLengthText(strip.cutLength_m, units);
        case thicknessColumn: {
            const QString start = text(measure::writeThickness(strip.thickness_m, units));
            if (strip.thicknessAtEnd_m == strip.thickness_m) return start;
            return tr("%1 to %2").arg(start, text(measure::writeThickness(strip.thicknessAtEnd_m, units)));
        }
        case woodColumn:
            return woodName(shown(), strip.species);
        case radiusAtColumn:
            return std::isfinite(strip.leastRadius_m) ? writeLengthText(strip.leastRadiusAt_m, units) : QString();
        case strainColumn:
            return text(measure::writeShare(strip.strain));
        case finishedColumn:
            return writeLengthText(strip.finishedLength_m, units);
        default:
            return {};
    }
}

QVariant StripsModel::cell(int row, int column, int role) const {
    const stack::Strip& strip = plan()->stack.strips[row];
    switch (role) {
        case Qt::DisplayRole:
            return display(strip, column);
        case Qt::TextAlignmentRole:
            return int((column == placeColumn || column == woodColumn ? Qt::AlignLeft : Qt::AlignRight) |
                       Qt::AlignVCenter);
        case underRole:
            switch (column) {
                case placeColumn:
                    return strip.thicknessAtEnd_m == strip.thickness_m ? display(strip, thicknessColumn) : tr("tapers");
                case radiusColumn:
                    return display(strip, radiusAtColumn);
                case shareColumn:
                    return display(strip, strainColumn);
                case cutColumn:
                    return display(strip, finishedColumn);
                default:
                    return {};
            }
        case placeRole:
            return column == shareColumn || column == strainColumn ? strip.strainAt_m : strip.leastRadiusAt_m;
        case barRole:
            return column == shareColumn ? QVariant(std::clamp(stack::worstShare(strip), 0.0, 1.0)) : QVariant();
        case Qt::ToolTipRole:
            if (column == placeColumn)
                return tr("Strip %1, %2, %3")
                    .arg(strip.place)
                    .arg(display(strip, thicknessColumn), display(strip, woodColumn));
            [[fallthrough]];
        case sourceRole:
            if (column == shareColumn || column == strainColumn || column == chanceColumn)
                return tr("Breaks at %1 on the mean: %2")
                    .arg(text(measure::writeShare(strip.breakingStrain)), sourceText(strip.breakingSource));
            return {};
        case sortRole:
            switch (column) {
                case placeColumn:
                    return strip.place;
                case radiusColumn:
                    return strip.leastRadius_m;
                case shareColumn:
                    return stack::worstShare(strip);
                case chanceColumn:
                    return strip.chanceOfBreaking;
                case cutColumn:
                    return strip.cutLength_m;
                case thicknessColumn:
                    return strip.thickness_m;
                case radiusAtColumn:
                    return strip.leastRadiusAt_m;
                case strainColumn:
                    return strip.strain;
                case finishedColumn:
                    return strip.finishedLength_m;
                default:
                    return display(strip, column);
            }
        default:
            return {};
    }
}

}  // namespace fayline::app
