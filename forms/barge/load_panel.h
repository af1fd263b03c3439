// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/barge/load_findings.h"
#include "forms/barge/panel.h"
#include "forms/barge/shift_hand.h"

namespace spoilbook::form {

class ChoiceField;
class PressButton;
class RecordForm;
class StateMark;
class UnitField;

/// The barge alongside: which one, the tally, the dips and what they say, full. What else is read of her
/// stands on her ticket.
class LoadPanel : public Panel {
    Q_OBJECT

 public:
    LoadPanel(ShiftHand& hand, QWidget* parent);
    void refresh();

 signals:
    void ticket_asked(const QString& load);

 private:
    void build_alongside();
    void build_tally();
    void build_closing();
    void build_answer();
    void build_bucket();
    void show_barges(const Running& now);
    void show_tally(const Running& now);
    void show_answer(const Running& now);

    ShiftHand& hand_;
    QWidget* choosing_;
    ChoiceField* barge_;
    PressButton* take_;
    PressButton* count_;
    PressButton* less_;
    QLabel* buckets_;
    ChoiceField* bucket_;
    UnitField* typed_;
    RecordForm* form_;
    LoadFindings findings_;
    PressButton* full_;
    PressButton* ticket_;
    QLabel* counts_;
    StateMark* mark_;
    QLabel* beside_;
    QLabel* caution_;
};

}  // namespace spoilbook::form
