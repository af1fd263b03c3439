// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"
#include "model/book/packed_file.h"
#include "model/turbidity/logger_guess.h"
#include "model/turbidity/logger_rows.h"

namespace spoilbook {

// Files are read piece by piece: memory grows neither with their size nor with what the book has of other
// times. It does by 24 bytes a reading for a file that is out of order, and for readings of the book in the
// time that the file covers.

/// A logger's file as it came, looked at for one site.
struct ReadingsLook {
    LoggerGuess guess;
    LoggerRows rows;  ///< empty while there are questions
};

/// What is odd in its times, and kept: readings that lie after the clock, and of a logger's clock that was
/// not set. Times are told in `zone`.
Notes notes_of(const LoggerRows& rows, const std::string& file, const Zone& zone);

/// Guesses how the file is to be read, with the answers given now and those of the site's newest file, and
/// reads it so at `now`. Nothing is written. Refused: an unknown site, a file without a table.
Checked<ReadingsLook> look_at_readings(const Book& book, const std::string& site, const std::string& file,
                                       const ByteSource& bytes, const LoggerAnswers& answers, Instant now);

struct ReadingsTaken {
    ReadingsLook look;
    std::size_t fresh = 0;           ///< readings at times that the book had none for
    std::optional<EntryName> entry;  ///< nothing: the book has all of it already
    std::uint64_t from_byte = 0;     ///< of a file that has grown: where what is new begins
    std::uint64_t to_byte = 0;       ///< and where it ends
    bool unended = false;            ///< a last line without an end was left: it may be half a line
    std::shared_ptr<const PackedFile> packed{};  ///< the bytes that were looked at
};

/// Keeps the file as it came, with how it is read; readings follow from the two. Refused, and nothing
/// written: a question that is open, a row that does not read, a time at which the book has another value.
Checked<ReadingsTaken> take_readings(Book& book, const Act& act, const std::string& site,
                                     const std::string& file, const ByteSource& bytes,
                                     const LoggerAnswers& answers);

/// The two halves of take_readings. What is long, and writes nothing:
Checked<ReadingsTaken> prepare_readings(const Book& book, const std::string& site, const std::string& file,
                                        const ByteSource& bytes, const LoggerAnswers& answers, Instant now);
/// and what writes, which is short: the bytes are packed already. REQUIRES that the site's readings are what
/// they were when it was prepared.
Checked<ReadingsTaken> keep_readings(Book& book, const Act& act, const std::string& site,
                                     const std::string& file, ReadingsTaken prepared);

/// Of a file that may be growing, prepares what the book does not have yet, up to its last whole line. What
/// it has is found by the bytes of the site's files, part by part, so that nothing need be remembered beside
/// the book; what comes after them is read as they were, and kept by
/// keep_readings as a part of its own. A file that begins
/// otherwise is prepared as prepare_readings does.
Checked<ReadingsTaken> prepare_new_readings(const Book& book, const std::string& site,
                                            const std::string& file, const ByteSource& bytes,
                                            const LoggerAnswers& answers, Instant now);
}  // namespace spoilbook
