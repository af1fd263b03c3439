// SPDX-License-Identifier: GPL-3.0-or-later
// What is to be printed, as plain values: no Qt, no page, no font. All text is UTF-8; '\n' breaks a line.
// Numbers come as text, already rounded and grouped by whoever knows how; nothing is computed here.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace spoilbook::print {

/// The drawn shape beside a state word, told apart in black and white and by colour-blind eyes:
/// met = filled disc, near = triangle, passed = filled square, unknown = open ring.
enum class Mark { none, met, near, passed, unknown };

/// Level 1 opens a part, 2 a section, 3 a paragraph. Never stands alone at the foot of a page.
struct Heading {
    int level = 1;
    std::string text{};
};

enum class TextStyle { normal, small, caution };

/// A caution is set off from the text around it and carries a triangle.
struct Paragraph {
    std::string text{};
    TextStyle style = TextStyle::normal;
};

/// One number of the answer: label above, value and unit large, note and state word below.
struct KeyFigure {
    std::string label{};
    std::string value{};
    std::string unit{};
    std::string note{};
    std::string state{};
    Mark mark = Mark::none;
};

/// What the reader opened the paper for: one sentence and three to five figures, side by side.
struct Answer {
    std::string sentence{};
    std::vector<KeyFigure> figures{};
};

struct Fact {
    std::string label{};
    std::string value{};
    Mark mark = Mark::none;
};

/// Labels on the left, values on the right, one fact a row.
struct Facts {
    std::vector<Fact> facts{};
};

enum class Align { left, right, centre };

/// `weight` takes a share of the width that the contents leave over (none given: all columns in proportion).
/// `tabular` holds numbers, times and labels together: such a cell is broken only where no page could hold
/// it.
struct Column {
    std::string title{};
    std::string unit{};
    Align align = Align::left;
    double weight = 0;
    bool tabular = false;
    bool below = false;
};

/// The mark stands before the text, so that a state is word and shape.
struct Cell {
    std::string text;
    Mark mark = Mark::none;

    Cell() = default;
    Cell(std::string words, Mark shape = Mark::none) : text(std::move(words)), mark(shape) {}
    Cell(const char* words, Mark shape = Mark::none) : text(words), mark(shape) {}
};

using Row = std::vector<Cell>;

/// A row shorter than `columns` leaves the rest blank; longer is std::invalid_argument. An empty `total`
/// prints none; it never parts from the last row. With no rows `zero_rows_text` stands where they would be.
struct Table {
    std::string caption{};
    std::vector<Column> columns{};
    std::vector<Row> rows{};
    Row total{};
    std::string zero_rows_text = "None.";
    std::vector<std::string> notes{};
};

/// A rule to sign on. `value` (a name, an instant) stands on the rule, or nothing for a hand to fill in.
struct SignatureLine {
    std::string label{};
    std::string value{};
};

/// `hex` is set in a monospaced face without gaps, so that it can be copied; tone changes each 8 digits.
struct Digest {
    std::string label{};
    std::string hex{};
};

struct Signature {
    std::string statement{};
    std::vector<SignatureLine> lines{};
    std::vector<Digest> digests{};
};

/// A new page; all pages to the next PageBreak are landscape or portrait. Break without blocks prints
/// nothing.
struct PageBreak {
    bool landscape = false;
};

struct Block;

/// Blocks that share a page, where one page can hold them.
struct KeepTogether {
    std::vector<Block> blocks;
};

struct Block : std::variant<Heading, Paragraph, Answer, Facts, Table, Signature, PageBreak, KeepTogether> {
    using variant::variant;
};

/// `header_left`, `header_right` stand in the head of every page (consent, period, revision, as at), `footer`
/// in the foot beside "page N of M". `as_at_utc_ms`: ms since 1970 UTC, years 1 to 9999; the file's creation
/// date.
struct Document {
    std::string title{};
    std::string subtitle{};
    std::string header_left{};
    std::string header_right{};
    std::string footer{};
    std::int64_t as_at_utc_ms = 0;
    bool landscape = false;
    std::vector<Block> blocks{};
};

}  // namespace spoilbook::print
