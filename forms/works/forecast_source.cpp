// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/forecast_source.h"

namespace spoilbook::form {
namespace {

using Made = std::shared_ptr<const ForecastMade>;

Made worked_out(const FiguresMade& figures, const WorksSupposed& supposed) {
    auto made = std::make_shared<ForecastMade>();
    made->figures = figures;
    made->supposed = supposed;
    try {
        ForecastAsked asked;
        asked.as_at = figures->as_at;
        auto answer = what_if(*figures->ledger, asked, supposed);
        if (answer) {
            made->forecast = std::move(answer->as_supposed);
            made->as_logged = std::move(answer->as_logged);
            made->logged = std::move(answer->logged);
            made->to_be = std::move(answer->to_be);
        } else {
            made->logged = works_logged(*figures->ledger, asked.as_at, asked.weeks);
            made->failed = refusals_shown(answer.refusals());
        }
    } catch (const std::exception& error) {
        made->failed = QString::fromUtf8(error.what());
    }
    return made;
}

}  // namespace

ForecastSource::ForecastSource(QObject* parent) : QObject(parent) {
    pool_.setMaxThreadCount(1);
}

ForecastSource::~ForecastSource() {
    pool_.clear();
}

void ForecastSource::want(FiguresMade figures, const WorksSupposed& supposed) {
    Question question{std::move(figures), supposed};
    if (at_work_) {
        next_ = std::move(question);
        return;
    }
    start(std::move(question));
}

void ForecastSource::start(Question question) {
    at_work_ = true;
    emit began();
    off_screen<Made>(
        pool_, this,
        [question = std::move(question)] { return worked_out(question.figures, question.supposed); },
        [this](const Made& made) {
            if (next_) return start(*std::exchange(next_, std::nullopt));
            at_work_ = false;
            newest_ = made;
            emit this->made();
        });
}

}  // namespace spoilbook::form
