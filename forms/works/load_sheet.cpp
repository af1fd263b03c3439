// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/load_sheet.h"

#include <QTabBar>
#include <QTabWidget>
#include <QVBoxLayout>

#include "forms/barge/desk_words.h"
#include "forms/shared/label.h"
#include "forms/shared/record_words.h"
#include "forms/shared/state_mark.h"
#include "forms/shared/table_view.h"
#include "forms/works/say.h"
#include "model/book/history.h"

namespace spoilbook::form {
namespace {

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

template <class R>
QString named(const Shelf<R>& shelf, const Id& id, std::string R::*name) {
    const R* row = shelf.find(id);
    return row ? shown(row->*name) : QString();
}

}  // namespace

LoadSheet::LoadSheet(BookSession& session, std::string load, QWidget* parent)
    : QWidget(parent), session_(session), label_(std::move(load)) {
    auto* all = new QVBoxLayout(this);
    all->setSpacing(grid + half_grid);
    build_head();
    const QLocale locale;
    const Zone zone = session.zone();
    methods_view_ = new TableView(tr("methods"), this);
    methods_ = new RowTable<MethodRow>(method_columns(locale), this);
    methods_view_->set_model(methods_);
    methods_view_->set_empty_text(tr("No reading of this load is in the book."));
    methods_view_->setFixedHeight(27 * grid);
    all->addWidget(methods_view_);
    tabs_ = new QTabWidget(this);
    tabs_->setDocumentMode(true);
    tabs_->tabBar()->setAccessibleName(tr("What stands behind the methods"));
    tabs_->setMinimumHeight(34 * grid);
    all->addWidget(tabs_, 1);
    pairs_ = add_table(tr("Agreement"), pair_columns(locale), tr("There are no two methods to compare."));
    parts_ = add_table(tr("Split"), part_columns(locale), {});
    factors_ = add_table(tr("Factors"), factor_columns(zone, locale), tr("No factor was needed."));
    readings_ = add_table(tr("Readings"), named_columns(), {});
    said_ = add_table(tr("Taken and left out"), said_columns(),
                      tr("Nothing had to be taken, and no method was left out."));
    steps_ = add_table(tr("History"), step_columns(zone, locale), {});
    connect(&session, &Session::changed, this, &LoadSheet::refresh);
    refresh();
}

void LoadSheet::build_head() {
    auto* all = qobject_cast<QVBoxLayout*>(layout());
    of_ = make_quiet({}, Step::body, this);
    of_->setWordWrap(true);
    all->addWidget(of_);
    auto* row = new QHBoxLayout;
    counts_ = make_label({}, Step::strong, Weight::semibold, this);
    counts_->setWordWrap(true);
    mark_ = new StateMark(State::unknown, this);
    row->addWidget(counts_, 1);
    row->addWidget(mark_, 0, Qt::AlignTop);
    all->addLayout(row);
    why_ = make_label({}, Step::body, Weight::regular, this);
    why_->setWordWrap(true);
    all->addWidget(why_);
}

template <class Row>
RowTable<Row>* LoadSheet::add_table(const QString& title, std::vector<Column<Row>> columns,
                                    const QString& empty) {
    auto* view = new TableView(title.toLower(), tabs_);
    auto* rows = new RowTable<Row>(std::move(columns), view);
    view->set_model(rows);
    view->set_empty_text(empty);
    tabs_->addTab(view, title);
    return rows;
}

void LoadSheet::refresh() {
    const Season& season = session_.season();
    const Load* load = nullptr;
    for (const Load& one : season.loads.rows()) {
        if (one.load == label_) load = &one;
    }
    if (!load) return counts_->setText(tr("There is no load %1 in the book now.").arg(shown(label_)));
    QStringList of{named(season.barges, load->barge, &Barge::name),
                   named(season.materials, load->material, &Material::material)};
    const auto time = [&](const std::optional<Instant>& at) {
        return at ? moment_shown(*at, season.zone, QLocale()) : tr("?");
    };
    of << tr("first bucket %1, full %2").arg(time(load->loading_start), time(load->loading_end));
    of.removeAll(QString());
    of_->setText(of.join(QStringLiteral("  ·  ")));
    show_view(load_view(season, *load));
    readings_->set_rows(readings(*load));
    steps_->set_rows(steps(*load));
    for (TableView* view : tabs_->findChildren<TableView*>())
        view->table()->resizeColumnsToContents();
    methods_view_->table()->resizeColumnsToContents();
}

void LoadSheet::show_view(const LoadView& view) {
    const LoadAnswer& answer = view.answer;
    counts_->setText(answer.counts.isEmpty() ? tr("Nothing is known of how much is in this load.")
                                             : tr("%1, %2.").arg(answer.counts, answer.by));
    mark_->setVisible(!answer.counts.isEmpty());
    mark_->show_state(answer.state, answer.word);
    why_->setText(view.why);
    methods_->set_rows(view.methods);
    pairs_->set_rows(view.pairs);
    parts_->set_rows(view.parts);
    factors_->set_rows(view.factors);
    said_->set_rows(view.said);
}

std::vector<NamedRow> LoadSheet::readings(const Load& load) const {
    std::vector<NamedRow> rows;
    const Kind& of = kind("load");
    const Season& season = session_.season();
    if (const auto row = session_.book().labelled(of, label_)) {
        for (std::size_t i = 0; i < of.fields.size(); ++i) {
            if (is_blank(row->values[i])) continue;
            const Field& field = of.fields[i];
            QString text = value_shown(asking(session_.book()), field, row->values[i], season.zone);
            if (!field.unit.empty()) text += u' ' + shown(field.unit);
            rows.push_back({column_words(of, field), text});
        }
    }
    for (const Tally& tally : season.tallies.rows()) {
        if (tally.load != load.id) continue;
        const QString from = named(season.stations, tally.station, &Station::station);
        const QString bucket = named(season.buckets, tally.bucket, &Bucket::name);
        const double count = tally.count.value_or(0) + tally.part_buckets.value_or(0);
        rows.push_back({tr("Tally, station %1").arg(from.isEmpty() ? tr("not recorded") : from),
                        tr("%1 buckets %2").arg(QLocale().toString(count, 'f', 1), bucket)});
    }
    return rows;
}

std::vector<StepRow> LoadSheet::steps(const Load& load) const {
    std::vector<StepRow> rows;
    const Kind& of = kind("load");
    for (const RowStep& step : history(session_.book(), of, load.id)) {
        QStringList what;
        for (const FieldStep& field : step.fields) {
            if (step.made && is_blank(field.after)) continue;
            const auto at = of.index_of(field.field);
            const QString name = at ? column_words(of, of.fields[*at]) : shown(field.field);
            const auto text = [&](const Value& value) {
                if (is_blank(value) || !at) return tr("blank");
                return value_shown(asking(session_.book()), of.fields[*at], value, session_.zone());
            };
            what << (step.made ? tr("%1: %2").arg(name, text(field.after))
                               : tr("%1: %2, was %3").arg(name, text(field.after), text(field.before)));
        }
        if (step.after_signing) what << tr("after signing");
        rows.push_back({step.at, shown(step.who), what.join(QStringLiteral("; ")), shown(step.why)});
    }
    return rows;
}

}  // namespace spoilbook::form
