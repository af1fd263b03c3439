// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/turbidity/logger_table.h"
#include "model/unit/checked.h"

namespace spoilbook {

/// What the file does not prove, to be answered by a person.
struct LoggerQuestion {
    std::string about;  ///< dates, zone, column, rows, decimal, missing
    std::string text;
    std::vector<std::string> choices;
};

/// What a person says of a file; blank: nothing said.
struct LoggerAnswers {
    std::optional<DateOrder> dates;
    std::string zone, column, rows;
    std::optional<char> decimal;
    std::vector<std::string> missing;  ///< "none": the file has no code for it
};

/// How a file would be read, what that rests on, and what must be asked first. A value: it reads nothing in.
struct LoggerGuess {
    LoggerLayout layout;
    std::vector<std::string> assumed;
    std::vector<LoggerQuestion> questions;  ///< empty: it can be read
    LoggerTable table;
};

/// Guesses how a logger's file is to be read. `site` helps to find its rows where several sites stand in the
/// file; `before` is the layout of the site's last file, whose answers hold where this file fits them.
/// Refused: a file without a table of times and numbers.
Checked<LoggerGuess> guess_layout(const ByteSource& bytes, const std::string& file, const std::string& site,
                                  const LoggerAnswers& answers, const std::optional<LoggerLayout>& before);

}  // namespace spoilbook
