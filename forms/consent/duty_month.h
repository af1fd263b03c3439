// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCalendarWidget>
#include <map>

#include "forms/consent/duty_rows.h"

namespace spoilbook::form {

/// A month with the shape of the worst duty in each day; keys walk through it as through any calendar.
class DutyMonth : public QCalendarWidget {
    Q_OBJECT

 public:
    explicit DutyMonth(QWidget* parent = nullptr);

    /// `today`: the local day of the as-at.
    void show_duties(const std::vector<DutyRow>& rows, QDate today);
    /// What is due on a day, in words; empty: nothing.
    [[nodiscard]] QString words_of(QDate day) const;

 protected:
    void paintCell(QPainter* painter, const QRect& place, QDate day) const override;
    void changeEvent(QEvent* event) override;

 private:
    void draw_arrows();

    struct Due {
        State shape = State::clear;
        QStringList words;
    };
    std::map<QDate, Due> days_;
    QDate today_;
};

}  // namespace spoilbook::form
