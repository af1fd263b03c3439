// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/piece_list.h"

namespace spoilbook::form {
namespace {

void add_measure(PieceList& list) {
    list.choice("/measure", "measure",
                {"in_situ_m3", "m³ in situ", "hopper_m3", "m³ hopper", "wet_t", "t wet", "dry_t", "t dry",
                 "trips", "trips", "days", "days", "hours", "hours"});
}

void add_amount(PieceList& list) {
    list.choice("", "an amount or a share", {"value", "the amount of", "share_of_total", "the share of"},
                BlankHolds::which);
    if (!list.has("/share_of_total")) {
        list.number("/value", "how much", 10);
        return add_measure(list);
    }
    list.percent("/share_of_total", "share in %").words("% of");
    if (list.has("/of/floor"))
        list.words("the total so far, once that is").number("/of/floor", "floor", 10);
    else
        list.number("/of", "of how much; blank: of the total so far", 10);
    add_measure(list);
}

void add_window(PieceList& list) {
    list.choice("/window/kind", "window",
                {"term", "over the whole term", "calendar", "in a calendar", "consent_year",
                 "in a year of the consent", "rolling", "in any", "mean", "a year, as the mean of",
                 "campaign", "in a campaign", "phase", "in a time from … to …", "trip", "on one trip"});
    if (list.is("/window/kind", "calendar"))
        list.choice("/window/unit", "day, week, month or year",
                    {"day", "day", "week", "week", "month", "month", "year", "year"});
    if (list.is("/window/kind", "rolling"))
        list.number("/window/n", "how many", 5)
            .choice("/window/unit", "days, weeks, months or years",
                    {"days", "days", "weeks", "weeks", "months", "months", "years", "years"});
    if (list.is("/window/kind", "mean")) list.number("/window/years", "how many", 5).words("years");
    if (list.is("/window/kind", "campaign")) list.text("/window/name", "which; blank: the last that began");
    if (list.is("/window/kind", "phase"))
        list.words("from")
            .text("/window/from", "begins, 2026-07-01", 11)
            .words("until")
            .text("/window/to", "ends", 11);
}

}  // namespace

void add_quantity(PieceList& list) {
    list.choice("/op", "no more or at least", {"at_most", "No more than", "at_least", "At least"});
    add_amount(list);
    list.choice("/each_of", "as a whole or for each",
                {"none", "as a whole", "claim", "for each claim", "ground", "for each ground", "cell",
                 "for each cell", "material", "for each material", "plant", "for each barge"});
    add_window(list);
    list.words(", counted")
        .choice("/applies/activity", "counted at", {"release", "at release", "dredge", "when it is loaded"});
    list.words("and known by")
        .choice("/method", "method",
                {"", "the first method there is", "ullage", "ullage alone", "draughts", "draughts alone",
                 "tally", "tally alone", "stated", "what is stated"});
    list.words("; held back of it").number("/reserve/value", "reserve, blank: none");
    if (!list.has("/reserve/value")) return;
    if (list.has("/reserve/unlocked_by") && !list.has("/reserve/unlocked_by/on") &&
        !list.has("/reserve/unlocked_by/by") && !list.has("/reserve/unlocked_by/letter"))
        return;
    list.words("until").text("/reserve/unlocked_by/on", "unlocked on", 11);
    list.words("by")
        .text("/reserve/unlocked_by/by", "unlocked by")
        .text("/reserve/unlocked_by/letter", "letter");
}

}  // namespace spoilbook::form
