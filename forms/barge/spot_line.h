// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>

#include "forms/barge/record_form.h"
#include "forms/shared/state_mark.h"
#include "model/answer/spot.h"

class QLabel;

namespace spoilbook::form {

/// Beside the position of a trip or release as it is typed: on which side of the ground's edge, how far. An
/// odd one is asked about once by the box that made it so; what was typed stays.
class SpotLine : public QWidget {
    Q_OBJECT

 public:
    /// `form` has the boxes lat and lon, of a kind that has position_u_m and ground too.
    SpotLine(BookSession& session, RecordForm& form, QWidget* parent);

    /// What is said where there is no position; empty: nothing.
    void set_absent(const QString& why);

 private:
    [[nodiscard]] std::optional<Spot> spot();
    [[nodiscard]] QString odd_words();
    void say();

    BookSession& session_;
    RecordForm& form_;
    StateMark* mark_;
    QLabel* text_;
    QString absent_;
    std::unique_ptr<GroundMap> map_;
    int map_of_ = -1;  ///< the writes that the map was made after
};

}  // namespace spoilbook::form
