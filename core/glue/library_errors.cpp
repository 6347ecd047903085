#include "core/glue/library_errors.hpp"

#include <gsl/gsl_errno.h>

namespace fayline::glue {

void letLibraryReturnErrors() {
    gsl_set_error_handler_off();
}

}  // namespace fayline::glue
