// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/logging/take_readings.h"

namespace spoilbook {

/// How a folder is looked through into which loggers' files are put.
struct FolderWatch {
    std::string folder;
    std::string
        site;  ///< of all its files; blank: a folder in it, or the beginning of a file's name, says it
    LoggerAnswers answers;           ///< for files that the site's last one does not answer for
    Instant now{0};                  ///< by the clock that dates the files
    Instant clock{0};                ///< readings that lie after it are noted
    std::int64_t still_ms = 60'000;  ///< a file changed less than this ago is left: it may be half written
};

/// ready: prepared, and not kept yet.
enum class WatchedState { taken, held, waiting, refused, ready };

/// What became of one file.
struct WatchedFile {
    std::string name;  ///< beneath the folder
    std::string site;
    WatchedState state = WatchedState::held;
    std::size_t readings = 0, fresh = 0;
    std::uint64_t from_byte = 0;
    bool unended = false;  ///< see ReadingsTaken
    std::optional<EntryName> entry;
    Notes notes;  ///< see notes_of
    Refusals refusals;
};

/// The files of the folder, and of folders in it that are named as a site, by name; each is still to be
/// prepared. Hidden files are left. Refused: a folder that cannot be read, or one of over 20 000 files.
Checked<std::vector<WatchedFile>> files_in_folder(const Book& book, const FolderWatch& watch);

/// A file held against the book, as far as it is ready to be kept.
struct PreparedFile {
    WatchedFile file;
    ReadingsTaken taken;
};

/// What is long, and writes nothing. Links and pipes are refused.
PreparedFile prepare_watched(const Book& book, const FolderWatch& watch, WatchedFile file);
/// And what writes, where the file is ready. REQUIRES that the site's readings are what they were when it
/// was prepared.
WatchedFile keep_watched(Book& book, const Act& act, const PreparedFile& prepared);

/// Takes new and grown files in, each in an entry of its own, in the order of their names; a refused one does
/// not stop the others, and is tried again the next time. Refused as files_in_folder refuses.
Checked<std::vector<WatchedFile>> look_through_folder(Book& book, const Act& act, const FolderWatch& watch);

}  // namespace spoilbook
