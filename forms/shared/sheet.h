// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>
#include <QWidget>

class QLabel;
class QVBoxLayout;
class QPropertyAnimation;

namespace spoilbook::form {

/// A sheet that is laid over its parent from the right, in place of a dialog window: it takes the keyboard
/// while it lies there, goes away with Escape, and gives the keyboard back to where it was. What was typed
/// into it is its content's to keep.
class Sheet : public QWidget {
    Q_OBJECT

 public:
    /// Covers `parent` and follows its size. Hidden until opened.
    explicit Sheet(QWidget* parent);

    /// Lays `content` on the sheet and slides it in. The sheet owns the content and deletes it once closed.
    void open(const QString& title, QWidget* content, int width = 480);
    [[nodiscard]] bool is_open() const { return content_ != nullptr; }
    /// Whether it lies open over this part of the window: what is covered hears no keys. A sheet does not
    /// cover what stands on itself, nor on a sheet above it.
    [[nodiscard]] bool covers(const QWidget* part) const;

 public slots:
    void close_sheet();

 signals:
    void closed();

 protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    bool focusNextPrevChild(bool next) override;

 private:
    void place();
    [[nodiscard]] int paper_width() const;

    QWidget* paper_;
    QLabel* title_;
    QVBoxLayout* body_;
    QPropertyAnimation* slide_;
    QPointer<QWidget> content_;
    QPointer<QWidget> before_;
    int wanted_width_ = 480;
};

}  // namespace spoilbook::form
