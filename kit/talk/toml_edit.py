"""Changing a talk file in place: an entry at a time, and everything else left as it stands."""

import json
import re
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from kit.errors import KitError
from kit.talk.toml_text import statements

_HEADER = re.compile(r"^\s*\[\[?\s*(?P<name>[^\[\]]+?)\s*\]\]?\s*(?:#.*)?$")
_END = "end"  # remarks below the last entry
_ORDER = ("ingredient", "point", "step", "question", "label")


@dataclass(frozen=True, slots=True)
class Block:
    """One piece of a talk file: an entry with the remarks above it, or what stands above the first.

    Attributes
    ----------
    kind : str
        ``"ingredient"`` ...; the name of any other table; empty for what stands above the first.
    lead : str
        Empty lines and remarks above its heading.
    text : str
        Its heading and keys.
    """

    kind: str
    lead: str
    text: str


@dataclass(frozen=True, slots=True)
class Edit:
    """What becomes of an entry.

    Attributes
    ----------
    old : int or None
        Which of the present entries of its kind it is; None for a new one.
    values : mapping
        Its keys with their new values; None takes a key away. A key that is not named stays as it is.
    """

    old: int | None
    values: Mapping[str, Any]


def blocks_of(text: str) -> tuple[Block, ...]:
    """Return a talk file cut into its blocks; joined again they are the file, sign for sign.

    Parameters
    ----------
    text : str
        TOML without mistakes.
    """
    lines = re.findall(r"[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+$", text)
    found: list[Block] = []
    kind, start, lead, said = "", 0, "", 0  # said: behind the last line that says something
    for first, last in statements([line.rstrip("\r\n") for line in lines]):
        header = _HEADER.match(lines[first].rstrip("\r\n"))
        name = _bare(header["name"]) if header else ""
        if header and not (kind and name.startswith(f"{kind}.")):
            if said > start or kind:
                found.append(Block(kind, lead, "".join(lines[start:said])))
            elif not found:
                found.append(Block("", "", ""))
            kind, start, lead = name, first, "".join(lines[max(said, start) : first])
        said = last
    said = said if kind else len(lines)
    found.append(Block(kind, lead, "".join(lines[start:said])))
    return (*found, Block(_END, "".join(lines[said:]), "")) if said < len(lines) else tuple(found)


def _bare(name: str) -> str:
    return re.sub(r"[\"'\s]", "", name)


def joined(blocks: Sequence[Block]) -> str:
    """Return blocks as the text of a file."""
    return "".join(f"{block.lead}{block.text}" for block in blocks)


def edited(text: str, top: Mapping[str, Any], entries: Mapping[str, Sequence[Edit]]) -> str:
    """Return a talk file with changed keys and entries, everything else as it stands.

    Parameters
    ----------
    text : str
        TOML without mistakes.
    top : mapping
        Keys of the whole talk with their new values; None takes one away.
    entries : mapping of str to sequence of Edit
        For each kind that may have changed, all its entries in their new order; an entry that is not named goes.

    Raises
    ------
    KitError
        If the file cannot be written so that it says what it should.
    """
    text = text if not text or text.endswith("\n") else f"{text}\n"
    blocks = blocks_of(_without_inline(text, [kind for kind, edits in entries.items() if edits or kind in text]))
    if top:
        blocks = (replace(blocks[0], text=_with_keys(blocks[0].text, "", top)), *blocks[1:])
    for kind in _ORDER:
        if kind in entries:
            blocks = tuple(_with_entries(blocks, kind, entries[kind]))
    return joined(blocks)


def _without_inline(text: str, kinds: Sequence[str]) -> str:
    """Return a file whose entries each have a heading, where some stood in one list: ``point = [{...}]``."""
    table = tomllib.loads(text)
    lists = [kind for kind in kinds if isinstance(table.get(kind), list) and not _has_headers(text, kind)]
    if not lists:
        return text
    document = tomlkit.parse(text)
    for kind in lists:
        document.remove(kind)
    made = [_new_block(kind, entry) for kind in lists for entry in table[kind]]
    return "\n".join([tomlkit.dumps(document), *made])


def _has_headers(text: str, kind: str) -> bool:
    return any(block.kind == kind for block in blocks_of(text))


def _with_entries(blocks: Sequence[Block], kind: str, edits: Sequence[Edit]) -> Iterator[Block]:
    """Yield the blocks with the entries of one kind in their new order."""
    old = [block for block in blocks if block.kind == kind]
    made = [_edited_block(kind, old, edit) for edit in edits]
    kept = [edit.old for edit in edits if edit.old is not None]
    gone = [at for at in range(len(old)) if at not in kept]
    if not gone and len(made) == len(old) and kept == sorted(kept):
        new = iter(made)
        yield from (next(new) if block.kind == kind else block for block in blocks)
        return
    # Remarks above an entry that goes stay, above the next one.
    remarks = "".join(old[at].lead for at in gone if "#" in old[at].lead)
    in_place = kept == sorted(kept)
    left = dict(enumerate(made))
    placed: list[Block] = []
    at = -1
    for block in blocks:
        if block.kind != kind:
            placed.append(block)
            continue
        at += 1
        if at in gone:
            continue
        for fresh in [new for new, edit in enumerate(edits) if new in left and (edit.old == at or not in_place)]:
            before = [earlier for earlier in sorted(left) if earlier < fresh and edits[earlier].old is None]
            placed += [left.pop(earlier) for earlier in before]
            placed.append(left.pop(fresh))
    end = max((place for place, block in enumerate(placed) if block.kind == kind), default=_end_for(placed, kind))
    placed[end + 1 : end + 1] = [left[place] for place in sorted(left)]
    yield from _with_lead(placed, remarks, end)


def _end_for(blocks: Sequence[Block], kind: str) -> int:
    """Return behind which block the first entry of a kind goes: those before it in the usual order, or the last."""
    before = _ORDER[: _ORDER.index(kind)]
    return max((place for place, block in enumerate(blocks) if block.kind in before or not block.kind), default=0)


def _with_lead(blocks: list[Block], remarks: str, end: int) -> list[Block]:
    if not remarks:
        return blocks
    at = min(end + 1, len(blocks))
    if at < len(blocks):
        blocks[at] = replace(blocks[at], lead=remarks + blocks[at].lead)
        return blocks
    return [*blocks, Block(_END, remarks, "")]


def _edited_block(kind: str, old: Sequence[Block], edit: Edit) -> Block:
    if edit.old is None:
        return Block(kind, "\n", _new_block(kind, edit.values))
    block = old[edit.old]
    return replace(block, text=_with_keys(block.text, kind, edit.values)) if edit.values else block


def _new_block(kind: str, values: Mapping[str, Any]) -> str:
    lines = [f"{key} = {written(value)}" for key, value in values.items() if value is not None]
    return "\n".join([f"[[{kind}]]", *lines, ""])


def written(value: Any) -> str:
    r"""Return a value as TOML writes it.

    Examples
    --------
    >>> written('a "pot"'), written(2.0), written([{"name": "rice", "minutes": 20}])
    ('"a \\"pot\\""', '2', '[{ name = "rice", minutes = 20 }]')
    """
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | float):
        return repr(int(value)) if float(value).is_integer() else repr(float(value))
    if isinstance(value, str):
        clean = value.encode("utf-8", "replace").decode()
        return json.dumps(clean, ensure_ascii=False).replace("\x7f", "\\u007f")
    if isinstance(value, Mapping):
        return "{{ {} }}".format(", ".join(f"{_key(key)} = {written(each)}" for key, each in value.items()))
    return "[{}]".format(", ".join(map(written, value)))


def _key(key: str) -> str:
    return key if re.fullmatch(r"[\w-]+", key, re.ASCII) else written(key)


def _with_keys(text: str, kind: str, values: Mapping[str, Any]) -> str:
    """Return an entry, or what stands above all, with other values."""
    expected = _table(text, kind)
    for key, value in values.items():
        expected.pop(key, None)
        if value is not None:
            expected[key] = value
    try:
        document = tomlkit.parse(text)
        table: Any = document[kind][0] if kind else document
        for key, value in values.items():
            if value is None:
                if key in table:
                    table.remove(key)
            else:
                table[key] = tomlkit.parse(f"x = {written(value)}")["x"]
        made = tomlkit.dumps(document)
        right = _same(_table(made, kind), expected)
    except (TOMLKitError, tomllib.TOMLDecodeError, ValueError):
        right = False
    if not right:
        raise KitError(f"an entry cannot be changed in the file ({text.strip()[:60]}...); write it more plainly first")
    return made if made.endswith("\n") else f"{made}\n"


def _table(text: str, kind: str) -> dict[str, Any]:
    table = tomllib.loads(text)
    return dict(table[kind][0]) if kind else table


def _same(one: Any, other: Any) -> bool:
    """Whether two values say the same: 2 and 2.0 do, and a text without lone surrogates is the text."""
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        return one.keys() == other.keys() and all(_same(one[key], other[key]) for key in one)
    if isinstance(one, list | tuple) and isinstance(other, list | tuple):
        return len(one) == len(other) and all(map(_same, one, other))
    if isinstance(one, str) and isinstance(other, str):
        return one == other.encode("utf-8", "replace").decode()
    return bool(one == other)
