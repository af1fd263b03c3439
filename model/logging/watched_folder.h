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
    std::int64_t still_ms = 60'000;  ///< a file changed less than this ago is left: it may be half written
};

enum class WatchedState { taken, held, waiting, refused };

/// What became of one file.
struct WatchedFile {
    std::string name;  ///< beneath the folder
    std::string site;
    WatchedState state = WatchedState::held;
    std::size_t readings = 0, fresh = 0;
    std::size_t from_byte = 0;
    bool unended = false;  ///< see ReadingsTaken
    std::optional<EntryName> entry;
    Refusals refusals;
};

/// Takes new and grown files in, each in an entry of its own, in the order of their names; a refused one does
/// not stop the others, and is tried again the next time. Hidden files are left, links and pipes refused.
/// Refused: a folder that cannot be read, or one of over 20 000 files.
Checked<std::vector<WatchedFile>> look_through_folder(Book& book, const Act& act, const FolderWatch& watch);

}  // namespace spoilbook
