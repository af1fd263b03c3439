// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/folder_line.h"

#include <QDir>
#include <QHBoxLayout>

#include "forms/shared/book_session.h"
#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/state_mark.h"
#include "forms/shared/time_typed.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

QString first_of(const std::vector<WatchedFile>& files) {
    const WatchedFile& file = files.front();
    QString what;
    for (const Refusal& refusal : file.refusals) {
        if (what.isEmpty() || refusal.code == "must-ask") what = QString::fromStdString(refusal.what);
        if (refusal.code == "must-ask") break;
    }
    return QStringLiteral("%1: %2").arg(QString::fromStdString(file.name), what);
}

}  // namespace

QString folder_words(const FolderNews& news, const Zone& zone) {
    QStringList said;
    if (!news.problem.isEmpty()) said << news.problem;
    if (!news.asking.empty())
        said << FolderLine::tr("Waits for you (%1): %2.")
                    .arg(int(news.asking.size()))
                    .arg(first_of(news.asking));
    if (!news.refused.empty())
        said << FolderLine::tr("Not taken (%1): %2.")
                    .arg(int(news.refused.size()))
                    .arg(first_of(news.refused));
    if (!news.taken.isEmpty()) said << FolderLine::tr("Taken in: %1.").arg(news.taken.back());
    if (news.waiting > 0) said << FolderLine::tr("Still being written: %1.").arg(news.waiting);
    if (said.isEmpty() && news.looked) said << FolderLine::tr("Nothing new.");
    if (news.looked) said << FolderLine::tr("Looked at %1.").arg(time_shown(*news.looked, zone));
    return said.join(u' ');
}

FolderLine::FolderLine(FolderTaker& taker, const Zone& zone, QWidget* parent)
    : QWidget(parent),
      taker_(taker),
      zone_(zone),
      mark_(new StateMark(State::clear, this)),
      words_(make_quiet({}, Step::small, this)),
      answer_(make_button(ButtonKind::plain, tr("Say how it is read …"), {}, this)),
      stop_(make_button(ButtonKind::quiet, tr("Stop watching"), {}, this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(2 * grid);
    words_->setWordWrap(true);
    row->addWidget(mark_, 0, Qt::AlignVCenter);
    row->addWidget(words_, 1);
    row->addWidget(answer_);
    row->addWidget(stop_);
    connect(answer_, &QPushButton::clicked, this, [this] {
        if (taker_.news().asking.empty()) return;
        const QString name = QString::fromStdString(taker_.news().asking.front().name);
        emit answer_wanted(QDir(taker_.news().folder).filePath(name));
    });
    connect(stop_, &QPushButton::clicked, this, [this] {
        taker_.watch({});
        emit stopped();
    });
    connect(&taker_, &FolderTaker::told, this, &FolderLine::show_news);
    show_news();
}

void FolderLine::show_news() {
    const FolderNews& news = taker_.news();
    setVisible(!news.folder.isEmpty());
    answer_->setVisible(!news.asking.empty());
    const bool against = !news.problem.isEmpty() || !news.refused.empty();
    mark_->show_state(against               ? State::hold
                      : news.asking.empty() ? State::clear
                                            : State::attention,
                      against               ? tr("not all taken")
                      : news.asking.empty() ? tr("watching a folder")
                                            : tr("a file waits"));
    words_->setText(
        QStringLiteral("%1: %2").arg(QDir::toNativeSeparators(news.folder), folder_words(news, zone_)));
    words_->setToolTip(news.taken.join(u'\n'));
}

}  // namespace spoilbook::form
