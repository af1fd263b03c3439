// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/forecast_source.h"

namespace spoilbook::form {
namespace {

using Made = std::shared_ptr<const ForecastMade>;

Made worked_out(const FiguresMade& figures, const Supposed& supposed) {
    auto made = std::make_shared<ForecastMade>();
    made->figures = figures;
    made->supposed = supposed;
    try {
        ForecastAsked asked;
        asked.as_at = figures->as_at;
        asked.supposed = supposed;
        made->forecast = forecast(*figures->ledger, asked);
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

void ForecastSource::want(FiguresMade figures, const Supposed& supposed) {
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
