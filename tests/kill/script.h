// What the editor of the kill test does, step by step, and what a library must hold after each
// step: the same function of the step's number for the editor and for who judges it.
#pragma once

#include <variant>

#include "core/library/library.h"

namespace suppertide::test {

/// What a library holds, kept in memory.
struct Model
{
    LibraryState state;
    History history;
};

struct Undo
{};
struct Redo
{};
using Deed = std::variant<Change, Undo, Redo>;

/// What step `number` does to a library that holds this.
[[nodiscard]] Deed deedOf(const Model& model, int number);
[[nodiscard]] Model after(Model model, const Deed& deed);
/// Equal states, and histories with equal parts, texts and position.
[[nodiscard]] bool areAlike(const Model& a, const Model& b);

} // namespace suppertide::test
