// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/consent/turbidity_source.h"

class QLabel;

namespace spoilbook::form {

class BookSession;
class TableView;
class TextField;
class TimeField;

inline constexpr int trigger_width = 560;

/// A passed trigger: what it rests on, and its answer. The press writes the events record.
class TriggerSheet : public QWidget {
    Q_OBJECT

 public:
    TriggerSheet(BookSession& session, TriggerRow row, QWidget* parent = nullptr);
    void show_evidence(const EvidenceAnswer& evidence);

 signals:
    void written();

 private:
    void build_evidence();
    void build_answer();
    void answer();
    [[nodiscard]] bool open_yet() const;

    BookSession& session_;
    TriggerRow row_;
    TableView* moments_;
    RowTable<MomentRow>* moment_rows_;
    QLabel* work_;
    TextField *done_ = nullptr, *whom_ = nullptr, *cause_ = nullptr;
    TimeField* told_ = nullptr;
    QLabel* problem_ = nullptr;
};

}  // namespace spoilbook::form
