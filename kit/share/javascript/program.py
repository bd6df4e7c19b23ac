"""A program of JavaScript made of Python functions and of all that they use."""

import ast
import functools
import inspect
import textwrap
from collections.abc import Callable, Sequence
from types import ModuleType
from typing import Any

from kit.share.javascript.expressions import WORDS, CannotTranslate, Expressions, literal, variable
from kit.show.marks import Chart

BUILT_IN = frozenset(
    "abs all any bool dict enumerate filter float int isinstance len list map max min next range reversed round set"
    " sorted str sum tuple zip".split()
)
_MODULES = ("math", "html")
_FROM_LIBRARY = {"pairwise"}


class Program:
    """Gathers functions, what they call and the constants they name, each once and before its first use."""

    def __init__(self) -> None:
        self._written: dict[str, str] = {}
        self._names: dict[int, str] = {}
        self._functions: dict[str, Callable[..., Any]] = {}

    def add(self, function: Callable[..., Any]) -> str:
        """Add a function, with all that it uses, and return its name in the program."""
        function = _plain(function)
        if id(function) in self._names:
            return self._names[id(function)]
        name = self._free_name(function.__name__)
        self._names[id(function)], self._functions[name] = name, function
        self._written[name] = ""  # its place, and its name, before what it uses
        if not inspect.signature(function).parameters and hasattr(function, "cache_info"):
            self._written[name] = f"const {name} = () => {literal(function())};"  # the same each time
        else:
            self._written[name] = _Function(function, self).text(name)
        return name

    def resolve(self, function: Callable[..., Any], name: str) -> str:
        """Return what a name in a function's module is called in the program, adding it when it is new."""
        known = inspect.unwrap(function).__globals__
        if name not in known:
            if name in BUILT_IN:
                return f"py_{name}"
            raise NameError(f"{function.__name__} uses {name}, which is nowhere")
        value = known[name]
        if isinstance(value, ModuleType) and value.__name__ in _MODULES:
            return value.__name__
        if name in _FROM_LIBRARY:
            return f"py_{name}"
        if getattr(value, "__module__", "") in _MODULES:
            return f"{value.__module__}.{name}"
        if callable(value):
            return self.add(value)
        return self._constant(name, value)

    def parameters(self, name: str) -> list[str] | None:
        """Return the parameters of a function of the program by the name it has there."""
        function = self._functions.get(name)
        return None if function is None else list(inspect.signature(function).parameters)

    def text(self) -> str:
        """Return the program: the words of Python that it needs, its constants, then its functions."""
        return "\n".join([WORDS, *self._written.values()])

    def _constant(self, name: str, value: object) -> str:
        """Return the name of a constant; two modules may mean different things by one name."""
        text = literal(value)
        called = self._free_name(name, text)
        self._written[called] = f"const {called} = {text};"
        return called

    def _free_name(self, name: str, value: str = "") -> str:
        """Return the name, with a number where another thing has it already."""
        name = variable(name)
        number, free = 1, name
        while free in self._written and not (value and self._written[free] == f"const {free} = {value};"):
            number += 1
            free = f"{name}_{number}"
        return free


def _plain(function: Callable[..., Any]) -> Callable[..., Any]:
    return function.drawing if isinstance(function, Chart) else function


class _Function:
    """One function of Python, statement by statement."""

    def __init__(self, function: Callable[..., Any], program: Program) -> None:
        source = textwrap.dedent(inspect.getsource(inspect.unwrap(function)))
        (self.node,) = ast.parse(source).body
        self.function, self.program = function, program

    def text(self, name: str) -> str:
        """Return the function, under the name that it has in the program."""
        if not isinstance(self.node, ast.FunctionDef):
            raise CannotTranslate(self.node)
        try:
            return self._define(self.node, name, set())
        except CannotTranslate as fault:
            raise TypeError(f"{self.function.__module__}.{self.function.__name__}, {fault}") from None

    def _define(self, node: ast.FunctionDef, name: str, outer: set[str]) -> str:
        arguments = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
        own = {argument.arg for argument in arguments}
        assigned = _assigned(node)
        write = Expressions(self._resolve, self._parameters, outer | own | assigned)
        defaults: list[ast.expr | None] = [None] * (len(node.args.args) - len(node.args.defaults))
        defaults += [*node.args.defaults, *node.args.kw_defaults]
        given = [
            variable(argument.arg) + (f" = {write.write(default)}" if default is not None else "")
            for argument, default in zip(arguments, defaults, strict=True)
        ]
        inner = {child.name for child in node.body if isinstance(child, ast.FunctionDef)}
        fresh = sorted(assigned - own - inner)
        declared = f"let {', '.join(map(variable, fresh))};\n" if fresh else ""
        return f"function {name}({', '.join(given)}) {{\n{declared}{self._block(node.body, write)}\n}}"

    def _resolve(self, name: str) -> str:
        return self.program.resolve(self.function, name)

    def _parameters(self, name: str) -> list[str] | None:
        return self.program.parameters(self._resolve(name)) if name in _globals(self.function) else None

    def _block(self, statements: Sequence[ast.stmt], write: Expressions) -> str:
        return "\n".join(filter(None, (self._statement(one, write) for one in statements)))

    def _statement(self, node: ast.stmt, write: Expressions) -> str:
        if isinstance(node, ast.Expr):
            return "" if isinstance(node.value, ast.Constant) else f"{write.write(node.value)};"
        if isinstance(node, ast.Return):
            return f"return {write.write(node.value) if node.value else 'null'};"
        if isinstance(node, ast.Assign):
            (target,) = node.targets
            return self._assign(target, write.write(node.value), write)
        if isinstance(node, ast.AnnAssign):
            return self._assign(node.target, write.write(node.value), write) if node.value else ""
        if isinstance(node, ast.AugAssign):
            changed = ast.BinOp(_loaded(node.target), node.op, node.value)
            return self._assign(node.target, write.write(changed), write)
        if isinstance(node, ast.If):
            otherwise = f" else {{\n{self._block(node.orelse, write)}\n}}" if node.orelse else ""
            return f"if ({write.truth(node.test)}) {{\n{self._block(node.body, write)}\n}}{otherwise}"
        if isinstance(node, ast.For) and not node.orelse:
            head = f"for ({write.target(node.target)} of {write.each(node.target, write.write(node.iter))})"
            return f"{head} {{\n{self._block(node.body, write)}\n}}"
        if isinstance(node, ast.FunctionDef):
            return self._define(node, variable(node.name), write.local)
        if isinstance(node, ast.Pass | ast.Assert):
            return ""
        if isinstance(node, ast.Continue | ast.Break):
            return f"{type(node).__name__.lower()};"
        raise CannotTranslate(node)

    def _assign(self, target: ast.expr, value: str, write: Expressions) -> str:
        if isinstance(target, ast.Subscript):
            return f"put({write.write(target.value)}, {write.write(target.slice)}, {value});"
        if isinstance(target, ast.Tuple | ast.List):
            return f"[{write.target(target)}] = {write.each(target, f'[{value}]')};"
        return f"{write.target(target)} = {value};"


def _assigned(node: ast.FunctionDef) -> set[str]:
    """Return the names that a function gives values to itself, comprehensions and inner functions apart."""
    found: set[str] = set()

    def walk(part: ast.AST) -> None:
        for child in ast.iter_child_nodes(part):
            if isinstance(child, ast.FunctionDef):
                found.add(child.name)
            elif not isinstance(child, ast.Lambda | ast.ListComp | ast.SetComp | ast.DictComp | ast.GeneratorExp):
                if isinstance(child, ast.Name) and isinstance(child.ctx, ast.Store):
                    found.add(child.id)
                walk(child)

    walk(node)
    return found


def _loaded(target: ast.expr) -> ast.expr:
    """Return what is assigned to as an expression that reads it."""
    return ast.parse(ast.unparse(target), mode="eval").body


@functools.cache
def _globals(function: Callable[..., Any]) -> dict[str, Any]:
    return inspect.unwrap(function).__globals__
