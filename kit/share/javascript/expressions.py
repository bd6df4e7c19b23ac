"""Expressions of Python as expressions of JavaScript, on top of the few functions of ``web/python.js``."""

import ast
import json
import math
import re
from collections.abc import Callable, Iterable, Mapping

from kit.share.pages import sheet

Resolve = Callable[[str], str]  # a name of the function's module, as the program names it
Parameters = Callable[[str], list[str] | None]  # the parameters of a function that the program holds


class CannotTranslate(Exception):  # noqa: N818 - said of a piece of code, not of the program's input
    """A piece of Python that the page's program has no word for."""

    def __init__(self, node: ast.AST, what: str = "") -> None:
        super().__init__(f"line {getattr(node, 'lineno', '?')}: {what or type(node).__name__} is not translated")


_COMPARE = {ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">="}
_ARITHMETIC = {ast.Sub: "-", ast.Div: "/", ast.Pow: "**"}
_BY_FUNCTION = {ast.Add: "add", ast.Mult: "times", ast.Mod: "modulo", ast.FloorDiv: "floordiv", ast.BitOr: "union"}
# Names that JavaScript keeps for itself.
_RESERVED = frozenset(
    "case class const default delete enum export function new super switch this typeof var void with".split()
)
WORDS = sheet("python.js")  # the words of Python in the page
_TAKEN = _RESERVED | set(re.findall(r"^(?:const|function|class) (\w+)", WORDS, re.MULTILINE))
_METHODS = frozenset(re.findall(r"^  (\w+): \(", WORDS, re.MULTILINE))


def variable(name: str) -> str:
    """Return a name as JavaScript may have it, where neither the language nor the words of Python have it already."""
    return f"{name}$" if name in _TAKEN else name


def literal(value: object) -> str:
    """Return a constant of Python as JavaScript: a dict as a Map, a set as a Set, a tuple or list as an array."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float) and not math.isfinite(value):
        return "NaN" if math.isnan(value) else "Infinity" if value > 0 else "-Infinity"
    if isinstance(value, str | int | float):
        return json.dumps(value, ensure_ascii=True).replace("</", "<\\/")
    if isinstance(value, Mapping):
        return f"new Map([{', '.join(f'[{literal(key)}, {literal(held)}]' for key, held in value.items())}])"
    if isinstance(value, set | frozenset):
        return f"new Set([{', '.join(map(literal, sorted(value)))}])"
    if isinstance(value, Iterable):
        return f"[{', '.join(map(literal, value))}]"
    raise TypeError(f"{value!r} is no constant that a page can hold")


class Expressions:
    """Writes expressions; `local` are the names of the function at hand, `resolve` names everything else."""

    def __init__(self, resolve: Resolve, parameters: Parameters, local: set[str]) -> None:
        self.resolve, self.parameters, self.local = resolve, parameters, local

    def write(self, node: ast.expr) -> str:
        """Return one expression.

        Raises
        ------
        CannotTranslate
            If there is no word for it.
        """
        writer = getattr(self, f"_{type(node).__name__.lower()}", None)
        if writer is None:
            raise CannotTranslate(node)
        return writer(node)

    def truth(self, node: ast.expr) -> str:
        """Return an expression as the condition it is in Python: empty things are false, NaN is true."""
        if isinstance(node, ast.Compare) or (isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not)):
            return self.write(node)
        return f"truth({self.write(node)})"

    def target(self, node: ast.expr) -> str:
        """Return what is assigned to, names taken apart as they are in Python."""
        if isinstance(node, ast.Name):  # what is passed over may be so twice, but named twice it may not be
            return f"_{node.lineno}_{node.col_offset}" if node.id == "_" else variable(node.id)
        if isinstance(node, ast.Starred):
            return f"...{self.target(node.value)}"
        if isinstance(node, ast.Tuple | ast.List):
            early = _early_star(node)
            parts = [
                part.value if place == early and isinstance(part, ast.Starred) else part
                for place, part in enumerate(node.elts)
            ]
            return f"[{', '.join(map(self.target, parts))}]"
        raise CannotTranslate(node, "assigning to this")

    def each(self, target: ast.expr, source: str) -> str:
        """Return what a loop goes through; JavaScript gathers the rest of a list at its end only."""
        early = _early_star(target)
        if early is None or not isinstance(target, ast.Tuple | ast.List):
            return f"list({source})"
        return f"py_map((held) => gathered(held, {early}, {len(target.elts) - 1 - early}), {source})"

    def _name(self, node: ast.Name) -> str:
        return variable(node.id) if node.id in self.local else self.resolve(node.id)

    def _constant(self, node: ast.Constant) -> str:
        return literal(node.value)

    def _joinedstr(self, node: ast.JoinedStr) -> str:
        return f"joined([{', '.join(map(self.write, node.values))}])"

    def _formattedvalue(self, node: ast.FormattedValue) -> str:
        if node.conversion != -1:
            raise CannotTranslate(node, "a conversion in a text")
        spec = self.write(node.format_spec) if node.format_spec else '""'
        return f"format({self.write(node.value)}, {spec})"

    def _items(self, nodes: Iterable[ast.expr]) -> str:
        return ", ".join(
            f"...list({self.write(node.value)})" if isinstance(node, ast.Starred) else self.write(node)
            for node in nodes
        )

    def _list(self, node: ast.List) -> str:
        return f"[{self._items(node.elts)}]"

    def _tuple(self, node: ast.Tuple) -> str:
        return f"[{self._items(node.elts)}]"

    def _set(self, node: ast.Set) -> str:
        return f"new Set([{self._items(node.elts)}])"

    def _dict(self, node: ast.Dict) -> str:
        entries = (
            f"...{self.write(value)}" if key is None else f"[{self.write(key)}, {self.write(value)}]"
            for key, value in zip(node.keys, node.values, strict=True)
        )
        return f"new Map([{', '.join(entries)}])"

    def _unaryop(self, node: ast.UnaryOp) -> str:
        if isinstance(node.op, ast.Not):
            return f"!{self.truth(node.operand)}"
        return f"(-{self.write(node.operand)})" if isinstance(node.op, ast.USub) else self.write(node.operand)

    def _binop(self, node: ast.BinOp) -> str:
        left, right = self.write(node.left), self.write(node.right)
        kind = type(node.op)
        if kind in _ARITHMETIC:
            return f"({left} {_ARITHMETIC[kind]} {right})"
        if kind in _BY_FUNCTION:
            return f"{_BY_FUNCTION[kind]}({left}, {right})"
        raise CannotTranslate(node, kind.__name__)

    def _boolop(self, node: ast.BoolOp) -> str:
        *first, last = node.values
        text = self.write(last)
        for value in reversed(first):
            chosen = f"$, () => {text}"
            text = f"{'either' if isinstance(node.op, ast.Or) else 'both'}({chosen.replace('$', self.write(value), 1)})"
        return text

    def _ifexp(self, node: ast.IfExp) -> str:
        return f"({self.truth(node.test)} ? {self.write(node.body)} : {self.write(node.orelse)})"

    def _namedexpr(self, node: ast.NamedExpr) -> str:
        return f"({self.target(node.target)} = {self.write(node.value)})"

    def _compare(self, node: ast.Compare) -> str:
        sides = [node.left, *node.comparators]
        pairs = [
            self._one_comparison(operator, left, right)
            for operator, left, right in zip(node.ops, sides, sides[1:], strict=False)
        ]
        return f"({' && '.join(pairs)})"

    def _one_comparison(self, operator: ast.cmpop, left: ast.expr, right: ast.expr) -> str:
        here, there = self.write(left), self.write(right)
        if type(operator) in _COMPARE:
            return f"{here} {_COMPARE[type(operator)]} {there}"
        by_function = {ast.Eq: "equal", ast.NotEq: "!equal", ast.Is: "same", ast.IsNot: "!same"}
        if type(operator) in by_function:
            return f"{by_function[type(operator)]}({here}, {there})"
        return f"{'!' if isinstance(operator, ast.NotIn) else ''}holds({there}, {here})"

    def _attribute(self, node: ast.Attribute) -> str:
        if node.attr == "__contains__":
            return f"((item) => holds({self.write(node.value)}, item))"
        return f"{self.write(node.value)}.{node.attr}"

    def _subscript(self, node: ast.Subscript) -> str:
        held = self.write(node.value)
        if isinstance(node.slice, ast.Slice):
            ends = (self.write(end) if end else "null" for end in (node.slice.lower, node.slice.upper))
            return f"slice({held}, {', '.join(ends)})"
        return f"item({held}, {self.write(node.slice)})"

    def _lambda(self, node: ast.Lambda) -> str:
        names = [argument.arg for argument in node.args.args]
        inner = Expressions(self.resolve, self.parameters, self.local | set(names))
        return f"(({', '.join(map(variable, names))}) => {inner.write(node.body)})"

    def _call(self, node: ast.Call) -> str:
        function = node.func
        if isinstance(function, ast.Attribute) and not self._is_module(function.value):
            if function.attr not in _METHODS:
                raise CannotTranslate(node, f".{function.attr}()")
            arguments = "".join(f", {text}" for text in self._arguments(node, None))
            return f'method({self.write(function.value)}, "{function.attr}"{arguments})'
        known = self.parameters(function.id) if isinstance(function, ast.Name) else None
        return f"{self.write(function)}({', '.join(self._arguments(node, known))})"

    def _is_module(self, node: ast.expr) -> bool:
        return isinstance(node, ast.Name) and node.id not in self.local and self.resolve(node.id) in ("math", "html")

    def _arguments(self, node: ast.Call, known: list[str] | None) -> list[str]:
        """Return the arguments in the order of the parameters; of a built-in function the named ones as an object."""
        given = [self._items([argument]) for argument in node.args]
        if not node.keywords:
            return given
        named = {keyword.arg: self.write(keyword.value) for keyword in node.keywords if keyword.arg != "strict"}
        if None in named:
            raise CannotTranslate(node, "** in a call")
        if known is None:
            pairs = ", ".join(f"{variable(str(name))}: {text}" for name, text in named.items())
            return [*given, f"named({{ {pairs} }})"] if named else given
        rest = known[len(given) :]
        last = max((rest.index(str(name)) for name in named), default=-1)
        return [*given, *(named.get(name, "undefined") for name in rest[: last + 1])]

    def _listcomp(self, node: ast.ListComp) -> str:
        return self._comprehension(node.generators, node.elt, "[]", "made$.push({})")

    def _generatorexp(self, node: ast.GeneratorExp) -> str:
        return self._comprehension(node.generators, node.elt, "[]", "made$.push({})")

    def _setcomp(self, node: ast.SetComp) -> str:
        return self._comprehension(node.generators, node.elt, "new Set()", "made$.add({})")

    def _dictcomp(self, node: ast.DictComp) -> str:
        pair = ast.Tuple([node.key, node.value], ast.Load())
        return self._comprehension(node.generators, pair, "new Map()", "made$.set(...{})")

    def _comprehension(self, loops: list[ast.comprehension], element: ast.expr, empty: str, put: str) -> str:
        inner = Expressions(self.resolve, self.parameters, set(self.local))
        opened = []
        for loop in loops:
            source = inner.write(loop.iter)
            inner.local |= {name.id for name in ast.walk(loop.target) if isinstance(name, ast.Name)}
            conditions = "".join(f" if (!{inner.truth(test)}) continue;" for test in loop.ifs)
            opened.append(
                f"for (const {inner.target(loop.target)} of {inner.each(loop.target, source)}) {{{conditions} "
            )
        body = put.format(inner.write(element))
        return f"(() => {{ const made$ = {empty}; {''.join(opened)}{body}; {'}' * len(loops)} return made$; }})()"


def _early_star(target: ast.expr) -> int | None:
    """Return where a starred name stands before others: "*rest, last"."""
    if not isinstance(target, ast.Tuple | ast.List):
        return None
    stars = [place for place, part in enumerate(target.elts[:-1]) if isinstance(part, ast.Starred)]
    return stars[0] if stars else None
