// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/volume_loads.h"

#include <QCoreApplication>
#include <QVBoxLayout>

#include "forms/shared/number_typed.h"
#include "forms/shared/table_model.h"
#include "forms/shared/table_view.h"
#include "forms/shared/type_scale.h"
#include "forms/works/say.h"
#include "model/record/release_name.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Volumes", text);
}

using Amount = std::optional<Estimate> VolumeLoad::*;

void add_amount(std::vector<Column<VolumeLoad>>& columns, const QString& title, Amount amount,
                const QLocale& locale) {
    using Row = VolumeLoad;
    const auto value = [amount](const Row& row) {
        return row.*amount ? std::optional((row.*amount)->value) : std::nullopt;
    };
    const auto u = [amount](const Row& row) {
        return row.*amount ? std::optional((row.*amount)->u()) : std::nullopt;
    };
    const auto text = [locale](std::optional<double> number) {
        return number ? number_shown(*number, 1, locale) : tr("not known");
    };
    columns.push_back(Column<Row>(title, QStringLiteral("m³"), [=](const Row& row) {
                          return text(value(row));
                      }).number(value));
    columns.push_back(Column<Row>(tr("± u"), {}, [=](const Row& row) {
                          return u(row) ? rounded_up(*u(row), 1, locale) : QString();
                      }).number(u));
}

}  // namespace

std::vector<VolumeLoad> volume_loads(const Figures& figures, GroupBy by,
                                     const std::optional<std::string>& key, const QLocale& locale) {
    std::vector<VolumeLoad> rows;
    const Season& season = figures.season;
    for (const VolumeLine& one : volume_lines(*figures.ledger, figures.as_at, by, key)) {
        const LedgerLine& line = *one.line;
        VolumeLoad row;
        row.at_text = moment_shown(line.at, season.zone, locale);
        row.at_copy = QString::fromStdString(instant_text(line.at, season.zone));
        if (line.release) row.trip = QString::fromStdString(name_with_trip(*line.release));
        if (line.load) {
            row.load = QString::fromStdString(line.load->load);
            if (const Barge* barge = season.barges.find(line.load->barge))
                row.barge = QString::fromStdString(barge->name);
        }
        row.hopper_m3 = one.amounts.hopper_m3;
        row.in_situ_m3 = one.amounts.in_situ_m3;
        rows.push_back(std::move(row));
    }
    return rows;
}

QWidget* volume_loads_page(std::vector<VolumeLoad> rows, const QLocale& locale, const OpensLoad& open_load,
                           QWidget* parent) {
    using Row = VolumeLoad;
    std::vector<Column<Row>> columns{
        Column<Row>(tr("Released"), {}, [](const Row& row) { return row.at_text; })
            .copied_as([](const Row& row) { return row.at_copy; }),
        Column<Row>(tr("Trip"), {}, [](const Row& row) { return row.trip; }),
        Column<Row>(tr("Load"), {}, [](const Row& row) { return row.load; }),
        Column<Row>(tr("Barge"), {}, [](const Row& row) { return row.barge; }),
    };
    add_amount(columns, tr("In situ"), &Row::in_situ_m3, locale);
    add_amount(columns, tr("Hopper"), &Row::hopper_m3, locale);
    auto* page = new QWidget(parent);
    auto* all = new QVBoxLayout(page);
    auto* table = new TableView(tr("loads behind this volume"), page);
    auto* model = new RowTable<Row>(std::move(columns), table);
    model->set_rows(std::move(rows));
    table->set_model(model);
    table->setMinimumHeight(40 * grid);
    table->table()->resizeColumnsToContents();
    all->addWidget(table, 1);
    QObject::connect(table, &TableView::opened, model, [model, open_load](int row) {
        if (!model->row(row).load.isEmpty()) open_load(model->row(row).load);
    });
    return page;
}

}  // namespace spoilbook::form
