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
/// odd one is asked about once by the box that made it so; what was typed stays. Below it, where the written
/// cell is blank or another than the position's: that, and of a release the cell is offered.
class SpotLine : public QWidget {
    Q_OBJECT

 public:
    /// `form` has the boxes lat and lon, of a kind that has position_u_m and ground too.
    SpotLine(BookSession& session, RecordForm& form, QWidget* parent);

    /// What is said where there is no position; empty: nothing.
    void set_absent(const QString& why);
    /// The cell that is due: offered to a release that has neither cell nor position.
    void set_due_cell(const QString& cell);

 private:
    const GroundMap& map();
    [[nodiscard]] std::optional<Spot> spot();
    void say_cell();
    [[nodiscard]] QString odd_words();
    void say();

    BookSession& session_;
    RecordForm& form_;
    StateMark* mark_;
    QLabel* text_;
    StateMark* cell_mark_;
    QLabel* cell_text_;
    QString absent_, due_cell_;
    std::unique_ptr<GroundMap> map_;
    int map_of_ = -1;  ///< the writes that the map was made after
};

}  // namespace spoilbook::form
