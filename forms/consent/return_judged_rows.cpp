// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/return_judged_rows.h"

#include <QCoreApplication>
#include <tuple>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Return", text);
}

Column<JudgedRow> words(const QString& title, QString JudgedRow::*text) {
    return Column<JudgedRow>(title, {}, [text](const JudgedRow& r) { return r.*text; });
}

Column<JudgedRow> count(const QString& title, double JudgedRow::*number, const QLocale& locale) {
    return Column<JudgedRow>(title, {},
                             [=](const JudgedRow& r) { return number_shown(r.*number, 0, locale); })
        .number([number](const JudgedRow& r) { return std::optional(r.*number); });
}

}  // namespace

std::vector<JudgedRow> judged_rows(const ReturnFacts& facts, const QLocale& locale) {
    std::vector<JudgedRow> rows;
    for (const ConditionJudged& judged : facts.judged) {
        JudgedRow row;
        row.condition = book_text(judged.condition->condition);
        row.text = book_text(judged.condition->text);
        row.complied = double(judged.complied);
        row.cannot_tell = double(judged.cannot_tell);
        row.breached = double(judged.breached);
        std::tie(row.failed.state, row.failed.word) = compliance_shown(judged.state());
        row.failed.summary = tr("%1 complied, %2 cannot be told, %3 breached it.")
                                 .arg(judged.complied)
                                 .arg(judged.cannot_tell)
                                 .arg(judged.breached);
        row.failed.without_rows = tr("Everything that fell to it complied.");
        for (const Finding& finding : judged.failed)
            row.failed.rows.push_back(standing_row(finding, facts.season->zone, locale));
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<Column<JudgedRow>> judged_columns(const QLocale& locale) {
    using Row = JudgedRow;
    return {words(tr("Condition"), &Row::condition),
            Column<Row>(tr("State"), {}, [](const Row& r) { return r.failed.word; }).mark([](const Row& r) {
                return std::optional(r.failed.state);
            }),
            count(tr("Complied"), &Row::complied, locale),
            count(tr("Cannot tell"), &Row::cannot_tell, locale),
            count(tr("Breached"), &Row::breached, locale),
            words(tr("What"), &Row::text)};
}

}  // namespace spoilbook::form
