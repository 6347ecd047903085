// What the tables of the panels have in common: rows that are a part of the present piece, typed in as text.
//
// A new piece or plan changes rows in place, so an open editor stays as it is. A text that cannot be read is kept in
// its cell with the reason, the piece stays as it was; the next text that can be read, or dropDraft, ends that.
#pragma once

#include <QAbstractTableModel>
#include <map>
#include <memory>
#include <utility>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"

namespace fayline::app {

// Roles beside Qt's own. DisplayRole is the text, sortRole the number behind it.
enum TableRole {
    sortRole = Qt::UserRole,
    barRole,  // a bar under the text: -1..1 from the middle, or 0..1 from the left (see barFromMiddleRole)
    barFromMiddleRole,
    underRole,     // a second, fainter line
    placeRole,     // metres along the line, where the row lies at one place
    faultRole,     // what is wrong with what stands in this cell or row, in words
    severityRole,  // int of plan::Severity, drawn as a shape before the text
    sourceRole,    // where the number comes from, in words
    faintRole,     // true: of the piece as it was a moment ago, drawn fainter
    choicesRole,   // QStringList of what may be chosen in this cell
    groupsRole,    // QList<ChoiceGroup> of the same where it is long
};

class PieceTable : public QAbstractTableModel {
    Q_OBJECT
public:
    explicit PieceTable(QObject* parent);

    void show(std::shared_ptr<const Shown> shown);

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

    // Reasons of the texts that cannot be read, one a line, each with where it stands; empty: none.
    QString unread() const;
    bool isUnread(const QModelIndex& index) const { return drafts_.contains({index.row(), index.column()}); }
    void dropDraft(const QModelIndex& index);
    // Does `act` once the piece has the change that was asked for last: at once where it has.
    void whenChanged(std::function<void()> act);

signals:
    void changeAsked(const Change& change);
    void unreadChanged();

protected:
    virtual int rowsOf(const Shown& shown) const = 0;
    virtual bool sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const = 0;
    virtual QVariant cell(int row, int column, int role) const = 0;
    // Puts `value` into `piece` and gives the name of the change. Throws InputError.
    virtual QString put(model::Piece& piece, int row, int column, const QVariant& value) const = 0;
    virtual QString cellName(int row, int column) const = 0;  // "WL 12, x"

    bool hasPiece() const { return shown_ && shown_->pieceIndex >= 0; }
    const Shown& shown() const { return *shown_; }
    const std::shared_ptr<const Shown>& shownWhole() const { return shown_; }
    const model::Piece& piece() const { return shown_->piece; }
    const plan::Plan* plan() const { return shown_->plan.get(); }

private:
    struct Draft {
        QVariant text;
        QString reason;
    };
    void moveDrafts(int at, int gone, int come);
    void changeRows(std::shared_ptr<const Shown> next, int rows);

    std::shared_ptr<const Shown> shown_;
    int rows_ = 0;
    int comingAt_ = 0;
    int coming_ = 0;                               // rows that the piece has at comingAt_ and the table not yet
    std::map<std::pair<int, int>, Draft> drafts_;  // by row and column
    bool draftsMoved_ = false;
    std::optional<model::Piece> asked_;  // as it shall be; nothing: it is so
    std::function<void()> then_;
};

}  // namespace fayline::app
