// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "model/bed/survey_bed.h"
#include "model/folder/regular_file.h"
#include "model/folder/season_view.h"

namespace spoilbook {

namespace {

/// Why no condition can be judged by the survey, in words; empty where one can.
std::string why_of_no_use(const Survey& survey, const GivenFile& file, const Crs& crs) {
    const auto bytes = open_regular_file(file.path, file.name, largest_file_bytes);
    if (!bytes) return "";  // refused elsewhere
    const auto bed = SurveyBed::open(survey, **bytes, crs);
    if (!bed) return fmt::format("{}; {}", bed.refusals().front().what, bed.refusals().front().mend);
    if (survey.surveyed_on.empty()) return "its day is not recorded; give surveyed_on";
    if (!bed->u_at(0)) return "how sure it is was not recorded; give u_m or s44_order";
    return "";
}

}  // namespace

void note_surveys(const MatchBoard& board, NoteDown& notes) {
    if (!board.contents.epsg) return;
    const auto crs = Crs::from_epsg(*board.contents.epsg);
    if (!crs) return;
    const Sight<Survey> surveys(board);
    const auto& files = board.contents.files;
    for (const auto& seen : surveys.all()) {
        if (!seen.fresh() || seen.record.digest.empty()) continue;
        const auto file = std::find_if(files.begin(), files.end(), [&](const GivenFile& one) {
            return one.digest == seen.record.digest;
        });
        if (file == files.end()) continue;
        const auto why = why_of_no_use(seen.record, *file, *crs);
        if (!why.empty())
            notes.push_back({surveys.place(seen), fmt::format("no condition can be judged by it: {}", why)});
    }
}

}  // namespace spoilbook
