// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/consent/duty_rows.h"

class QLabel;
class QPushButton;

namespace spoilbook::form {

class BookSession;
class TextField;
class TimeField;

inline constexpr int done_width = 560;

/// One time of a duty: how its due time comes about, and the press that records it as done, with the files
/// that show it. What is done already is shown with its files, which open or are saved out again.
class DoneSheet : public QWidget {
    Q_OBJECT

 public:
    DoneSheet(BookSession& session, DutyRow duty, QWidget* parent = nullptr);

    /// Takes a file along as evidence: written with the press, or at once where the duty is done already.
    void add_file(const QString& path);

 signals:
    void written();
    void exported(const QString& path);

 private:
    void build_fields();
    void build_files();
    void list_files();
    void add_line(const QString& name, const QString& digest);
    void write();
    void open_file(const QString& name, const QString& digest);
    void save_out(const QString& name, const QString& digest);
    [[nodiscard]] bool is_done() const;
    void tell(const QString& why);

    BookSession& session_;
    DutyRow duty_;
    QStringList paths_;  ///< of files to be kept
    TimeField* at_ = nullptr;
    TextField* by_ = nullptr;
    TextField* evidence_ = nullptr;
    TextField* remarks_ = nullptr;
    QWidget* files_;
    QPushButton* write_ = nullptr;
    QLabel* problem_;
};

}  // namespace spoilbook::form
