// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTimer>
#include <QWidget>
#include <memory>

#include "forms/barge/receiver.h"
#include "forms/shared/book_session.h"
#include "forms/shared/state_mark.h"
#include "model/place/ground_map.h"

class QLabel;

namespace spoilbook::form {

/// The receiver's state, and while a trip is under way where the hopper is: an aid for the record, not for
/// navigation. Said anew each second while it is seen; its lines keep their places, so nothing jumps.
class ReceiverLine : public QWidget {
    Q_OBJECT

 public:
    ReceiverLine(BookSession& session, Receiver& receiver, QWidget* parent);

    /// The trip whose way is told, by its id; nil: none is under way.
    void follow(const Id& trip);
    /// The cell she is bound for; nil: none.
    void set_bound_for(const Id& cell);

 signals:
    /// The receiver's own page was asked for.
    void set_up_asked();

 protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

 private:
    void say();
    void say_where();
    void put(QLabel* line, const QString& text, const QString& tip);

    BookSession& session_;
    Receiver& receiver_;
    StateMark* mark_;
    QLabel* state_;
    QLabel* where_;
    QLabel* cell_way_;
    QTimer second_;
    Id trip_, cell_;
    std::unique_ptr<GroundMap> map_;
    int map_of_ = -1;  ///< the writes that the map was made after
    std::optional<ReceiverFix> said_;
};

}  // namespace spoilbook::form
