// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/book_session.h"
#include "forms/shared/chart_data.h"

class QBoxLayout;
class QLabel;
class QPushButton;
class QTableView;

namespace spoilbook::form {

class ChartFrame;
class ChoiceField;
class MessageStrip;
class StateMark;
class TextField;
class TypedTable;

/// The curve of a plant table, in the order of its first column.
ChartData plant_curve(const std::string& field, const Table& table, const QString& barge);

/// A barge's ullage and hydrostatic tables: typed, pasted or read from a file, checked as they are typed,
/// drawn as a curve, and written down as a whole by one press. Until then the book's table counts.
class PlantLeaf : public QWidget {
    Q_OBJECT

 public:
    explicit PlantLeaf(BookSession& session, QWidget* parent = nullptr);
    /// Reads a CSV or TSV file into the table that is shown. Empty: read; otherwise why not.
    QString read_file(const QString& path);

 protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

 private:
    QWidget* build_head();
    QWidget* build_table();
    QWidget* build_foot();
    void choose();
    void refresh();
    void show_typed();
    [[nodiscard]] QString first_message() const;
    void paste();
    void copy();
    void write();
    [[nodiscard]] const Barge* barge() const;
    [[nodiscard]] Table held() const;

    BookSession& session_;
    MessageStrip* messages_;
    QBoxLayout* halves_;
    QBoxLayout* head_;
    ChoiceField* barge_;
    ChoiceField* which_;
    TypedTable* typed_;
    QTableView* view_;
    ChartFrame* curve_;
    StateMark* mark_;
    QLabel* whole_;
    TextField* why_;
    QPushButton* write_;
    bool changed_ = false;
};

}  // namespace spoilbook::form
