// Values that copies share: a copy takes no time, however large the value is. To change one that is shared makes a copy
// of one's own first, so that no other sees the change. A reference into one is good until it is copied or changed.
//
// As with any value, one object is for one thread at a time while it is changed; objects that share may each be in
// another thread.
#pragma once

#include <atomic>
#include <concepts>
#include <cstddef>
#include <initializer_list>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace fayline::math {

// A value or none, as std::optional. T may be incomplete where it is only copied. One that is not const is made one's
// own by every look at its value: look by std::as_const where it is large.
template <class T>
class Shared {
public:
    Shared() = default;
    template <std::same_as<T> Value>
    Shared(Value value) : value_(std::make_shared<T>(std::move(value))) {}
    template <std::same_as<std::optional<T>> Any>
    Shared(Any any) : value_(any ? std::make_shared<T>(std::move(*any)) : nullptr) {}

    explicit operator bool() const { return value_ != nullptr; }
    bool has_value() const { return value_ != nullptr; }
    const T& operator*() const { return *value_; }
    const T* operator->() const { return value_.get(); }

    T& operator*() { return own(); }
    T* operator->() { return &own(); }
    T& emplace() { return *(value_ = std::make_shared<T>()); }
    void reset() { value_.reset(); }

private:
    T& own() {
        if (value_.use_count() > 1) {
            value_ = std::make_shared<T>(*value_);
        } else {
            std::atomic_thread_fence(std::memory_order_acquire);  // what others read of it lies before
        }
        return *value_;
    }

    std::shared_ptr<T> value_;
};

// A list, as std::vector. T may be incomplete where it is only copied.
template <class T>
class SharedList {
public:
    using value_type = T;
    using iterator = typename std::vector<T>::iterator;
    using const_iterator = typename std::vector<T>::const_iterator;

    SharedList() = default;
    SharedList(std::vector<T> items) : items_(std::move(items)) {}
    SharedList(std::initializer_list<T> items) : items_(std::vector<T>(items)) {}

    operator const std::vector<T>&() const { return all(); }
    bool empty() const { return !items_ || items_->empty(); }
    std::size_t size() const { return items_ ? items_->size() : 0; }
    const T* data() const { return all().data(); }
    const T& operator[](std::size_t place) const { return (*items_)[place]; }
    const T& at(std::size_t place) const { return all().at(place); }
    const T& front() const { return items_->front(); }
    const T& back() const { return items_->back(); }
    const_iterator begin() const { return all().begin(); }
    const_iterator end() const { return all().end(); }

    std::vector<T>& own() { return items_ ? *items_ : items_.emplace(); }
    T& operator[](std::size_t place) { return own()[place]; }
    T& front() { return own().front(); }
    T& back() { return own().back(); }
    iterator begin() { return own().begin(); }
    iterator end() { return own().end(); }
    void push_back(T item) { own().push_back(std::move(item)); }
    void clear() { items_.reset(); }

    friend bool operator==(const SharedList& one, const SharedList& other) { return one.all() == other.all(); }

private:
    const std::vector<T>& all() const {
        static const std::vector<T> none;
        return items_ ? *items_ : none;
    }

    Shared<std::vector<T>> items_;
};

}  // namespace fayline::math
