// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTimer>
#include <QWidget>

class QLabel;
class QProgressBar;
class QPushButton;

namespace spoilbook::form {

/// Lies over its parent while long work runs elsewhere. Shows itself after 200 ms, so that quick work does
/// not flicker; after 2 s also how far it is and a button to stop it.
class BusyOverlay : public QWidget {
    Q_OBJECT

 public:
    /// Covers `parent` and follows its size.
    explicit BusyOverlay(QWidget* parent);

    /// `can_stop`: the work listens to `stop_asked`.
    void begin(const QString& what, bool can_stop);
    /// 0 to 1; less than 0: nobody knows how far it is.
    void set_progress(double share);
    void end();

 signals:
    void stop_asked();

 protected:
    void paintEvent(QPaintEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

 private:
    void appear();
    void show_details();

    QLabel* what_;
    QProgressBar* bar_;
    QPushButton* stop_;
    QTimer first_;
    QTimer second_;
    bool can_stop_ = false;
};

}  // namespace spoilbook::form
