// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/sample_quantile.h"

#include <catch2/catch.hpp>

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

TEST_CASE("a percentile is the one of the nine definitions that the condition names") {
    const std::vector<double> ten{1.2, 1.9, 2.4, 3.1, 3.3, 4.8, 5.0, 6.7, 8.2, 14.5};
    const std::vector<double> five{1, 2, 3, 4, 5};
    struct Row {
        const char* id;
        int type;
        const std::vector<double>* numbers;
        double p, expected;
    };
    // Hyndman and Fan 1996, Am. Stat. 50(4):361-365; COMP with R 4.2.2 quantile(x, p, type).
    const Row rows[] = {
        {"TB-10", 2, &ten, 0.5, 4.05},     {"TB-11", 3, &ten, 0.5, 3.3},
        {"TB-13", 5, &ten, 0.5, 4.05},     {"TB-15", 7, &ten, 0.5, 4.05},
        {"TB-16", 8, &ten, 0.5, 4.05},     {"TB-17", 9, &ten, 0.5, 4.05},
        {"TB-18", 1, &ten, 0.8, 6.7},      {"TB-19", 2, &ten, 0.8, 7.45},
        {"TB-20", 3, &ten, 0.8, 6.7},      {"TB-22", 5, &ten, 0.8, 7.45},
        {"TB-23", 6, &ten, 0.8, 7.9},      {"TB-26", 9, &ten, 0.8, 7.5625},
        {"TB-27", 1, &ten, 0.95, 14.5},    {"TB-30", 4, &ten, 0.95, 11.35},
        {"TB-31", 5, &ten, 0.95, 14.5},    {"TB-32", 6, &ten, 0.95, 14.5},
        {"TB-33", 7, &ten, 0.95, 11.665},  {"TB-34", 8, &ten, 0.95, 14.5},
        {"TB-35", 9, &ten, 0.95, 14.5},    {"TB-36", 1, &five, 0.25, 2},
        {"TB-37", 2, &five, 0.25, 2},      {"TB-38", 3, &five, 0.25, 1},
        {"TB-40", 5, &five, 0.25, 1.75},   {"TB-41", 6, &five, 0.25, 1.5},
        {"TB-42", 7, &five, 0.25, 2},      {"TB-43", 8, &five, 0.25, 1.6666666667},
        {"TB-44", 9, &five, 0.25, 1.6875},
    };
    for (const Row& row : rows) {
        INFO(row.id << " type " << row.type << " p " << row.p);
        CHECK_THAT(sample_quantile(*row.numbers, row.p, row.type), WithinAbs(row.expected, 1e-9));
        SortedWindow window;
        for (const double number : *row.numbers)
            window.insert(number);
        CHECK_THAT(sample_quantile(window, row.p, row.type), WithinAbs(row.expected, 1e-9));
    }
}

TEST_CASE("the ends of a sample are its least and greatest number under every definition") {
    for (int type = 1; type <= 9; ++type) {
        CHECK(sample_quantile({3, 1, 2}, 0, type) == 1);
        CHECK(sample_quantile({3, 1, 2}, 1, type) == 3);
        CHECK(sample_quantile({7}, 0.3, type) == 7);
    }
}
