// SPDX-License-Identifier: GPL-3.0-or-later
// Ten thousand random rules on random seasons: what is used, the limit and the first time over, held against
// an evaluator of the tests that adds every window up afresh with the C library's clock.
#include <fmt/format.h>
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "tests/property/consent_two_seasons.h"
#include "tests/support/how_many.h"

using namespace spoilbook;

namespace {

/// `usual`, or what is left of it where tests are brief.
std::size_t at_least(int usual) {
    return static_cast<std::size_t>(tests::how_many(usual));
}

constexpr int rules_in_a_season = 100;  // RapidCheck's hundred seasons make ten thousand pairs

std::string list_json(const char* letter, const std::vector<int>& numbers) {
    std::string text;
    for (const int number : numbers)
        text += fmt::format("{}\"{}{}\"", text.empty() ? "" : ",", letter, number);
    return "[" + text + "]";
}

std::vector<int> any_scope() {
    static const std::vector<std::vector<int>> scopes{{}, {}, {}, {0}, {1}, {0, 1}};
    return *rc::gen::elementOf(scopes);
}

const char* name_of(plain::What what) {
    static constexpr std::array names{"in_situ_m3", "hopper_m3", "trips", "days", "hours"};
    return names.at(static_cast<std::size_t>(what));
}

const char* name_of(plain::Each each) {
    static constexpr std::array names{"none", "ground", "cell", "material", "plant"};
    return names.at(static_cast<std::size_t>(each));
}

/// A window of any kind, and its JSON.
std::string any_window(plain::Limit& limit, const TwoSeasons& two) {
    using plain::Span;
    static const std::vector<Span> spans{Span::term, Span::day,          Span::week,    Span::month,
                                         Span::year, Span::consent_year, Span::rolling, Span::rolling,
                                         Span::mean, Span::campaign,     Span::phase};
    limit.span = *rc::gen::elementOf(spans);
    if (limit.span == Span::mean) {
        limit.years = *rc::gen::element(1, 2, 4);
        return fmt::format(R"({{"kind":"mean","years":{}}})", limit.years);
    }
    if (limit.span == Span::rolling) {
        const auto unit = *rc::gen::element<std::string>("days", "weeks", "months", "months", "years");
        const int n = *rc::gen::element(1, 1, 2, 12, 30);
        limit.months = unit == "months" ? n : unit == "years" ? 12 * n : 0;
        limit.days = unit == "days" ? n : unit == "weeks" ? 7 * n : 0;
        return fmt::format(R"({{"kind":"rolling","n":{},"unit":"{}"}})", n, unit);
    }
    if (limit.span == Span::phase)
        return fmt::format(R"({{"kind":"phase","from":"{}","to":"{}"}})",
                           instant_text(Instant{two.frame.phase_from}, two.small.season.zone),
                           instant_text(Instant{two.frame.phase_to}, two.small.season.zone));
    static const std::map<Span, const char*> plain_ones{
        {Span::term, R"({"kind":"term"})"},
        {Span::day, R"({"kind":"calendar","unit":"day"})"},
        {Span::week, R"({"kind":"calendar","unit":"iso_week"})"},
        {Span::month, R"({"kind":"calendar","unit":"month"})"},
        {Span::year, R"({"kind":"calendar","unit":"year"})"},
        {Span::consent_year, R"({"kind":"consent_year"})"},
        {Span::campaign, R"({"kind":"campaign"})"}};
    return plain_ones.at(limit.span);
}

/// An amount, with or without a reserve, or a share of a number or of the total so far. Powers of two
/// throughout: what is just met is then not over by a rounding.
void any_level(plain::Limit& limit, const TwoSeasons& two) {
    const bool is_volume = limit.what == plain::What::in_situ_m3 || limit.what == plain::What::hopper_m3;
    const double step = is_volume ? 100 : 1;
    if (*rc::gen::inRange(0, 3) > 0) {
        limit.value = *rc::gen::inRange(3, 8) * step;
        if (*rc::gen::inRange(0, 3) > 0) return;
        limit.reserve = *rc::gen::inRange(1, 3) * step;
        if (*rc::gen::arbitrary<bool>()) limit.unlocked = two.any_instant().utc_ms;
        return;
    }
    limit.share = *rc::gen::element(0.125, 0.25, 0.5);
    const int of = *rc::gen::inRange(0, 3);
    if (of == 1) limit.of = *rc::gen::element(4, 8) * step;
    if (of == 2) limit.floor = *rc::gen::element(4, 8) * step;
}

std::string level_json(const plain::Limit& limit, const Zone& zone) {
    if (limit.share) {
        std::string text = fmt::format(R"("share_of_total":{})", *limit.share);
        if (limit.of) text += fmt::format(R"(,"of":{})", *limit.of);
        if (limit.floor) text += fmt::format(R"(,"of":{{"floor":{}}})", *limit.floor);
        return text;
    }
    std::string text = fmt::format(R"("value":{})", *limit.value);
    if (limit.reserve == 0) return text;
    text += fmt::format(R"(,"reserve":{{"value":{})", limit.reserve);
    if (limit.unlocked)
        text += fmt::format(R"(,"unlocked_by":{{"on":"{}"}})", instant_text(Instant{*limit.unlocked}, zone));
    return text + "}";
}

struct Rule {
    plain::Limit limit;
    std::string window;  ///< its JSON
};

Rule any_rule(const TwoSeasons& two) {
    using plain::Each;
    using plain::What;
    Rule rule;
    auto& limit = rule.limit;
    limit.what = *rc::gen::element(What::in_situ_m3, What::in_situ_m3, What::hopper_m3, What::trips,
                                   What::days, What::hours);
    limit.each =
        *rc::gen::element(Each::none, Each::none, Each::ground, Each::cell, Each::material, Each::barge);
    limit.grounds = any_scope();
    limit.cells = any_scope();
    limit.materials = any_scope();
    limit.barges = any_scope();
    limit.at_most = *rc::gen::inRange(0, 4) > 0;
    rule.window = any_window(limit, two);
    any_level(limit, two);
    return rule;
}

void add_version(TwoSeasons& two, const Rule& rule, int number) {
    const auto& limit = rule.limit;
    Condition row;
    row.id = two.small.id();
    row.consent = two.consent;
    row.condition = std::to_string(number);
    row.kind = "quantity";
    if (limit.from) row.from = Instant{*limit.from};
    if (limit.to) row.to = Instant{*limit.to};
    row.body = fmt::format(R"({{"measure":"{}","op":"{}","each_of":"{}","window":{},{},)"
                           R"("applies":{{"grounds":{},"cells":{},"materials":{},"plant":{}}}}})",
                           name_of(limit.what), limit.at_most ? "at_most" : "at_least", name_of(limit.each),
                           rule.window, level_json(limit, two.small.season.zone),
                           list_json("G", limit.grounds), list_json("C", limit.cells),
                           list_json("M", limit.materials), list_json("B", limit.barges));
    two.small.season.conditions.add(row);
}

/// One condition in one version, or in two with another level each.
std::vector<plain::Limit> any_condition(TwoSeasons& two, int number) {
    Rule rule = any_rule(two);
    Rule next = rule;
    if (*rc::gen::inRange(0, 3) > 0) {
        add_version(two, rule, number);
        return {rule.limit};
    }
    rule.limit.to = next.limit.from = two.any_instant().utc_ms;
    const bool is_share = next.limit.share.has_value();
    if (is_share)
        next.limit.share = *next.limit.share / 2;
    else
        next.limit.value = *next.limit.value + 100;
    add_version(two, rule, number);
    add_version(two, next, number);
    return {rule.limit, next.limit};
}

int number_of(const LimitState& state, const TwoSeasons& two) {
    for (const auto* ids : {&two.grounds, &two.cells, &two.materials, &two.barges}) {
        const auto found = std::find(ids->begin(), ids->end(), state.member ? state.member->id : Id{});
        if (found != ids->end()) return static_cast<int>(found - ids->begin());
    }
    return -1;
}

void hold_against(const LimitState& state, const std::vector<plain::Limit>& versions, const TwoSeasons& two) {
    const auto in_force = std::find_if(versions.begin(), versions.end(), [&](const plain::Limit& limit) {
        return (!limit.from || *limit.from <= state.as_at.utc_ms) &&
               (!limit.to || state.as_at.utc_ms < *limit.to);
    });
    RC_ASSERT(in_force != versions.end());
    const int member = number_of(state, two);
    const auto expected = plain::judge(*in_force, two.frame, two.releases, member, state.as_at.utc_ms);
    const auto first = plain::first_over(versions, two.frame, two.releases, member, state.as_at.utc_ms);
    RC_LOG() << state.condition->body << " member " << member << " at "
             << instant_text(state.as_at, two.small.season.zone) << ": used " << state.used << ", expected "
             << expected.used << "\n";
    RC_ASSERT(std::abs(state.used - expected.used) < 1e-9);
    RC_ASSERT(state.unknown == expected.unknown);
    RC_ASSERT(state.limit == expected.limit);
    RC_ASSERT((state.first_over ? std::optional(state.first_over->utc_ms) : std::nullopt) == first);
}

}  // namespace

TEST_CASE("ten thousand rules say of a season what adding every window up afresh says", "[window]") {
    std::size_t pairs = 0;
    std::size_t passed = 0;
    CHECK(rc::check([&pairs, &passed] {
        TwoSeasons two;
        std::vector<std::vector<plain::Limit>> conditions;
        for (int number = 0; number < rules_in_a_season; ++number)
            conditions.push_back(any_condition(two, number));
        const Ledger ledger(two.small.season);
        const Instant as_at =
            *rc::gen::arbitrary<bool>() ? two.any_instant() : two.small.at("2026-01-01T00:00");
        for (const auto& state : limits_at(ledger, as_at)) {
            hold_against(state, conditions[std::stoul(state.condition->condition)], two);
            passed += state.first_over ? 1 : 0;
        }
        pairs += conditions.size();
    }));
    CHECK(pairs >= at_least(10'000));
    CHECK(passed > at_least(500));  // else the seasons are too tame to tell anything
}

TEST_CASE("a trip added late re-opens the windows that it lies in and no other", "[window]") {
    std::size_t reopened = 0;
    std::size_t left_alone = 0;
    CHECK(rc::check([&reopened, &left_alone] {
        TwoSeasons two;
        std::vector<plain::Limit> rules;
        for (int number = 0; number < 20; ++number) {
            Rule rule = any_rule(two);
            rule.limit.what = plain::What::in_situ_m3;
            rule.limit.share.reset();
            rule.limit.value = 100;
            add_version(two, rule, number);
            rules.push_back(rule.limit);
        }
        const Season before = two.small.season;
        const auto late = two.late_trip();
        const Ledger old_ledger(before);
        const Ledger ledger(two.small.season);
        for (const auto& release : two.releases) {
            const auto was = limits_at(old_ledger, Instant{release.at});
            const auto is = limits_at(ledger, Instant{release.at});
            for (const auto& now : is) {
                const auto& rule = rules[std::stoul(now.condition->condition)];
                const bool touched = plain::in_scope(rule, late) &&
                                     plain::member_of(rule, late) == number_of(now, two) &&
                                     plain::counts(rule, two.frame, late.at, release.at);
                // What has no member has a row only where something has none.
                const auto then = std::find_if(was.begin(), was.end(), [&](const LimitState& state) {
                    return state.condition->condition == now.condition->condition &&
                           number_of(state, two) == number_of(now, two);
                });
                const bool changed = then == was.end()
                                         ? now.used != 0 || now.unknown != 0
                                         : now.used != then->used || now.unknown != then->unknown;
                RC_ASSERT(changed == touched);
                ++(touched ? reopened : left_alone);
            }
        }
    }));
    CHECK(reopened > at_least(1'000));
    CHECK(left_alone > at_least(1'000));
}
