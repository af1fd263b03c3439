// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/document_words.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace spoilbook {

namespace {

constexpr const char* rules = R"(# The book as a folder of plain files

This file is written by the program (`model/folder/document.cpp`); a test holds it to what the readers do.

A book can be made from a folder of plain files, written out to one, and added to from one:

    sbk new BOOK.sbook --from FOLDER
    sbk add BOOK.sbook --from FOLDER
    sbk export BOOK.sbook --to FOLDER

Writing out what was read in gives back the same rows: equal values after reading. Writing the same book out
twice gives the same bytes.

## Rules for every file

- All files are optional but harbour.json, which `new` needs and `add` takes only where it equals the book's.
- Text is UTF-8; a leading byte order mark, LF and CR LF are allowed. Any other byte, and a zero byte, is refused
  with its line and column.
- CSV is RFC 4180 with a header: columns by name, in any order; any may be absent but the id. A quote inside a field
  that is not quoted, a quote that is never closed, a row with more or fewer fields than the header, a column given
  twice are refused. Completely blank lines are skipped. A fault of quoting ends the reading of that file, since
  nobody knows what the rest says.
- A field holds 1 MiB at most, a CSV file or a kept file 1 GB (10⁹ bytes), a JSON file 256 MB, and JSON nests 64 deep
  at most.
- Every file must be a regular file: links, pipes and devices are refused. What stands in the folder and is no file of
  a book folder is left out with a note; names that begin with a point are left out without one.
- Blank, absent and (in JSON) null all mean *not recorded*, never zero. Text is trimmed at both ends.
- Numbers have a point and no group separators; NaN and infinity are refused. In JSON a number is a number: "12" in
  quotes is refused where one is wanted, and a number where a text is.
- Times are ISO 8601 with an offset or Z. A local time without one is read in the book's zone, and refused where that
  wall time happens twice or never. They are kept as whole milliseconds UTC and written with the book's offset.
- An id (a label such as `T-0412`) is unique in its kind; a bucket's on its dredger, a cell's and an exclusion's in
  its ground, a condition's in its consent with its `from`.
- A reference is the id of a row of another kind, looked up in the folder, then in the book. A cell is looked up in the
  ground of its row (a release's in its trip's, where it names none), a bucket on the dredger of the tally's shift,
  else of its station's. Where the row names none, the id must be unique by itself, or be written PARENT/ID:
  `Heron/general`.
- Texts are written out as they are. A text that begins with = + - @ is guarded where it leaves for a spreadsheet,
  in the return, not here, where it would no longer be the same text.

## Refused and noted

Refused: exit status 1, nothing written, all reasons at once (of one file the first 1 000, the rest counted). The
table in [errors.md](errors.md) lists every reason by its code.

A row whose id the book has is *already held* where all its values are the same, and refused, with both, where one is
not. Rows without an id are compared as a whole: as many as the book has of the same are already held. So adding the
same folder twice adds nothing.

Noted: kept, one line on standard error, never a change of the exit status:

- spans that overlap in time: shifts of one dredger, her stations, delays of one shift, loads of one barge, trips of
  one tug;
- a shift signed before it ended; one that does not close: its delays and the stations of its dredger together leave
  more than 5 minutes of it open, or one of its delays reaches more than 5 minutes beyond it;
- a trip that outlasts the shift in which it cast off;
- a track of which no fix falls between the first and the last time of its trip;
- a logged cell where the position is not;
- a load over the barge's capacity, as stated, by ullage or by tally; dips outside her ullage table;
- a map whose scale is off by over 0.05 % where the claims lie;
- a map to whose datum no way from WGS 84 is published;
- skippers, signers and tug masters that people.csv has not; causes of delay that are not on the list;
- releases of one trip whose shares come to more than 1;
- a table of a barge or dredger that does not run one way, turns back, or looks typed in centimetres; readings of a logger that stand at the same time;
- a site, or a piece of plant, that a condition names and nobody has described; a harbour without a zone or EPSG code.

## The files

)";

/// What is said of a kind beside its fields.
constexpr auto words_of_kinds = std::to_array<std::pair<std::string_view, std::string_view>>({
    {"harbour", "`campaigns` is a list of {name, from, to}, half-open; name is needed. The name is the id."},
    {"dredger", "`reach_table` rows are [depth m, reach m]. Her `buckets` are a list within her."},
    {"barge",
     "`ullage_table` rows are [ullage m (0 to 50), hopper m³]; `hydrostatic_table` rows are [draught m "
     "(0 to 30), "
     "displacement t], and may go on with TPC t/cm, LCF m, MCTC t·m/cm *(our own)*."},
    {"claim",
     "A GeoJSON FeatureCollection (RFC 7946) of Polygons and MultiPolygons; the fields below are the "
     "features' "
     "properties. Coordinates are longitude and latitude, unless a `crs` member "
     "(`{\"type\": \"name\", \"properties\": {\"name\": \"urn:ogc:def:crs:EPSG::32760\"}}`, also "
     "`EPSG:32760`) says "
     "that they are in the book's own system; EPSG:4326 and CRS84 are read as longitude and latitude; "
     "any other is "
     "refused. A feature's own `crs` *(our own)* goes before the collection's. Rings must be closed and "
     "have 4 or "
     "more positions; shapes that cross themselves are refused."},
    {"ground",
     "Features as in claims.geojson. A ground is a feature of `kind` ground, or one without a cell."},
    {"cell", "Features of `kind` cell or exclusion in the same file; an exclusion's name stands in `cell`."},
    {"consent",
     "`not_working` is {weekends: true or false, dates: [days], yearly: [MM-DD or MM-DD..MM-DD]}. "
     "`year_starts` is "
     "MM-DD."},
    {"condition",
     "Beside the members below a condition has those of its kind, and applies, warn_at, responses, "
     "open_question, "
     "settled: see [conditions.md](conditions.md). A member that its kind does not have is refused with "
     "the "
     "nearest name, nested ones too. Claims, grounds, cells and materials that it names must be there. A "
     "condition "
     "may stand several times with different `from`: its versions."},
    {"opening", "The consent must have a condition of that number."},
    {"tide", "Its time names a row: one level a time."},
    {"sounding", "A blank `level_m` is tide_m less depth_m."},
    {"track",
     "The file's stem is the trip; it is kept as it came, one for a trip. What the name of a file cannot "
     "hold is "
     "written %2F as in RFC 3986. A .csv has the columns time, lat, lon (WGS 84); others are left alone. "
     "The book "
     "keeps one track a trip: another for the same trip is refused, but with a reason (`sbk add --why`): "
     "then it takes the place of the first, which is struck out."},
    {"logger_file",
     "The file's stem is the site; columns time, value and no other; a blank value is a missing reading. "
     "Kept as "
     "it came. Another file for a site may go over the same time again: a reading at a time that the "
     "book has must "
     "have the same value, else it is refused with both; where no reading is new the file is already "
     "held. A site "
     "with several files is written out as one, by time."},
    {"survey",
     "The grid: GeoTIFF, ESRI ASCII, BAG, or XYZ in rows of a regular raster, in metres on a projected map "
     "(the book's, or one that the file states); what is blank marked as such, or by a number beyond ±9 000. "
     "A survey by whose file no condition can be judged is noted. s44_order is Exclusive, Special, 1a, 1b or "
     "2. A file that was wrong: strike the survey out with the reason (`sbk log BOOK survey SV-1 struck=yes "
     "--why …`) and add it anew. "
     "`file` is the name of a file in surveys/, kept as it came; names that leave that folder are "
     "refused. It may "
     "be missing where the book has the survey. `digest` is not written out: it follows from the file."},
    {"duty_done",
     "`evidence` names a kept file as `NAME sha256:DIGEST`, its pieces apart by `; `. The file itself "
     "stands "
     "in evidence/ *(our own, optional)* under its digest, 64 lower-case hexadecimal digits, and any "
     "ending: "
     "evidence/DIGEST.pdf. A file whose bytes have another digest is refused, one that no row names is "
     "left "
     "out and noted. A file that is named and not there may be in the book; where it is not, that is "
     "noted, and "
     "adding the folder with its file later brings it."},
});

}  // namespace

std::string rules_words() {
    return rules;
}

std::string kind_words(const std::string& kind) {
    const auto found = std::find_if(words_of_kinds.begin(), words_of_kinds.end(),
                                    [&](const auto& words) { return words.first == kind; });
    return found == words_of_kinds.end() ? "" : std::string(found->second);
}

}  // namespace spoilbook
