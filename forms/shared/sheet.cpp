// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/sheet.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPropertyAnimation>
#include <QScrollArea>
#include <QStyle>
#include <QVBoxLayout>

#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/paper_style.h"

namespace spoilbook::form {

Sheet::Sheet(QWidget* parent)
    : QWidget(parent),
      paper_(new QWidget(this)),
      title_(make_label({}, Step::title, Weight::semibold, paper_)),
      body_(new QVBoxLayout(paper_)),
      slide_(new QPropertyAnimation(paper_, "pos", this)) {
    paper_->setAutoFillBackground(true);
    paper_->setBackgroundRole(QPalette::Window);
    body_->setContentsMargins(3 * grid, 2 * grid, 2 * grid, 2 * grid);
    auto* head = new QHBoxLayout;
    title_->setWordWrap(true);
    head->addWidget(title_, 1);
    QPushButton* close =
        make_button(ButtonKind::tool, tr("Close this sheet (Esc)"), QStringLiteral("close"), paper_);
    connect(close, &QPushButton::clicked, this, &Sheet::close_sheet);
    head->addWidget(close, 0, Qt::AlignTop);
    body_->addLayout(head);
    slide_->setEasingCurve(QEasingCurve::OutCubic);
    parent->installEventFilter(this);
    hide();
}

void Sheet::open(const QString& title, QWidget* content, int width) {
    if (content_) delete content_.data()->parentWidget()->parentWidget();
    before_ = QApplication::focusWidget();
    wanted_width_ = width;
    title_->setText(title);
    setAccessibleName(title);
    content_ = content;
    if (content->layout()) content->layout()->setContentsMargins(0, grid, grid, 0);
    auto* scroll = new QScrollArea(paper_);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(content);
    body_->addWidget(scroll, 1);
    connect(content, &QObject::destroyed, scroll, &QObject::deleteLater);
    place();
    show();
    raise();
    slide_->setDuration(style()->styleHint(QStyle::SH_Widget_Animation_Duration));
    slide_->setStartValue(QPoint(this->width(), 0));
    slide_->setEndValue(QPoint(this->width() - paper_width(), 0));
    slide_->start();
    for (QWidget* child : content->findChildren<QWidget*>()) {
        if ((child->focusPolicy() & Qt::TabFocus) && child->isVisibleTo(content) && child->isEnabled()) {
            child->setFocus(Qt::TabFocusReason);
            return;
        }
    }
    paper_->findChild<QPushButton*>()->setFocus(Qt::TabFocusReason);
}

void Sheet::close_sheet() {
    if (!content_) return;
    slide_->stop();
    QWidget* content = content_;
    content_ = nullptr;
    // What stands in a box is written when it is left, and closing leaves it.
    QWidget* typed_in = QApplication::focusWidget();
    if (typed_in && content->isAncestorOf(typed_in)) typed_in->clearFocus();
    content->deleteLater();
    hide();
    if (before_) before_->setFocus(Qt::OtherFocusReason);
    emit closed();
}

bool Sheet::covers(const QWidget* part) const {
    if (!is_open() || !isVisible() || part == this || isAncestorOf(part)) return false;
    const QWidget* mine = this;
    while (mine->parentWidget() && !mine->parentWidget()->isAncestorOf(part))
        mine = mine->parentWidget();
    const QWidget* both = mine->parentWidget();
    if (!both) return false;
    const QWidget* theirs = part;
    while (theirs->parentWidget() != both)
        theirs = theirs->parentWidget();
    // Children lie in the order of the list, the last on top.
    const QObjectList& order = both->children();
    return order.indexOf(mine) > order.indexOf(theirs);
}

int Sheet::paper_width() const {
    return std::min(wanted_width_, width());
}

void Sheet::place() {
    setGeometry(parentWidget()->rect());
    paper_->setGeometry(width() - paper_width(), 0, paper_width(), height());
}

void Sheet::paintEvent(QPaintEvent*) {
    const Palette& tones = palette_in_use();
    QPainter painter(this);
    painter.fillRect(rect(), tones[Tone::scrim]);
    painter.fillRect(QRect(paper_->x() - 1, 0, 1, height()), tones[Tone::edge]);
}

void Sheet::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) return close_sheet();
    QWidget::keyPressEvent(event);
}

void Sheet::mousePressEvent(QMouseEvent* event) {
    // What lies below is covered: a press beside the paper must not reach it, nor throw typed text away.
    event->accept();
}

bool Sheet::eventFilter(QObject* watched, QEvent* event) {
    if (watched == parentWidget() && event->type() == QEvent::Resize && isVisible()) {
        slide_->stop();
        place();
    }
    return QWidget::eventFilter(watched, event);
}

// Tab goes round on the sheet and never to what lies below it.
bool Sheet::focusNextPrevChild(bool next) {
    QWidget* from = QApplication::focusWidget();
    if (!from || !isAncestorOf(from)) from = paper_;
    QWidget* to = from;
    do {
        to = next ? to->nextInFocusChain() : to->previousInFocusChain();
        const bool takes = (to->focusPolicy() & Qt::TabFocus) && to->isVisible() && to->isEnabled();
        if (takes && isAncestorOf(to) && !to->focusProxy()) {
            to->setFocus(next ? Qt::TabFocusReason : Qt::BacktabFocusReason);
            return true;
        }
    } while (to != from);
    return true;
}

}  // namespace spoilbook::form
