// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>

#include "forms/barge/record_form.h"
#include "model/volume/reading_findings.h"

namespace spoilbook::form {

/// What a finding says beside its box: what is wrong, and what would be right.
QString finding_words(const ReadingFinding& finding, const QString& barge);

/// The findings of a load's readings beside the boxes of a form. A box whose text the book refused keeps its
/// own problem.
class LoadFindings {
 public:
    explicit LoadFindings(RecordForm& form) : form_(form) {}

    void show(const std::vector<ReadingFinding>& findings, const QString& barge);

 private:
    RecordForm& form_;
    std::map<std::string, QString> said_;
};

}  // namespace spoilbook::form
