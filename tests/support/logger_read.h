// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/turbidity/logger_guess.h"
#include "model/turbidity/logger_rows.h"
#include "model/unit/time_text.h"

namespace spoilbook::tests {

inline LoggerAnswers zone(const char* name) {
    LoggerAnswers answers;
    answers.zone = name;
    return answers;
}

/// What is asked, or time=value of each reading in UTC.
inline std::string read(const std::string& text, const LoggerAnswers& answers = {}) {
    const auto guess = guess_layout(HeldBytes(text), "logger.txt", "R1", answers, std::nullopt);
    if (!guess) return guess.refusals().front().code;
    std::string said;
    for (const auto& question : guess->questions)
        said += "--" + question.about + " ";
    if (!said.empty()) return said;
    const auto rows =
        read_logger_rows(HeldBytes(text), guess->layout, "logger.txt", [&](const auto& reading) {
            said += instant_text(reading.time, Zone::utc()).substr(5, 11) + "=" +
                    (reading.value ? std::to_string(*reading.value).substr(0, 6) : "-") + " ";
        });
    if (rows.refused > 0) said += std::to_string(rows.refused) + " refused";
    return said;
}

inline bool assumes(const std::string& text, const std::string& words) {
    const auto guess = guess_layout(HeldBytes(text), "logger.txt", "R1", zone("UTC"), std::nullopt);
    for (const auto& assumed : guess->assumed) {
        if (assumed.find(words) != std::string::npos) return true;
    }
    return false;
}

}  // namespace spoilbook::tests
