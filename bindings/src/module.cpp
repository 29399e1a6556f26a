// SPDX-License-Identifier: BSD-3-Clause
// The compiled module coverframe._core: numbers and texts across, nothing else. The Python package around it carries
// names, keywords, units and documentation.
#include <exception>

#include "binding.hpp"
#include "coverframe/report/cautions.hpp"

namespace coverframe::binding {
namespace {

/// A class of coverframe.errors.
py::object error_class(const char* name) { return py::module_::import("coverframe.errors").attr(name); }

void raise(const py::object& exception) {
    PyErr_SetObject(reinterpret_cast<PyObject*>(Py_TYPE(exception.ptr())), exception.ptr());
}

/// Text that may hold bytes which are no UTF-8, such as the name of a file.
py::object shown(const std::string& text) {
    const auto size = static_cast<py::ssize_t>(text.size());
    return py::reinterpret_steal<py::object>(PyUnicode_DecodeUTF8(text.data(), size, "replace"));
}

void raise_input_error(const InputError& error) {
    const py::object problem = error_class("Problem");
    py::list problems;
    for (const Problem& p : error.problems()) {
        problems.append(problem(p.code, shown(p.where), shown(p.value), shown(p.advice)));
    }
    raise(error_class("InputError")(py::tuple(problems)));
}

void translate(std::exception_ptr pointer) {
    try {
        if (pointer) std::rethrow_exception(pointer);
    } catch (const InputError& error) {
        raise_input_error(error);
    } catch (const StateError& error) {
        raise(error_class("StateError")(error.code(), std::string(error.what())));
    } catch (const Error& error) {
        raise(error_class("Error")(std::string(error.what())));
    }
}

}  // namespace
}  // namespace coverframe::binding

PYBIND11_MODULE(_core, module) {
    namespace cb = coverframe::binding;
    module.doc() = "Compiled part of coverframe. Use the package coverframe; names here may change.";
    module.attr("version") = COVERFRAME_VERSION;
    pybind11::register_local_exception_translator(cb::translate);
    module.def("cautions", [] {
        pybind11::list sentences;
        for (const std::string_view sentence : coverframe::cautions()) {
            sentences.append(pybind11::str(sentence.data(), sentence.size()));
        }
        return sentences;
    });
    cb::bind_plan(module);
    cb::bind_assessment(module);
    cb::bind_rules(module);
    cb::bind_direct(module);
    cb::bind_extremes(module);
    cb::bind_film(module);
    cb::bind_surface(module);
    cb::bind_survey(module);
    cb::bind_frame(module);
    cb::bind_compare(module);
}
