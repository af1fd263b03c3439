// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>
#include <QWidget>
#include <memory>

#include "forms/barge/load_findings.h"
#include "forms/barge/shift_hand.h"

class QBoxLayout;
class QGridLayout;
class QLabel;

namespace spoilbook::form {

class DraughtsField;
class MethodLines;
class PressButton;
class RecordForm;
class StateMark;

/// Marks that were typed and wait for the rest, by load and column: they outlive the sheet that they stand
/// on.
using WaitingMarks = std::map<std::string, QStringList>;

/// The barge ticket of one load: every reading that closes it, laid out as on the paper, and beside it what
/// each method makes of them as they are typed.
class BargeTicket : public QWidget {
    Q_OBJECT

 public:
    BargeTicket(ShiftHand& hand, std::string load, WaitingMarks& waiting, QWidget* parent = nullptr);

    [[nodiscard]] QString barge_name() const;

 protected:
    void resizeEvent(QResizeEvent* event) override;

 private:
    QWidget* build_readings();
    QWidget* build_draughts();
    QWidget* build_answer();
    void refresh();
    void show_findings();
    void show_typed();
    void keep_waiting();
    [[nodiscard]] const Load* load() const;

    ShiftHand& hand_;
    std::string label_;
    WaitingMarks& waiting_;
    RecordForm* form_;
    LoadFindings findings_;
    QBoxLayout* halves_;
    QBoxLayout* readings_of_draughts_;
    MethodLines* lines_;
    StateMark* mark_;
    QLabel* counts_;
    PressButton* full_;
    std::vector<DraughtsField*> marks_;
    std::vector<std::string> marks_of_;
    /// Made anew with each change of the book: the sources and the index over its season.
    std::unique_ptr<Sources> sources_;
    std::unique_ptr<LoadIndex> index_;
};

}  // namespace spoilbook::form
