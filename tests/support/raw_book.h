// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <sqlite3.h>

#include <stdexcept>
#include <string>
#include <vector>

namespace spoilbook::tests {

/// A book's file as anyone's database tool opens it: without the program's rules.
class RawBook {
 public:
    explicit RawBook(const std::string& path) {
        if (sqlite3_open(path.c_str(), &db_) != SQLITE_OK) throw std::runtime_error("does not open: " + path);
        run("PRAGMA foreign_keys = OFF");
        run("PRAGMA synchronous = OFF");
        run("PRAGMA ignore_check_constraints = ON");
    }
    ~RawBook() { sqlite3_close(db_); }
    RawBook(const RawBook&) = delete;
    RawBook& operator=(const RawBook&) = delete;

    void run(const std::string& sql) {
        char* why = nullptr;
        if (sqlite3_exec(db_, sql.c_str(), nullptr, nullptr, &why) == SQLITE_OK) return;
        const std::string text = sql + ": " + (why != nullptr ? why : "");
        sqlite3_free(why);
        throw std::runtime_error(text);
    }

    /// Rows as text; NULL as "".
    std::vector<std::vector<std::string>> ask(const std::string& sql) {
        std::vector<std::vector<std::string>> rows;
        const auto each = [](void* to, int columns, char** values, char**) {
            auto& row = static_cast<std::vector<std::vector<std::string>>*>(to)->emplace_back();
            for (int i = 0; i < columns; ++i)
                row.emplace_back(values[i] != nullptr ? values[i] : "");
            return 0;
        };
        char* why = nullptr;
        if (sqlite3_exec(db_, sql.c_str(), each, &rows, &why) == SQLITE_OK) return rows;
        const std::string text = sql + ": " + (why != nullptr ? why : "");
        sqlite3_free(why);
        throw std::runtime_error(text);
    }
    std::string ask_one(const std::string& sql) { return ask(sql).at(0).at(0); }
    [[nodiscard]] int changes() const { return sqlite3_changes(db_); }

 private:
    sqlite3* db_ = nullptr;
};

}  // namespace spoilbook::tests
