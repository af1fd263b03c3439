// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QThreadPool>
#include <QWidget>
#include <atomic>
#include <memory>

#include "forms/shared/desk.h"
#include "forms/shared/memory.h"

class QMenu;
class QStackedWidget;

namespace spoilbook::form {

class BusyOverlay;
class Cover;
class DeskView;
class Dividers;
class MessageStrip;
class PaperStyle;
class Sheet;
class StartPage;
class StatusLine;

/// The binder: its cover above, a divider for each desk, the sheets, and the line that says what was written.
/// It arranges; what is in the book it asks the session.
class MainWindow : public QWidget {
    Q_OBJECT

 public:
    /// All three must live longer than the window.
    MainWindow(Library& library, Memory& memory, PaperStyle& style, QWidget* parent = nullptr);
    ~MainWindow() override;

    /// Opens a book in place of the one that is open. A refusal is told above the sheet. This and what
    /// follows is begun here and done when `busy` ends; while busy, nothing more is begun.
    void open_book(const QString& path);
    /// Makes a book from a folder of plain files, and opens it.
    void make_from_folder(const QString& folder, const QString& path);
    /// Copies a backup to `path`, checks the copy and opens it.
    void take_back(const QString& backup, const QString& path);
    void back_up_to(const QString& path);
    [[nodiscard]] bool busy() const { return at_work_; }
    [[nodiscard]] Session* session() { return session_.get(); }
    [[nodiscard]] MessageStrip& messages() { return *strip_; }
    /// Lays a widget over the sheets, in place of a dialog. The window owns it and deletes it once closed.
    void open_sheet(const QString& title, QWidget* content);
    void close_sheet();
    /// Turns to a desk and leaf by their keys.
    void turn_to(const QString& desk, const QString& leaf);

 protected:
    void closeEvent(QCloseEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

 private:
    void build();
    void connect_cover();
    void build_actions();
    QAction* add_action(QMenu* menu, const QString& text, const QKeySequence& keys,
                        void (MainWindow::*does)());
    /// What is left to do on the screen's thread when slow work is done.
    using Then = std::function<void()>;
    /// Runs `slow` on another thread under the overlay, then what it answers here.
    void run(const QString& what, bool can_stop, std::function<Then(const GoingOn&)> slow);
    void take_when_ready(const QString& what, bool can_stop, std::function<Ready(const GoingOn&)> slow);
    void open_again(const QString& path, const QString& problem);
    void take_in(OpenedBook opened);
    void close_book();
    [[nodiscard]] static QString nobody_words();
    void refresh();
    void remember_place();
    void show_desk(int index);
    [[nodiscard]] DeskView* desk_view() const;
    /// Where a person goes on: on the page that is shown.
    void focus_on_page();
    void undo();
    void redo();
    void ask_open();
    void ask_new();
    void ask_restore();
    void ask_backup();
    void open_sample();
    void show_people();
    void show_as_at();
    void switch_light();
    void next_leaf();
    void previous_leaf();

    Library& library_;
    Memory& memory_;
    PaperStyle& style_;
    std::unique_ptr<Session> session_;
    Cover* cover_;
    Dividers* dividers_;
    QWidget* paper_;
    MessageStrip* strip_;
    QString notice_;  ///< the session's newest, which goes with the next change
    QStackedWidget* pages_;
    StartPage* start_;
    StatusLine* status_;
    Sheet* sheet_;
    BusyOverlay* busy_;
    QMenu* menu_;
    std::vector<QAction*> with_book_;
    QThreadPool pool_;
    std::shared_ptr<std::atomic<bool>> stop_;  ///< set where the work that runs should stop
    bool at_work_ = false;
};

}  // namespace spoilbook::form
