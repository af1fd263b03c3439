// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/form/print_sample/sample_document.h"

#include <fmt/format.h>

#include <array>
#include <cstddef>

namespace spoilbook::print {
namespace {

Answer answer() {
    return {"10 of 12 conditions were met in May 2026. 70 trips carried 24 310 m³ in place to Gannet Patch.",
            {{"May, of 26 000 m³ a month", "24 310", "m³", "± 540 m³; 1 690 m³ of headroom",
              "Inside the limit", Mark::met},
             {"12 months to 31 May, of 215 000 m³", "208 040", "m³", "± 3 100 m³; limit met about 9 June",
              "Near the limit", Mark::near},
             {"Releases outside the ground", "1", "", "80 m, 14 May, answered by event E-31", "Limit passed",
              Mark::passed},
             {"Readings at site T2", "96.2", "%", "nine hours flagged: value stuck", "Not known",
              Mark::unknown}}};
}

Facts facts() {
    return {{{"Consent", "MHB-25-117, Marram Harbour Board"},
             {"Period", "1 May 2026 00:00 to 1 June 2026 00:00, Pacific/Auckland (UTC+12:00)"},
             {"Basis of volumes",
              "In-situ m³: hopper volume from ullage dips, divided by the bulking factor 1.243 ± 0.031 "
              "as revised after the survey of 20 April 2026; one bulking factor for all claims but FB2 "
              "(rock), 1.41 ± 0.06."},
             {"Revision", "2, replaces revision 1 of 5 June 2026 (digest 3f9a04c1…)"},
             {"Standing", "Signed; not yet acknowledged", Mark::near},
             {"Whānau liaison", "Ana Muñoz, Ōtākou; Zoë Ångström; Łukasz 中山; Ωmega Кораблёв"}}};
}

Table conditions() {
    Table table;
    table.caption = "Conditions on quantities";
    table.columns = {{"No.", "", Align::left, 0, true},      {"Condition", "", Align::left, 2, false},
                     {"Limit", "m³", Align::right, 0, true}, {"Used", "m³", Align::right, 0, true},
                     {"±", "m³", Align::right, 0, true},     {"Headroom", "m³", Align::right, 0, true},
                     {"State", "", Align::left, 0, true}};
    table.rows = {
        {"3.1",
         "In all, over the life of the consent",
         "240 000.0",
         "208 040.2",
         "3 100",
         "31 959.8",
         {"met", Mark::met}},
        {"3.2",
         "In any 12 months",
         "215 000.0",
         "208 040.2",
         "3 100",
         "6 959.8",
         {"warned at 95 %", Mark::near}},
        {"3.3", "In any calendar month", "26 000.0", "24 310.4", "540", "1 689.6", {"met", Mark::met}},
        {"3.4", "From claim FB2", "20 000.0", "20 104.0", "610", "−104.0", {"passed", Mark::passed}},
        {"3.5",
         "In any one cell of Gannet Patch: 15 % of the consented total",
         "36 000.0",
         "22 871.9",
         "410",
         "13 128.1",
         {"not known", Mark::unknown}}};
    table.notes = {
        "Used is rounded up and headroom down in the answer above; here each load is fixed to 0.1 m³ and "
        "totals are the sums of what is printed.",
        "± is the expanded uncertainty (k = 2), with what all loads share (bulking factor, hopper tables) "
        "kept apart from what each load adds."};
    return table;
}

Table empty_table() {
    Table table;
    table.caption = "Corrections made after signing";
    table.columns = {{"Shift", "", Align::left, 0, true},
                     {"Field", "", Align::left, 0, false},
                     {"Was", "", Align::right, 0, true},
                     {"Is", "", Align::right, 0, true},
                     {"Reason", "", Align::left, 1, false}};
    table.zero_rows_text = "No signed shift was corrected in this period.";
    return table;
}

const std::string remark =
    "Receiver off from 02:14 to 03:40; the position was mended from the deck log and carries 60 m of "
    "uncertainty. "
    "The master's entry gives the bearing of the beacon and the radar distance, both read twice; Caro and "
    "Dex agree on the second "
    "reading. The whole release lies 400 m inside the ground, and so inside it by more than its "
    "uncertainty. ";

Table events() {
    Table table;
    table.caption = "Events, and what was done about each";
    table.columns = {{"Event", "", Align::left, 0, true},
                     {"Began", "NZST", Align::left, 0, true},
                     {"What happened", "", Align::left, 3, false},
                     {"Evidence", "", Align::left, 1, false},
                     {"State", "", Align::left, 0, true}};
    std::string very_long;
    for (int i = 0; i < 9; ++i) {
        very_long += remark;
    }
    table.rows = {
        {"E-30", "2026-05-09 02:14", remark, "deck log p. 41", {"closed", Mark::met}},
        {"E-31",
         "2026-05-14 11:02",
         "Released 80 m outside the ground’s northern edge.\nThe barge had been set down by the tide.",
         "Donaudampfschifffahrtsgesellschaftskapitänsmützenablage_2026-05-14T110233Z_plover_receiver.nmea",
         {"open", Mark::near}},
        {"E-32", "2026-05-20 06:00", very_long, "T1, T2, control", {"closed", Mark::met}},
        {"E-33",
         "2026-05-21 16:30",
         "Ratio T2/control 1.8, tier 2; digging stopped 16:42, 12 min after the trigger.",
         "T2",
         {"closed", Mark::met}}};
    return table;
}

Row trip(int i, int trips) {
    const int day = 1 + i * 31 / trips;
    const std::string at = fmt::format("{:02} {:02}:{:02}", day, i * 7 % 24, i * 13 % 60);
    const std::string words = i % 9 == 4    ? "Turned back by the sea, 2.1 m; left again at the next slack."
                              : i % 23 == 7 ? remark
                                            : "";
    return {fmt::format("{}", 531 + i),
            fmt::format("L{}", 529 + i),
            i % 2 != 0 ? "Teal" : "Wigeon",
            i % 5 != 0 ? "Plover" : "Dotterel",
            i % 3 != 0 ? "FB4" : "OB2",
            at,
            at,
            at,
            at,
            fmt::format("G{:02}", i % 12 + 1),
            fmt::format("{}.{}", 711640 + i * 3, i % 10),
            fmt::format("{}.{}", 5497370 - i * 7, i % 10),
            fmt::format("{}", 400 - i % 60),
            fmt::format("{}.{}", 410 + i % 70, i % 10),
            "1.243",
            fmt::format("{}.{}", 330 + i % 50, i % 10),
            fmt::format("{}", 9 + i % 3),
            fmt::format("{:.1f}", 0.4 + i % 14 * 0.1),
            i % 2 != 0 ? "Bram" : "Esi",
            words};
}

Table schedule(int trips) {
    Table table;
    table.caption = "Schedule of trips, May 2026";
    constexpr std::array titles{"Trip",     "Load",       "Barge",      "Tug",       "Claim",
                                "Cast off", "Doors open", "Doors shut", "Alongside", "Cell",
                                "Easting",  "Northing",   "Inside by",  "Hopper",    "Factor",
                                "In situ",  "±",          "Sea",        "Master",    "Remark"};
    constexpr std::array units{"",  "",  "",  "",   "", "",   "",   "",  "", "",
                               "m", "m", "m", "m³", "", "m³", "m³", "m", "", ""};
    for (std::size_t i = 0; i < titles.size(); ++i) {
        const bool words = i == 19 || i == 2 || i == 3 || i == 18;
        const bool number = i >= 10 && i <= 17;
        table.columns.push_back(
            {titles[i], units[i], number ? Align::right : Align::left, i == 19 ? 1.0 : 0.0, !words, i == 19});
    }
    for (int i = 0; i < trips; ++i) {
        table.rows.push_back(trip(i, trips));
    }
    table.total = {fmt::format("{}", trips),
                   "",
                   "",
                   "",
                   "",
                   "",
                   "",
                   "",
                   "",
                   "",
                   "",
                   "",
                   "",
                   "30 214.6",
                   "",
                   "24 310.4",
                   "540"};
    table.notes = {
        "Times are NZST (UTC+12:00), day and minute. Positions: EPSG:32760, the barge’s receiver at doors "
        "open."};
    return table;
}

Signature signature() {
    return {
        "I have read this return through. What it says is what the book says, taken as at the instant above.",
        {{"Signed for Marram Harbour Board: environmental officer", "Finn, 5 June 2026 10:12 NZST"},
         {"Received for the authority: name, date", ""},
         {"Master of the tug Plover", "Caro"}},
        {{"trips.csv", "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"},
         {"return.json", "60303ae22b998861bce3b28f33eec1be758a213c86c93c076dbe9f558c11c752"},
         {"workbook.xlsx", "fd61a03af4f77d870fc21e05e7e80678095c92d808cfb3b5c279ee04c74aca13"},
         {"Journal head", "a4e624d686e03ed2767c0abd85c14426b0b1157d2ce81d27bb4fe4f6f01d688a"}}};
}

}  // namespace

Document sample_document(int trips) {
    Document document;
    document.title = "Return for May 2026";
    document.subtitle = "Deepening of Ferry Basin and the Outer Bar Cut, Marram Harbour";
    document.header_left = "Consent MHB-25-117 · May 2026 · revision 2";
    document.header_right = "as at 5 June 2026 10:00 NZST";
    document.footer =
        "Spoilbook keeps records and does arithmetic. The consent’s text prevails over anything printed "
        "here.";
    document.as_at_utc_ms = 1780610400000;  // 2026-06-04T22:00:00Z
    document.blocks = {
        answer(),
        facts(),
        Heading{1, "Conditions"},
        Paragraph{"Each condition that is a number on a quantity over a window is held against what was "
                  "released in that window."},
        conditions(),
        Paragraph{"The release check never says that a barge may sail: that is the master’s. Freeboard, "
                  "stability and towing are "
                  "matters of the vessel’s approved stability information.",
                  TextStyle::caution},
        Heading{2, "Corrections"},
        empty_table(),
        Heading{1, "Events"},
        events(),
        PageBreak{true},
        Heading{1, "Trips and releases"},
        schedule(trips),
        PageBreak{false},
        Heading{1, "Signature"},
        KeepTogether{{signature(), Paragraph{"Anyone can check the digests: sha256sum -c SHA256SUMS.",
                                             TextStyle::small}}}};
    return document;
}

}  // namespace spoilbook::print
