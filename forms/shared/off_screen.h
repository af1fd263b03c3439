// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFutureWatcher>
#include <QPromise>
#include <QThreadPool>
#include <functional>
#include <memory>

namespace spoilbook::form {

/// Runs `work` on `pool`, and `done` with its result on the screen's thread, unless `who` is gone by then.
/// `work` touches nothing that the screen's thread may change; what it throws is its own to catch.
template <class T>
void off_screen(QThreadPool& pool, QObject* who, std::function<T()> work, std::function<void(T)> done) {
    auto promise = std::make_shared<QPromise<T>>();
    auto* watcher = new QFutureWatcher<T>(who);
    QObject::connect(watcher, &QFutureWatcher<T>::finished, who, [watcher, done = std::move(done)] {
        watcher->deleteLater();
        if (watcher->future().resultCount() > 0) done(watcher->result());
    });
    watcher->setFuture(promise->future());
    pool.start([promise, work = std::move(work)] {
        promise->start();
        promise->addResult(work());
        promise->finish();
    });
}

}  // namespace spoilbook::form
