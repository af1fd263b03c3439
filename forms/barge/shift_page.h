// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>
#include <QWidget>

#include "forms/barge/barge_ticket.h"

class QGridLayout;
class QLabel;
class QPushButton;
class QStackedWidget;

namespace spoilbook::form {

class ChoiceField;
class LoadPanel;
class PressButton;
class Sheet;
class StationPanel;
class TimelineStrip;
class TripPanel;

/// The running shift, in the order of the work; or, where none runs, the one press that opens one.
class ShiftPage : public QWidget {
    Q_OBJECT

 public:
    /// `receiver` outlives the page; null: this desk has none.
    explicit ShiftPage(BookSession& session, QWidget* parent = nullptr, Receiver* receiver = nullptr);

 protected:
    void resizeEvent(QResizeEvent* event) override;

 private:
    QWidget* build_head();
    QWidget* build_work();
    QWidget* build_none();
    QWidget* build_any_time();
    void place_panels();
    void place_any_time();
    void refresh();
    void show_head(const Running& now);
    void show_none(const Running& now);
    void show_delay(const Running& now);
    /// Lays a content over the page, whose keys it does not hear meanwhile.
    void lay(const QString& title, QWidget* content, int width);
    void hear_keys(bool hear);
    [[nodiscard]] Sheet* sheet();
    void open_fields(const QString& title, const std::string& kind_name, const std::string& label,
                     const std::vector<std::string>& columns);
    void open_sounding();
    void open_hand_over();
    void open_trip();
    void open_receiver();
    void open_ticket(const QString& load);
    void open_sign();

    ShiftHand hand_;
    QStackedWidget* pages_;
    QLabel* who_;
    QLabel* with_;
    TimelineStrip* strip_;
    StationPanel* station_;
    LoadPanel* load_;
    TripPanel* trip_;
    QGridLayout* panels_;
    int abreast_ = 0;
    WaitingMarks waiting_;
    QGridLayout* any_time_;
    std::vector<QWidget*> at_any_time_;
    bool any_time_wide_ = false;
    ChoiceField* cause_;
    PressButton* delay_;
    QLabel* none_;
    PressButton* open_;
    PressButton* sign_last_;
    QPointer<Sheet> sheet_;
};

}  // namespace spoilbook::form
