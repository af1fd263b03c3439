// SPDX-License-Identifier: GPL-3.0-or-later
// The same document gives the same bytes, whoever prints it, and what it gives is a sound PDF.
#include <QFontDatabase>
#include <QString>
#include <catch2/catch.hpp>
#include <clocale>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

#include "forms/print/pdf_writer.h"
#include "forms/print/print_session.h"
#include "tests/form/print_pdf_reader.h"
#include "tests/form/print_sample/sample_document.h"

using namespace spoilbook::print;
namespace fs = std::filesystem;

namespace {

class Folder {
 public:
    Folder() {
        std::string name = (fs::temp_directory_path() / "spoilbook-print-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) {
            throw std::runtime_error("no temporary folder");
        }
        path = name;
    }
    ~Folder() {
        std::error_code ignored;
        fs::remove_all(path, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    fs::path path;
};

std::string bytes_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

int shell(const std::string& command) {
    return std::system(command.c_str());
}

bool installed(const std::string& program) {
    return shell("command -v " + program + " >/dev/null 2>&1") == 0;
}

const std::string sample = SPOILBOOK_BIN_DIR "/print_sample";

// The sample as a process of its own prints it, in an environment that holds `variables` and PATH alone.
std::string printed_under(const std::string& variables) {
    const Folder folder;
    const fs::path file = folder.path / "sample.pdf";
    const int status = shell("cd " + folder.path.string() + " && env -i PATH=/usr/bin:/bin " + variables +
                             " " + sample + " " + file.string() + " 66 2>" + (folder.path / "said").string());
    INFO(variables << ": " << bytes_of(folder.path / "said"));
    CHECK(status == 0);
    return bytes_of(file);
}

std::string as_string(const std::vector<unsigned char>& bytes) {
    return {bytes.begin(), bytes.end()};
}

}  // namespace

TEST_CASE("time zone, language, home and display change no byte", "[print]") {
    const std::string plain = printed_under("TZ=UTC LANG=C");
    REQUIRE(plain.size() > 10000);
    CHECK(printed_under("TZ=Pacific/Auckland LANG=de_DE.UTF-8 LC_ALL=de_DE.UTF-8") == plain);
    CHECK(printed_under("TZ=America/St_Johns LANG=tr_TR.UTF-8 HOME=/nowhere DISPLAY=:77") == plain);
    CHECK(printed_under("QT_SCALE_FACTOR=2 QT_FONT_DPI=192 QT_QPA_PLATFORM=xcb QT_QPA_PLATFORMTHEME=gtk3") ==
          plain);
    CHECK(printed_under("") == plain);
}

TEST_CASE("fonts and font rules of the machine change no byte", "[print]") {
    const Folder home;
    fs::create_directories(home.path / ".config/fontconfig");
    std::ofstream(home.path / ".config/fontconfig/fonts.conf")
        << "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig>"
           "<match target=\"pattern\"><edit name=\"family\" mode=\"assign\" "
           "binding=\"strong\"><string>DejaVu Serif</string>"
           "</edit></match><match target=\"font\"><edit name=\"embolden\" "
           "mode=\"assign\"><bool>true</bool></edit>"
           "<edit name=\"hintstyle\" mode=\"assign\"><const>hintfull</const></edit></match></fontconfig>";
    CHECK(printed_under("HOME=" + home.path.string()) == printed_under(""));
}

TEST_CASE("one process prints the same twice, as a process of its own does", "[print]") {
    const std::string other_process = printed_under("");
    {
        const PrintSession session;
        const std::string first = as_string(write_pdf(sample_document(66)));
        QFontDatabase::addApplicationFont(QStringLiteral("/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf"));
        CHECK(first == as_string(write_pdf(sample_document(66))));
        CHECK(first == other_process);
    }
    const PrintSession next;
    CHECK(as_string(write_pdf(sample_document(66))) == other_process);
}

TEST_CASE("every offset of a printed file points at its object", "[print]") {
    const PrintSession session;
    for (const int trips : {0, 1, 66, 400}) {
        Document document = sample_document(trips);
        document.title +=
            std::string(static_cast<std::size_t>(trips), 'x');  // longer and shorter dictionaries
        const std::string pdf = as_string(write_pdf(document));
        const auto table = test::xref_table(pdf);
        CHECK(table.offsets.size() + 1 == table.entries);
        CHECK(wrong_offsets(pdf, table) == 0);
        CHECK(pdf.find("/CreationDate (D:20260604220000Z)") != std::string::npos);
        CHECK(pdf.find("/ID") == std::string::npos);
    }
}

TEST_CASE("tools that are not ours read the file without complaint", "[print]") {
    const PrintSession session;
    const Folder folder;
    const fs::path file = folder.path / "return.pdf";
    const fs::path said = folder.path / "said";
    write_pdf(sample_document(66), file);
    if (installed("pdfinfo")) {
        CHECK(shell("TZ=UTC pdfinfo " + file.string() + " >" + said.string() + " 2>&1") == 0);
        const std::string answer = bytes_of(said);
        CHECK(answer.find("Error") == std::string::npos);
        CHECK(answer.find("Thu Jun  4 22:00:00 2026") != std::string::npos);
    }
    if (installed("pdftotext")) {
        CHECK(shell("pdftotext -layout " + file.string() + " " + said.string()) == 0);
        const std::string text = bytes_of(said);
        CHECK(text.find("Whānau") != std::string::npos);
        CHECK(text.find("−104.0") != std::string::npos);
        CHECK(text.find("24 310 m³") != std::string::npos);
        CHECK(text.find("Donaudampfschifffahrts") != std::string::npos);  // ff is two letters, not one sign
        CHECK(text.find("9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08") !=
              std::string::npos);
    }
    if (installed("qpdf")) {
        CHECK(shell("qpdf --check " + file.string() + " >/dev/null") == 0);
    }
}

TEST_CASE("a folder that cannot be written is told, and leaves nothing", "[print]") {
    const PrintSession session;
    CHECK_THROWS_AS(write_pdf(sample_document(1), "/nowhere/at/all.pdf"), fs::filesystem_error);
}

TEST_CASE("without a session printing is refused, and a missing platform plugin is named", "[print]") {
    CHECK_THROWS_AS(write_pdf(Document{}), std::logic_error);
    const Folder folder;
    fs::copy_file(sample, folder.path / "print_sample");
    std::ofstream(folder.path / "qt.conf") << "[Paths]\nPlugins=" << folder.path.string() << "\n";
    const std::string said = (folder.path / "said").string();
    CHECK(shell("env -i " + (folder.path / "print_sample").string() + " " + (folder.path / "x.pdf").string() +
                " 2>" + said) != 0);
    CHECK(bytes_of(said).find("libqoffscreen.so") != std::string::npos);
    CHECK(bytes_of(said).find("libqt6gui6") != std::string::npos);
}

TEST_CASE("printing leaves the language of the process as it was", "[print]") {
    const std::string before = std::setlocale(LC_ALL, nullptr);
    const PrintSession session;
    CHECK(std::setlocale(LC_ALL, nullptr) == before);
}
