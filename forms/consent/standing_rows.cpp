// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/standing_rows.h"

#include <QCoreApplication>
#include <QVBoxLayout>
#include <algorithm>

#include "forms/consent/duty_rows.h"
#include "forms/shared/label.h"
#include "forms/shared/table_view.h"
#include "forms/works/say.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Conditions", text);
}

State shape(BoardState state) {
    switch (state) {
        case BoardState::within:
        case BoardState::nothing_yet:
            return State::clear;
        case BoardState::warned:
        case BoardState::was_over:
        case BoardState::below:
        case BoardState::due:
            return State::attention;
        case BoardState::over:
        case BoardState::breached:
        case BoardState::overdue:
            return State::hold;
        default:
            return State::unknown;
    }
}

void put_at(StandingRow& row, Instant at, const Zone& zone, const QLocale& locale) {
    row.at = at;
    row.at_text = moment_shown(at, zone, locale);
    row.at_copy = QString::fromStdString(instant_text(at, zone));
}

StandingRow row_of(const TriggerRecord& record, const Zone& zone, const QLocale& locale) {
    StandingRow row;
    put_at(row, record.event.start, zone, locale);
    row.what = tr("trigger at %1").arg(book_text(record.event.site));
    row.state = record.event.end ? State::attention : State::hold;
    row.word = state_word(record.event.end ? "was over" : "over");
    row.why = tr("peak %1").arg(locale.toString(record.event.peak, 'f', 1));
    if (record.event.end) row.why += tr(", all clear %1").arg(moment_shown(*record.event.end, zone, locale));
    return row;
}

QString summary_of(const BoardRow& row, const ConditionStanding& standing) {
    if (!row.why.empty()) return book_text(row.why);
    if (!row.findings.empty())
        return tr("%1 judged: %2 breached, %3 cannot be told.")
            .arg(row.findings.size())
            .arg(row.count(Compliance::breached))
            .arg(row.count(Compliance::cannot_tell));
    if (!row.sites.empty() || !row.events.empty())
        return tr("Triggers passed: %1. The Turbidity page shows them.").arg(row.events.size());
    return standing.rows.empty() ? tr("Nothing has fallen to it yet.") : QString();
}

ConditionStanding standing_of(const BoardRow& row, const Board& board, const Zone& zone,
                              const QLocale& locale) {
    ConditionStanding standing;
    standing.state = shape(row.state);
    standing.word = state_word(in_words(text(row.state)));
    for (const auto& found : row.findings)
        standing.rows.push_back(standing_row(found, zone, locale));
    for (const auto& record : row.events)
        standing.rows.push_back(row_of(record, zone, locale));
    for (const auto& duty : duty_rows(row.duties, zone, board.at, locale)) {
        StandingRow shown;
        shown.what = duty.what + u' ' + duty.covers;
        shown.word = duty.word;
        shown.state = duty.shape;
        shown.at_text = duty.due_text;
        shown.at_copy = duty.due_copy;
        shown.why = duty.how;
        standing.rows.push_back(std::move(shown));
    }
    std::stable_sort(standing.rows.begin(), standing.rows.end(), [](const auto& a, const auto& b) {
        const auto rank = [](State state) {
            return state == State::hold ? 0 : state == State::unknown ? 1 : state == State::attention ? 2 : 3;
        };
        return rank(a.state) < rank(b.state);
    });
    standing.summary = summary_of(row, standing);
    return standing;
}

/// Without a column of loads where no row has one.
std::vector<Column<StandingRow>> columns_for(const std::vector<StandingRow>& rows) {
    using Row = StandingRow;
    std::vector<Column<Row>> columns{
        Column<Row>(tr("State"), {}, [](const Row& r) { return r.word; }).mark([](const Row& r) {
            return std::optional(r.state);
        }),
        Column<Row>(tr("When"), {}, [](const Row& r) { return r.at_text; }).copied_as([](const Row& r) {
            return r.at_copy;
        }),
        Column<Row>(tr("What"), {}, [](const Row& r) { return r.what; }),
    };
    const bool has_loads = std::ranges::any_of(rows, [](const Row& row) { return !row.load.isEmpty(); });
    if (has_loads) columns.emplace_back(tr("Load"), QString(), [](const Row& r) { return r.load; });
    columns.emplace_back(tr("Why"), QString(), [](const Row& r) { return r.why; });
    return columns;
}

}  // namespace

std::pair<State, QString> compliance_shown(Compliance state) {
    const QString word = state_word(in_words(text(state)));
    if (state == Compliance::breached) return {State::hold, word};
    return {state == Compliance::complied ? State::clear : State::unknown, word};
}

StandingRow standing_row(const Finding& found, const Zone& zone, const QLocale& locale) {
    StandingRow row;
    put_at(row, found.at, zone, locale);
    row.what = book_text(found.named());
    row.why = book_text(found.why);
    if (found.load != nullptr) row.load = book_text(found.load->load);
    std::tie(row.state, row.word) = compliance_shown(found.state);
    return row;
}

std::map<Id, ConditionStanding> condition_standings(const Board& board, const Zone& zone,
                                                    const QLocale& locale) {
    std::map<Id, ConditionStanding> standings;
    for (const auto& row : board.rows) {
        if (row.condition->kind != "quantity")
            standings.emplace(row.condition->id, standing_of(row, board, zone, locale));
    }
    return standings;
}

QWidget* standing_page(const QString& sentence, ConditionStanding standing, const OpensLoad& open_load,
                       QWidget* parent) {
    auto* page = new QWidget(parent);
    auto* all = new QVBoxLayout(page);
    all->setSpacing(grid);
    for (auto* label : {make_label(sentence, Step::strong, Weight::regular, page),
                        make_quiet(standing.summary, Step::body, page)}) {
        label->setWordWrap(true);
        all->addWidget(label);
    }
    auto* table = new TableView(tr("what it was judged by"), page);
    auto* model = new RowTable<StandingRow>(columns_for(standing.rows), table);
    model->set_rows(std::move(standing.rows));
    table->set_model(model);
    table->set_empty_text(standing.without_rows.isEmpty() ? tr("Nothing has fallen to it yet.")
                                                          : standing.without_rows);
    table->setMinimumHeight(24 * grid);
    QObject::connect(table, &TableView::opened, model, [model, open_load](int row) {
        if (!model->row(row).load.isEmpty()) open_load(model->row(row).load);
    });
    all->addWidget(table, 1);
    // A reason is longer than any column: the whole of it stands below, of the row under the cursor.
    auto* why = make_label(QString(), Step::body, Weight::regular, page);
    why->setWordWrap(true);
    why->setTextInteractionFlags(Qt::TextSelectableByMouse);
    why->setAccessibleName(tr("why"));
    QObject::connect(table, &TableView::current_changed, why,
                     [model, why](int row) { why->setText(row < 0 ? QString() : model->row(row).why); });
    all->addWidget(why);
    return page;
}

}  // namespace spoilbook::form
