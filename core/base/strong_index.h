// StrongIndex<Tag>: a position in one dense list (tasks, lags, ovens of a problem), and
// IndexedVector, a vector that takes only its own kind of index.
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <initializer_list>
#include <utility>
#include <vector>

#include "core/base/contracts.h"

namespace suppertide {

template <typename Tag>
class StrongIndex
{
public:
    constexpr StrongIndex() = default;
    constexpr explicit StrongIndex(std::size_t value) : value_(static_cast<std::uint32_t>(value)) {}

    [[nodiscard]] constexpr std::size_t value() const noexcept { return value_; }
    friend constexpr auto operator<=>(const StrongIndex&, const StrongIndex&) = default;
    constexpr StrongIndex& operator++() noexcept
    {
        ++value_;
        return *this;
    }

private:
    std::uint32_t value_ = 0;
};

/// A vector whose positions are `Index` and nothing else. Access is checked in every build.
template <typename Index, typename T>
class IndexedVector
{
public:
    IndexedVector() = default;
    explicit IndexedVector(std::size_t size) : items_(size) {}
    IndexedVector(std::size_t size, const T& value) : items_(size, value) {}
    IndexedVector(std::initializer_list<T> items) : items_(items) {}
    explicit IndexedVector(std::vector<T> items) : items_(std::move(items)) {}

    [[nodiscard]] std::size_t size() const noexcept { return items_.size(); }
    [[nodiscard]] bool empty() const noexcept { return items_.empty(); }
    [[nodiscard]] bool contains(Index index) const noexcept { return index.value() < size(); }

    decltype(auto) operator[](Index index)
    {
        expects(contains(index), "index within the list");
        return items_[index.value()];
    }
    decltype(auto) operator[](Index index) const
    {
        expects(contains(index), "index within the list");
        return items_[index.value()];
    }

    Index push_back(T item) // NOLINT(readability-identifier-naming): as in std::vector
    {
        items_.push_back(std::move(item));
        return Index{items_.size() - 1};
    }
    void reserve(std::size_t size) { items_.reserve(size); }
    void resize(std::size_t size) { items_.resize(size); }
    void assign(std::size_t size, const T& value) { items_.assign(size, value); }
    void clear() { items_.clear(); }
    [[nodiscard]] decltype(auto) back() { return items_.back(); }
    [[nodiscard]] decltype(auto) back() const { return items_.back(); }

    auto begin() noexcept { return items_.begin(); }
    auto end() noexcept { return items_.end(); }
    auto begin() const noexcept { return items_.begin(); }
    auto end() const noexcept { return items_.end(); }
    [[nodiscard]] const std::vector<T>& items() const noexcept { return items_; }

    /// The indices 0 … size − 1, for range-based loops.
    class Indices
    {
    public:
        class Iterator
        {
        public:
            using value_type = Index;     // NOLINT(readability-identifier-naming)
            using difference_type = long; // NOLINT(readability-identifier-naming)
            explicit Iterator(std::size_t at) : at_(at) {}
            Index operator*() const { return Index{at_}; }
            Iterator& operator++()
            {
                ++at_;
                return *this;
            }
            friend bool operator==(const Iterator&, const Iterator&) = default;

        private:
            std::size_t at_;
        };
        explicit Indices(std::size_t size) : size_(size) {}
        [[nodiscard]] Iterator begin() const { return Iterator{0}; }
        [[nodiscard]] Iterator end() const { return Iterator{size_}; }

    private:
        std::size_t size_;
    };
    [[nodiscard]] Indices indices() const { return Indices{size()}; }

    friend bool operator==(const IndexedVector&, const IndexedVector&) = default;

private:
    std::vector<T> items_;
};

} // namespace suppertide

template <typename Tag>
struct std::hash<suppertide::StrongIndex<Tag>>
{
    std::size_t operator()(suppertide::StrongIndex<Tag> index) const noexcept
    {
        return index.value();
    }
};
