// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/folder/complaints.h"
#include "model/folder/given.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// tracks/TRIP.gpx, .nmea, .csv: a row of kind track each. Two files for one trip are refused.
void read_tracks(const std::string& folder, const Zone& zone, FolderContents& contents,
                 Complaints& complaints);

/// turbidity/SITE.csv: a row of kind logger_file each.
void read_logger_files(const std::string& folder, const Zone& zone, FolderContents& contents,
                       Complaints& complaints);

/// The files that surveys.csv names, out of surveys/: their digests go into the rows. A name that leaves the
/// folder, a link, a digest that is not the file's are refused. A file that is not there leaves the digest
/// blank: the book may have it. Files that no row names are noted.
void read_survey_files(const std::string& folder, FolderContents& contents, Complaints& complaints);

/// evidence/DIGEST.pdf: the files that duties.csv names, each under its SHA-256. A file with other bytes is
/// refused; one that no row names is noted. One that is named and not there may be in the book.
void read_evidence_files(const std::string& folder, FolderContents& contents, Complaints& complaints);

}  // namespace spoilbook
