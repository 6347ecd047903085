#include "app/panels/findings_model.hpp"

#include <algorithm>
#include <utility>

#include "app/panels/reading.hpp"

namespace fayline::app {

QString severityWord(plan::Severity severity) {
    switch (severity) {
        case plan::Severity::stop:
            return QObject::tr("Stop");
        case plan::Severity::caution:
            return QObject::tr("Caution");
        case plan::Severity::note:
            return QObject::tr("Note");
    }
    return {};
}

namespace {

bool looksTheSame(const Shown& a, const Shown& b, std::size_t row) {
    const plan::Finding& before = a.plan->findings[row];
    const plan::Finding& after = b.plan->findings[row];
    return before.severity == after.severity && before.text == after.text && before.at_m == after.at_m &&
           sourceText(before.source) == sourceText(after.source) && a.display == b.display;
}

}  // namespace

bool FindingsModel::show(std::shared_ptr<const Shown> next) {
    const bool any = next->pieceIndex >= 0 && next->plan;
    const auto isFact = [](const plan::Finding& finding) { return plan::levelOf(finding) == plan::Level::fact; };
    // Facts come last, and stand in the tables of their panels.
    const int rows =
        any ? static_cast<int>(std::find_if(next->plan->findings.begin(), next->plan->findings.end(), isFact) -
                               next->plan->findings.begin())
            : 0;
    // Of findings only the number matters for where rows begin and end: each is drawn anew.
    const int before = rows_;
    if (rows > before) beginInsertRows({}, before, rows - 1);
    if (rows < before) beginRemoveRows({}, rows, before - 1);
    const std::shared_ptr<const Shown> last = std::exchange(shown_, std::move(next));
    rows_ = rows;
    if (rows > before) endInsertRows();
    if (rows < before) endRemoveRows();
    // A row that says what it said needs no new layout: most do while a point is dragged.
    bool changed = rows != before;
    for (int row = 0; row < std::min(rows, before); ++row) {
        if (looksTheSame(*last, *shown_, static_cast<std::size_t>(row))) continue;
        emit dataChanged(index(row, 0), index(row, columns - 1));
        changed = true;
    }
    return changed;
}

const plan::Finding* FindingsModel::finding(int row) const {
    if (row < 0 || row >= rows_) return nullptr;
    return &shown_->plan->findings[row];
}

int FindingsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : rows_;
}

int FindingsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

QVariant FindingsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    switch (section) {
        case severityColumn:
            return tr("Severity");
        case textColumn:
            return tr("Finding");
        case placeColumn:
            return tr("Along the line");
        case sourceColumn:
            return tr("Where the limit comes from");
        default:
            return {};
    }
}

QVariant FindingsModel::data(const QModelIndex& index, int role) const {
    const plan::Finding* finding = this->finding(index.row());
    if (!index.isValid() || !finding) return {};
    if (role == severityRole) return int(finding->severity);
    if (role == placeRole) return finding->at_m ? QVariant(*finding->at_m) : QVariant();
    if (role == sourceRole) return sourceText(finding->source);
    if (role == Qt::ToolTipRole || role == Qt::AccessibleDescriptionRole) return sourceText(finding->source);
    if (role == Qt::AccessibleTextRole)
        return severityWord(finding->severity) + QStringLiteral(". ") + text(plan::textOf(*finding, shown_->display));
    if (role != Qt::DisplayRole && role != sortRole) return {};
    switch (index.column()) {
        case severityColumn:
            return role == sortRole ? QVariant(int(finding->severity)) : QVariant(severityWord(finding->severity));
        case textColumn:
            return text(plan::textOf(*finding, shown_->display));
        case placeColumn:
            if (!finding->at_m) return {};
            return role == sortRole ? QVariant(*finding->at_m)
                                    : QVariant(writeLengthText(*finding->at_m, shown_->display));
        case sourceColumn:
            return sourceText(finding->source);
        default:
            return {};
    }
}

}  // namespace fayline::app
