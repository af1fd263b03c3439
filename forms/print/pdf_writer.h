// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <vector>

#include "forms/print/document.h"

namespace spoilbook::print {

/// The document as a PDF 1.4 file. The same document gives the same bytes: in any time zone, locale, folder
/// or screen, and however often it is printed. Needs a PrintSession or a running QGuiApplication, and that no
/// other thread makes hash tables' seeds meanwhile. Throws std::invalid_argument for a document that cannot
/// be set (see document.h), std::out_of_range for an as-at outside the years 1 to 9999, std::logic_error
/// without a session, std::runtime_error if Qt fails.
std::vector<unsigned char> write_pdf(const Document& document);

/// The same into a file, which is there whole or not at all. Throws also std::filesystem::filesystem_error.
void write_pdf(const Document& document, const std::filesystem::path& file);

}  // namespace spoilbook::print
