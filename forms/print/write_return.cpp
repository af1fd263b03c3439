// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/write_return.h"

#include "forms/print/pdf_writer.h"
#include "forms/print/return_document.h"
#include "model/book/digest.h"
#include "model/return/return_files.h"

namespace spoilbook::print {

Checked<Done> write_return(const ReturnFacts& facts, const std::string& folder) {
    if (!facts.missing.empty()) {
        const Missing& first = facts.missing.front();
        return Refusal{"missing", first.where, first.what, {}};
    }
    std::map<std::string, std::string> files{{"return.json", return_json(facts)},
                                             {"trips.csv", trips_csv(facts)}};
    std::vector<std::pair<std::string, std::string>> digests;
    for (const auto& [name, bytes] : files)
        digests.emplace_back(name, hex_text(sha256(bytes)));
    const auto pdf = write_pdf(return_document(facts, digests));
    files["return.pdf"] = std::string(pdf.begin(), pdf.end());
    files["SHA256SUMS"] = sha256_sums(files);
    return write_return_folder(folder, files);
}

}  // namespace spoilbook::print
