// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/barge/receiver.h"

class QLabel;

namespace spoilbook::form {

class ChoiceField;
class StateMark;
class TextField;
class UnitField;

/// How the receiver is reached, and what it tells now. Each box takes effect when it is left.
class ReceiverSheet : public QWidget {
    Q_OBJECT

 public:
    explicit ReceiverSheet(Receiver& receiver, QWidget* parent = nullptr);

 private:
    void connect_boxes();
    void show_settings();
    void say();
    void change(const std::function<void(ReceiverSettings&)>& by);

    Receiver& receiver_;
    ChoiceField* way_;
    TextField* host_;
    UnitField* port_;
    TextField* device_;
    UnitField* baud_;
    ChoiceField* stands_on_;
    StateMark* mark_;
    QLabel* state_;
    QLabel* place_;
};

}  // namespace spoilbook::form
