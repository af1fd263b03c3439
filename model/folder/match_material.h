// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/folder/logger_reader.h"
#include "model/folder/match_board.h"

namespace spoilbook {

/// A track whose trip has one in the book with the same bytes is already held; with other bytes it is
/// refused.
void match_tracks(MatchBoard& board, std::size_t table);

/// A logger's file that the book has by its bytes is already held. Another file of a site that has some may
/// go over the same time again: a reading at a time that the book has must have the same value, else it is
/// refused with both; where no reading is new, the file is already held. It is kept under a name of its own
/// (R1-2.csv).
void match_logger_files(MatchBoard& board, std::size_t table);

/// A survey whose file is not in the folder keeps the digest that the book has for it; where the book has no
/// such survey the file is refused as missing.
void fill_survey_digests(MatchBoard& board, std::size_t table);

/// Notes each file of evidence that a row names and neither the folder nor the book has.
void note_missing_evidence(MatchBoard& board, std::size_t table);

/// All readings of a site that the book has, or those of a span, by time, the same time and value once.
std::vector<LoggerReading> held_readings(const Book& book, const Id& site,
                                         const std::optional<Period>& span = std::nullopt);

}  // namespace spoilbook
