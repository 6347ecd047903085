// A list of the present piece as a table that is told by its columns.
//
// A column over a member of the list's items says by which way that is written and read (app/panels/ways.hpp); its cell
// shows, sorts, is typed in and is named by that. A computed column says what each row shows.
#pragma once

#include <algorithm>
#include <functional>
#include <initializer_list>
#include <type_traits>
#include <vector>

#include "app/panels/notebook_table.hpp"
#include "app/panels/piece_table.hpp"
#include "app/panels/ways.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

struct ListColumn {
    template <class Told>
    using Of = std::function<Told(const Shown&, int row)>;

    QString name = {};
    QString hint = {};    // tool tip of the heading
    QString under = {};   // heading of the second line
    QString widest = {};  // of what it shows
    Qt::AlignmentFlag side = Qt::AlignRight;
    // The change's name, where it is not "Change the most of a tool": %1 the row's name, %2 what was typed, %3 how that
    // then reads, %4 the row's number.
    QString change = {};
    QString cleared = {};        // the same where the member is then empty, off, or the first of its kind
    QStringList ticked = {};     // a box to tick: its accessible texts when off and when on
    Of<QString> text = nullptr;  // none: as it is typed
    Of<QString> typed = nullptr;
    Of<QString> below = nullptr;
    Of<QVariant> number = nullptr;  // behind it, for sorting; none: its text
    Of<QVariant> severity = nullptr;
    // Puts what was typed into the piece, and gives how it then reads, or nothing where `cleared` names the change.
    // Throws InputError. None: read only.
    std::function<QString(model::Piece&, int row, const QString& written, const Shown&)> read = nullptr;
    std::function<QStringList(const Shown&)> choices = nullptr;
    std::function<QList<ChoiceGroup>(const Shown&)> groups = nullptr;
    std::function<QVariant(const Shown&, int row, int role)> more = nullptr;  // what it has of all other roles
};

class ListModel : public PieceTable {
    Q_OBJECT
public:
    // `item`: what a row is, in the undo menu: "tool". `path`: of the list in the project file.
    ListModel(QString item, QString path, QObject* parent);
    void setColumns(std::vector<ListColumn> columns) { columns_ = std::move(columns); }

    // These columns, each as wide as what it shows needs.
    std::vector<NotebookTable::ColumnWidth> widths(const std::vector<int>& columns) const;

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    // Asks for the change that `make` makes of the present piece. `merges` as in Change.
    void change(const QString& name, const std::function<void(model::Piece&)>& make, const QString& merges = {});

protected:
    virtual int indexOf(int row) const { return row; }                         // of a row's item in its list
    virtual QString rowName(int row) const;                                    // "tool 3"
    virtual std::optional<double> placeOf(int) const { return std::nullopt; }  // metres along the line
    bool isAtFault(int row) const;                                             // what is wrong is wrong with this row
    QVariant cell(int row, int column, int role) const override;
    QString put(model::Piece& piece, int row, int column, const QVariant& value) const override;
    QString cellName(int row, int column) const override;

private:
    QString item_;
    QString path_;
    std::vector<ListColumn> columns_;
};

// A list of items of one kind. `place`: the member that says where an item lies along the line; null: none does.
template <class Item>
class ItemsModel : public ListModel {
public:
    using Items = std::vector<Item>& (*)(model::Piece&);

    ItemsModel(const QString& item, const QString& path, Items reach, double Item::*place, QObject* parent)
        : ListModel(item, path, parent), items_(reach), place_(place) {}

    const Item& item(const Shown& shown, int row) const {
        return at(const_cast<model::Piece&>(shown.piece), row);  // only read
    }

    // A column over a member; `rest` has its name and whatever else does not follow from `way`.
    template <class Value>
    ListColumn typed(Value Item::*member, const Way<Value>& way, ListColumn rest) const {
        if (rest.widest.isNull()) rest.widest = way.widest;
        rest.side = way.side;
        rest.choices = way.choices;
        rest.groups = way.groups;
        rest.typed = [=, this](const Shown& shown, int row) { return way.write(item(shown, row).*member, shown); };
        rest.read = [=, this, mayClear = !rest.cleared.isEmpty()](model::Piece& piece, int row, const QString& written,
                                                                  const Shown& shown) {
            Value& value = at(piece, row).*member;
            value = way.read(written, shown);
            return mayClear && value == Value() ? QString() : way.write(value, shown);
        };
        if constexpr (std::is_arithmetic_v<Value> || std::is_enum_v<Value>)
            rest.number = [=, this](const Shown& shown, int row) { return numberOf(item(shown, row).*member); };
        else if constexpr (!std::is_same_v<Value, std::string>)
            rest.number = [=, this](const Shown& shown, int row) {
                const Value& value = item(shown, row).*member;
                return value ? numberOf(*value) : QVariant();
            };
        return rest;
    }
    // The same over the member by which the items are kept in order.
    ListColumn ordering(const Way<double>& way, ListColumn rest) const {
        ListColumn column = typed(place_, way, std::move(rest));
        column.read = [=, this, read = column.read](model::Piece& piece, int row, const QString& written,
                                                    const Shown& shown) {
            const QString reads = read(piece, row, written, shown);
            std::ranges::stable_sort(items_(piece), {}, place_);
            return reads;
        };
        return column;
    }

    // Each is one change. Rows that do not exist are ignored.
    void insertItem(const QString& name, int before, const Item& one, const QString& merges = {}) {
        const auto insert = [&](model::Piece& piece) {
            std::vector<Item>& all = items_(piece);
            all.insert(all.begin() + std::clamp(before, 0, math::countOf(all)), one);
        };
        change(name, insert, merges);
    }
    // Behind those that lie before it.
    void insertInOrder(const QString& name, const Item& one) {
        const std::vector<Item>& there = items();
        const auto after = std::ranges::upper_bound(there, one.*place_, {}, place_);
        insertItem(name, int(after - there.begin()), one);
    }
    void moveItem(int row, int by, const QString& name) {
        const int to = row + by;
        if (row < 0 || to < 0 || row >= rowCount() || to >= rowCount()) return;
        change(name, [&](model::Piece& piece) { std::swap(items_(piece)[row], items_(piece)[to]); });
    }
    // `one` names the change of a single row, %1 being that; `many` that of more, %1 being how many.
    void removeItems(std::vector<int> rows, const QString& one, const QString& many) {
        std::erase_if(rows, [this](int row) { return row < 0 || row >= rowCount(); });
        if (rows.empty()) return;
        const int first = rows.front();
        for (int& row : rows) row = indexOf(row);
        std::ranges::sort(rows, std::greater<>());
        rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
        const QString name =
            rows.size() == 1 ? filled(one, {rowName(first)}) : filled(many, {QString::number(rows.size())});
        change(name, [&](model::Piece& piece) {
            for (const int row : rows) items_(piece).erase(items_(piece).begin() + row);
        });
    }

protected:
    const std::vector<Item>& items() const { return items_(const_cast<model::Piece&>(piece())); }  // only read
    virtual Item& at(model::Piece& piece, int row) const { return items_(piece)[indexOf(row)]; }
    std::optional<double> placeOf(int row) const override {
        return place_ ? std::optional(item(shown(), row).*place_) : std::nullopt;
    }
    int rowsOf(const Shown& shown) const override {
        return math::countOf(items_(const_cast<model::Piece&>(shown.piece)));
    }
    bool sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const override {
        return item(a, rowOfA) == item(b, rowOfB);
    }

private:
    template <class Value>
    static QVariant numberOf(const Value& value) {
        if constexpr (std::is_floating_point_v<Value>)
            return value;
        else
            return int(value);
    }

    Items items_;
    double Item::*place_;
};

}  // namespace fayline::app
