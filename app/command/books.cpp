// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "app/command/command.h"
#include "model/book/open.h"
#include "model/folder/export_folder.h"
#include "model/folder/import_folder.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

Said say_import(const ImportOutcome& outcome) {
    print_notes(outcome.notes);
    Said said;
    said.json["added"] = Json::object();
    for (const auto& [kind, n] : outcome.added)
        said.json["added"][kind] = n;
    said.json["already_held"] = Json::object();
    for (const auto& [kind, n] : outcome.already_held)
        said.json["already_held"][kind] = n;
    said.json["notes"] = Json::array();
    for (const auto& note : outcome.notes)
        said.json["notes"].push_back({{"where", note.where}, {"what", note.what}});
    said.json["entry"] = outcome.entry ? Json(name_text(*outcome.entry)) : Json(nullptr);
    said.text = fmt::format("{} rows added, {} already held, {} noted\n", outcome.added_in_all(),
                            outcome.already_held_in_all(), outcome.notes.size());
    return said;
}

int make_from(const Options& options, const std::string& folder) {
    Said said;
    const auto made = make_book(options.book, device_of(options), [&](Book& book) -> Checked<Done> {
        const auto outcome = import_folder(book, folder, act_of(options, EntryKind::import));
        if (!outcome) return outcome.refusals();
        said = say_import(*outcome);
        return Done{};
    });
    return made ? say(options, said) : refuse(options, made.refusals());
}

}  // namespace

void add_book_commands(CLI::App& program, Options& options, Task& task) {
    auto folder = std::make_shared<std::string>();
    auto* make = add_command(program, options, "new", "make a book from a folder of plain files");
    add_write_options(*make, options);
    make->add_option("--from", *folder, "the folder")->required();
    make->callback(
        [&options, &task, folder] { task = [&options, folder] { return make_from(options, *folder); }; });

    auto* add = add_command(program, options, "add", "add the rows of a folder to a book");
    add_write_options(*add, options);
    add->add_option("--from", *folder, "the folder")->required();
    add->callback([&options, &task, folder] {
        task = [&options, folder] {
            return write_book(options, [&](Book& book) -> Checked<Said> {
                const auto outcome = import_folder(book, *folder, act_of(options, EntryKind::import));
                if (!outcome) return outcome.refusals();
                return say_import(*outcome);
            });
        };
    });

    auto* write_out = add_command(program, options, "export", "write a book out as a folder of plain files");
    add_read_options(*write_out, options);
    write_out->add_option("--to", *folder, "a folder that is new or empty")->required();
    write_out->callback([&options, &task, folder] {
        task = [&options, folder] {
            const auto book = Book::open_to_read(options.book);
            if (!book) return refuse(options, book.refusals());
            const auto copy = book_then(options, *book, AsAt::rows);
            if (!copy) return refuse(options, copy.refusals());
            const auto done = export_folder(*copy ? **copy : *book, *folder);
            if (!done) return refuse(options, done.refusals());
            print_notes(done->notes);
            Said said;
            said.json = {{"exported", *folder}};
            said.text = fmt::format("written to {}\n", *folder);
            return say(options, said);
        };
    });
}

}  // namespace spoilbook
