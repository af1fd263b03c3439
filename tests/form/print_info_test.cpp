// SPDX-License-Identifier: GPL-3.0-or-later
// The date inside a PDF is the as-at of the return, and the file stays whole around it.
#include <catch2/catch.hpp>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <vector>

#include "forms/print/font_name.h"
#include "forms/print/pdf_info.h"
#include "tests/form/print_pdf_reader.h"

using namespace spoilbook::print;
using test::wrong_offsets;
using test::xref_table;

namespace {

// Three objects, the information dictionary the second; `filling` makes that longer or shorter.
std::string small_pdf(const std::string& filling) {
    std::string pdf = "%PDF-1.4\n";
    std::vector<std::size_t> offsets;
    const std::vector<std::string> objects{"<< /Type /Catalog >>",
                                           "<< /CreationDate (D:20300101000000Z) " + filling + ">>",
                                           "<< /Length 9 >>\nstream\n/Info 1 0\nendstream"};
    for (std::size_t i = 0; i < objects.size(); ++i) {
        offsets.push_back(pdf.size());
        pdf += std::to_string(i + 1) + " 0 obj\n" + objects[i] + "\nendobj\n";
    }
    const std::size_t table = pdf.size();
    pdf += "xref\n0 4\n0000000000 65535 f \n";
    for (const std::size_t offset : offsets) {
        const std::string digits = std::to_string(offset);
        pdf += std::string(10 - digits.size(), '0') + digits + " 00000 n \n";
    }
    return pdf + "trailer\n<< /Size 4 /Info 2 0 R /Root 1 0 R >>\nstartxref\n" + std::to_string(table) +
           "\n%%EOF\n";
}

const PdfInfo info{"Return for May 2026", "Spoilbook", "Spoilbook", 1780610400000};

}  // namespace

TEST_CASE("the creation date is the as-at in UTC", "[print]") {
    // 1780610400 s is 2026-06-04T22:00:00Z. COMP: date -u -d @1780610400
    CHECK(with_info(small_pdf(""), info).find("/CreationDate (D:20260604220000Z)") != std::string::npos);
    CHECK(with_info(small_pdf(""), info).find("20300101") == std::string::npos);
    PdfInfo before_1970 = info;
    before_1970.as_at_utc_ms = -1;
    CHECK(with_info(small_pdf(""), before_1970).find("(D:19691231235959Z)") != std::string::npos);
}

TEST_CASE("offsets behind a longer, a shorter and an equal dictionary all point at their objects",
          "[print]") {
    const std::string once = with_info(small_pdf(""), info);
    const std::string again = with_info(once, info);
    const std::string shorter = with_info(small_pdf("/Keywords (" + std::string(900, 'x') + ") "), info);
    CHECK(once.size() > small_pdf("").size());
    CHECK(again == once);
    CHECK(shorter == once);
    for (const std::string& pdf : {small_pdf(""), once, shorter}) {
        const auto table = xref_table(pdf);
        CHECK(table.offsets.size() == 3);
        CHECK(wrong_offsets(pdf, table) == 0);
    }
}

TEST_CASE("a title in any script is written as UTF-16", "[print]") {
    PdfInfo maori = info;
    maori.title = "Ō m³ 𝄞";
    // Ō U+014C, blank, m, ³ U+00B3, blank, U+1D11E as a surrogate pair D834 DD1E. MEM: Unicode charts
    CHECK(with_info(small_pdf(""), maori).find("/Title <FEFF014C0020006D00B30020D834DD1E>") !=
          std::string::npos);
}

TEST_CASE("a file that is not as Qt writes it is refused", "[print]") {
    CHECK_THROWS_AS(with_info("", info), std::runtime_error);
    CHECK_THROWS_AS(with_info("startxref\n99999\n%%EOF\n", info), std::runtime_error);
    const std::string whole = small_pdf("");
    for (std::size_t length = 0; length < whole.size() - 8; length += 3) {
        CHECK_THROWS_AS(with_info(whole.substr(0, length), info), std::runtime_error);
    }
}

TEST_CASE("an as-at outside the years 1 to 9999 is refused", "[print]") {
    PdfInfo late = info;
    late.as_at_utc_ms = INT64_MAX;
    CHECK_THROWS_AS(with_info(small_pdf(""), late), std::out_of_range);
    late.as_at_utc_ms = INT64_MIN;
    CHECK_THROWS_AS(with_info(small_pdf(""), late), std::out_of_range);
}

TEST_CASE("a typeface is renamed in its name table alone, and refused where it is cut short", "[print]") {
    // A header with one table: name, at 28, 18 bytes long; then a byte string outside of it.
    std::string font("\0\1\0\0\0\1\0\0\0\0\0\0name\0\0\0\0\0\0\0\x1c\0\0\0\x12", 28);
    font += std::string("\0O\0p\0e\0n", 8) + "Open Sans " + "Open Sans";
    const std::string renamed = rename_family(font, "Open Sans", "SpoilText");
    CHECK(renamed.find("SpoilText ") == 36);
    CHECK(renamed.substr(46) == "Open Sans");
    CHECK_THROWS_AS(rename_family(font.substr(0, 30), "Open Sans", "SpoilText"), std::runtime_error);
    CHECK_THROWS_AS(rename_family("", "Open Sans", "SpoilText"), std::runtime_error);
    CHECK_THROWS_AS(rename_family(font, "Open Sans", "Short"), std::invalid_argument);
}
