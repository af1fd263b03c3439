// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>
#include <map>
#include <memory>

#include "model/logging/take_readings.h"

class QLabel;
class QPushButton;
class QThreadPool;
class QVBoxLayout;

namespace spoilbook::form {

class BookSession;
class BusyOverlay;
class ChoiceField;

inline constexpr int readings_width = 640;

/// A logger's file before it is taken in: its first rows, how it would be read and what that rests on, and
/// what the file does not prove, which is asked. Nothing is guessed in silence; the answers are kept for the
/// site's next file.
class ReadingsSheet : public QWidget {
    Q_OBJECT

 public:
    /// Looks at the file on `pool`. `site`: where it is known already.
    ReadingsSheet(BookSession& session, QThreadPool& pool, QString path, const QString& site,
                  QWidget* parent = nullptr);

 signals:
    /// What was taken in, in words.
    void taken(const QString& what);

 private:
    /// What a look, or the long half of taking it in, came to.
    struct Looked {
        std::shared_ptr<ReadingsTaken> found;
        QString problem;
    };
    /// Reads the file for the pool's thread; `prepare`: and holds it against what the book has.
    [[nodiscard]] std::function<Looked()> looking(bool prepare) const;
    void look();
    void show_look(const Looked& looked);
    void show_questions(const std::vector<LoggerQuestion>& questions);
    void answer(const std::string& about, const QString& text);
    void take();
    void keep(const Looked& looked);

    BookSession& session_;
    QThreadPool& pool_;
    QString path_;
    std::map<std::string, std::string> said_;  ///< answers by what they are about
    ChoiceField* site_;
    QLabel *rows_, *assumed_, *reads_, *problem_;
    QVBoxLayout* questions_;
    QPushButton* take_;
    BusyOverlay* busy_;
};

/// The answers as the model takes them; what does not read is left out, and so asked again.
LoggerAnswers logger_answers(const std::map<std::string, std::string>& said);

}  // namespace spoilbook::form
