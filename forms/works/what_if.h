// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "model/progress/forecast.h"

class QGridLayout;
class QLabel;
class QPushButton;
class QSlider;
class QStackedWidget;

namespace spoilbook::form {

/// What is supposed of the days to come: filling hours and in-situ m³ an hour, each half to twice what was
/// logged, and the share of over-dredge. Left alone: as logged.
class WhatIf : public QWidget {
    Q_OBJECT

 public:
    explicit WhatIf(QWidget* parent = nullptr);

    [[nodiscard]] Supposed supposed() const;
    /// What stands beside the controls while nothing is supposed: as what weeks.
    void tell(const QString& words);

 public slots:
    void back_to_log();

 signals:
    void changed();

 private:
    struct Control {
        QSlider* slider = nullptr;
        QLabel* caption = nullptr;
    };
    Control add(int column, const QString& name, int least, int most, int step);
    void show_values();

    QGridLayout* places_;
    Control hours_;
    Control rate_;
    Control over_dredge_;
    QLabel* words_;
    QPushButton* back_;
    QStackedWidget* beside_;  ///< the words, or the way back
};

}  // namespace spoilbook::form
