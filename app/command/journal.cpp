// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "app/command/command.h"
#include "model/book/backup.h"
#include "model/book/journal.h"
#include "model/book/journal_check.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

Checked<Said> say_journal(const Options& options, const Book& book, bool check) {
    Said said;
    const auto bad = check ? check_journal(book) : std::nullopt;
    JournalState state;
    try {
        // What happened in the journal is its entries: as at an instant is known at it.
        Options point = options;
        if (point.known_at.empty()) point.known_at = point.as_at;
        const auto known = known_at_given(point, book);
        if (!known) return known.refusals();
        state = *known ? journal_state_at(book, **known) : journal_state(book);
    } catch (const std::exception&) {
        // A journal that cannot even be counted: the check has named what is wrong.
        if (!bad) throw;
    }
    said.json["entries"] = state.entries;
    said.json["devices"] = Json::array();
    for (const auto& device : state.devices) {
        said.json["devices"].push_back(
            {{"device", device.device}, {"entries", device.entries}, {"head", device.head}});
        said.text += fmt::format("{}: {} entries, head {}\n", device.device, device.entries, device.head);
    }
    said.json["head"] = state.head;
    said.json["state"] = !check ? "unchecked" : bad ? "broken" : "intact";
    said.json["first_bad"] = nullptr;
    said.text += fmt::format("head {}\n{}\n", state.head, said.json["state"].get<std::string>());
    if (!bad) return said;
    said.json["first_bad"] = {{"table", bad->table},
                              {"id", bad->id},
                              {"entry", bad->entry.empty() ? Json(nullptr) : Json(bad->entry)},
                              {"what", bad->what}};
    said.text += fmt::format("first bad: {} {} ({}): {}\n", bad->table, bad->id, bad->entry, bad->what);
    said.exit = refused;
    return said;
}

}  // namespace

void add_journal_commands(CLI::App& program, Options& options, Task& task) {
    auto* journal =
        add_command(program, options, "journal", "the record of every change, and whether it is whole");
    add_read_options(*journal, options);
    auto check = std::make_shared<bool>(false);
    journal->add_flag("--check", *check, "hold every table of the book against it");
    journal->callback([&options, &task, check] {
        task = [&options, check] {
            const auto book = Book::open_to_read(options.book);
            if (!book) return refuse(options, book.refusals());
            const auto said = say_journal(options, *book, *check);
            return said ? say(options, *said) : refuse(options, said.refusals());
        };
    });

    auto* backup = add_command(program, options, "backup", "copy the book and check the copy");
    auto to = std::make_shared<std::string>();
    backup->add_option("to", *to, "the new file")->required();
    backup->callback([&options, &task, to] {
        task = [&options, to] {
            const auto book = Book::open_to_read(options.book);
            if (!book) return refuse(options, book.refusals());
            const auto done = back_up(*book, *to);
            if (!done) return refuse(options, done.refusals());
            Said said;
            said.json = {{"backup", *to}, {"state", "intact"}};
            said.text = fmt::format("copied to {} and checked: intact\n", *to);
            return say(options, said);
        };
    });
}

}  // namespace spoilbook
