// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/print/document.h"
#include "model/return/return_facts.h"

namespace spoilbook::print {

// The parts of a printed return, each adding its blocks.
void add_statement(const ReturnFacts& facts, std::vector<Block>& blocks);
/// How many complied with each condition that is judged by release, trip or load.
void add_judged(const ReturnFacts& facts, std::vector<Block>& blocks);
void add_not_judged(const ReturnFacts& facts, std::vector<Block>& blocks);
/// Every release, trip and load that did not comply or of which it cannot be told.
void add_failed(const ReturnFacts& facts, std::vector<Block>& blocks);
void add_totals(const ReturnFacts& facts, std::vector<Block>& blocks);
void add_limits(const ReturnFacts& facts, std::vector<Block>& blocks);
void add_events(const ReturnFacts& facts, std::vector<Block>& blocks);
void add_triggers(const ReturnFacts& facts, std::vector<Block>& blocks);
void add_turbidity(const ReturnFacts& facts, std::vector<Block>& blocks);
void add_factors(const ReturnFacts& facts, std::vector<Block>& blocks);
void add_duties(const ReturnFacts& facts, std::vector<Block>& blocks);
void add_schedule(const ReturnFacts& facts, std::vector<Block>& blocks);

}  // namespace spoilbook::print
