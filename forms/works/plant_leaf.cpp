// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/plant_leaf.h"

#include <QApplication>
#include <QClipboard>
#include <QFile>
#include <QHeaderView>
#include <QKeyEvent>
#include <QTableView>
#include <QVBoxLayout>
#include <algorithm>

#include "forms/shared/button.h"
#include "forms/shared/chart_frame.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/message_strip.h"
#include "forms/shared/row_painter.h"
#include "forms/shared/save_file.h"
#include "forms/shared/text_field.h"
#include "forms/works/typed_table.h"

namespace spoilbook::form {
namespace {

constexpr qint64 most_bytes = 1 << 20;
constexpr int plant_abreast_from = 96 * grid;

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

QString axis_title(const TableColumn& column) {
    return PlantLeaf::tr("%1, %2").arg(shown(column.name), shown(column.unit));
}

}  // namespace

ChartData plant_curve(const std::string& field, const Table& table, const QString& barge) {
    ChartData data;
    const auto& columns = table_columns(field);
    data.title = field == "ullage_table" ? PlantLeaf::tr("%1: hopper volume by ullage").arg(barge)
                                         : PlantLeaf::tr("%1: displacement by draught").arg(barge);
    data.empty_text = PlantLeaf::tr("The curve is drawn from two rows on.");
    if (table.size() < 2) return data;
    ChartSeries line{shown(columns[1].name), SeriesKind::line, 1, {}};
    for (const auto& row : table) {
        if (row.size() > 1) line.points.emplace_back(row[0], row[1]);
    }
    std::stable_sort(line.points.begin(), line.points.end(),
                     [](const QPointF& a, const QPointF& b) { return a.x() < b.x(); });
    if (line.points.size() < 2) return data;
    ChartSeries rows{PlantLeaf::tr("rows"), SeriesKind::dots, 2, line.points};
    data.x = {axis_title(columns[0]), line.points.front().x(), line.points.back().x(), {}, 1, {}};
    double most = 1;
    for (const QPointF& point : line.points)
        most = std::max(most, point.y());
    data.y = {axis_title(columns[1]), 0, most * 1.05, {}, 0, {}};
    if (!(data.x.most > data.x.least)) data.x.most = data.x.least + 1;
    data.series = {line, rows};
    return data;
}

PlantLeaf::PlantLeaf(BookSession& session, QWidget* parent)
    : QWidget(parent), session_(session), messages_(new MessageStrip(this)), typed_(new TypedTable(this)) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(3 * grid, 2 * grid, 3 * grid, 2 * grid);
    all->setSpacing(grid + half_grid);
    messages_->hide();
    all->addWidget(messages_);
    all->addWidget(build_head());
    halves_ = new QBoxLayout(QBoxLayout::LeftToRight);
    halves_->setSpacing(2 * grid);
    halves_->addWidget(build_table(), 3);
    curve_ = new ChartFrame(this);
    curve_->setMinimumHeight(20 * grid);
    halves_->addWidget(curve_, 2);
    all->addLayout(halves_, 1);
    all->addWidget(build_foot());
    connect(typed_, &TypedTable::edited, this, [this] {
        changed_ = true;
        show_typed();
    });
    connect(&session_, &Session::changed, this, &PlantLeaf::refresh);
    refresh();
}

QWidget* PlantLeaf::build_head() {
    auto* head = new QWidget(this);
    head_ = new QBoxLayout(QBoxLayout::LeftToRight, head);
    head_->setContentsMargins(0, 0, 0, 0);
    head_->setSpacing(2 * grid);
    barge_ = new ChoiceField(tr("Barge"), head);
    which_ = new ChoiceField(tr("Table"), head);
    which_->set_choices({{QStringLiteral("ullage_table"), tr("Ullage: hopper volume")},
                         {QStringLiteral("hydrostatic_table"), tr("Hydrostatic: displacement")}});
    which_->set_chosen(QStringLiteral("ullage_table"));
    for (ChoiceField* field : {barge_, which_}) {
        field->setMaximumWidth(32 * grid);
        head_->addWidget(field, 1);
        connect(field, &ChoiceField::committed, this, &PlantLeaf::choose);
    }
    mark_ = new StateMark(State::clear, head);
    head_->addStretch();
    head_->addWidget(mark_, 0, Qt::AlignBottom);
    return head;
}

// At a large scale the curve lies below the rows.
void PlantLeaf::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const bool abreast = width() >= plant_abreast_from;
    for (QBoxLayout* layout : {halves_, head_})
        layout->setDirection(abreast ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

QWidget* PlantLeaf::build_table() {
    auto* part = new QWidget(this);
    auto* rows = new QVBoxLayout(part);
    rows->setContentsMargins(0, 0, 0, 0);
    view_ = new QTableView(part);
    view_->setModel(typed_);
    view_->setItemDelegate(new RowPainter(view_));
    view_->setAccessibleName(tr("The table's rows"));
    view_->setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                           QAbstractItemView::EditKeyPressed | QAbstractItemView::SelectedClicked);
    view_->horizontalHeader()->setStretchLastSection(true);
    view_->setMinimumHeight(18 * grid);
    view_->installEventFilter(this);
    rows->addWidget(view_, 1);
    auto* presses = new QHBoxLayout;
    presses->setSpacing(half_grid);
    const auto add = [&](const QString& words, const char* icon, auto what) {
        auto* button = make_button(ButtonKind::plain, words, QString::fromLatin1(icon), part);
        connect(button, &QPushButton::clicked, this, what);
        presses->addWidget(button);
    };
    add(tr("Paste"), "copy", [this] { paste(); });
    add(tr("From a file …"), "folder", [this] {
        choose_file(this, tr("A table as CSV or TSV"), tr("Tables (*.csv *.tsv *.txt)"),
                    [this](const QString& path) {
                        const QString why = read_file(path);
                        if (!why.isEmpty()) messages_->show_message(Message::error, why);
                    });
    });
    add(tr("Remove row"), "close", [this] { typed_->remove_row(view_->currentIndex().row()); });
    presses->addStretch();
    rows->addLayout(presses);
    return part;
}

QWidget* PlantLeaf::build_foot() {
    auto* foot = new QWidget(this);
    auto* rows = new QVBoxLayout(foot);
    rows->setContentsMargins(0, 0, 0, 0);
    whole_ = make_label({}, Step::body, Weight::regular, foot);
    whole_->setWordWrap(true);
    rows->addWidget(whole_);
    auto* row = new QHBoxLayout;
    row->setSpacing(2 * grid);
    why_ = new TextField(tr("Where the table is from, and why it changes"), {}, foot);
    row->addWidget(why_, 1);
    write_ = make_button(ButtonKind::primary, tr("Write the table down"), QStringLiteral("check"), foot);
    row->addWidget(write_, 0, Qt::AlignBottom);
    rows->addLayout(row);
    auto* caution = make_quiet(tr("For working out amounts only. It takes no place of her approved stability "
                                  "information, and gives no safe load."),
                               Step::small, foot);
    caution->setWordWrap(true);
    rows->addWidget(caution);
    connect(write_, &QPushButton::clicked, this, &PlantLeaf::write);
    return foot;
}

const Barge* PlantLeaf::barge() const {
    for (const Barge& one : session_.season().barges.rows()) {
        if (barge_->chosen() && shown(one.name) == *barge_->chosen()) return &one;
    }
    return nullptr;
}

Table PlantLeaf::held() const {
    const Barge* one = barge();
    if (!one) return {};
    return *which_->chosen() == QStringLiteral("ullage_table") ? one->ullage_table : one->hydrostatic_table;
}

void PlantLeaf::refresh() {
    std::vector<Choice> choices;
    for (const Barge& one : session_.season().barges.rows())
        choices.push_back({shown(one.name), shown(one.name)});
    barge_->set_choices(choices);
    if (!barge_->chosen() && !choices.empty()) barge_->set_chosen(choices.front().key);
    // What is being typed stays, whatever else is written meanwhile.
    if (!changed_) choose();
}

void PlantLeaf::choose() {
    changed_ = false;
    const Barge* one = barge();
    typed_->show(which_->chosen()->toStdString(), held(), one ? one->capacity_m3 : std::nullopt,
                 one ? one->lbp_m : std::nullopt);
    show_typed();
    view_->resizeColumnsToContents();
}

void PlantLeaf::show_typed() {
    const std::string field = which_->chosen()->toStdString();
    curve_->set_data(plant_curve(field, typed_->table(), barge_->chosen().value_or(QString())));
    const bool same = typed_->sound() && typed_->table() == held();
    if (!typed_->sound())
        mark_->show_state(State::hold, tr("not right yet"));
    else if (same)
        mark_->show_state(State::clear, tr("as in the book"));
    else
        mark_->show_state(State::attention, tr("not in the book yet"));
    whole_->setText(first_message());
    whole_->setVisible(!whole_->text().isEmpty());
    write_->setEnabled(typed_->sound() && !same && barge() && session_.writable());
    why_->setEnabled(session_.writable());
}

// In full, where beside its row there may be too little room.
QString PlantLeaf::first_message() const {
    if (!typed_->of_the_whole().isEmpty()) return typed_->of_the_whole();
    for (int row = 0; row < typed_->rowCount(); ++row) {
        if (!typed_->message(row).isEmpty()) return tr("Row %1: %2.").arg(row + 1).arg(typed_->message(row));
    }
    return {};
}

void PlantLeaf::paste() {
    const Cells cells = pasted_cells(QApplication::clipboard()->text(), QLocale());
    if (cells.empty()) return messages_->show_message(Message::error, tr("No numbers are on the clipboard."));
    const QModelIndex at = view_->currentIndex();
    typed_->paste(cells, at.isValid() ? at.row() : 0, at.isValid() ? at.column() : 0);
}

void PlantLeaf::copy() {
    QApplication::clipboard()->setText(copied_cells(typed_->cells()));
}

QString PlantLeaf::read_file(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) return tr("%1 could not be read: %2").arg(path, file.errorString());
    if (file.size() > most_bytes) return tr("%1 is too large for a table.").arg(path);
    const Cells cells = pasted_cells(QString::fromUtf8(file.readAll()), QLocale());
    if (cells.empty()) return tr("%1 holds no numbers.").arg(path);
    typed_->set_cells(cells);
    return {};
}

void PlantLeaf::write() {
    const Barge* one = barge();
    if (!one || !typed_->sound()) return;
    const std::string field = which_->chosen()->toStdString();
    changed_ = false;
    const Refusals refusals = session_.log(tr("table of %1").arg(shown(one->name)), kind("barge"), one->name,
                                           {{field, table_text(typed_->table())}}, why_->text());
    if (refusals.empty()) return why_->set_text({});
    changed_ = true;
    messages_->show_message(Message::error, refusals_shown(refusals));
}

bool PlantLeaf::eventFilter(QObject* watched, QEvent* event) {
    if (watched == view_ && event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Paste)) return paste(), true;
        if (key->matches(QKeySequence::Copy)) return copy(), true;
        if (key->key() == Qt::Key_Delete)
            return typed_->setData(view_->currentIndex(), QString(), Qt::EditRole), true;
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace spoilbook::form
