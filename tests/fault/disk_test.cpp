// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/book/backup.h"
#include "model/book/book_error.h"
#include "model/book/digest.h"
#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "tests/fault/failing_disk.h"
#include "tests/support/full_book.h"
#include "tests/support/temp_folder.h"

using namespace spoilbook;
using namespace spoilbook::tests;
namespace fs = std::filesystem;

namespace {

/// What came of one change under a failing disk.
struct Outcome {
    bool acknowledged = false;
    bool says_nothing_written = false;
};

class Scene {
 public:
    Scene() {
        auto book = Book::create(first_, "wheelhouse");
        season_ = log_tiny_season(*book);
    }

    /// A load, its trip and a file in one change, the change of a remark, and an undo of that, the disk
    /// failing as told. Answers whether the fault struck at all.
    bool play(const Fault& fault) {
        CAPTURE(static_cast<int>(fault.what), fault.at, fault.lasting);
        for (const char* tail : {"-wal", "-shm", "-lock"})
            fs::remove(path_ + tail);
        fs::copy_file(first_, path_, fs::copy_options::overwrite_existing);
        outcomes_.clear();
        bool struck = false;
        {
            auto book = Book::open_to_write(path_, "wheelhouse", by("Ana"));
            REQUIRE(book);
            disk_.fail(fault);
            attempt([&] { return log_trip(*book); });
            attempt([&] {
                return set_field(*book, by("Ana", 201), "trip", season_.trip, "remarks",
                                 std::string("swell"));
            });
            // Without the remark, undo would take back the trip.
            if (outcomes_.back().acknowledged) attempt([&] { return undo(*book, by("Ana", 202)); });
            keep_as_after_a_crash();
        }  // closed with the disk as it is
        struck = disk_.has_failed();
        disk_.mend();
        hold(path_, false);
        hold(crashed_, true);
        return struck;
    }

 private:
    Checked<std::optional<EntryName>> log_trip(Book& book) {
        return book.change(by("Ana", 200), [&](Change& change) -> Checked<Done> {
            const auto put = [&](const char* name, const Fields& fields) {
                return change.insert(kind(name), values_of(kind(name), fields));
            };
            const Id load = put("load", {{"load", "L2"}});
            put("trip", {{"trip", "T2"}, {"load", load}, {"remarks", std::string(6000, 'r')}});
            change.keep(unlike_itself(9000)).value();
            return Done{};
        });
    }

    template <class F>
    void attempt(F&& what) {
        Outcome outcome;
        try {
            outcome.acknowledged = what().ok();
            CHECK(outcome.acknowledged);
        } catch (const BookError& error) {
            const std::string text = error.what();
            CAPTURE(text);
            outcome.says_nothing_written = text.find("nothing was written") != std::string::npos;
            const bool says_to_look = text.find("look in the journal") != std::string::npos;
            CHECK((outcome.says_nothing_written || says_to_look));
            CHECK(text.find(path_) == 0);
            CHECK((text.find("disk") != std::string::npos || text.find("full") != std::string::npos));
        }
        outcomes_.push_back(outcome);
    }

    void keep_as_after_a_crash() {
        for (const char* tail : {"", "-wal"}) {
            fs::remove(crashed_ + tail);
            if (fs::exists(path_ + tail)) fs::copy_file(path_ + tail, crashed_ + tail);
        }
    }

    void hold(const std::string& path, bool crash) {
        CAPTURE(crash);
        auto book = Book::open_to_write(path, "wheelhouse", by("Ana"));
        REQUIRE(book);
        const auto bad = check_journal(*book);
        if (bad) FAIL_CHECK(bad->table << " " << bad->id << ": " << bad->what);
        const bool load = book->labelled(kind("load"), "L2").has_value();
        const auto trip = book->labelled(kind("trip"), "T2");
        CHECK(load == trip.has_value());
        CHECK(book->material(hex_text(sha256(unlike_itself(9000)))).has_value() == load);
        std::int64_t held = 0;
        for (std::int64_t seq = 7; find_entry(*book, {"wheelhouse", seq}); ++seq)
            ++held;
        std::int64_t acknowledged = 0;
        for (const auto& outcome : outcomes_)
            acknowledged += outcome.acknowledged ? 1 : 0;
        CHECK(held >= acknowledged);
        if (outcomes_[0].acknowledged) CHECK(load);
        if (outcomes_[0].says_nothing_written) CHECK_FALSE(load);
        // The book goes on: what failed can be logged again.
        const auto again = book->change(by("Ana", 300), [&](Change& change) -> Checked<Done> {
            change.insert(kind("tug"), values_of(kind("tug"), {{"name", "Kea"}}));
            return Done{};
        });
        CHECK(again);
    }

    TempFolder folder_;
    std::string first_ = folder_.file("first.sbook");
    std::string path_ = folder_.file("marram.sbook");
    std::string crashed_ = folder_.file("crashed.sbook");
    FailingDisk disk_;
    TinySeason season_;
    std::vector<Outcome> outcomes_;
};

}  // namespace

TEST_CASE(
    "a disk that fails at any write or sync leaves the book whole, and the message says what happened") {
    using What = Fault::What;
    Scene scene;
    int faults = 0;
    const std::vector<std::pair<What, bool>> kinds{{What::write_error, false}, {What::disk_full, true},
                                                   {What::torn_write, false},  {What::torn_write, true},
                                                   {What::sync_error, false},  {What::sync_error, true}};
    for (const auto& [what, lasting] : kinds) {
        int at = 1;
        while (scene.play({what, at, lasting}))
            ++at;
        CHECK(at > 3);  // a sync a commit at least
        faults += at - 1;
    }
    WARN(faults << " faults injected");
}

TEST_CASE("a disk that is full when a book is made or backed up leaves nothing behind") {
    const TempFolder folder;
    FailingDisk disk;
    const auto path = folder.file("marram.sbook");
    int at = 1;
    for (;; ++at) {
        CAPTURE(at);
        disk.fail({Fault::What::disk_full, at, true});
        try {
            Book::create(path, "wheelhouse").value();
        } catch (const BookError&) {
            CHECK(fs::is_empty(folder.path()));
        }
        const bool struck = disk.has_failed();
        disk.mend();
        if (!struck) break;
        fs::remove(path);
    }
    CHECK(at > 10);
    auto book = Book::open_to_write(path, "wheelhouse", by("Ana"));
    log_tiny_season(*book);
    const auto to = folder.file("backup.sbook");
    const auto beside = std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator());
    for (at = 1;; ++at) {
        CAPTURE(at);
        disk.fail({Fault::What::disk_full, at, true});
        const auto made = back_up(*book, to);
        const bool struck = disk.has_failed();
        disk.mend();
        if (!struck) break;
        if (!made) CHECK(made.refusals().front().code == "cannot-write");
        CHECK(fs::exists(to) == made.ok());
        const auto files = std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator());
        CHECK(files == (made.ok() ? beside + 1 : beside));
        fs::remove(to);
    }
    CHECK(at > 10);
    CHECK_FALSE(check_journal(*Book::open_to_read(to)));
}
