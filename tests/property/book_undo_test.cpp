// SPDX-License-Identifier: GPL-3.0-or-later
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "model/book/replay.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

using Snap = std::vector<std::vector<Row>>;

/// One cell before and after; a row that came has field -1.
struct Step {
    std::string kind;
    Id id;
    int field = -1;
    Value before, after;
    std::vector<Value> values;
};

struct Deed {
    std::string who;
    std::vector<Step> steps;
    bool opens_shift = false;
    bool undone = false;
};

constexpr int struck_field = 1000;

/// A book as a person would keep it by hand: rows, what was done, and who may take back what.
class ByHand {
 public:
    std::map<Id, Row> rows;

    void log(Deed deed) {
        restorable_[deed.who].clear();
        deeds_.push_back(std::move(deed));
    }

    /// What undo should do: false for a refusal.
    bool undo(const std::string& who) {
        for (std::size_t i = deeds_.size(); i-- > 0;) {
            Deed& deed = deeds_[i];
            if (deed.undone) continue;
            if (deed.who == who) {
                auto back = turned(deed.steps);
                if (!apply(back)) return false;
                deed.undone = true;
                restorable_[who].push_back(i);
                return true;
            }
            if (deed.opens_shift) return false;
        }
        return false;
    }

    bool redo(const std::string& who) {
        auto& stack = restorable_[who];
        if (stack.empty()) return false;
        Deed& deed = deeds_[stack.back()];
        if (!apply(deed.steps)) return false;
        deed.undone = false;
        stack.pop_back();
        return true;
    }

    [[nodiscard]] bool same_as(const Book& book) const {
        std::size_t count = 0;
        for (const char* name : {"barge", "load", "shift"}) {
            for (const auto& row : book.rows(kind(name), true)) {
                const auto place = rows.find(row.id);
                if (place == rows.end() || place->second.values != row.values ||
                    place->second.struck != row.struck)
                    return false;
                ++count;
            }
        }
        return count == rows.size();
    }

 private:
    static std::vector<Step> turned(const std::vector<Step>& steps) {
        std::vector<Step> back(steps.rbegin(), steps.rend());
        for (auto& step : back) {
            std::swap(step.before, step.after);
            if (step.field == -1) step.field = -2;  // the row goes
        }
        return back;
    }

    [[nodiscard]] bool referred_to(const Id& id) const {
        return std::any_of(rows.begin(), rows.end(), [&](const auto& row) {
            const auto& values = row.second.values;
            return std::find(values.begin(), values.end(), Value{id}) != values.end();
        });
    }

    static bool take(std::map<Id, Row>& now, const Step& step) {
        if (step.field == -1) return now.emplace(step.id, Row{step.id, step.values, false}).second;
        const auto place = now.find(step.id);
        if (place == now.end()) return false;
        Row& row = place->second;
        if (step.field == -2) {
            if (row.values != step.values || row.struck) return false;
            now.erase(place);
        } else if (step.field == struck_field) {
            if (row.struck != !is_blank(step.before)) return false;
            row.struck = !row.struck;
        } else {
            Value& value = row.values[static_cast<std::size_t>(step.field)];
            if (value != step.before) return false;
            value = step.after;
        }
        return true;
    }

    bool apply(const std::vector<Step>& steps) {
        auto now = rows;
        for (const auto& step : steps)
            if (!take(now, step)) return false;
        std::swap(rows, now);
        const bool whole = std::all_of(rows.begin(), rows.end(), [&](const auto& row) {
            return std::all_of(row.second.values.begin(), row.second.values.end(), [&](const Value& value) {
                const auto* id = std::get_if<Id>(&value);
                return id == nullptr || rows.count(*id) > 0;
            });
        });
        if (!whole) std::swap(rows, now);
        return whole;
    }

    std::vector<Deed> deeds_;
    std::map<std::string, std::vector<std::size_t>> restorable_;
};

/// Book and hand-kept book side by side.
class Both {
 public:
    Book book = Book::in_memory("wheelhouse");
    ByHand hand;
    std::vector<Snap> snaps{all_rows(book)};

    void insert(const std::string& who, const std::string& name, const Fields& fields,
                const std::optional<std::pair<Id, std::string>>& rename = std::nullopt) {
        const Kind& of = kind(name);
        Deed deed{who, {}, name == "shift"};
        book.change(by(who, minute_++),
                    [&](Change& change) -> Checked<Done> {
                        const auto values = values_of(of, fields);
                        const Id id = change.insert(of, values);
                        deed.steps.push_back({name, id, -1, {}, {}, values});
                        hand.rows[id] = {id, values, false};
                        if (rename) set_by(change, deed, "barge", rename->first, 0, rename->second).value();
                        return Done{};
                    })
            .value();
        hand.log(std::move(deed));
    }

    void set(const std::string& who, const std::string& name, const Id& id, int field, const Value& value) {
        Deed deed{who, {}};
        const auto done = book.change(by(who, minute_++), [&](Change& change) -> Checked<Done> {
            return set_by(change, deed, name, id, field, value);
        });
        RC_ASSERT(done.ok());
        RC_ASSERT(done->has_value() == !deed.steps.empty());
        if (!deed.steps.empty()) hand.log(std::move(deed));
    }

    void strike(const std::string& who, const std::string& name, const Id& id) {
        const bool may = !hand.rows.at(id).struck;
        RC_ASSERT(strike_row(book, by(who, minute_++), name, id).ok() == may);
        if (!may) return;
        hand.rows.at(id).struck = true;
        hand.log({who, {{name, id, struck_field, {}, Value{std::int64_t{1}}, {}}}});
    }

    void undo(const std::string& who) {
        RC_ASSERT(spoilbook::undo(book, by(who, minute_++)).ok() == hand.undo(who));
    }
    void redo(const std::string& who) {
        RC_ASSERT(spoilbook::redo(book, by(who, minute_++)).ok() == hand.redo(who));
    }

    void hold(bool journal_too) {
        RC_ASSERT(hand.same_as(book));
        if (journal_too) RC_ASSERT(!check_journal(book).has_value());
        const auto entries = static_cast<std::size_t>(journal_state(book).entries);
        if (entries == snaps.size()) snaps.push_back(all_rows(book));
        RC_ASSERT(entries + 1 == snaps.size());
    }

    void hold_past() const {
        for (std::size_t seq = 1; seq < snaps.size(); ++seq) {
            const EntryName name{"wheelhouse", static_cast<std::int64_t>(seq)};
            RC_ASSERT(same_rows(all_rows(known_at(book, {name, std::nullopt})), snaps[seq]));
        }
    }

 private:
    Checked<Done> set_by(Change& change, Deed& deed, const std::string& name, const Id& id, int field,
                         const Value& value) {
        Value& held = hand.rows.at(id).values[static_cast<std::size_t>(field)];
        if (held != value) {
            deed.steps.push_back({name, id, field, held, value, {}});
            held = value;
        }
        return change.set(kind(name), id, static_cast<std::size_t>(field), value);
    }

    std::int64_t minute_ = 0;
};

std::optional<Id> some_row(const Book& book, const char* name) {
    const auto rows = book.rows(kind(name), true);
    if (rows.empty()) return std::nullopt;
    return rows[*rc::gen::inRange<std::size_t>(0, rows.size())].id;
}

std::string some_name() {
    return *rc::gen::element<std::string>("Pipi", "Tuatua", "Toheroa");
}

void do_something(Both& both) {
    const auto who = *rc::gen::element<std::string>("Ana", "Ben");
    const auto barge = some_row(both.book, "barge");
    const auto load = some_row(both.book, "load");
    const Kind& loads = kind("load");
    const int barge_of = static_cast<int>(*loads.index_of("barge"));
    switch (
        *rc::gen::weightedElement<int>({{2, 0}, {2, 1}, {3, 2}, {2, 3}, {1, 4}, {6, 5}, {4, 6}, {1, 7}})) {
        case 0:
            return both.insert(who, "barge", {{"name", some_name()}});
        case 1:
            if (!barge) return both.insert(who, "barge", {{"name", some_name()}});
            return both.insert(who, "load", {{"load", some_name()}, {"barge", *barge}},
                               std::pair(*barge, some_name()));
        case 2:
            return barge ? both.set(who, "barge", *barge, 0, some_name()) : void();
        case 3:
            return barge && load ? both.set(who, "load", *load, barge_of, *barge) : void();
        case 4:
            return load ? both.strike(who, "load", *load) : void();
        case 5:
            return both.undo(who);
        case 6:
            return both.redo(who);
        default:
            return both.insert(who, "shift", {{"shift", some_name()}});
    }
}

}  // namespace

TEST_CASE("two people's logging, undo and redo leave the book as if kept by hand, now and at every entry") {
    CHECK(rc::check([] {
        Both both;
        const int steps = *rc::gen::inRange(10, 60);
        for (int i = 1; i <= steps; ++i) {
            do_something(both);
            both.hold(i % 8 == 0 || i == steps);
        }
        both.hold_past();
        RC_CLASSIFY(both.snaps.size() > 20, "over 20 entries");
    }));
}
