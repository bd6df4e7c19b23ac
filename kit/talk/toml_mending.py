"""Usual mistakes in a line of a talk file, told in words, and the line as it should stand."""

import re
import tomllib
from dataclasses import dataclass
from difflib import get_close_matches
from functools import partial

TABLES = ("ingredient", "point", "step", "question", "label")
_QUOTES = str.maketrans(dict.fromkeys("“”„‟″«»＂", '"') | {"`": "'", "\u00b4": "'"})
_SINGLE = str.maketrans(dict.fromkeys("‘’‚′", "'"))
_DASHES = str.maketrans(dict.fromkeys("‐‑‒–—−", "-"))
_SPACES = str.maketrans(dict.fromkeys("\xa0\u2007\u202f\u2009\u3000\ufeff\u200b", " "))
_KEY = re.compile(r"[A-Za-z_][\w-]*")
_PAIR = re.compile(
    r"^\s*(?:[-*\u2022]\s+)?(?P<key>[A-Za-z_][\w -]*?)\s*(?P<sign>:=|==+|=>|->|[=:\uff1d\uff1a])\s*(?P<value>.*)$"
)
_UNSIGNED = re.compile(r"^\s*(?P<key>[A-Za-z_]\w*)\s+(?P<value>[\"'\[{\u201c\u2018]?.*)$")
_NUMBER = re.compile(r"^[~+]?\s*(?P<number>-?\d[\d,]*(?:\.\d+)?)\s*(?P<more>[^\d\s,./-].*)?$")


@dataclass(frozen=True, slots=True)
class Mistake:
    """What is wrong with a line, and how it should stand.

    Attributes
    ----------
    because : str
        What is wrong, in words.
    mended : str
        The line as it should stand; empty when that cannot be known.
    """

    because: str
    mended: str = ""


def mistake_in(line: str, keys: tuple[str, ...]) -> Mistake:
    """Return what is wrong with a line that is no TOML.

    Parameters
    ----------
    line : str
        The line.
    keys : tuple of str
        The keys that a talk file knows.

    Examples
    --------
    >>> mistake_in("servings: 4", ("servings",))
    Mistake(because='a key and its value stand with = between them', mended='servings = 4')
    >>> mistake_in("[[ingredient]", ())
    Mistake(because='an entry is headed by its name in two square brackets', mended='[[ingredient]]')
    >>> mistake_in("keeps_days = 2,5", ("keeps_days",)).mended
    'keeps_days = 2.5'
    """
    plain = line.translate(_SPACES).strip()
    if plain != line.strip() and _reads(plain):
        return Mistake("a space in it is no plain space", plain)
    for look in (
        _two_pairs,
        _ingredient,
        _fence,
        _comment,
        _heading,
        partial(_pair, keys=keys),
        partial(_without_sign, keys=keys),
    ):
        found = look(plain)
        if found and (not found.mended or _reads(found.mended)):
            return found
    return Mistake("it is neither a key with its value nor a heading; write # in front of a remark")


def _reads(text: str) -> bool:
    try:
        tomllib.loads(text)
    except (tomllib.TOMLDecodeError, ValueError, RecursionError):
        return False
    return True


def _two_pairs(line: str) -> Mistake | None:
    """Read 'title = "Pot" servings = 4'."""
    match = re.match(r"""^(\w+\s*=\s*(?:"[^"]*"|'[^']*'|[\d.]+))[\s,;]+(\w+\s*=.*)$""", line)
    return Mistake("each key has a line of its own", f"{match[1]}\n{match[2]}") if match else None


def _ingredient(line: str) -> Mistake | None:
    """Read "1 cup lentils, dry", a line of a recipe without its key."""
    if not re.match(r"^(?:[-*\u2022]\s+)?[\d\u00bc-\u00be\u2150-\u215e].*[A-Za-z]", line) or "=" in line or '"' in line:
        return None
    return Mistake(f'an ingredient is written [[ingredient]], and below it line = "{line.lstrip("-* ")}"')


def _fence(line: str) -> Mistake | None:
    return (
        Mistake("such marks do not belong into a talk file; delete the line")
        if re.match(r"^(?:```|~~~)", line)
        else None
    )


def _comment(line: str) -> Mistake | None:
    match = re.match(r"^(?://+|;+|<!--|--+|/\*|%+)\s*(?P<remark>.*?)\s*(?:-->|\*/)?$", line)
    return Mistake("a remark begins with #", f"# {match['remark']}") if match else None


def _heading(line: str) -> Mistake | None:
    """Read "[ingredient]", "[[ingredient", "((point))"."""
    match = re.match(r"^[\[({<]+\s*(?P<name>[A-Za-z ]+?)s?\s*[\])}>]*\s*(?:[:,;].*)?$", line)
    if match is None or "=" in line:
        return None
    name = match["name"].strip().lower()
    known = get_close_matches(name, TABLES, 1)
    return Mistake("an entry is headed by its name in two square brackets", f"[[{known[0]}]]") if known else None


def _pair(line: str, keys: tuple[str, ...]) -> Mistake | None:
    """Read "key: value", "key = value" with a faulty value, "two words = value"."""
    match = _PAIR.match(line.translate(_QUOTES).translate(_SINGLE) if _PAIR.match(line) is None else line)
    if match is None:
        return None
    key, sign = _key(match["key"], keys), match["sign"]
    if sign != "=" and key not in keys:
        return None
    value, because = _value(match["value"])
    if not match["value"].strip():
        return Mistake(f"{key} has no value; write one behind the =, or delete the line")
    if value is None:
        return Mistake(because)
    if sign != "=":
        because = "a key and its value stand with = between them"
    elif key != match["key"] or not line.startswith(match["key"][0]):
        because = because or "a key is one word"
    return Mistake(because or "it cannot be read", f"{key} = {value}")


def _key(written: str, keys: tuple[str, ...]) -> str:
    key = re.sub(r"[\s-]+", "_", written.strip())
    return key if key in keys else key.lower() if key.lower() in keys else key


def _without_sign(line: str, keys: tuple[str, ...]) -> Mistake | None:
    """Read 'title "Pot"', where the = was forgotten."""
    match = _UNSIGNED.match(line)
    if match is None or match["key"] not in keys:
        return None
    value, _ = _value(match["value"])
    return Mistake("the = between key and value is missing", f"{match['key']} = {value}") if value else None


def _value(text: str) -> tuple[str | None, str]:
    """Return a value as it should be written, None when that cannot be known, and what was wrong with it."""
    plain = text.translate(_SPACES).strip()
    if _reads(f"x = {plain}"):
        return plain, ""
    for mend in (_number, _listed, _table, _quoted, _words):
        found = mend(plain)
        if found and _reads(f"x = {found[0]}"):
            return found
    return None, "its value cannot be read"


def _number(text: str) -> tuple[str, str] | None:
    text = re.sub(r"[,;]$", "", text.translate(_DASHES)).strip()
    fraction = re.match(r"^(?:(\d+)\s+)?(\d+)\s*/\s*(\d+)$", text)
    if fraction and int(fraction[3]):
        return f"{int(fraction[1] or 0) + int(fraction[2]) / int(fraction[3]):.4g}", "a number is written with a point"
    match = _NUMBER.match(text)
    if match is None:
        return None
    digits, more = match["number"], (match["more"] or "").strip()
    because = "a number stands alone, without unit or remark" if more else "a number is written in plain digits"
    if re.fullmatch(r"-?\d{1,3}(?:,\d{3})+(?:\.\d+)?", digits):
        digits, because = digits.replace(",", ""), "a number is written without a comma between its thousands"
    elif re.fullmatch(r"-?\d+,\d+", digits):
        digits, because = digits.replace(",", "."), "a number has a point where others write a comma"
    digits = re.sub(r"^(-?)0+(?=\d)", r"\1", digits)
    return digits, because


def _items(text: str) -> list[str]:
    """Return the words between quotes or commas."""
    inner = text.strip().strip("[](),; ").translate(_QUOTES).translate(_SINGLE)
    quoted = re.findall(r'"([^"]*)"|(?<![A-Za-z])\'([^\']*)\'(?![A-Za-z])', inner)
    if quoted:
        return [first or second for first, second in quoted]
    return [part.strip(" \"'") for part in inner.split(",") if part.strip(" \"'")]


def _listed(text: str) -> tuple[str, str] | None:
    """Read a list without its brackets, commas or quotes."""
    if "{" in text:
        return _tables(text)
    many = len(re.findall(r'"[^"]*"', text.translate(_QUOTES))) > 1 and re.search(
        r'"\s*,?\s*"', text.translate(_QUOTES)
    )
    if not (text.startswith(("[", "(")) or many):
        return None
    items = _items(text)
    if not items or any(character in item for item in items for character in '"\\'):
        return None
    return "[{}]".format(", ".join(f'"{item}"' for item in items)), (
        "a list stands in square brackets, each of its words in quotes and with commas between them"
    )


def _tables(text: str) -> tuple[str, str] | None:
    """Read a list of tables, as the pots of a step are, with their small mistakes."""
    inner = re.findall(r"\{([^{}]*)\}?", text)
    tables = [_table("{" + part + "}") for part in inner]
    if not tables or not all(tables) or not text.startswith("["):
        return None
    return "[{}]".format(", ".join(table[0] for table in tables if table)), (
        "it is written [{ name = ..., minutes = ... }], with = inside and no comma at the end"
    )


def _table(text: str) -> tuple[str, str] | None:
    if not text.startswith("{"):
        return None
    pairs = []
    for part in re.split(r"(?:,\s*|\s+)(?=[A-Za-z_]\w*\s*[=:])", text.strip("{}, ")):
        match = _PAIR.match(part.strip().rstrip(","))
        value = _value(match["value"])[0] if match and match["value"].strip() else None
        if match is None or value is None:
            return None
        pairs.append(f"{match['key']} = {value}")
    return "{{ {} }}".format(
        ", ".join(pairs)
    ), "inside braces stands key = value, with commas between and none at the end"


def _quoted(text: str) -> tuple[str, str] | None:
    """Read a text whose quotes are missing, curly, of two kinds, inside each other, or behind a backslash."""
    straight = text.translate(_QUOTES)
    curly = straight != text or text[:1] in "\u2018\u2019"
    plain = straight.translate(_SINGLE) if text[:1] in "\u2018\u201a\u2019" else straight
    bare = re.sub(r"\s*[,;]+$", "", plain)
    if curly and _reads(f"x = {bare}"):
        return bare, "the quotes have to be straight"
    if bare != plain and _reads(f"x = {bare}"):
        return bare, "no comma or semicolon stands at the end of a line"
    first, last = plain[:1], bare[-1:]
    if first not in ('"', "'") and last not in ('"', "'"):
        return None
    inner = bare[1 if first in ('"', "'") else 0 : -1 if last in ('"', "'") and len(bare) > 1 else None]
    if first not in ('"', "'"):
        because = "the quote at the beginning is missing"
    elif last not in ('"', "'") or len(bare) == 1:
        because = "the quote at the end is missing"
    elif first != last:
        because = "it begins and ends with the same kind of quote"
    elif "\\" in inner:
        because = "a backslash has a meaning of its own; write it twice"
    else:
        because = 'quotes inside a text are written \\"'
    escaped = inner.replace("\\", "\\\\").replace('\\\\"', '"').replace('"', '\\"')
    return f'"{escaped}"', because


def _words(text: str) -> tuple[str, str] | None:
    if text[:1] in "[{\"'" or len(text) > 2_000:
        return None
    inner = re.sub(r"\s+#.*$", "", text).rstrip(",;").replace("\\", "\\\\").replace('"', '\\"')
    return f'"{inner}"', "a text stands in quotes"
