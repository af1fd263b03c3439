// SPDX-License-Identifier: GPL-3.0-or-later
// For the files that write a kind's sentence, piece by piece.
#pragma once

#include <QCoreApplication>

#include "forms/consent/condition_blank.h"

namespace spoilbook::form {

inline QString piece_tr(const char* text) {
    return QCoreApplication::translate("ConditionBlanks", text);
}

class PieceList {
 public:
    explicit PieceList(const Draft& draft) : draft_(draft) {}

    PieceList& words(const char* text) { return pieces_.push_back({piece_tr(text), std::nullopt}), *this; }
    PieceList& blank(Blank blank) { return pieces_.push_back({{}, std::move(blank)}), *this; }
    PieceList& number(const char* at, const char* name, int chars = 7) {
        return blank({at, piece_tr(name), BlankHolds::number, {}, chars});
    }
    PieceList& percent(const char* at, const char* name) {
        return blank({at, piece_tr(name), BlankHolds::percent, {}, 6});
    }
    PieceList& text(const std::string& at, const char* name, int chars = 16) {
        return blank({at, piece_tr(name), BlankHolds::text, {}, chars});
    }
    PieceList& texts(const char* at, const char* name, int chars = 18) {
        return blank({at, piece_tr(name), BlankHolds::texts, {}, chars});
    }
    /// `keys` and what is read for each, in pairs. The first may be blank: not said.
    PieceList& choice(const std::string& at, const char* name, std::initializer_list<const char*> pairs,
                      BlankHolds holds = BlankHolds::choice) {
        std::vector<Choice> choices;
        for (auto key = pairs.begin(); key != pairs.end(); key += 2)
            choices.push_back({QString::fromUtf8(*key), piece_tr(*(key + 1))});
        return blank({at, piece_tr(name), holds, std::move(choices), 14});
    }
    [[nodiscard]] bool has(const char* at) const { return draft_.contains(Draft::json_pointer(at)); }
    [[nodiscard]] bool is(const char* at, const char* value) const {
        return has(at) && draft_.at(Draft::json_pointer(at)) == value;
    }
    [[nodiscard]] std::vector<Piece> take() { return std::move(pieces_); }

 private:
    const Draft& draft_;
    std::vector<Piece> pieces_;
};

void add_quantity(PieceList& list);
void add_place(PieceList& list);
void add_time(PieceList& list);
void add_series(PieceList& list);
void add_surface(PieceList& list);
void add_duty(PieceList& list);
void add_watch(PieceList& list);
void add_record(PieceList& list);

}  // namespace spoilbook::form
