// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/barge/shift_hand.h"

namespace spoilbook::form {

class ChoiceField;
class PressButton;
class RecordForm;

/// The end of a shift: when it ended, the sheet read through, the name. From the signature on, what it covers
/// changes only by a correction.
class SignSheet : public QWidget {
    Q_OBJECT

 public:
    SignSheet(ShiftHand& hand, std::string shift, QWidget* parent = nullptr);

 signals:
    void line_opened(const QString& kind, const QString& label);
    void signed_now();

 private:
    void refresh();
    void sign();
    [[nodiscard]] const Shift* shift() const;

    ShiftHand& hand_;
    std::string label_;
    RecordForm* form_;
    PressButton* end_;
    ChoiceField* name_;
    PressButton* sign_;
};

}  // namespace spoilbook::form
