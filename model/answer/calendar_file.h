// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/answer/response_times.h"
#include "model/consent/duty_calendar.h"

namespace spoilbook {

/// One content line as RFC 5545 section 3.1 folds it: CR LF and a space after at most 75 octets a line, never
/// within a letter of UTF-8; closed by CR LF.
std::string folded_line(const std::string& line);
/// A value of type TEXT (section 3.3.11): backslash, semicolon, comma and line ends escaped, other control
/// characters left out.
std::string escaped_text(const std::string& text);

/// The duties, and the responses that passed triggers ask for, as an RFC 5545 calendar, a VTODO each, in UTC:
/// what was nil, and steps of an amount that are not reached yet, have no place in it. A UID stays the same
/// from one file to the next, so that a calendar takes the new state instead of a second task.
std::string calendar_file(const std::vector<DutyTime>& times, const std::vector<ResponseTime>& responses,
                          const Season& season, Instant as_at);

}  // namespace spoilbook
