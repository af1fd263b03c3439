// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/records_leaf.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include "forms/shared/button.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/icon.h"
#include "forms/shared/record_sheet.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

QString kind_title(const Kind& kind) {
    QString title = QString::fromStdString(kind.name).replace(u'_', u' ');
    title[0] = title[0].toUpper();
    return title;
}

// The letters that the newest label begins with: "T-" of "T-0412".
std::string prefix_of(const Book& book, const Kind& kind) {
    const auto rows = book.rows(kind);
    if (rows.empty()) return kind.name.substr(0, 1) + "-";
    const std::string label = book.label_of(kind, rows.back().id);
    return label.substr(0, label.find_last_not_of("0123456789") + 1);
}

}  // namespace

RecordsLeaf::RecordsLeaf(BookSession& session, const std::vector<std::string>& kinds, QWidget* parent)
    : QWidget(parent),
      session_(session),
      choice_(new ChoiceField(tr("Records"), this)),
      add_(make_button(ButtonKind::plain, tr("Add a record"), QStringLiteral("add"), this)),
      view_(new TableView(tr("Records"), this)),
      sheet_(new Sheet(this)),
      open_view_(make_button(ButtonKind::plain, {}, {}, this)) {
    auto* all = new QVBoxLayout(this);
    auto* head = new QHBoxLayout;
    choice_->setMaximumWidth(40 * grid);
    head->addWidget(choice_, 1);
    head->addStretch();
    head->addWidget(open_view_, 0, Qt::AlignBottom);
    head->addWidget(add_, 0, Qt::AlignBottom);
    connect(open_view_, &QPushButton::clicked, this, &RecordsLeaf::open_view);
    all->addLayout(head);
    all->addWidget(view_, 1);
    std::vector<Choice> choices;
    for (const Kind& one : all_kinds()) {
        if (!kinds.empty() && std::find(kinds.begin(), kinds.end(), one.name) == kinds.end()) continue;
        choices.push_back({QString::fromStdString(one.name), kind_title(one)});
    }
    choice_->set_choices(choices);
    connect(choice_, &ChoiceField::committed, this,
            [this](const QString& key) { show_kind(key.toStdString()); });
    connect(view_, &TableView::opened, this, [this](int row) { open_record(rows_->row(row)); });
    connect(add_, &QPushButton::clicked, this, &RecordsLeaf::add_record);
    connect(&session_, &Session::changed, this, &RecordsLeaf::refresh);
    show_kind(kinds.empty() ? "trip" : kinds.front());
}

std::vector<Column<Row>> RecordsLeaf::columns() const {
    std::vector<Column<Row>> columns;
    const Zone zone = session_.zone();
    const std::shared_ptr<LabelOf> labels = labels_;
    for (std::size_t i = 0; i < kind_->fields.size(); ++i) {
        const Field& field = kind_->fields[i];
        Column<Row> column(
            field_title(field), QString::fromStdString(field.unit),
            [=, &field](const Row& row) { return value_shown(*labels, field, row.values[i], zone); });
        column.tip(QString::fromStdString(field.doc)).copied_as([=, &field](const Row& row) {
            return value_copied(*labels, field, row.values[i], zone);
        });
        if (field.type == FieldType::number || field.type == FieldType::integer) {
            column.number([i](const Row& row) -> std::optional<double> {
                if (const double* number = std::get_if<double>(&row.values[i])) return *number;
                if (const std::int64_t* whole = std::get_if<std::int64_t>(&row.values[i]))
                    return double(*whole);
                return std::nullopt;
            });
        }
        columns.push_back(std::move(column));
    }
    return columns;
}

void RecordsLeaf::show_kind(const std::string& name) {
    kind_ = &kind(name);
    *labels_ = read_labels(session_.book(), *kind_);
    choice_->set_chosen(QString::fromStdString(name));
    choice_->set_hint(QString::fromStdString(kind_->doc));
    auto* rows = new RowTable<Row>(columns(), this);
    rows->set_rows(session_.book().rows(*kind_));
    view_->set_model(rows);
    delete rows_;
    rows_ = rows;
    view_->set_empty_text(tr("The book has no %1 yet.").arg(kind_title(*kind_).toLower()));
    const bool logged = !kind_->label.empty() && kind_->field(kind_->label.front()).type == FieldType::text;
    add_->setVisible(logged && session_.writable());
    add_->setText(tr("Add a %1").arg(kind_title(*kind_).toLower()));
    add_->setAccessibleName(add_->text());
    offer_view();
}

void RecordsLeaf::add_view(View view) {
    views_.push_back(std::move(view));
    offer_view();
}

void RecordsLeaf::offer_view() {
    open_view_->hide();
    for (const View& view : views_) {
        if (view.kind != kind_->name) continue;
        open_view_->setText(view.words);
        open_view_->setAccessibleName(view.words);
        open_view_->setIcon(icon(view.icon, Tone::text));
        open_view_->show();
    }
}

void RecordsLeaf::open_view() {
    const int row = view_->current_row();
    if (row < 0) return;
    const QString label = QString::fromStdString(session_.book().label_of(*kind_, rows_->row(row).id));
    for (const View& view : views_) {
        if (view.kind == kind_->name)
            sheet_->open(tr("%1 %2").arg(kind_title(*kind_), label), view.make(label), view.width);
    }
}

void RecordsLeaf::refresh() {
    *labels_ = read_labels(session_.book(), *kind_);
    rows_->set_rows(session_.book().rows(*kind_));
}

void RecordsLeaf::open_record(const Row& row) {
    QString title = record_title(session_.book(), *kind_, row, session_.zone());
    title[0] = title[0].toUpper();
    sheet_->open(title, new RecordSheet(session_, *kind_, row.id));
}

void RecordsLeaf::add_record() {
    const std::string label = next_label(session_.book(), *kind_, prefix_of(session_.book(), *kind_));
    sheet_->open(tr("%1 %2").arg(kind_title(*kind_), QString::fromStdString(label)),
                 new RecordSheet(session_, *kind_, label));
}

}  // namespace spoilbook::form
