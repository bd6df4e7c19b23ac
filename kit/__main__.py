"""The command line: ``python -m kit``, also installed as ``talk-kit``."""

import argparse
import json
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from kit import terminal
from kit.errors import KitError, TalkFileError

if TYPE_CHECKING:
    from kit.talk.talk import Talk

OPEN = OFF = 1  # a line that has to be asked about; a sentence that does not hold
BAD_INPUT = 2


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code: 0 on success, 1 when something is off or asked, 2 on bad input."""
    terminal.write_utf8()
    try:
        chosen = _parser().parse_args(terminal.as_text(sys.argv[1:] if arguments is None else arguments))
        code = chosen.run(chosen) or 0
        terminal.flush()
        return BAD_INPUT if getattr(chosen, "faulty", False) else code
    except KitError as fault:
        terminal.tell(fault)
        return BAD_INPUT
    except BrokenPipeError:  # the reader of our output has seen enough
        terminal.write_no_more()
        return 0
    except OSError as fault:
        terminal.write_no_more()
        terminal.tell(f"{fault.filename or 'the output'} cannot be written ({fault.strerror or fault})")
        return BAD_INPUT
    except KeyboardInterrupt:
        return 130


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="talk-kit",
        description="The numbers of a live cooking talk. Without a command it opens the notebooks.",
    )
    _serving_options(parser)
    parser.set_defaults(run=_open)
    commands = parser.add_subparsers(metavar="COMMAND")

    screen = commands.add_parser("screen", help="the on-screen notebook full-window, without its code")
    screen.add_argument("talk", nargs="?", metavar="TALK", help=_TALK)
    _serving_options(screen)
    screen.set_defaults(run=_screen)

    numbers = commands.add_parser("numbers", help="what a serving holds, with ranges and the forms that can be said")
    numbers.add_argument("talk", metavar="TALK", help=_TALK)
    numbers.add_argument("--servings", type=float, metavar="N", help="share the same pot out into N servings")
    numbers.add_argument("--all", action="store_true", help="every nutrient, not only the main ones")
    numbers.add_argument("--json", action="store_true")
    numbers.set_defaults(run=_numbers)

    read = commands.add_parser("read", help="how ingredient lines are read")
    read.add_argument("lines", nargs="+", metavar="LINE", help='such as "1 1/2 cups brown lentils, dry"')
    read.add_argument("--metric", action="store_true", help="cups and spoons of 250, 15 and 5 mL")
    read.add_argument("--json", action="store_true")
    read.set_defaults(run=_read)

    find = commands.add_parser("find", help="foods that match some words")
    find.add_argument("words", nargs="+", metavar="WORD")
    find.add_argument("--most", type=int, default=10, metavar="N", help="how many at the most (10)")
    find.add_argument("--json", action="store_true")
    find.set_defaults(run=_find)

    check = commands.add_parser("check", help="the verdict on every point of a talk")
    check.add_argument("talk", metavar="TALK", help=_TALK)
    check.add_argument("--json", action="store_true")
    check.set_defaults(run=_check)

    change = commands.add_parser("change", help="what a typed what-if changes, before and after")
    change.add_argument("talk", metavar="TALK", help=_TALK)
    change.add_argument("lines", nargs="+", metavar="LINE", help='such as "no feta" or "make it for ten"; they stack')
    change.add_argument("--json", action="store_true")
    change.set_defaults(run=_change)

    follow = commands.add_parser("follow-up", help="everything that is sent after a talk, written into a folder")
    follow.add_argument("talk", metavar="TALK", help=_TALK)
    follow.add_argument("--to", type=_folder, required=True, metavar="DIR", help="the folder; it is made when missing")
    follow.add_argument("--servings", type=float, metavar="N", help="the recipe for N servings")
    follow.add_argument("--recording", default="", metavar="LINK", help="a link to the recording, for the mail")
    follow.add_argument("--survey", default="", metavar="LINK", help="a link to the survey, for the mail")
    follow.add_argument("--label", action="store_true", help="print a serving in the rounding of a label too")
    follow.add_argument("--force", action="store_true", help="replace files of an earlier follow-up")
    follow.set_defaults(run=_follow_up)

    new = commands.add_parser("new", help="begin a talk of your own")
    new.add_argument("title", metavar="TITLE", help='such as "Turkey chili"')
    new.add_argument("--to", type=_folder, metavar="DIR", help="a folder for it and the four notebooks")
    new.set_defaults(run=_new)

    release = commands.add_parser(
        "import-release", help="add an official composition release (the FoodData Central CSV folder)"
    )
    release.add_argument("folder", type=_folder, metavar="DIR")
    release.set_defaults(run=_import_release)
    return parser


_TALK = "the name or title of a talk, a .toml talk file, or a plain .txt"


def _folder(text: str) -> Path:
    """Return the folder that an argument names; an empty one would be wherever the command is run."""
    if not text.strip():
        raise KitError(f'"{text}" names no folder; write one such as "sent"')
    return Path(text)


def _serving_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--no-browser", action="store_true", help="print the address and open nothing")
    parser.add_argument("--port", type=int, help="the port to listen on (a free one)")


def _open(chosen: argparse.Namespace) -> int:
    from kit.meal.nutrition import nutrition
    from kit.opening import open_notebooks
    from kit.rules.serving import as_text
    from kit.talk.library import bundled_talks, read_talk

    print(as_text(nutrition(read_talk(next(iter(bundled_talks()))).recipe)), flush=True)
    return open_notebooks(port=chosen.port, browser=not chosen.no_browser)


def _screen(chosen: argparse.Namespace) -> int:
    from kit.opening import open_screen
    from kit.talk.last_used import last_used, use

    talk = chosen.talk or last_used().name
    _read_talk(chosen, talk)  # what is wrong is told here, not on the shared screen
    use(talk)
    return open_screen(talk, port=chosen.port, browser=not chosen.no_browser)


def _numbers(chosen: argparse.Namespace) -> int:
    from kit.meal.nutrition import nutrition
    from kit.meal.portions import share_out
    from kit.rules.serving import MAIN_NUTRIENTS, as_json, as_text
    from kit.talk.notes import talk_json, talk_notes

    talk = _read_talk(chosen)
    recipe = talk.recipe if chosen.servings is None else share_out(talk.recipe, chosen.servings)
    numbers = nutrition(recipe)
    if chosen.json:
        _print_json({**as_json(numbers, talk.rules), **talk_json(talk)})
    else:
        print("\n".join([as_text(numbers, () if chosen.all else MAIN_NUTRIENTS, talk.rules), *talk_notes(talk)]))
    return OPEN if recipe.open_lines else 0


def _read_talk(chosen: argparse.Namespace, name: str = "") -> "Talk":
    """Return the talk that is asked for; what is wrong with its file is told, and the rest used."""
    from kit.talk.library import read_talk

    talk = read_talk(name or chosen.talk)
    if talk.faults:
        chosen.faulty = True
        terminal.tell(TalkFileError(talk.path.name if talk.path else talk.name, talk.faults))
    return talk


def _new(chosen: argparse.Namespace) -> None:
    from kit.opening.workplace import workplace
    from kit.talk.last_used import use
    from kit.talk.own_talks import begin

    path = begin(chosen.title, chosen.to)
    workplace(chosen.to)  # the four notebooks beside it
    use(str(path))
    print(path)
    print("Go on in the first notebook, 1 Prepare, where it lies open: python -m kit")


def _read(chosen: argparse.Namespace) -> int:
    from kit.lines.reader import read_lines
    from kit.texts import number

    readings = read_lines(chosen.lines, system="metric" if chosen.metric else "us")
    if chosen.json:
        _print_json([reading.as_json() for reading in readings])
    for reading in readings if not chosen.json else ():
        grams = (
            f"{number(reading.grams, 1)} g ({number(reading.low)} to {number(reading.high)})"
            if reading.grams is not None and reading.low is not None and reading.high is not None
            else "?"
        )
        print(f"{reading.line}\n  {reading.food_name or '?'} [{reading.key or '?'}], {grams}")
        for label, text in (("how", reading.how), ("to ask", reading.problem)):
            if text:
                print(f"  {label}: {text}")
    return OPEN if any(reading.is_open for reading in readings) else 0


def _find(chosen: argparse.Namespace) -> None:
    from kit.food.finding import find

    matches = find(" ".join(chosen.words), chosen.most)
    if chosen.json:
        _print_json([{"food": match.food, "name": match.name, "score": match.score} for match in matches])
    elif not matches:
        asked = " ".join(chosen.words)
        raise KitError(f'no food like "{asked[:60]}"; try a plainer word, or add the food from its package label')
    else:
        width = max(len(match.food) for match in matches)
        print("\n".join(f"{match.food:<{width}}  {match.name}  ({match.score:.0f})" for match in matches))


def _check(chosen: argparse.Namespace) -> int:
    from kit.speech.points import NO_SENTENCES, check_talk

    verdicts = check_talk(_read_talk(chosen))
    if chosen.json:
        _print_json({"points": [verdict.as_json() for verdict in verdicts]})
    elif not verdicts:
        print(f"{NO_SENTENCES[:1].upper()}{NO_SENTENCES[1:]}.")
    else:
        for verdict in verdicts:
            instead = f"\n    say instead: {verdict.instead}" if verdict.instead else ""
            print(f"{verdict.verdict:16} {verdict.say}\n    {verdict.because}{instead}")
    return OFF if any(verdict.verdict == "off" for verdict in verdicts) else 0


def _change(chosen: argparse.Namespace) -> int:
    from kit.errors import ChangeError
    from kit.speech.what_if import problem_json, what_if

    talk = _read_talk(chosen)
    try:
        asked = what_if(talk, chosen.lines)
    except ChangeError as fault:
        if chosen.json:
            _print_json(problem_json(talk, str(fault), fault.choices))
        offered = "".join(f'\n  or write: "{choice}"' for choice in fault.choices)
        terminal.tell(f"{fault}{offered}")
        return BAD_INPUT
    if chosen.json:
        _print_json(asked.as_json())
    else:
        print(asked.as_text())
    return 0


def _follow_up(chosen: argparse.Namespace) -> None:
    from kit.meal.nutrition import nutrition
    from kit.meal.portions import make_more
    from kit.share.follow_up import follow_up, named_before

    talk = _read_talk(chosen)
    recipe = talk.recipe if chosen.servings is None else make_more(talk.recipe, chosen.servings)
    numbers = nutrition(recipe)
    left_out, on_her_word = named_before(talk, numbers)
    for verdict in left_out:
        print(f"left out, {verdict.verdict}: {verdict.say}\n    {verdict.because}")
    for verdict in on_her_word:
        print(f"sent on your word, {verdict.verdict}: {verdict.say}\n    {verdict.because}")
    links = {"recording": chosen.recording, "survey": chosen.survey}
    for path in follow_up(talk, chosen.to, numbers, label=chosen.label, replace=chosen.force, **links):
        print(f"wrote {path}", flush=True)


def _import_release(chosen: argparse.Namespace) -> None:
    from kit.food.releases.release import ProgressBar, import_release

    print(import_release(chosen.folder, progress=ProgressBar()))


def _print_json(value: object) -> None:
    print(json.dumps(value, indent=2, ensure_ascii=False, allow_nan=False))


if __name__ == "__main__":
    sys.exit(main())
