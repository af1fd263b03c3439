// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/consent/folder_taker.h"
#include "model/unit/zone.h"

class QLabel;
class QPushButton;

namespace spoilbook::form {

class StateMark;

/// The folder that is watched, in one quiet line: what was taken, what waits for the person and why.
class FolderLine : public QWidget {
    Q_OBJECT

 public:
    explicit FolderLine(FolderTaker& taker, const Zone& zone, QWidget* parent = nullptr);

 signals:
    /// The person wants to say how this file is to be read.
    void answer_wanted(const QString& path);
    /// No folder is to be watched any more.
    void stopped();

 private:
    void show_news();

    FolderTaker& taker_;
    Zone zone_;
    StateMark* mark_;
    QLabel* words_;
    QPushButton *answer_, *stop_;
};

/// The news in a sentence or two, worst first.
QString folder_words(const FolderNews& news, const Zone& zone);

}  // namespace spoilbook::form
