// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/return_document.h"

#include <fmt/format.h>

#include <algorithm>

#include "forms/print/figure_text.h"
#include "forms/print/return_tables.h"
#include "model/answer/standing.h"
#include "model/consent/quantity_text.h"
#include "model/unit/time_text.h"

namespace spoilbook::print {

namespace {

std::string consent_names(const Season& season) {
    std::string names;
    for (const auto& consent : season.consents.rows())
        names += (names.empty() ? "" : ", ") + consent.consent;
    return names;
}

std::string late_note(const ReturnFacts& facts) {
    std::string note = fmt::format("{} logged over 24 h late", facts.late_entries);
    if (facts.imported_entries > 0) note += fmt::format(", {} brought by folder", facts.imported_entries);
    return note;
}

Answer answer_of(const ReturnFacts& facts) {
    Answer answer;
    const bool complied = facts.reasons.empty();
    if (facts.schedule.empty())
        answer.sentence = "Nil return: nothing was released in " + month_shown(facts.period_name) + ".";
    else
        answer.sentence = fmt::format("{} m³ in situ were released in {} in {} releases.",
                                      tenths_shown(facts.printed.in_situ_m3), month_shown(facts.period_name),
                                      facts.schedule.size());
    answer.sentence +=
        complied
            ? " Nothing that is judged here stands against saying that everything was met."
            : fmt::format(" {} against saying that everything was met: see below.",
                          facts.reasons.size() == 1 ? "1 matter stands"
                                                    : fmt::format("{} matters stand", facts.reasons.size()));
    if (!facts.not_judged.empty()) {
        answer.sentence +=
            fmt::format(" {} more condition{} not judged here: the statement lists them.",
                        facts.not_judged.size(), facts.not_judged.size() == 1 ? " is" : "s are");
    }
    const auto untold = std::count_if(facts.judged.begin(), facts.judged.end(), [](const auto& judged) {
        return judged.state() == Compliance::cannot_tell;
    });
    if (untold > 0)
        answer.sentence += fmt::format(" Of {} condition{} it cannot be told whether all complied.", untold,
                                       untold == 1 ? "" : "s");
    const auto& in_situ = facts.totals.amounts.in_situ_m3;
    const auto& hopper = facts.totals.amounts.hopper_m3;
    answer.figures.push_back({"Released, in situ", tenths_shown(facts.printed.in_situ_m3), "m³",
                              in_situ ? "± " + u_shown(in_situ->u()) + " m³" : "", "", Mark::none});
    answer.figures.push_back({"Released, hopper", tenths_shown(facts.printed.hopper_m3), "m³",
                              hopper ? "± " + u_shown(hopper->u()) + " m³" : "", "", Mark::none});
    answer.figures.push_back(
        {"Releases", std::to_string(facts.schedule.size()), "", late_note(facts), "", Mark::none});
    if (const auto* state = least_headroom(facts.limits)) {
        const bool exceeded = facts.exceeded[static_cast<std::size_t>(state - facts.limits.data())];
        answer.figures.push_back(
            {"Least headroom", headroom_shown(*state), unit_text(state->quantity),
             "condition " + state->condition->condition + (state->member ? " " + state->member->name : ""),
             limit_word(*state, exceeded), limit_mark(*state, exceeded)});
    }
    return answer;
}

Facts facts_of(const ReturnFacts& facts) {
    const Season& season = *facts.season;
    const auto orNone = [](const std::string& text) {
        return text.empty() ? std::string("not recorded") : text;
    };
    const auto holder = season.consents.size() > 0 ? season.consents.rows().front().holder : "";
    return {{{"Consent", orNone(consent_names(season))},
             {"Holder", orNone(holder)},
             {"Authority", orNone(season.harbour.authority)},
             {"Period", instant_text(facts.period.from, season.zone) + " to " +
                            instant_text(facts.period.to, season.zone) + ", not included"},
             {"Revision", std::to_string(facts.revision)},
             {"As at", instant_text(facts.as_at, season.zone)},
             {"Made by", orNone(facts.made_by)},
             {"Time zone", season.zone.name()},
             {"Positions", "WGS 84, where the doors opened"}}};
}

Signature signature_of(const ReturnFacts& facts,
                       const std::vector<std::pair<std::string, std::string>>& digests) {
    Signature signature;
    signature.statement = "I have read this return. To the best of my knowledge it says what was done.";
    signature.lines = {{"Name", facts.made_by}, {"Signature", ""}, {"Date", ""}};
    signature.digests.push_back({"Journal head", facts.journal_head});
    for (const auto& [name, hex] : digests)
        signature.digests.push_back({name, hex});
    return signature;
}

}  // namespace

Document return_document(const ReturnFacts& facts,
                         const std::vector<std::pair<std::string, std::string>>& digests) {
    Document document;
    const Season& season = *facts.season;
    document.title = "Return for " + month_shown(facts.period_name);
    document.subtitle =
        season.harbour.name + (season.harbour.works.empty() ? "" : ", " + season.harbour.works);
    document.header_left = fmt::format("{} · {} · revision {}", consent_names(season),
                                       month_shown(facts.period_name), facts.revision);
    document.header_right = "as at " + instant_text(facts.as_at, season.zone);
    document.footer = "Records and arithmetic only: the consent's text and licensed practice prevail.";
    document.as_at_utc_ms = facts.as_at.utc_ms;
    auto& blocks = document.blocks;
    blocks.emplace_back(answer_of(facts));
    blocks.emplace_back(facts_of(facts));
    add_statement(facts, blocks);
    add_judged(facts, blocks);
    add_not_judged(facts, blocks);
    add_totals(facts, blocks);
    add_limits(facts, blocks);
    add_events(facts, blocks);
    add_triggers(facts, blocks);
    add_turbidity(facts, blocks);
    add_duties(facts, blocks);
    add_factors(facts, blocks);
    add_failed(facts, blocks);
    blocks.emplace_back(PageBreak{true});
    add_schedule(facts, blocks);
    blocks.emplace_back(PageBreak{false});
    blocks.emplace_back(Heading{1, "Signature"});
    blocks.emplace_back(signature_of(facts, digests));
    return document;
}

}  // namespace spoilbook::print
