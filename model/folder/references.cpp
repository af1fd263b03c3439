// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/references.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <nlohmann/json.hpp>

#include "model/folder/condition_members.h"
#include "model/folder/json_text.h"
#include "model/folder/nearest.h"

namespace spoilbook {

namespace {

/// The dredger of the shift that counted, else of the station's shift.
Id dredger_of_tally(const MatchBoard& board, const std::vector<Value>& tally) {
    Id shift = MatchBoard::reference(kind("tally"), tally, "shift");
    if (shift.is_nil()) {
        const auto* station = board.values("station", MatchBoard::reference(kind("tally"), tally, "station"));
        if (station != nullptr) shift = MatchBoard::reference(kind("station"), *station, "shift");
    }
    const auto* values = board.values("shift", shift);
    return values == nullptr ? Id{} : MatchBoard::reference(kind("shift"), *values, "dredger");
}

/// The parent within which a reference of this row is to be looked up; nil where the row says none.
Id parent_of(const MatchBoard& board, const Kind& of, const std::vector<Value>& values, const Field& field) {
    if (field.within.empty()) return {};
    const Id own = MatchBoard::reference(of, values, field.within);
    if (!own.is_nil()) return own;
    if (of.name == "tally") return dredger_of_tally(board, values);
    if (of.name != "release") return {};
    const auto* trip = board.values("trip", MatchBoard::reference(of, values, "trip"));
    return trip == nullptr ? Id{} : MatchBoard::reference(kind("trip"), *trip, field.within);
}

struct LookUp {
    MatchBoard& board;
    const GivenTable& table;
    const GivenRow& row;
    const Field& field;

    [[nodiscard]] std::string at() const { return where(table.file, row, field.name); }
    [[nodiscard]] KindShelf& shelf() const { return board.shelf(field.refers_to); }

    void refuse(std::string code, std::string what, std::string mend) const {
        board.complaints.refuse(table.file, {std::move(code), at(), std::move(what), std::move(mend)});
    }

    /// Bearers of PARENT/LABEL, for a label that several parents have. Either may have a slash of its own.
    [[nodiscard]] std::vector<Bearer> qualified(const std::string& label) const {
        const Kind& target = shelf().kind();
        std::vector<Bearer> found;
        if (target.label.size() < 2) return found;
        const Field& parent = target.field(target.label[1]);
        if (parent.type != FieldType::reference) return found;
        for (auto slash = label.find('/'); slash != std::string::npos; slash = label.find('/', slash + 1)) {
            for (const Bearer& over : board.shelf(parent.refers_to).bearers(label.substr(0, slash))) {
                for (const Bearer& bearer : shelf().bearers(label.substr(slash + 1))) {
                    if (bearer.parent == over.id) found.push_back(bearer);
                }
            }
        }
        return found;
    }

    [[nodiscard]] Value find(const std::string& label, const Id& parent) const {
        std::vector<Bearer> bearers = shelf().bearers(label);
        if (!parent.is_nil())
            std::erase_if(bearers, [&](const Bearer& bearer) { return bearer.parent != parent; });
        if (bearers.empty()) bearers = qualified(label);
        if (bearers.size() > 1) prefer_folder(bearers);
        if (bearers.size() == 1) return bearers.front().id;
        if (bearers.empty()) {
            refuse_unknown_label(label, parent);
        } else {
            refuse("ambiguous",
                   fmt::format("there are {} of the {} \"{}\"", bearers.size(), field.refers_to, label),
                   "say which: PARENT/LABEL");
        }
        return {};
    }

    /// Looked up in the folder, then in the book.
    void prefer_folder(std::vector<Bearer>& bearers) const {
        const auto& ids = board.ids[board.table_of(field.refers_to)];
        const auto in_folder = [&](const Bearer& bearer) {
            return std::find(ids.begin(), ids.end(), bearer.id) != ids.end();
        };
        if (std::any_of(bearers.begin(), bearers.end(), in_folder))
            std::erase_if(bearers, std::not_fn(in_folder));
    }

    void refuse_unknown_label(const std::string& label, const Id& parent) const {
        const Kind& target = shelf().kind();
        // The row may well stand there, in what could not be read.
        if (board.complaints.lost_rows(target.file)) return;
        if (board.complaints.full(table.file)) return refuse("unknown-reference", label, "");
        const std::string parent_name =
            parent.is_nil() ? "" : board.label(target.field(target.label[1]).refers_to, parent);
        const std::string of_parent = parent_name.empty() ? "" : " of " + parent_name;
        const std::string nearest = nearest_name(label, shelf().labels());
        refuse("unknown-reference",
               fmt::format("\"{}\" is no {}{} of the folder or the book", label, target.name, of_parent),
               nearest.empty() || nearest == label ? fmt::format("add it to {}", target.file)
                                                   : fmt::format("did you mean {}?", nearest));
    }
};

void resolve_field(MatchBoard& board, std::size_t table, std::size_t row, std::size_t index) {
    GivenTable& given = board.contents.tables[table];
    GivenRow& target = given.rows[row];
    const Field& field = given.kind->fields[index];
    const auto* label = std::get_if<std::string>(&target.values[index]);
    if (field.type != FieldType::reference || label == nullptr) return;
    const Id parent = parent_of(board, *given.kind, target.values, field);
    target.values[index] = LookUp{board, given, target, field}.find(std::string(*label), parent);
}

bool lies_in_lost_rows(MatchBoard& board, const NamedInCondition& named) {
    const char* kind_of_it = named.kind == "plant" ? "barge" : named.kind.c_str();
    return board.complaints.lost_rows(board.shelf(kind_of_it).kind().file);
}

bool is_known(MatchBoard& board, const NamedInCondition& named) {
    if (named.kind != "plant") return !board.shelf(named.kind).bearers(named.name).empty();
    constexpr std::array plant{"dredger", "tug", "barge"};
    return std::any_of(plant.begin(), plant.end(),
                       [&](const char* one) { return !board.shelf(one).bearers(named.name).empty(); });
}

}  // namespace

void resolve_references(MatchBoard& board, std::size_t table, std::size_t row) {
    const auto& fields = board.contents.tables[table].kind->fields;
    // A parent may stand behind the field that needs it.
    for (const bool within : {false, true}) {
        for (std::size_t i = 0; i < fields.size(); ++i) {
            if (fields[i].within.empty() != within) resolve_field(board, table, row, i);
        }
    }
}

std::optional<std::string> reference_text(MatchBoard& board, const Kind& of, const std::vector<Value>& values,
                                          const Field& field) {
    const Id id = MatchBoard::reference(of, values, field.name);
    const auto* target = board.values(field.refers_to, id);
    if (target == nullptr) return std::nullopt;
    const Kind& kind_of_target = board.shelf(field.refers_to).kind();
    const std::string label = board.label(field.refers_to, id);
    const Id parent = parent_of(board, of, values, field);
    std::vector<Bearer> bearers = board.shelf(field.refers_to).bearers(label);
    if (!parent.is_nil())
        std::erase_if(bearers, [&](const Bearer& bearer) { return bearer.parent != parent; });
    if (bearers.size() == 1 && bearers.front().id == id) return label;
    if (kind_of_target.label.size() < 2) return label;
    const Field& parent_field = kind_of_target.field(kind_of_target.label[1]);
    if (parent_field.type != FieldType::reference) return label;
    const Id own_parent = MatchBoard::reference(kind_of_target, *target, parent_field.name);
    return fmt::format("{}/{}", board.label(parent_field.refers_to, own_parent), label);
}

void check_names_in_condition(MatchBoard& board, const GivenTable& table, const GivenRow& row) {
    const std::string body = text_of(*table.kind, row.values, "body");
    if (body.empty()) return;
    for (const NamedInCondition& named : names_in(nlohmann::json::parse(body, nullptr, false))) {
        if (is_known(board, named) || lies_in_lost_rows(board, named)) continue;
        const std::string at = where(table.file, row, named.path);
        const std::string what =
            fmt::format("\"{}\" is no {} of the folder or the book", named.name, named.kind);
        if (named.kind == "site" || named.kind == "plant") {
            if (board.noted_names.insert(named.kind + named.name).second) board.complaints.note(at, what);
            continue;
        }
        const std::string nearest = nearest_name(named.name, board.shelf(named.kind).labels());
        board.complaints.refuse(table.file, {"unknown-reference", at, what,
                                             nearest.empty() ? "add it, or correct the condition"
                                                             : fmt::format("did you mean {}?", nearest)});
    }
}

void check_opening(MatchBoard& board, const GivenTable& table, const GivenRow& row) {
    const std::string number = text_of(*table.kind, row.values, "condition");
    const Id consent = MatchBoard::reference(*table.kind, row.values, "consent");
    if (number.empty() || consent.is_nil()) return;
    const auto& bearers = board.shelf("condition").bearers(number);
    const bool known = std::any_of(bearers.begin(), bearers.end(),
                                   [&](const Bearer& bearer) { return bearer.parent == consent; });
    if (known || board.complaints.lost_rows(board.shelf("condition").kind().file)) return;
    board.complaints.refuse(table.file, {"unknown-reference", where(table.file, row, "condition"),
                                         fmt::format("consent {} has no condition \"{}\"",
                                                     board.label("consent", consent), number),
                                         did_you_mean(number, board.shelf("condition").labels())});
}

}  // namespace spoilbook
