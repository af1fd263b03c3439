// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "forms/shared/desk.h"

class QStackedWidget;

namespace spoilbook::form {

class LeafIndex;

/// One desk: its index leaf and the leaf that is turned to. A leaf is made when it is first shown.
class DeskView : public QWidget {
    Q_OBJECT

 public:
    explicit DeskView(Desk desk, QWidget* parent = nullptr);

    [[nodiscard]] const Desk& desk() const { return desk_; }
    [[nodiscard]] QString leaf() const;
    /// Turns to a leaf by its key; to the first where there is no such leaf.
    void turn_to(const QString& key);
    /// Turns over this many leaves, staying at the ends.
    void turn_by(int leaves);
    /// Gives the keyboard to the leaf that is shown: the next Tab goes to its first box, and Enter presses
    /// nothing.
    void focus_leaf();

 signals:
    void turned();

 protected:
    void resizeEvent(QResizeEvent* event) override;

 private:
    void show_leaf(int index);

    Desk desk_;
    LeafIndex* index_;
    QStackedWidget* pages_;
    std::vector<QWidget*> made_;
};

}  // namespace spoilbook::form
