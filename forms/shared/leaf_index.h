// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractButton>
#include <QWidget>
#include <vector>

#include "forms/shared/desk.h"

class QButtonGroup;
class QVBoxLayout;

namespace spoilbook::form {

/// One ruled line of the index leaf.
class IndexLine : public QAbstractButton {
    Q_OBJECT

 public:
    IndexLine(const QString& icon_name, const QString& title, QWidget* parent);
    /// Folded, it shows its icon alone.
    void fold(bool folded);
    [[nodiscard]] QSize sizeHint() const override;

 protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

 private:
    QString icon_name_;
    bool folded_ = false;
};

/// The index leaf of a desk, at the punched edge: one line a leaf. Arrows go up and down, Ctrl+PageUp and
/// Ctrl+PageDown turn leaves from anywhere in the desk.
class LeafIndex : public QWidget {
    Q_OBJECT

 public:
    explicit LeafIndex(QWidget* parent = nullptr);

    void set_leaves(const std::vector<Leaf>& leaves);
    void set_current(int index);
    [[nodiscard]] int current() const;
    void fold(bool folded);

 signals:
    void turned(int index);

 protected:
    void paintEvent(QPaintEvent* event) override;

 private:
    QVBoxLayout* lines_;
    QButtonGroup* group_;
};

}  // namespace spoilbook::form
