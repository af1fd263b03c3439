// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

class QGridLayout;

namespace spoilbook::form {

class Figure;

/// Key figures side by side with rules between; two by two where the page is narrow.
class FigureRow : public QWidget {
 public:
    explicit FigureRow(QWidget* parent);
    Figure* add();

 protected:
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

 private:
    void lay(int columns);

    QGridLayout* places_;
    std::vector<Figure*> figures_;
    int columns_ = 0;
};

}  // namespace spoilbook::form
