// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLayout>
#include <vector>

namespace spoilbook::form {

/// Lays words and boxes one after the other and begins a new line where the page ends: for a sentence with
/// boxes in it.
class FlowLayout : public QLayout {
 public:
    explicit FlowLayout(QWidget* parent);
    ~FlowLayout() override;

    void addItem(QLayoutItem* item) override;
    [[nodiscard]] int count() const override { return int(items_.size()); }
    [[nodiscard]] QLayoutItem* itemAt(int index) const override;
    QLayoutItem* takeAt(int index) override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override { return lay(QRect(0, 0, width, 0), false); }
    [[nodiscard]] QSize sizeHint() const override { return minimumSize(); }
    [[nodiscard]] QSize minimumSize() const override;
    void setGeometry(const QRect& place) override;

 private:
    /// Answers the height.
    int lay(const QRect& place, bool move) const;

    std::vector<QLayoutItem*> items_;
};

}  // namespace spoilbook::form
