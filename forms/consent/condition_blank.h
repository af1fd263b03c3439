// SPDX-License-Identifier: GPL-3.0-or-later
// A sentence with blanks in it, as plain data: what stands between them, and which member of the condition
// each one holds.
#pragma once

#include <QLocale>
#include <nlohmann/json.hpp>
#include <optional>
#include <vector>

#include "forms/shared/choice_field.h"

namespace spoilbook::form {

using Draft = nlohmann::json;  ///< a condition as it would stand in consents.json, while it is written

enum class BlankHolds {
    number,
    latitude,  ///< in degrees, typed as positions are
    longitude,
    percent,  ///< kept as a fraction
    numbers,  ///< a list, each in per cent, kept as fractions
    text,
    texts,          ///< a list, typed with commas between
    word_or_texts,  ///< the same; one word of `choices` alone is kept as a text
    choice,
    truth,  ///< a choice of yes or nothing
    which   ///< which of several members stands: the keys of `choices`
};

struct Blank {
    std::string at;  ///< JSON pointer: /window/n; of `which` the object that holds one of the members
    QString name;    ///< what is read above the box
    BlankHolds holds = BlankHolds::text;
    std::vector<Choice> choices{};
    int chars = 8;  ///< about so wide

    [[nodiscard]] bool is_chosen() const {
        return holds == BlankHolds::choice || holds == BlankHolds::truth || holds == BlankHolds::which;
    }
};

struct Piece {
    QString words;
    std::optional<Blank> blank;
};

/// The sentence of the draft's kind, as far as it is known by what was chosen in it so far.
std::vector<Piece> pieces_of(const Draft& draft);
/// Which claims, grounds, … it is about.
std::vector<Piece> scope_pieces(const Draft& draft);
/// Its words, warnings, responses and what is open about it.
std::vector<Piece> word_pieces(const Draft& draft);

/// What the draft holds in a blank, as it is read in it; of a choice its key.
QString held_in(const Draft& draft, const Blank& blank, const QLocale& locale);
/// Puts what was typed there. What is no number stays as the text that it is: the check says so.
void put_in(Draft& draft, const Blank& blank, const QString& typed, const QLocale& locale);
/// Another kind: what every condition has stays, the members of the old kind go.
void change_kind(Draft& draft, const std::string& kind);
/// Without members that hold nothing.
Draft without_blanks(const Draft& draft);

/// "condition window.n" → "/window/n", as refusals name a member; "condition" alone → "", the whole.
std::string pointer_of(const std::string& where);

}  // namespace spoilbook::form
