// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/releases_leaf.h"

#include <QHBoxLayout>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>

#include "forms/consent/release_map.h"
#include "forms/shared/button.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/table_view.h"

namespace spoilbook::form {
namespace {

constexpr int beside_from = 95 * grid;  // narrower, the map stands below the table

struct Releases {
    std::vector<ReleaseRow> rows;
    std::vector<MapShape> shapes;
};

}  // namespace

ReleasesLeaf::ReleasesLeaf(FiguresSource& source, QWidget* parent)
    : FiguresPage(source, parent),
      sentence_(make_label({}, Step::strong, Weight::regular, this)),
      which_(new ChoiceField(tr("Show"), this)),
      split_(new QSplitter(this)),
      table_(new TableView(tr("releases"), split_)),
      rows_(new RowTable<ReleaseRow>(release_columns(QLocale()), this)) {
    which_->set_choices({{QStringLiteral("all"), tr("all releases")},
                         {QStringLiteral("doubt"), tr("outside or cannot tell")}});
    which_->set_chosen(QStringLiteral("all"));
    which_->setMaximumWidth(28 * grid);
    sentence_->setWordWrap(true);
    sentence_->setMinimumHeight(box_height);
    auto* head = new QHBoxLayout;
    head->setSpacing(3 * grid);
    head->addWidget(which_);
    head->addWidget(sentence_, 1, Qt::AlignBottom);
    body()->addLayout(head);
    table_->set_model(rows_);
    table_->set_empty_text(tr("No such release by the as-at."));
    table_->setMinimumSize(36 * grid, 20 * grid);
    give_height(split_, 44);
    split_->addWidget(build_map());
    split_->setChildrenCollapsible(false);
    split_->setHandleWidth(2 * grid);
    split_->setSizes({74 * grid, 55 * grid});
    split_->setStretchFactor(0, 1);
    split_->setStretchFactor(1, 1);
    body()->addWidget(split_, 1);
    tell_exports_of(table_);
    tell_exports_of(map_);
    connect(which_, &ChoiceField::committed, this, &ReleasesLeaf::show_chosen);
    connect(table_, &TableView::current_changed, map_, &ReleaseMap::mark);
    connect(map_, &ReleaseMap::picked, this, &ReleasesLeaf::show_picked);
}

QWidget* ReleasesLeaf::build_map() {
    auto* side = new QWidget(split_);
    auto* all = new QVBoxLayout(side);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(half_grid);
    map_ = new ReleaseMap(side);
    auto* bar = new QHBoxLayout;
    bar->addStretch();
    const auto add = [&](const QString& text, auto act) {
        auto* button = make_button(ButtonKind::quiet, text, {}, side);
        connect(button, &QPushButton::clicked, map_, act);
        bar->addWidget(button);
    };
    add(tr("Nearer"), [this] { map_->zoom(1.6, map_->rect().center()); });
    add(tr("Farther"), [this] { map_->zoom(1 / 1.6, map_->rect().center()); });
    add(tr("All"), [this] { map_->show_all(); });
    auto* out = make_button(ButtonKind::tool, tr("Export the map"), QStringLiteral("export"), side);
    connect(out, &QPushButton::clicked, map_, &ReleaseMap::ask_export);
    bar->addWidget(out);
    all->addLayout(bar);
    all->addWidget(map_, 1);
    auto* note =
        make_quiet(tr("A picture of what is recorded, not an aid to navigation."), Step::small, side);
    note->setWordWrap(true);
    all->addWidget(note);
    return side;
}

void ReleasesLeaf::show_figures(const FiguresMade&) {
    ask<Releases>(
        [](const Figures& f) {
            return Releases{release_rows(f.places, *f.ledger, QLocale()), map_shapes(*f.ledger)};
        },
        [this](Releases releases) {
            sentence_->setText(releases_sentence(releases.rows, QLocale()));
            all_ = std::move(releases.rows);
            map_->show_shapes(std::move(releases.shapes));
            show_chosen();
        });
}

void ReleasesLeaf::show_chosen() {
    std::vector<ReleaseRow> chosen = all_;
    if (which_->chosen() == QStringLiteral("doubt")) {
        std::erase_if(chosen, [](const ReleaseRow& r) { return r.verdict == PlaceVerdict::inside; });
    }
    map_->show_releases(chosen);
    rows_->set_rows(std::move(chosen));
    table_->table()->resizeColumnsToContents();
}

void ReleasesLeaf::show_picked(int row) {
    const auto* shown = table_->shown_rows();
    const QModelIndex index = shown->mapFromSource(rows_->index(row, 0));
    if (!index.isValid()) return;
    table_->table()->setCurrentIndex(index);
    table_->table()->scrollTo(index, QAbstractItemView::PositionAtCenter);
}

void ReleasesLeaf::resizeEvent(QResizeEvent* event) {
    FiguresPage::resizeEvent(event);
    split_->setOrientation(width() < beside_from ? Qt::Vertical : Qt::Horizontal);
}

}  // namespace spoilbook::form
