// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/memory.h"

class QBoxLayout;
class QVBoxLayout;

namespace spoilbook::form {

/// What lies on the desk before a book is open: the books of late, and the ways to get one.
class StartPage : public QWidget {
    Q_OBJECT

 public:
    /// `has_sample`: this installation brought the sample book.
    StartPage(Memory& memory, bool has_sample, QWidget* parent = nullptr);

    /// Reads the recent books again.
    void refresh();

 signals:
    void book_chosen(const QString& path);
    void open_pressed();
    void sample_pressed();
    void new_pressed();
    void restore_pressed();

 protected:
    void resizeEvent(QResizeEvent* event) override;

 private:
    QWidget* build_shelf();
    QWidget* build_ways(bool has_sample);
    void add_book(const QString& path);

    Memory& memory_;
    QBoxLayout* columns_;
    QVBoxLayout* shelf_;
};

}  // namespace spoilbook::form
