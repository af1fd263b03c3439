// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command/compare_text.h"

#include <fmt/format.h>

#include "model/consent/quantity_text.h"
#include "model/unit/shown.h"

namespace spoilbook {

namespace {

/// "1 load", "2 loads"
std::string counted(std::size_t n, const std::string& what) {
    return fmt::format("{} {}{}", n, what, n == 1 ? "" : "s");
}

std::string survey_name(const Survey* survey) {
    return survey == nullptr ? "(no survey)" : survey->survey;
}

std::string period_text(const ReconciledPeriod& period) {
    std::string text =
        fmt::format("{}: claim {}, {} to {}: {}\n", period.row->removed,
                    period.claim == nullptr ? "(none)" : period.claim->claim, survey_name(period.before),
                    survey_name(period.after), in_words(held_text(period.held)));
    if (!period.why.empty()) text += "  " + period.why + "\n";
    if (!period.balance) return text;
    const auto& balance = *period.balance;
    text += fmt::format("  bed {} in situ m³, barges {} in situ m³ of {}, difference {} m³",
                        with_u(balance.bed.value, balance.bed.u, 0),
                        with_u(period.loads.in_situ_m3.value, period.loads.in_situ_m3.u(), 0),
                        counted(period.loads.loads, "load"),
                        with_u(balance.difference.value, balance.difference.u, 0));
    if (balance.e_n) text += fmt::format(", E_n {:.2f}", *balance.e_n);
    text += "\n";
    if (balance.closing_factor) {
        text += fmt::format("  bulking factor that would close it alone: {}\n",
                            with_u(balance.closing_factor->value, balance.closing_factor->u, 3));
    }
    for (const auto& sentence : period.assumed)
        text += fmt::format("  assumed: {}\n", sentence);
    return text;
}

std::string proposal_text(const FactorProposal& proposal) {
    std::string text = proposal.material->material + ": bulking factor ";
    if (proposal.prior) {
        text += proposal.prior->u ? with_u(proposal.prior->value, *proposal.prior->u, 3)
                                  : fmt::format("{:.3f} (no uncertainty recorded)", proposal.prior->value);
        text += " in force, ";
    }
    if (!proposal.fit) return text + fmt::format("no proposal: {}\n", proposal.why_not);
    text += fmt::format(
        "{} would close {}, 95 % {:.3f} to {:.3f}", with_u(proposal.fit->value, proposal.fit->u, 3),
        counted(proposal.evidence.size(), "claim-period"), proposal.fit->low, proposal.fit->high);
    if (proposal.p_value) {
        text += fmt::format("; chi-square {:.2f} of {}, p {:.3f}", proposal.chi_square,
                            counted(static_cast<std::size_t>(proposal.dof), "degree") + " of freedom",
                            *proposal.p_value);
        if (*proposal.p_value < 0.05) text += ": they scatter more than their uncertainties allow";
    }
    return text + "\n";
}

}  // namespace

std::string compare_text(const Reconciliation& all, const std::vector<const ReconciledPeriod*>& shown) {
    std::string text;
    if (shown.empty()) text += "No closed claim-period: type what was removed (sbk log BOOK removed …).\n";
    for (const auto* period : shown)
        text += period_text(*period);
    for (const auto& proposal : all.proposals)
        text += proposal_text(proposal);
    for (const auto& [label, why] : all.left_out)
        text += fmt::format("{} was not asked: {}\n", label, why);
    return text;
}

std::string effect_text(const std::vector<LimitEffect>& effects) {
    std::string text = "What the proposal would do to every limit:\n";
    for (const auto& effect : effects) {
        const double scale = shown_scale(effect.now.quantity);
        const int decimals = shown_decimals(effect.now.quantity);
        std::string name = effect.now.condition->condition;
        if (effect.now.member)
            name += " " + (effect.now.member->name.empty() ? "(none)" : effect.now.member->name);
        text += fmt::format("  {:<14} used {:.{}f}, with it {:.{}f}, judged until accepted {:.{}f} {}", name,
                            rounded_up(effect.now.used * scale, decimals), decimals,
                            rounded_up(effect.used * scale, decimals), decimals,
                            rounded_up(effect.judged * scale, decimals), decimals,
                            unit_text(effect.now.quantity));
        if (effect.now.limit) text += fmt::format(" of {:.{}f}", *effect.now.limit * scale, decimals);
        text += "\n";
    }
    return text;
}

}  // namespace spoilbook
