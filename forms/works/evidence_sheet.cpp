// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/evidence_sheet.h"

#include <QCoreApplication>
#include <QVBoxLayout>

#include "forms/shared/label.h"
#include "forms/shared/number_typed.h"
#include "forms/shared/table_view.h"
#include "forms/works/evidence_ask.h"
#include "forms/works/say.h"
#include "model/record/release_name.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Evidence", text);
}

bool counts_amounts(const Quantity& quantity) {
    return quantity.measure != LimitMeasure::trips && quantity.measure != LimitMeasure::days;
}

void fill_from_line(EvidenceRow& row, const LedgerLine& line, const Season& season) {
    row.trip = line.release ? QString::fromStdString(name_with_trip(*line.release)) : tr("not yet released");
    if (!line.load) return;
    row.load = QString::fromStdString(line.load->load);
    if (const Barge* barge = season.barges.find(line.load->barge))
        row.barge = QString::fromStdString(barge->name);
}

}  // namespace

std::vector<EvidenceRow> evidence_rows(const std::vector<EvidenceLine>& lines, const LimitState& state,
                                       const Season& season, const QLocale& locale) {
    std::vector<EvidenceRow> rows;
    for (const EvidenceLine& line : lines) {
        EvidenceRow row;
        row.at = line.at;
        if (line.line) {
            fill_from_line(row, *line.line, season);
            row.at_text = moment_shown(line.at, season.zone, locale);
            row.at_copy = QString::fromStdString(instant_text(line.at, season.zone));
        } else {
            row.opening = true;
            row.trip = tr("before the book");
        }
        row.method = line.method ? method_shown(*line.method) : QString();
        if (line.unknown) row.method = tr("not known");
        if (!line.unknown && (counts_amounts(state.quantity) || row.opening)) {
            row.amount = line.amount.value;
            row.u = line.amount.u();
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<Column<EvidenceRow>> evidence_columns(const LimitRow& limit, const QLocale& locale) {
    using Row = EvidenceRow;
    const auto number = [locale](const std::optional<double>& v) {
        return v ? number_shown(*v, 1, locale) : QString();
    };
    return {
        Column<Row>(tr("Released"), {}, [](const Row& r) { return r.at_text; }).copied_as([](const Row& r) {
            return r.at_copy;
        }),
        Column<Row>(tr("Trip"), {}, [](const Row& r) { return r.trip; }),
        Column<Row>(tr("Load"), {}, [](const Row& r) { return r.load; }),
        Column<Row>(tr("Counts"), limit.counted_unit, [number](const Row& r) { return number(r.amount); })
            .number([](const Row& r) { return r.amount; }),
        Column<Row>(tr("± u"), {},
                    [locale](const Row& r) { return r.u ? rounded_up(*r.u, 1, locale) : QString(); })
            .number([](const Row& r) { return r.u; }),
        Column<Row>(tr("Known by"), {}, [](const Row& r) { return r.method; }),
        Column<Row>(tr("Barge"), {}, [](const Row& r) { return r.barge; }),
    };
}

std::function<std::vector<EvidenceRow>(const Figures&)> evidence_of(std::size_t place) {
    return [place](const Figures& figures) {
        const LimitState& state = figures.limits.at(place);
        return evidence_rows(evidence(*figures.ledger, state, figures.as_at), state, figures.season,
                             QLocale());
    };
}

QWidget* evidence_page(const LimitRow& limit, std::vector<EvidenceRow> rows, const QLocale& locale,
                       const OpensLoad& open_load, QWidget* parent) {
    auto* page = new QWidget(parent);
    auto* all = new QVBoxLayout(page);
    all->setSpacing(grid);
    const auto add = [&](QLabel* label) {
        label->setWordWrap(true);
        all->addWidget(label);
    };
    add(make_label(limit.text, Step::strong, Weight::regular, page));
    if (limit.headroom) {
        const QString words = tr("Used %1 ± %2 of %3 %4, headroom %5; %6.");
        add(make_quiet(words.arg(rounded_up(limit.used, limit.decimals, locale),
                                 rounded_up(limit.used_u, limit.decimals, locale),
                                 number_shown(*limit.limit, limit.decimals, locale), limit.unit,
                                 rounded_down(*limit.headroom, limit.decimals, locale), limit.window),
                       Step::body, page));
    }
    auto* table = new TableView(tr("what it is made of"), page);
    auto* model = new RowTable<EvidenceRow>(evidence_columns(limit, locale), table);
    model->set_rows(std::move(rows));
    table->set_model(model);
    table->set_empty_text(tr("Nothing counts in this window yet."));
    table->setMinimumHeight(40 * grid);
    QObject::connect(table, &TableView::opened, model, [model, open_load](int row) {
        if (!model->row(row).load.isEmpty()) open_load(model->row(row).load);
    });
    all->addWidget(table, 1);
    return page;
}

}  // namespace spoilbook::form
