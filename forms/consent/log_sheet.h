// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>
#include <memory>
#include <vector>

#include "model/logging/log_record.h"

class QLabel;
class QVBoxLayout;

namespace spoilbook::form {

class BookSession;
class FieldBox;

inline constexpr int log_width = 560;

/// One column of a record that is to be written: how its box is headed, and what is offered for it.
struct LogColumn {
    std::string name;
    QString title;
    QString hint = {};
    std::optional<Value> offered = {};
    QString offered_why = {};
    QString needed = {};  ///< said where it is blank; empty: it may be
};

/// A new record, written whole by one press, as `sbk log` writes it. What is refused stays as typed.
class LogSheet : public QWidget {
    Q_OBJECT

 public:
    /// `prefix` begins its label ("IN-"); `fixed` are columns that the person is not asked for.
    LogSheet(BookSession& session, const Kind& kind, std::string prefix, std::vector<FieldInput> fixed,
             std::vector<LogColumn> columns, QWidget* parent = nullptr);

    /// What stands above the boxes.
    void explain(const QString& words);

 signals:
    void written(const QString& label);

 private:
    struct Asked {
        LogColumn column;
        FieldBox* box = nullptr;
        std::function<std::string()> text;  ///< as the model reads it; blank: nothing
    };
    Asked ask(const LogColumn& column);
    void ask_number(Asked& asked, const Field& field);
    void ask_time(Asked& asked);
    void ask_choice(Asked& asked, const Field& field);
    void ask_text(Asked& asked, const Field& field);
    void write();

    BookSession& session_;
    const Kind& kind_;
    std::string prefix_;
    std::vector<FieldInput> fixed_;
    std::vector<Asked> asked_;
    QVBoxLayout* all_;
    QLabel* words_;
    QLabel* problem_;
};

}  // namespace spoilbook::form
