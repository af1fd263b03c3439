// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/shift_list_page.h"

#include <QLocale>
#include <QVBoxLayout>
#include <algorithm>

#include "forms/barge/panel.h"
#include "forms/barge/record_form.h"
#include "forms/barge/shift_reading.h"
#include "forms/shared/label.h"
#include "forms/shared/record_sheet.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/shared/text_field.h"
#include "forms/shared/time_typed.h"
#include "forms/shared/when_seen.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

}  // namespace

ShiftListPage::ShiftListPage(BookSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      table_(new TableView(tr("Shifts"), this)),
      rows_(new RowTable<Shift>(columns(), this)) {
    auto* all = new QVBoxLayout(this);
    all->addWidget(table_, 1);
    table_->set_model(rows_);
    table_->set_empty_text(tr("No shift was opened yet. The running shift's page opens one."));
    connect(table_, &TableView::opened, this, [this](int row) { open_shift(rows_->row(row)); });
    new WhenSeen(this, session_, [this] { refresh(); });
    refresh();
    // Times are read down the column: they are never cut.
    table_->table()->resizeColumnsToContents();
}

std::vector<Column<Shift>> ShiftListPage::columns() const {
    using C = Column<Shift>;
    const auto time = [this](const std::optional<Instant>& at) {
        return at ? QString::fromStdString(day_text(session_.zone().day_of(*at))) + u' ' +
                        time_shown(*at, session_.zone())
                  : QString();
    };
    return {
        C(tr("Shift"), {}, [](const Shift& s) { return shown(s.shift); }),
        C(tr("Opened"), {}, [time](const Shift& s) { return time(s.start); }),
        C(tr("Ended"), {}, [time](const Shift& s) { return time(s.end); }),
        C(tr("Skipper"), {}, [](const Shift& s) { return shown(s.skipper); }),
        C(tr("Weather"), {}, [](const Shift& s) { return shown(s.weather); }),
        C(tr("Waves"), tr("m"),
          [](const Shift& s) {
              return s.wave_height_m ? QLocale().toString(*s.wave_height_m, 'f', 1) : QString();
          }).number([](const Shift& s) { return s.wave_height_m; }),
        C(tr("Signed"), {},
          [](const Shift& s) {
              return s.signed_at ? tr("by %1").arg(shown(s.signed_by))
                     : s.end     ? tr("not yet")
                                 : tr("running");
          }).mark([](const Shift& s) -> std::optional<State> {
            if (s.signed_at) return State::clear;
            return s.end ? std::optional(State::attention) : std::nullopt;
        }),
    };
}

void ShiftListPage::refresh() {
    std::vector<Shift> shifts = session_.season().shifts.rows();
    std::stable_sort(shifts.begin(), shifts.end(),
                     [](const Shift& a, const Shift& b) { return b.start < a.start; });
    rows_->set_rows(std::move(shifts));
}

Sheet* ShiftListPage::sheet() {
    if (!sheet_) sheet_ = new Sheet(parentWidget() ? parentWidget() : this);
    return sheet_;
}

QWidget* ShiftListPage::shift_content(const Shift& shift) {
    auto* content = new QWidget;
    auto* rows = new QVBoxLayout(content);
    auto* form = new RecordForm(session_, kind("shift"), content);
    if (shift.signed_at) {
        QLabel* note = make_label(
            tr("Signed by %1, %2. A change is a correction: it keeps the old value and says why.")
                .arg(shown(shift.signed_by), day_and_time_shown(*shift.signed_at, session_.zone())),
            Step::body, Weight::regular, content);
        note->setWordWrap(true);
        rows->addWidget(note);
        auto* why = new TextField(tr("Reason of the correction"), {}, content);
        rows->addWidget(why);
        form->set_reason([why] { return why->text(); });
        connect(why, &TextField::committed, form, &RecordForm::try_again);
    }
    auto* boxes = form_grid();
    int at = 0;
    for (const char* column :
         {"start", "end", "skipper", "crew", "weather", "wave_height_m", "dredger", "tug"}) {
        boxes->addWidget(form->add(column, content), at / 2, at % 2, Qt::AlignTop);
        ++at;
    }
    rows->addLayout(boxes);
    form->show(shift.shift);
    auto* reading = new ShiftReading(session_, shift.shift, content);
    rows->addWidget(reading, 1);
    connect(reading, &ShiftReading::line_opened, this, [this](const QString& of, const QString& label) {
        sheet()->open(tr("%1 %2").arg(of, label),
                      new RecordSheet(session_, kind(of.toStdString()), label.toStdString()));
    });
    return content;
}

void ShiftListPage::open_shift(const Shift& shift) {
    sheet()->open(tr("Shift %1").arg(shown(shift.shift)), shift_content(shift), 100 * grid);
}

}  // namespace spoilbook::form
