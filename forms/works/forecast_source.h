// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/works/figures_source.h"
#include "model/progress/works_supposed.h"

namespace spoilbook::form {

/// A forecast with what it was asked of. Its limits point into `figures`, which it therefore keeps.
struct ForecastMade {
    FiguresMade figures;
    WorksSupposed supposed;
    Forecast forecast;   ///< as supposed
    Forecast as_logged;  ///< the same where nothing is supposed
    WorksLogged logged;
    WorksToBe to_be;
    QString failed;  ///< why it could not be worked out; blank where it was
};

/// Asks what comes first, off the screen's thread and beside the figures' own: a sheet opened meanwhile does
/// not wait for it. While one is worked out only the newest question is kept.
class ForecastSource : public QObject {
    Q_OBJECT

 public:
    explicit ForecastSource(QObject* parent = nullptr);
    ~ForecastSource() override;

    void want(FiguresMade figures, const WorksSupposed& supposed);
    /// The newest; null before the first.
    [[nodiscard]] const std::shared_ptr<const ForecastMade>& newest() const { return newest_; }
    [[nodiscard]] bool at_work() const { return at_work_; }

 signals:
    void began();
    void made();

 private:
    struct Question {
        FiguresMade figures;
        WorksSupposed supposed;
    };
    void start(Question question);

    QThreadPool pool_;
    std::optional<Question> next_;
    std::shared_ptr<const ForecastMade> newest_;
    bool at_work_ = false;
};

}  // namespace spoilbook::form
