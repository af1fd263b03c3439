// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/volumes_leaf.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include "forms/shared/button.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/works/bars.h"
#include "forms/works/load_sheet.h"
#include "forms/works/say.h"
#include "forms/works/volume_loads.h"
#include "forms/works/volume_rows.h"

namespace spoilbook::form {
namespace {

constexpr std::array groupings{GroupBy::month, GroupBy::claim,    GroupBy::ground,
                               GroupBy::cell,  GroupBy::material, GroupBy::barge};

struct Grouped {
    std::vector<VolumeRow> rows;
    std::optional<Estimate> all_in_situ;
    std::optional<double> monthly_limit;
};

}  // namespace

VolumesLeaf::VolumesLeaf(FiguresSource& source, QWidget* parent)
    : FiguresPage(source, parent),
      by_(new ChoiceField(tr("Released by"), this)),
      total_(make_label({}, Step::strong, Weight::regular, this)),
      bars_(new Bars(tr("Released volumes"), this)),
      table_(new TableView(tr("volumes"), this)),
      sheet_(new Sheet(this)),
      load_sheet_(new Sheet(this)) {
    build_head();
    give_height(bars_, 28);
    give_height(table_, 24);
    table_->set_empty_text(tr("Nothing has been released by the as-at."));
    body()->addWidget(bars_, 1);
    body()->addWidget(table_, 1);
    tell_exports_of(bars_);
    tell_exports_of(table_);
    connect(table_, &TableView::opened, this, &VolumesLeaf::open_loads);
}

void VolumesLeaf::open_loads(int row) {
    const GroupBy by = *group_named(by_->chosen()->toStdString());
    const VolumeRow& volume = rows_->row(row);
    const auto key = volume.keys.front();
    const QString title = tr("Released, %1").arg(volume_key(volume, by, QLocale()));
    ask<std::vector<VolumeLoad>>(
        [by, key](const Figures& f) { return volume_loads(f, by, key, QLocale()); },
        [this, title](std::vector<VolumeLoad> rows) {
            sheet_->open(
                title,
                volume_loads_page(std::move(rows), QLocale(), opens_loads(session(), load_sheet_), sheet_),
                load_sheet_width);
        });
}

void VolumesLeaf::build_head() {
    std::vector<Choice> choices;
    for (const GroupBy by : groupings)
        choices.push_back({QString::fromStdString(group_text(by)), grouping_shown(by)});
    by_->set_choices(choices);
    by_->set_chosen(choices.front().key);
    by_->setMaximumWidth(28 * grid);
    total_->setWordWrap(true);
    total_->setMinimumHeight(box_height);
    auto* head = new QHBoxLayout;
    head->setSpacing(3 * grid);
    head->addWidget(by_);
    head->addWidget(total_, 1, Qt::AlignBottom);
    auto* out = make_button(ButtonKind::tool, tr("Export the bars"), QStringLiteral("export"), this);
    connect(out, &QPushButton::clicked, bars_, &Bars::ask_export);
    head->addWidget(out, 0, Qt::AlignBottom);
    body()->addLayout(head);
    connect(by_, &ChoiceField::committed, this, [this] {
        if (figures()) show_figures(figures());
    });
}

void VolumesLeaf::show_figures(const FiguresMade&) {
    const GroupBy by = *group_named(by_->chosen()->toStdString());
    ask<Grouped>(
        [by](const Figures& f) {
            auto rows = volumes(*f.ledger, f.as_at, {by});
            if (by == GroupBy::month) rows = with_nil_months(rows);
            return Grouped{std::move(rows), volumes(*f.ledger, f.as_at, {}).front().amounts.in_situ_m3,
                           monthly_limit(f.limits)};
        },
        [this, by](Grouped grouped) {
            // The person chose another grouping meanwhile: its own answer follows.
            if (by != *group_named(by_->chosen()->toStdString())) return;
            const QLocale locale;
            const auto& all = grouped.all_in_situ;
            total_->setText(all ? tr("%1 ± %2 m³ in situ released in all.")
                                      .arg(rounded_up(all->value, 0, locale), rounded_up(all->u(), 0, locale))
                                : tr("Nothing that is known has been released."));
            show_rows(std::move(grouped.rows), by, grouped.monthly_limit);
        });
}

void VolumesLeaf::show_rows(std::vector<VolumeRow> rows, GroupBy by, std::optional<double> monthly_limit) {
    bars_->show_data(volume_bars(rows, by, monthly_limit, QLocale()));
    auto* fresh = new RowTable<VolumeRow>(volume_columns(by, QLocale()), this);
    fresh->set_rows(std::move(rows));
    table_->set_model(fresh);
    delete rows_;
    rows_ = fresh;
}

}  // namespace spoilbook::form
