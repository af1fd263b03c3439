// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/desk_view.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QStackedWidget>

#include "forms/shared/leaf_index.h"
#include "forms/shared/scrolling.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr int fold_below = 110 * grid;

}  // namespace

DeskView::DeskView(Desk desk, QWidget* parent)
    : QWidget(parent), desk_(std::move(desk)), index_(new LeafIndex(this)), pages_(new QStackedWidget(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(index_);
    row->addWidget(pages_, 1);
    made_.resize(desk_.leaves.size(), nullptr);
    index_->set_leaves(desk_.leaves);
    // One leaf needs no index.
    index_->setVisible(desk_.leaves.size() > 1);
    connect(index_, &LeafIndex::turned, this, &DeskView::show_leaf);
    setAccessibleName(desk_.title);
}

QString DeskView::leaf() const {
    const int index = index_->current();
    return index < 0 ? QString() : desk_.leaves[std::size_t(index)].key;
}

void DeskView::turn_to(const QString& key) {
    int index = 0;
    for (std::size_t i = 0; i < desk_.leaves.size(); ++i) {
        if (desk_.leaves[i].key == key) index = int(i);
    }
    index_->set_current(index);
}

void DeskView::turn_by(int leaves) {
    const int last = int(desk_.leaves.size()) - 1;
    index_->set_current(std::clamp(index_->current() + leaves, 0, std::max(last, 0)));
}

void DeskView::show_leaf(int index) {
    QWidget*& made = made_.at(std::size_t(index));
    if (!made) {
        const Leaf& leaf = desk_.leaves[std::size_t(index)];
        QWidget* page = leaf.make(pages_);
        if (page->accessibleName().isEmpty()) page->setAccessibleName(leaf.title);
        made = scrolling(page, pages_);
        pages_->addWidget(made);
    }
    // A box that is hidden would hand the keyboard to whatever comes next, the index or the dividers.
    const bool was_on_leaf = pages_->isAncestorOf(QApplication::focusWidget());
    pages_->setCurrentWidget(made);
    if (was_on_leaf) focus_leaf();
    emit turned();
}

void DeskView::focus_leaf() {
    // The leaf itself and not what scrolls it: that stands behind its boxes in the order of Tab.
    auto* area = qobject_cast<QScrollArea*>(pages_->currentWidget());
    if (area) area->widget()->setFocus(Qt::OtherFocusReason);
}

void DeskView::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    index_->fold(width() < fold_below);
}

}  // namespace spoilbook::form
