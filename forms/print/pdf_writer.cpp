// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/pdf_writer.h"

#include <QGuiApplication>
#include <QHashSeed>
#include <QSaveFile>
#include <stdexcept>
#include <string>
#include <system_error>

#include "forms/print/paginate.h"
#include "forms/print/paint.h"
#include "forms/print/pdf_info.h"
#include "forms/print/typeface.h"

namespace spoilbook::print {
namespace {

// Qt writes the fonts of a PDF in the order of a hash table, which goes by a seed that differs in each
// process.
class FixedHashSeed {
 public:
    FixedHashSeed() { QHashSeed::setDeterministicGlobalSeed(); }
    ~FixedHashSeed() { QHashSeed::resetRandomGlobalSeed(); }
    FixedHashSeed(const FixedHashSeed&) = delete;
    FixedHashSeed& operator=(const FixedHashSeed&) = delete;
};

std::string pdf_of(const Document& document) {
    if (qobject_cast<QGuiApplication*>(QCoreApplication::instance()) == nullptr) {
        throw std::logic_error("write_pdf needs a PrintSession");
    }
    const FixedHashSeed seed;
    const std::string painted = paint_pdf(paginate(document));
    const std::string title = printable(document.title).replace(u'\n', u' ').toStdString();
    return with_info(painted, PdfInfo{title, "Spoilbook", "Spoilbook", document.as_at_utc_ms});
}

}  // namespace

std::vector<unsigned char> write_pdf(const Document& document) {
    const std::string pdf = pdf_of(document);
    return {pdf.begin(), pdf.end()};
}

void write_pdf(const Document& document, const std::filesystem::path& file) {
    const std::string pdf = pdf_of(document);
    QSaveFile out(QString::fromStdString(file.string()));
    const auto size = static_cast<qint64>(pdf.size());
    if (!out.open(QIODevice::WriteOnly) || out.write(pdf.data(), size) != size || !out.commit()) {
        throw std::filesystem::filesystem_error(
            "the PDF cannot be written: " + out.errorString().toStdString(), file,
            std::make_error_code(std::errc::io_error));
    }
}

}  // namespace spoilbook::print
