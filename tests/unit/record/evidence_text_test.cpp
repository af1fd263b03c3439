// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/evidence_text.h"

#include <catch2/catch.hpp>

using namespace spoilbook;

namespace {

const std::string digest_a(64, 'a');
const std::string digest_7(64, '7');

}  // namespace

TEST_CASE("words and kept files stand beside each other in one text", "[evidence]") {
    std::string text = "letter 4, acknowledged; by hand";
    text = with_evidence_file(text, {"receipt.pdf", digest_a});
    text = with_evidence_file(text, {"photo of the board.jpg", digest_7});
    CHECK(text == "letter 4, acknowledged; by hand; receipt.pdf sha256:" + digest_a +
                      "; photo of the board.jpg sha256:" + digest_7);
    CHECK(evidence_files(text) ==
          std::vector<EvidenceFile>{{"receipt.pdf", digest_a}, {"photo of the board.jpg", digest_7}});
    CHECK(evidence_words(text) == "letter 4, acknowledged; by hand; receipt.pdf; photo of the board.jpg");
}

TEST_CASE("the same file is named once, another of its name beside it", "[evidence]") {
    const auto once = with_evidence_file("", {"receipt.pdf", digest_a});
    CHECK(with_evidence_file(once, {"receipt.pdf", digest_a}) == once);
    CHECK(evidence_files(with_evidence_file(once, {"receipt.pdf", digest_7})).size() == 2);
}

TEST_CASE("what only looks like a digest is words", "[evidence]") {
    for (const std::string& text :
         {std::string(), std::string("a sha256:12"), "a sha256:" + std::string(64, 'G'), "sha256:" + digest_a,
          " sha256:" + digest_a, "a sha256:" + digest_a + "b", "a  sha256 " + digest_a}) {
        CAPTURE(text);
        CHECK(evidence_files(text).empty());
        CHECK(evidence_words(text) == text);
    }
}
