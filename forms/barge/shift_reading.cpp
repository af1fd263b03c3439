// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/shift_reading.h"

#include <QLocale>
#include <QVBoxLayout>

#include "forms/barge/desk_words.h"
#include "forms/barge/timeline_strip.h"
#include "forms/shared/label.h"
#include "forms/shared/table_view.h"
#include "forms/shared/time_typed.h"

namespace spoilbook::form {
namespace {

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

QString lacking(const SheetLine& line) {
    QStringList words;
    for (const std::string& field : line.missing) {
        const auto index = kind(line.kind).index_of(field);
        words << (index ? column_words(kind(line.kind), kind(line.kind).fields[*index]).toLower()
                        : shown(field).replace(u'_', u' '));
    }
    return words.join(QStringLiteral(", "));
}

QString hours_text(double hours) {
    return span_words(std::int64_t(hours * double(ms_per_hour)));
}

}  // namespace

ShiftReading::ShiftReading(BookSession& session, std::string shift, QWidget* parent)
    : QWidget(parent),
      session_(session),
      label_(std::move(shift)),
      hours_(make_label({}, Step::body, Weight::semibold, this)),
      missing_(make_quiet({}, Step::body, this)),
      strip_(new TimelineStrip(this)),
      table_(new TableView(tr("Shift %1").arg(shown(label_)), this)),
      lines_(new RowTable<SheetLine>(columns(), this)) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    hours_->setWordWrap(true);
    missing_->setWordWrap(true);
    all->addWidget(hours_);
    all->addWidget(strip_);
    all->addWidget(missing_);
    table_->set_model(lines_);
    table_->set_empty_text(tr("Nothing is logged on this shift."));
    table_->setMinimumHeight(30 * grid);
    all->addWidget(table_, 1);
    connect(table_, &TableView::opened, this, [this](int row) {
        const SheetLine& line = lines_->row(row);
        if (!line.label.empty()) emit line_opened(shown(line.kind), shown(line.label));
    });
    connect(&session_, &Session::changed, this, &ShiftReading::refresh);
    refresh();
}

const Shift* ShiftReading::shift() const {
    for (const Shift& one : session_.season().shifts.rows()) {
        if (one.shift == label_) return &one;
    }
    return nullptr;
}

std::vector<Column<SheetLine>> ShiftReading::columns() const {
    const auto time = [this](const std::optional<Instant>& at) {
        return at ? time_shown(*at, session_.zone()) : QString();
    };
    using C = Column<SheetLine>;
    return {
        C(tr("What"), {}, [](const SheetLine& line) { return shown(line.kind); }),
        C(tr("Number"), {}, [](const SheetLine& line) { return shown(line.label); }),
        C(tr("Of"), {}, [](const SheetLine& line) { return shown(line.words); }),
        C(tr("From"), {}, [time](const SheetLine& line) { return time(line.from); }),
        C(tr("To"), {}, [time](const SheetLine& line) { return time(line.to); }),
        C(tr("Count"), {},
          [](const SheetLine& line) {
              return line.number ? QLocale().toString(*line.number, 'g', 6) : QString();
          })
            .number([](const SheetLine& line) { return line.number; })
            .tip(tr("buckets of a tally or load; level or depth of a sounding, m")),
        C(tr("Blank"), {},
          [](const SheetLine& line) {
              return lacking(line);
          }).mark([](const SheetLine& line) -> std::optional<State> {
            return line.missing.empty() ? std::nullopt : std::optional(State::attention);
        }),
    };
}

void ShiftReading::refresh() {
    const Shift* one = shift();
    if (!one) return;
    ShiftTimeline timeline = shift_timeline(session_.season(), *one, session_.figures_at());
    hours_->setText(tr("Digging %1, delays %2, not logged %3")
                        .arg(hours_text(timeline.dug_h), hours_text(timeline.delayed_h),
                             hours_text(timeline.unlogged_h)));
    strip_->show_timeline(std::move(timeline), session_.zone());
    std::vector<SheetLine> lines = shift_sheet(session_.season(), *one);
    const auto blank =
        std::count_if(lines.begin(), lines.end(), [](const auto& line) { return !line.missing.empty(); });
    missing_->setText(
        blank == 0 ? tr("Nothing is blank that a return asks for.")
                   : tr("Lines below with something blank that a return asks for: %1.").arg(int(blank)));
    lines_->set_rows(std::move(lines));
}

}  // namespace spoilbook::form
