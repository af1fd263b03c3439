// SPDX-License-Identifier: GPL-3.0-or-later
// print_sample FILE [TRIPS]: prints the sample, for tests that compare the bytes of separate processes.
#include <cstdlib>
#include <exception>
#include <iostream>

#include "forms/print/pdf_writer.h"
#include "forms/print/print_session.h"
#include "tests/form/print_sample/sample_document.h"

int main(int argc, char** argv) {
    if (argc < 2) {
        std::cerr << "print_sample FILE [TRIPS]\n";
        return 2;
    }
    try {
        const spoilbook::print::PrintSession session;
        const int trips = argc > 2 ? std::atoi(argv[2]) : 66;
        spoilbook::print::write_pdf(spoilbook::print::sample_document(trips), argv[1]);
        return 0;
    } catch (const std::exception& error) {
        std::cerr << error.what() << '\n';
        return 1;
    }
}
