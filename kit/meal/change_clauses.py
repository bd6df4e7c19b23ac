"""What one clause of a what-if does to a recipe, by the kind of clause."""

from collections.abc import Callable, Mapping

from kit.errors import ChangeError
from kit.lines.recipe_text import LEAST_SERVINGS, MOST_SERVINGS
from kit.meal.change_amounts import add, changed_by, free_from, leave_out, more, needed, set_to, times
from kit.meal.change_asked import Asked
from kit.meal.change_swaps import halves, rinse, swap, use
from kit.meal.portions import MAKE_MORE
from kit.meal.steps import Servings, Step
from kit.texts import number


def steps_of(asked: Asked) -> tuple[Step, ...]:
    """Return the steps that a clause asks for.

    Raises
    ------
    ChangeError
        If its words do not fit the recipe, or leave open what is meant.
    """
    return _WAYS[asked.clause.kind](asked)


def _servings(asked: Asked) -> tuple[Step, ...]:
    if not LEAST_SERVINGS <= asked.clause.number <= MOST_SERVINGS:
        raise ChangeError(
            f"{number(asked.clause.number)} servings cannot be made; write a number "
            f"from {LEAST_SERVINGS:g} to {MOST_SERVINGS:,}"
        )
    return (Servings(asked.clause.number, asked.clause.how),)


def _batch(asked: Asked) -> tuple[Step, ...]:
    return (Servings(asked.recipe.servings * asked.clause.number, MAKE_MORE),)


def _portions(asked: Asked) -> tuple[Step, ...]:
    now = asked.recipe.servings
    many = max(1.0, round(now / 2 if asked.clause.old in ("bigger", "larger", "fewer", "less") else now * 1.5))
    raise ChangeError(
        f"how many servings? there are {number(now, 1)} now; write for instance "
        f'"serve {number(many)} from the same pot", or "make it for {number(many)}"',
        [f"serve {number(many)} from the same pot", f"make it for {number(many)}"],
    )


def _keep(asked: Asked) -> tuple[Step, ...]:
    """Change nothing: "no kale, keep the squash"."""
    asked.place(asked.clause.old)
    return ()


_WAYS: Mapping[str, Callable[[Asked], tuple[Step, ...]]] = {
    "servings": _servings,
    "batch": _batch,
    "portions": _portions,
    "keep": _keep,
    "leave out": leave_out,
    "free": free_from,
    "need": needed,
    "times": times,
    "set": set_to,
    "by": changed_by,
    "more": more,
    "add": add,
    "use": use,
    "swap": swap,
    "halves": halves,
    "rinse": rinse,
}
