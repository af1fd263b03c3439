// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <cstdio>

#include "app/command/evidence.h"
#include "app/command/over_dredge.h"
#include "app/command/pace.h"
#include "model/book/book_error.h"

namespace {

constexpr const char* caution =
    "Spoilbook keeps records and does arithmetic. It is not a stability or load-line computer, not an aid "
    "to\n"
    "navigation and not legal advice: the vessel's approved stability information, the master, the\n"
    "harbourmaster, the consent text and licensed practice prevail over anything it prints.";

int run(int argc, char** argv) {
    CLI::App program("sbk: the book of a harbour's dredging works, on the command line.\n" +
                     std::string(caution));
    program.require_subcommand(1);
    program.set_help_all_flag("--help-all", "help of every command");
    spoilbook::Options options;
    spoilbook::Task task;
    spoilbook::add_book_commands(program, options, task);
    spoilbook::add_figure_commands(program, options, task);
    spoilbook::add_compare_commands(program, options, task);
    spoilbook::add_track_command(program, options, task);
    spoilbook::add_check_command(program, options, task);
    spoilbook::add_duties_command(program, options, task);
    spoilbook::add_try_command(program, options, task);
    spoilbook::add_conditions_command(program, options, task);
    spoilbook::add_write_commands(program, options, task);
    spoilbook::add_journal_commands(program, options, task);
    spoilbook::add_return_commands(program, options, task);
    spoilbook::add_burndown_command(program, options, task);
    spoilbook::add_turbidity_commands(program, options, task);
    spoilbook::add_readings_command(program, options, task);
    spoilbook::add_pace_commands(program, options, task);
    spoilbook::add_over_dredge_command(program, options, task);
    spoilbook::add_evidence_commands(program, options, task);
    try {
        program.parse(argc, argv);
        return task ? task() : spoilbook::wrong_usage;
    } catch (const CLI::ParseError& error) {
        const int code = program.exit(error);
        return code == 0 ? spoilbook::answered : spoilbook::wrong_usage;
    }
}

}  // namespace

int main(int argc, char** argv) {
    try {
        return run(argc, argv);
    } catch (const std::exception& error) {
        // A broken file, disk or program: said plainly, never an empty end.
        fmt::print(stderr, "{}\n", error.what());
        return spoilbook::refused;
    }
}
