// The sections of the record panel that say how far pieces sprang back, as it was measured, and what follows from it.
#include <QDateTime>
#include <QLocale>
#include <QPushButton>
#include <algorithm>
#include <cmath>

#include "app/panels/figures_model.hpp"
#include "app/panels/list_model.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/record_panel.hpp"
#include "core/laminate/springback/learned.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/form_wording.hpp"

namespace fayline::app {

namespace {

// One reading of one glue-up.
struct ReadingPlace {
    std::size_t record = 0;
    std::size_t reading = 0;
};

std::optional<ReadingPlace> readingAt(const model::Piece& piece, int row) {
    for (std::size_t i = 0; i < piece.record.size(); ++i) {
        const auto count = math::countOf(piece.record[i].letGo);
        if (row < count) return ReadingPlace{i, static_cast<std::size_t>(row)};
        row -= count;
    }
    return std::nullopt;
}

// "02 May": short, for a narrow column.
QString dayText(const std::string& when) {
    const QString written = text(when).left(10);
    const QDate day = QDate::fromString(written, Qt::ISODate);
    return day.isValid() ? QLocale::c().toString(day, QStringLiteral("dd MMM")) : written;
}

int readingsOf(const model::Piece& piece) {
    int count = 0;
    for (const model::Record& record : piece.record) count += math::countOf(record.letGo);
    return count;
}

// What was measured of all glue-ups, one after the other.
class ReadingsModel : public ItemsModel<model::LetGo> {
public:
    explicit ReadingsModel(QObject* parent) : ItemsModel(tr("reading"), "record", nullptr, nullptr, parent) {
        ListColumn glued{
            .name = tr("Glued"), .hint = tr("Day of the glue-up"), .widest = "02 May", .side = Qt::AlignLeft};
        glued.text = [](const Shown& shown, int row) {
            return dayText(shown.piece.record[readingAt(shown.piece, row).value().record].when);
        };
        const auto length = [this](double model::LetGo::*member, const QString& name, const QString& hint) {
            return typed(member, way::length(), {.name = name, .hint = hint});
        };
        setColumns(
            {glued,
             typed(&model::LetGo::after_s, way::number(1.0 / 3600, 3),
                   {.name = tr("After, h"),
                    .hint = tr("Hours since it came off: 0 at once, then after some days"),
                    .widest = "2400"}),
             length(&model::LetGo::chordForm_m, tr("On form"), tr("The chord from end to end, straight, on the form")),
             length(&model::LetGo::chordPiece_m, tr("Chord"), tr("The same of the piece, off the form")),
             length(&model::LetGo::risePiece_m, tr("Rise"),
                    tr("Greatest height of the piece over that chord; 0: not measured"))});
    }

protected:
    int rowsOf(const Shown& shown) const override { return readingsOf(shown.piece); }
    model::LetGo& at(model::Piece& piece, int row) const override {
        const ReadingPlace place = readingAt(piece, row).value();
        return piece.record[place.record].letGo[place.reading];
    }
};

}  // namespace

void RecordPanel::makeReadings() {
    auto* readings = new ReadingsModel(this);
    auto* unread = new Words(QStringLiteral("readingsUnread"), true, this);
    NotebookTable* table = typedTable("readings", tr("Measured off the form"), readings, unread, {0, 1, 2, 3, 4}, 0);
    QWidget* buttons =
        rowTools(table,
                 {"addReading", tr("Add a reading (Insert)"),
                  [this, readings] {
                      readings->change(tr("Add a reading"), [this](model::Piece& piece) { addReading(piece); });
                  }},
                 {"removeReading", tr("Remove this reading (Delete)"), [readings, table] {
                      const int row = table->currentIndex().row();
                      if (row < 0) return;
                      readings->change(tr("Remove a reading"), [row](model::Piece& piece) {
                          const std::optional<ReadingPlace> place = readingAt(piece, row);
                          if (!place) return;
                          std::vector<model::LetGo>& letGo = piece.record[place->record].letGo;
                          letGo.erase(letGo.begin() + std::ptrdiff_t(place->reading));
                      });
                  }});
    addSection("readingsHead", tr("Measured off the form"), true, {table, unread, buttons},
               [readings](const std::shared_ptr<const Shown>& shown) { readings->show(shown); });
}

// To the chosen glue-up, else the last: a dry fit has nothing that springs back. What was glued without the clock
// begins a record here.
void RecordPanel::addReading(model::Piece& piece) const {
    const auto isGluing = [](const model::Record& record) { return !record.dryFit; };
    auto of = std::ranges::find_if(piece.record.rbegin(), piece.record.rend(), isGluing).base();
    if (const int row = chosen(); row >= 0 && isGluing(piece.record[row])) of = piece.record.begin() + row + 1;
    if (of == piece.record.begin()) {
        model::Record record;
        record.when = text(QDateTime::currentDateTime().toString(QStringLiteral("yyyy-MM-ddTHH:mm")));
        piece.record.push_back(record);
        of = piece.record.end();
    }
    model::LetGo letGo;
    if (shown_->plan && !shown_->plan->form.parts.empty()) {
        const laminate::Opening& opens = shown_->plan->form.parts.front().opens;
        letGo.chordForm_m = opens.chordFrom_m;
        letGo.chordPiece_m = opens.chordTo_m;
    }
    model::Record& record = *std::prev(of);
    if (!record.on) record.on = laminate::measuredOn(piece);
    record.letGo.push_back(letGo);
}

void RecordPanel::makeLearned() {
    auto* words = new SteadyWords(QStringLiteral("learnedWords"), this);
    const auto [table, model] = figuresTable("learned", tr("Springback of earlier pieces"), learnedColumns());
    QPushButton* use = wordButton(QStringLiteral("useFactor"), tr("Use their factor"), this);
    connect(use, &QPushButton::clicked, this, &RecordPanel::useFactor);
    Section* section = addSection("learnedHead", tr("Your earlier pieces"), false, {words, table, use}, nullptr);
    section->setShow([this, words, model, use, section](const std::shared_ptr<const Shown>& shown) {
        noteStudy(section, plan::Study::learned);
        const plan::Plan* known = studied(plan::Study::learned);
        const bool any = known && known->learned;
        words->say(!known ? awaited()
                   : any  ? text(plan::writeTexts(plan::learnedTexts(*known->learned), shown->display))
                          : tr("No piece of this boat was measured off its form."));
        model->show(any ? learnedRows(*known->learned) : std::vector<FigureRow>(), studyIsOld(plan::Study::learned));
        use->setEnabled(any && known->learned->factor.has_value());
    });
}

void RecordPanel::useFactor() {
    const plan::Plan* known = studied(plan::Study::learned);
    if (!known || !known->learned || !known->learned->factor || !shown_ || shown_->pieceIndex < 0) return;
    Change change{tr("Use springback of earlier pieces"), {}, shown_->piece};
    change.after.form.springbackFactor = std::round(100 * *known->learned->factor) / 100;
    emit changeAsked(change);
}

}  // namespace fayline::app
