// The one way of saying that an input is impossible: where it stands, what was found, what would be accepted.
#pragma once

#include <stdexcept>
#include <string>

namespace fayline::units {

// Thrown for input that no plan can be made of (a negative thickness, two equal points) and for text that cannot be
// read. Caught at one place: the planner of the window, or the program's main function.
//
// `path` names the place as in the project file, `pieces[1].stack.strips[0].thickness_mm`; a part of the core that is
// given one piece starts at `line`, `stack`, ... and whoever calls it for a boat puts `pieces[1].` in front.
class InputError : public std::runtime_error {
public:
    // `wrong` is what was found and why it will not do ("-6 is not a thickness"), `accepted` what would be
    // ("give a number above 0"). what() reads "path: wrong; accepted".
    InputError(std::string path, std::string wrong, std::string accepted)
        : std::runtime_error((path.empty() ? "" : path + ": ") + wrong + "; " + accepted),
          path_(std::move(path)),
          wrong_(std::move(wrong)),
          accepted_(std::move(accepted)) {}

    const std::string& path() const { return path_; }
    const std::string& wrong() const { return wrong_; }
    const std::string& accepted() const { return accepted_; }

    // The same error, seen from further out: `outer` is put before the path ("pieces[1]." before "stack.strips[0]").
    InputError within(const std::string& outer) const { return {outer + path_, wrong_, accepted_}; }

private:
    std::string path_;
    std::string wrong_;
    std::string accepted_;
};

}  // namespace fayline::units
