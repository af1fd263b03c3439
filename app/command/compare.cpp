// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "app/command/command.h"
#include "app/command/compare_text.h"
#include "model/book/season.h"
#include "model/folder/nearest.h"
#include "model/logging/accept_proposal.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

struct Asked {
    std::string before, after, propose, from;
};

Json name_or_null(const std::string* name) {
    return name == nullptr ? Json(nullptr) : Json(*name);
}

Json period_json(const ReconciledPeriod& period, const Season& season) {
    Json row;
    row["removed"] = period.row->removed;
    row["claim"] = name_or_null(period.claim == nullptr ? nullptr : &period.claim->claim);
    row["before"] = name_or_null(period.before == nullptr ? nullptr : &period.before->survey);
    row["after"] = name_or_null(period.after == nullptr ? nullptr : &period.after->survey);
    row["from"] = instant_or_null(period.from, season.zone);
    row["to"] = instant_or_null(period.to, season.zone);
    put_measured(row, "removed_m3", period.removed);
    row["deposited_m3"] = number_or_null(period.row->deposited_in_situ_m3);
    row["deposited_m3_u"] = number_or_null(period.row->deposited_u_m3);
    put_measured(row, "infill_m3", period.infill);
    put_measured(row, "outside_m3", period.outside);
    const bool counted = period.claim != nullptr && period.from && period.to;
    put_estimate(row, "barges_in_situ_m3", counted ? std::optional(period.loads.in_situ_m3) : std::nullopt);
    put_estimate(row, "barges_hopper_m3", counted ? std::optional(period.loads.hopper_m3) : std::nullopt);
    row["loads"] = period.loads.loads;
    row["unknown"] = period.loads.unknown;
    const auto& balance = period.balance;
    put_measured(row, "difference_m3", balance ? std::optional(balance->difference) : std::nullopt);
    row["e_n"] = balance ? number_or_null(balance->e_n) : Json(nullptr);
    row["state"] = held_text(period.held);
    row["why"] = period.why.empty() ? Json(nullptr) : Json(period.why);
    put_measured(row, "bulking_factor_closing", balance ? balance->closing_factor : std::nullopt);
    put_measured(row, "residual_m3", period.residual);
    row["assumed"] = Json::array();
    for (const auto& sentence : period.assumed)
        row["assumed"].push_back(sentence);
    return row;
}

Json material_json(const FactorProposal& proposal) {
    Json row;
    row["material"] = proposal.material->material;
    row["prior"] = proposal.prior ? Json(proposal.prior->value) : Json(nullptr);
    row["prior_u"] = proposal.prior ? number_or_null(proposal.prior->u) : Json(nullptr);
    const auto& fit = proposal.fit;
    row["proposal"] = fit ? Json(fit->value) : Json(nullptr);
    row["proposal_u"] = fit ? Json(fit->u) : Json(nullptr);
    row["proposal_low"] = fit ? Json(fit->low) : Json(nullptr);
    row["proposal_high"] = fit ? Json(fit->high) : Json(nullptr);
    row["why_not"] = proposal.why_not.empty() ? Json(nullptr) : Json(proposal.why_not);
    row["chi_square"] = proposal.chi_square;
    row["dof"] = proposal.dof;
    row["p"] = number_or_null(proposal.p_value);
    row["evidence"] = proposal.evidence;
    return row;
}

Json effect_json(const LimitEffect& effect) {
    Json row;
    row["consent"] = name_or_null(effect.now.consent == nullptr ? nullptr : &effect.now.consent->consent);
    row["condition"] = effect.now.condition->condition;
    row["member"] =
        effect.now.member && !effect.now.member->name.empty() ? Json(effect.now.member->name) : Json(nullptr);
    row["limit"] = number_or_null(effect.now.limit);
    row["used"] = effect.now.used;
    row["used_u"] = effect.now.used_u;
    row["headroom"] = number_or_null(effect.now.headroom());
    row["p_over"] = number_or_null(effect.now.p_over);
    row["used_with_it"] = effect.used;
    row["used_with_it_u"] = effect.used_u;
    row["headroom_with_it"] = number_or_null(effect.headroom);
    row["p_over_with_it"] = number_or_null(effect.p_over);
    row["used_judged_until_accepted"] = effect.judged;
    return row;
}

Checked<const FactorProposal*> proposal_of(const Reconciliation& all, const std::string& material,
                                           const Season& season) {
    for (const auto& proposal : all.proposals) {
        if (proposal.material->material != material) continue;
        if (proposal.fit) return &proposal;
        return Refusal{"no-proposal", "material " + material, std::string(proposal.why_not),
                       "type the uncertainties, or another claim-period"};
    }
    for (const auto& row : season.materials.rows()) {
        if (row.material == material)
            return Refusal{"no-proposal", "material " + material, "no claim-period says anything of it",
                           "type what was removed between two surveys of a claim it came from"};
    }
    return Refusal{"unknown-reference", "material", "there is no \"" + material + "\"",
                   labels_there_are(material, labels_of(season.materials.rows(), &Material::material))};
}

/// The row of factors.csv that the proposal would become; in force from `from`, or as long as the factor that
/// it revises.
Checked<Factor> revision_of(const FactorProposal& proposal, const Asked& asked, const Season& season) {
    Factor row;
    row.from = proposal.prior_from.value_or(Instant{});
    if (!asked.from.empty()) {
        const auto from = time_given("--from", asked.from, season.zone);
        if (!from) return from.refusals();
        row.from = *from;
    }
    row.material = proposal.material->id;
    row.factor = "bulking";
    row.value = proposal.fit->value;
    row.u = proposal.fit->u;
    return row;
}

Checked<Done> add_effect(const Reading& reading, const Reconciliation& all, const Asked& asked, Said& said) {
    const auto proposal = proposal_of(all, asked.propose, reading.season);
    if (!proposal) return proposal.refusals();
    const auto revision = revision_of(**proposal, asked, reading.season);
    if (!revision) return revision.refusals();
    const auto effects = effect_of(*reading.ledger, *revision, reading.as_at);
    said.json["proposed"] = {{"material", asked.propose},
                             {"from", instant_text(*revision->from, reading.season.zone)},
                             {"value", *revision->value},
                             {"u", *revision->u}};
    said.json["limits"] = Json::array();
    for (const auto& effect : effects)
        said.json["limits"].push_back(effect_json(effect));
    said.text += effect_text(effects);
    return Done{};
}

Checked<Done> surveys_known(const Asked& asked, const Season& season) {
    for (const auto& name : {asked.before, asked.after}) {
        const auto& rows = season.surveys.rows();
        const bool known = name.empty() || std::any_of(rows.begin(), rows.end(), [&](const Survey& survey) {
                               return survey.survey == name;
                           });
        if (known) continue;
        return Refusal{"unknown-reference", "survey", "there is no survey \"" + name + "\"",
                       labels_there_are(name, labels_of(rows, &Survey::survey))};
    }
    return Done{};
}

Checked<Said> say_compare(const Reading& reading, const Asked& asked) {
    if (const auto known = surveys_known(asked, reading.season); !known) return known.refusals();
    const auto all = reconciliation(*reading.ledger, reading.as_at);
    std::vector<const ReconciledPeriod*> shown;
    for (const auto& period : all.periods) {
        const auto named = [](const Survey* survey, const std::string& name) {
            return name.empty() || (survey != nullptr && survey->survey == name);
        };
        if (named(period.before, asked.before) && named(period.after, asked.after)) shown.push_back(&period);
    }
    Said said;
    said.json["as_at"] = instant_text(reading.as_at, reading.season.zone);
    said.json["claims"] = Json::array();
    for (const auto* period : shown)
        said.json["claims"].push_back(period_json(*period, reading.season));
    said.json["materials"] = Json::array();
    for (const auto& proposal : all.proposals)
        said.json["materials"].push_back(material_json(proposal));
    said.json["left_out"] = Json::array();
    for (const auto& [label, why] : all.left_out)
        said.json["left_out"].push_back({{"removed", label}, {"why", why}});
    said.json["chi_square"] = all.chi_square;
    said.json["dof"] = all.dof;
    said.json["p"] = number_or_null(all.p_value);
    said.text = compare_text(all, shown);
    if (asked.propose.empty()) return said;
    if (auto done = add_effect(reading, all, asked, said); !done) return done.refusals();
    return said;
}

Checked<Said> accept(Book& book, const Options& options, const Asked& asked) {
    const Season season = read_season(book);
    const Ledger ledger(season);
    const Act act = act_of(options);
    const auto all = reconciliation(ledger, act.at);
    const auto proposal = proposal_of(all, asked.propose, season);
    if (!proposal) return proposal.refusals();
    const auto revision = revision_of(**proposal, asked, season);
    if (!revision) return revision.refusals();
    const auto logged = accept_proposal(
        book, act, {asked.propose, *revision->from, *revision->value, revision->u, (*proposal)->evidence});
    if (!logged) return logged.refusals();
    Said said;
    said.json = {{"material", asked.propose},
                 {"from", instant_text(*revision->from, season.zone)},
                 {"value", *revision->value},
                 {"u", *revision->u},
                 {"evidence", (*proposal)->evidence},
                 {"entry", logged->entry ? Json(name_text(*logged->entry)) : Json(nullptr)}};
    said.text = fmt::format(
        "{}: bulking factor {} from {}; every open window is judged by the higher until the "
        "authority has accepted it\n",
        asked.propose, with_u(*revision->value, *revision->u, 4), instant_text(*revision->from, season.zone));
    return said;
}

void add_accept(CLI::App& program, Options& options, Task& task) {
    auto asked = std::make_shared<Asked>();
    auto* command =
        add_command(program, options, "accept", "make a proposed bulking factor a dated revision");
    add_write_options(*command, options);
    command->add_option("material", asked->propose, "the material")->required();
    command->add_option("--from", asked->from, "in force from then on")->required();
    command->callback([&options, &task, asked] {
        task = [&options, asked] {
            return write_book(options, [&](Book& book) { return accept(book, options, *asked); });
        };
    });
}

}  // namespace

void add_compare_commands(CLI::App& program, Options& options, Task& task) {
    auto asked = std::make_shared<Asked>();
    auto* compare = add_command(program, options, "compare", "barges against the bed, by claim and survey");
    add_read_options(*compare, options);
    auto* before = compare->add_option("before", asked->before, "the survey before; none: all");
    auto* after = compare->add_option("after", asked->after, "the survey after");
    before->needs(after);
    auto* propose = compare->add_option("--propose", asked->propose,
                                        "show what this material's proposal would do to every limit");
    compare
        ->add_option("--from", asked->from,
                     "the proposal in force from then on; default: as the factor it revises")
        ->needs(propose);
    compare->callback([&options, &task, asked] {
        task = [&options, asked] {
            return read_book(options, [&](const Reading& reading) { return say_compare(reading, *asked); });
        };
    });
    add_accept(program, options, task);
}

}  // namespace spoilbook
