// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFileSystemWatcher>
#include <QObject>
#include <QStringList>
#include <QTimer>
#include <map>

#include "model/logging/watched_folder.h"

class QThreadPool;

namespace spoilbook::form {

class BookSession;

/// What became of the files of the folder that is watched.
struct FolderNews {
    QString folder;     ///< empty: none is watched
    QStringList taken;  ///< in words, newest last; since the folder was chosen
    std::size_t held = 0, waiting = 0;
    std::vector<WatchedFile> asking;   ///< a person must say how they are to be read
    std::vector<WatchedFile> refused;  ///< anything else stands against them
    QString problem;                   ///< of the folder itself
    std::optional<Instant> looked;     ///< when it was looked through last
};

/// Takes the files in that appear in a folder, or grow there. Reading them is done beside the screen's
/// thread; each is one entry of the journal, by the person at the desk. A file that does not prove how it is
/// to be read is never taken by a guess: it waits for the person.
class FolderTaker : public QObject {
    Q_OBJECT

 public:
    FolderTaker(BookSession& session, QThreadPool& pool, QObject* parent);

    /// Empty: watches none.
    void watch(const QString& folder);
    [[nodiscard]] const FolderNews& news() const { return news_; }
    /// A file changed less than this ago is left for later (5 s); the folder is looked at as often.
    void set_still(std::int64_t ms);

 signals:
    void told();

 private:
    /// What was found of a file, and of what bytes; said again only where the file or the book is another.
    struct Known {
        std::int64_t changed_ms = 0, bytes = 0;
        int writes = 0;
        WatchedFile file;
    };
    struct Found {
        std::map<std::string, Known> known;
        std::shared_ptr<PreparedFile> ready;  ///< the first that can be kept; null: none
        QString problem;
    };
    void look();
    [[nodiscard]] std::function<Found()> looking() const;
    void take(const Found& found, const QString& folder, int writes);
    bool keep(const PreparedFile& ready);
    void tell();

    BookSession& session_;
    QThreadPool& pool_;
    QFileSystemWatcher watcher_;
    QTimer timer_;
    std::int64_t still_ms_ = 5000;
    bool busy_ = false, again_ = false;
    std::map<std::string, Known> known_;
    FolderNews news_;
};

}  // namespace spoilbook::form
