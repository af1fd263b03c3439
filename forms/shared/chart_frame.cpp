// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/chart_frame.h"

#include <QChart>
#include <QChartView>
#include <QHBoxLayout>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "forms/shared/button.h"
#include "forms/shared/chart_draw.h"
#include "forms/shared/chart_write.h"
#include "forms/shared/label.h"
#include "forms/shared/number_typed.h"
#include "forms/shared/paper_style.h"
#include "forms/shared/save_file.h"
#include "forms/shared/table_text.h"
#include "forms/shared/table_view.h"

namespace spoilbook::form {

bool ChartData::empty() const {
    return std::all_of(series.begin(), series.end(), [](const ChartSeries& s) { return s.points.empty(); });
}

ChartFrame::ChartFrame(QWidget* parent)
    : QWidget(parent),
      title_(make_label({}, Step::strong, Weight::semibold, this)),
      sentence_(make_quiet({}, Step::body, this)),
      toggle_(
          make_button(ButtonKind::tool, tr("Show the numbers as a table"), QStringLiteral("table"), this)),
      pages_(new QStackedWidget(this)),
      view_(new QChartView(this)),
      empty_(make_quiet({}, Step::body, this)) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    build_head();
    all->addWidget(pages_, 1);
    view_->setRenderHint(QPainter::Antialiasing);
    view_->setFrameShape(QFrame::NoFrame);
    view_->setMinimumSize(20 * grid, 15 * grid);
    view_->setFocusPolicy(Qt::NoFocus);
    empty_->setAlignment(Qt::AlignCenter);
    empty_->setWordWrap(true);
    pages_->addWidget(view_);
    pages_->addWidget(empty_);
    if (auto* style = qobject_cast<PaperStyle*>(QApplication::style())) {
        connect(style, &PaperStyle::light_changed, this, &ChartFrame::draw);
    }
}

void ChartFrame::build_head() {
    auto* head = new QHBoxLayout;
    auto* words = new QVBoxLayout;
    words->setSpacing(0);
    title_->setWordWrap(true);
    sentence_->setWordWrap(true);
    words->addWidget(title_);
    words->addWidget(sentence_);
    head->addLayout(words, 1);
    toggle_->setCheckable(true);
    connect(toggle_, &QPushButton::toggled, this, &ChartFrame::show_table);
    head->addWidget(toggle_, 0, Qt::AlignTop);
    QPushButton* out = make_button(ButtonKind::tool, tr("Export this chart"), QStringLiteral("export"), this);
    connect(out, &QPushButton::clicked, this, &ChartFrame::ask_export);
    head->addWidget(out, 0, Qt::AlignTop);
    qobject_cast<QVBoxLayout*>(layout())->addLayout(head);
}

void ChartFrame::set_data(const ChartData& data) {
    data_ = data;
    title_->setText(data.title);
    sentence_->setText(data.sentence);
    sentence_->setVisible(!data.sentence.isEmpty());
    view_->setAccessibleName(data.title);
    view_->setAccessibleDescription(data.sentence);
    empty_->setText(data.empty_text);
    draw();
    if (table_) fill_table();
    show_table(toggle_->isChecked());
}

void ChartFrame::draw() {
    QChart* before = view_->chart();
    view_->setChart(make_chart(data_, palette_in_use()));
    delete before;
}

bool ChartFrame::shows_table() const {
    return table_ && pages_->currentWidget() == table_;
}

void ChartFrame::show_table(bool table) {
    if (toggle_->isChecked() != table) toggle_->setChecked(table);
    if (table && !table_) {
        rows_ = new RowTable<ChartRow>(chart_columns(data_), this);
        table_ = new TableView(data_.title, pages_);
        table_->set_model(rows_);
        pages_->addWidget(table_);
        connect(table_, &TableView::exported, this, &ChartFrame::exported);
        connect(table_, &TableView::failed, this, &ChartFrame::failed);
        fill_table();
    }
    pages_->setCurrentWidget(table ? static_cast<QWidget*>(table_)
                                   : (data_.empty() ? static_cast<QWidget*>(empty_) : view_));
}

void ChartFrame::fill_table() {
    rows_->set_rows(chart_rows(data_));
    table_->set_empty_text(data_.empty_text);
    table_->table()->resizeColumnsToContents();
}

QString ChartFrame::write(const QString& path) {
    if (path.endsWith(QStringLiteral(".csv"), Qt::CaseInsensitive)) {
        RowTable<ChartRow> rows(chart_columns(data_));
        rows.set_rows(chart_rows(data_));
        return write_file(path, csv(rows).toUtf8());
    }
    // Paper is white: a picture that leaves the screen is drawn in the day palette.
    return write_picture(data_, Palette::of(Light::day), path);
}

void ChartFrame::ask_export() {
    save_file(this, tr("Export %1").arg(data_.title), data_.title + QStringLiteral(".png"),
              tr("Picture (*.png);;Drawing (*.svg);;Page (*.pdf);;Numbers (*.csv)"),
              [this](const QString& path) {
                  const QString why = write(path);
                  if (why.isEmpty()) {
                      emit exported(path);
                  } else {
                      emit failed(why);
                  }
              });
}

}  // namespace spoilbook::form
