#include "core/stock/integer_program.hpp"

#include <glpk.h>

#include <csetjmp>

namespace fayline::stock {

namespace {

// Iterations of the simplex between two looks at the stop.
constexpr int iterationsAtOnce = 2000;

int kindOfBounds(double least, double most) {
    if (least == -unbounded) return most == unbounded ? GLP_FR : GLP_UP;
    if (most == unbounded) return GLP_LO;
    return least == most ? GLP_FX : GLP_DB;
}

struct Watch {
    int nodesLeft = 0;
    double enough = 0;
    double bound = -unbounded;
    int seen = 0;
    bool ended = false;
    const std::atomic<bool>* stop = nullptr;
};

void watch(glp_tree* tree, void* info) {
    Watch& now = *static_cast<Watch*>(info);
    int active = 0;
    int all = 0;
    glp_ios_tree_size(tree, &active, nullptr, &all);
    now.seen = all;
    const int best = glp_ios_best_node(tree);
    if (best > 0) now.bound = glp_ios_node_bound(tree, best);
    glp_prob* problem = glp_ios_get_prob(tree);
    const bool found = glp_mip_status(problem) == GLP_FEAS || glp_mip_status(problem) == GLP_OPT;
    if (all > now.nodesLeft || now.stop->load(std::memory_order_relaxed) ||
        (found && glp_mip_obj_val(problem) <= now.enough)) {
        now.ended = true;
        glp_ios_terminate(tree);
    }
}

// Where the library goes on a fault of its own, which would end the program otherwise. It is C: nothing in between has
// anything to clean up.
void leave(void* back) {
    std::longjmp(*static_cast<std::jmp_buf*>(back), 1);
}

// Runs one of the library's methods; gives false on such a fault.
template <class Method, class... With>
bool sound(int& ended, Method* method, With... with) {
    std::jmp_buf back;
    if (setjmp(back) != 0) {
        glp_error_hook(nullptr, nullptr);
        return false;
    }
    glp_error_hook(leave, &back);
    ended = method(with...);
    glp_error_hook(nullptr, nullptr);
    return true;
}

// What the library keeps for each thread goes when the thread ends.
struct OfThread {
    ~OfThread() { glp_free_env(); }
};

}  // namespace

struct IntegerProgram::Solver {
    glp_prob* problem = glp_create_prob();
    bool broken = false;  // the library met a fault of its own in this problem: it is not looked at again

    ~Solver() {
        if (!broken) glp_delete_prob(problem);
    }
};

IntegerProgram::IntegerProgram() : solver_(std::make_unique<Solver>()) {
    static thread_local const OfThread ofThread;
    (void)ofThread;
    glp_term_out(GLP_OFF);
    glp_set_obj_dir(solver_->problem, GLP_MIN);
}

IntegerProgram::~IntegerProgram() = default;

int IntegerProgram::rows() const {
    return glp_get_num_rows(solver_->problem);
}
int IntegerProgram::columns() const {
    return glp_get_num_cols(solver_->problem);
}

namespace {

// The library counts from 1 and wants indices and values apart.
struct Apart {
    std::vector<int> indices{0};
    std::vector<double> values{0};

    explicit Apart(const Entries& entries) {
        for (const auto& [index, value] : entries) {
            indices.push_back(index + 1);
            values.push_back(value);
        }
    }
    int size() const { return static_cast<int>(indices.size()) - 1; }
};

}  // namespace

int IntegerProgram::addRow(double least, double most, const Entries& entries) {
    const int row = glp_add_rows(solver_->problem, 1);
    glp_set_row_bnds(solver_->problem, row, kindOfBounds(least, most), least, most);
    const Apart apart(entries);
    if (apart.size() > 0)
        glp_set_mat_row(solver_->problem, row, apart.size(), apart.indices.data(), apart.values.data());
    return row - 1;
}

int IntegerProgram::addColumn(double cost, double least, double most, bool integer, const Entries& entries) {
    const int column = glp_add_cols(solver_->problem, 1);
    glp_set_col_bnds(solver_->problem, column, kindOfBounds(least, most), least, most);
    glp_set_obj_coef(solver_->problem, column, cost);
    glp_set_col_kind(solver_->problem, column, integer ? GLP_IV : GLP_CV);
    const Apart apart(entries);
    glp_set_mat_col(solver_->problem, column, apart.size(), apart.indices.data(), apart.values.data());
    return column - 1;
}

void IntegerProgram::setCost(int column, double cost) {
    glp_set_obj_coef(solver_->problem, column + 1, cost);
}

void IntegerProgram::setRow(int row, double least, double most) {
    glp_set_row_bnds(solver_->problem, row + 1, kindOfBounds(least, most), least, most);
}

void IntegerProgram::setColumn(int column, double least, double most) {
    glp_set_col_bnds(solver_->problem, column + 1, kindOfBounds(least, most), least, most);
}

IntegerProgram::Relaxed IntegerProgram::relaxed(const std::atomic<bool>& stop) {
    if (solver_->broken) return {};
    glp_prob* problem = solver_->problem;
    glp_smcp how;
    glp_init_smcp(&how);
    how.msg_lev = GLP_MSG_OFF;
    how.it_lim = iterationsAtOnce;
    int ended = GLP_EITLIM;
    bool afresh = false;
    while (ended == GLP_EITLIM && !stop.load(std::memory_order_relaxed)) {
        solver_->broken = !sound(ended, glp_simplex, problem, static_cast<const glp_smcp*>(&how));
        if (solver_->broken) return {};
        if (ended != 0 && ended != GLP_EITLIM && !afresh) {  // a basis that is singular: begin from another, once
            afresh = true;
            glp_adv_basis(problem, 0);
            ended = GLP_EITLIM;
        }
    }
    Relaxed answer;
    if (ended != 0 || glp_get_status(problem) != GLP_OPT) return answer;
    answer.solved = true;
    answer.value = glp_get_obj_val(problem);
    for (int i = 1; i <= columns(); ++i) answer.columns.push_back(glp_get_col_prim(problem, i));
    for (int i = 1; i <= rows(); ++i) answer.duals.push_back(glp_get_row_dual(problem, i));
    return answer;
}

IntegerProgram::Integral IntegerProgram::integral(int nodes, double enough, const std::atomic<bool>& stop) {
    Integral answer;
    if (columns() == 0) {  // the library wants one at least
        answer.finished = true;
        return answer;
    }
    const Relaxed root = relaxed(stop);
    if (!root.solved) {
        answer.finished = !stop.load(std::memory_order_relaxed) && glp_get_status(solver_->problem) == GLP_NOFEAS;
        return answer;
    }
    Watch seen{.nodesLeft = nodes, .enough = enough, .bound = root.value, .stop = &stop};
    glp_iocp how;
    glp_init_iocp(&how);
    how.msg_lev = GLP_MSG_OFF;
    how.br_tech = GLP_BR_DTH;
    how.bt_tech = GLP_BT_BLB;
    how.mir_cuts = GLP_ON;
    how.cov_cuts = GLP_ON;
    how.clq_cuts = GLP_ON;
    how.cb_func = watch;
    how.cb_info = &seen;
    int ended = 0;
    solver_->broken = !sound(ended, glp_intopt, solver_->problem, static_cast<const glp_iocp*>(&how));
    if (solver_->broken) return answer;
    const int status = glp_mip_status(solver_->problem);
    answer.nodes = seen.seen;
    answer.bound = seen.bound;
    answer.finished = ended == 0 && !seen.ended;
    if (status == GLP_OPT || status == GLP_FEAS) {
        answer.value = glp_mip_obj_val(solver_->problem);
        for (int i = 1; i <= columns(); ++i) answer.columns.push_back(glp_mip_col_val(solver_->problem, i));
        if (answer.finished) answer.bound = answer.value;
    }
    return answer;
}

}  // namespace fayline::stock
