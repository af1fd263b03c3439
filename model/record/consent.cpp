// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/consent.h"

namespace spoilbook {

template <>
const Definition<Consent>& definition() {
    static const auto d =
        Definition<Consent>("consent", "consents.json", "the legal permission")
            .in(FileForm::json, "consents")
            .label("consent", &Consent::consent, "its number")
            .text("holder", &Consent::holder, "who holds it")
            .text("authority", &Consent::authority, "who granted it")
            .day("granted", &Consent::granted, "day it was granted")
            .instant_or_day("commences", &Consent::commences, "in force from")
            .instant_or_day("lapses", &Consent::lapses, "lapses if not begun by")
            .instant_or_day("expires", &Consent::expires, "ends")
            .text("year_starts", &Consent::year_starts, "MM-DD on which its year begins; blank: 01-01")
            .json("not_working", &Consent::not_working,
                  "{weekends, dates[], yearly[]}: days that are not working days");
    return d;
}

template <>
const Definition<Condition>& definition() {
    static const auto d =
        Definition<Condition>("condition", "consents.json", "one requirement of a consent, in one version")
            .in(FileForm::json, "conditions")
            .label("condition", &Condition::condition, "number as printed")
            .ref("consent", &Condition::consent, "consent", "the consent it is part of")
            .instant_or_day("from", &Condition::from, "this version is in force from; blank: always")
            .instant_or_day("to", &Condition::to, "until, not included; blank: always")
            .text("text", &Condition::text, "short, in own words")
            .text("wording", &Condition::wording, "the consent's own wording")
            .choice("kind", &Condition::kind,
                    {"quantity", "place", "time", "series", "surface", "duty", "watch", "record", "text"},
                    "its kind")
            .json("body", &Condition::body, "the members of its kind")
            .also_label("consent")
            .also_label("from")
            .ordered("from", "to");
    return d;
}

template <>
const Definition<Opening>& definition() {
    static const auto d =
        Definition<Opening>("opening", "opening.csv", "what counted before the book began, or by others")
            .own_label("id", &Opening::opening)
            .ref("consent", &Opening::consent, "consent", "the consent")
            .text("condition", &Opening::condition, "number of the condition")
            .instant_or_day("from", &Opening::from, "counted from")
            .instant_or_day("to", &Opening::to, "counted until, not included")
            .number("value", &Opening::value, "the limit's unit", 0, 1e12, "amount")
            .number("u", &Opening::u, "the limit's unit", 0, 1e12, "its standard uncertainty")
            .text("source", &Opening::source, "where it is known from")
            .text("member", &Opening::member,
                  "the cell, claim, … it counts for, under a limit for each of them")
            .added()
            .ordered("from", "to");
    return d;
}

}  // namespace spoilbook
