"""A talk's title as the name of a file inside her folder."""

import re
import unicodedata
from collections.abc import Container

from kit.errors import KitError

LONGEST_NAME = 80  # bytes; with its ending it fits every file system
_RESERVED = re.compile(r"(?:con|prn|aux|nul|com\d|lpt\d|conin\$|conout\$)(?:\..*)?", re.IGNORECASE)
_FORBIDDEN = re.compile(r'[\x00-\x1f\x7f<>:"/\\|?*\u2028\u2029\u200e\u200f\u202a-\u202e]+')


def plain_title(title: str) -> str:
    r"""Return a title on one line, without signs that steer a screen or cannot be stored.

    Raises
    ------
    KitError
        If nothing is left of it.

    Examples
    --------
    >>> plain_title("  Turkey\tchili\x00 ")
    'Turkey chili'
    """
    text = " ".join("".join(" " if unicodedata.category(sign) in ("Cc", "Cs") else sign for sign in title).split())
    if not text:
        raise KitError('a talk needs a title; write for instance "Turkey chili"')
    return text


def file_name(title: str) -> str:
    """Return a title as the name of a file, without its ending: no folder, nothing hidden, not too long.

    Examples
    --------
    >>> file_name("Turkey chili"), file_name("Soup 2.0"), file_name("../../etc/passwd"), file_name(".hidden")
    ('turkey_chili', 'soup_2.0', 'etc_passwd', 'hidden')
    >>> file_name("CON"), file_name("my.talk"), file_name("///")
    ('con_talk', 'my.talk', 'talk')
    """
    text = unicodedata.normalize("NFC", title).encode("utf-8", "ignore").decode()
    text = re.sub(r"[\s_]+", "_", _FORBIDDEN.sub(" ", text).strip()).lower()
    text = re.sub(r"\.(?:toml|txt)$", "", re.sub(r"(?:^|(?<=_))\.+_|\.{2,}", "", text))
    text = text.encode()[:LONGEST_NAME].decode("utf-8", "ignore").strip("._- ")
    if not text:
        return "talk"
    return f"{text}_talk" if _RESERVED.fullmatch(text) else text


def free_name(title: str, taken: Container[str]) -> str:
    """Return a file name that is not taken, with a number behind it where it has to be.

    Examples
    --------
    >>> free_name("Soup", {"soup", "soup_2"})
    'soup_3'
    """
    name, number = file_name(title), 2
    found = name
    while found.lower() in taken:
        found, number = f"{name}_{number}", number + 1
    return found
