// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/solids_sheet.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>

#include "forms/shared/book_session.h"
#include "forms/shared/button.h"
#include "forms/shared/chart_frame.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/table_view.h"
#include "forms/shared/unit_field.h"
#include "model/record/watched_water.h"

namespace spoilbook::form {

SolidsSheet::SolidsSheet(BookSession& session, const QString& site, QWidget* parent)
    : QWidget(parent),
      session_(session),
      site_(new ChoiceField(tr("Site"), this)),
      sentence_(make_label({}, Step::body, Weight::regular, this)),
      said_(make_label({}, Step::strong, Weight::regular, this)),
      at_(new UnitField(tr("At a turbidity of, in the site's unit"), {{}, 0.001, 1e6, 1}, this)),
      chart_(new ChartFrame(this)),
      table_(new TableView(tr("samples"), this)) {
    auto* all = new QVBoxLayout(this);
    all->setSpacing(grid + half_grid);
    std::vector<Choice> choices;
    for (const Row& row : session.book().rows(definition<Site>().kind())) {
        const QString name = QString::fromStdString(definition<Site>().read(row).site);
        choices.push_back({name, name});
    }
    site_->set_choices(choices);
    if (!site.isEmpty()) site_->set_chosen(site);
    auto* head = new QHBoxLayout;
    head->setSpacing(2 * grid);
    head->addWidget(site_, 1, Qt::AlignTop);
    head->addWidget(at_, 1, Qt::AlignTop);
    auto* add = make_button(ButtonKind::plain, tr("Write a sample …"), QStringLiteral("add"), this);
    add->setEnabled(session.writable());
    connect(add, &QPushButton::clicked, this,
            [this] { emit sample_wanted(site_->chosen().value_or(QString())); });
    head->addWidget(add, 0, Qt::AlignTop);
    all->addLayout(head);
    for (QLabel* label : {said_, sentence_}) {
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        all->addWidget(label);
    }
    chart_->setMinimumHeight(36 * grid);
    all->addWidget(chart_, 3);
    table_->set_empty_text(tr("No sample of this site is recorded by the as-at."));
    table_->setMinimumHeight(22 * grid);
    all->addWidget(table_, 2);
    connect(site_, &ChoiceField::committed, this, &SolidsSheet::show_site);
    connect(at_, &UnitField::committed, this, &SolidsSheet::show_at);
    connect(chart_, &ChartFrame::exported, this, &SolidsSheet::exported);
    connect(chart_, &ChartFrame::failed, this, &SolidsSheet::failed);
    connect(table_, &TableView::exported, this, &SolidsSheet::exported);
    connect(table_, &TableView::failed, this, &SolidsSheet::failed);
    show_site();
}

void SolidsSheet::show_site() {
    solids_ = {};
    if (site_->chosen()) {
        auto found = site_solids(session_.book(), site_->chosen()->toStdString(), session_.figures_at());
        if (found)
            solids_ = std::move(*found);
        else
            solids_.why = found.refusals().front().what;
    } else {
        solids_.why = tr("choose a site first").toStdString();
    }
    const QLocale locale;
    sentence_->setText(solids_sentence(solids_, locale));
    chart_->set_data(solids_chart(solids_, locale));
    auto* rows = new RowTable<SolidsPoint>(
        solids_columns(QString::fromStdString(solids_.unit), session_.zone(), locale), this);
    rows->set_rows(solids_.points);
    table_->set_model(rows);
    delete rows_;
    rows_ = rows;
    table_->table()->resizeColumnsToContents();
    show_at();
}

void SolidsSheet::show_at() {
    const bool can = solids_.line && at_->value();
    said_->setVisible(can);
    said_->setText(can ? solids_at_words(solids_, *at_->value(), QLocale()) : QString());
}

}  // namespace spoilbook::form
