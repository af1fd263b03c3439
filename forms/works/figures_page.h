// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/works/figures_source.h"

class QVBoxLayout;

namespace spoilbook::form {

class BusyOverlay;
class MessageStrip;

/// A box to choose in is as high; sentences beside it are centred on it.
inline constexpr int box_height = 36;

/// Lets a table or picture take what height there is, at least so many grid units: a page scrolls only where
/// it must.
void give_height(QWidget* part, int least);

/// A leaf over the shared figures: wants them when it is seen, says that it is busy, shows what went wrong.
class FiguresPage : public QWidget {
    Q_OBJECT

 public:
    explicit FiguresPage(FiguresSource& source, QWidget* parent);

 protected:
    /// Shows these figures; never null. Called again for each newer one.
    virtual void show_figures(const FiguresMade& figures) = 0;

    void showEvent(QShowEvent* event) override;
    [[nodiscard]] const FiguresMade& figures() const { return shown_; }
    [[nodiscard]] BookSession& session() const { return source_.session(); }
    [[nodiscard]] QThreadPool& pool() const { return source_.pool(); }
    [[nodiscard]] QVBoxLayout* body() const { return body_; }
    [[nodiscard]] MessageStrip& messages() const { return *messages_; }
    /// Tells where a table, chart or map was written, or why it was not.
    template <class W>
    void tell_exports_of(W* widget) {
        connect(widget, &W::exported, this, &FiguresPage::tell_written);
        connect(widget, &W::failed, this, &FiguresPage::tell_problem);
    }
    /// Asks more of the figures, off the screen's thread. An answer that figures newer than it have overtaken
    /// is dropped; what the work throws is told in its place.
    template <class T>
    void ask(std::function<T(const Figures&)> work, std::function<void(T)> done) {
        struct Answer {
            std::optional<T> made;
            QString problem;
        };
        const FiguresMade asked = shown_;
        off_screen<Answer>(
            source_.pool(), this,
            [asked, work = std::move(work)]() -> Answer {
                try {
                    return {work(*asked), {}};
                } catch (const std::exception& error) {
                    return {std::nullopt, QString::fromUtf8(error.what())};
                }
            },
            [this, asked, done = std::move(done)](Answer answer) {
                if (asked != shown_) return;
                if (answer.made)
                    done(std::move(*answer.made));
                else
                    tell_problem(answer.problem);
            });
    }
    void tell_written(const QString& path);
    void tell_problem(const QString& why);

 private:
    void want();
    void take();

    FiguresSource& source_;
    FiguresMade shown_;
    MessageStrip* messages_;
    QVBoxLayout* body_;
    BusyOverlay* busy_;
};

}  // namespace spoilbook::form
