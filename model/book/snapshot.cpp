// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/snapshot.h"

#include <sqlite3.h>

#include "model/book/inside.h"

namespace spoilbook {

Snapshot::Snapshot(const Book& book) : book_(book) {
    auto& db = *book.inside().db;
    if (sqlite3_get_autocommit(db.getHandle()) == 0) return;
    read_from(book, [&] { db.exec("BEGIN"); });
    mine_ = true;
}

Snapshot::~Snapshot() {
    if (mine_) book_.inside().db->tryExec("COMMIT");
}

}  // namespace spoilbook
