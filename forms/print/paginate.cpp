// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/paginate.h"

#include <cstddef>

#include "forms/print/frame.h"
#include "forms/print/lines.h"
#include "forms/print/set_blocks.h"

namespace spoilbook::print {
namespace {

// Fills pages of one section from top to bottom.
class Filler {
 public:
    Filler(const Frame& frame, std::vector<Page>& pages) : frame_(frame), pages_(pages) {}

    void fill(const Pieces& pieces);

 private:
    std::size_t chain_end(const Pieces& pieces, std::size_t from, Keep weakest) const;
    double height_of(const Pieces& pieces, std::size_t from, std::size_t to, bool at_top) const;
    bool fits(const Pieces& pieces, std::size_t from, std::size_t to) const;
    bool fits_empty_page(const Pieces& pieces, std::size_t from, std::size_t to) const;
    void open_page(const Pieces& pieces, std::size_t next);
    void place(const Piece& piece);
    void add(const std::vector<Op>& ops);
    double left_over() const { return frame_.room.height - y_; }

    const Frame& frame_;
    std::vector<Page>& pages_;
    double y_ = 0;
    bool at_top_ = true;  // nothing but a repeated head is on the page
};

bool goes_on(const Pieces& pieces, std::size_t next) {
    return next > 0 && next < pieces.size() && pieces[next].table &&
           pieces[next - 1].table == pieces[next].table;
}

// One past the last piece that may not be parted from `from`, counting what binds at least as much as
// `weakest`.
std::size_t Filler::chain_end(const Pieces& pieces, std::size_t from, Keep weakest) const {
    std::size_t end = from + 1;
    while (end < pieces.size() && pieces[end - 1].keep >= weakest) {
        ++end;
    }
    return end;
}

double Filler::height_of(const Pieces& pieces, std::size_t from, std::size_t to, bool at_top) const {
    double height = 0;
    for (std::size_t i = from; i < to; ++i) {
        height += pieces[i].height + (at_top && i == from ? 0 : pieces[i].space_before);
    }
    // Where the table goes on behind this, its foot needs room too.
    return goes_on(pieces, to) ? height + pieces[to].table->foot_height : height;
}

bool Filler::fits(const Pieces& pieces, std::size_t from, std::size_t to) const {
    constexpr double rounding = 1e-6;
    return height_of(pieces, from, to, at_top_) <= left_over() + rounding;
}

bool Filler::fits_empty_page(const Pieces& pieces, std::size_t from, std::size_t to) const {
    const double head = goes_on(pieces, from) ? pieces[from].table->head_height : 0;
    return height_of(pieces, from, to, true) <= frame_.room.height - head;
}

void Filler::add(const std::vector<Op>& ops) {
    const std::vector<Op> here = moved(ops, frame_.left, frame_.top + y_);
    pages_.back().ops.insert(pages_.back().ops.end(), here.begin(), here.end());
}

void Filler::open_page(const Pieces& pieces, std::size_t next) {
    const bool parts_table = goes_on(pieces, next);
    if (parts_table) {
        add(pieces[next].table->foot);
    }
    pages_.push_back(Page{frame_.landscape, frame_.ops});
    y_ = 0;
    at_top_ = true;
    if (parts_table && pieces[next].table->head_height < frame_.room.height / 2) {
        add(pieces[next].table->head);
        y_ += pieces[next].table->head_height;
    }
}

void Filler::place(const Piece& piece) {
    y_ += at_top_ ? 0 : piece.space_before;
    add(piece.ops);
    if (at_top_) {
        add(piece.ops_at_top);
    }
    y_ += piece.height;
    at_top_ = false;
}

void Filler::fill(const Pieces& pieces) {
    pages_.push_back(Page{frame_.landscape, frame_.ops});
    std::size_t next = 0;
    while (next < pieces.size()) {
        std::size_t end = chain_end(pieces, next, Keep::together);
        if (!fits(pieces, next, end) && !fits_empty_page(pieces, next, end)) {
            end = chain_end(pieces, next, Keep::bound);
        }
        if (!fits(pieces, next, end) && !fits_empty_page(pieces, next, end)) {
            end = next + 1;
        }
        if (!fits(pieces, next, end) && !at_top_) {
            open_page(pieces, next);
            continue;
        }
        for (; next < end; ++next) {
            place(pieces[next]);
        }
    }
}

struct Section {
    bool landscape = false;
    std::vector<const Block*> blocks;
};

std::vector<Section> sections_of(const Document& document) {
    std::vector<Section> sections{Section{document.landscape, {}}};
    for (const Block& block : document.blocks) {
        if (const auto* page_break = std::get_if<PageBreak>(&block)) {
            sections.push_back(Section{page_break->landscape, {}});
        } else {
            sections.back().blocks.push_back(&block);
        }
    }
    return sections;
}

}  // namespace

std::vector<Page> paginate(const Document& document) {
    const Frame portrait = frame_of(document, false);
    const Frame landscape = frame_of(document, true);
    std::vector<Page> pages;
    bool first = true;
    for (const Section& section : sections_of(document)) {
        const Frame& frame = section.landscape ? landscape : portrait;
        Pieces pieces = first ? set_title(document, frame.room) : Pieces{};
        first = false;
        for (const Block* block : section.blocks) {
            const Pieces more = set_block(*block, frame.room);
            pieces.insert(pieces.end(), more.begin(), more.end());
        }
        if (!pieces.empty()) {
            Filler(frame, pages).fill(pieces);
        }
    }
    if (pages.empty()) {
        pages.push_back(Page{document.landscape, (document.landscape ? landscape : portrait).ops});
    }
    for (std::size_t i = 0; i < pages.size(); ++i) {
        add_number(pages[i], pages[i].landscape ? landscape : portrait, i + 1, pages.size());
    }
    return pages;
}

}  // namespace spoilbook::print
