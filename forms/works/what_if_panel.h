// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <array>

#include "model/progress/works_supposed.h"

class QLabel;
class QPushButton;
class QSlider;

namespace spoilbook::form {

class TextField;

/// What is supposed of the works, in their own terms: barges and tugs, haul and round trip, shifts, what an
/// hour brings, over-dredge, and the days on which the season opens and closes. Each control stands where the
/// log has it until it is moved. What the log does not tell cannot be moved.
class WhatIfPanel : public QWidget {
    Q_OBJECT

 public:
    explicit WhatIfPanel(QWidget* parent = nullptr);

    [[nodiscard]] WorksSupposed supposed() const;
    /// Where the controls stand while nothing is supposed, and the day that a day typed without its year
    /// comes after. What was moved already stays.
    void set_logged(const WorksLogged& logged, Day as_at);
    /// A line of its own: what holds the loads up, and the way back to the log.
    [[nodiscard]] QWidget* foot() const { return foot_; }
    void tell(const QString& words);

 public slots:
    void back_to_log();

 signals:
    void height_changed();
    void changed();

 protected:
    bool event(QEvent* event) override;

 private:
    enum Which { barges, tugs, haul, round_trip, shift_hours, days_a_week, rate, over_dredge, count };
    struct Control {
        QSlider* slider = nullptr;
        QLabel* caption = nullptr;
        int home = 0;  ///< where nothing is supposed
    };
    void build_foot();
    void add(Which which, const QString& name, int least, int most, int step);
    TextField* add_day(const QString& name, std::optional<Day>& day);
    void read_day(TextField* field, std::optional<Day>& day);
    void set_home(Which which, bool is_known, int home, int least, int most);
    [[nodiscard]] bool moved(Which which) const;
    [[nodiscard]] std::optional<double> moved_to(Which which, double unit) const;
    [[nodiscard]] QString shown(Which which) const;
    void show_values();

    std::array<Control, count> controls_;
    TextField* opens_;
    TextField* closes_;
    std::optional<Day> opens_on_, closes_on_;
    WorksLogged logged_;
    bool knows_log_ = false;
    Day as_at_;
    QWidget* foot_;
    QLabel* words_;
    QPushButton* back_;
};

}  // namespace spoilbook::form
