// SPDX-License-Identifier: GPL-3.0-or-later
#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <chrono>
#include <csignal>
#include <random>
#include <thread>

#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "tests/support/how_many.h"
#include "tests/support/temp_folder.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

/// A child that writes the book, and the end of the pipe on which it acknowledges.
class ShiftWriter {
 public:
    explicit ShiftWriter(const std::string& path) {
        int ends[2];
        REQUIRE(pipe2(ends, O_CLOEXEC) == 0);
        posix_spawn_file_actions_t actions;
        posix_spawn_file_actions_init(&actions);
        posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
        std::string program = SPOILBOOK_SHIFT_WRITER;
        std::string book = path;
        char* arguments[] = {program.data(), book.data(), nullptr};
        REQUIRE(posix_spawn(&child_, program.c_str(), &actions, nullptr, arguments, environ) == 0);
        posix_spawn_file_actions_destroy(&actions);
        close(ends[1]);
        from_ = ends[0];
    }
    ~ShiftWriter() {
        if (child_ > 0) kill_and_read();
    }
    ShiftWriter(const ShiftWriter&) = delete;
    ShiftWriter& operator=(const ShiftWriter&) = delete;

    void await_first_word() {
        char c = 0;
        if (read(from_, &c, 1) == 1) said_ += c;
    }
    /// SIGKILL; answers the last entry that was acknowledged, 0 for none.
    std::int64_t kill_and_read() {
        ::kill(child_, SIGKILL);
        char bytes[4096];
        for (ssize_t n = 0; (n = read(from_, bytes, sizeof bytes)) > 0;)
            said_.append(bytes, static_cast<std::size_t>(n));
        close(from_);
        int status = 0;
        waitpid(child_, &status, 0);
        child_ = -1;
        CHECK(WIFSIGNALED(status));
        const auto end = said_.rfind('\n');
        if (end == std::string::npos) return 0;
        const auto before = said_.rfind('\n', end - 1);
        return std::stoll(said_.substr(before == std::string::npos ? 0 : before + 1));
    }

 private:
    pid_t child_ = -1;
    int from_ = -1;
    std::string said_;
};

/// What must hold after a kill: the newest entry held.
std::int64_t hold_book(const std::string& path) {
    auto book = Book::open_to_write(path, "checker", by("Ben"));
    REQUIRE(book);
    const auto bad = check_journal(*book);
    if (bad) FAIL_CHECK(bad->table << " " << bad->id << ": " << bad->what);
    const auto loads = book->rows(kind("load"), true).size();
    CHECK(book->rows(kind("trip"), true).size() == loads);
    CHECK(book->rows(kind("release"), true).size() == loads);
    return journal_state(*book).entries;
}

}  // namespace

TEST_CASE("whatever was acknowledged is in the book after kill -9, and nothing is there by half") {
    constexpr unsigned seed = 20250303;
    constexpr int kills_a_book = 30;
    std::mt19937 chance(seed);
    std::uniform_int_distribution<int> wait_us(0, 40'000);
    int while_starting = 0;
    int landed_unsaid = 0;
    std::int64_t entries = 0;
    const int kills = how_many(300);
    for (int done = 0; done < kills;) {
        const TempFolder folder;
        const auto path = folder.file("marram.sbook");
        Book::create(path, "wheelhouse").value();
        std::int64_t held = 0;
        for (int i = 0; i < kills_a_book && done < kills; ++i, ++done) {
            CAPTURE(seed, done);
            ShiftWriter writer(path);
            if (done % 5 != 0) writer.await_first_word();
            std::this_thread::sleep_for(std::chrono::microseconds(wait_us(chance)));
            const auto acknowledged = writer.kill_and_read();
            const auto now = hold_book(path);
            CHECK(now >= std::max(acknowledged, held));
            if (acknowledged == 0)
                ++while_starting;
            else
                CHECK(now <= acknowledged + 1);  // at most the one under way
            if (now > std::max(acknowledged, held)) ++landed_unsaid;
            held = now;
        }
        entries += held;
    }
    // The kills must have struck while it wrote, not before or after.
    CHECK(entries > kills);
    WARN(kills << " kills, " << entries << " entries; " << while_starting
               << " kills before the first acknowledgement, " << landed_unsaid
               << " with an entry that was written and not yet acknowledged");
}
