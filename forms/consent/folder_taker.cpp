// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/folder_taker.h"

#include <QDir>
#include <QFileInfo>
#include <QLocale>
#include <algorithm>

#include "forms/shared/book_session.h"
#include "forms/shared/off_screen.h"

namespace spoilbook::form {
namespace {

constexpr int most_told = 20;

bool asks(const WatchedFile& file) {
    return std::any_of(file.refusals.begin(), file.refusals.end(),
                       [](const Refusal& refusal) { return refusal.code == "must-ask"; });
}

}  // namespace

FolderTaker::FolderTaker(BookSession& session, QThreadPool& pool, QObject* parent)
    : QObject(parent), session_(session), pool_(pool) {
    connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, &FolderTaker::look);
    // What is still being written, and folders that tell nothing of their changes (network drives).
    connect(&timer_, &QTimer::timeout, this, &FolderTaker::look);
    timer_.setInterval(int(still_ms_));
}

void FolderTaker::set_still(std::int64_t ms) {
    still_ms_ = ms;
    timer_.setInterval(int(std::max<std::int64_t>(ms, 20)));
}

void FolderTaker::watch(const QString& folder) {
    if (!watcher_.directories().isEmpty()) watcher_.removePaths(watcher_.directories());
    timer_.stop();
    known_.clear();
    news_ = {};
    news_.folder = folder;
    if (!folder.isEmpty()) {
        watcher_.addPath(folder);
        timer_.start();
        look();
    }
    emit told();
}

void FolderTaker::look() {
    if (news_.folder.isEmpty() || !session_.writable()) return;
    again_ = busy_;
    if (busy_) return;
    busy_ = true;
    const QString folder = news_.folder;
    const int writes = session_.writes_that_count();
    off_screen<Found>(pool_, this, looking(),
                      [this, folder, writes](const Found& found) { take(found, folder, writes); });
}

std::function<FolderTaker::Found()> FolderTaker::looking() const {
    const FolderWatch watch{
        QDir(news_.folder).absolutePath().toStdString(), {}, {}, session_.now(), session_.now(), still_ms_};
    const std::string book_path = session_.book().path();
    const int writes = session_.writes_that_count();
    return [watch, book_path, writes, known = known_] {
        Found found;
        try {
            const auto book = Book::open_to_read(book_path);
            if (!book) return found.problem = refusals_shown(book.refusals()), found;
            const auto files = files_in_folder(*book, watch);
            if (!files) return found.problem = refusals_shown(files.refusals()), found;
            for (const WatchedFile& file : *files) {
                const QFileInfo info(QDir(QString::fromStdString(watch.folder)),
                                     QString::fromStdString(file.name));
                Known now{info.lastModified().toMSecsSinceEpoch(), info.size(), writes, file};
                const auto before = known.find(file.name);
                // What was refused may be taken once the book has learnt something.
                const bool same =
                    before != known.end() && before->second.changed_ms == now.changed_ms &&
                    before->second.bytes == now.bytes && before->second.file.state != WatchedState::waiting &&
                    (before->second.writes == writes || before->second.file.state != WatchedState::refused);
                if (same) {
                    found.known.insert(*before);
                    continue;
                }
                auto prepared = std::make_shared<PreparedFile>(prepare_watched(*book, watch, file));
                now.file = prepared->file;
                if (now.file.state == WatchedState::ready) return found.ready = prepared, found;
                found.known[file.name] = now;
            }
        } catch (const std::exception& error) {
            found.problem = QString::fromUtf8(error.what());
        }
        return found;
    };
}

// One file at a time: what it brings counts for the next.
void FolderTaker::take(const Found& found, const QString& folder, int writes) {
    busy_ = false;
    if (folder != news_.folder) return look();
    news_.problem = found.problem;
    for (const auto& [name, known] : found.known)
        known_[name] = known;
    if (found.ready) {
        // What was written meanwhile may be readings of this site.
        if (writes != session_.writes_that_count() || keep(*found.ready)) return look();
        return tell();
    }
    // Files that are gone are forgotten, but only by a look that saw them all.
    if (found.problem.isEmpty()) known_ = found.known;
    news_.looked = session_.now();
    tell();
    if (again_) look();
}

bool FolderTaker::keep(const PreparedFile& ready) {
    WatchedFile kept = ready.file;
    const QString name = QString::fromStdString(kept.name), site = QString::fromStdString(kept.site);
    const Refusals refusals = session_.write(tr("%1 taken in for %2").arg(name, site), EntryKind::import, {},
                                             [&](Book& book, const Act& act) -> Checked<Done> {
                                                 kept = keep_watched(book, act, ready);
                                                 if (kept.state == WatchedState::refused)
                                                     return kept.refusals;
                                                 return Done{};
                                             });
    Known& known = known_[kept.name];
    known = {0, 0, session_.writes_that_count(), kept};
    if (!refusals.empty()) {
        known.file.state = WatchedState::refused;
        known.file.refusals = refusals;
        news_.problem = refusals_shown(refusals);
        // A book that cannot be written is not tried again and again; a file that changed meanwhile is.
        if (refusals.front().code == "not-written") timer_.stop();
        return false;
    }
    news_.taken << tr("%1: %2 new readings of %3%4")
                       .arg(name, QLocale().toString(qulonglong(kept.fresh)), site,
                            kept.unended ? tr(", its last line is not whole yet") : QString());
    for (const Note& note : kept.notes)
        news_.taken << QString::fromStdString(one_line(note));
    while (news_.taken.size() > most_told)
        news_.taken.removeFirst();
    emit told();
    return true;
}

void FolderTaker::tell() {
    news_.held = news_.waiting = 0;
    news_.asking.clear();
    news_.refused.clear();
    for (const auto& [name, known] : known_) {
        if (known.file.state == WatchedState::held) ++news_.held;
        if (known.file.state == WatchedState::waiting) ++news_.waiting;
        if (known.file.state != WatchedState::refused) continue;
        (asks(known.file) ? news_.asking : news_.refused).push_back(known.file);
    }
    emit told();
}

}  // namespace spoilbook::form
